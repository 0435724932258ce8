"""Corners that are not square: worked by hand, and laid in the plane by shapely, a general-purpose geometry library.

The angle follows from the reading across marks at 60 and 80 by the law of cosines. B is 2 3/8, F 5 7/8, D 6 3/8.
"""

from __future__ import annotations

import pytest
import shapely

from guide.checks.check import check
from guide.layout.outline import outline
from guide.layout.parts import Kind, Layout
from guide.lengths import SIXTEENTH, Length, exact_inches
from guide.reference.codes import load_code
from guide.reference.sayings import say
from tests.jobs import Tree, job, layout_of, level, wall
from tests.layout.sizes import cuts, decided, said
from tests.layout.test_outline import inset
from tests.properties.angle_law import gap, meeting

WIDE = "129 9/16 in"
"""Across a corner of 135 degrees: the square root of 10,000 + 9,600 x 0.70711 is 129.57."""
ROUND = "56 11/16 in"
"""Round one that leaves 135 degrees of concrete: the square root of 10,000 - 9,600 x 0.70711 is 56.67."""
ALMOST = "104 1/8 in"
"""Across a corner of 95 degrees: the square root of 10,000 + 9,600 x 0.08716 is 104.10."""


def bent(across: str, *, outside: bool = False, longer: str = "left", concrete: str = "90 1/2 in") -> Layout:
    """Return two walls, 144 and 120 in long, that meet at the right end of the first."""
    lengths = ("144 in", "120 in") if longer == "left" else ("120 in", "144 in")
    what, heights = f"{'outside' if outside else 'inside'} corner", level("92 in", concrete)
    first = wall(lengths[0], right=what, right_first="you choose", across=across, **heights)
    return layout_of(job([first, wall(lengths[1], **heights)], square="across the corners"))


def near(length: Length) -> str:
    """Return a size to the nearest sixteenth."""
    return exact_inches(length.near(SIXTEENTH))


def test_a_bay_of_45_degrees_is_mitred_at_22_and_a_half_from_long_point_to_long_point() -> None:
    """The backs meet B x tan 22.5 = 0.98 from the corner, the faces F x tan 22.5 = 2.43: 1.45 of slant over 3 1/2."""
    a, b = bent(WIDE).walls

    assert (a.right.mitred, a.right.through, b.left.through) == (True, None, None)
    assert [near(a.right.clear), near(a.right.slant)] == ["1", "1 7/16"]
    assert [near(b.left.clear), near(b.left.slant)] == ["1", "1 7/16"]
    assert cuts(a.of(Kind.BOTTOM_PLATE))[-1] == "44 5/8"  # 144 - 2 3/8 on the left - 0.98 = 140.64, less 96
    assert round(float(a.right.off_square), 1) == 22.5
    assert say(next(d.saying for d in a.decisions if d.id == "A.corner_right")).startswith(
        "Walls A and B meet at 135 degrees: the plates of both are mitred 22 1/2 degrees"
    )


def test_inside_a_mitred_corner_the_end_studs_stand_at_the_short_points_and_back_the_drywall() -> None:
    """Both sheets start where the drywall faces meet, D x tan 22.5 = 2.64, a fifth of an inch past the edge of the stud."""
    a, b = bent(WIDE).walls

    assert near(b.of(Kind.STUD)[0].box.x0) == "2 7/16"
    assert near(b.plate_start + b.left.first_sheet) == "2 5/8"
    assert not a.of(Kind.PACK)[1:]
    assert not b.of(Kind.PACK)
    assert said(a) == said(b) == []


def test_round_a_mitred_outside_corner_a_flat_stud_goes_as_near_the_edge_as_it_can() -> None:
    """The room edges meet 2.43 past the concrete. 1 1/2 deep, a flat stud ends 1 1/2 x tan 22.5 = 0.62 short of that."""
    a, b = bent(ROUND, outside=True).walls
    pack, last = a.of(Kind.PACK)[-1], a.of(Kind.STUD)[-1]

    assert [near(a.right.clear), near(a.right.slant)] == ["-2 7/16", "-1 7/16"]
    assert near(a.plate_end - pack.box.x1) == "5/8"
    assert (pack.box.y1, last.box.x1) == (a.offsets.face, pack.box.x0)
    assert near(b.of(Kind.PACK)[0].box.x0 - b.plate_start) == "5/8"


def test_a_corner_of_95_degrees_keeps_its_roles_and_its_plates_are_sawn_to_it() -> None:
    """5 degrees over 3 1/2 is 0.31. Through, at the back: 2 3/8 (1 - cos 85) / sin 85 = 2.18; butt: 5 7/8 - 2 3/8 cos 85 = 5.69."""
    a, b = bent(ALMOST).walls

    assert (a.right.through, b.left.through, decided(a, "corner_right")) == (True, False, "corner_cut")
    assert [near(a.right.slant), near(b.left.slant)] == ["-5/16", "-5/16"]
    assert [near(a.right.clear + abs(a.right.slant)), near(b.left.clear + abs(b.left.slant))] == ["2 3/16", "5 11/16"]
    assert len(a.of(Kind.PACK)) == 2


def test_a_corner_out_by_less_than_an_eighth_over_a_stud_is_framed_as_a_square_one() -> None:
    """101 across is 1.2 degrees, 1/16 over 3 1/2. What was read still counts: another reading could move every part."""
    square, off = bent("100 in"), bent("101 in")

    assert [part.box for part in off.parts.values()] == [part.box for part in square.parts.values()]
    assert "A.across" in off.by_letter["B"].of(Kind.STUD)[0].place_rests


@pytest.mark.parametrize("across", ["80 in", "139 in"])
def test_a_corner_too_sharp_or_too_flat_is_left_to_a_framer(across: str) -> None:
    """80 across is 68 degrees. 139 is 166, which still is a corner."""
    layout = bent(across)

    assert len(layout.walls) == (0 if across == "80 in" else 2)
    assert [p.saying.key for p in layout.survey.problems] == (["problem.angle"] * 2 if across == "80 in" else [])


@pytest.mark.parametrize("concrete", ["90 1/2 in", "89 in", "48 in"])
@pytest.mark.parametrize(
    ("across", "outside", "turn"),
    [(WIDE, False, (0.7069, 0.7073)), (ROUND, True, (0.7069, -0.7073)), (ALMOST, False, (0.0877, 0.9961))],
)
def test_the_plates_of_two_walls_touch_and_nothing_of_them_meets(
    across: str, outside: bool, turn: tuple[float, float], concrete: str
) -> None:
    """With the cap on the concrete, under the joists, and with a ledge far below; whichever wall is longer."""
    for longer in ("left", "right"):
        layout = bent(across, outside=outside, longer=longer, concrete=concrete)

        assert not list(meeting(layout, *turn))
        for kind in (Kind.BOTTOM_PLATE, Kind.TOP_PLATE, Kind.CAP):
            assert gap(layout, kind, *turn) < 0.07, kind  # what rounding down to a sixteenth leaves


def test_a_corner_at_an_angle_whose_other_wall_is_not_in_the_job_is_mitred_for_one_like_this() -> None:
    """The same 0.98 and 1.45 as between two walls of one kind."""
    last = wall("144 in", right="inside corner", right_first="you choose", across=WIDE)
    layout = layout_of(job([wall("96 in", right="open end"), last], square="across the corners"))
    end = layout.walls[1].right

    assert (end.mitred, end.neighbour, near(end.clear), near(end.slant)) == (True, None, "1", "1 7/16")
    assert said(layout.walls[1]) == []


@pytest.mark.parametrize(
    ("what", "across"), [("inside corner", WIDE), ("outside corner", ROUND), ("inside corner", ALMOST)]
)
def test_a_corner_at_the_open_left_end_of_a_chain_is_framed_as_its_mirror_image_on_the_right(
    what: str, across: str
) -> None:
    """What is measured on the left of the first wall gives the same end as on the right of the last one."""
    first = wall("144 in", left=what, left_first="this wall", left_across=across, right="open end")
    last = wall("144 in", left="open end", right=what, right_first="this wall", across=across)
    layout = layout_of(job([first, last], square="across the corners"))
    left, right = layout.by_letter["A"].left, layout.by_letter["B"].right

    assert (left.mitred, left.through, left.neighbour) == (right.mitred, right.through, None)
    assert [left.clear, left.slant, left.first_sheet, left.cap, left.face] == [
        right.clear, right.slant, right.first_sheet, right.cap, right.face,
    ]  # fmt: skip
    assert left.slant.ticks
    assert "A.left_across" in left.slant.rests
    assert decided(layout.walls[0], "corner_left") == decided(layout.walls[1], "corner_right")


def test_a_left_corner_too_sharp_for_studs_is_said_of_its_own_reading() -> None:
    """80 across is 68 degrees."""
    first = wall("144 in", left="inside corner", left_across="80 in", right="open end")
    problems = layout_of(job([first, wall("96 in")], square="across the corners")).survey.problems

    assert [(p.saying.key, p.paths) for p in problems] == [("problem.angle", ("A.left_across",))]


def test_a_bay_seen_in_a_mirror_has_the_same_ends_and_as_many_pieces() -> None:
    """The long wall ends in the corner as it begins in it when the two change places."""
    layout, mirrored = bent(WIDE), bent(WIDE, longer="right")
    mine, theirs = ([part for w in each.walls for part in w.of(Kind.STUD, Kind.FOAM)] for each in (layout, mirrored))

    assert layout.by_letter["A"].right.slant == mirrored.by_letter["B"].left.slant
    assert layout.by_letter["A"].right.clear == mirrored.by_letter["B"].left.clear
    assert len(mine) == len(theirs)


def chamfered() -> Tree:
    """Return a room of 240 by 180 with one corner cut off at 45 degrees, 40 from it each way: 56.57 along the cut."""
    lengths = ("200 in", "56 9/16 in", "140 in", "240 in", "180 in")
    across = (WIDE, WIDE, "100 in", "100 in", "100 in")
    each = [
        wall(n, right="inside corner", right_first="you choose", across=read)
        for n, read in zip(lengths, across, strict=True)
    ]
    return job(each, ring="yes", square="across the corners")


def test_a_room_with_a_corner_cut_off_closes_and_shrinks_as_the_library_says() -> None:
    """Five inside corners close it, since two of them turn by half a right angle."""
    layout = layout_of(chamfered())
    concrete = shapely.Polygon([(0, 0), (200, 0), (240, 40), (240, 180), (0, 180)])
    got = outline(layout)

    assert not layout.survey.problems
    assert got is not None
    assert float(got.bare_area) == pytest.approx(concrete.area, abs=20)  # readings to the sixteenth
    assert float(got.finished_area) == pytest.approx(inset(concrete, 6.375).area, abs=20)
    assert float(sum(n.inch for n in got.finished.values())) == pytest.approx(inset(concrete, 6.375).length, abs=0.3)
    assert [f.key for f in check(layout, load_code()) if f.key in ("closing", "corners_turn", "out_of_square")] == []
