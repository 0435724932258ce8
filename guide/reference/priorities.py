"""What wins when two rules fight: the order of `prompts_data/priorities.toml`, and what a choice lost by.

Every search of the layout ranks by it, so that no two of them weigh the same things differently.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from guide.reference.data import Data, read_data
from guide.reference.sayings import Saying, saying


class Priority(Data):
    """One thing that a choice is weighed by."""

    id: str
    what: str
    """What is counted; fewer are better."""


class Priorities(Data):
    """`prompts_data/priorities.toml`."""

    source: str
    priority: tuple[Priority, ...]
    """What outweighs all that follows stands first."""


@lru_cache(maxsize=1)
def load_priorities() -> Priorities:
    """Return the priorities. Raises DataError when the data is not right."""
    return read_data("priorities.toml", Priorities)


def ranked(counts: Mapping[str, int]) -> tuple[int, ...]:
    """Return counts in the order of the priorities, to be compared; lower is better, what is not counted is 0.

    Raises KeyError for a count that is no priority.
    """
    order = [each.id for each in load_priorities().priority]
    if odd := sorted(set(counts) - set(order)):
        raise KeyError(f"{', '.join(odd)}: no priority")
    return tuple(counts.get(each, 0) for each in order)


def decided_by(taken: tuple[int, ...], other: tuple[int, ...]) -> Saying:
    """Say by what one ranking differs from the one taken where it first does, and by how much."""
    for each, ours, theirs in zip(load_priorities().priority, taken, other, strict=True):
        if ours != theirs:
            way = saying("weighed.more" if theirs > ours else "weighed.fewer")
            return saying(f"weighed.{each.id}", by=abs(theirs - ours), way=way)
    return saying("weighed.even")
