"""Sticks of lumber: which lengths to buy, and which piece is cut from which stick.

The lengths on offer are those that can be brought to the wall; a longer one is on offer only when some piece needs it.
Where their prices are known, a length without one is left out as long as the others hold every piece; while too few are
known, feet stand for money. What is at home already costs nothing, and so is used first.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from guide.layout.parts import Part
from guide.lengths import ZERO, Length, greatest


@dataclass(frozen=True, slots=True)
class Stick:
    """One stick and the parts cut from it, the longest first."""

    length: Length
    parts: tuple[Part, ...]
    rest: Length
    """What is left after the last cut, never below 0."""
    at_home: bool
    """It is there already."""


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
    trim: Length
    """Sawn off one end of every stick; nothing is off an offcut, which is measured as it can be used."""
    priced: bool
    """Prices decided; otherwise length stood for money."""
    paid: int
    """What the sticks to buy come to: cents where prices decided, else ticks of length."""
    least: int
    """No purchase of these lengths that holds these pieces comes to less: checked in whole numbers."""

    ways: int
    """Different ways in which sticks are cut."""
    ways_least: int
    """No plan on the very same sticks takes fewer: tried out, or bounded, in whole numbers."""

    @property
    def proven(self) -> bool:
        """No purchase comes to less."""
        return self.paid == self.least


def cut_from(
    item: str,
    parts: Sequence[Part],
    lengths: Sequence[Length],
    *,
    usual: Length,
    kerf: Length,
    trim: Length,
    prices: Mapping[Length, int],
    at_home: Mapping[Length, int],
    offcuts: Mapping[Length, int],
) -> Lumber:
    """Return the sticks that hold every part, and the parts that fit no stick. `lengths` rises.

    The lengths on offer are those up to the `usual` one, and for a longer piece the shortest that holds it. `kerf` is
    lost at each cut, `trim` once on every stick, but not on an offcut. `prices` are whole cents, `at_home` and `offcuts`
    count what need not be bought. The same parts in any order give the same sticks.
    """
    from guide.buying.cutting.cheapest import cheapest  # the talk need not wait for the solver
    from guide.buying.cutting.job import Board, CuttingJob, Wanted

    fitting = {part.id: part for part in parts if part.cut + trim <= lengths[-1]}
    known = [length for length in lengths if length in prices]
    priced = bool(known) and all(part.cut + trim <= known[-1] for part in fitting.values())
    offered = _offered([part.cut + trim for part in fitting.values()], known if priced else lengths, usual)
    boards = [Board(length.ticks, prices[length] if priced else length.ticks) for length in offered]
    boards += [Board(length.ticks, 0, count) for length, count in at_home.items()]
    boards += [Board((length + trim).ticks, 0, count) for length, count in offcuts.items()]
    wanted = tuple(Wanted(part.cut.ticks, 1, part.id) for part in fitting.values())
    cutting = cheapest(CuttingJob(wanted, tuple(boards), kerf.ticks, trim.ticks))
    stock, sticks = (*offered, *at_home, *offcuts), []
    for each in cutting.filled:
        length, held = stock[each.board], tuple(fitting[mark] for _, mark in each.pieces)
        off = trim if each.board < len(offered) + len(at_home) else ZERO
        rest = length - off - sum((part.cut + kerf for part in held), start=ZERO)  # the last saw cut may run off
        sticks.append(Stick(length, held, greatest(ZERO, rest), each.board >= len(offered)))
    too_long = tuple(TooLong(part) for part in parts if part.id not in fitting)
    return Lumber(
        item,
        tuple(sticks),
        too_long,
        offered,
        kerf,
        trim,
        priced,
        cutting.price,
        cutting.bound,
        cutting.ways,
        cutting.ways_least,
    )


def _offered(sizes: Sequence[Length], lengths: Sequence[Length], usual: Length) -> tuple[Length, ...]:
    """Return the lengths up to the usual one, and for each size that is longer the shortest that holds it."""
    needed = {next(length for length in lengths if size <= length) for size in sizes}
    return tuple(length for length in lengths if length <= usual or length in needed)
