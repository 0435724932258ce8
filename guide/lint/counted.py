"""How long the talk is: the questions that a plain wall, and a plain room of four, are asked when nothing is out of the ordinary."""

from __future__ import annotations

from guide.book.questions import Book
from guide.interview.answers import Answer, Answers, Certainty, bare_of
from guide.interview.asking import expected, next_question
from guide.interview.values import example_of, read_value

ROOM = 4
"""Walls of a plain room."""


def questions_asked(book: Book, walls: int) -> tuple[int, int]:
    """Return how many questions a job of plain walls is asked: for the basement once, and for its walls together.

    A plain wall has the usual answers, the example where none is usual: no opening, no pipe, no box.
    """
    answers: dict[str, Answer] = {}
    while (asked := next_question(book, answers)) is not None:
        question = asked.question
        if asked.path == "basement.walls":
            text = str(walls)
        elif question.choices:
            text = question.usual or question.choices[0].id
        else:
            text = question.usual or example_of(question, bare_of(answers))
        value, _ = read_value(question, text, "in")
        answers[asked.path] = Answer(value, Certainty.MEASURED, text)
    return _counted(book, answers)


def _counted(book: Book, answers: Answers) -> tuple[int, int]:
    places = [asked.place for asked in expected(book, answers)]
    return places.count("basement"), len(places) - places.count("basement")


def first_drawing_questions(book: Book) -> int:
    """Return how many answers the first drawing of a plain wall needs."""
    return sum(question.first_drawing for question in book.questions if question.scope in ("basement", "wall"))


def length_of_the_talk(book: Book) -> str:
    """Return both counts in one line."""
    basement, one = questions_asked(book, 1)
    house, room = questions_asked(book, ROOM)
    return (
        f"A plain wall is asked {one} questions after {basement} about the basement; "
        f"a plain room of {ROOM} walls {house + room} in all; {first_drawing_questions(book)} are for the first drawing."
    )
