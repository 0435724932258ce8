"""Doors and windows: framing worked by hand, and what is said when there is no room for it.

Walls between two open ends, so that plates run from 0 to the full length and the studs stand at 16, 32, 48 ... from the
left end. Joists 92 over a level slab: a stud is 92 - 3 - 1/8 = 88 7/8; the top plate's underside is at 90 1/2; the
bottom plate's top is at 1 5/8.
"""

from __future__ import annotations

from guide.layout.parts import Kind, WallLayout
from guide.lengths import Length, inches
from guide.reference.sayings import Saying
from tests.jobs import Tree, framed_door, laid, new_door, standing, wall, window
from tests.layout.sizes import cuts, marks, said, size, spans

OPEN: Tree = {"left": "open end", "right": "open end"}


def with_openings(length: str, *openings: Tree) -> WallLayout:
    return laid(wall(length, **OPEN, openings=list(openings)))


def test_a_window_gets_kings_trimmers_header_sill_and_short_studs_on_the_module() -> None:
    """Hole in the concrete 66 to 102 and 50 to 74 high; its liner (1 1/2 buck, 1/2 foam) takes 2 in on every side.

    Framed hole 68 to 100, 52 to 72. Trimmers 72 - 1 5/8 = 70 3/8; header 32 + 2 x 1 1/2 = 35; sill 32; short studs at 80
    and 96: under the sill 50 1/2 - 1 5/8 = 48 7/8, over the header 90 1/2 - 73 1/2 = 17.
    """
    wall_ = with_openings("200 in", window("66 in", "36 in", "24 in", "50 in"))

    assert spans(wall_.of(Kind.TRIMMER)) == [("66 1/2", "68"), ("100", "101 1/2")]
    assert cuts(wall_.of(Kind.TRIMMER)) == ["70 3/8", "70 3/8"]
    assert spans(wall_.of(Kind.KING)) == [("65", "66 1/2"), ("101 1/2", "103")]
    assert cuts(wall_.of(Kind.KING)) == ["88 7/8", "88 7/8"]
    assert (spans(wall_.of(Kind.HEADER)), cuts(wall_.of(Kind.HEADER))) == ([("66 1/2", "101 1/2")], ["35"])
    assert (spans(wall_.of(Kind.SILL)), cuts(wall_.of(Kind.SILL))) == ([("68", "100")], ["32"])
    assert marks(wall_, Kind.CRIPPLE) == ["79 1/4", "79 1/4", "95 1/4", "95 1/4"]
    assert sorted(cuts(wall_.of(Kind.CRIPPLE))) == ["17", "17", "48 7/8", "48 7/8"]
    assert marks(wall_, Kind.STUD) == [
        "0", "15 1/4", "31 1/4", "47 1/4", "63 1/4", "111 1/4", "127 1/4", "143 1/4", "159 1/4", "175 1/4", "191 1/4",
        "198 1/2",
    ]  # fmt: skip
    assert said(wall_) == []


def test_a_new_door_breaks_the_bottom_plate_and_keeps_the_module_over_its_header() -> None:
    """Leaf 32 by 80 at 50: hole 49 to 83, high 80 + 2 1/2 + 1/2 floor = 83. Trimmers 83 - 1 5/8 = 81 3/8, header 37.

    Short studs at 64 and 80: 90 1/2 - 84 1/2 = 6. Bottom plate 0 to 49 and 83 to 144; the top plate runs on, its joint
    under the joist at 96.
    """
    wall_ = with_openings("144 in", new_door("50 in"))

    assert spans(wall_.of(Kind.BOTTOM_PLATE)) == [("0", "49"), ("83", "144")]
    assert cuts(wall_.of(Kind.TOP_PLATE)) == ["96", "48"]
    assert cuts(wall_.of(Kind.TRIMMER)) == ["81 3/8", "81 3/8"]
    assert (spans(wall_.of(Kind.HEADER)), cuts(wall_.of(Kind.HEADER))) == ([("47 1/2", "84 1/2")], ["37"])
    assert marks(wall_, Kind.CRIPPLE) == ["63 1/4", "79 1/4"]
    assert cuts(wall_.of(Kind.CRIPPLE)) == ["6", "6"]
    assert not wall_.of(Kind.SILL)
    assert said(wall_) == []  # the drywall joint at 48 falls on the trimmer, which stands from 47 1/2 to 49


def test_a_standing_door_frame_gets_half_an_inch_on_each_side_and_over_it() -> None:
    """Frame 34 1/2 by 82 at 50: hole 49 1/2 to 85, 82 1/2 high; trimmers 82 1/2 - 1 5/8 = 80 7/8."""
    wall_ = with_openings("144 in", framed_door("50 in"))

    assert spans(wall_.of(Kind.BOTTOM_PLATE)) == [("0", "49 1/2"), ("85", "144")]
    assert cuts(wall_.of(Kind.TRIMMER)) == ["80 7/8", "80 7/8"]


def test_a_wide_opening_gets_two_flat_pieces_for_its_header() -> None:
    """Over 48 in wide (common practice, for the trim's sake): hole 64 - 4 = 60, two headers of 63 on each other."""
    wall_ = with_openings("200 in", window("60 in", "64 in"))
    low, high = wall_.of(Kind.HEADER)

    assert cuts((low, high)) == ["63", "63"]
    assert low.box.z1 == high.box.z0
    assert len(with_openings("200 in", window("60 in", "52 in")).of(Kind.HEADER)) == 1


def test_where_the_head_is_within_three_inches_of_the_joists_the_top_plate_is_the_header() -> None:
    """Head of the hole at 62 + 30 - 2 = 90, 2 in under the joists: kings stand flush with the hole, no trimmers."""
    wall_ = with_openings("200 in", window("66 in", "36 in", "30 in", "62 in"))

    assert spans(wall_.of(Kind.KING)) == [("66 1/2", "68"), ("100", "101 1/2")]
    assert not wall_.of(Kind.TRIMMER, Kind.HEADER)
    assert cuts(wall_.of(Kind.CRIPPLE)) == ["60 7/8", "60 7/8"]  # sill 62 1/2 to 64: 62 1/2 - 1 5/8


def test_short_studs_under_three_inches_are_left_out() -> None:
    """A hole from 5 3/4 up has its sill from 4 1/4 to 5 3/4: 4 1/4 - 1 5/8 = 2 5/8 is too short to nail."""
    wall_ = with_openings("200 in", window("66 in", "36 in", "40 in", "3 3/4 in"))

    assert size(wall_.of(Kind.SILL)[0].box.z1.at(wall_.wall, inches("84"))) == "5 3/4"
    assert all(part.box.z0.at(wall_.wall, part.centre) > inches("40") for part in wall_.of(Kind.CRIPPLE))


def test_a_hatch_at_the_slab_takes_the_bottom_plate_for_its_sill() -> None:
    """Its framed hole begins at 2 in; a sill under that would stand in the bottom plate, whose top is at 1 5/8."""
    wall_ = with_openings("200 in", window("66 in", "36 in", "30 in", "0 in"))

    assert not wall_.of(Kind.SILL)
    assert spans(wall_.of(Kind.BOTTOM_PLATE)) == [("0", "96"), ("96", "176"), ("176", "200")]
    assert said(wall_) == []


def test_a_stud_that_stands_where_the_king_would_does_its_work() -> None:
    """Hole from 3 1/2: the trimmer takes 2 to 3 1/2, the king's place 1/2 to 2 is half taken by the end stud."""
    wall_ = with_openings("120 in", window("1 1/2 in", "36 in"))

    assert spans(wall_.of(Kind.TRIMMER)) == [("2", "3 1/2"), ("35 1/2", "37")]
    assert spans(wall_.of(Kind.KING)) == [("37", "38 1/2")]
    assert said(wall_) == ["no_room", "fireblock_end"]  # nor is there room for a block beside the end stud


def test_an_end_stud_in_the_very_place_of_the_king_is_the_king() -> None:
    """Hole from 3: trimmer 1 1/2 to 3, and the end stud stands from 0 to 1 1/2. Nothing is wrong with that."""
    wall_ = with_openings("120 in", window("1 in", "36 in"))

    assert spans(wall_.of(Kind.TRIMMER))[0] == ("1 1/2", "3")
    assert len(wall_.of(Kind.KING)) == 1
    assert "no_room" not in said(wall_)


def test_an_opening_without_room_for_a_trimmer_is_left_out_whole() -> None:
    """Hole from 2: its trimmer would stand from 1/2 to 2, in the end stud. No part of its framing is drawn."""
    wall_ = with_openings("120 in", window("0 in", "36 in"))

    assert not wall_.of(Kind.KING, Kind.TRIMMER, Kind.HEADER, Kind.SILL, Kind.CRIPPLE)
    assert said(wall_) == ["opening_unframed", "fireblock_end"]
    assert all(part.box.x1 <= inches("2") or part.box.x0 >= inches("34") for part in wall_.of(Kind.STUD))


def test_two_openings_share_the_stud_between_them_if_both_trimmers_fit() -> None:
    """Holes end at 60 and begin at 64 1/2: trimmers 60 to 61 1/2 and 63 to 64 1/2, one king between serves both."""
    shared = with_openings("200 in", new_door("29 in", "30 in"), window("62 1/2 in", "36 in"))

    assert ("61 1/2", "63") in spans(shared.of(Kind.KING))
    assert spans(shared.of(Kind.TRIMMER))[1:3] == [("60", "61 1/2"), ("63", "64 1/2")]
    assert "opening_unframed" not in said(shared)


def test_of_two_openings_nearer_than_that_the_left_one_is_framed() -> None:
    """Holes 4 in apart: two trimmers and a king need 4 1/2."""
    near = with_openings("200 in", new_door("29 in", "30 in"), window("62 in", "36 in"))

    assert "opening_unframed" in said(near)
    assert len(near.of(Kind.HEADER)) == 1


def test_a_pipe_in_the_jamb_leaves_the_opening_unframed() -> None:
    """A pipe in the line of the studs stands where a trimmer has to stand."""
    wall_ = laid(wall("200 in", **OPEN, openings=[window("66 in", "36 in")], pipes=[standing("64 in")]))

    assert "opening_unframed" in said(wall_)
    assert not wall_.of(Kind.TRIMMER, Kind.KING, Kind.HEADER)


def test_a_new_door_without_room_is_told_the_nearest_place_where_it_fits() -> None:
    """Pipe 62 1/4 to 65 3/4 takes 62 to 66 with its 1/4; hole 34 wide for the leaf of 32, 3 in of wood on each side.

    Wished at 66 the hole is 65 to 99 and its king would begin at 62: 4 in to the right it begins at 66, the leaf at 70.
    A window stays where its hole in the concrete is.
    """
    for opening, told in ((new_door("66 in"), ("70", "4", "right")), (window("66 in", "36 in"), ())):
        remarks = laid(wall("200 in", **OPEN, openings=[opening], pipes=[standing("64 in")])).remarks
        (remark,) = (each.saying for each in remarks if each.saying.key == "remark.opening_unframed")
        instead = dict(remark.values)["instead"]
        assert isinstance(instead, Saying)
        values = dict(instead.values)
        assert tuple(size(each) if isinstance(each, Length) else each for each in values.values()) == told

    moved = laid(wall("200 in", **OPEN, openings=[new_door("70 in")], pipes=[standing("64 in")]))
    assert spans(moved.of(Kind.KING))[0][0] == "66"


def test_a_corner_pack_gives_way_to_a_window_beside_it() -> None:
    """B 2 3/8: end stud to 3 7/8, pack to 7 3/8. A hole from 9 puts its king from 6 to 7 1/2, where the pack stood."""
    wall_ = laid(wall("144 in", openings=[window("7 in", "36 in")]))

    assert not wall_.of(Kind.PACK)
    assert spans(wall_.of(Kind.KING))[0] == ("6", "7 1/2")
    assert said(wall_) == ["pack_dropped"]


def test_a_door_taller_than_the_wall_is_remarked_and_gets_no_header() -> None:
    """Leaf 90 with 2 1/2 and 1/2 makes 93; the plate's underside is at 90 1/2."""
    wall_ = with_openings("144 in", new_door("50 in", "32 in", "90 in"))

    assert said(wall_)[0] == "head_too_high"
    assert not wall_.of(Kind.HEADER)


def test_a_window_hangs_level_from_the_joists_on_a_sloped_slab() -> None:
    """Slab to joists 91 left, 93 right over 200: header and sill are level, so their trimmers differ in length."""
    wall_ = laid(
        wall(
            "200 in", **OPEN, openings=[window("60 in", "40 in")],
            height=["91 in at left", "93 in at right"], concrete=["89 1/2 in at left", "91 1/2 in at right"],
        )
    )  # fmt: skip
    left, right = wall_.of(Kind.TRIMMER)

    assert left.cut < right.cut
    assert right.cut - left.cut == inches("3/8")  # 37 1/2 in apart at 1/100: 3/8 on the sixteenth


def test_where_no_fireblock_can_stand_for_more_than_ten_feet_the_gap_is_kept_least_and_remarked() -> None:
    """A hole 16 ft wide has no stud in it: blocks stand as near to it as there is room, on both sides."""
    wall_ = with_openings("400 in", window("100 in", "192 in"))
    blocks = spans(wall_.of(Kind.FIREBLOCK))

    assert "fireblock_far" in said(wall_)
    nearest = [b for b in wall_.of(Kind.FIREBLOCK) if inches("80") < b.box.x0 < inches("312")]
    assert len(nearest) == 2
    assert nearest[0].box.x1 <= inches("100") <= inches("292") <= nearest[1].box.x0
    assert len(blocks) >= 4
