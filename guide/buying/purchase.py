"""The purchase: takeoff straight from the parts, rounded up to what a shop sells."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from guide.buying.seams import seams_of
from guide.buying.sticks import Stick, TooLong, cut_from, shortest_that_holds
from guide.layout.packing import sheets_for
from guide.layout.parts import FULL_HEIGHT, Kind, Layout, Material, Part
from guide.lengths import FOOT, Length, in_inches, inches
from guide.reference.figures import load_figures
from guide.reference.stock import Stock, StockItem, load_fasteners, load_stock

ALWAYS = ("glasses", "muffs", "half_mask", "gloves", "extinguisher")


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the shopping list."""

    aisle: str
    name: str
    buy: int
    unit: str
    need: str
    """What the job itself takes, in words and numbers."""
    guessed: bool
    """It counts parts whose size nobody has measured yet."""


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
        *_stick_lines(layout, stock.item["stud_2x4"], [*studs, *rest]),
        *_stick_lines(layout, stock.item["treated_2x4"], wet),
        *_sheet_lines(layout, stock, foam, plywood),
        *_seam_lines(layout, stock, len(foam)),
        *_fastener_lines(layout),
        *_box_lines(layout, stock),
        *(_line(stock.item[key], 1, "for you; one more for a helper", guessed=False) for key in ALWAYS),
    ]
    too_long = (*no_stud, *no_rest, *no_wet)
    return Purchase(tuple(lines), (*studs, *rest, *wet), tuple(too_long), foam, plywood)


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


def _stick_lines(layout: Layout, item: StockItem, sticks: list[Stick]) -> list[Line]:
    """One line for each length bought, with the spare on the length bought most."""
    counts = Counter(stick.length for stick in sticks)
    lines = []
    for length in sorted(counts):
        count = counts[length]
        spare = -(-count * item.spare // 100)
        held = [part for stick in sticks if stick.length == length for part in stick.parts]
        name = f"{item.name}, {_stick_name(length)}"
        need = f"{count} needed" + (f", {spare} spare for twisted ones" if spare else "")
        lines.append(_line(item, count + spare, need, guessed=_guessed(layout, held), name=name))
    return lines


def _stick_name(length: Length) -> str:
    feet, rest = divmod(length.inch, 12)
    return f"{in_inches(length)} in pre-cut" if rest else f"{feet} ft"


def _sheet_lines(
    layout: Layout, stock: Stock, foam: tuple[tuple[Part, ...], ...], plywood: tuple[tuple[Part, ...], ...]
) -> list[Line]:
    lines = []
    if foam:
        pieces = [part for sheet in foam for part in sheet]
        name = f"{stock.item['foam'].name}, {'2' if layout.survey.basement.foam_sheet == '24' else '4'} by 8 ft"
        lines.append(
            _line(stock.item["foam"], len(foam), f"{len(pieces)} pieces", guessed=_guessed(layout, pieces), name=name)
        )
    if plywood:
        pieces = [part for sheet in plywood for part in sheet]
        strips = sum(part.kind is Kind.CAP for part in pieces)
        need = f"{strips} cap strips, {sum(part.kind is Kind.FIREBLOCK for part in pieces)} fireblocks and the laps"
        lines.append(_line(stock.item["plywood"], len(plywood), need, guessed=_guessed(layout, pieces)))
    return lines


def _seam_lines(layout: Layout, stock: Stock, sheets: int) -> list[Line]:
    seams = [seams_of(wall) for wall in layout.walls]
    if not seams:
        return []
    total = sum(seams[1:], start=seams[0])
    guessed = _guessed(layout, [part for wall in layout.walls for part in wall.of(Kind.FOAM, Kind.CAP)])
    lines = [
        _by_yield(stock.item["adhesive"], sheets, f"{sheets} sheets of foam", guessed=guessed),
        _by_yield(
            stock.item["can_foam"],
            total.can_foam,
            f"about {total.can_foam} cu in of gaps, and one can over",
            guessed=guessed,
            over=1,
        ),
        _by_yield(stock.item["seam_tape"], total.tape, f"{total.tape} ft of seams", guessed=guessed),
        _by_yield(stock.item["gasket"], total.gasket, f"{total.gasket} ft of plate", guessed=guessed),
        _by_yield(
            stock.item["sealant"], total.sealant, f"{total.sealant} ft of edges on cap and fireblocks", guessed=guessed
        ),
    ]
    if layout.survey.basement.batts == "yes":
        lines.append(
            _by_yield(
                stock.item["batt"],
                total.bays,
                f"{total.bays} bays; do not buy before the framing inspection",
                guessed=guessed,
            )
        )
    return lines


def _fastener_lines(layout: Layout) -> list[Line]:
    book = load_fasteners()
    counts: Counter[str] = Counter()
    guessed: dict[str, bool] = {}
    for part in layout.parts.values():
        for fastening in part.fastenings:
            counts[fastening.fastener] += fastening.count
            guessed[fastening.fastener] = guessed.get(fastening.fastener, False) or _guessed(layout, [part])
    lines = []
    for key, fastener in book.fastener.items():
        if counts[key]:
            wanted = -(-counts[key] * (100 + fastener.spare) // 100)
            packs = -(-wanted // fastener.per_unit)
            need = f"{counts[key]} driven, {fastener.spare} % over"
            lines.append(Line("fasteners", fastener.name, packs, fastener.unit, need, guessed[key]))
    return lines


def _box_lines(layout: Layout, stock: Stock) -> list[Line]:
    boxes = [part for wall in layout.walls for part in wall.of(Kind.OUTLET)]
    return [_by_yield(stock.item["box"], len(boxes), f"{len(boxes)} boxes", guessed=False)] if boxes else []


def _by_yield(item: StockItem, need: int, said: str, *, guessed: bool, over: int = 0) -> Line:
    wanted = -(-need * (100 + item.spare) // 100)
    return _line(item, -(-wanted // int(item.holds)) + over, said, guessed=guessed)


def _line(item: StockItem, count: int, need: str, *, guessed: bool, name: str | None = None) -> Line:
    return Line(item.aisle, name or item.name, count, item.unit, need, guessed)


def _guessed(layout: Layout, parts: Iterable[Part]) -> bool:
    return any(layout.survey.unsure(part.size_rests) for part in parts)
