"""How far the job can be trusted: what is measured, guessed, missing and locked, wall by wall, and what to measure next."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from guide.book.questions import Book
from guide.interview.answers import Answers, Certainty, count_of, wall_letter
from guide.interview.asking import expected
from guide.sheets.said import wall_title
from guide.sheets.spoken import names_of, say_of_talk

if TYPE_CHECKING:
    from guide.layout.parts import Layout

MOST_NAMED = 8
"""Readings named at once; more would not be read."""


@dataclass(frozen=True, slots=True)
class Standing:
    """How one wall, or the basement (an empty letter), stands."""

    letter: str
    measured: int
    guessed: int
    missing: int
    locked: int
    """Pieces whose size or place rests on something that nobody measured."""
    parts: int
    to_measure: tuple[str, ...]
    """Paths that are guessed, in doubt or not answered, in the order asked."""


def standings(book: Book, answers: Answers, layout: Layout) -> tuple[Standing, ...]:
    """Return how the basement and each wall stand, the basement first."""
    walls = [wall_letter(index) for index in range(count_of(answers.get("basement.walls")))]
    return tuple(standing_of(book, answers, layout, letter) for letter in ("", *walls))


def standing_of(book: Book, answers: Answers, layout: Layout, letter: str) -> Standing:
    """Return how one wall stands, or the basement for an empty letter."""
    place = letter or "basement"
    here = [asked.path for asked in expected(book, answers) if asked.place.partition(".")[0] == place]
    measured = [
        path
        for path in here
        if (answer := answers.get(path)) and answer.known is Certainty.MEASURED and not answer.confirm
    ]
    open_now = [path for path in here if path not in answers or answers[path].known is Certainty.UNKNOWN]
    wall = layout.by_letter.get(letter)
    parts = wall.parts if wall is not None else ()
    locked = sum(bool(layout.survey.unsure(part.size_rests | part.place_rests)) for part in parts)
    wanted = tuple(path for path in here if path not in measured)
    return Standing(
        letter, len(measured), len(here) - len(measured) - len(open_now), len(open_now), locked, len(parts), wanted
    )


def standing_lines(book: Book, answers: Answers, layout: Layout) -> tuple[str, ...]:
    """Return how everything stands, a line for each wall, and what to measure before anything is cut."""
    every = standings(book, answers, layout)
    wanted = [path for each in every for path in each.to_measure]
    names = names_of(book, answers, wanted[:MOST_NAMED]) + (" ..." if len(wanted) > MOST_NAMED else "")
    last = say_of_talk("tonight", names=names) if wanted else say_of_talk("tonight_nothing")
    return (*(standing_line(answers, each) for each in every), last)


def standing_line(answers: Answers, standing: Standing) -> str:
    """Return how one wall stands, in one line."""
    counts = {
        "measured": str(standing.measured),
        "guessed": str(standing.guessed),
        "missing": str(standing.missing),
        "locked": str(standing.locked),
        "parts": str(standing.parts),
    }
    if not standing.letter:
        return say_of_talk("standing_basement", **counts)
    title = wall_title(answers, standing.letter)
    return say_of_talk("standing_wall", wall=title[:1].upper() + title[1:], **counts)
