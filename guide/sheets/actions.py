"""What can be done now, as sentences: each is what a person could type in the talk, so that a palette teaches the words."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from guide.interview.answers import Answers, wall_letter
from guide.interview.asking import Asked
from guide.interview.walls import wall_names
from guide.sheets.said import wall_title
from guide.sheets.spoken import say_of_talk


@dataclass(frozen=True, slots=True)
class Action:
    """One thing to do."""

    typed: str
    """The reply that does it."""
    says: str
    """What it does."""


def actions(answers: Answers, asked: Asked | None) -> tuple[Action, ...]:
    """Return what can be done now: with the question asked, with the answers, and with each wall."""
    return (*(_at_the_question() if asked is not None else ()), *_with_the_job(), *_with_walls(answers))


def _at_the_question() -> Iterator[Action]:
    for typed, key in (
        ("why", "does_why"),
        ("how", "does_how"),
        ("don't know", "does_dont_know"),
        ("later", "does_later"),
        ("example", "does_example"),
    ):
        yield Action(typed, say_of_talk(key))


def _with_the_job() -> Iterator[Action]:
    for typed, key in (
        ("undo", "does_undo"),
        ("redo", "does_redo"),
        ("what is missing", "does_standing"),
        ("findings", "does_findings"),
        ("floor plan", "does_floor"),
        ("section", "does_section"),
    ):
        yield Action(typed, say_of_talk(key))


def _with_walls(answers: Answers) -> Iterator[Action]:
    walls = [wall_letter(index) for index in range(len(wall_names(answers)))]
    for letter in walls:
        title = wall_title(answers, letter)
        for typed, key in (
            (f"go to wall {letter}", "does_go"),
            (f"copy wall {letter}", "does_copy"),
            (f"mirror wall {letter}", "does_mirror"),
            (f"insert a wall after wall {letter}", "does_insert"),
            (f"delete wall {letter}", "does_delete"),
        ):
            yield Action(typed, say_of_talk(key, wall=title))
    for one, other in zip(walls[1:], walls, strict=False):
        named = {"wall": wall_title(answers, one), "other": wall_title(answers, other)}
        yield Action(f"move wall {one} before wall {other}", say_of_talk("does_move", **named))
