"""The walls from above: where each lies, and what is said at the corners."""

from __future__ import annotations

from itertools import combinations, pairwise

from hypothesis import given, settings

from guide.drawing.floor_plan import BETWEEN_RUNS, floor_plan
from guide.drawing.shapes import Drawing, Fill, Label, Look
from guide.drawing.text import render
from guide.layout.parts import Layout
from guide.lengths import ZERO, inches
from guide.reference.codes import load_code
from tests.drawing.examples import bare_room, busy_room, first_wall
from tests.jobs import Tree, job, layout_of, partition, partition_wall, ring, standing, survey_of, wall, window
from tests.properties.rooms import rooms


def fills(drawing: Drawing, look: Look) -> list[Fill]:
    return [shape for shape in drawing.shapes if isinstance(shape, Fill) and shape.look is look]


def said(drawing: Drawing) -> list[str]:
    return [shape.texts[0] for shape in drawing.shapes if isinstance(shape, Label)]


def square() -> Layout:
    """Return a closed room of 16 by 12 ft whose long walls run through."""
    inside: Tree = {"right": "inside corner", "right_first": "you choose"}
    return layout_of(ring([wall(length, **inside) for length in ("192 in", "144 in", "192 in", "144 in")]))


def test_four_walls_joined_by_inside_corners_turn_clockwise_and_close() -> None:
    """Walked clockwise from the top left: along the top, down the right, back along the bottom, up the left."""
    top, right, bottom, left = fills(floor_plan(square()), Look.FRAMING)
    assert top.bottom.at(top.x0) == inches("144") - inches("5 7/8")
    assert top.top.at(top.x0) == inches("144") - inches("2 3/8")
    assert (right.x0, right.x1) == (inches("192") - inches("5 7/8"), inches("192") - inches("2 3/8"))
    assert (bottom.bottom.at(bottom.x0), bottom.top.at(bottom.x0)) == (inches("2 3/8"), inches("5 7/8"))
    assert (left.x0, left.x1) == (inches("2 3/8"), inches("5 7/8"))


def test_a_wall_that_runs_through_reaches_behind_the_one_that_butts() -> None:
    """The through plate stops the neighbour's B from the concrete, the butt plate its F: 2 3/8 and 5 7/8."""
    top, right, *_ = fills(floor_plan(square()), Look.FRAMING)
    assert top.x1 == inches("192") - inches("2 3/8")
    assert right.top.at(right.x0) == inches("144") - inches("5 7/8")


def test_at_each_corner_it_is_said_once_which_wall_runs_through() -> None:
    assert [text for text in said(floor_plan(square())) if "through" in text] == [
        "A runs through", "C runs through", "C runs through", "A runs through",
    ]  # fmt: skip


def test_at_a_corner_with_a_wall_of_no_job_it_is_said_what_this_wall_does() -> None:
    assert [text for text in said(floor_plan(first_wall())) if "A " in text] == [
        "A north",
        "A runs through",
        "A stops short",
    ]


def test_letters_and_lengths_stand_at_the_walls() -> None:
    text = render(floor_plan(busy_room()), columns=76)
    for words in ("A 196", "B 144", "C 196", "D 144"):
        assert words in text


def test_openings_are_cut_through_all_three_layers_and_pipes_stand_where_they_are() -> None:
    layout = layout_of(job([wall("144 in", openings=[window("60 in")], pipes=[standing("30 in")])]))
    drawn = floor_plan(layout)
    assert [(hole.x0, hole.x1) for hole in fills(drawn, Look.OPENING_CUT)] == [(inches("60"), inches("92"))] * 3
    assert [(pipe.x0, pipe.x1) for pipe in fills(drawn, Look.PIPE)] == [(inches("28 1/4"), inches("31 3/4"))]
    for look in (Look.CONCRETE_CUT, Look.FOAM_CUT, Look.FRAMING):
        assert not any(fill.x0 < inches("92") and fill.x1 > inches("60") for fill in fills(drawn, look))


def test_walls_that_nothing_joins_lie_under_each_other_with_a_gap() -> None:
    drawn = floor_plan(bare_room())
    heights = [
        max(fill.top.at(fill.x0) for fill in fills(drawn, Look.FRAMING) if fill.x1 - fill.x0 == wall.plate)
        for wall in bare_room().walls
    ]
    assert all(above - below == BETWEEN_RUNS for above, below in pairwise(heights))


@settings(max_examples=40)
@given(rooms())
def test_concrete_of_two_runs_never_overlaps(tree: Tree) -> None:
    layout = layout_of(tree)
    runs: list[list[str]] = []
    for laid in layout.walls:
        if runs and laid.left.neighbour == runs[-1][-1]:
            runs[-1].append(laid.letter)
        else:
            runs.append([laid.letter])
    if len(runs) < 2:
        return
    boxes = fills(floor_plan(layout), Look.CONCRETE_CUT)
    assert len(boxes) >= len(layout.walls)
    lone = [fill for fill in boxes if fill.x1 - fill.x0 > fill.top.at(fill.x0) - fill.bottom.at(fill.x0)]
    for one, other in combinations(lone, 2):
        apart = one.bottom.at(one.x0) >= other.top.at(other.x0) or other.bottom.at(other.x0) >= one.top.at(one.x0)
        beside = one.x1 <= other.x0 or other.x1 <= one.x0
        assert apart or beside


def test_a_partition_stands_between_the_marks_on_the_wall_it_meets_and_square_to_it() -> None:
    """Met at 80 on the top wall: from above its plate lies from 80 to 83 1/2 across, F of that wall under its concrete, and
    ends 120 under it. Met by its right end on the bottom wall, whose 60 from its left is 132 from the leftmost concrete,
    it lies as far up: from 132 - 3 1/2 to 132."""
    lengths = ("192 in", "144 in", "192 in", "144 in")
    each = [wall(length, right="inside corner", right_first="you choose") for length in lengths]
    for number, left in ((0, "80 in"), (2, "60 in")):
        each[number] = {**each[number], "openings": [partition(left)]}
    told = [partition_wall("120 in"), partition_wall("40 in", (None, "C"))]
    down, up = fills(floor_plan(layout_of(ring([*each, *told]))), Look.FRAMING)[-2:]

    assert (down.x0, down.x1) == (inches("80"), inches("83 1/2"))
    assert (down.bottom.at(down.x0), down.top.at(down.x0)) == (inches("24"), inches("144") - inches("5 7/8"))
    assert (up.x0, up.x1) == (inches("132") - inches("3 1/2"), inches("132"))
    assert (up.bottom.at(up.x0), up.top.at(up.x0)) == (inches("5 7/8"), inches("40"))


def test_a_job_without_a_wall_to_draw_says_so() -> None:
    layout = Layout(survey_of({"format": 1}), (), load_code())
    assert "no wall yet" in render(floor_plan(layout), columns=40)


def test_the_lowest_concrete_is_zero() -> None:
    drawn = floor_plan(square())
    bottoms = [fill.top.at(fill.x0) for fill in fills(drawn, Look.CONCRETE_CUT) if fill.x1 - fill.x0 > inches("192")]
    assert min(bottoms) == ZERO
