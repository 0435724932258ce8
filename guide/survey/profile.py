"""A height along a wall. It owns one promise: every place has one height, and that rests on the readings it comes from."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from guide.lengths import SIXTY_FOURTH, ZERO, Length, between, least

STEP = Length(1)
"""How wide a step is."""


@dataclass(frozen=True, slots=True)
class Profile:
    """A height read at several places along a wall; between two places it runs straight, beyond the last it stays level.

    A step is a tick wide and lies on its low side: the high part reaches to the place that was read.
    """

    points: tuple[tuple[Length, Length], ...]
    """(x, reading), x rising."""

    def at(self, x: Length) -> Length:
        """Return the height at x. Rests on the readings on both sides, and on x."""
        points = self.points
        if x <= points[0][0]:
            return points[0][1].with_rests(x.rests)
        for (x0, low), (x1, high) in pairwise(points):
            if x <= x1:
                return between(low, high, part=x - x0, whole=x1 - x0)
        return points[-1][1].with_rests(x.rests)

    def least_over(self, x0: Length, x1: Length) -> Length:
        """Return the smallest height between two places; it is at one of them or at a reading between."""
        inside = [value for x, value in self.points if x0 < x < x1]
        return least(self.at(x0), self.at(x1), *inside)

    def off_line(self) -> tuple[Length, ...]:
        """Return how far each reading is over the straight line between its neighbours, to a sixty-fourth; 0 at both ends and at a step."""
        bends = [
            ZERO if STEP in (x - x0, x1 - x) else (y - between(y0, y1, part=x - x0, whole=x1 - x0)).near(SIXTY_FOURTH)
            for (x0, y0), (x, y), (x1, y1) in zip(self.points, self.points[1:], self.points[2:], strict=False)
        ]
        return (ZERO, *bends, ZERO)[: len(self.points)]

    @property
    def steps(self) -> tuple[tuple[Length, Length], ...]:
        """Return each step from the left: where the part on its left ends and the one on its right begins."""
        return tuple((x0, x1) for (x0, _), (x1, _) in pairwise(self.points) if x1 - x0 == STEP)

    def breaks(self, x0: Length, x1: Length) -> tuple[Length, ...]:
        """Return the places strictly between x0 and x1 where the line bends."""
        return tuple(x for x, _ in self.points if x0 < x < x1)
