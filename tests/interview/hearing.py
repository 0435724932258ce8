"""Hearing one reply to one question of the book, for the tests of understanding."""

from __future__ import annotations

import pytest

from guide.interview.answers import Answer, Certainty, Spot, Value
from guide.interview.asking import Asked
from guide.interview.replies import Sorry, clean
from guide.interview.understand import Correction, Several, Wish, hear
from guide.lengths import inches
from tests.interview.people import BOOK

MEASURED, EYEBALLED, ASSUMED, UNKNOWN = Certainty
PLACES = {
    "basement": "basement", "wall": "A", "opening": "A.opening1", "pipe": "A.pipe1", "box": "A.box1",
    "fixture": "A.fixture1",
}  # fmt: skip
METRIC = {"basement.tape": Answer("millimetres", MEASURED, "mm")}


def heard(
    ref: str, reply: str, answers: dict[str, Answer] | None = None, place: str | None = None
) -> Answer | Wish | Several:
    """Return what a reply to a question of the book is understood as."""
    question = BOOK.by_ref[ref]
    found = hear(BOOK, answers or {}, Asked(place or PLACES[question.scope], question), reply)
    assert not isinstance(found, Correction), "nothing was said before that could be corrected"
    return found


def value(ref: str, reply: str, answers: dict[str, Answer] | None = None) -> Value:
    """Return the value of a reply that has to be a measured answer, kept word for word."""
    answer = heard(ref, reply, answers)
    assert isinstance(answer, Answer)
    assert answer.known is MEASURED
    assert answer.typed == clean(reply)
    assert not answer.confirm
    return answer.value


def said_back(ref: str, reply: str, answers: dict[str, Answer] | None = None) -> str:
    """Return the sentence for a reply that is not one clear answer."""
    with pytest.raises(Sorry) as caught:
        heard(ref, reply, answers)
    said = str(caught.value)
    assert said.endswith(".")
    assert said.isprintable()
    assert len(said) < 300
    return said


def table(text: str) -> list[str]:
    """Return the replies of a table: parted by bars and lines."""
    return [cell.strip() for line in text.strip().splitlines() for cell in line.split(" | ") if cell.strip()]


def spots(*pairs: tuple[str, str]) -> tuple[Spot, ...]:
    """Return readings: a place, or a distance where it is no word, and a size; “~” marks one that is not measured."""
    return tuple(
        Spot(at if at[0].isalpha() else inches(at), inches(size.strip("~")), EYEBALLED if "~" in size else MEASURED)
        for at, size in pairs
    )
