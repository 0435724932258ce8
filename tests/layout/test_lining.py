"""What lines a window: buck and return worked by hand, and when the tape has to do it on the spot.

Hole in the concrete 32 by 24 at 66, sill 48, its frame 5 in behind the concrete; B 2 3/8, D 6 3/8, drywall 1/2.
Half an inch of foam leaves 31 by 23 for the buck, its boards of 1 1/2 leave 28 by 20, the drywall leaves 27 by 19.
"""

from __future__ import annotations

import pytest

from guide.interview.written import Json
from guide.layout.parts import Kind, Material, Part, WallLayout
from guide.lengths import Length, inches
from tests.jobs import framed_door, laid, level, lying, tapering, wall, window
from tests.layout.sizes import cuts, said, size, spans


def with_window(*pipes: Json, **told: Json) -> WallLayout:
    """Return a wall with the window of this page, changed as told, and these pipes."""
    return laid(wall("200 in", openings=[{**window("66 in"), **told}], pipes=list(pipes)))


def by_side(parts: tuple[Part, ...]) -> dict[str, Part]:
    """Return the four pieces of a frame by where they go."""
    return {str(dict(part.why.values)["side"]): part for part in parts}


def test_head_and_sill_of_buck_and_return_run_through_and_the_sides_stand_between() -> None:
    """Buck 31 long, sides 23 - 3 = 20; return 28 long, sides 20 - 1 = 19."""
    layout = with_window()
    buck, lining = by_side(layout.of(Kind.BUCK)), by_side(layout.of(Kind.RETURN))

    order = ("head", "sill", "left side", "right side")
    assert cuts(buck[side] for side in order) == ["31", "31", "20", "20"]
    assert cuts(lining[side] for side in order) == ["28", "28", "19", "19"]
    assert spans(buck[side] for side in order[1:]) == [("66 1/2", "97 1/2"), ("66 1/2", "68"), ("96", "97 1/2")]
    assert spans(lining[side] for side in order[1:]) == [("68", "96"), ("68", "68 1/2"), ("95 1/2", "96")]
    at = inches("80")
    assert [size(p.box.z0.at(layout.wall, at)) for p in (buck["sill"], lining["sill"])] == ["48 1/2", "50"]
    assert [size(p.box.z1.at(layout.wall, at)) for p in (buck["head"], lining["head"])] == ["71 1/2", "70"]


def test_a_buck_is_ripped_from_frame_to_studs_and_a_return_from_frame_to_face() -> None:
    """5 + 2 3/8 = 7 3/8, an eighth more than a 2x8 is wide (7 1/4, PS 20); 5 + 6 3/8 = 11 3/8. At 4 7/8 a 2x8 does."""
    for depth, wide, board in (("5 in", "7 3/8", Material.BOARD_12), ("4 7/8 in", "7 1/4", Material.BOARD_8)):
        layout = with_window(depth=depth)
        assert {(size(p.wide or p.cut), p.material) for p in layout.of(Kind.BUCK)} == {(wide, board)}
    assert {size(p.wide or p.cut) for p in with_window().of(Kind.RETURN)} == {"11 3/8"}


def test_where_one_board_is_not_wide_enough_two_lie_side_by_side() -> None:
    """A frame 12 in deep: 14 3/8, more than a 2x12 is wide (11 1/4, PS 20): two of 7 3/16 each."""
    buck = with_window(depth="12 in").of(Kind.BUCK)

    assert len(buck) == 8
    assert {size(part.wide or part.cut) for part in buck} == {"7 3/16"}


def test_a_tunnel_that_tapers_tells_both_ends_of_each_strip() -> None:
    """Right corners 1/2 in deeper: head and sill run from 11 3/8 to 11 7/8; an eighth alone is not told (common practice)."""
    head = by_side(with_window(**tapering("5 in", "5 1/2 in", "5 in", "5 1/2 in")).of(Kind.RETURN))["head"]
    values = dict(head.why.values)

    assert [str(values[end]) for end in ("first", "last")] == ["left end", "right end"]
    wides = [values[end] for end in ("one", "other")]
    assert [size(wide) for wide in wides if isinstance(wide, Length)] == ["11 3/8", "11 7/8"]
    near = with_window(**tapering("5 in", "5 1/8 in", "5 in", "5 1/8 in")).of(Kind.RETURN)
    assert {part.why.key for part in near} == {"part.return"}


def test_thicker_drywall_leaves_a_smaller_finished_opening() -> None:
    """5/8 all round: sides 20 - 1 1/4 = 18 3/4."""
    layout = laid(wall("200 in", openings=[window("66 in")]), drywall="5/8")
    assert size(by_side(layout.of(Kind.RETURN))["left side"].cut) == "18 3/4"


def test_under_a_top_plate_that_is_the_header_the_gap_over_the_buck_is_told() -> None:
    """Joists 92, cap under them: the plate's underside is at 89 3/4; a hole up to 90 1/2 has its buck's face at 88 1/2."""
    layout = laid(wall("200 in", **level("92 in", "91 1/2 in"), openings=[window("66 in", sill="66 1/2 in")]))
    head = by_side(layout.of(Kind.BUCK))["head"]
    gap = dict(head.why.values)["gap"]

    assert (layout.cap_case, head.why.key) == (2, "part.buck_packed")
    assert [size(each) for each in (gap,) if isinstance(each, Length)] == ["1 1/4"]


@pytest.mark.parametrize(
    "layout",
    [
        with_window(sill="67 in"),  # up to 91, over the concrete's 90 1/2
        with_window(lying("40 in", "120 in", "60 in")),
        laid(
            wall(
                "200 in",
                height=["92 in at left", "88 in at right"],
                concrete=["90 1/2 in at left", "86 1/2 in at right"],
                openings=[window("66 in")],
            )
        ),  # 0.64 over it
    ],
)
def test_a_hole_that_is_no_plain_box_is_left_to_the_tape(layout: WallLayout) -> None:
    """A slope of more than the 1/2 in of foam over the hole would twist the lining (common practice)."""
    assert layout.of(Kind.SILL)
    assert not layout.of(Kind.BUCK, Kind.RETURN)
    assert "lining_by_hand" in said(layout)


def test_a_window_that_is_not_framed_is_not_lined_either() -> None:
    layout = laid(wall("30 in", openings=[window("2 in", "28 in")]))
    assert not layout.of(Kind.SILL, Kind.BUCK, Kind.RETURN)


def test_a_jamb_that_stays_is_extended_to_the_face_by_a_head_and_two_legs() -> None:
    """Jamb at 5, D 6 3/8: strips 1 3/8 wide. Head 34 1/2; legs 82 less the floor's 1/2 and the head's 3/4: 80 3/4."""
    layout = laid(wall("200 in", openings=[{**framed_door("66 in"), "outside": "yes"}]))
    strips = by_side(layout.of(Kind.EXTENSION))

    assert cuts(strips[side] for side in ("head", "left leg", "right leg")) == ["34 1/2", "80 3/4", "80 3/4"]
    assert {size(part.wide or part.cut) for part in strips.values()} == {"1 3/8"}
    assert {size(part.box.y0) for part in strips.values()} == {"5"}
    assert not laid(wall("200 in", openings=[framed_door("66 in")])).of(Kind.EXTENSION)  # that frame is pulled in
