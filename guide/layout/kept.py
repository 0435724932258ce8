"""What was worked out before and need not be worked out again: a mapping that the caller owns, from inputs to what came of them.

Sizes are equal by their ticks alone, so one mapping serves the layouts of one job only: there the same sizes at the same
places rest on the same answers.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable
from typing import TypeVar, cast

Kept = dict[Hashable, object]
Found = TypeVar("Found")


def once(kept: Kept | None, inputs: Hashable, work: Callable[[], Found]) -> Found:
    """Return what comes of these inputs, from what is kept where it is there; without a mapping just work it out."""
    if kept is None:
        return work()
    if inputs not in kept:
        kept[inputs] = work()
    return cast(Found, kept[inputs])
