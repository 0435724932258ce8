"""The purchase: takeoff straight from the parts, rounded up to what a shop sells."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from guide.buying.lines import Line, in_walking_order, lines_of, sheet_lines, stick_lines
from guide.buying.sticks import Stick, TooLong, cut_from, shortest_that_holds
from guide.buying.takeoff import takeoff
from guide.layout.packing import sheets_for
from guide.layout.parts import FULL_HEIGHT, Layout, Material, Part
from guide.lengths import FOOT, Length, inches
from guide.reference.figures import load_figures
from guide.reference.stock import StockItem, load_stock


@dataclass(frozen=True)
class Purchase:
    """Everything to buy, and how the lumber is cut."""

    lines: tuple[Line, ...]
    sticks: tuple[Stick, ...]
    too_long: tuple[TooLong, ...]
    foam_sheets: tuple[tuple[Part, ...], ...]
    plywood_sheets: tuple[tuple[Part, ...], ...]


def buy(layout: Layout) -> Purchase:
    """Return what the layout takes. Rounds up by stick, sheet and pack; the same layout gives the same list."""
    stock, parts = load_stock(), list(layout.parts.values())
    basement = layout.survey.basement
    usual = inches(f"{basement.longest_stick} ft")
    full = [p for p in parts if p.material is Material.STUD and p.kind in FULL_HEIGHT]
    plain = [p for p in parts if p.material is Material.STUD and p.kind not in FULL_HEIGHT]
    treated = [p for p in parts if p.material is Material.TREATED]
    foam = sheets_of(
        (p for p in parts if p.material is Material.FOAM), wide=inches(basement.foam_sheet), kerf=Length(0)
    )
    ply_wide, ply_kerf = load_figures().sheet_long // 2, load_figures().cap_kerf
    plywood = sheets_of((p for p in parts if p.material is Material.PLYWOOD), wide=ply_wide, kerf=ply_kerf)
    studs, no_stud = _studs(full, stock.item["stud_2x4"])
    even = [length for length in _lengths(stock.item["stud_2x4"]) if not length.ticks % FOOT.ticks]
    rest, no_rest = cut_from(plain, even, usual=usual, kerf=load_figures().kerf)
    wet, no_wet = cut_from(treated, _lengths(stock.item["treated_2x4"]), usual=usual, kerf=load_figures().kerf)
    lines = [
        *stick_lines("stud_2x4", [*studs, *rest]),
        *stick_lines("treated_2x4", wet),
        *sheet_lines("foam", foam, f"{inches(basement.foam_sheet).inch // 12} by 8 ft"),
        *sheet_lines("plywood", plywood, "4 by 8 ft"),
        *lines_of(takeoff(layout)),
    ]
    too_long = (*no_stud, *no_rest, *no_wet)
    return Purchase(tuple(in_walking_order(lines)), (*studs, *rest, *wet), tuple(too_long), foam, plywood)


def sheets_of(parts: Iterable[Part], *, wide: Length, kerf: Length) -> tuple[tuple[Part, ...], ...]:
    """Return, per sheet, the parts cut from it. Plywood loses a saw cut between two strips; foam is scored and snapped."""
    pieces = list(parts)
    sizes = [(part.wide or wide, part.cut) for part in pieces]
    packed = sheets_for(sizes, wide=wide, tall=load_figures().sheet_long, kerf=kerf)
    return tuple(tuple(pieces[n] for n in sheet) for sheet in packed)


def _lengths(item: StockItem) -> list[Length]:
    return [inches(length) for length in item.lengths]


def _studs(parts: list[Part], item: StockItem) -> tuple[list[Stick], list[TooLong]]:
    """One full-height stud from one stick, the shortest that holds it."""
    sticks, too_long = [], []
    for part in parts:
        length = shortest_that_holds(part.cut, _lengths(item))
        if length is None:
            too_long.append(TooLong(part))
        else:
            sticks.append(Stick(length, (part,), length - part.cut))
    return sticks, too_long
