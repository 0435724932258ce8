"""The purchase: takeoff straight from the parts, rounded up to what a shop sells."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from guide.buying.lines import Line, culls_of, edge_of, in_walking_order, lines_of, sheet_lines, stick_lines, usable
from guide.buying.sheets.plan import Offcut, SheetGoods, sheets_from
from guide.buying.sticks import Lumber, Stick, TooLong, cut_from
from guide.buying.takeoff import takeoff
from guide.layout.drywall import tapered
from guide.layout.parts import BOARDS, Kind, Layout, Material, Part
from guide.lengths import ZERO, Length, inches
from guide.reference.figures import load_figures
from guide.reference.prices import NO_PRICES, Prices
from guide.reference.stock import StockItem, load_stock, sheet_wide, stick_size
from guide.survey.on_hand import offcuts_of, read_on_hand, stick_offcuts_of
from guide.survey.yard import yard_lengths

LUMBER = {
    "stud_2x4": Material.STUD,
    "treated_2x4": Material.TREATED,
    "stud_2x3": Material.SMALL_STUD,
    "treated_2x3": Material.SMALL_TREATED,
    "treated_2x6": Material.BOARD_6,
    "treated_2x8": Material.BOARD_8,
    "treated_2x12": Material.BOARD_12,
    "trim_1x6": Material.TRIM,
}
"""What sticks are bought as, and what is cut from them."""


def lumber_of(layout: Layout) -> tuple[str, ...]:
    """Return what the sticks of a job are bought as, the plain ones first; boards only where some part is cut from them."""
    used = {part.material for part in layout.parts.values()}
    stud = layout.survey.basement.stud
    return tuple(
        item
        for item, wood in LUMBER.items()
        if item.endswith(stud) or (wood in used and wood in (*BOARDS, Material.TRIM))
    )


@dataclass(frozen=True, slots=True)
class Kept:
    """Whole sticks at home that are cut from, weighed against taking them back and buying all anew."""

    item: str
    count: int
    priced: bool
    """In cents; otherwise length stands for money, in ticks."""
    keeping: int
    """What they would cost today, and what is still to buy."""
    anew: int
    """The cheapest found without them."""


@dataclass(frozen=True)
class Purchase:
    """Everything to buy, and how the lumber is cut."""

    lines: tuple[Line, ...]
    lumber: tuple[Lumber, ...]
    """Plain and treated, cut apart: the treated pieces last, with a bin of their own."""
    foam: SheetGoods
    plywood: SheetGoods
    drywall: SheetGoods
    kept: tuple[Kept, ...]

    @property
    def sheet_goods(self) -> tuple[SheetGoods, ...]:
        """Everything that is cut from sheets."""
        return self.foam, self.plywood, self.drywall

    @property
    def sticks(self) -> tuple[Stick, ...]:
        """Every stick, plain ones first."""
        return tuple(stick for lumber in self.lumber for stick in lumber.sticks)

    @property
    def too_long(self) -> tuple[TooLong, ...]:
        """The parts that no stick on the list is long enough for."""
        return tuple(missed for lumber in self.lumber for missed in lumber.too_long)


def buy(layout: Layout, prices: Prices = NO_PRICES) -> Purchase:
    """Return what the layout takes. Rounds up by stick, sheet and pack; the same layout gives the same list."""
    basement = layout.survey.basement
    on_hand, _ = read_on_hand(basement.on_hand or "")
    lumber = tuple(_lumber(layout, prices, item) for item in lumber_of(layout))
    goods = sheet_goods(layout, prices)
    lines = [
        *(line for each in lumber for line in stick_lines(each.item, each.sticks, basement, on_hand)),
        *(line for each in goods for line in sheet_lines(each, basement, on_hand)),
        *lines_of(takeoff(layout), on_hand),
    ]
    kept = tuple(each for one in lumber for each in _kept(layout, prices, one))
    return Purchase(tuple(in_walking_order(lines)), lumber, *goods, kept)


def _lumber(layout: Layout, prices: Prices, item: str, *, keep: bool = True) -> Lumber:
    """Return the sticks of one kind of wood; without `keep` as if no whole stick were at home, offcuts alone."""
    sold, basement = load_stock().item[item], layout.survey.basement
    on_hand, _ = read_on_hand(basement.on_hand or "")
    whole = _by_length(sold, item, on_hand) if keep else {}
    counted = {length: usable(have, culls_of(sold, basement)) for length, have in whole.items()}
    return cut_from(
        item,
        [part for part in layout.parts.values() if part.material is LUMBER[item]],
        yard_lengths(sold, basement.yard_lengths or ""),
        usual=inches(f"{basement.longest_stick} ft"),
        kerf=load_figures().kerf,
        trim=basement.end_trim,
        prices=_by_length(sold, item, prices.cents),
        at_home=counted,
        offcuts=stick_offcuts_of(on_hand, item),
    )


def _kept(layout: Layout, prices: Prices, lumber: Lumber) -> Iterator[Kept]:
    """Weigh the sticks at home against a purchase from nothing, where they are cut from and what they cost is known."""
    sold = load_stock().item[lumber.item]
    worth = _by_length(sold, lumber.item, prices.cents)
    if not lumber.priced:
        worth = {length: length.ticks for length in _lengths(sold)}
    used = [stick.length for stick in lumber.sticks if stick.at_home and stick.length in _lengths(sold)]
    if used and all(length in worth for length in used):
        anew = _lumber(layout, prices, lumber.item, keep=False)
        yield Kept(
            lumber.item, len(used), lumber.priced, sum(worth[length] for length in used) + lumber.paid, anew.paid
        )


def sheet_goods(layout: Layout, prices: Prices) -> tuple[SheetGoods, SheetGoods, SheetGoods]:
    """Return the sheets of foam, plywood and drywall. Plywood loses a saw cut at each cut; the others are scored and snapped."""
    stock, figures = load_stock().item, load_figures()
    basement = layout.survey.basement
    on_hand, _ = read_on_hand(basement.on_hand or "")

    def sheets(item: str, material: Material, wide: Length, kerf: Length, *, turns: bool = False) -> SheetGoods:
        parts = [part for part in layout.parts.values() if part.material is material]
        return sheets_from(
            item,
            parts,
            wide=wide,
            tall=figures.sheet_long,
            kerf=kerf,
            prices=_by_width(stock[item], item, prices),
            offcuts=[*((*size, "") for size in offcuts_of(on_hand, item)), *_cut_outs(parts)],
            edges=edges,
            turns=turns,
        )

    edges = frozenset().union(*(tapered(wall.of(Kind.DRYWALL)) for wall in layout.walls))
    return (
        sheets("foam", Material.FOAM, inches(basement.foam_sheet), ZERO, turns=edge_of(basement) == "square"),
        sheets("plywood", Material.PLYWOOD, figures.sheet_long // 2, figures.cap_kerf),
        sheets("drywall", Material.DRYWALL, figures.sheet_long // 2, ZERO),
    )


def _cut_outs(parts: Sequence[Part]) -> Iterator[Offcut]:
    """Yield what comes out of a sheet where an opening is cut, large enough to be worth keeping."""
    kept = load_figures().offcut_kept
    for part in parts:
        for hole in part.notches:
            if part.material is Material.DRYWALL and hole.z0.datum is hole.z1.datum:
                wide, tall = hole.x1 - hole.x0, hole.z1.off - hole.z0.off
                if wide >= kept and tall >= kept:
                    yield (tall, wide, part.mark) if part.lies else (wide, tall, part.mark)


def _by_width(item: StockItem, key: str, prices: Prices) -> dict[Length, int]:
    """Return what sheets cost whose price is known, by their width."""
    found = {size: prices.of(f"{key} {size}") for size in item.sheets}
    return {sheet_wide(size): cents for size, cents in found.items() if cents is not None}


def _lengths(item: StockItem) -> list[Length]:
    return [inches(length) for length in item.lengths]


def _by_length(item: StockItem, key: str, by_ware: Mapping[str, int]) -> dict[Length, int]:
    """Return what stands under the name of each length of a thing, where something does."""
    wares = {length: f"{key} {stick_size(length)}" for length in _lengths(item)}
    return {length: by_ware[ware] for length, ware in wares.items() if ware in by_ware}
