"""A drawing as lines of text, for a terminal and for a paper: never wider than asked, the same text every time.

Heights stand in the left margin, marks above and below, a rule along the bottom, and under it what the signs are. Words
that do not fit are left out, never run into each other.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Set
from textwrap import wrap

from guide.drawing.pointing import Drawn
from guide.drawing.raster import Grid, rasterise, used
from guide.drawing.shapes import LOCKED, Drawing, Label, Line, Mark, Ruler
from guide.drawing.signs import RULE, Sign
from guide.drawing.words import fitting, label, line, plain
from guide.lengths import ZERO, Length, Tape, from_mm, inches, show

FEWEST_ROWS, MOST_ROWS = 12, 28
"""Rows of the picture where nothing is asked: enough to tell things apart, few enough to be seen at once."""
LEAST_ROWS, LEAST_CELLS = 8, 24
"""Rows and columns of the picture under which nothing could be told apart."""
STEPS = {
    "inches": tuple(inches(str(step)) for step in (6, 12, 24, 48, 96, 192, 384, 768)),
    "millimetres": tuple(from_mm(step) for step in (100, 250, 500, 1000, 2000, 5000, 10000, 20000)),
}
"""What a rule may be divided in; the finest that can be read is taken."""
STAR = "*"
"""Stands under what is to be seen first, and before its row."""
STARRED_WIDE = 3
"""Columns of what a star can stand under; it would say nothing of a plate."""
BETWEEN = 2
"""Spaces between two numbers of a rule, at least."""


def render(
    drawing: Drawing,
    *,
    columns: int,
    rows: int | None = None,
    tape: Tape = "inches",
    ascii_only: bool = False,
    locked: Callable[[Length], bool] = lambda length: False,
) -> str:
    """Return a drawing as text, no line wider than `columns` and none with a space at its end.

    A size for which `locked` says yes, because it rests on something nobody measured, reads `locked`.

    `rows` is the most lines there may be, title and legend included; the picture keeps eight whatever is asked. Without
    it the picture is true in its proportions, or up to twice as tall where it would be under 12 rows, at most 28. Made for 36 columns and more; under that it is cut off.
    """
    drawn = draw(drawing, columns=columns, rows=rows, tape=tape, ascii_only=ascii_only, locked=locked)
    return "\n".join(drawn.lines).rstrip("\n")


def draw(
    drawing: Drawing,
    *,
    columns: int,
    rows: int | None = None,
    tape: Tape = "inches",
    ascii_only: bool = False,
    locked: Callable[[Length], bool] = lambda length: False,
    starred: Set[str] = frozenset(),
) -> Drawn:
    """Return the same text with what each character shows; under the pieces in `starred` stands a row of stars."""
    page = _Page(drawing, columns, tape, ascii_only, locked, starred)
    cells, picture = page.size()
    drawn = page.drawn(cells, picture)
    while rows is not None and len(drawn.lines) > rows and picture > LEAST_ROWS:
        picture = max(LEAST_ROWS, picture - (len(drawn.lines) - rows))
        drawn = page.drawn(cells, picture)
    return drawn


class _Page:
    """What stays the same while the size of the picture is looked for."""

    def __init__(
        self,
        drawing: Drawing,
        columns: int,
        tape: Tape,
        ascii_only: bool,
        locked: Callable[[Length], bool],
        starred: Set[str],
    ) -> None:
        self.drawing, self.columns, self.tape, self.ascii_only = drawing, columns, tape, ascii_only
        self.locked, self.starred = locked, starred
        self.marks: dict[tuple[bool, str], list[Mark]] = {}
        for shape in drawing.shapes:
            if isinstance(shape, Mark):
                self.marks.setdefault((shape.above, shape.row), []).append(shape)
        numbers = [
            show(step * (edge.ticks // step.ticks), tape)
            for step in STEPS[tape]
            for edge in (drawing.bottom, drawing.top)
        ]
        self.margin = 1 + max(len(text) for text in (*numbers, self.unit, *(row for _, row in self.marks)))

    @property
    def unit(self) -> str:
        return "in" if self.tape == "inches" else "mm"

    def said(self, length: Length) -> str:
        """Return a size as it is printed."""
        return LOCKED if self.locked(length) else show(length, self.tape)

    def size(self) -> tuple[int, int]:
        """Return columns and rows of the picture where nothing is asked; a cell is twice as tall as it is wide."""
        wide, tall = max(1, self.drawing.wide.ticks), max(1, self.drawing.tall.ticks)
        room = max(1, self.columns - self.margin)
        widest = max(LEAST_CELLS, wide * 2 * MOST_ROWS * self.drawing.stretch // tall)
        cells = min(room, widest)
        rows = tall * cells // (wide * 2)
        return cells, min(max(rows, min(2 * rows, FEWEST_ROWS), LEAST_ROWS), MOST_ROWS)

    def drawn(self, cells: int, rows: int) -> Drawn:
        grid = rasterise(self.drawing, cells, rows)
        for shape in self.drawing.shapes:
            if isinstance(shape, Line):
                line(grid, shape, self.ascii_only)
        for shape in self.drawing.shapes:
            if isinstance(shape, Label):
                label(grid, shape, self.said, self.ascii_only)
        rows_of = {key: self._marks(grid, key[1], marks) for key, marks in self.marks.items()}
        above = [text for (over, _), text in rows_of.items() if over and text]
        below = [text for (over, _), text in rows_of.items() if not over and text]
        title = wrap(plain(self.drawing.title, self.ascii_only), max(1, self.columns))
        stars = self._stars(grid)
        lines = [*title, "", *above, *self._picture(grid), *stars, *below, *self._ruler(grid), "", *self._legend(grid)]
        first = len(title) + 1 + len(above) - min([0, *(row for _, row in grid.signs)])
        names = {(column + self.margin, row + first): name for (column, row), name in grid.named.items()}
        return Drawn(tuple(text[: self.columns].rstrip() for text in lines), names)

    def _stars(self, grid: Grid) -> list[str]:
        """Return the row of stars; under what runs along the wall none can stand, and with none there is no row."""
        wide = Counter(name for _, name in {(column, name) for (column, _), name in grid.named.items()})
        starred = (name for name in self.starred if name in grid.placed and wide[name] <= STARRED_WIDE)
        columns = {grid.placed[name] for name in starred}
        if not columns:
            return []
        return [f"{STAR:>{self.margin - 1}} " + "".join(STAR if at in columns else " " for at in range(grid.columns))]

    def _picture(self, grid: Grid) -> list[str]:
        left, top = grid.of.left, grid.of.ceiling.at(grid.of.left)
        steps = self._steps(max(ZERO, grid.of.bottom), top, grid.rows - grid.over)
        numbers = {grid.row(left, z): show(z, self.tape) for z in steps}
        blank, rows = Sign(" ", " ", ""), [row for _, row in grid.signs]
        return [
            f"{numbers.get(row, ''):>{self.margin - 1}} "
            + "".join(
                grid.words.get((column, row)) or grid.signs.get((column, row), blank).plain(self.ascii_only)
                for column in range(grid.columns)
            )
            for row in range(min([0, *rows]), max([grid.rows - 1, *rows]) + 1)
        ]

    def _steps(self, low: Length, high: Length, cells: int, apart: int = 2) -> list[Length]:
        """Return the divisions from low to high on so many cells, the finest that are `apart` cells from each other."""
        whole = max(1, (high - low).ticks)
        steps = STEPS[self.tape]
        step = next((s for s in steps if s.ticks * cells >= apart * whole), steps[-1])
        first, last = -(-low.ticks // step.ticks), high.ticks // step.ticks
        return [Length(step.ticks * number) for number in range(first, last + 1)]

    def _marks(self, grid: Grid, row: str, marks: list[Mark]) -> str:
        """Return one row of marks; of two that would touch, the earlier in the drawing stays. Empty when none fits."""
        written: dict[int, str] = {}
        for mark in marks:
            if mark.name and mark.name not in grid.placed:
                continue
            column = grid.placed[mark.name] if mark.name else grid.column(mark.x)
            sized = (self.said(mark.size),) if mark.size is not None else ()
            for text in mark.texts or sized:
                said = plain(text, self.ascii_only)
                if (start := fitting(written, said, column, grid.columns)) is not None:
                    written |= {start + at: char for at, char in enumerate(said)}
                    break
        said = "".join(written.get(column, " ") for column in range(grid.columns))
        return f"{row:>{self.margin - 1}} {said}" if written else ""

    def _ruler(self, grid: Grid) -> list[str]:
        ruler = next((shape for shape in self.drawing.shapes if isinstance(shape, Ruler)), None)
        if ruler is None:
            return []
        long = ruler.x1 - ruler.x0
        end = self.said(long)
        first, last = grid.column(ruler.x0), grid.column(ruler.x1)
        steps = self._steps(ZERO, long, last - first + 1, len(end.split()[0]) + BETWEEN)
        written: dict[int, str] = {}
        plain_rule, division = RULE[self.ascii_only]
        rule = dict.fromkeys(range(first, last + 1), plain_rule)
        for at in (ZERO, long, *steps):
            column, text = grid.column(ruler.x0 + at), self.said(at)
            if (start := fitting(written, text, column, grid.columns)) is not None:
                written |= {start + offset: char for offset, char in enumerate(text)}
                rule[column] = division
        blank = " " * self.margin
        return [
            blank + "".join(rule.get(column, " ") for column in range(grid.columns)),
            f"{self.unit:>{self.margin - 1}} " + "".join(written.get(column, " ") for column in range(grid.columns)),
        ]

    def _legend(self, grid: Grid) -> list[str]:
        entries: dict[str, str] = {}
        for sign in used(grid):
            if sign.says:
                entries[sign.says] = f"{entries.get(sign.says, '')} {sign.plain(self.ascii_only)}".strip()
        lines = [""]
        for says, signs in entries.items():
            entry = f"{signs} {says}"
            if lines[-1] and len(lines[-1]) + 3 + len(entry) > self.columns:
                lines.append("")
            lines[-1] += f"   {entry}" if lines[-1] else entry
        unit = "inches" if self.tape == "inches" else "millimetres"
        of = self.drawing
        wider = ", drawn wider than true" if of.stretch > 1 else ""
        counted = f"Along the bottom: {unit} {of.across}{wider}. On the left: {unit} {of.up}." if of.across else ""
        return [*lines, *wrap(counted, max(1, self.columns))]
