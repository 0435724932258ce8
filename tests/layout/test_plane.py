"""One finished plane, worked by hand on the plain wall: 196 in, B 2 3/8, D 6 3/8.

A pipe that reaches `out` fits between two studs from B = out + 3/4 - 3 1/2 on, a jamb meets the face at B = jamb - 4.
"""

from __future__ import annotations

from typing import cast

import pytest
from hypothesis import given, settings

from guide.interview.written import Json
from guide.layout.offsets import stand_off
from guide.layout.parts import Kind, WallLayout
from guide.layout.plane import left_open, line_at, on_line
from guide.lengths import inches
from guide.reference.figures import load_figures
from tests.jobs import Tree, framed_door, laid, standing, survey_of, wall
from tests.layout.sizes import decided, size
from tests.properties.rooms import single_walls

FIGURES = load_figures()


def with_things(pipe: Tree | None = None, door: Tree | None = None) -> WallLayout:
    pipes, openings = ([cast(Json, each)] if each is not None else [] for each in (pipe, door))
    return laid(wall("196 in", pipes=pipes, openings=openings))


def stack(out: str, way: str = "you choose") -> Tree:
    return {**standing("140 in", "3 1/2 in", out), "way": way}


def door(jamb: str, meets: str = "you choose", outside: str = "no") -> Tree:
    return {**framed_door("40 in", jamb=jamb), "meets": meets, "outside": outside}


def test_a_wall_moves_out_an_inch_at_most_so_that_a_pipe_needs_no_box() -> None:
    """6 1/8 + 3/4 - 3 1/2 = 3 3/8, an inch more than 2 3/8: no box. At 6 3/16 it would be 3 1/2: the box stays."""
    moved, boxed = with_things(stack("6 1/8 in")), with_things(stack("6 3/16 in"))

    assert (size(moved.offsets.back), decided(moved, "pipe1.way")) == ("3 3/8", "pipe_bay")
    assert not moved.of(Kind.CHASE_POST)
    assert decided(moved, "pipe1.line") == "line_out"
    assert (size(boxed.offsets.back), decided(boxed, "pipe1.way")) == ("2 3/8", "pipe_box")


def test_a_wall_comes_out_to_a_jamb_up_to_an_inch_beyond_it() -> None:
    """A jamb at 7 wants B 3, one at 7 7/16 B 3 3/8, since a sixteenth is nothing; one at 7 1/2 would take 3 1/2 and stays."""
    for jamb, back, way in (("7 in", "3", "flush"), ("7 7/16 in", "3 3/8", "flush"), ("7 1/2 in", "2 3/8", "proud")):
        wall_ = with_things(door=door(jamb))
        assert (size(wall_.offsets.back), decided(wall_, "opening1.hole")) == (back, f"door_{way}")


def test_what_the_person_decided_is_kept() -> None:
    """A box in the room, a frame to be moved, or a wall that comes out as far as it takes: 9 - 4 = 5, 7 - 2 3/4 = 4 1/4."""
    for pipe, hinged, back in (
        (stack("6 in", "box"), None, "2 3/8"),
        (stack("7 in", "bay"), None, "4 1/4"),
        (stack("7 in", "move the wall"), None, "7 1/2"),
        (None, door("7 in", "frame"), "2 3/8"),
        (None, door("9 in", "wall"), "5"),
    ):
        assert size(with_things(pipe, hinged).offsets.back) == back


def test_door_and_pipe_are_settled_together() -> None:
    """The pipe at 6 wants 3 1/4, the jamb at 7 wants 3: at 3 a box stays, at 3 1/4 none, and the frame is pulled 1/4."""
    survey = survey_of({"format": 1, "basement": {}, "walls": [wall("196 in")]})
    wall_ = with_things(stack("6 in"), door("7 in"))
    lines = stand_off(wall_.wall, survey.basement, FIGURES).lines

    assert [(size(line.back), line.out, line.worked) for line in lines] == [
        ("3 1/4", 0, 1),
        ("3", 1, 0),
        ("2 3/8", 2, 1),
    ]
    assert (size(wall_.offsets.back), decided(wall_, "opening1.hole")) == ("3 1/4", "door_pull_in")


def test_the_jamb_of_a_door_to_the_outside_is_extended_rather_than_pulled() -> None:
    """Its sill and flashing are another trade's; only the person can say that the frame moves."""
    ways = [decided(with_things(door=door("6 in", meets, "yes")), "opening1.hole") for meets in ("you choose", "frame")]

    assert ways == ["door_extend", "door_pull_in"]


@pytest.mark.parametrize("out", ["4 1/2 in", "10 in"])
def test_a_wall_with_nothing_to_gain_has_one_line(out: str) -> None:
    """Between the studs already, or clear in front of the wall: moving it would only take floor."""
    wall_ = with_things(stack(out))
    basement = survey_of({"format": 1, "basement": {}, "walls": [wall("196 in")]}).basement

    assert len(stand_off(wall_.wall, basement, FIGURES).lines) == 1
    assert wall_.offsets.back == inches("2 3/8")


@settings(max_examples=40)
@given(tree=single_walls())
def test_every_line_that_is_offered_can_be_had_by_saying_what_it_makes_of_each_thing(tree: Tree) -> None:
    """What a row of the table says of doors and pipes, said as answers, puts the wall on that row's line."""
    survey = survey_of(tree)
    for wall_ in survey.walls:
        for line in stand_off(wall_, survey.basement, FIGURES).lines:
            assert stand_off(on_line(wall_, line), survey.basement, FIGURES).offsets.back == line.back


@settings(max_examples=40)
@given(tree=single_walls())
def test_no_line_within_the_inch_is_better_than_the_one_taken(tree: Tree) -> None:
    """Found a second way: every eighth of an inch tried, from the nearest line to an inch beyond it."""
    survey = survey_of(tree)
    for wall_ in survey.walls:
        standing = stand_off(wall_, survey.basement, FIGURES)
        nearest, board = min(line.back for line in standing.lines), inches(survey.basement.drywall)
        figures = FIGURES.for_stud(survey.basement.stud)
        tried = [line_at(left_open(wall_), nearest + inches("1/8") * n, board, figures) for n in range(9)]
        best = min(tried, key=lambda line: (line.rank, line.back))
        assert (standing.lines[0].rank, standing.offsets.back) == (best.rank, best.back)
