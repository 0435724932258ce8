"""Shopping lines: needs rounded up to the units a shop sells, with what is over."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType

from guide.buying.carrying import Carry, sheet_carry, stick_carry
from guide.buying.sheets.plan import SheetGoods
from guide.buying.sticks import Stick
from guide.buying.takeoff import Need, rests_of
from guide.layout.parts import Part
from guide.lengths import with_unit
from guide.reference.figures import load_figures
from guide.reference.stock import (
    AISLES,
    Aisle,
    Fastener,
    Stage,
    StockItem,
    load_fasteners,
    load_stock,
    sheet_size,
    stick_size,
)
from guide.survey.model import Basement

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
    have: int
    """How many are at home and come off: fasteners singly, everything else by the unit."""
    carry: Carry
    back: int
    """How many whole units stay unopened and can go back, if everything goes as counted."""
    stage: Stage
    rests: frozenset[str]
    """The answers that the sizes of the parts counted rest on."""
    culls: bool = False
    """They are bought only because some sticks are too crooked to cut: no piece is cut from them, no claim counts them."""


OnHand = Mapping[str, int]
"""What is at home, by ware."""


def lines_of(needs: Iterable[Need], on_hand: OnHand = MappingProxyType({})) -> list[Line]:
    """Return a line for each need: less what is at home, rounded up to whole packs, with the spare that the data asks for."""
    return [_line(need, on_hand.get(need.id, 0)) for need in needs]


def _line(need: Need, at_home: int) -> Line:
    stock, book = load_stock(), load_fasteners()
    if need.id in book.fastener:
        sold: StockItem | Fastener = book.fastener[need.id]
        aisle, over, singles = _FASTENERS, 0, at_home
    else:
        sold = item = stock.item[need.id]
        aisle, over, singles = item.aisle, item.over, at_home * need.holds
    packs = max(0, packs_for(need.quantity, need.holds, sold.spare, singles) + over)
    spare = packs * need.holds + singles - need.quantity
    return Line(
        ware=need.id,
        aisle=aisle,
        name=sold.name,
        buy=packs,
        unit=units_of(sold, packs),
        need=need.takes,
        spare=spare,
        spare_of=need.unit,
        have=at_home,
        carry="carried",
        back=min(packs, spare // need.holds),
        stage=sold.stage,
        rests=need.rests,
    )


def units_of(sold: StockItem | Fastener, count: int) -> str:
    """Return the unit a thing is sold in, for so many of it."""
    return sold.unit if count == 1 else sold.many or f"{sold.unit}s"


def packs_for(quantity: int, holds: int, spare: int, at_home: int = 0) -> int:
    """Return how many packs hold a quantity and `spare` percent over, less what is at home; below 0 when that is more."""
    wanted = -(-quantity * (100 + spare) // 100) - at_home
    return -(-wanted // holds)


def stick_lines(key: str, sticks: Sequence[Stick], basement: Basement, on_hand: OnHand) -> list[Line]:
    """Return one line for each length a yard sells, and one after it for the crooked ones; offcuts at home have none."""
    lines, sold = [], load_stock().item[key].sizes
    for length, count in sorted(Counter(stick.length for stick in sticks).items()):
        if stick_size(length) not in sold:
            continue
        mine = [stick for stick in sticks if stick.length == length]
        held = [part for stick in mine for part in stick.parts]
        carry = stick_carry(length, (part.cut + basement.end_trim for part in held), basement)
        line = _sized(key, stick_size(length), count, held, carry, on_hand, spare=0, n=count)
        lines.append(line)
        if any(not stick.at_home for stick in mine):  # for sticks at home alone none is bought
            lines += _culls(line, count, culls_of(load_stock().item[key], basement))
    return lines


def _culls(line: Line, count: int, tenths: int) -> Iterator[Line]:
    """Yield the line of the sticks bought over those that are cut, less what is at home over them."""
    more = -(-count * tenths // (10 - tenths)) - max(0, line.have - count)
    if more > 0:
        item = load_stock().item[line.ware.split()[0]]
        need, back = item.culled.format(n=tenths), 0 if line.carry == "yard" else more  # what is cut does not go back
        yield replace(line, buy=more, unit=units_of(item, more), need=need, spare=more, have=0, back=back, culls=True)


def culls_of(item: StockItem, basement: Basement) -> int:
    """Return how many sticks of ten are too crooked to cut: in the pile of the person's yard, else by the data."""
    return item.culls if basement.culls is None or not item.culls else basement.culls


def usable(have: int, tenths: int) -> int:
    """Return how many of the sticks at home can be counted on: all but the tenths too crooked to cut, one at least."""
    return max(min(have, 1), have * (10 - tenths) // 10)


def sheet_lines(goods: SheetGoods, basement: Basement, on_hand: OnHand) -> list[Line]:
    """Return one line for each size of sheet bought."""
    item, tall = load_stock().item[goods.item], load_figures().sheet_long
    lines = []
    for wide, count in sorted(Counter(sheet.wide for sheet in goods.sheets).items(), reverse=True):
        pieces = [part for sheet in goods.sheets if sheet.wide == wide for part in sheet.parts]
        carry = sheet_carry(item, wide, tall, pieces, basement)
        thick = with_unit(basement.foam_thickness, basement.tape)
        said: dict[str, str | int] = {
            "n": len(pieces),
            "kind": basement.foam,
            "thick": thick,
            "board": basement.drywall,
            "edge": edge_of(basement),
        }
        lines.append(
            _sized(goods.item, sheet_size(wide, tall), count, pieces, carry, on_hand, spare=item.spare, **said)
        )
    return lines


def edge_of(basement: Basement) -> str:
    """Return what long edges the foam has, `square` or `lapped`; the list asks for square ones until told otherwise."""
    return basement.foam_edge or "square"


def _sized(
    key: str,
    size: str,
    count: int,
    held: Iterable[Part],
    carry: Carry,
    on_hand: OnHand,
    *,
    spare: int,
    **said: str | int,
) -> Line:
    """Return the line of a thing sold by size, `spare` percent bought over the count."""
    item = load_stock().item[key]
    ware = f"{key} {size}"
    have = on_hand.get(ware, 0)
    buy = max(0, count + -(-count * spare // 100) - have)
    over = buy + have - count
    return Line(
        ware=ware,
        aisle=item.aisle,
        name=f"{item.name}, {size}",
        buy=buy,
        unit=units_of(item, buy),
        need=item.takes.format(**said),
        spare=over,
        spare_of="piece",
        have=have,
        carry=carry,
        back=min(buy, over),
        stage=item.stage,
        rests=rests_of(held),
    )


def in_walking_order(lines: Iterable[Line]) -> list[Line]:
    """Return lines by aisle in the order a shop is walked; within an aisle as they came."""
    return sorted(lines, key=lambda line: AISLES.index(line.aisle))
