"""How many questions a person is asked: the talk stays as short as it is meant to be."""

from __future__ import annotations

from guide.book.questions import load_book
from guide.lint.counted import length_of_the_talk, questions_asked, seconds_for_a_wall
from guide.reference.talking import load_talking


def test_a_plain_wall_is_asked_few_questions_and_four_of_them_no_more_each() -> None:
    """Thirty questions at most for a plain wall (our own bound); the basement's are asked once for all walls."""
    basement, one = questions_asked(load_book(), 1)
    again, four = questions_asked(load_book(), 4)

    assert one <= 30
    assert again <= basement + 2
    assert four <= 4 * one


def test_the_counts_are_said_in_one_line() -> None:
    """What `book lint` prints has the counts in it."""
    basement, one = questions_asked(load_book(), 1)
    said = length_of_the_talk(load_book())

    assert f"asked {one} questions after {basement} about the basement" in said


def test_somebody_who_knows_a_plain_wall_answers_it_in_under_three_minutes() -> None:
    """Every word asked and said back is read, every letter typed; how quickly is published, each figure with its source.

    Said in one breath it stays under three minutes; one question after the other it is longer, and our own bound is six.
    """
    at_once = seconds_for_a_wall(load_book(), load_talking().in_one_breath)
    one_by_one = seconds_for_a_wall(load_book())

    assert at_once < 3 * 60
    assert at_once < one_by_one < 6 * 60


def test_reading_typing_and_making_ready_are_added_and_rounded_up() -> None:
    """Worked by hand: 119 words at 238 a minute 30 s, 130 letters at 260 a minute 30 s, 22 answers at 44 a minute 30 s."""
    assert load_talking().seconds(119, 130, 22) == 90
    assert load_talking().seconds(1, 1, 1) == 1 + 1 + 2
