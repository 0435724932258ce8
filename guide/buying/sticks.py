"""Sticks of lumber: which piece is cut from which stick. A plain first fit, longest piece first; no proof of least cost."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from guide.layout.parts import Part
from guide.lengths import Length, greatest


@dataclass(frozen=True, slots=True)
class Stick:
    """One stick and the parts cut from it, in cutting order."""

    length: Length
    parts: tuple[Part, ...]
    rest: Length
    """What is left after the last cut, never below 0."""


@dataclass(frozen=True, slots=True)
class TooLong:
    """A part that no stick on the list is long enough for."""

    part: Part


def shortest_that_holds(cut: Length, lengths: Sequence[Length]) -> Length | None:
    """Return the shortest stick that a piece can be cut from, or None. `lengths` rises."""
    return next((length for length in lengths if cut <= length), None)


def cut_from(
    parts: Sequence[Part], lengths: Sequence[Length], *, usual: Length, kerf: Length
) -> tuple[list[Stick], list[TooLong]]:
    """Return sticks that hold every part, and the parts that fit no stick.

    A piece goes into the first stick with room, longest first. A new stick is the `usual` length, or the shortest
    longer one that holds the piece; once filled it is bought as short as its pieces allow. `kerf` is lost at each cut.
    """
    bins: list[_Open] = []
    too_long = []
    for part in sorted(parts, key=lambda part: (-part.cut.ticks, part.id)):
        stock = usual if part.cut <= usual else shortest_that_holds(part.cut, lengths)
        if stock is None:
            too_long.append(TooLong(part))
            continue
        room = next((each for each in bins if part.cut <= each.room), None)
        if room is None:
            room = _Open(stock, stock)
            bins.append(room)
        room.parts.append(part)
        room.room = room.room - part.cut - kerf
    return [_stick(each.length, each.parts, lengths, kerf) for each in bins], too_long


@dataclass
class _Open:
    """A stick that is being filled; the saw cut after its last piece may run off its end."""

    length: Length
    room: Length
    parts: list[Part] = field(default_factory=list)


def _used(parts: Sequence[Part], kerf: Length) -> Length:
    """A saw cut after each piece; the last one may run off the end of the stick."""
    return Length(sum(part.cut.ticks + kerf.ticks for part in parts))


def _stick(stock: Length, parts: Sequence[Part], lengths: Sequence[Length], kerf: Length) -> Stick:
    used = _used(parts, kerf)
    shortest = next((length for length in lengths if used <= length + kerf and length <= stock), stock)
    return Stick(shortest, tuple(parts), greatest(Length(0), shortest - used))
