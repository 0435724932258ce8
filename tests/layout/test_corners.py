"""Rooms and ends worked by hand: who runs through, where plates stop, whose foam fills a corner, what meets overhead."""

from __future__ import annotations

import pytest

from guide.interview.written import Json
from guide.layout.engine import lay_out
from guide.layout.parts import Kind, Layout, WallLayout
from guide.lengths import ZERO, inches
from guide.reference.codes import load_code
from guide.reference.figures import load_figures
from guide.reference.sayings import say
from tests.jobs import Tree, alongside, job, l_room, laid, layout_of, level, ring, survey_of, wall
from tests.layout.sizes import cuts, decided, marks, said, size, spans

DOUBLE_SILL = level("92 in", "89 in")
"""Two sills: the concrete ends 3 in under the joists."""


def side(length: str, **answers: Json) -> Tree:
    """Return a wall of a room whose corners are left to the engine."""
    return wall(length, right_first="you choose", **answers)


def room(**first: Json) -> Layout:
    """Return four walls, 240, 180, 240, 180, the first with these answers: B 2 3/8 and F 5 7/8 on each."""
    return layout_of(ring([side("240 in", **first), side("180 in"), side("240 in"), side("180 in")]))


def test_in_a_room_the_longer_walls_run_through_and_the_shorter_ones_butt() -> None:
    """Through at both ends 240 - 2 x 2 3/8 = 235 1/4; butt at both ends 180 - 2 x 5 7/8 = 168 1/4."""
    a, b, c, d = room().walls

    assert [(w.left.through, w.right.through) for w in (a, b, c, d)] == [(True, True), (False, False)] * 2
    assert [size(w.plate) for w in (a, b, c, d)] == ["235 1/4", "168 1/4"] * 2


def test_a_through_wall_has_a_pack_at_each_corner_and_a_butt_wall_has_none() -> None:
    """Packs 1 1/2 to 5 and 235 1/4 - 5 to 235 1/4 - 1 1/2. Studs 3 1/2 + 16 k less 3/4: fourteen, and the two ends."""
    a, b, *_ = room().walls

    assert marks(a, Kind.PACK) == ["1 1/2", "230 1/4"]
    assert marks(a, Kind.STUD)[:3] == ["0", "18 3/4", "34 3/4"]
    assert marks(a, Kind.STUD)[-2:] == ["226 3/4", "233 3/4"]
    assert len(a.of(Kind.STUD)) == 16
    assert not b.of(Kind.PACK)


def test_a_wall_sheeted_second_starts_its_studs_a_drywall_thickness_further() -> None:
    """The longer wall is sheeted first; the first sheet of the other starts at its face: 1/2 + 16 - 3/4 = 15 3/4."""
    b = room().walls[1]

    assert size(b.mark_of(b.zero)) == "1/2"
    assert marks(b, Kind.STUD)[:3] == ["0", "15 3/4", "31 3/4"]
    assert len(b.of(Kind.STUD)) == 12  # ten to 160 1/2, and the two ends


def test_who_runs_through_is_as_the_person_said() -> None:
    """The right corner of the first wall is given to the second: 240 - 2 3/8 - 5 7/8 and 180 - 2 3/8 - 5 7/8."""
    a, b, *_ = layout_of(
        ring([wall("240 in", right_first="other wall"), side("180 in"), side("240 in"), side("180 in")])
    ).walls

    assert (a.right.through, b.left.through) == (False, True)
    assert [size(w.plate) for w in (a, b)] == ["231 3/4", "171 3/4"]


def test_corners_go_to_the_foam_that_buys_fewest_sheets() -> None:
    """240 is five sheets of 48 to the inch; 194 would need a fifth for 2 in, and 194 - 2 1/8 = 191 7/8 only four.

    So each short wall leaves at least one of its corners to a long one: 5 + 4 + 5 + 4 sheets.
    """
    layout = layout_of(ring([side(n) for n in ("240 in", "194 in", "240 in", "194 in")]))

    assert [len(w.of(Kind.FOAM)) for w in layout.walls] == [5, 4, 5, 4]
    for w in layout.walls:
        other = layout.by_letter[w.wall.right_joined or ""]
        fills = decided(w, "foam_right") == "foam_fills", decided(other, "foam_left") == "foam_fills"
        assert sum(fills) == 1


def test_whose_foam_fills_a_corner_is_what_the_person_says_and_a_guess_locks_it() -> None:
    """All four fill their right corner, or none does, though it takes more sheets; where nobody says, the fewest win.

    At a corner whose other wall is not in the job both ends are the wall's own to give away.
    """
    for whose, right, left in (("this wall", "foam_fills", "foam_short"), ("other wall", "foam_short", "foam_fills")):
        room = layout_of(ring([{**side(n), "right_foam": whose} for n in ("240 in", "194 in", "240 in", "194 in")]))
        assert {(decided(w, "foam_right"), decided(w, "foam_left")) for w in room.walls} == {(right, left)}
        assert all(
            len(decision.beat) == 1 for w in room.walls for decision in w.decisions if decision.id.endswith("foam_left")
        )
    alone = laid(wall("144 in", left_foam="other wall", right_foam="this wall"))
    assert (decided(alone, "foam_left"), decided(alone, "foam_right")) == ("foam_short", "foam_fills")
    guessed = survey_of(job([wall("144 in", left_foam={"value": "other wall", "known": "eyeballed"})]))
    first = lay_out(guessed, load_code(), load_figures()).walls[0].of(Kind.FOAM)[0]
    assert guessed.unsure(first.size_rests | first.place_rests) == ("A.left_foam",)


def test_the_through_walls_cap_runs_on_over_the_corner_and_the_others_starts_at_its_edge() -> None:
    """Through: from the sill of the wall round the corner, 2 1/2 back. Butt: from the through wall's B, 2 3/8."""
    a, b, *_ = room().walls

    assert size(a.of(Kind.CAP)[0].box.x0) == "-2 1/2"
    assert size(b.of(Kind.CAP)[0].box.x0) == "2 3/8"


def test_a_cap_reaches_the_sill_of_the_wall_round_the_corner_not_its_own() -> None:
    """The first wall's shelf is 2 1/2, the second's 4: at their corner the cap of the first runs 4 in past it."""
    a, *_ = layout_of(ring([side("240 in"), side("180 in", shelf="4 in"), side("240 in"), side("180 in")])).walls

    assert size(a.of(Kind.CAP)[-1].box.x1 - a.wall.length) == "4"


def test_caps_at_two_heights_leave_a_hole_that_is_remarked() -> None:
    """One wall has a double sill, so its cap runs under the joists; its neighbours' caps lie on the concrete."""
    a, b, c, d = room(**DOUBLE_SILL).walls

    assert [w.cap_case for w in (a, b, c, d)] == [2, 1, 1, 1]
    assert said(a) == ["caps_part", "caps_part"]
    assert (said(b), said(c), said(d)) == (["caps_part"], [], ["caps_part"])


def test_a_double_sill_makes_every_stud_three_quarters_shorter() -> None:
    """On the concrete at 89 a cap would face the plate's edge, 90 1/2 to 92, nowhere: it runs over the plate instead."""
    single, double = laid(wall()), laid(wall(**DOUBLE_SILL))
    pairs = list(zip(single.of(Kind.STUD, Kind.PACK), double.of(Kind.STUD, Kind.PACK), strict=True))

    assert (single.cap_case, double.cap_case) == (1, 2)
    assert cuts(double.of(Kind.STUD))[:1] == ["88 1/8"]  # 92 - 3 - 1/8 - 3/4
    assert all(one.cut - two.cut == inches("3/4") and one.box.x0 == two.box.x0 for one, two in pairs)


def test_a_cap_goes_under_the_joists_where_the_person_says_so_and_on_the_concrete_only_where_it_can() -> None:
    """Said so, every stud is 3/4 shorter than with the cap on the concrete; over a double sill it stays under the joists, and that is told."""
    plain, low, high = laid(wall()), laid(wall(cap="on the concrete")), laid(wall(cap="under the joists"))
    refused = laid(wall(**DOUBLE_SILL, cap="on the concrete"))

    assert (low.cap_case, decided(low, "cap"), said(low)) == (plain.cap_case, decided(plain, "cap"), said(plain))
    assert (high.cap_case, decided(high, "cap")) == (2, "cap_2_said")
    assert high.of(Kind.STUD)[0].cut == plain.of(Kind.STUD)[0].cut - inches("3/4")
    assert "A.cap" in high.of(Kind.STUD)[0].size_rests
    assert (refused.cap_case, decided(refused, "cap")) == (2, "cap_2")
    assert "cap_not_there" in said(refused)
    assert "cap_not_there" not in said(laid(wall(**DOUBLE_SILL, cap="under the joists")))


def test_a_cap_over_the_plate_reaches_the_room_edge_five_strips_to_a_sheet() -> None:
    """Shelf 2 1/2 and F 5 7/8 make 8 3/8; floor(48 / 8 1/2) = 5. The foam ends at the concrete, 89 - 1/2 = 88 1/2 tall."""
    double = laid(wall(**DOUBLE_SILL))

    assert {size(part.wide) for part in double.of(Kind.CAP) if part.wide} == {"8 3/8"}
    assert inches("48").ticks // inches("8 1/2").ticks == 5
    assert set(cuts(double.of(Kind.FOAM))) == {"88 1/2"}


def test_concrete_nearly_at_the_joists_takes_the_cap_over_the_plate_and_the_foam_stays_under_it() -> None:
    """Half an inch over the concrete: 3/4 plywood does not fit. Foam to 92 - 3/4 - 1/2 = 90 3/4, less 1/2 at the slab."""
    tight = laid(wall(**level("92 in", "91 1/2 in")))

    assert decided(tight, "cap") == "cap_2_tight"
    assert set(cuts(tight.of(Kind.FOAM))) == {"90 1/4"}
    assert {size(part.box.y0) for part in tight.of(Kind.CAP)} == {"0"}  # it starts at the face of the concrete
    assert "cap_unbacked" in said(tight)


def test_a_sill_that_hangs_over_the_room_to_the_studs_is_its_own_cap() -> None:
    """It hangs 3 in over; the studs start there, so nothing is left to close."""
    hanging = laid(wall(shelf="-3 in"))

    assert size(hanging.offsets.back) == "3"
    assert not hanging.of(Kind.CAP, Kind.CAP_LAP)
    assert decided(hanging, "cap") == "cap_sill"


def test_joists_alongside_get_blocks_no_further_than_24_apart_and_joints_under_them() -> None:
    """Plates 135 3/4: from 0 to 134 1/4 six bays of 22 3/8, so seven blocks of 14 1/2; joints under their centres."""
    along = laid(wall(**alongside()))
    blocks = along.of(Kind.JOIST_BLOCK)

    assert marks(along, Kind.JOIST_BLOCK) == ["0", "22 3/8", "44 3/4", "67 1/8", "89 1/2", "111 7/8", "134 1/4"]
    assert set(cuts(blocks)) == {"14 1/2"}
    joint = along.of(Kind.TOP_PLATE)[1].box.x0
    assert joint in [block.centre for block in blocks]


def test_blocks_that_would_not_reach_over_the_plate_are_left_out_and_remarked() -> None:
    """Rim 2 1/2 behind the concrete's face and a gap of 4: blocks would end 1 1/2 out, and the plate starts at 2 3/8."""
    short = laid(wall(**alongside("4 in")))

    assert not short.of(Kind.JOIST_BLOCK)
    assert "blocks_short" in said(short)


def test_at_a_framed_wall_plates_foam_and_cap_start_at_its_face() -> None:
    """It stands 4 3/4 out. Nothing is deducted for foam round the corner, and no pack is needed."""
    framed = laid(wall(left="framed wall", left_framed="4 3/4 in"))

    assert size(framed.plate_start) == "4 3/4"
    assert marks(framed, Kind.STUD)[:2] == ["0", "15 1/4"]
    assert size(framed.of(Kind.FOAM)[0].box.x0) == "4 3/4"
    assert size(framed.of(Kind.CAP)[0].box.x0) == "4 3/4"
    assert not framed.of(Kind.PACK)


def test_at_an_open_end_plates_run_to_the_end_of_the_concrete() -> None:
    open_ends = laid(wall(left="open end", right="open end"))

    assert (size(open_ends.plate_start), size(open_ends.plate_end)) == ("0", "144")
    assert (size(open_ends.of(Kind.FOAM)[0].box.x0), open_ends.of(Kind.FOAM)[-1].box.x1) == ("0", open_ends.wall.length)


def test_a_wall_whose_ends_leave_no_room_is_not_drawn_and_the_person_is_told() -> None:
    layout = layout_of(job([wall("24 in", left="framed wall", left_framed="12 in")]))

    assert not layout.walls
    (problem,) = layout.survey.problems
    assert "24 in long" in say(problem.saying)
    assert problem.paths == ("A.length",)


def test_standing_sheets_ask_for_the_same_studs_as_lying_ones() -> None:
    """Both have an upright joint every 48 in, lying ones in every second row, and 16 in studs carry both."""
    lying_, upright = (laid(wall("200 in"), sheets=how) for how in ("lying", "standing"))

    assert spans(lying_.of(Kind.STUD)) == spans(upright.of(Kind.STUD))
    assert lying_.sheet_edges == upright.sheet_edges


def foam_of(length: str, **basement: str) -> WallLayout:
    return laid(wall(length, left="open end", right="open end"), **basement)


def test_a_strip_of_foam_under_twelve_inches_is_evened_out_with_the_one_before() -> None:
    """100 = 48 + 48 + 4: the last two share 52 in, 26 each."""
    assert spans(foam_of("100 in").of(Kind.FOAM)) == [("0", "48"), ("48", "74"), ("74", "100")]


def test_foam_in_24_inch_sheets_takes_twice_the_columns() -> None:
    """100 = 4 x 24 + 4: the last two share 28 in, 14 each."""
    assert spans(foam_of("100 in", foam_sheet="24").of(Kind.FOAM)) == [
        ("0", "24"), ("24", "48"), ("48", "72"), ("72", "86"), ("86", "100"),
    ]  # fmt: skip


def test_fireblocks_that_reach_the_concrete_part_the_foam() -> None:
    """Back 2 3/8 and lap 1 1/2: 3 7/8 wide from the concrete; foam ends at one side of each and goes on at the other."""
    through = laid(wall("196 in"), block_reach="concrete")
    foam = [(part.box.x0, part.box.x1) for part in through.of(Kind.FOAM)]

    for block in through.of(Kind.FIREBLOCK):
        assert (block.box.y0, block.wide) == (ZERO, inches("3 7/8"))
        assert any(right == block.box.x0 for _, right in foam)
        assert any(left == block.box.x1 for left, _ in foam)


def test_a_fireblock_through_the_foam_stands_where_it_leaves_the_fewest_pieces() -> None:
    """186 in, the end blocks leave 4 5/8 to 177 7/8 of foam, 173 1/4: four sheets of 48 in at least, a block between or not.

    At 86 5/8, beside the stud centred 85 7/8, it leaves 82 and 90 1/2, two sheets wide each. At 70 5/8, a bay to the left
    and off the drywall joints as well, it would leave 66 and 106 1/2: five pieces.
    """
    through = laid(wall("186 in"), block_reach="concrete")
    edges = [(size(part.box.x0), size(part.box.x1)) for part in through.of(Kind.FIREBLOCK)]

    assert edges == [("3 7/8", "4 5/8"), ("86 5/8", "87 3/8"), ("177 7/8", "178 5/8")]
    inner = [part for part in through.of(Kind.FOAM) if inches("4 5/8") <= part.box.x0 < inches("177 7/8")]
    assert len(inner) == 4


def test_a_ring_with_a_wall_left_out_is_laid_out_all_the_same() -> None:
    """The second wall contradicts itself; the run of the other three then begins at the third."""
    walls = [side("240 in"), side("180 in", **level("92 in", "93 in")), side("240 in"), side("180 in")]
    layout = layout_of(ring(walls))

    assert [w.letter for w in layout.walls] == ["A", "C", "D"]
    assert decided(layout.walls[0], "foam_left") != decided(layout.walls[2], "foam_right")


def ell() -> Layout:
    """Return an L-shaped room of six walls; the corner between the third and the fourth is an outside one."""
    return layout_of(l_room())


def test_at_an_outside_corner_the_through_wall_runs_past_by_f_and_the_butt_wall_by_b() -> None:
    """Third wall 96 - 5 7/8 (butt) + 5 7/8 (through) = 96; fourth 72 + 2 3/8 (butt) - 5 7/8 (butt) = 68 1/2."""
    layout = ell()
    c, d = layout.walls[2:4]

    assert not layout.survey.problems
    assert (c.right.through, d.left.through) == (True, False)
    assert (size(c.plate), size(d.plate)) == ("96", "68 1/2")
    assert not c.of(Kind.PACK)


def test_at_an_outside_corner_one_foam_stops_at_the_concrete_and_the_other_laps_it() -> None:
    """Foam 2 in on a bed of 1/8: the lapping wall's foam ends 2 1/8 past its concrete, the other's at the concrete."""
    c, d = ell().walls[2:4]
    past = max(p.box.x1 for p in c.of(Kind.FOAM)) - inches("96"), -min(p.box.x0 for p in d.of(Kind.FOAM))

    assert sorted(past) == [ZERO, inches("2 1/8")]


def test_round_an_outside_corner_the_first_sheet_covers_the_end_of_the_other_walls_framing() -> None:
    """The fourth wall is the shorter, so its sheet laps the drywall too: 3 1/2 + 1/2 = 4 past; studs -4 + 16 - 3/4."""
    d = ell().walls[3]

    assert size(d.mark_of(d.zero)) == "-4"
    assert marks(d, Kind.STUD)[:3] == ["0", "11 1/4", "27 1/4"]
    assert decided(d, "zero") == "zero_past"
    assert {f"{rest}.length@floor" for rest in "CD"} <= d.zero.rests


@pytest.mark.parametrize(("first", "longer"), [("this wall", True), ("this wall", False), ("other wall", True)])
def test_round_an_outside_corner_the_butt_walls_sheets_lap_whichever_wall_is_longer(first: str, longer: bool) -> None:
    """3 1/2 of framing and 1/2 of drywall past the butt wall's plates, nothing past those of the through wall."""
    one, other = ("144 in", "120 in") if longer else ("120 in", "144 in")
    a, b = layout_of(job([wall(one, right="outside corner", right_first=first), wall(other)])).walls
    through, butt = (a.right, b.left) if first == "this wall" else (b.left, a.right)

    assert [size(through.first_sheet), size(butt.first_sheet)] == ["0", "-4"]
