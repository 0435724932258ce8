"""One wall worked by hand to the sixteenth of an inch, on a sloped floor, before a line of the engine was written.

The wall: concrete 196 in long, foam 2, glue bed 1/8, hump 1/4 (the string reads 1 1/4 over a 1 1/2 block), through on
the left, butt on the right, sheeted first. Slab to joists 91 1/4 left, 91 5/8 at 96, 92 1/8 right; one sill, so the
concrete ends 1 1/2 under the joists. Joists at 16 on centre from the left corner; sticks 8 ft; shelf 2 1/2.

    B = 2 + 1/8 + 1/4 = 2 3/8      F = B + 3 1/2 = 5 7/8      D = F + 1/2 = 6 3/8
    plate = 196 - B at the left - F at the right = 196 - 2 3/8 - 5 7/8 = 187 3/4
    stud  = H(x) - 1 1/2 - 1 1/2 - gasket 1/8, H taken at the stud's centre, rounded down to a sixteenth
"""

from __future__ import annotations

import pytest

from guide.interview.written import Json
from guide.layout.packing import sheets_for
from guide.layout.parts import Datum, Kind, WallLayout
from guide.lengths import ZERO, inches
from guide.reference.figures import load_figures
from tests.jobs import laid, wall
from tests.layout.sizes import cuts, decided, marks, said, size, spans


@pytest.fixture(scope="module")
def worked() -> WallLayout:
    return laid(
        wall(
            "196 in",
            height=["91 1/4 in at left", "91 5/8 in at 96 in", "92 1/8 in at right"],
            concrete=["89 3/4 in at left", "90 1/8 in at 96 in", "90 5/8 in at right"],
        )
    )


def test_it_stands_off_the_concrete_by_foam_bed_and_hump(worked: WallLayout) -> None:
    offsets = worked.offsets

    assert [size(each) for each in (offsets.back, offsets.face, offsets.drywall)] == ["2 3/8", "5 7/8", "6 3/8"]
    assert size(offsets.hump) == "1/4"
    assert size(offsets.foam_face) == "2 1/8"


def test_its_plates_reach_from_the_foam_line_to_the_face_of_the_wall_round_the_corner(worked: WallLayout) -> None:
    """From framed face to framed face the room keeps 184 1/4."""
    assert (size(worked.plate_start), size(worked.plate_end)) == ("2 3/8", "190 1/8")
    assert size(worked.plate) == "187 3/4"
    assert size(worked.wall.length - worked.offsets.face * 2) == "184 1/4"
    assert (worked.left.through, worked.right.through) == (True, False)


def test_its_thirteen_studs_stand_where_they_were_worked_out(worked: WallLayout) -> None:
    """Centres run from where the first sheet starts, 3 1/2 in from the end: 19 1/2, 35 1/2 ... less half a stud."""
    assert marks(worked, Kind.STUD) == [
        "0", "18 3/4", "34 3/4", "50 3/4", "66 3/4", "82 3/4", "98 3/4", "114 3/4", "130 3/4", "146 3/4", "162 3/4",
        "178 3/4", "186 1/4",
    ]  # fmt: skip
    assert (worked.zero_side, size(worked.mark_of(worked.zero))) == ("left", "3 1/2")
    assert [part.mark for part in worked.of(Kind.STUD)] == [f"A{number}" for number in range(1, 14)]


def test_each_stud_is_cut_to_the_height_at_its_own_place(worked: WallLayout) -> None:
    assert cuts(worked.of(Kind.STUD)) == [
        "88 1/8", "88 3/16", "88 1/4", "88 5/16", "88 3/8", "88 7/16", "88 1/2", "88 9/16", "88 11/16", "88 3/4",
        "88 13/16", "88 7/8", "88 15/16",
    ]  # fmt: skip


def test_its_pack_is_one_stud_lying_flat_to_the_room(worked: WallLayout) -> None:
    """It shows 1 1/2 in past the 3 1/2 in of the butting wall, and leaves the bay behind it open for insulation."""
    (pack,) = worked.of(Kind.PACK)

    assert (size(worked.mark_of(pack.box.x0)), size(worked.mark_of(pack.box.x1))) == ("1 1/2", "5")
    assert (size(pack.box.y0), size(pack.box.y1)) == ("4 3/8", "5 7/8")
    assert size(pack.cut) == "88 1/8"


def test_its_drywall_joints_fall_on_studs(worked: WallLayout) -> None:
    """Each 48 in from where the first sheet starts: 51 1/2, 99 1/2, 147 1/2."""
    assert [size(worked.mark_of(edge)) for edge in worked.sheet_edges] == ["51 1/2", "99 1/2", "147 1/2"]
    assert said(worked) == []


def test_it_is_blocked_at_both_corners_and_on_the_sixth_stud_only(worked: WallLayout) -> None:
    """That stud's centre is 85 7/8 from one corner of the concrete and 110 1/8 from the other: both under 120."""
    first, middle, last = worked.of(Kind.FIREBLOCK)
    studs = worked.of(Kind.STUD)

    assert first.box.x0 == studs[0].box.x1
    assert last.box.x1 == studs[12].box.x0
    assert middle.box.x0 == studs[5].box.x1
    assert size(studs[5].centre) == "85 7/8"
    assert size(worked.wall.length - studs[5].centre) == "110 1/8"
    assert max(middle.box.x1, worked.wall.length - middle.box.x0) <= inches("120")


def test_a_fireblock_reaches_from_the_foam_to_its_lap_on_the_stud(worked: WallLayout) -> None:
    """Foam face 2 1/8, back of the stud 2 3/8, lap 1 1/2: 1 3/4 in of plywood, as tall as the stud beside it."""
    for block in worked.of(Kind.FIREBLOCK):
        assert (size(block.box.y0), size(block.box.y1)) == ("2 1/8", "3 7/8")
        assert block.wide == inches("1 3/4")
    assert cuts(worked.of(Kind.FIREBLOCK)) == ["88 1/8", "88 7/16", "88 15/16"]


def test_its_plates_are_jointed_under_joists_and_apart_from_each_other(worked: WallLayout) -> None:
    """Bottom 96 + 91 3/4. Top joints under the joists at 64 and 144 in from the concrete, 34 3/8 and 45 5/8 from 96."""
    assert cuts(worked.of(Kind.BOTTOM_PLATE)) == ["96", "91 3/4"]
    assert cuts(worked.of(Kind.TOP_PLATE)) == ["61 5/8", "80", "46 1/8"]
    assert [size(part.box.x0) for part in worked.of(Kind.TOP_PLATE)[1:]] == ["64", "144"]
    assert decided(worked, "top_joints") == "top_joints_0"


def test_its_foam_is_cut_from_four_sheets_not_five(worked: WallLayout) -> None:
    """Into both corners it would take 196 in, 4.08 sheets; leaving 2 1/8 at both ends it takes 191 3/4, under 4 x 48."""
    foam = worked.of(Kind.FOAM)

    assert spans(foam) == [("2 1/8", "50 1/8"), ("50 1/8", "98 1/8"), ("98 1/8", "146 1/8"), ("146 1/8", "193 7/8")]
    assert [size(part.wide) for part in foam if part.wide] == ["48", "48", "48", "47 3/4"]
    pieces = [(part.wide or ZERO, part.cut) for part in foam]
    assert len(sheets_for(pieces, wide=inches("48"), tall=inches("96"), kerf=ZERO)) == 4
    assert {decided(worked, f"foam_{side}") for side in ("left", "right")} == {"foam_short"}
    (beaten,) = [beat for d in worked.decisions if d.id == "A.foam_left" for beat in d.beat]
    assert (beaten.key, dict(beaten.values)) == ("alternative.foam_fills", {"sheets": 5})


def test_its_foam_reaches_from_the_sealed_gap_to_the_concrete_where_that_is_lowest(worked: WallLayout) -> None:
    """Half an inch off the slab; the concrete at the lower end of each piece, less that half, down to an eighth."""
    assert {size(part.box.z0.off) for part in worked.of(Kind.FOAM)} == {"1/2"}
    assert cuts(worked.of(Kind.FOAM)) == ["89 1/4", "89 3/8", "89 5/8", "89 7/8"]
    assert not worked.foam_first


def test_its_cap_lies_on_the_concrete_in_strips_of_4_7_8_nine_to_a_sheet(worked: WallLayout) -> None:
    """Shelf 2 1/2 and B 2 3/8 make 4 7/8. A 4 by 8 ft sheet gives floor(48 / (4 7/8 + 1/8)) = 9 strips of 8 ft."""
    figures = load_figures()
    caps = worked.of(Kind.CAP)

    assert worked.cap_case == 1
    assert {part.wide for part in caps} == {inches("4 7/8")}
    assert {(part.box.z0.datum, size(part.box.z0.off)) for part in caps} == {(Datum.CONCRETE, "0")}
    assert inches("48").ticks // (inches("4 7/8") + figures.cap_kerf).ticks == 9
    assert (size(caps[0].box.x0), size(caps[-1].box.x1)) == ("-2 1/2", "193 5/8")
    assert len(worked.of(Kind.CAP_LAP)) == len(caps) - 1


def test_the_shortest_of_three_readings_of_the_length_counts(worked: WallLayout) -> None:
    """The corners lean apart: the plates are cut to the reading at the floor, and rest on all three."""
    three: Json = ["196 in at floor", "196 1/8 in at chest", "196 1/4 in at joists"]
    leaning = laid({**wall("196 in"), "length": three})

    assert leaning.plate == worked.plate
    assert {"A.length@floor", "A.length@chest", "A.length@joists"} <= leaning.plate.rests


def test_its_numbers_name_the_readings_they_rest_on(worked: WallLayout) -> None:
    """A stud's length is drawn between two readings; every other one could turn the cap, and so every stud, by 3/4 in.

    The readings that have nothing to do with it are not named.
    """
    second, last = worked.of(Kind.STUD)[1], worked.of(Kind.STUD)[12]
    heights = {f"A.{what}@{place}" for what in ("height", "concrete") for place in ("left", "96", "right")}

    assert heights | {"A.string", "basement.foam_thickness"} <= second.size_rests
    assert not {"A.shelf", "A.first_joist", "basement.drywall"} & second.size_rests
    assert "A.length@floor" not in second.box.x0.rests
    assert "A.length@floor" in last.box.x0.rests
