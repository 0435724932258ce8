"""Words on the grid: they stand where nothing firm is, apart from each other, or not at all."""

from __future__ import annotations

import unicodedata
from collections.abc import Callable, Iterator, Mapping

from guide.drawing.raster import Cell, Grid
from guide.drawing.shapes import Label, Line, Look
from guide.drawing.signs import LINE_LEVEL, LINE_UPRIGHT, WRITE_OVER
from guide.lengths import Length

REACH = 4
"""Cells that words may stand away from their place."""


def plain(text: str, ascii_only: bool) -> str:
    """Return words with every character that may not take exactly one cell, or is not ASCII where asked, made plain."""
    return "".join(_cell(char, ascii_only) for char in unicodedata.normalize("NFC", text))


def _cell(char: str, ascii_only: bool) -> str:
    if char.isascii():
        return char if char.isprintable() else " "
    if (
        not ascii_only
        and char.isprintable()
        and unicodedata.east_asian_width(char) in ("N", "Na", "A", "H")
        and not unicodedata.combining(char)
    ):
        return char
    base = unicodedata.normalize("NFKD", char)[0]
    return base if base.isascii() and base.isprintable() else "?"


def fitting(written: Mapping[int, str], text: str, column: int, columns: int) -> int | None:
    """Return where a text can start in a row so that it covers a column and touches nothing there; None where it cannot."""
    middle = column - (len(text) - 1) // 2
    for start in sorted(range(column - len(text) + 1, column + 1), key=lambda start: abs(start - middle)):
        if (
            start >= 0
            and start + len(text) <= columns
            and not any(c in written for c in range(start - 1, start + len(text) + 1))
        ):
            return start
    return None


def label(grid: Grid, what: Label, sized: Callable[[Length], str], ascii_only: bool) -> None:
    """Write a label in its fullest wording that fits near its place, or leave it out; `sized` prints its size."""
    size = f" {sized(what.size)}" if what.size is not None else ""
    for text in what.texts:
        said = plain(f"{text}{size}", ascii_only)
        for column, row in _starts(grid, what, len(said)):
            cells = [(column + at, row) for at in range(len(said))]
            if soft(grid, cells, WRITE_OVER) and not any(
                (c, row) in grid.words for c in (column - 1, column + len(said))
            ):
                grid.words |= dict(zip(cells, said, strict=True))
                for cell in ((column - 1, row), (column + len(said), row)):
                    if soft(grid, [cell], WRITE_OVER):
                        grid.words[cell] = " "
                return


def _starts(grid: Grid, what: Label, long: int) -> Iterator[Cell]:
    """Yield where a label may start, the nearest to its place first."""
    column, row = grid.column(what.x), grid.row(what.x, what.z)
    right, left, middle = column + 1, column - long, column - long // 2
    first = {"right": (right, left), "left": (left, right), "middle": (middle,)}[what.side]
    for down in (0,) if what.fixed else (0, 1, -1, 2, -2):
        for start, way in zip(first, ((1, -1) if what.side != "left" else (-1, 1)), strict=False):
            for away in range(REACH):
                yield start + away * way, row + down
                if what.side == "middle":
                    yield start - away, row + down


def line(grid: Grid, what: Line, ascii_only: bool) -> None:
    """Draw a level or upright line over whatever is there, but not over another."""
    (c0, r0), (c1, r1) = (
        (grid.column(what.x0), grid.row(what.x0, what.z0)),
        (grid.column(what.x1), grid.row(what.x1, what.z1)),
    )
    upright = what.x0 == what.x1
    signs = (LINE_UPRIGHT if upright else LINE_LEVEL)[ascii_only]
    cells = (
        [(c0, r) for r in range(min(r0, r1), max(r0, r1) + 1)]
        if upright
        else [(c, r0) for c in range(min(c0, c1), max(c0, c1) + 1)]
    )
    if any(cell in grid.words for cell in cells):
        return
    for at, cell in enumerate(cells):
        grid.words[cell] = signs[0] if at == 0 else signs[2] if at == len(cells) - 1 else signs[1]


def soft(grid: Grid, cells: list[Cell], over: tuple[Look | None, ...]) -> bool:
    """Say whether words may stand in these cells."""
    return all(
        0 <= c < grid.columns
        and 0 <= r < grid.rows
        and (c, r) not in grid.firm
        and (c, r) not in grid.words
        and grid.looks.get((c, r)) in over
        for c, r in cells
    )
