"""Sizes and readings with their places: what is heard, in which unit, and what is asked back rather than guessed."""

from __future__ import annotations

import pytest

from guide.interview.answers import Answer, Spot, bare_of, tape_of
from guide.interview.values import doubt_about, example_of, read_value
from guide.lengths import inches
from tests.interview.hearing import (
    EYEBALLED,
    METRIC,
    heard,
    said_back,
    spots,
    table,
    value,
)
from tests.interview.people import BOOK

# ------------------------------------------------------------------------------------------------------- readings


LEFT_RIGHT = spots(("left", "91 1/4"), ("right", "92"))
THREE = spots(("left", "91 1/4"), ("middle", "91 5/8"), ("right", "92 1/8"))
AT_8_FT = spots(("left", "91 1/4"), ("96", "91 5/8"), ("right", "92 1/8"))


@pytest.mark.parametrize("reply", table("""
    91 1/4 at left, 92 at right | 91 1/4 left, 92 right | left 91 1/4; right 92 | left: 91 1/4, right: 92 | L 91 1/4, R 92
    91.25 left 92 right | left 91.25 right 92 | 91 1/4 at left 92 at right | 91 1/4 at the left, 92 at the right | 91¼ left, 92 right
    91 1/4 on the left, 92 on the right | 91 1/4 (left), 92 (right) | 91 1/4 @ left, 92@right | at left 91 1/4, at right 92
    91 1/4, 92 | 91 1/4; 92 | 91 1/4 and 92 | 91.25,92 | 91 and 1/4, 92 | 91 1/4 and 92 | left=91 1/4; right=92
    7' 7 1/4", 7' 8" | 7-7 1/4 at left, 7-8 at right | left end 91 1/4, right end 92 | 91 1/4 at left and 92 at right
    91 1/4 at the left corner, 92 at the right corner | 91 1/4 at 0, 92 at right | LEFT 91 1/4 RIGHT 92 | left:91 1/4, right:92
    91 and a quarter at left, 92 at right | 91 1/4 l, 92 r | 7 ft 7 1/4 left, 7 ft 8 right
"""))  # fmt: skip
def test_two_readings_are_heard_with_their_places_or_as_the_ends(reply: str) -> None:
    assert value("wall.height", reply) == LEFT_RIGHT


@pytest.mark.parametrize("reply", table("""
    91 1/4, 91 5/8, 92 1/8 | 91 1/4,91 5/8,92 1/8 | 91 1/4; 91 5/8; 92 1/8 | 91 1/4 left, 91 5/8 middle, 92 1/8 right
    91 1/4 left 91 5/8 mid 92 1/8 right | left 91 1/4 middle 91 5/8 right 92 1/8 | 91 1/4 at left, 91 5/8 at centre, 92 1/8 at right
"""))  # fmt: skip
def test_three_readings_without_places_are_left_middle_and_right(reply: str) -> None:
    assert value("wall.height", reply) == THREE


@pytest.mark.parametrize("reply", table("""
    91 1/4 at left, 91 5/8 at 8 ft, 92 1/8 at right | 91 1/4 left, 91 5/8 at 8', 92 1/8 right | left: 91 1/4, 8 ft: 91 5/8, right: 92 1/8
    91 1/4 at left, 91 5/8 at 96, 92 1/8 at right | 91 1/4 at left, 91 5/8 at 8 ft from the left, 92 1/8 at right
    91 1/4 at left; 91 5/8 @ 96 in; 92 1/8 at right | left 91 1/4; 91 5/8 at 8-0; right 92 1/8
"""))  # fmt: skip
def test_a_distance_from_the_left_corner_is_a_place_too(reply: str) -> None:
    assert value("wall.height", reply) == AT_8_FT


@pytest.mark.parametrize(
    ("reply", "expected"),
    [
        ("184 1/2", spots(("floor", "184 1/2"))), ("16 ft 4 in", spots(("floor", "196"))),
        ("196, 196 1/8, 196 1/4", spots(("floor", "196"), ("chest", "196 1/8"), ("joists", "196 1/4"))),
        ("196 at floor, 196 1/8 at 48, 196 1/4 at top", spots(("floor", "196"), ("chest", "196 1/8"), ("joists", "196 1/4"))),
        ("floor 196 chest 196 1/8 joists 196 1/4", spots(("floor", "196"), ("chest", "196 1/8"), ("joists", "196 1/4"))),
        ("196 1/4 under the joists, 196 low", spots(("joists", "196 1/4"), ("floor", "196"))),
        ("196 at eye height", spots(("chest", "196"))), ("15' 4 1/2\" at the floor", spots(("floor", "184 1/2"))),
    ],
)  # fmt: skip
def test_a_length_is_read_at_the_floor_at_chest_height_and_under_the_joists(
    reply: str, expected: tuple[Spot, ...]
) -> None:
    assert value("wall.length", reply) == expected


@pytest.mark.parametrize(
    ("reply", "expected"),
    [
        ("92 at left, about 92 at right", spots(("left", "92"), ("right", "~92"))),
        ("~91 left, 92 right", spots(("left", "~91"), ("right", "92"))),
        ("92 at left, 93 at about 8 ft, 92 at right", spots(("left", "92"), ("96", "~93"), ("right", "92"))),
        ("92 or so at left, 92 at right", spots(("left", "~92"), ("right", "92"))),
    ],
)
def test_about_is_heard_reading_by_reading(reply: str, expected: tuple[Spot, ...]) -> None:
    assert value("wall.height", reply) == expected


def test_two_heights_of_the_concrete_at_one_place_are_a_step_and_no_slip() -> None:
    """Joists do not step, and without a step so much between the ends is asked about once more."""
    said = "90 1/2 at left, 90 1/2 at 8 ft, 48 at 8 ft, 48 at right"
    question = BOOK.by_ref["wall.concrete"]
    heard = value("wall.concrete", said)

    assert heard == spots(("left", "90 1/2"), ("96", "90 1/2"), ("96", "48"), ("right", "48"))
    assert doubt_about(question, heard) is None
    assert doubt_about(question, value("wall.concrete", "90 1/2 at left, 48 at right")) is not None
    with pytest.raises(ValueError, match="one place twice"):
        value("wall.height", "90 at left, 90 at 8 ft, 92 at 8 ft, 92 at right")


def test_readings_that_are_all_about_are_eyeballed_together() -> None:
    answer = heard("wall.length", "about 12 ft")
    assert isinstance(answer, Answer)
    assert (answer.value, answer.known) == (spots(("floor", "~144")), EYEBALLED)


@pytest.mark.parametrize(
    "reply",
    table("""
        92 | about 92 at right | 92 at left | 92 92 | 91 92 93 | 91 left 92 | left 91 92 right | left | left, right
        91 left, 92 left | 91 at left 91 5/8 at 8 ft 92 at right | 91 at left, 92 at right, 93
        91 at left, 92 at 8 ft from the right, 93 at right | 91 at left, 92 at -3, 93 at right | 91 at left, 92 at window, 93 at right
        91 floor, 92 right | 12 at left, 92 at right | 91, 92, 93, 94 | 91/92 | , | ; | at | 7 feet 7 inches | 91 1/3 left, 92 right
        91 left; 92 middle; 92 right; 92 left | 2.3 left, 2.3 right | 2.30 m | 91 to 92 | 91 at 0, 92 at left, 92 at right
    """),
)
def test_readings_whose_place_or_size_is_not_clear_are_asked_back(reply: str) -> None:
    said_back("wall.height", reply)


@pytest.mark.parametrize(
    ("reply", "sizes"),
    [
        ("2337, 2340", ("2337 mm", "2340 mm")), ("2337,2340", ("2337 mm", "2340 mm")), ("2337 left 2340 right", ("2337 mm", "2340 mm")),
        ("2337,5 left, 2340 right", ("2337.5 mm", "2340 mm")), ("2.337 m at left, 2.34 m at right", ("2337 mm", "2340 mm")),
        ("2.337 m, 2.34 m", ("2337 mm", "2340 mm")), ("233,7 cm left; 234 cm right", ("2337 mm", "2340 mm")),
        ("92 in at left, 92 1/8 in at right", ("92 in", "92 1/8 in")), ("l 2337, r 2340", ("2337 mm", "2340 mm")),
    ],
)  # fmt: skip
def test_metric_readings_are_heard_and_no_unit_is_taken_for_a_place(reply: str, sizes: tuple[str, str]) -> None:
    assert value("wall.height", reply, METRIC) == spots(("left", sizes[0]), ("right", sizes[1]))


def test_a_metric_distance_is_a_place() -> None:
    found = value("wall.height", "2337 at left, 2340 at 2400, 2345 at right", METRIC)
    assert found == spots(("left", "2337 mm"), ("2400 mm", "2340 mm"), ("right", "2345 mm"))


# -------------------------------------------------------------------------------------------------- lengths, range


def test_a_length_is_measured_or_eyeballed() -> None:
    assert value("basement.foam_thickness", "2 in") == inches("2")
    about = heard("basement.foam_thickness", "about 2")
    assert isinstance(about, Answer)
    assert (about.value, about.known, about.typed) == (inches("2"), EYEBALLED, "about 2")


def test_a_size_out_of_range_is_said_in_the_unit_of_the_persons_tape() -> None:
    assert "I take 1/2 in to 6 in" in said_back("basement.foam_thickness", "12")
    assert "I take 13 mm to 152 mm" in said_back("basement.foam_thickness", "300", METRIC)
    assert value("basement.foam_thickness", "13", METRIC) == inches("13 mm")
    assert value("basement.foam_thickness", "152", METRIC) == inches("152 mm")


def test_examples_are_in_the_unit_of_the_persons_tape() -> None:
    assert "91 1/4 in at left, 91 5/8 in at 96 in, 92 1/8 in at right" in said_back("wall.height", "92")
    assert "2318 mm at left, 2327 mm at 2438 mm, 2340 mm at right" in said_back("wall.height", "2337", METRIC)
    assert "51 mm" in said_back("basement.foam_thickness", "yes", METRIC)


def test_every_example_is_an_answer_on_either_side_of_the_tape() -> None:
    for question in BOOK.questions:
        if question.kind != "choice":
            assert read_value(question, example_of(question, "in"), "in")
            assert read_value(question, example_of(question, "mm"), "mm")


def test_the_tape_decides_what_a_bare_number_is() -> None:
    assert (tape_of({}), bare_of({})) == ("inches", "in")
    assert (tape_of(METRIC), bare_of(METRIC)) == ("millimetres", "mm")
    assert value("wall.string", "32", METRIC) == inches("32 mm")
