"""The purchase: straight from the parts, rounded up to what a shop sells, and every piece cut from something."""

from __future__ import annotations

import subprocess
import sys
from collections import Counter

import pytest

from guide.book.questions import load_book
from guide.buying.purchase import Purchase, buy
from guide.buying.sticks import cut_from
from guide.interview.jobfile import from_json
from guide.layout.parts import LUMBER, Kind, Layout, Material
from guide.lengths import Length, inches
from guide.reference.figures import load_figures
from guide.reference.prices import Prices
from guide.reference.stock import load_fasteners, load_stock, stick_size
from guide.sheets.papers import papers
from guide.sheets.plan import make_plan
from tests.jobs import alongside, fixture, job, layout_of, outlet, standing, wall, window
from tests.walkthroughs import worked

JOBS = {
    "one plain wall": job([wall("16 ft")]),
    "a window, a pipe and boxes": job(
        [
            wall(
                "20 ft",
                openings=[window("60 in")],
                pipes=[standing("140 in")],
                boxes=[outlet("30 in"), outlet("180 in")],
            )
        ],
        batts="yes",
        longest_stick="12",
    ),
    "narrow foam": job([wall("16 ft"), wall("9 ft")], foam_sheet="24", block_reach="concrete"),
    "tall wall": job(
        [wall("10 ft", height=["118 in at left", "118 in at right"], concrete=["116 in at left", "116 in at right"])]
    ),
}


def bought(name: str) -> tuple[Layout, Purchase]:
    """Return a job's layout and its purchase."""
    layout = layout_of(JOBS[name])
    return layout, buy(layout)


def line(purchase: Purchase, beginning: str) -> int:
    """Return how many are bought of what begins like this."""
    return sum(each.buy for each in purchase.lines if each.name.startswith(beginning))


@pytest.mark.parametrize("name", JOBS)
def test_every_stick_of_wood_is_cut_from_one_stick_that_holds_it(name: str) -> None:
    """Takeoff equals parts: each piece of wood stands on exactly one stick, a saw cut between two, none over its end."""
    layout, purchase = bought(name)
    wood = [p.id for p in layout.parts.values() if p.material in LUMBER]
    held = [part.id for stick in purchase.sticks for part in stick.parts] + [t.part.id for t in purchase.too_long]

    assert sorted(held) == sorted(wood)
    kerf = load_figures().kerf
    for stick in purchase.sticks:
        used = sum((part.cut + kerf for part in stick.parts), start=Length(0))
        assert used <= stick.length + kerf
        assert len({part.material for part in stick.parts}) == 1


@pytest.mark.parametrize("name", JOBS)
def test_fasteners_are_the_sum_of_what_the_parts_carry(name: str) -> None:
    """Packs times their content is at least the count with its spare, and one pack less would not be."""
    layout, purchase = bought(name)
    counts: Counter[str] = Counter()
    for part in layout.parts.values():
        for fastening in part.fastenings:
            counts[fastening.fastener] += fastening.count
    for key, fastener in load_fasteners().fastener.items():
        packs = line(purchase, fastener.name)
        wanted = counts[key] * (100 + fastener.spare) / 100
        assert packs * fastener.per_unit >= wanted
        assert packs == 0 or (packs - 1) * fastener.per_unit < wanted


def test_the_worked_wall_buys_what_can_be_counted_by_hand() -> None:
    """16 ft 4 in: five sheets of foam, one of plywood, two treated eights; 14 uprights and 3 plates, one in ten crooked.

    13 studs and a pack stud take a stick each, and of the three pieces of top plate (80, 61 5/8, 46 1/8) no two share
    one, nor do they fit beside a stud: 17 sticks, all of them the shortest there is; of 19 one in ten is crooked, of 18 only 16 would be left.
    The wall's four pieces leave of their sheets 6 3/4 by 48 each, too little for a bay 8 3/4 high: the rim takes a fifth.
    """
    layout = make_plan(load_book(), worked("first-wall")).layout
    purchase = buy(layout)

    assert line(purchase, load_stock().item["foam"].name) == 5
    assert line(purchase, load_stock().item["plywood"].name) == 1
    assert line(purchase, "2x4, pressure treated, 8 ft") == 2
    assert line(purchase, "2x4, kiln dried, 92 5/8") == 17 + 2
    assert line(purchase, "2x4, kiln dried, 8 ft") == 0
    assert purchase.too_long == ()


def test_what_nobody_measured_is_starred() -> None:
    """A guessed height marks the studs' line; the gasket is bought whatever the height."""
    layout = layout_of(job([wall("16 ft", height=["about 92 in at left", "92 in at right"])]))
    guessed = {each.name: bool(layout.survey.unsure(each.rests)) for each in buy(layout).lines}

    assert guessed["2x4, kiln dried, 92 5/8 in"]
    assert not guessed["2x4, pressure treated, 8 ft"]


@pytest.mark.parametrize("name", JOBS)
def test_the_lumber_of_a_job_is_proven_shortest(name: str) -> None:
    """Plain and treated each: the sticks add up to the total, and the checker lets no shorter total stand."""
    purchase = bought(name)[1]

    for lumber in purchase.lumber:
        assert sum(stick.length.ticks for stick in lumber.sticks) == lumber.paid
        assert lumber.proven
        assert not lumber.priced


def priced(**cents: int) -> Prices:
    """Return prices of plain 2x4, by feet: `ft8=400`."""
    return Prices({f"stud_2x4 {key.removeprefix('ft')} ft": each for key, each in cents.items()})


def test_with_prices_the_cheapest_sticks_are_bought_and_not_the_shortest() -> None:
    """Eights at 4.00 and tens at 4.10: what a ten saves in length no longer decides, money does, to the last cent."""
    layout = layout_of(job([wall("16 ft")], longest_stick="10"))
    plain, treated = buy(layout, priced(ft8=400, ft10=410)).lumber
    cents = {inches("96"): 400, inches("120"): 410}

    assert plain.priced
    assert plain.proven
    assert plain.lengths == (inches("96"), inches("120"))  # 92 5/8 has no price and is not needed
    assert plain.paid == sum(cents[stick.length] for stick in plain.sticks)
    assert not treated.priced  # nothing is known of its prices


def test_prices_that_leave_out_a_length_that_is_needed_do_not_decide() -> None:
    """The tall wall's studs take tens; with a price for eights alone length stands for money."""
    plain = buy(layout_of(JOBS["tall wall"]), priced(ft8=400)).lumber[0]

    assert not plain.priced
    assert plain.proven


def test_what_is_at_home_is_cut_first_and_is_not_paid_for() -> None:
    """Four eights in the garage, of which one may be twisted: three hold pieces, and the whole comes to less than without them."""
    without = buy(layout_of(job([wall("16 ft")]))).lumber[0]
    plain = buy(layout_of(job([wall("16 ft")], shopping="own", on_hand="4 2x4 8 ft"))).lumber[0]

    assert sum(stick.at_home for stick in plain.sticks) == 3
    assert plain.proven
    assert plain.paid == sum(stick.length.ticks for stick in plain.sticks if not stick.at_home)
    assert plain.paid < without.paid


def test_what_is_bought_already_stays_when_the_wall_grows_by_a_bay() -> None:
    """With the whole purchase at home, a tenth over, nothing is bought; a wall one bay longer buys a stick or two more, not another lot."""
    counts = Counter(stick_size(stick.length) for stick in buy(layout_of(job([wall("16 ft")]))).lumber[0].sticks)
    home = ", ".join(f"{count + -(-count // 10)} 2x4 {size}" for size, count in sorted(counts.items()))
    same = buy(layout_of(job([wall("16 ft")], shopping="own", on_hand=home))).lumber[0]
    wider = buy(layout_of(job([wall("17 ft 4 in")], shopping="own", on_hand=home))).lumber[0]

    assert same.paid == 0
    assert same.proven
    assert 1 <= sum(not stick.at_home for stick in wider.sticks) <= 2


def test_a_length_over_the_longest_is_on_offer_only_when_a_piece_needs_it() -> None:
    """The tall wall: 8 ft is the longest that fits the car, studs of 115 in still come from tens, plates from eights."""
    plain, treated = bought("tall wall")[1].lumber
    longer = [stick for stick in plain.sticks if stick.length > inches("96")]

    assert plain.lengths == (inches("92 5/8"), inches("96"), inches("120"))
    assert longer
    assert all(stick.length == inches("120") for stick in longer)
    assert max(stick.length for stick in treated.sticks) == inches("96")


def test_the_solver_is_silent_and_waits_until_a_paper_asks() -> None:
    """A fresh interpreter plans the worked job: nothing is printed, and only the purchase loads the solver."""
    code = (
        "import sys\n"
        "from guide.book.questions import load_book\n"
        "from guide.sheets.plan import make_plan\n"
        "from tests.walkthroughs import worked\n"
        "plan = make_plan(load_book(), worked('first-wall'))\n"
        "before = 'highspy' in sys.modules\n"
        "plan.purchase\n"
        "print(before, 'highspy' in sys.modules)"
    )
    out = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout

    assert out.split() == ["False", "True"]


def test_what_is_over_on_one_wall_becomes_blocks_backing_and_foam_of_another() -> None:
    """Three walls: no stick is bought for a block alone, sticks and sheets hold pieces of two walls, in the order cut."""
    walls = [wall("9 ft", **alongside()), wall("9 ft 8 in", fixtures=[fixture("20 in", "70 in")]), wall("7 ft")]
    purchase = buy(layout_of(job(walls, longest_stick="10")))
    small = (Kind.JOIST_BLOCK, Kind.BACKING)
    with_small = [stick for stick in purchase.sticks if any(part.kind in small for part in stick.parts)]

    assert {part.kind for stick in with_small for part in stick.parts} >= set(small)
    assert all(stick.parts[0].kind not in small for stick in with_small)
    assert any({part.wall for part in stick.parts} >= {"A", "B"} for stick in purchase.sticks)
    assert any(len({part.wall for part in sheet.parts}) > 1 for sheet in purchase.foam.sheets)


def test_a_piece_longer_than_every_stick_is_said() -> None:
    """Studs of 188 7/8 in come from 16 ft; with 6 in sawn off its end no stick gives one, and the list names them."""
    tall = wall("10 ft", height=["192 in at left", "192 in at right"])
    plain, trimmed = (
        make_plan(load_book(), from_json(job([tall], shopping="own", trim=trim), load_book()))
        for trim in ("0 in", "6 in")
    )
    studs = [part.mark for part in plain.layout.walls[0].of(Kind.STUD)]

    assert plain.purchase.too_long == ()
    assert {missed.part.mark for missed in trimmed.purchase.too_long} >= set(studs)
    assert f"so not on it: {', '.join(m.part.mark for m in trimmed.purchase.too_long)}." in " ".join(
        papers(trimmed)["shopping.md"].split()
    )


def test_pieces_in_another_order_give_the_same_sticks_to_the_last_mark() -> None:
    """The parts of a job turned round: the same sticks in the same order with the same pieces, and the same claims."""
    layout = layout_of(JOBS["a window, a pipe and boxes"])
    wood = [part for part in layout.parts.values() if part.material is Material.STUD]
    sold = load_stock().item["stud_2x4"].lengths

    there, back = (
        cut_from(
            "stud_2x4",
            parts,
            [inches(length) for length in sold],
            usual=inches("144"),
            kerf=load_figures().kerf,
            trim=inches("1/2"),
            prices={},
            at_home={inches("96"): 2},
            offcuts={inches("50"): 1},
        )
        for parts in (wood, wood[::-1])
    )
    assert there == back


def test_the_same_layout_gives_the_same_list() -> None:
    """Twice the same job, twice the same purchase."""
    assert buy(layout_of(JOBS["narrow foam"])) == buy(layout_of(JOBS["narrow foam"]))
