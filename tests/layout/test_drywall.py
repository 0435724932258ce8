"""Drywall laid out sheet by sheet and counted by hand: both ways, the person's kept, the other one priced beside it."""

from __future__ import annotations

from guide.interview.written import Json
from guide.layout.parts import Kind, WallLayout
from guide.lengths import FOOT, Length
from guide.reference.sayings import Saying, SayingValue
from tests.jobs import laid, level, new_door, outlet, standing, wall, window
from tests.layout.sizes import decided, said, size


def counted(layout: WallLayout) -> tuple[tuple[SayingValue, ...], tuple[SayingValue, ...]]:
    """Return sheets, feet of joints and joints between short edges of the way chosen, and of the way it beat."""
    (decision,) = [d for d in layout.decisions if d.id == "A.sheets"]
    (beat,) = decision.beat
    return _counts(decision.saying), _counts(beat)


def _counts(told: Saying) -> tuple[SayingValue, ...]:
    values = dict(told.values)
    joints = values["joints"]
    assert isinstance(joints, Length)
    return values["sheets"], joints.inch / FOOT.inch, values["butts"]


def pieces(layout: WallLayout) -> list[tuple[str, str, str, str]]:
    """Return where each sheet starts on the plates, how wide and how tall it is, and its top under the joists."""
    return [
        (size(layout.mark_of(p.box.x0)), size(p.wide or p.cut), size(p.cut), size(-p.box.z1.off))
        for p in layout.of(Kind.DRYWALL)
    ]


def test_both_ways_are_counted_and_the_way_the_person_said_is_kept() -> None:
    """By hand, 144 in of concrete under 92 in of joists: drywall runs 132 1/4, and 92 - 1/2 - 1/2 = 91 high.

    Standing: 48, 48 and 36 1/4 from three sheets, two joints of 91 = 182 in, 16 ft. Lying, two pieces in each row: the
    top one 96 and 36 1/4, the lower one 48 and 84 1/4, whose joint is half a sheet away. 36 1/4 and 48 share a sheet, so
    three again; joints 132 1/4 + 48 + 43 = 223 1/4 in, 19 ft, two of them between short edges.
    """
    lying, upright = laid(wall()), laid(wall(), sheets="standing")

    assert (decided(lying, "sheets"), decided(upright, "sheets")) == ("sheets_lying", "sheets_standing")
    assert pieces(lying) == [
        ("3 1/2", "48", "43", "48 1/2"), ("3 1/2", "96", "48", "1/2"), ("51 1/2", "84 1/4", "43", "48 1/2"),
        ("99 1/2", "36 1/4", "48", "1/2"),
    ]  # fmt: skip
    assert pieces(upright) == [
        ("3 1/2", "48", "91", "1/2"), ("51 1/2", "48", "91", "1/2"), ("99 1/2", "36 1/4", "91", "1/2"),
    ]  # fmt: skip
    assert counted(lying) == ((3, 19, 2), (3, 16, 0))
    assert counted(upright) == ((3, 16, 0), (3, 19, 2))


def test_left_to_the_engine_the_way_with_fewer_sheets_is_taken_then_the_one_with_fewer_joints() -> None:
    """Here both take three sheets; standing has 16 ft of joints and lying 19."""
    assert laid(wall(), sheets="you choose").sheets == "standing"


def test_a_wall_higher_than_a_sheet_takes_lying_strips_under_standing_sheets_and_a_third_row_of_lying_ones() -> None:
    """By hand, 104 1/2 in high: 103 1/2 in of drywall, 7 1/2 in more than a sheet.

    Standing: three sheets, and under them strips 7 1/2 high: the joints over them are at 48 and 96, so the strip's is at
    80, on the stud between them. Lying: rows of 48, 48 and 7 1/2.
    """
    high = laid(wall(**level("104 1/2 in", "90 1/2 in")), longest_stick="10", sheets="standing")
    rows = laid(wall(**level("104 1/2 in", "90 1/2 in")), longest_stick="10")

    assert pieces(high)[:2] == [("3 1/2", "80", "7 1/2", "96 1/2"), ("3 1/2", "48", "96", "1/2")]
    assert {tall for _, _, tall, _ in pieces(rows)} == {"48", "7 1/2"}
    assert counted(high)[0][0] == counted(rows)[0][0] == 4


def test_a_strip_too_low_to_cut_is_left_to_the_baseboard() -> None:
    """97 1/2 in high: 96 1/2 of drywall. Two rows of 48 leave 1/2 in more, and less than 3/4 is not cut."""
    assert {tall for _, _, tall, _ in pieces(laid(wall(**level("97 1/2 in", "96 in"))))} == {"48"}


def test_no_joint_stands_under_the_joint_of_the_row_above() -> None:
    """The wall worked in the book, 184 1/4 in of drywall: 96 and 88 1/4 over 48, 96 and 40 1/4, never 96 over 96."""
    worked = laid(wall("196 in", right_first="other wall"))

    assert [(at, wide) for at, wide, _, top in pieces(worked) if top == "1/2"] == [
        ("3 1/2", "96"),
        ("99 1/2", "88 1/4"),
    ]
    assert [at for at, _, _, top in pieces(worked) if top != "1/2"] == ["3 1/2", "51 1/2", "147 1/2"]


def test_sheets_stop_at_a_door_below_its_head_and_are_cut_out_for_it_above() -> None:
    """A leaf of 32 by 80 in at 30 in: the framed hole runs 29 to 63 in. The top row's joint, 96 from the right, is over it."""
    with_door = laid(wall(openings=[new_door("30 in")]))
    low = [p for p in with_door.of(Kind.DRYWALL) if p.box.z1.off != with_door.of(Kind.DRYWALL)[1].box.z1.off]
    cut = [(size(p.box.x0), [(size(n.x0), size(n.x1)) for n in p.notches]) for p in with_door.of(Kind.DRYWALL)]

    assert [(size(p.box.x0), size(p.box.x1)) for p in low][:2] == [("5 7/8", "29"), ("63", "138 1/8")]
    assert ("5 7/8", [("29", "42 1/8")]) in cut
    assert ("42 1/8", [("42 1/8", "63")]) in cut
    assert said(with_door) == []


def test_a_sheet_is_cut_out_for_a_window_and_for_an_electrical_box() -> None:
    boxes: list[Json] = [outlet("110 in")]
    layout = laid(wall(openings=[window("40 in")], boxes=boxes), sheets="standing")
    (box,) = layout.of(Kind.OUTLET)
    notches = [notch for part in layout.of(Kind.DRYWALL) for notch in part.notches]

    assert box.box in notches
    assert {(size(n.x0), size(n.x1)) for n in notches if n != box.box} == {("42", "53 7/8"), ("53 7/8", "70")}


def test_a_joint_that_would_fall_on_a_pipe_moves_to_a_stud_and_is_not_left_in_the_air() -> None:
    """A pipe stands where the second joint of standing sheets would be, seen from either end."""
    layout = laid(wall("150 in", pipes=[standing("53 7/8 in"), standing("96 1/8 in")]), sheets="standing")

    assert "edge_missed" not in said(layout)
    assert all(size(part.wide or part.cut) != "0" for part in layout.of(Kind.DRYWALL))
    assert not {"53 7/8", "96 1/8"} & {size(x) for x in layout.sheet_edges}


def test_a_slab_that_falls_too_much_under_a_sheet_is_said() -> None:
    """A sheet is cut square to its lower end: with 2 in of fall over 132 in its lower edge would leave the plate."""
    falling = wall(height=["92 in at left", "94 in at right"], concrete=["90 1/2 in at left", "92 1/2 in at right"])

    assert "drywall_low" in said(laid(falling, sheets="lying"))
    assert "drywall_low" not in said(laid(wall()))
