"""What was worked out before and need not be worked out again: a mapping that the caller owns, from inputs to what came of them.

It owns one promise: a thing is found again only where its inputs are the same, the answers they rest on included, so that a
layout from what was kept is the layout itself.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable
from dataclasses import fields, is_dataclass
from typing import TypeVar, cast

from guide.lengths import Length

Kept = dict[Hashable, object]
Found = TypeVar("Found")


def once(kept: Kept | None, inputs: Hashable, work: Callable[[], Found]) -> Found:
    """Return what comes of these inputs, from what is kept where it is there; without a mapping just work it out.

    What is used stands last in the mapping. Inputs are equal as Python has it: a thing with sizes in it goes in `exactly`.
    """
    if kept is None:
        return work()
    found = kept.pop(inputs) if inputs in kept else work()
    kept[inputs] = found
    return cast(Found, found)


def exactly(value: object) -> Hashable:
    """Return a value to compare by: sizes are equal by their ticks alone, and here by the answers they rest on as well."""
    if isinstance(value, Length):
        return value.ticks, value.rests
    if isinstance(value, tuple):
        return tuple(exactly(each) for each in value)
    if is_dataclass(value):
        return (type(value), *(exactly(getattr(value, field.name)) for field in fields(value)))
    return value


def forget(kept: Kept, but: int) -> None:
    """Leave only the last so many that were used."""
    for inputs in list(kept)[: max(0, len(kept) - but)]:
        del kept[inputs]
