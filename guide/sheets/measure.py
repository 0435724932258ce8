"""Cards of what is still to be measured: where to stand and how, a blank to write on, and what it sets free.

A card for every answer that something locked rests on, for every size or reading that is a guess, and for every answer in
doubt; none when all of it is measured. How to measure is the question book's own words.
"""

from __future__ import annotations

from dataclasses import dataclass

from guide.book.questions import Question, load_book
from guide.interview.answers import Certainty
from guide.interview.asking import asked_at
from guide.layout.parts import Part
from guide.lengths import retold
from guide.reference.sketches import sketch_of
from guide.sheets.plan import Plan
from guide.sheets.said import thing_title

MOST_MARKS = 8
"""Pieces named on a card; the others are counted."""


@dataclass(frozen=True, slots=True)
class Card:
    """One answer to be taken with the tape in hand."""

    path: str
    name: str
    """What it is, after where it is: `Wall A (north), slab to joists`."""
    ask: str
    how: str
    sketch: str
    """The drawing that goes with how; empty when there is none."""
    choices: tuple[str, ...]
    """The answers to choose from, to be ticked; without them there are blanks to write on."""
    said: str
    """What was said so far, and how certain it is; empty when nothing was."""
    blanks: tuple[str, ...]
    """What to write beside each blank, such as `at left`; one empty text for an answer of one size."""
    unit: str
    cuts: str
    """The pieces whose cut it locks."""
    places: str
    """The pieces whose place it locks, and nothing but that."""


def cards(plan: Plan) -> tuple[Card, ...]:
    """Return the cards of a plan, in the order asked; what nobody has answered comes last. Pure."""
    parts = [part for wall in plan.layout.walls for part in wall.parts]
    rests = plan.survey.unsure({rest for part in parts for rest in (*part.size_rests, *part.place_rests)})
    by_path: dict[str, list[str]] = {said.path: [] for said in plan.said if said.confirm or _guessed(plan, said.path)}
    for rest in (*rests, *(f"{letter}.length" for letter in plan.survey.waiting)):
        by_path.setdefault(rest.partition("@")[0], []).append(rest)
    order = {said.path: number for number, said in enumerate(plan.said)}
    paths = sorted(by_path, key=lambda path: (order.get(path, len(order)), path))
    return tuple(card for path in paths if (card := _card(plan, path, by_path[path], parts)) is not None)


def _guessed(plan: Plan, path: str) -> bool:
    """Say whether an answer is a size, or readings, that nobody measured."""
    asked = asked_at(load_book(), path)
    said = next(said for said in plan.said if said.path == path)
    return asked is not None and asked.question.kind in ("length", "readings") and said.known is not Certainty.MEASURED


def _card(plan: Plan, path: str, rests: list[str], parts: list[Part]) -> Card | None:
    asked = asked_at(load_book(), path)
    if asked is None:  # nothing a person is asked
        return None
    letter, _, item = asked.place.partition(".")
    titles = {wall.letter: wall.title for wall in plan.survey.walls}
    wall = titles.get(letter, "Basement" if asked.place == "basement" else f"Wall {letter}")
    thing = thing_title(asked.place) if item else ""
    names = {"wall": f"{wall[:1].lower()}{wall[1:]}", "thing": thing}
    partition = letter in plan.survey.by_letter and plan.survey.by_letter[letter].is_partition
    said = next((said for said in plan.said if said.path == path), None)
    cuts = [part for part in parts if part.size_rests & set(rests)]
    places = [part for part in parts if part.place_rests & set(rests) and part not in cuts]
    return Card(
        path=path,
        name=", ".join(word for word in (wall, thing, asked.question.short) if word),
        ask=retold(asked.question.worded("ask", partition=partition), plan.tape).format_map(names),
        how=retold(asked.question.worded("how", partition=partition), plan.tape).format_map(names),
        sketch=sketch_of(asked.question.ref),
        choices=tuple(choice.say for choice in asked.question.choices),
        said=f"{said.value} ({said.how_known})" if said is not None and said.value != "not known" else "",
        blanks=_blanks(asked.question, rests),
        unit=("mm" if plan.tape == "millimetres" else "in") if asked.question.kind in ("length", "readings") else "",
        cuts=_marks(cuts),
        places=_marks(places),
    )


def _blanks(question: Question, rests: list[str]) -> tuple[str, ...]:
    """Return what stands beside each blank: the places of the readings that are missing, or all it is read at."""
    spots = sorted(spot for rest in rests if (spot := rest.partition("@")[2]))
    asked_for = (
        question.places if question.kind == "readings" else ()
    )  # one size answers the others, wherever it was read
    return tuple(f"at {spot}" for spot in spots or asked_for) or ("",)


def _marks(parts: list[Part]) -> str:
    marks = [part.mark for part in parts if part.mark]
    more = len(marks) - MOST_MARKS
    return ", ".join(marks[:MOST_MARKS]) + (f" and {more} more" if more > 0 else "")
