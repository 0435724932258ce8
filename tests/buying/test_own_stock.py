"""The person's own figures: what is at home comes off, the first can and tube set the yield, the car decides who cuts."""

from __future__ import annotations

from math import ceil

import pytest

from guide.book.questions import load_book
from guide.buying.carrying import stick_carry
from guide.buying.lines import Line
from guide.buying.purchase import buy
from guide.interview.jobfile import from_json
from guide.interview.written import Json
from guide.layout.parts import Kind, Material
from guide.lengths import ZERO, greatest, inches
from guide.sheets.papers import papers
from guide.sheets.plan import make_plan
from guide.sheets.shopping import once_bought
from guide.survey.on_hand import read_on_hand
from tests.jobs import alongside, job, layout_of, wall

OFFCUTS = "5 2x4 offcuts 95 in"

TALL: dict[str, Json] = {
    "height": ["101 in at left", "101 in at right"],
    "concrete": ["99 1/2 in at left", "99 1/2 in at right"],
}


def bought(**basement: Json) -> dict[str, Line]:
    """Return the lines of a 16 ft wall by ware, those for crooked sticks left out, with the person's own answers."""
    walls = [wall("16 ft", **(TALL if basement.pop("tall", False) else {}))]
    lines = buy(layout_of(job(walls, shopping="own", **basement))).lines
    return {line.ware: line for line in lines if not line.culls}


def test_what_is_at_home_comes_off_the_list() -> None:
    """Tubes by the tube, screws singly, sticks by the stick; more than is needed buys none and nothing goes below."""
    bare, less = bought(), bought(on_hand="1 tube of adhesive, 95 2 in screws, 3 2x4 92 5/8, 50 cans of foam")

    assert less["adhesive"].buy == bare["adhesive"].buy - 1
    assert less["stud_2x4 92 5/8 in"].buy == bare["stud_2x4 92 5/8 in"].buy - 3
    assert bare["screw_2"].buy == 1
    assert less["screw_2"].buy == 0  # 95 are enough for the 49 and a tenth over
    assert less["can_foam"].buy == 0
    assert less["can_foam"].back == 0  # only what was bought can go back
    assert less["gasket"].buy == bare["gasket"].buy


def test_screws_at_home_that_do_not_reach_still_buy_a_box() -> None:
    """One screw fewer than the need with its spare is not enough."""
    need = bought()["screw_2"]
    count = int(need.need.split()[0])
    wanted = -(-count * 110 // 100)

    assert bought(on_hand=f"{wanted} 2 in screws")["screw_2"].buy == 0
    assert bought(on_hand=f"{wanted - 1} 2 in screws")["screw_2"].buy == 1


def test_the_first_can_and_tube_replace_the_yield_of_the_data() -> None:
    """Worked by hand: 25 ft of a gap 1/2 by 1 in are 150 cu in, half of the data's 300; a tube of 19 ft half of 38.

    So what is counted beyond the can bought over, and the tubes, about doubles.
    """
    usual, own = bought(), bought(first_can="25 ft", first_tube="19 ft")

    gaps = int(usual["can_foam"].need.split()[1])
    assert [usual["can_foam"].buy - 1, own["can_foam"].buy - 1] == [ceil(gaps / 300), ceil(gaps / 150)]
    bead = int(usual["adhesive"].need.split()[0]) * 110
    assert [usual["adhesive"].buy, own["adhesive"].buy] == [ceil(bead / 100 / 38), ceil(bead / 100 / 19)]


@pytest.mark.parametrize(
    ("transport", "rips", "foam", "plywood", "tall_studs"),
    [
        ("car", "you", "delivered", "yard", "delivered"),  # studs of 97 in fit no 8 ft car, whole or cut
        ("rack", "you", "carried", "carried", "carried"),
        ("rack", "yard", "carried", "yard", "carried"),
        ("trailer", "you", "carried", "carried", "carried"),
        ("delivery", "you", "delivered", "delivered", "delivered"),
    ],
)
def test_what_fits_the_way_home_is_carried_and_the_rest_cut_or_brought(
    transport: str, rips: str, foam: str, plywood: str, tall_studs: str
) -> None:
    """By the inches of `prompts_data/stock/transport.toml` (common practice)."""
    lines, tall = bought(transport=transport, rips=rips), bought(transport=transport, rips=rips, tall=True)

    assert lines["foam 4 by 8 ft"].carry == foam
    assert lines["plywood 4 by 8 ft"].carry == plywood
    assert tall["stud_2x4 10 ft"].carry == tall_studs
    assert lines["adhesive"].carry == "carried"


def test_narrow_foam_goes_by_car() -> None:
    """A 2 by 8 ft sheet lies flat in any car that holds 8 ft."""
    assert bought(foam_sheet="24")["foam 2 by 8 ft"].carry == "carried"


def test_the_yard_cuts_a_long_stick_whose_pieces_fit() -> None:
    """Pieces up to 96 in go by an 8 ft car once they are cut; one of 97 in does not."""
    basement = layout_of(job([wall("9 ft")])).survey.basement

    assert stick_carry(inches("120"), [inches("96"), inches("14 1/2")], basement) == "yard"
    assert stick_carry(inches("120"), [inches("97")], basement) == "delivered"
    assert stick_carry(inches("96"), [inches("96")], basement) == "carried"


def test_offcuts_of_sticks_hold_pieces_and_need_not_be_bought() -> None:
    """By hand: five offcuts of 95 in hold five studs; five sticks fewer are bought, spare apart, and none of 95 in."""
    bare, own = (
        buy(layout_of(job([wall("16 ft")]))),
        buy(layout_of(job([wall("16 ft")], shopping="own", on_hand=OFFCUTS))),
    )
    sticks = own.lumber[0].sticks

    assert sum(stick.at_home for stick in sticks) == 5
    assert {stick.length for stick in sticks if stick.at_home} == {inches("95")}
    assert len([s for s in sticks if not s.at_home]) == len(bare.lumber[0].sticks) - 5
    assert all("95" not in line.ware for line in own.lines)
    assert own.lumber[0].proven


def test_offcuts_of_sticks_are_named_on_the_papers_and_stay_in_the_answer() -> None:
    """The list names them among what is at home, the ticket cuts them, and the answer for later has them still."""
    plan = make_plan(load_book(), from_json(job([wall("16 ft")], shopping="own", on_hand=OFFCUTS), load_book()))
    pages = papers(plan)

    assert "offcut 95, 5 x: 2x4, kiln dried" in " ".join(pages["shopping.md"].split())
    assert "95 in, from home" in pages["job-sheet.md"]
    assert once_bought(plan).endswith("5 2x4 offcut 95")


def test_an_offcut_as_long_as_a_whole_stick_is_counted_beside_the_whole_ones() -> None:
    """Two eights, of which one may be twisted, and an offcut of 96 in: two hold pieces."""
    tree = job([wall("16 ft")], shopping="own", on_hand="2 2x4 8 ft, 2x4 offcut 96")

    assert sum(stick.at_home for stick in buy(layout_of(tree)).lumber[0].sticks) == 2


@pytest.mark.parametrize(("tenths", "more"), [(0, 0), (1, 2), (3, 8), (5, 17)])
def test_crooked_sticks_are_a_line_of_their_own_and_in_no_claim(tenths: int, more: int) -> None:
    """Worked by hand, 17 studs needed: with none, 1, 3 or 5 of ten crooked 0, 2, 8 or 17 more are left 17 straight ones.

    What the lumber comes to is the sum of the 17 alone; the rest may all go back.
    """
    purchase = buy(layout_of(job([wall("16 ft")], shopping="own", culls=tenths)))
    plain = [line for line in purchase.lines if line.ware.startswith("stud_2x4")]

    assert sum(line.buy for line in plain if not line.culls) == 17
    assert [(line.buy, line.back) for line in plain if line.culls] == [(more, more)] * (more > 0)
    assert purchase.lumber[0].paid == sum(
        stick.length.ticks for stick in purchase.sticks if stick.parts[0].material is Material.STUD
    )
    assert purchase.lumber[0].proven
    assert all((17 + m) * (10 - tenths) // 10 < 17 for m in range(more))  # one stick fewer would not do


def test_a_spare_stick_that_the_yard_has_cut_does_not_go_back() -> None:
    """Tens go by car cut in two: those bought for crooked ones stay with the person."""
    layout = layout_of(job([wall("16 ft", **alongside())], longest_stick="10"))
    spare = {line.carry: line.back for line in buy(layout).lines if line.culls}

    assert spare["yard"] == 0


def test_the_end_trim_is_lost_on_every_stick_but_not_on_an_offcut() -> None:
    """What is left of a stick is less by the half inch, of an offcut it is not; no plate is longer than 95 1/2 in now."""
    tree = job([wall("16 ft")], shopping="own", trim="1/2 in", on_hand=OFFCUTS)
    layout = layout_of(tree)
    plain, treated = buy(layout).lumber

    assert plain.proven
    assert treated.proven
    for stick in (*plain.sticks, *treated.sticks):
        off = ZERO if stick.length == inches("95") else inches("1/2")
        room = stick.length - off - sum((part.cut + plain.kerf for part in stick.parts), start=ZERO)
        assert stick.rest == greatest(ZERO, room)
        assert room + plain.kerf >= ZERO
    assert max(part.cut for part in layout.parts.values() if part.kind is Kind.BOTTOM_PLATE) == inches("95 1/2")


def test_only_lengths_that_the_yard_has_are_bought_and_no_plate_is_longer() -> None:
    """A yard with eights alone: studs of 89 in come from eights, and plates that could be 10 ft end at 8."""
    tree = job([wall("16 ft")], shopping="own", longest_stick="10", yard_lengths="8 ft", on_hand="2x4 offcut 40")
    layout = layout_of(tree)
    purchase = buy(layout)

    assert {stick.length for stick in purchase.sticks if not stick.at_home} == {inches("96")}
    assert [lumber.lengths for lumber in purchase.lumber] == [(inches("96"),)] * 2
    assert purchase.too_long == ()
    assert max(part.cut for part in layout.parts.values() if part.kind is Kind.BOTTOM_PLATE) == inches("96")


def test_no_plate_of_a_thin_wall_is_longer_than_its_sticks() -> None:
    """2x3 is sold up to 10 ft: with 12 ft asked for, a wall of 16 ft has plates of 10 ft at most, and none is too long."""
    layout = layout_of(job([wall("16 ft")], stud="2x3", longest_stick="12"))

    assert buy(layout).too_long == ()
    assert max(part.cut for part in layout.parts.values() if part.kind is Kind.BOTTOM_PLATE) == inches("120")


def test_the_end_trim_is_said_where_it_is_sawn_and_in_the_claim() -> None:
    """Above the ticket what to saw off first, in the claim what it is about; without a trim neither."""
    trimmed, bare = (
        papers(make_plan(load_book(), from_json(job([wall("16 ft")], shopping="own", trim=trim), load_book())))
        for trim in ("1/2 in", "0 in")
    )
    said = " ".join(trimmed["job-sheet.md"].split())

    assert "Saw 1/2 in off one end of every stick first" in said
    assert "1/2 in is sawn off one end of every stick first, and holds no piece" in said
    assert "sawn off one end" not in " ".join(bare["job-sheet.md"].split())


@pytest.mark.parametrize(
    "said", ["2x4 offcut 0", "2x4 offcut 20 ft", "shelf offcut 30", "offcut 30", "2x4 offcut long"]
)
def test_an_offcut_that_cannot_be_meant_comes_off_nothing(said: str) -> None:
    """No length, one longer than any stick, no wood that is on the list: it is said back as not understood."""
    assert read_on_hand(said) == ({}, (said,))


def test_the_length_of_an_offcut_may_be_in_feet() -> None:
    """Four feet are 48 in."""
    assert read_on_hand("3 2x4 offcuts 4 ft") == ({"stud_2x4 offcut 48": 3}, ())
    assert read_on_hand("treated 2x4 offcut 57 1/2 in") == ({"treated_2x4 offcut 57 1/2": 1}, ())
