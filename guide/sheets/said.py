"""Answers said back: as a row on paper, and as the sentence in the talk that lets a slip of a foot be heard."""

from __future__ import annotations

from dataclasses import dataclass
from typing import cast

from guide.book.questions import Book, Question
from guide.interview.answers import Answer, Answers, Certainty, Spot, Value, scope_of, tape_of, wall_index
from guide.interview.asking import applying
from guide.lengths import Length, Tape, in_words, with_unit


@dataclass(frozen=True, slots=True)
class Said:
    """One answer as understood."""

    path: str
    place: str
    name: str
    value: str
    known: Certainty
    confirm: bool

    @property
    def how_known(self) -> str:
        """How certain it is, in words; an answer in doubt says so."""
        return "to be confirmed" if self.confirm else self.known.value


def said_so_far(book: Book, answers: Answers) -> tuple[Said, ...]:
    """Return every answer that applies, in the order asked."""
    tape = tape_of(answers)
    return tuple(
        Said(
            a.path, a.place, a.question.short, value_shown(a.question, answer.value, tape), answer.known, answer.confirm
        )
        for a in applying(book, answers)
        if (answer := answers.get(a.path)) is not None
    )


def value_shown(question: Question, value: Value, tape: Tape) -> str:
    """Return a value as it is read on paper."""
    if value is None:
        return "not known"
    if isinstance(value, Length):
        return with_unit(value, tape)
    if question.places:
        return ", ".join(_spot_shown(spot, tape) for spot in cast(tuple[Spot, ...], value))
    if question.kind == "names":
        return ", ".join(cast(tuple[str, ...], value))
    if question.kind == "choice":
        return next((choice.say for choice in question.choices if choice.id == value), str(value))
    if question.kind == "count" and value == 0:
        return "none"
    return str(value)


def _spot_shown(spot: Spot, tape: Tape) -> str:
    about = "about " if spot.known is not Certainty.MEASURED else ""
    at = with_unit(spot.at, tape) if isinstance(spot.at, Length) else spot.at
    return f"{about}{with_unit(spot.size, tape)} at {at}"


def read_back(question: Question, answer: Answer, tape: Tape) -> str:
    """Return an answer said back: sizes in figures and in words."""
    value = answer.value
    if isinstance(value, Length):
        about = "about " if answer.known is Certainty.EYEBALLED else ""
        return f"{about}{with_unit(value, tape)}: {in_words(value, tape)}"
    if question.places and value is not None:
        spots = cast(tuple[Spot, ...], value)
        return "; ".join(f"{_spot_shown(spot, tape)}: {in_words(spot.size, tape)}" for spot in spots)
    return value_shown(question, value, tape)


def place_title(answers: Answers, place: str) -> str:
    """Return a place in words: `the basement`, `wall A (north)`, `opening 2 of wall A (north)`."""
    if place == "basement":
        return "the basement"
    letter, _, item = place.partition(".")
    title = wall_title(answers, letter)
    if not item:
        return title
    return f"{thing_title(place)} of {title}"


def wall_title(answers: Answers, letter: str) -> str:
    """Return a wall in words: its letter, and its name when it has one."""
    walls = answers.get("basement.walls")
    names = cast(tuple[str, ...], walls.value) if walls is not None and isinstance(walls.value, tuple) else ()
    index = wall_index(letter)
    name = names[index] if index < len(names) else ""
    plain = f"wall {letter}"
    return plain if name.lower() in ("", plain.lower()) else f"{plain} ({name})"


def thing_title(place: str) -> str:
    """Return a thing on a wall in words: `opening 2`, `electrical box 1`."""
    scope = scope_of(place)
    number = place.partition(".")[2].removeprefix(scope)
    return f"{'electrical box' if scope == 'box' else scope} {number}"
