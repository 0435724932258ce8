"""Answers, how certain each is, and the names (paths) they are kept under.

An answer's path is its place and its question: `basement.use`, `A.length`, `A.opening1.kind`. Answers are a plain
mapping from path to `Answer`, treated as a value: a change makes a new mapping.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from enum import StrEnum

from guide.book.conditions import Fact
from guide.lengths import Bare, Length, Tape


class Certainty(StrEnum):
    """How an answer is known. Only a measured one may stand behind a printed cut or mark."""

    MEASURED = "measured"
    """Read off a tape, or simply said by the person who decides it."""
    EYEBALLED = "eyeballed"
    """The person said “about”."""
    ASSUMED = "assumed"
    """A usual value taken because nobody knew."""
    UNKNOWN = "unknown"
    """Asked, and nobody knew."""


@dataclass(frozen=True, slots=True)
class Spot:
    """One reading at one place."""

    at: str | Length
    """A place named by the question (`left`, `right`, `floor`), or a distance from the left corner."""
    size: Length
    known: Certainty = Certainty.MEASURED


Value = Length | str | int | tuple[Spot, ...] | tuple[str, ...] | None
"""An answer's value by its question's kind: a length, a choice or text, a count, readings, names; None is unknown."""


@dataclass(frozen=True, slots=True)
class Answer:
    """One answer, as understood and as typed."""

    value: Value
    known: Certainty
    typed: str
    """What the person wrote, word for word."""
    confirm: bool = False
    """In doubt: suspicious, or something it hangs from has changed. It counts as not measured until confirmed."""
    leans: tuple[str, ...] = ()
    """Paths of the answers it was worked out from, as “16 after the door” is; it is in doubt when one of them changes."""

    def confirmed(self) -> Answer:
        """Return the same answer, no longer in doubt."""
        return replace(self, confirm=False)

    def doubted(self) -> Answer:
        """Return the same answer, to be confirmed."""
        return replace(self, confirm=True)


Answers = Mapping[str, Answer]


def path_of(place: str, question_id: str) -> str:
    """Return the path of a question's answer at a place."""
    return f"{place}.{question_id}"


def split_path(path: str) -> tuple[str, str]:
    """Return place and question id of a path."""
    place, _, question_id = path.rpartition(".")
    return place, question_id


def outer_place(place: str) -> str | None:
    """Return the place around this one: the wall of an opening, the basement of a wall, nothing around the basement."""
    if place == "basement":
        return None
    wall, _, item = place.partition(".")
    return wall if item else "basement"


def scope_of(place: str) -> str:
    """Return the scope of a place: `basement`, `wall`, or the kind of thing on a wall."""
    if place == "basement":
        return "basement"
    _, _, item = place.partition(".")
    return item.rstrip("0123456789") if item else "wall"


def wall_letter(index: int) -> str:
    """Return the letters of wall number `index` (from 0): A to Z, then AA, AB and so on."""
    letters = ""
    index += 1
    while index:
        index, rest = divmod(index - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters


def wall_index(place: str) -> int:
    """Return the number (from 0) of the wall at, or around, a place."""
    index = 0
    for letter in place.partition(".")[0]:
        index = index * 26 + ord(letter) - ord("A") + 1
    return index - 1


def item_place(place: str, scope: str, index: int) -> str:
    """Return the place of thing number `index` (from 0) of a scope inside `place`."""
    return wall_letter(index) if scope == "wall" else f"{place}.{scope}{index + 1}"


def count_of(answer: Answer | None) -> int:
    """Return how many things a counting or naming answer says there are; none while it is not answered."""
    if answer is None:
        return 0
    if isinstance(answer.value, int):
        return answer.value
    return len(answer.value) if isinstance(answer.value, tuple) else 0


def fact_of(answer: Answer | None) -> Fact:
    """Return what conditions see of an answer: counts as numbers, choices and text as they are, anything else as known."""
    if answer is None or answer.value is None:
        return None
    if isinstance(answer.value, tuple):
        return len(answer.value)
    return answer.value if isinstance(answer.value, (str, int)) else "known"


def tape_of(answers: Answers) -> Tape:
    """Return which side of the tape the person reads; inches until they say otherwise."""
    return "millimetres" if fact_of(answers.get("basement.tape")) == "millimetres" else "inches"


def bare_of(answers: Answers) -> Bare:
    """Return the unit of a number typed without one."""
    return "mm" if tape_of(answers) == "millimetres" else "in"
