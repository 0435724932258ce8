"""How long the talk is: the questions that a plain wall, and a plain room of four, are asked when nothing is out of the ordinary."""

from __future__ import annotations

from guide.book.questions import Book
from guide.interview.answers import Answer, Answers, Certainty, bare_of
from guide.interview.asking import Asked, expected, next_question
from guide.interview.jobfile import Job
from guide.interview.values import example_of, read_value
from guide.reference.talking import load_talking
from guide.session import Session

ROOM = 4
"""Walls of a plain room."""


def questions_asked(book: Book, walls: int) -> tuple[int, int]:
    """Return how many questions a job of plain walls is asked: for the basement once, and for its walls together.

    A plain wall has the usual answers, the example where none is usual: no opening, no pipe, no box.
    """
    answers: dict[str, Answer] = {}
    while (asked := next_question(book, answers)) is not None:
        text = _plain_reply(answers, asked, walls)
        value, _ = read_value(asked.question, text, "in")
        answers[asked.path] = Answer(value, Certainty.MEASURED, text)
    return _counted(book, answers)


def _plain_reply(answers: Answers, asked: Asked, walls: int) -> str:
    question = asked.question
    if asked.path == "basement.walls":
        return str(walls)
    if question.choices:
        return question.usual or question.choices[0].id
    return question.usual or example_of(question, bare_of(answers))


def seconds_for_a_wall(book: Book, first: str = "") -> int:
    """Return how long somebody who knows a plain wall takes to answer about it, reading every word asked and said back.

    `first` is what they say to its first question, in place of the one size asked for.
    """
    session = Session(book, Job())
    words = letters = answers = 0
    while (asked := session.current) is not None and (asked.place == "A" or not answers):
        reply = _plain_reply(session.answers, asked, 1)
        if asked.place == "A":
            reply = first if first and not answers else reply
            words += len(" ".join(session.question_lines()).split())
        turn = session.reply(reply)
        assert turn.stored, f"{reply!r} is no answer to {asked.path}"
        if asked.place == "A":
            words += len(" ".join(turn.lines).split())
            letters, answers = letters + len(reply) + 1, answers + 1  # and Enter
    return load_talking().seconds(words, letters, answers)


def _counted(book: Book, answers: Answers) -> tuple[int, int]:
    places = [asked.place for asked in expected(book, answers)]
    return places.count("basement"), len(places) - places.count("basement")


def first_drawing_questions(book: Book) -> int:
    """Return how many answers the first drawing of a plain wall needs."""
    return sum(question.first_drawing for question in book.questions if question.scope in ("basement", "wall"))


def length_of_the_talk(book: Book) -> str:
    """Return the counts, and how long a wall takes, in two lines."""
    basement, one = questions_asked(book, 1)
    house, room = questions_asked(book, ROOM)
    return (
        f"A plain wall is asked {one} questions after {basement} about the basement; "
        f"a plain room of {ROOM} walls {house + room} in all; {first_drawing_questions(book)} are for the first drawing.\n"
        f"Somebody who knows a plain wall answers it in about {_minutes(seconds_for_a_wall(book))} question by question, and in "
        f"{_minutes(seconds_for_a_wall(book, load_talking().in_one_breath))} where they say it in one breath (estimated)."
    )


def _minutes(seconds: int) -> str:
    return f"{seconds // 60}:{seconds % 60:02} min"
