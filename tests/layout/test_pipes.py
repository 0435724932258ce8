"""Pipes worked by hand: past them, round them, and what is said where nothing can be built.

The plain wall: 144 in, through on the left, butt on the right, B 2 3/8, F 5 7/8, D 6 3/8; plates from 2 3/8 to 138 1/8;
studs centred 5 7/8 + 16 k from the concrete: 21 7/8, 37 7/8, 53 7/8, 69 7/8, 85 7/8 ...
"""

from __future__ import annotations

from guide.interview.written import Json
from guide.layout.parts import Kind, WallLayout
from guide.lengths import SIXTEENTH, ZERO, inches
from tests.jobs import Tree, laid, lying, new_door, outlet, standing, wall, window
from tests.layout.sizes import cuts, decided, said, size, spans


def with_pipes(*pipes: Tree, length: str = "144 in") -> WallLayout:
    return laid(wall(length, pipes=list(pipes)))


def test_a_pipe_with_half_an_inch_to_spare_passes_behind_the_studs() -> None:
    """It reaches 1 7/8, and 1 7/8 + 1/2 = 2 3/8 = B. Nothing gives way for it; one sixteenth more and it is in a bay."""
    behind, bay = (with_pipes(standing("72 in", "1 in", out)) for out in ("1 7/8 in", "1 15/16 in"))

    assert decided(behind, "pipe1.way") == "pipe_behind"
    assert len(behind.of(Kind.BOTTOM_PLATE)) == 2  # the stick's end, not the pipe, parts it
    assert decided(bay, "pipe1.way") == "pipe_bay"


def test_a_three_inch_stack_stands_in_a_bay_and_both_plates_stop_beside_it() -> None:
    """Pipe 3 1/2 wide at 62, reaching 4 1/2: 4 1/2 + 3/4 = 5 1/4 is behind F. With 1/4 on each side it takes 60 to 64.

    The bay is 54 5/8 to 69 1/8, so no stud gives way. Plates 2 3/8 to 60 (57 5/8) and 64 to 138 1/8 (74 1/8).
    """
    wall_ = with_pipes(standing("62 in"))

    assert decided(wall_, "pipe1.way") == "pipe_bay"
    for kind in (Kind.BOTTOM_PLATE, Kind.TOP_PLATE):
        assert spans(wall_.of(kind)) == [("2 3/8", "60"), ("64", "138 1/8")]
        assert cuts(wall_.of(kind)) == ["57 5/8", "74 1/8"]
    assert [x for x, _ in spans(wall_.of(Kind.STUD))][3:5] == ["53 1/8", "69 1/8"]


def test_where_a_stud_gives_way_to_a_pipe_one_stands_on_each_side_of_it() -> None:
    """At 72 it takes 70 to 74, where the stud of 69 7/8 would stand: studs from 68 1/2 and from 74 instead."""
    plain, wall_ = with_pipes(), with_pipes(standing("72 in"))

    lefts = [x for x, _ in spans(wall_.of(Kind.STUD))]
    assert {"68 1/2", "74"} <= set(lefts)
    assert "69 1/8" not in lefts
    assert len(lefts) == len(plain.of(Kind.STUD)) + 1


def test_foam_stops_a_quarter_inch_from_a_pipe_that_stands_in_it() -> None:
    """The stack's back is 4 1/2 - 3 1/2 = 1 from the concrete, in the foam: foam ends at 60 - and starts at 64."""
    edges = [each for pair in spans(with_pipes(standing("62 in")).of(Kind.FOAM)) for each in pair]

    assert "60" in edges  # 62 - 1 3/4 - 1/4
    assert "64" in edges


def test_a_pipe_that_reaches_too_far_out_gets_a_box() -> None:
    """Out 7: 7 + 3/4 is past F, and its back, 3 1/2, is behind D. Inside 3 1/2 + 2 = 5 1/2; posts beside that.

    Posts stand 1/2 clear of it, from 7 1/2 to 9 out, 92 - 3 = 89 long. Over the studs' face (5 7/8) the side rungs
    reach 1 5/8. Rungs every 24 at most: 89 / 24 makes four bays, so three rungs across of 5 1/2 between head and foot of
    8 1/2, and five on each side.
    """
    wall_ = with_pipes(standing("64 in", "3 1/2 in", "7 in"))
    posts, rungs = wall_.of(Kind.CHASE_POST), wall_.of(Kind.CHASE_RUNG)

    assert decided(wall_, "pipe1.way") == "pipe_box"
    assert spans(posts) == [("59 3/4", "61 1/4"), ("66 3/4", "68 1/4")]
    assert {(size(p.box.y0), size(p.box.y1), size(p.cut)) for p in posts} == {("7 1/2", "9", "89")}
    assert sorted(cuts(rungs)) == sorted(["8 1/2"] * 2 + ["5 1/2"] * 3 + ["1 5/8"] * 10)
    assert spans(wall_.of(Kind.BOTTOM_PLATE)) == [("2 3/8", "62"), ("66", "138 1/8")]  # 1/4 clear of the pipe
    assert {"59 3/4", "66 3/4"} <= {x for x, _ in spans(wall_.of(Kind.STUD))}


def test_two_pipes_close_together_share_one_box() -> None:
    """Boxes of 5 1/2 inside with posts of 1 1/2 need 8 1/2 each; at 62 and 68 theirs would stand in each other."""
    wall_ = with_pipes(standing("62 in", "3 1/2 in", "7 in"), standing("68 in", "3 1/2 in", "8 in"))

    assert spans(wall_.of(Kind.CHASE_POST)) == [("57 3/4", "59 1/4"), ("70 3/4", "72 1/4")]
    assert {size(p.box.y0) for p in wall_.of(Kind.CHASE_POST)} == {"8 1/2"}  # clear of the one that reaches further


def test_a_box_that_would_stand_before_an_opening_is_left_out_and_remarked() -> None:
    """The box ends at 66 1/4, the window's framed hole begins at 66."""
    pipe = standing("62 in", "3 1/2 in", "7 in")
    wall_ = laid(wall("200 in", pipes=[pipe], openings=[window("64 in", "36 in")]))

    assert "chase_unbuilt" in said(wall_)
    assert not wall_.of(Kind.CHASE_POST, Kind.CHASE_RUNG)


def test_a_box_in_the_wall_round_the_corner_is_left_out_and_remarked() -> None:
    """The wall round the corner has its face at 6 3/8; the box would begin at 10 - 4 1/4 = 5 3/4."""
    assert "chase_unbuilt" in said(with_pipes(standing("10 in", "3 1/2 in", "7 in")))
    assert "chase_unbuilt" not in said(with_pipes(standing("10 5/8 in", "3 1/2 in", "7 in")))


def test_a_pipe_clear_of_the_finished_wall_is_left_alone() -> None:
    """Its back is 10 - 3 1/2 = 6 1/2, past D 6 3/8."""
    wall_ = with_pipes(standing("62 in", "3 1/2 in", "10 in"))

    assert decided(wall_, "pipe1.way") == "pipe_front"
    assert spans(wall_.of(Kind.STUD)) == spans(with_pipes().of(Kind.STUD))


def test_an_end_stud_stands_beyond_a_pipe_that_fills_the_corner() -> None:
    """The pipe takes 2 to 6, the end stud's place; the stud stands from 6, and the pack has no corner to stand in."""
    wall_ = with_pipes(standing("4 in"))

    assert spans(wall_.of(Kind.STUD))[0] == ("6", "7 1/2")
    assert spans(wall_.of(Kind.BOTTOM_PLATE))[0][0] == "6"
    assert "pack_dropped" in said(wall_)


def test_a_short_pipe_along_the_wall_is_let_into_notches() -> None:
    """Out 3 from 40 to 60: 3 + 1/4 - 2 3/8 = 7/8 deep, under 1.4. It crosses the stud of 53 7/8 and that one alone."""
    wall_ = with_pipes(lying("40 in", "60 in", low="40 in", wide="1 in", out="3 in"))
    notched = [part for part in wall_.of(Kind.STUD) if part.notches]

    assert decided(wall_, "pipe1.way") == "pipe_notch"
    assert size(wall_.offsets.back) == "2 3/8"
    assert spans(notched) == [("53 1/8", "54 5/8")]
    (notch,) = notched[0].notches
    assert (size(notch.z0.off), size(notch.z1.off), size(notch.y1)) == ("39 3/4", "41 1/4", "3 1/4")


def test_the_person_decides_between_notches_and_moving_the_wall() -> None:
    """Out 3 is 7/8 deep, allowed in every stud of 144 in; out 4 would be 1 7/8, over 1.4 (IRC 2018 R602.6, seen)."""
    for way, end, out, decision, back in (
        ("notches", "140 in", "3 in", "pipe_notch", "2 3/8"),
        ("notches", "140 in", "4 in", "pipe_shift", "4 1/2"),
        ("move the wall", "60 in", "3 in", "pipe_shift", "3 1/2"),
    ):
        wall_ = with_pipes({**lying("40 in", end, out=out), "along": way})
        assert (decided(wall_, "pipe1.way"), size(wall_.offsets.back)) == (decision, back)


def hubbed(*fittings: str, bare: str = "2 1/2 in", low_right: str = "38 in") -> Tree:
    """Return a pipe along all of a wall, out 4 at its fittings, 40 over the slab at the left."""
    told: Tree = {"hubs": "yes", "bare": bare, "fittings": list(fittings), "low_right": low_right}
    return {**lying("0 in", "144 in", out="4 in"), **told}


def test_the_wall_clears_the_bare_pipe_and_only_a_stud_at_a_fitting_is_notched() -> None:
    """Bare 2 1/2 + 1/2 = 3; the fitting of 4 at 70 takes 68 to 72 and is 4 + 1/4 - 3 = 1 1/4 deep, 1.4 is the most.

    B 3 puts the studs at 3 + 3 1/2 + 16 k: the one of 70 1/2 (69 3/4 to 71 1/4) stands at the fitting. There the pipe's
    bottom is at 40 - 2 x 71 1/4 / 144 = 39.01 at the lowest, so the notch begins at 38.76; the top of its highest,
    40 - 2 x 69 3/4 / 144 + 1 = 40.03, ends it at 40.28.
    """
    wall_ = with_pipes(hubbed("4 in at 70 in"))
    notched = [part for part in wall_.of(Kind.STUD) if part.notches]

    assert (decided(wall_, "pipe1.way"), size(wall_.offsets.back)) == ("pipe_shift_fittings", "3")
    assert spans(notched) == [("69 3/4", "71 1/4")]
    (notch,) = notched[0].notches
    low, high = (level.off.near(SIXTEENTH) for level in (notch.z0, notch.z1))
    assert (size(notch.y1), size(low), size(high)) == ("4 1/4", "38 3/4", "40 5/16")


def test_a_fitting_between_two_studs_leaves_every_stud_whole() -> None:
    """At 62 it stands between the studs of 54 1/2 and 70 1/2."""
    assert not any(part.notches for part in with_pipes(hubbed("4 in at 62 in")).of(Kind.STUD))


def test_a_fitting_too_fat_for_a_notch_moves_the_wall_until_it_is_not() -> None:
    """Out 4 + 1/4 less 1.4 is 2.85, over the 1 1/2 + 1/2 that the bare pipe asks: B 2 7/8. Nobody told the fittings: 4 1/2."""
    wall_ = with_pipes(hubbed("4 in at 70 in", bare="1 1/2 in"))

    assert size(wall_.offsets.back) == "2 7/8"
    untold = {name: each for name, each in hubbed().items() if name != "fittings"}
    assert size(with_pipes(untold).offsets.back) == "4 1/2"
    assert size(with_pipes({**hubbed("4 in at 70 in"), "along": "move the wall"}).offsets.back) == "4 1/2"


def test_notches_follow_the_fall_of_a_pipe() -> None:
    """Out 3 in notches, all along, 2 in lower at the right: each notch lies lower than the one on its left."""
    falls = {**lying("0 in", "144 in", out="3 in"), "low_right": "38 in", "along": "notches"}
    lows = [part.notches[0].z0.off for part in with_pipes(falls).of(Kind.STUD) if part.notches]

    assert len(lows) > 5
    assert lows == sorted(lows, reverse=True)
    assert lows[0] - lows[-1] > inches("1 3/4")


def boxed(start: str = "40 in", end: str = "100 in", **told: Json) -> WallLayout:
    """Return a wall of 196 with a pipe along it that reaches 6 out, its box wished for."""
    return with_pipes({**lying(start, end, out="6 in"), "along": "box", **told}, length="196 in")


def test_a_box_along_a_pipe_leaves_the_line_of_the_wall_and_takes_the_studs_out_of_its_stretch() -> None:
    """Pipe 40 to 100, out 6: inside 39 to 101, foot 37 1/2 to 102 1/2, 65 long. Posts 1/2 clear of it or with room for a
    rung before F 5 7/8: from 7 3/8 to 8 7/8, and 62 + 1 1/2 in four spaces of 15 7/8, so none is over 16.

    Under the joists flat lumber fills the 1 1/2 between F and the posts. No stud enters 3/4 past its inside: 38 1/4 to 101 3/4. Both plates run on, and so does the cap that lies behind them.
    """
    wall_ = boxed()
    plain = laid(wall("196 in"))

    assert (decided(wall_, "pipe1.way"), size(wall_.offsets.back)) == ("pipe_box_along", "2 3/8")
    assert [x for x, _ in spans(wall_.of(Kind.CHASE_POST))] == ["37 1/2", "53 3/8", "69 1/4", "85 1/8", "101"]
    assert {(size(p.box.y0), size(p.box.y1)) for p in wall_.of(Kind.CHASE_POST)} == {("7 3/8", "8 7/8")}
    assert spans(wall_.chases) == [("37 1/2", "102 1/2")]
    (lid,) = (p for p in wall_.of(Kind.CHASE_RUNG) if p.why.key == "part.chase_lid")
    assert (size(lid.box.y0), size(lid.box.y1), size(lid.cut)) == ("5 7/8", "7 3/8", "65")
    assert all(p.box.x1 <= inches("38 1/4") or p.box.x0 >= inches("101 3/4") for p in wall_.of(Kind.STUD))
    for kind in (Kind.BOTTOM_PLATE, Kind.TOP_PLATE, Kind.CAP):
        assert spans(wall_.of(kind)) == spans(plain.of(kind))
    assert said(wall_) == []


def test_the_drywall_beside_a_long_box_has_half_of_a_stud() -> None:
    """Its foot ends at 132 1/2; the stud of the layout at 133 1/8 gives way to one from 131 3/4 to 133 1/4."""
    wall_ = with_pipes({**lying("40 in", "130 in", out="9 in"), "along": "box"}, length="296 in")

    assert ("131 3/4", "133 1/4") in spans(wall_.of(Kind.STUD))
    assert said(wall_) == []


def test_the_drywall_of_a_long_box_is_hung_on_its_posts() -> None:
    """Two rows before the posts, 8 7/8 to 9 3/8, from end to end of the box; none at the wall's own face there."""
    inside = [s for s in boxed().of(Kind.DRYWALL) if s.box.x0 < inches("102") and s.box.x1 > inches("38")]

    assert {(size(s.box.y0), size(s.box.y1)) for s in inside} == {("8 7/8", "9 3/8")}
    assert spans(inside) == [("37 1/2", "102 1/2")] * 2


def test_a_box_from_the_corner_stands_against_the_wall_round_it() -> None:
    """The other wall's drywall ends at 6 3/8: foot from there to 62 1/2; and one over two studs is no notch."""
    assert spans(boxed("0 in", "60 in").chases) == [("6 3/8", "62 1/2")]
    assert decided(boxed(end="60 in", out="3 in"), "pipe1.way") == "pipe_box_along"


def test_where_no_box_can_be_built_along_a_pipe_the_wall_moves() -> None:
    """A foot longer than the longest stick of 8 ft, or a plate in the way: 91 + 5 is 96, and 1 in over the slab is a plate."""
    assert decided(boxed("40 in", "131 in"), "pipe1.way") == "pipe_box_along"
    assert decided(boxed("40 in", "131 1/16 in"), "pipe1.way") == "pipe_shift"
    assert decided(boxed(low_left="1 in", low_right="1 in"), "pipe1.way") == "pipe_shift"


def test_a_long_pipe_along_the_wall_moves_the_wall_out() -> None:
    """Out 3 along all of it: B = 3 + 1/2 = 3 1/2, F 7, D 7 1/2."""
    offsets = with_pipes(lying("0 in", "144 in", out="3 in")).offsets

    assert [size(each) for each in (offsets.back, offsets.face, offsets.drywall)] == ["3 1/2", "7", "7 1/2"]


def test_a_pipe_that_another_one_has_made_room_for_is_not_notched() -> None:
    """The long pipe moves the line to 3 1/2; the short one, out 3, then passes behind like the long one."""
    wall_ = with_pipes(lying("40 in", "60 in", out="3 in"), lying("0 in", "144 in", low="20 in", out="3 in"))

    assert decided(wall_, "pipe1.way") == "pipe_behind"
    assert decided(wall_, "pipe2.way") == "pipe_shift"
    assert not any(part.notches for part in wall_.of(Kind.STUD))


def test_a_plate_is_never_notched() -> None:
    """A pipe at 1 in over the slab would go through the bottom plate: the wall moves out for it."""
    assert decided(with_pipes(lying("40 in", "60 in", low="1 in", out="3 in")), "pipe1.way") == "pipe_shift"


def test_a_fireblock_is_cut_out_round_a_pipe_behind_the_wall() -> None:
    """The pipe passes behind the studs; a block that reaches the concrete meets it."""
    wall_ = laid(wall("144 in", pipes=[lying("0 in", "144 in")]), block_reach="concrete")

    assert decided(wall_, "pipe1.way") == "pipe_behind"
    for block in wall_.of(Kind.FIREBLOCK):
        (notch,) = block.notches
        assert (size(notch.z0.off), size(notch.z1.off)) == ("39 3/4", "41 1/4")


def test_the_layout_starts_at_the_right_where_that_saves_a_drywall_joint() -> None:
    """Between open ends, 168 long: from the left a joint falls at 48, where the pipe stands; from the right at 120, 72, 24."""
    wall_ = laid(wall("168 in", left="open end", right="open end", pipes=[standing("48 in")]), sheets="standing")

    assert wall_.zero_side == "right"
    assert [size(edge) for edge in wall_.sheet_edges] == ["24", "72", "120"]
    assert "edge_missed" not in said(wall_)


def test_a_new_box_hangs_beside_the_nearest_stud() -> None:
    """Wished at 60; the stud of 53 7/8 ends at 54 5/8, so a box of 2 1/4 there has its centre at 55 3/4."""
    wall_ = laid(wall("144 in", boxes=[outlet("60 in")]))
    (box,) = wall_.of(Kind.OUTLET)

    assert size(box.centre) == "55 3/4"
    assert (size(box.box.y1), size(box.box.z0.off), size(box.box.z1.off)) == ("6 3/8", "14 1/8", "17 7/8")


def test_an_old_box_comes_straight_forward_where_it_meets_no_stud() -> None:
    wall_ = laid(wall("144 in", boxes=[outlet("60 in", kind="existing"), outlet("54 in", kind="existing")]))
    moved, stays = wall_.of(Kind.OUTLET)

    assert size(stays.centre) == "60"
    assert decided(wall_, "box1.place") == "box_forward"
    assert decided(wall_, "box2.place") == "box_moved_old"
    assert moved.box.x1 == inches("53 1/8") or moved.box.x0 == inches("54 5/8")


def test_no_box_goes_behind_the_wall_round_the_corner_or_over_the_joists() -> None:
    """Wished in the corner it goes past the pack; wished over the top plate it finds no place, and a remark says so."""
    corner = laid(wall("144 in", boxes=[outlet("0 in")]))
    high = laid(wall("144 in", boxes=[outlet("60 in", "95 in")]))

    assert corner.of(Kind.OUTLET)[0].box.x0 >= corner.of(Kind.PACK)[0].box.x1
    assert said(high) == ["box_no_room"]


def test_a_pipe_beside_a_door_is_kept_out_of_its_framing() -> None:
    """Door framing ends at 84 1/2 + 1 1/2; a pipe in the bay after it changes nothing of the door."""
    wall_ = laid(wall("200 in", openings=[new_door("50 in")], pipes=[standing("92 in")]))

    assert "opening_unframed" not in said(wall_)
    assert all(part.box.x1 <= inches("90") or part.box.x0 >= inches("94") or part.box.y0 == ZERO
               for part in wall_.of(Kind.STUD, Kind.KING, Kind.TRIMMER))  # fmt: skip
