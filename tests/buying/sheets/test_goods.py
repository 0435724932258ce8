"""Foam, plywood and drywall of whole jobs: every piece on one sheet that holds it, never more sheets than a first fit, and said so."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from hypothesis import given, settings
from hypothesis import strategies as st

from guide.book.questions import load_book
from guide.buying.bill import cost_of
from guide.buying.purchase import sheet_goods
from guide.buying.sheets.plan import Offcut, SheetGoods, sheets_from
from guide.interview.jobfile import from_json
from guide.interview.written import Json
from guide.layout.drywall import tapered
from guide.layout.packing import sheets_for
from guide.layout.parts import Box, Kind, Layout, Material, Part, over_slab
from guide.lengths import ZERO, Length, inches
from guide.reference.figures import load_figures
from guide.reference.prices import NO_PRICES, Prices, invented_prices
from guide.reference.sayings import saying
from guide.sheets.cuts import goods_said
from guide.sheets.papers import papers
from guide.sheets.plan import make_plan
from tests.jobs import Tree, job, laid, layout_of, wall, window
from tests.properties.rooms import rooms, single_walls
from tests.walkthroughs import worked

FIGURES = load_figures()
KERF = {Material.FOAM: ZERO, Material.PLYWOOD: FIGURES.cap_kerf, Material.DRYWALL: ZERO}


def goods_of(layout: Layout, prices: Prices = NO_PRICES) -> dict[Material, SheetGoods]:
    """Return the sheets of a layout by material."""
    return dict(zip(KERF, sheet_goods(layout, prices), strict=True))


@settings(max_examples=30)
@given(tree=st.one_of(single_walls(), rooms()))
def test_every_piece_lies_on_one_sheet_that_holds_it(tree: Tree) -> None:
    """Takeoff equals parts; strips fit side by side and pieces end to end, the saw cut between them; what is left adds up."""
    layout = layout_of(tree)
    for material, goods in goods_of(layout).items():
        parts = [part for part in layout.parts.values() if part.material is material]
        kerf = KERF[material]
        cut = [p for s in (*goods.sheets, *goods.offcuts) for p in s.parts]
        assert sorted(p.id for p in (*goods.too_large, *cut)) == sorted(p.id for p in parts)
        for sheet in (*goods.sheets, *goods.offcuts):
            used = sum((strip.wide for strip in sheet.strips), ZERO) + kerf * (len(sheet.strips) - 1)
            assert used <= sheet.wide
            assert sheet.rest == max(ZERO, sheet.wide - used - kerf)
            for strip in sheet.strips:
                length = sum((part.along for part in strip.parts), ZERO) + kerf * (len(strip.parts) - 1)
                assert length <= sheet.tall
                assert strip.rest == max(ZERO, sheet.tall - length - kerf)
                assert all((part.across or sheet.wide) <= strip.wide for part in strip.parts)


@settings(max_examples=20)
@given(tree=rooms())
def test_never_more_sheets_than_a_plain_first_fit_and_never_fewer_than_the_bound(tree: Tree) -> None:
    """The first fit that the layout itself counts with is the measure; the bound is below every one of them."""
    layout = layout_of(tree)
    for material, goods in goods_of(layout).items():
        wide = inches(layout.survey.basement.foam_sheet) if material is Material.FOAM else inches("48")
        fitting = [p for s in goods.sheets for p in s.parts]
        plain = sheets_for(
            [(p.across or wide, p.along) for p in fitting], wide=wide, tall=FIGURES.sheet_long, kerf=KERF[material]
        )
        assert goods.least <= goods.total == len(goods.sheets) <= len(plain)
        assert goods.proven == (goods.total == goods.least)


def piece(number: int, wide: str, tall: str) -> Part:
    """Return a piece of foam of this size."""
    box = Box(ZERO, inches(wide), ZERO, inches("2"), over_slab(ZERO), over_slab(inches(tall)))
    return Part(
        Kind.FOAM, "A", Material.FOAM, box, inches(tall), saying("part.foam"), wide=inches(wide), id=f"A.foam.{number}"
    )


def cut(pieces: list[Part], prices: Mapping[Length, int]) -> SheetGoods:
    """Return the sheets for these pieces from 4 by 8 ft, and narrower ones that have a price."""
    return sheets_from("foam", pieces, wide=inches("48"), tall=inches("96"), kerf=ZERO, prices=prices)


def test_a_narrow_rest_comes_from_the_narrow_sheet_where_that_is_cheaper() -> None:
    """Worked by hand: two whole sheets and a strip of 20 in. At 33.00 and 17.50 that is 83.50; at 33.00 and 40.00, 99.00."""
    pieces = [piece(1, "48", "90"), piece(2, "48", "90"), piece(3, "20", "90")]
    cheap = cut(pieces, {inches("48"): 3300, inches("24"): 1750})
    dear = cut(pieces, {inches("48"): 3300, inches("24"): 4000})

    assert [sheet.wide for sheet in cheap.sheets] == [inches("48"), inches("48"), inches("24")]
    assert (cheap.total, cheap.proven, cheap.priced) == (8350, True, True)
    assert [sheet.wide for sheet in dear.sheets] == [inches("48")] * 3
    assert dear.total == 9900


def test_one_price_of_two_decides_nothing() -> None:
    """With the price of the narrow sheet alone the number of sheets is what counts, and nothing is said of money."""
    goods = cut([piece(1, "48", "90"), piece(2, "20", "90")], {inches("24"): 1750})

    assert (goods.priced, goods.total, [sheet.wide for sheet in goods.sheets]) == (False, 2, [inches("48")] * 2)


def test_what_is_cut_out_for_an_opening_is_no_sheet_lost() -> None:
    """By hand: over and under a window are two short pieces, 40 and 30 in tall; they share one column of a sheet."""
    goods = cut([piece(1, "48", "40"), piece(2, "48", "30")], {})

    assert goods.total == 1
    assert goods.proven


def test_a_piece_longer_than_a_sheet_is_said_and_not_bought() -> None:
    """Joists at 101 in: the upright fireblocks are longer than 8 ft plywood, and the page says so by their marks."""
    tree = job(
        [
            wall(
                "10 ft",
                height=["101 in at left", "101 in at right"],
                concrete=["99 1/2 in at left", "99 1/2 in at right"],
            )
        ]
    )
    plan = make_plan(load_book(), from_json(tree, load_book()))
    page = " ".join(papers(plan)["job-sheet.md"].split())

    assert plan.purchase.plywood.too_large
    assert all(f"{part.mark} is " in page for part in plan.purchase.plywood.too_large)
    assert "larger than any sheet of plywood" in page


def test_the_page_claims_any_layout_only_where_the_bound_meets_the_count() -> None:
    """The worked room is proven. A pinwheel is not, by hand.

    Two pieces 28 by 40 and two 20 by 56, each pair in opposite corners of 48 by 96, fit one sheet; ripped from end to end
    the two of 56 need two strips, and with one of 28 they are wider than the sheet: two sheets.
    """
    plan = make_plan(load_book(), worked("four-walls"))
    pinwheel = cut([piece(1, "28", "40"), piece(2, "20", "56"), piece(3, "28", "40"), piece(4, "20", "56")], {})
    (said,) = goods_said(plan, pinwheel)

    assert "21 sheet(s). No layout of any kind takes fewer" in " ".join(papers(plan)["job-sheet.md"].split())
    assert (pinwheel.total, pinwheel.least, pinwheel.proven) == (2, 1, False)
    assert "the fewest found for strips ripped from end to end" in said
    assert "whether one takes fewer than 2 is not known" in said


def test_with_prices_the_page_speaks_of_money() -> None:
    """The sum is that of the sheets' lines, and the claim is about cost."""
    plan = make_plan(load_book(), worked("four-walls"), prices=invented_prices())
    page = " ".join(papers(plan)["job-sheet.md"].split())
    lines = [line for line in plan.purchase.lines if line.ware.startswith("foam ")]
    total = sum(cost_of(line, plan.prices) or 0 for line in lines)

    assert plan.purchase.foam.total == total
    assert f"Rigid foam board: {plan.prices.money(total)}" in page


def test_every_width_that_is_not_its_strips_says_what_to_trim_it_to() -> None:
    """A page that lists a piece under a wider strip without its own width would have it cut too wide."""
    plan = make_plan(load_book(), worked("four-walls"))
    page = papers(plan)["job-sheet.md"]
    narrow = [
        part
        for goods in plan.purchase.sheet_goods
        for sheet in goods.sheets
        for strip in sheet.strips
        for part in strip.parts
        if (part.across or sheet.wide) < strip.wide
    ]

    assert page.count("trimmed to") == len(narrow)


def test_the_same_parts_in_any_order_give_the_same_sheets() -> None:
    """Sorted by size and name, so the plan is the same to the letter."""
    pieces = [
        piece(n, wide, tall) for n, (wide, tall) in enumerate((("30", "90"), ("18", "88"), ("20", "40"), ("20", "44")))
    ]

    assert cut(pieces, {}).sheets == cut(pieces[::-1], {}).sheets


def test_offcuts_at_home_give_the_largest_pieces_that_fit_and_fewer_sheets_are_bought() -> None:
    """By hand: a 30 by 60 offcut gives the 28 by 58 and, beside it, nothing; the 20 by 90 is longer than it."""
    pieces = [piece(1, "48", "90"), piece(2, "28", "58"), piece(3, "20", "90"), piece(4, "10", "20")]
    bare = cut(pieces, {})
    own = sheets_from(
        "foam",
        pieces,
        wide=inches("48"),
        tall=inches("96"),
        kerf=ZERO,
        prices={},
        offcuts=[(inches("30"), inches("60"), "")],
    )

    assert (bare.total, own.total) == (2, 2)
    assert [part.id for sheet in own.offcuts for part in sheet.parts] == ["A.foam.2"]
    assert {part.id for sheet in own.sheets for part in sheet.parts} == {"A.foam.1", "A.foam.3", "A.foam.4"}
    two = sheets_from(
        "foam",
        pieces[:2],
        wide=inches("48"),
        tall=inches("96"),
        kerf=ZERO,
        prices={},
        offcuts=[(inches("30"), inches("60"), "")],
    )
    assert (cut(pieces[:2], {}).total, two.total, two.proven) == (2, 1, True)


@settings(max_examples=20)
@given(tree=single_walls(), wide=st.integers(2, 48), tall=st.integers(12, 96))
def test_what_comes_from_an_offcut_fits_it_with_its_saw_cuts(tree: Tree, wide: int, tall: int) -> None:
    """Strips side by side and pieces end to end, a saw cut between; every piece is cut once, from an offcut or a sheet."""
    basement = tree["basement"]
    assert isinstance(basement, dict)
    own = {**tree, "basement": {**basement, "shopping": "own", "on_hand": f"plywood offcut {wide} x {tall}"}}
    layout = layout_of(own)
    goods = goods_of(layout)[Material.PLYWOOD]
    everything = [p.id for s in (*goods.offcuts, *goods.sheets) for p in s.parts] + [p.id for p in goods.too_large]

    assert sorted(everything) == sorted(p.id for p in layout.parts.values() if p.material is Material.PLYWOOD)
    for sheet in goods.offcuts:
        kerf = FIGURES.cap_kerf
        assert sum((s.wide for s in sheet.strips), ZERO) + kerf * (len(sheet.strips) - 1) <= inches(f"{wide}")
        for strip in sheet.strips:
            assert sum((p.cut for p in strip.parts), ZERO) + kerf * (len(strip.parts) - 1) <= inches(f"{tall}")


def test_the_page_names_the_offcut_and_what_the_count_is_of() -> None:
    """Whoever cuts finds the offcut first in the table, and the claim says that it is about the rest."""
    tree = job([wall("16 ft")], shopping="own", on_hand="plywood offcut 16 x 96")
    pages = papers(make_plan(load_book(), from_json(tree, load_book())))
    sheet = " ".join(pages["job-sheet.md"].split())

    assert "your offcut 16 by 96" in sheet
    assert "come from your offcuts" in sheet
    assert "offcut 16 by 96: plywood" in " ".join(pages["shopping.md"].split())


def board(number: int, across: str, along: str, *, lies: bool = True) -> Part:
    """Return a piece of drywall of this size on its sheet."""
    wide, tall = (along, across) if lies else (across, along)
    box = Box(ZERO, inches(wide), ZERO, inches("1/2"), over_slab(ZERO), over_slab(inches(tall)))
    said, name = saying("part.drywall", row=1), f"A.drywall_sheet.{number}"
    return Part(
        Kind.DRYWALL, "A", Material.DRYWALL, box, inches(tall), said, wide=inches(wide), id=name, mark=name, lies=lies
    )


def boards(pieces: list[Part], edges: frozenset[str], offcuts: Sequence[Offcut] = ()) -> SheetGoods:
    """Return the sheets for these pieces of drywall."""
    return sheets_from(
        "drywall", pieces, wide=inches("48"), tall=inches("96"), kerf=ZERO, prices={}, offcuts=offcuts, edges=edges
    )


def test_a_sheet_gives_a_tapered_edge_to_two_strips_only() -> None:
    """By hand: three strips 16 in across fill a sheet of 48; only two of them can have one of its two tapered edges."""
    pieces = [board(number, "16", "90") for number in (1, 2, 3)]
    names = frozenset(part.id for part in pieces)
    free, two, three = (boards(pieces, kept) for kept in (frozenset[str](), names - {"A.drywall_sheet.2"}, names))

    assert (free.total, two.total, three.total) == (1, 1, 2)
    assert three.proven
    assert [strip.edge for strip in two.sheets[0].strips] == [True, False, True]


def test_a_lying_sheet_is_cut_by_its_height_and_a_standing_one_by_its_width() -> None:
    """By hand: 40 across and 90 along, hung either way, is one strip of 40 with 6 in left of its length and 8 beside."""
    for lies in (True, False):
        (sheet,) = boards([board(1, "40", "90", lies=lies)], frozenset()).sheets
        assert (sheet.strips[0].wide, sheet.strips[0].rest, sheet.rest) == (inches("40"), inches("6"), inches("8"))


def test_square_edged_foam_is_turned_where_that_saves_a_sheet_and_lapped_foam_never() -> None:
    """By hand: 48 by 80, 28 by 90, and 48 by 20 from under a window, which fits on no sheet of the others as it stands.

    Turned, its 20 in are what the 28 leaves beside itself.
    """
    pieces = [piece(1, "48", "80"), piece(2, "28", "90"), piece(3, "48", "20")]
    free = sheets_from("foam", pieces, wide=inches("48"), tall=inches("96"), kerf=ZERO, prices={}, turns=True)

    assert (cut(pieces, {}).total, free.total, free.proven) == (3, 2, True)
    assert [part.id for sheet in free.sheets for part in sheet.parts if part.lies] == ["A.foam.3"]
    assert [(part.across, part.along) for sheet in free.sheets for part in sheet.parts if part.lies] == [
        (inches("20"), inches("48"))
    ]


def test_the_edges_of_the_foam_are_asked_and_the_list_and_the_cut_list_name_them() -> None:
    """Under a window 48 in up, by the tape of the drawing: lapped edges turn nothing, square ones say what is turned."""
    windows: list[Json] = [window("40 in"), window("130 in")]
    pages = {
        edge: " ".join(
            papers(
                make_plan(
                    load_book(),
                    from_json(job([wall("246 in", openings=windows)], shopping="own", foam_edge=edge), load_book()),
                )
            )["job-sheet.md"].split()
        )
        for edge in ("square", "lapped")
    }
    assert "square edges)" in pages["square"]
    assert "lapped edges)" in pages["lapped"]
    assert " turned" in pages["square"]
    assert "height across the sheet" in pages["square"]
    assert " turned," not in pages["lapped"]
    assert "height across the sheet" not in pages["lapped"]


def test_what_is_cut_out_for_an_opening_gives_a_piece_whose_edges_may_be_cut_and_no_other() -> None:
    """By hand: a cut-out of 32 by 24 holds a piece of 20 by 24; one that needs a tapered edge wants a sheet."""
    piece, out = board(1, "20", "24"), (inches("32"), inches("24"), "AD9")

    assert boards([piece], frozenset(), [out]).total == 0
    assert boards([piece], frozenset(), [out]).offcuts[0].out_of == "AD9"
    assert boards([piece], frozenset({piece.id}), [out]).total == 1


def test_edges_that_meet_another_sheet_are_tapered_and_those_at_floor_and_ceiling_may_be_cut() -> None:
    """By hand, two rows of lying sheets: the lower, cut ones meet the upper row. Standing sheets meet side by side."""
    lying, upright = laid(wall()), laid(wall(), sheets="standing")
    alone = laid(wall("52 in"), sheets="standing")

    assert tapered(lying.of(Kind.DRYWALL)) == {part.id for part in lying.of(Kind.DRYWALL)}
    assert tapered(upright.of(Kind.DRYWALL)) == {part.id for part in upright.of(Kind.DRYWALL)}
    assert len(alone.of(Kind.DRYWALL)) == 1
    assert tapered(alone.of(Kind.DRYWALL)) == frozenset()


def test_the_shopping_list_buys_the_drywall_that_the_cut_list_cuts() -> None:
    """One count of sheets in both papers, ten in a hundred over for those that break: common practice."""
    plan = make_plan(load_book(), worked("four-walls"))
    (line,) = [line for line in plan.purchase.lines if line.ware.startswith("drywall ")]
    count = len(plan.purchase.drywall.sheets)

    assert line.buy == count + -(-count // 10)
    assert f"Drywall: {count} sheet(s)" in " ".join(papers(plan)["job-sheet.md"].split())
