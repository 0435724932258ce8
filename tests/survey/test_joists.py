"""Joists read one by one: what is understood, and what is asked back."""

from __future__ import annotations

import pytest

from guide.survey.joists import not_read, read_joists
from tests.jobs import job, survey_of, uneven, wall
from tests.layout.sizes import size

REF = "A.joist_edges"


def told(text: str) -> list[tuple[str, int]]:
    """Return where each joist is and of how many boards, of a text that is understood whole."""
    joists, unread = read_joists(text, "in", REF)
    assert unread == ()
    return [(size(joist.edge), joist.plies) for joist in joists]


@pytest.mark.parametrize(
    ("text", "joists"),
    [
        ("14 1/2, 30, 46 1/4", [("14 1/2", 1), ("30", 1), ("46 1/4", 1)]),
        ("14 1/2; 30 and 46 and 1/4", [("14 1/2", 1), ("30", 1), ("46 1/4", 1)]),
        ("14 1/2, 30 doubled, 46 1/4 (double)", [("14 1/2", 1), ("30", 2), ("46 1/4", 2)]),
        ("14 1/2, 30, 46 1/4, the second is doubled", [("14 1/2", 1), ("30", 2), ("46 1/4", 1)]),
    ],
)  # fmt: skip
def test_near_edges_are_read_in_the_order_they_are_said(text: str, joists: list[tuple[str, int]]) -> None:
    assert told(text) == joists


@pytest.mark.parametrize("dots", ["... 78", "…, 78", "and so on to 78", "the last one 78", "up to 78"])
def test_dots_stand_for_joists_as_far_apart_as_those_that_were_read(dots: str) -> None:
    """From 30 to 78, read 16 apart: two between, at 46 and 62; worked by hand."""
    assert [at for at, _ in told(f"14, 30, {dots}")] == ["14", "30", "46", "62", "78"]


def test_joists_that_drift_are_put_in_evenly_between_the_two_that_were_read() -> None:
    """48 3/4 in three bays of 16 1/4, not of the 16 that the first two stand apart."""
    assert [at for at, _ in told("14, 30, ... 78 3/4")] == ["14", "30", "46 1/4", "62 1/2", "78 3/4"]


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("14 1/2, thirty-ish inches or more, 46", "thirty-ish inches or more"),
        ("14 1/2, 2000 ft", "2000 ft"),
        ("14 1/2, the third is doubled", "the third is doubled"),
    ],
)
def test_what_is_no_near_edge_is_handed_back(text: str, left: str) -> None:
    assert read_joists(text, "in", REF)[1] == (left,)


def test_a_joist_that_was_guessed_rests_on_something_nobody_taped() -> None:
    measured, guessed = read_joists("14 1/2, about 30", "in", REF)[0]

    assert measured.edge.rests == {REF}
    assert guessed.edge.rests == {REF, not_read(REF)}


@pytest.mark.parametrize(
    ("edges", "problem"),
    [
        (("14 1/2 in", "gone", "46 in"), "problem.joist_unread"),
        (("30 in", "14 1/2 in"), "problem.joist_order"),
        (("30 in doubled", "32 15/16 in"), "problem.joist_order"),  # 30 and two of 1 1/2: it ends at 33
        (("30 in", "144 1/16 in"), "problem.reading_outside"),
    ],
)
def test_a_list_that_cannot_be_is_said_in_one_sentence(edges: tuple[str, ...], problem: str) -> None:
    """The wall is not laid out until the list is mended; its nearest good neighbour has nothing to say."""
    found = survey_of(job([wall(**uneven(*edges))])).problems
    good = survey_of(job([wall(**uneven("14 1/2 in", "30 in doubled", "33 in", "144 in"))])).problems

    assert ([each.saying.key for each in found], good) == ([problem], ())
