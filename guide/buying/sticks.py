"""Sticks of lumber: which lengths to buy, and which piece is cut from which stick.

The lengths on offer are those that can be brought to the wall; a longer one is on offer only when some piece needs it.
While no prices are known, feet stand for money: the purchase is the one with the least length in all.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from guide.layout.parts import Part
from guide.lengths import Length, greatest


@dataclass(frozen=True, slots=True)
class Stick:
    """One stick and the parts cut from it, the longest first."""

    length: Length
    parts: tuple[Part, ...]
    rest: Length
    """What is left after the last cut, never below 0."""


@dataclass(frozen=True, slots=True)
class TooLong:
    """A part that no stick on the list is long enough for."""

    part: Part


@dataclass(frozen=True, slots=True)
class Lumber:
    """The sticks of one kind of wood, and how sure it is that no better ones could be bought."""

    item: str
    """A name of `prompts_data/stock/stock.toml`."""
    sticks: tuple[Stick, ...]
    too_long: tuple[TooLong, ...]
    lengths: tuple[Length, ...]
    """The lengths that were on offer."""
    kerf: Length
    total: Length
    """All sticks together."""
    least: Length
    """No purchase of these lengths that holds these pieces is shorter in all: checked in whole numbers."""

    @property
    def proven(self) -> bool:
        """No purchase is shorter in all."""
        return self.total == self.least


def cut_from(item: str, parts: Sequence[Part], lengths: Sequence[Length], *, usual: Length, kerf: Length) -> Lumber:
    """Return the sticks that hold every part, and the parts that fit no stick. `lengths` rises.

    The lengths on offer are those up to the `usual` one, and for a longer piece the shortest that holds it. `kerf` is
    lost at each cut. The same parts in any order give the same sticks.
    """
    from guide.buying.cutting.cheapest import cheapest  # the talk need not wait for the solver
    from guide.buying.cutting.job import Board, CuttingJob, Wanted

    holding = {part.id: _shortest_that_holds(part.cut, lengths) for part in parts}
    fitting = {part.id: part for part in parts if holding[part.id] is not None}
    needed = {length for length in holding.values() if length is not None}
    offered = tuple(length for length in lengths if length <= usual or length in needed)
    job = CuttingJob(
        wanted=tuple(Wanted(part.cut.ticks, 1, part.id) for part in fitting.values()),
        boards=tuple(Board(length.ticks, length.ticks) for length in offered),
        kerf=kerf.ticks,
    )
    cutting = cheapest(job)
    sticks = tuple(
        _stick(offered[each.board], [fitting[mark] for _, mark in each.pieces], kerf) for each in cutting.filled
    )
    too_long = tuple(TooLong(part) for part in parts if holding[part.id] is None)
    return Lumber(item, sticks, too_long, offered, kerf, Length(cutting.price), Length(cutting.bound))


def _shortest_that_holds(cut: Length, lengths: Sequence[Length]) -> Length | None:
    return next((length for length in lengths if cut <= length), None)


def _stick(length: Length, parts: Sequence[Part], kerf: Length) -> Stick:
    """Return a stick; the saw cut after its last piece may run off its end."""
    rest = length - sum((part.cut + kerf for part in parts), start=Length(0))
    return Stick(length, tuple(parts), greatest(Length(0), rest))
