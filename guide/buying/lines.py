"""Shopping lines: needs rounded up to the units a shop sells, with what is over."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from guide.buying.sticks import Stick
from guide.buying.takeoff import Need, rests_of
from guide.layout.parts import Part
from guide.reference.stock import AISLES, Aisle, Fastener, Stage, StockItem, load_fasteners, load_stock, stick_size

_FASTENERS: Aisle = "fasteners"


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the shopping list."""

    ware: str
    """What it is, for price files and programs: `can_foam`, `stud_2x4 8 ft`."""
    aisle: Aisle
    name: str
    buy: int
    unit: str
    need: str
    """What the job itself takes, in words and numbers."""
    spare: int
    """How much is over once the job has taken what it needs, in `spare_of`."""
    spare_of: str
    back: int
    """How many whole units stay unopened and can go back, if everything goes as counted."""
    stage: Stage
    rests: frozenset[str]
    """The answers that the sizes of the parts counted rest on."""


def lines_of(needs: Iterable[Need]) -> list[Line]:
    """Return a line for each need, rounded up to whole packs with the spare that the data asks for."""
    return [_line(need) for need in needs]


def _line(need: Need) -> Line:
    stock, book = load_stock(), load_fasteners()
    if need.id in book.fastener:
        sold: StockItem | Fastener = book.fastener[need.id]
        aisle, holds, over = _FASTENERS, book.fastener[need.id].per_unit, 0
    else:
        sold = item = stock.item[need.id]
        aisle, holds, over = item.aisle, item.holds, item.over
    packs = packs_for(need.quantity, holds, sold.spare) + over
    spare = packs * holds - need.quantity
    return Line(
        ware=need.id,
        aisle=aisle,
        name=sold.name,
        buy=packs,
        unit=units_of(sold, packs),
        need=need.takes,
        spare=spare,
        spare_of=need.unit,
        back=spare // holds,
        stage=sold.stage,
        rests=need.rests,
    )


def units_of(sold: StockItem | Fastener, count: int) -> str:
    """Return the unit a thing is sold in, for so many of it."""
    return sold.unit if count == 1 else sold.many or f"{sold.unit}s"


def packs_for(quantity: int, holds: int, spare: int) -> int:
    """Return how many packs hold a quantity and `spare` percent over."""
    wanted = -(-quantity * (100 + spare) // 100)
    return -(-wanted // holds)


def stick_lines(key: str, sticks: Sequence[Stick]) -> list[Line]:
    """Return one line for each length bought, with the spare for twisted ones."""
    lines = []
    for length, count in sorted(Counter(stick.length for stick in sticks).items()):
        held = [part for stick in sticks if stick.length == length for part in stick.parts]
        lines.append(_sized(key, stick_size(length), count, count, held))
    return lines


def sheet_lines(key: str, sheets: Sequence[Sequence[Part]], size: str, **said: str) -> list[Line]:
    """Return the line of one size of sheet, or none where nothing is cut from it; `said` fills in what it is for."""
    pieces = [part for sheet in sheets for part in sheet]
    return [_sized(key, size, len(sheets), len(pieces), pieces, **said)] if sheets else []


def _sized(key: str, size: str, count: int, takes: int, held: Iterable[Part], **said: str) -> Line:
    item = load_stock().item[key]
    spare = -(-count * item.spare // 100)
    return Line(
        ware=f"{key} {size}",
        aisle=item.aisle,
        name=f"{item.name}, {size}",
        buy=count + spare,
        unit=units_of(item, count + spare),
        need=item.takes.format(n=takes, **said),
        spare=spare,
        spare_of="piece",
        back=spare,
        stage=item.stage,
        rests=rests_of(held),
    )


def in_walking_order(lines: Iterable[Line]) -> list[Line]:
    """Return lines by aisle in the order a shop is walked; within an aisle as they came."""
    return sorted(lines, key=lambda line: AISLES.index(line.aisle))
