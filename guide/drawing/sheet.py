"""The sheet a drawing in ink lies on: where its lengths fall, in hundredths of a unit to the right and downward.

Whole numbers throughout, rounded once from exact lengths, so that the same drawing gives the same bytes everywhere.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from guide.drawing.hatches import Ink, ink
from guide.drawing.lettering import TITLE, Box, folded, printable
from guide.drawing.measured import deep, under
from guide.drawing.shapes import LOCKED, Chain, Drawing, Edge, Fill, Mark
from guide.lengths import FOOT, Length, Tape, in_feet, inches, show

WIDE = 72_000
"""Width of every drawing, in hundredths of a unit: 7 1/2 in on paper at 96 units to the inch."""
MOST_TALL = 50_000
"""Most height of the picture itself: with its words it stays on one sheet."""
MARGIN = 500
LINE = 1_500
"""From one line of words to the next."""
BROKEN = 13_000
"""Height that is left of the stretch a broken drawing leaves out."""
KEPT = inches("5")
"""What is still drawn true at either end of that stretch."""
IN_FEET_FROM = FOOT * 2
"""An overall size of so much and more is said in feet and inches too."""


@dataclass(frozen=True)
class Sheet:
    """A drawing on its sheet. `locked` says which sizes rest on something nobody measured."""

    of: Drawing
    name: str
    tape: Tape
    locked: Callable[[Length], bool]

    @cached_property
    def fills(self) -> list[Fill]:
        """Its filled shapes, in the order they are laid down."""
        return [shape for shape in self.of.shapes if isinstance(shape, Fill)]

    @cached_property
    def fold(self) -> tuple[Length, Length] | None:
        """The stretch of the height in which nothing begins or ends, where the drawing may be broken."""
        if self.of.stretch == 1:
            return None
        heights = {
            edge.at(x).ticks for fill in self.fills for x in (fill.x0, fill.x1) for edge in (fill.bottom, fill.top)
        }
        stretches = sorted(pairwise(sorted(heights)), key=lambda each: each[0] - each[1])
        if not stretches or stretches[0][1] - stretches[0][0] < self.of.tall.ticks // 3:
            return None
        low, high = stretches[0]
        return Length(low) + KEPT, Length(high) - KEPT

    @cached_property
    def through(self) -> list[Fill]:
        """What goes on through the stretch that is left out."""
        if self.fold is None:
            return []
        low, high = self.fold
        return [fill for fill in self.fills if fill.bottom.at(fill.x0) <= low and high <= fill.top.at(fill.x0)]

    @cached_property
    def scale(self) -> tuple[int, int]:
        """Hundredths of a unit for so many ticks."""
        room = WIDE - self._left_room - self._right_room
        folded = (self.fold[1] - self.fold[0]).ticks if self.fold else 0
        tall, most = max(1, self.of.tall.ticks - folded), MOST_TALL - (BROKEN if self.fold else 0)
        across = max(1, self.of.wide.ticks)
        return (room, across) if room * tall <= most * across else (most, tall)

    def chains(self, *edges: Edge) -> list[Chain]:
        """Return the chains that stand beside these edges."""
        return [shape for shape in self.of.shapes if isinstance(shape, Chain) and shape.edge in edges]

    @cached_property
    def _left_room(self) -> int:
        return MARGIN * 2 + sum(deep(chain, self.said) for chain in self.chains("left"))

    @cached_property
    def _right_room(self) -> int:
        return MARGIN * 2 + sum(deep(chain, self.said) for chain in self.chains("right"))

    def x(self, x: Length) -> int:
        """Return where x lies across."""
        times, by = self.scale
        spare = WIDE - self._left_room - self._right_room - self.of.wide.ticks * times // by
        return self._left_room + spare // 2 + (x - self.of.left).ticks * times // by

    def up(self, z: Length) -> int:
        """Return how far over the bottom of the picture z lies."""
        (times, by), ticks = self.scale, (z - self.of.bottom).ticks
        if not self.fold or z <= self.fold[0]:
            return ticks * times // by
        low, high = ((edge - self.of.bottom).ticks for edge in self.fold)
        if z >= self.fold[1]:
            return (low + ticks - high) * times // by + BROKEN
        return low * times // by + BROKEN * (ticks - low) // (high - low)

    @cached_property
    def title(self) -> list[str]:
        """What stands over the drawing, in lines."""
        return folded(printable(self.of.title), TITLE, WIDE - 2 * MARGIN)

    def rows(self, *, above: bool) -> dict[str, list[Mark]]:
        """Return the marks over or under the picture by their row, each row from the left."""
        marks = sorted((m for m in self.of.shapes if isinstance(m, Mark) and m.above is above), key=lambda m: m.x)
        found = (shape.row for shape in self.of.shapes if isinstance(shape, Mark) and shape.above is above)
        return {row: [mark for mark in marks if mark.row == row] for row in dict.fromkeys(found)}

    @cached_property
    def top(self) -> int:
        """How far down the top of the picture lies: under the title and what is marked above."""
        y = MARGIN + LINE * (len(self.title) + 1 + len(self.rows(above=True)))
        for chain in self.chains("above"):
            y = under([], chain, y, self.x, self.room, self.said)[1]
        return y

    @cached_property
    def foot(self) -> int:
        """How far down the bottom of the picture lies."""
        return self.top + self.up(self.of.top)

    def y(self, z: Length) -> int:
        """Return where z lies, downward."""
        return self.foot - self.up(z)

    def said(self, length: Length, overall: bool = False) -> str:
        """Return a size as it is printed; an overall one of some feet in feet and inches as well."""
        if self.locked(length):
            return LOCKED
        if self.tape == "millimetres":
            return show(length, self.tape)
        feet = f" ({in_feet(length)})" if overall and length >= IN_FEET_FROM else ""
        return f'{show(length, self.tape)}"{feet}'

    def box(self, fill: Fill) -> Box:
        """Return the room a shape takes up, where its bottom or top slopes the least of it."""
        ends = (fill.x0, fill.x1)
        top, bottom = min(fill.top.at(x) for x in ends), max(fill.bottom.at(x) for x in ends)
        return Box(self.x(fill.x0), self.y(top), self.x(fill.x1), self.y(bottom))

    def beside(self, edge: Edge) -> Iterator[tuple[Chain, int]]:
        """Yield each chain at a side with its edge nearest to the picture, the nearest first."""
        x, out = (self.x(self.of.left), -1) if edge == "left" else (self.x(self.of.right), 1)
        for chain in self.chains(edge):
            yield chain, x
            x += deep(chain, self.said) * out

    @property
    def room(self) -> tuple[int, int]:
        """From where to where words may stand across."""
        return MARGIN, WIDE - MARGIN

    @cached_property
    def inks(self) -> list[Ink]:
        """How the shapes of this drawing are drawn, each way once, in the order they come."""
        return list(dict.fromkeys(ink(fill) for fill in self.fills))
