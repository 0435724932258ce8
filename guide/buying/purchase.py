"""The purchase: takeoff straight from the parts, rounded up to what a shop sells."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from guide.buying.lines import Line, in_walking_order, lines_of, sheet_lines, stick_lines
from guide.buying.sticks import Lumber, Stick, TooLong, cut_from
from guide.buying.takeoff import takeoff
from guide.layout.drywall import sheets_in
from guide.layout.packing import sheets_for
from guide.layout.parts import Layout, Material, Part
from guide.lengths import Length, inches
from guide.reference.figures import load_figures
from guide.reference.stock import StockItem, load_stock

LUMBER = (("stud_2x4", Material.STUD), ("treated_2x4", Material.TREATED))
"""What sticks are bought as, and what is cut from them."""


@dataclass(frozen=True)
class Purchase:
    """Everything to buy, and how the lumber is cut."""

    lines: tuple[Line, ...]
    lumber: tuple[Lumber, ...]
    """Plain and treated, cut apart: the treated pieces last, with a bin of their own."""
    foam_sheets: tuple[tuple[Part, ...], ...]
    plywood_sheets: tuple[tuple[Part, ...], ...]

    @property
    def sticks(self) -> tuple[Stick, ...]:
        """Every stick, plain ones first."""
        return tuple(stick for lumber in self.lumber for stick in lumber.sticks)

    @property
    def too_long(self) -> tuple[TooLong, ...]:
        """The parts that no stick on the list is long enough for."""
        return tuple(missed for lumber in self.lumber for missed in lumber.too_long)


def buy(layout: Layout) -> Purchase:
    """Return what the layout takes. Rounds up by stick, sheet and pack; the same layout gives the same list."""
    stock, parts = load_stock(), list(layout.parts.values())
    basement = layout.survey.basement
    lumber = tuple(
        cut_from(
            item,
            [part for part in parts if part.material is material],
            _lengths(stock.item[item]),
            usual=inches(f"{basement.longest_stick} ft"),
            kerf=load_figures().kerf,
        )
        for item, material in LUMBER
    )
    foam = sheets_of(
        (p for p in parts if p.material is Material.FOAM), wide=inches(basement.foam_sheet), kerf=Length(0)
    )
    ply_wide, ply_kerf = load_figures().sheet_long // 2, load_figures().cap_kerf
    plywood = sheets_of((p for p in parts if p.material is Material.PLYWOOD), wide=ply_wide, kerf=ply_kerf)
    drywall = sheets_in([p for p in parts if p.material is Material.DRYWALL], load_figures().sheet_long)
    lines = [
        *(line for each in lumber for line in stick_lines(each.item, each.sticks)),
        *sheet_lines("foam", foam, f"{inches(basement.foam_sheet).inch // 12} by 8 ft"),
        *sheet_lines("plywood", plywood, "4 by 8 ft"),
        *sheet_lines("drywall", drywall, f"{basement.drywall} in, 4 by 8 ft"),
        *lines_of(takeoff(layout)),
    ]
    return Purchase(tuple(in_walking_order(lines)), lumber, foam, plywood)


def sheets_of(parts: Iterable[Part], *, wide: Length, kerf: Length) -> tuple[tuple[Part, ...], ...]:
    """Return, per sheet, the parts cut from it. Plywood loses a saw cut between two strips; foam is scored and snapped."""
    pieces = list(parts)
    sizes = [(part.wide or wide, part.cut) for part in pieces]
    packed = sheets_for(sizes, wide=wide, tall=load_figures().sheet_long, kerf=kerf)
    return tuple(tuple(pieces[n] for n in sheet) for sheet in packed)


def _lengths(item: StockItem) -> list[Length]:
    return [inches(length) for length in item.lengths]
