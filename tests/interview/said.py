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
from guide.interview.understand import Correction, Several, Wish, hear
from guide.lengths import TICKS_PER_INCH, TICKS_PER_MM, Length, inches
from tests.interview.hearing import METRIC, PLACES, spots
from tests.interview.people import BOOK

CORPUS = Path(__file__).parent / "corpus"
KNOWN = {Certainty.MEASURED: "", Certainty.EYEBALLED: "~", Certainty.ASSUMED: "A", Certainty.UNKNOWN: "U"}


def _measured(value: Value) -> Answer:
    return Answer(value, Certainty.MEASURED, str(value))


ROOM: dict[str, Answer] = {
    "basement.walls": _measured(("north", "east")),
    "A.length": _measured(spots(("floor", "196"), ("chest", "196 1/8"))),
    "A.height": _measured(spots(("left", "91"), ("right", "92"))),
    "A.lean": _measured(inches("1/4")),
    "A.openings": _measured(3),
    "A.opening1.kind": _measured("new door"),
    "A.opening1.left": _measured(inches("30")),
    "A.opening1.leaf_width": _measured(inches("32")),
    "A.opening2.kind": _measured("window"),
    "A.opening3.kind": _measured("window"),
    "A.opening3.left": _measured(inches("140")),
    "A.opening3.width": _measured(inches("24")),
    "A.pipes": _measured(1),
    "A.pipe1.run": _measured("standing"),
    "A.pipe1.carries": _measured("drain"),
    "A.pipe1.at": _measured(inches("80")),
    "A.pipe1.wide": _measured(inches("4")),
    "A.boxes": _measured(2),
    "A.box1.at": _measured(inches("20")),
    "A.box1.holds": _measured("outlet"),
    "B.length": _measured(spots(("floor", "144"))),
}
"""A wall of 196 in with a door from 30 to 62, a window still to be placed, a drain from 78 to 82, a window from 140 to 164
and a box at 20; and a second wall of 144 in."""

PARTED: dict[str, Answer] = {
    "A.length": _measured(spots(("floor", "240"))),
    "A.openings": _measured(3),
    "A.opening1.kind": _measured("partition"),
    "A.opening1.left": _measured(inches("96")),
    "A.opening1.width": _measured(inches("32")),
    "A.opening1.partition_width": _measured(inches("3 1/2")),
    "A.opening2.kind": _measured("kept free"),
    "A.opening2.left": _measured(inches("150")),
    "A.opening2.free_width": _measured(inches("12")),
    "A.opening2.keeps": _measured("column"),
    "A.opening3.kind": _measured("window"),
}
"""A wall of 240 in with a partition from 96 to 99 1/2, a place kept free for a column from 150 to 162, and a window still to be
placed. The partition was taken for a window once; the width said then is kept and counts no more."""

BEFORE: dict[str, tuple[dict[str, Answer], dict[str, str]]] = {
    "": ({}, PLACES),
    "mm": (METRIC, PLACES),
    "wall": ({"basement.walls": _measured(("north",))}, PLACES),
    "room": (
        ROOM,
        {
            "basement": "basement",
            "wall": "B",
            "opening": "A.opening2",
            "pipe": "A.pipe1",
            "box": "A.box2",
            "fixture": "A.fixture1",
        },
    ),
    "parted": (PARTED, {**PLACES, "opening": "A.opening3"}),
}


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
    answers, places = BEFORE[row.before]
    asked = asked_at(BOOK, f"{places[scope]}.{row.ref.partition('.')[2]}")
    assert asked is not None
    try:
        heard = hear(BOOK, answers, asked, row.reply)
    except Sorry as sorry:
        return "?" if sorry.nearest is None else f"?{_shown(*sorry.nearest)}"
    if isinstance(heard, Wish):
        return f"!{heard.wanted}"
    assert not isinstance(heard, Correction)
    if isinstance(heard, Several):
        return "; ".join(f"{path.partition('.')[2]} {_shown(each.value, each.known)}" for path, each in heard.answers)
    return _shown(heard.value, heard.known)


def same(expected: str, found: str) -> bool:
    """Say whether two outcomes are one: sizes by their ticks, everything else letter by letter."""
    return _in_ticks(expected) == _in_ticks(found)


def _shown(value: Value, known: Certainty) -> str:
    if isinstance(value, tuple):
        book = f"{KNOWN[known]} " if known in (Certainty.ASSUMED, Certainty.UNKNOWN) else ""
        return book + "; ".join(_each(each) for each in value)
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
