"""Cross checks: what cannot all be true is said in one sentence that names the readings, and the wall waits."""

from __future__ import annotations

import pytest

from guide.reference.sayings import say
from guide.survey.model import Problem, Survey
from tests.jobs import (
    Tree,
    alongside,
    fixture,
    framed_door,
    job,
    layout_of,
    level,
    lying,
    new_door,
    outlet,
    standing,
    survey_of,
    wall,
    window,
)


def problems(tree: Tree) -> list[Problem]:
    return list(survey_of(job([tree])).problems)


CONTRADICTIONS = [
    ("outside", wall(openings=[window("120 in", "32 in")]), "A.opening1.left", "152 in"),
    ("outside", wall(pipes=[standing("143 in", "4 in")]), "A.pipe1.at", "145 in"),
    ("stands_outside", wall(boxes=[outlet("150 in")]), "A.box1.at", "150 in"),
    ("outside", wall(pipes=[lying("40 in", "200 in")]), "A.pipe1.to", "200 in"),
    ("backwards", wall(pipes=[lying("60 in", "40 in")]), "A.pipe1.to", "before it starts"),
    ("outside", wall(fixtures=[fixture("100 in", "150 in")]), "A.fixture1.to", "150 in"),
    ("backwards", wall(fixtures=[fixture("60 in", "40 in")]), "A.fixture1.to", "before it starts"),
    (
        "upside_down",
        wall(fixtures=[fixture("40 in", "60 in", "50 in", "cabinets", "40 in")]),
        "A.fixture1.high",
        "40 in",
    ),
    ("overlap", wall(openings=[window("40 in"), new_door("60 in")]), "A.opening2.left", "opening 1"),
    ("overlap", wall(openings=[window("40 in")], pipes=[standing("50 in")]), "A.pipe1.at", "pipe 1"),
    ("overlap", wall(pipes=[standing("50 in", "4 in"), standing("53 in", "4 in")]), "A.pipe2.at", "pipe 2"),
    ("box_in_opening", wall(openings=[new_door("40 in")], boxes=[outlet("50 in")]), "A.box1.at", "electrical box 1"),
    ("concrete_over_joists", wall(**level("92 in", "93 in")), "A.concrete", "93 in"),
    ("reading_outside", wall(height=["92 in at left", "92 in at right", "92 in at 150 in"]), "A.height", "150 in"),
    ("reading_twice", wall(height=["92 in at left", "93 in at right", "92 in at 144 in"]), "A.height", "same spot"),
    ("opening_over_joists", wall(openings=[new_door("40 in", "32 in", "93 in")]), "A.opening1.leaf_height", "93 in"),
    ("opening_over_joists", wall(openings=[framed_door("40 in", height="93 in")]), "A.opening1.frame_height", "93 in"),
    ("opening_over_joists", wall(openings=[window("40 in", tall="30 in", sill="63 in")]), "A.opening1.sill", "93 in"),
]


@pytest.mark.parametrize(("key", "tree", "path", "words"), CONTRADICTIONS)
def test_a_contradiction_is_one_sentence_and_names_the_likeliest_answer_first(
    key: str, tree: Tree, path: str, words: str
) -> None:
    (problem,) = problems(tree)
    sentence = say(problem.saying)

    assert problem.saying.key == f"problem.{key}"
    assert problem.paths[0] == path
    assert words in sentence.lower()
    assert sentence.count(". ") == 0
    assert sentence.endswith(".")


@pytest.mark.parametrize(("key", "tree", "path", "words"), CONTRADICTIONS)
def test_a_wall_with_a_contradiction_is_not_laid_out_and_its_neighbours_are(
    key: str, tree: Tree, path: str, words: str
) -> None:
    layout = layout_of(job([wall(right="open end"), tree]))

    assert [each.letter for each in layout.walls] == ["A"], key


def test_the_smallest_hole_that_can_be_said_is_larger_than_its_liner() -> None:
    """The liner takes 2 in on every side; the book takes no hole under 8 by 6."""
    assert not problems(wall(openings=[window("40 in", "8 in", "6 in")]))


def test_touching_is_no_overlap_and_the_ends_of_a_wall_are_on_it() -> None:
    side_by_side = wall(
        openings=[window("0 in", "40 in"), window("40 in", "40 in")], pipes=[standing("142 in", "4 in")]
    )

    assert not problems(side_by_side)


def test_a_box_under_a_window_sill_is_not_in_the_window() -> None:
    assert not problems(wall(openings=[window("40 in")], boxes=[outlet("50 in", "16 in")]))
    assert problems(wall(openings=[window("40 in")], boxes=[outlet("50 in", "50 in")]))


def test_a_fifth_wall_cannot_be_joined_by_inside_corners_alone() -> None:
    five = [wall(name=name) for name in ("a", "b", "c", "d", "e")]
    survey = survey_of(job(five, ring="no"))

    assert {problem.saying.key for problem in survey.problems} == {"problem.too_many_corners"}
    assert not survey_of(job([*five[:2], wall(right="open end"), *five[3:]], ring="no")).problems


def test_nobody_is_blamed_for_an_answer_not_given_yet() -> None:
    """A window was counted but not measured: drawn at its usual place it would overlap the other, and that is nobody's slip."""
    untold = wall(openings=[window("60 in"), {"kind": "window"}])

    assert not problems(untold)
    assert problems(wall(openings=[window("60 in"), window("60 in")]))


def test_a_ring_needs_four_inside_corners_more_than_outside_ones() -> None:
    """Six walls with one outside corner close; with two they do not, and the sentence says how many there are."""

    def closing(*outside: int) -> Survey:
        ends = ("inside corner", "outside corner")
        return survey_of(job([wall(name=f"w{n}", right=ends[n in outside]) for n in range(6)], ring="yes"))

    assert not closing(2).problems
    (problem,) = closing(2, 3).problems
    assert problem.saying.key == "problem.turns"
    assert "2 more" in say(problem.saying)


def test_joists_run_alongside_one_of_two_walls_that_meet_at_an_angle() -> None:
    """136 in across 60 and 80: about 152 degrees. Into one of them, or round a square corner of two floors, nothing is said."""

    def said(across: str, other: str) -> list[str]:
        plain: Tree = wall(right_first="you choose", **alongside())
        two = [{**plain, "across": across}, {**plain, "joists": other}]
        return [each.saying.key for each in survey_of(job(two, square="across the corners")).problems]

    assert said("136 in", "alongside") == ["problem.joists_both"]
    assert said("136 in", "into") == said("100 in", "alongside") == []


def test_two_boxes_do_not_run_into_one_corner() -> None:
    """A drain that goes round an inside corner gets a box on one wall at most; well away from it each wall has its own."""

    def said(end: str, start: str, way: str = "box") -> list[str]:
        first = {**lying("40 in", end, out="6 in"), "along": "box"}
        second = {**lying(start, "80 in", out="6 in"), "along": way}
        corner: Tree = {"right_first": "this wall"}
        return [
            each.saying.key
            for each in survey_of(
                job([wall("120 in", pipes=[first], **corner), wall("120 in", pipes=[second])])
            ).problems
        ]

    assert said("120 in", "0 in") == ["problem.boxes_meet"]
    assert said("120 in", "0 in", "move the wall") == said("90 in", "0 in") == said("120 in", "30 in") == []
