"""How many questions a person is asked: the talk stays as short as it is meant to be."""

from __future__ import annotations

from guide.book.questions import load_book
from guide.lint.counted import length_of_the_talk, questions_asked


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
