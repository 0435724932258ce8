"""The corpus of replies: what a row expects, and what our reader makes of it.

A row is the question, the reply, what it has to be heard as and, where it matters, what was answered before. Expected
values are exact inches as a fraction (or `2337mm`) and plain names; they are compared with ticks here, and never read by
the reader under test.
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

from guide.interview.answers import Answer, Certainty, Spot, Value
from guide.interview.asking import asked_at
from guide.interview.replies import Sorry
from guide.interview.understand import Correction, Wish, hear
from guide.lengths import TICKS_PER_INCH, TICKS_PER_MM, Length
from tests.interview.hearing import METRIC, PLACES
from tests.interview.people import BOOK

CORPUS = Path(__file__).parent / "corpus"
KNOWN = {Certainty.MEASURED: "", Certainty.EYEBALLED: "~", Certainty.ASSUMED: "A", Certainty.UNKNOWN: "U"}
BEFORE: dict[str, dict[str, Answer]] = {"": {}, "mm": METRIC}


@dataclass(frozen=True)
class Row:
    """One invented reply and what it has to be heard as."""

    ref: str
    reply: str
    means: str
    before: str = ""


def rows_of(kind: str) -> list[Row]:
    """Return the rows for one kind of question."""
    return [Row(*row) for row in tomllib.loads((CORPUS / f"{kind}.toml").read_text(encoding="utf-8"))["replies"]]


def outcome(row: Row) -> str:
    """Return what our reader makes of a reply, written as the corpus writes it: `?` asked back, `?5/4` with an offer."""
    scope = row.ref.partition(".")[0]
    asked = asked_at(BOOK, f"{PLACES[scope]}.{row.ref.partition('.')[2]}")
    assert asked is not None
    answers = BEFORE[row.before]
    try:
        heard = hear(BOOK, answers, asked, row.reply)
    except Sorry as sorry:
        return "?" if sorry.nearest is None else f"?{_shown(*sorry.nearest)}"
    if isinstance(heard, Wish):
        return f"!{heard.wanted}"
    assert not isinstance(heard, Correction)
    return _shown(heard.value, heard.known)


def same(expected: str, found: str) -> bool:
    """Say whether two outcomes are one: sizes by their ticks, everything else letter by letter."""
    return _in_ticks(expected) == _in_ticks(found)


def _shown(value: Value, known: Certainty) -> str:
    if isinstance(value, tuple):
        return "; ".join(f"{_each(each)}" for each in value)
    return f"{KNOWN[known]}{_each(value)}"


def _each(value: object) -> str:
    if isinstance(value, Spot):
        return f"{_each(value.at)} {KNOWN[value.known]}{_each(value.size)}"
    return f"{value.ticks}t" if isinstance(value, Length) else str(value)


_NUMBER = re.compile(r"(?:(?<=\bA)|(?<![\w.]))(-?\d+(?:/\d+)?)(mm|in)?(?![\w/])")


def _in_ticks(text: str) -> str:
    """Write every size of an outcome in ticks."""
    return _NUMBER.sub(lambda found: f"{_ticks(found[1], found[2])}t", text)


def _ticks(number: str, unit: str | None) -> int:
    return round(Fraction(number) * (TICKS_PER_MM if unit == "mm" else TICKS_PER_INCH))
