"""The yard's saw: where long sticks are cut so that they fit the person's way home, at as few settings as can be.

No piece is cut to size there: what is left over of a stick lies on both sides of the cut, so that every piece is still
cut at home, once a test piece has been tried. Each part holds whole pieces, those named first in the part measured.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from guide.buying.sticks import Stick
from guide.lengths import SIXTEENTH, Length, greatest, least


@dataclass(frozen=True, slots=True)
class YardCut:
    """Sticks of one length that are cut alike."""

    count: int
    at: tuple[Length, ...]
    """The places of the cuts, all from one end."""


def yard_cuts(sticks: Iterable[Stick], trim: Length, kerf: Length, longest: Length) -> tuple[YardCut, ...]:
    """Return how sticks longer than `longest` are cut. Every piece is `longest` at most with its trim."""
    alone, ranges = [], []
    for stick in sticks:
        parts = _parts(stick, trim, kerf, longest)
        low = greatest(parts[0], stick.length - kerf - longest)
        high = longest if len(parts) == 1 else least(longest, parts[0] + stick.rest)
        if len(parts) <= 2 and low <= high:
            ranges.append((high, low))
        else:
            ends = [sum(parts[1:n], start=parts[0]) + kerf * (n - 1) for n in range(1, len(parts) + 1)]
            alone.append(YardCut(1, tuple(end for end in ends if stick.length - end > kerf)))
    found = []
    ranges.sort()
    while ranges:
        at = _mark(*ranges[0])
        held = [each for each in ranges if each[1] <= at <= each[0]]
        ranges = [each for each in ranges if not each[1] <= at <= each[0]]
        found.append(YardCut(len(held), (at,)))
    return (*found, *alone)


def _parts(stick: Stick, trim: Length, kerf: Length, longest: Length) -> list[Length]:
    """Return the length of wood that each part has to have, pieces put together in order while they fit."""
    parts: list[Length] = []
    for piece in stick.parts:
        if parts and parts[-1] + kerf + piece.cut <= longest:
            parts[-1] += kerf + piece.cut
        else:
            parts.append(piece.cut if parts else piece.cut + trim)
    return parts


def _mark(high: Length, low: Length) -> Length:
    """Return the highest easy mark of a tape between two places: quarters before sixteenths."""
    marks = (high.down_to(step) for step in (SIXTEENTH * 4, SIXTEENTH))
    return next((mark for mark in marks if mark >= low), high)
