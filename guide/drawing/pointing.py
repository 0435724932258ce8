"""A drawing as lines of text in which every character knows what it shows, so that a person can point at a piece of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from guide.drawing.raster import Cell


@dataclass(frozen=True)
class Drawn:
    """Lines of text, and what stands in them where; a cell is (column, line), both from 0."""

    lines: tuple[str, ...]
    names: Mapping[Cell, str]
    """The id of the part, or the place of the thing, that a cell shows; cells that show neither are not here."""

    def cells(self, name: str) -> tuple[Cell, ...]:
        """Return the cells that show a piece, from the left; none when it does not show."""
        return tuple(sorted(cell for cell, each in self.names.items() if each == name))

    def first(self) -> Cell | None:
        """Return the leftmost cell that shows a piece, in the line where most pieces show; None when there is none."""
        if not self.names:
            return None
        shown: dict[int, set[str]] = {}
        for (_, line), name in sorted(self.names.items()):
            shown.setdefault(line, set()).add(name)
        fullest = max(sorted(shown), key=lambda line: len(shown[line]))
        return min(cell for cell in self.names if cell[1] == fullest)

    def next(self, at: Cell, right: int, down: int) -> Cell:
        """Return the next cell in a direction that shows another piece than `at` does; `at` itself when there is none.

        One of `right` and `down` is 1 or -1, the other 0.
        """
        here, (column, line) = self.names.get(at), at
        wide = max((column for column, _ in self.names), default=0)
        while 0 <= column <= wide and 0 <= line < len(self.lines):
            column, line = column + right, line + down
            if self.names.get((column, line), here) != here:
                return column, line
        return at
