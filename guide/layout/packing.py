"""How many sheets a set of rectangles takes: columns ripped the full height of a sheet, pieces stacked in each.

A plain first fit, widest first: an honest count that can be cut, not a proof that no fewer would do.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from guide.lengths import ZERO, Length


@dataclass
class _Column:
    wide: Length
    left: Length
    """Height still free."""
    pieces: list[int] = field(default_factory=list)


def sheets_for(
    pieces: Iterable[tuple[Length, Length]], *, wide: Length, tall: Length, kerf: Length
) -> tuple[tuple[int, ...], ...]:
    """Return, per sheet, the numbers (in the order given) of the pieces cut from it.

    Pieces are (width, height), each no larger than the sheet; `kerf` is lost between two columns and two pieces.
    Pieces are not turned. Ties keep the order given.
    """
    sizes = list(pieces)
    sheets: list[list[_Column]] = []
    free: list[Length] = []
    for number in sorted(range(len(sizes)), key=lambda n: (-sizes[n][0].ticks, -sizes[n][1].ticks, n)):
        w, h = sizes[number]
        column = _column_with_room(sheets, w, h)
        if column is None:
            sheet = next((s for s, room in enumerate(free) if w <= room), None)
            if sheet is None:
                sheets.append([])
                free.append(wide)
                sheet = len(sheets) - 1
            column = _Column(w, tall)
            sheets[sheet].append(column)
            free[sheet] = free[sheet] - w - kerf
        column.pieces.append(number)
        column.left = column.left - h - kerf
    return tuple(tuple(n for column in sheet for n in column.pieces) for sheet in sheets)


def _column_with_room(sheets: list[list[_Column]], w: Length, h: Length) -> _Column | None:
    """Return the first column that is wide and high enough; a column is never more than a little wider than its piece."""
    for sheet in sheets:
        for column in sheet:
            if w <= column.wide and h <= column.left and column.left > ZERO:
                return column
    return None
