"""Plain partitions, told as walls of their own: worked by hand, and kept to the laws of every other wall.

Walls against concrete here have B 2 3/8 and F 5 7/8; a 2x4 is 3 1/2 deep, joists hang 92 over the slab.
"""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from guide.checks.check import check
from guide.interview.written import Json
from guide.layout.parts import Kind, Layout
from guide.order.plan import order_of_work
from guide.reference.codes import load_code
from guide.survey.closing import closing
from tests.jobs import (
    Tree,
    alongside,
    job,
    layout_of,
    new_door,
    outlet,
    partition,
    partition_wall,
    ring,
    survey_of,
    wall,
)
from tests.layout.sizes import cuts, decided, marks, said, size, spans
from tests.properties import drywall_law, laws
from tests.properties.rooms import parted_rooms

BEHIND = (Kind.FOAM, Kind.CAP, Kind.CAP_LAP, Kind.LEDGE, Kind.RIM, Kind.FIREBLOCK, Kind.UPPER_BLOCK, Kind.PACK)
"""What only a wall against concrete has."""


def parted(*openings: Json, **told: Json) -> Layout:
    """Return the layout of a closed room of 196 by 144, with a partition E of 120 from wall A, met there at 80."""
    lengths = ("196 in", "144 in", "196 in", "144 in")
    each = [wall(length, right_first="you choose") for length in lengths]
    each[0] = {**each[0], "openings": [partition("80 in")]}
    return layout_of(ring([*each, {**partition_wall("120 in", openings=list(openings)), **told}]))


def test_a_partition_is_framed_from_the_studs_that_it_meets_to_its_open_end() -> None:
    """120 from bare concrete less F of wall A, 5 7/8: plates of 114 1/8. Studs 92 - 1 1/2 - 1 1/2 - 1/8 of gasket: 88 7/8."""
    alone = parted().by_letter["E"]

    assert size(alone.plate) == "114 1/8"
    assert cuts(alone.of(Kind.STUD))[0] == "88 7/8"
    assert marks(alone, Kind.STUD)[0] == "0"
    assert marks(alone, Kind.STUD)[-1] == "112 5/8"
    assert {(size(p.box.y0), size(p.box.y1)) for p in alone.of(Kind.STUD, Kind.TOP_PLATE)} == {("0", "3 1/2")}
    assert (decided(alone, "end_left"), decided(alone, "end_right")) == ("partition_end", "partition_free")
    assert said(alone) == []


def test_it_has_nothing_of_a_wall_against_concrete_and_none_of_its_questions() -> None:
    layout = parted(new_door("60 in"))

    assert layout.survey.problems == ()
    assert layout.by_letter["E"].of(*BEHIND) == ()
    assert {"E.string", "E.lean", "E.shelf", "E.concrete", "E.pipes", "E.left"} & set(layout.survey.known) == set()
    assert not any("E." in rest for part in layout.by_letter["A"].parts for rest in part.place_rests)


def test_drywall_hangs_on_both_sides_from_the_drywall_of_the_wall_it_meets_and_is_bought_for_both() -> None:
    """D of wall A is 6 3/8. The far side's sheets lie half an inch behind the studs and are cut round the same door."""
    alone = parted(new_door("60 in"), boxes=[{**outlet("30 in"), "holds": "outlet"}]).by_letter["E"]
    near, far = alone.sheets_on(), alone.sheets_on(far=True)

    assert spans(near)[0][0] == spans(far)[0][0] == "6 3/8"
    assert {(size(p.box.y0), size(p.box.y1)) for p in far} == {("-1/2", "0")}
    assert sorted(cuts(near)) == sorted(cuts(far))
    boxes = {part.box for part in alone.of(Kind.OUTLET)}
    assert [sum(notch in boxes for p in hung for notch in p.notches) for hung in (near, far)] == [1, 0]


def test_from_wall_to_wall_both_ends_stop_at_studs_and_the_room_still_closes() -> None:
    """144 between the concrete of A and C, less 5 7/8 twice: 132 1/4."""
    layout = parted(length=["144 in at floor"], right_meets="wall of this job", right_wall="wall c")

    assert size(layout.by_letter["E"].plate) == "132 1/4"
    miss = closing(layout.survey)
    assert miss is not None
    assert not miss.opens
    assert [w.letter for w in layout.round_room] == ["A", "B", "C", "D"]
    assert layout.by_letter["A"].left.neighbour == "D"


def test_a_partition_told_between_two_walls_leaves_their_corner_as_it_is() -> None:
    plain = layout_of(job([wall("144 in", right_first="you choose"), wall("120 in")]))
    told = layout_of(
        job([wall("144 in", right_first="you choose"), partition_wall("96 in", ("C", None)), wall("120 in")])
    )

    assert told.by_letter["A"].right.neighbour == "C"
    assert [p.box for p in told.by_letter["A"].of(Kind.STUD)] == [p.box for p in plain.by_letter["A"].of(Kind.STUD)]


def test_another_partition_is_met_at_its_bare_studs() -> None:
    """Measured to the studs' face nothing is taken off: 60 stays 60."""
    first = partition_wall("120 in", openings=[partition("60 in")])
    layout = layout_of(
        job([wall("196 in", openings=[partition("80 in")]), first, partition_wall("60 in", ("B", None))])
    )

    assert size(layout.by_letter["C"].plate) == "60"
    assert "partition_untold" not in [f.key for f in check(layout, load_code())]


@pytest.mark.parametrize(("gap", "blocks"), [("14 1/2 in", True), ("0 in", False)])
def test_between_two_joists_blocks_carry_its_plate_and_under_one_the_joist_does(gap: str, blocks: bool) -> None:
    """A block of 14 1/2 midway over 3 1/2 of plate reaches 5 1/2 past it on both sides."""
    tree = {k: v for k, v in partition_wall("120 in").items() if k not in ("joist_spacing", "first_joist")}
    layout = layout_of(job([wall("196 in", openings=[partition("80 in")]), {**tree, **alongside(gap)}]))
    alone = layout.by_letter["B"]

    assert bool(alone.of(Kind.JOIST_BLOCK)) is blocks
    assert {(size(p.box.y0), size(p.box.y1)) for p in alone.of(Kind.JOIST_BLOCK)} <= {("-5 1/2", "9")}
    assert all(p.fastenings[0].count for p in alone.of(Kind.TOP_PLATE))
    assert said(alone) == []


@pytest.mark.parametrize(
    ("told", "key"),
    [({"left_wall": "K"}, "meets_no_wall"), ({"left_wall": "B"}, "meets_no_wall"),
     ({"openings": [{"kind": "window", "left": "60 in", "width": "32 in", "tall": "24 in", "sill": "40 in"}]}, "in_partition")],
)  # fmt: skip
def test_what_a_partition_cannot_meet_or_hold_is_one_sentence(told: Tree, key: str) -> None:
    layout = layout_of(job([wall("196 in"), {**partition_wall("120 in"), **told}]))

    assert [p.saying.key for p in layout.survey.problems] == [f"problem.{key}"]
    assert "B" not in layout.by_letter


def test_a_wall_it_meets_that_nobody_named_locks_its_plates() -> None:
    tree = partition_wall("120 in")
    del tree["left_wall"]
    layout = layout_of(job([wall("196 in"), tree]))

    assert layout.survey.unsure(layout.by_letter["B"].of(Kind.BOTTOM_PLATE)[0].size_rests) == ("B.left_wall",)


def test_a_wall_called_a_partition_that_stands_against_concrete_is_asked_as_any_other() -> None:
    tree = {**wall("120 in"), "name": "partition wall", "stands": "concrete"}

    assert survey_of(job([tree])).round_room
    assert layout_of(job([tree])).walls[0].of(Kind.FOAM)


def test_its_work_is_that_of_a_partition_and_waits_for_the_studs_that_it_is_screwed_to() -> None:
    steps = {step.id: step for step in order_of_work(parted(new_door("60 in")))}
    mine = {name.partition("@")[0] for name in steps if name.partition("@")[2].partition(".")[0] == "E"}

    assert {"snap_lines:partition", "bottom_plate:screws", "top_plate", "studs", "drywall_ready"} <= mine
    assert not {"strip_wall", "patch_wall", "rim_bays", "foam", "cap", "snap_lines", "batts"} & mine
    assert "studs@A" in steps["end_stud@E.left"].needs


@settings(max_examples=12)
@given(tree=parted_rooms())
def test_any_partition_keeps_the_laws(tree: Tree) -> None:
    layout = layout_of(tree)
    alone = [wall for wall in layout.walls if wall.wall.is_partition]
    each = (
        laws.clashes, laws.hanging, laws.untiled, laws.joints_in_the_air, laws.in_the_way, laws.miscounted,
        laws.strays, laws.loose_backing, drywall_law.loose_edges, drywall_law.bare_framing, drywall_law.loose_sheets,
    )  # fmt: skip
    assert not [broken for law in each for wall in alone for broken in law(wall, layout.survey.basement)]
