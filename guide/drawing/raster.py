"""Shapes put on a grid of character cells, so that small things stay visible and in their order.

A stud is half a cell wide and a plate a third of one high, so plain sampling would lose or merge them. Every firm shape
claims cells, from the front of the drawing to its back; one that finds its cells taken moves to the side it lies on of
what is in its way, and what lies behind moves up. A stud moves by one cell at most, so that studs keep their order, or
is drawn as one of two, or over a pipe before it; other things move by two, or are left out where even that is taken.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cached_property

from guide.drawing.shapes import Drawing, Fill, Look
from guide.drawing.signs import COVERING, DOUBLE, JOINT, JOINTED, SEAMS, SIGNS, UPRIGHT, Sign
from guide.lengths import SIXTY_FOURTH, Length

Cell = tuple[int, int]
"""Column from the left, row from the top; what had to give way up or down may stand in rows beyond the picture."""
KEPT_OVER = 2
"""Rows over a ceiling, at least: one for what crowds there, one for what is above."""
WIDE = 3
"""Cells from which a shape covers those that its ends are in, not only those whose middle it covers."""
TICK = Length(1)


@dataclass
class Grid:
    """A drawing on `columns` by `rows` cells. Filled once by `rasterise`, then read and written over with words."""

    of: Drawing
    columns: int
    rows: int
    signs: dict[Cell, Sign] = field(default_factory=dict)
    looks: dict[Cell, Look] = field(default_factory=dict)
    """The wide and empty looks, under the firm ones."""
    firm: dict[Cell, int] = field(default_factory=dict)
    """The shape that claimed a cell."""
    named: dict[Cell, str] = field(default_factory=dict)
    """The part or the thing that a cell shows; cells that show neither are not here."""
    words: dict[Cell, str] = field(default_factory=dict)
    placed: dict[str, int] = field(default_factory=dict)
    """The column of each named shape."""
    ceilings: dict[int, Length] = field(default_factory=dict)
    """The ceiling at the ticks where it was asked for before: every row of a column asks again."""

    def ceiling(self, x: Length) -> Length:
        """Return the height of the ceiling at x."""
        if x.ticks not in self.ceilings:
            self.ceilings[x.ticks] = self.of.ceiling.at(x)
        return self.ceilings[x.ticks]

    def column(self, x: Length) -> int:
        """Return the column that holds x; beyond an edge, the edge's."""
        at = (x - self.of.left).ticks * self.columns // max(1, self.of.wide.ticks)
        return min(max(at, 0), self.columns - 1)

    @cached_property
    def over(self) -> int:
        """Rows kept over the drawing's ceiling: two at least, where it is not the top."""
        room = (self.of.top - max(z for _, z in self.of.ceiling.points)).ticks
        return max(KEPT_OVER, self.rows * room // self.of.tall.ticks) if room > 0 else 0

    def row(self, x: Length, z: Length) -> int:
        """Return the row that holds z at x, which is the upper one where two meet; beyond an edge, the edge's."""
        of, over, ceiling = self.of, self.over, self.ceiling(x)
        if over and z > ceiling:
            return max(0, (of.top - z).ticks * over // (of.top - ceiling).ticks)
        under = (ceiling - z).ticks * (self.rows - over) // max(1, (ceiling - of.bottom).ticks)
        return min(max(under, 0) + over, self.rows - 1)

    def x_of(self, column: int) -> Length:
        """Return the middle of a column."""
        return self.of.left + Length(self.of.wide.ticks * (2 * column + 1) // (2 * self.columns))

    def z_of(self, x: Length, row: int) -> Length:
        """Return the middle of a row at x."""
        of, over, ceiling = self.of, self.over, self.ceiling(x)
        if row < over:
            return of.top - Length((of.top - ceiling).ticks * (2 * row + 1) // (2 * over))
        return ceiling - Length((ceiling - of.bottom).ticks * (2 * (row - over) + 1) // (2 * (self.rows - over)))

    def cells(self, fill: Fill) -> list[Cell]:
        """Return the cells whose middle a shape covers; where it covers none, the one its own middle is in."""
        first, last = self.column(fill.x0), self.column(fill.x1)
        across = [c for c in range(first, last + 1) if fill.x0 <= self.x_of(c) < fill.x1]
        if len(across) >= WIDE:  # its ends may be half a cell short, and what stands at them would stand beside it
            across = list(range(first, self.column(fill.x1 - TICK) + 1))
        found = []
        for column in across or [self.column((fill.x0 + fill.x1) // 2)]:
            x = min(max(self.x_of(column), fill.x0), fill.x1)
            low, high = fill.bottom.at(x), fill.top.at(x)
            rows = range(self.row(x, high), self.row(x, low) + 1)
            upward = [row for row in rows if low <= self.z_of(x, row) < high]
            found += [(column, row) for row in upward or [self.row(x, (low + high) // 2)]]
        return found


def rasterise(drawing: Drawing, columns: int, rows: int) -> Grid:
    """Return a drawing on so many cells, without its words."""
    grid = Grid(drawing, columns, rows)
    fills = [shape for shape in drawing.shapes if isinstance(shape, Fill)]
    for fill in fills:
        if not SIGNS[fill.look].firm:
            for cell in grid.cells(fill):
                grid.signs[cell], grid.looks[cell], grid.named[cell] = SIGNS[fill.look], fill.look, fill.name
    firm = [index for index, fill in enumerate(fills) if SIGNS[fill.look].firm]
    for index in reversed(firm):
        _claim(grid, fills, index)
    grid.named |= {cell: fills[index].name for cell, index in grid.firm.items()}
    grid.named = {cell: name for cell, name in grid.named.items() if "." in name}  # concrete and joists are no pieces
    _joints(grid, fills)
    for look in SEAMS:
        _seams(grid, fills, look)
    return grid


def _claim(grid: Grid, fills: list[Fill], index: int) -> None:
    """Give a firm shape its cells, or those beside them where most are taken."""
    fill = fills[index]
    low, high = _between(grid, fills, fill)
    wanted = [(min(max(column, low), high), row) for column, row in grid.cells(fill)]
    cells = [cell for cell in wanted if cell not in grid.firm]
    owners = Counter(grid.firm[cell] for cell in wanted if cell in grid.firm)
    if fill.look in COVERING:  # posts and rungs of one box lie over each other
        owners = Counter({index: count for index, count in owners.items() if fills[index].look is not fill.look})
    flat = len({column for column, _ in wanted}) == len(wanted)
    least = len(wanted) * 2 / 3 if flat else len(wanted) / 2  # half a cap beside a plate would seem to end there
    if len(wanted) - owners.total() < least:
        owner = fills[owners.most_common(1)[0][0]]
        far = 1 if fill.look in UPRIGHT else 2
        moves = (_moved(grid, fills, index, wanted, way, by) for by in range(1, far + 1) for way in _ways(fill, owner))
        moved = next((cells for cells in moves if len(cells) >= least and low <= cells[0][0] <= high), None)
        cells = cells if moved is None else moved
        if moved is None and fill.look in UPRIGHT:
            owned = {cell: fills[grid.firm[cell]].look for cell in wanted if cell in grid.firm}
            cells = [*cells, *(cell for cell, look in owned.items() if look in COVERING)]
            for cell in (cell for cell, look in owned.items() if look in UPRIGHT):
                grid.signs[cell] = DOUBLE
                grid.placed[fill.name] = cell[0]
    for cell in cells:
        grid.signs[cell], grid.firm[cell] = SIGNS[fill.look], index
    if cells and fill.name:
        grid.placed[fill.name] = (min(c for c, _ in cells) + max(c for c, _ in cells)) // 2


def _moved(grid: Grid, fills: list[Fill], index: int, cells: list[Cell], way: Cell, by: int) -> list[Cell]:
    """Return what is free of cells moved one way; none when that would pass something that lies wholly on that side."""
    right, down = way
    passed = {grid.firm.get((c + right * step, r + down * step)) for c, r in cells for step in range(by)}
    if any(_lies(fills[other], fills[index], way) for other in passed if other is not None):
        return []
    moved = [(column + right * by, row + down * by) for column, row in cells]
    return [(c, r) for c, r in moved if 0 <= c < grid.columns and (c, r) not in grid.firm]


def _between(grid: Grid, fills: list[Fill], fill: Fill) -> tuple[int, int]:
    """Return the first and the last column in which a shape keeps its order among the uprights that stand already."""
    if fill.look not in UPRIGHT:
        return 0, grid.columns - 1
    stand = [
        (other.x0, grid.placed[other.name]) for other in fills if other.look in UPRIGHT and other.name in grid.placed
    ]
    low = max((column for x0, column in stand if x0 <= fill.x0), default=0)
    return low, min((column for x0, column in stand if x0 > fill.x0), default=grid.columns - 1)


def _lies(other: Fill, fill: Fill, way: Cell) -> bool:
    """Say whether one shape lies wholly to one side of another: to the right, to the left, below or above."""
    middle = (max(fill.x0, other.x0) + min(fill.x1, other.x1)) // 2
    match way:
        case (1, 0):
            return other.x0 >= fill.x1
        case (-1, 0):
            return other.x1 <= fill.x0
        case (0, 1):
            return other.top.at(middle) <= fill.bottom.at(middle)
    return other.bottom.at(middle) >= fill.top.at(middle)


def _ways(fill: Fill, owner: Fill) -> list[Cell]:
    """Return which ways a shape may give way to the one before it: away from it where they lie beside each other."""
    right, left, down, up = (1, 0), (-1, 0), (0, 1), (0, -1)
    for way, away in ((up, down), (down, up), (left, right), (right, left)):
        if _lies(owner, fill, way):
            return [away]
    middle = (fill.x0 + fill.x1) // 2
    if fill.x1 - fill.x0 > fill.top.at(middle) - fill.bottom.at(middle):
        return [up]
    return [right, left] if fill.x0 + fill.x1 >= owner.x0 + owner.x1 else [left, right]


def _joints(grid: Grid, fills: list[Fill]) -> None:
    """Put the joint's sign where two pieces of one look lie end to end."""
    for index, right in enumerate(fills):
        if right.look not in JOINTED:
            continue
        for other, left in enumerate(fills):
            if (
                left.look is right.look
                and left.x1 == right.x0
                and left.bottom.at(right.x0) == right.bottom.at(right.x0)
            ):
                column = grid.column(right.x0)
                for row in range(grid.rows):
                    if grid.firm.get((column, row)) in (index, other):
                        grid.signs[column, row] = JOINTED[right.look]


def _seams(grid: Grid, fills: list[Fill], look: Look) -> None:
    """Put the seam's sign where two pieces of foam or drywall meet, beside a stud where one stands before it."""
    upright, flat = SEAMS[look]
    pieces = [fill for fill in fills if fill.look is look]
    for a in pieces:
        for b in pieces:
            if a.x1 == b.x0:
                low, high = (
                    f(e.at(a.x1) for e in es) for f, es in ((max, (a.bottom, b.bottom)), (min, (a.top, b.top)))
                )
                if low < high:
                    _upright_seam(grid, grid.column(a.x1), grid.row(a.x1, high), grid.row(a.x1, low), look, upright)
            x0, x1 = max(a.x0, b.x0), min(a.x1, b.x1)
            if x0 < x1 and abs(a.top.at(x0) - b.bottom.at(x0)) < SIXTY_FOURTH:  # on a slope each rounds for itself
                row = grid.row(x0, a.top.at(x0))
                columns = range(grid.column(x0), grid.column(x1) + 1)
                _write_seam(grid, ((column, row) for column in columns), look, flat)


def _upright_seam(grid: Grid, column: int, top: int, bottom: int, look: Look, sign: Sign) -> None:
    ways = [
        [(c, row) for row in range(top, bottom + 1)] for c in (column, column + 1, column - 1) if 0 <= c < grid.columns
    ]
    _write_seam(grid, max(ways, key=lambda cells: sum(cell not in grid.firm for cell in cells)), look, sign)


def _write_seam(grid: Grid, cells: Iterable[Cell], look: Look, sign: Sign) -> None:
    for cell in cells:
        if cell not in grid.firm and grid.looks.get(cell) is look:
            grid.signs[cell] = sign


def used(grid: Grid) -> list[Sign]:
    """Return every sign that shows, in the order of the table of signs."""
    shown = {sign for cell, sign in grid.signs.items() if cell not in grid.words}
    return [sign for sign in (*SIGNS.values(), DOUBLE, JOINT, *SEAMS[Look.FOAM], *SEAMS[Look.SHEET]) if sign in shown]
