"""Understanding a reply: an answer, a wish, or one sentence saying what would be understood. Rules only, no guessing.

Typed replies and values in job files go through the same readers, so both accept the same spellings.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass, replace
from typing import cast

from guide.book.questions import Book, Choice, Doubt, Question
from guide.book.talk import Talk, Wanted, load_talk
from guide.interview.answers import Answer, Answers, Certainty, Spot, Value, fact_of, path_of, scope_of, wall_letter
from guide.interview.asking import Asked
from guide.lengths import ZERO, Bare, Length, Tape, Unreadable, inches, read_length

LONGEST_TEXT = 400
MOST_WALLS = 200


class Sorry(ValueError):  # noqa: N818 - it is an answer to the person, said as it stands
    """A reply that could not be understood; the message is one sentence saying what would be."""


@dataclass(frozen=True, slots=True)
class Wish:
    """The person wants something instead of answering."""

    wanted: Wanted


def tape_of(answers: Answers) -> Tape:
    """Return which side of the tape the person reads; inches until they say otherwise."""
    return "millimetres" if fact_of(answers.get("basement.tape")) == "millimetres" else "inches"


def bare_of(answers: Answers) -> Bare:
    """Return the unit of a number typed without one."""
    return "mm" if tape_of(answers) == "millimetres" else "in"


def hear(book: Book, answers: Answers, asked: Asked, reply: str) -> Answer | Wish:
    """Understand a reply to a question: an answer, or a wish such as “why” or “back”.

    “Don't know” and “usual” become answers here, by what the book says of the question. Raises Sorry with one sentence
    when the reply is not one clear answer; nothing is stored then.
    """
    talk = load_talk()
    typed = clean(reply)
    if not typed:
        raise Sorry(talk.say["say_something"].format(example=example_of(asked.question)))
    if asked.question.kind == "choice" and (choice := pick(asked.question, typed)):
        return Answer(choice.id, Certainty.MEASURED, typed)
    if wanted := talk.wish(typed):
        return _wish(talk, answers, asked, wanted, typed)
    if other := _same_as(talk, typed):
        return _copied(book, talk, answers, asked, other, typed)
    value, known = read_value(asked.question, typed, bare_of(answers), answers)
    return Answer(value, known, typed)


def clean(text: str) -> str:
    """Return text with control and invisible direction characters taken out, spaces folded, and an end to its length."""
    kept = (" " if c.isspace() else c for c in text if c.isspace() or unicodedata.category(c)[0] != "C")
    return " ".join("".join(kept).split())[:LONGEST_TEXT]


def read_value(question: Question, typed: str, bare: Bare, answers: Answers) -> tuple[Value, Certainty]:
    """Read a value of the question's kind. Raises Sorry with one sentence when it is not one, or out of range."""
    if question.kind == "length":
        return _length(question, typed, bare)
    if question.kind == "readings":
        return _readings(question, typed, bare), Certainty.MEASURED
    if question.kind == "count":
        return _count(question, typed), Certainty.MEASURED
    if question.kind == "names":
        return _names(question, typed, answers), Certainty.MEASURED
    if question.kind == "choice":
        choice = pick(question, typed)
        if choice is None:
            raise Sorry(load_talk().say["not_a_choice"].format(typed=typed, choices=listed(question)))
        return choice.id, Certainty.MEASURED
    return typed, Certainty.MEASURED


def doubt_about(question: Question, value: Value) -> Doubt | None:
    """Return why an answer in range is still suspicious, or None."""
    sizes = [value] if isinstance(value, Length) else []
    if question.kind == "readings" and isinstance(value, tuple):
        sizes = [spot.size for spot in value if isinstance(spot, Spot)]
    for doubt in question.doubts:
        if doubt.is_ is not None and value == doubt.is_:
            return doubt
        if doubt.above and any(size > inches(doubt.above) for size in sizes):
            return doubt
        if doubt.below and any(size < inches(doubt.below) for size in sizes):
            return doubt
        if doubt.spread and sizes and max(sizes) - min(sizes) > inches(doubt.spread):
            return doubt
    return None


def usual_answer(question: Question, typed: str) -> Answer | None:
    """Return the usual answer of a question: settled for a choice, only assumed for anything that a tape would tell."""
    if question.usual is None:
        return None
    value, _ = read_value(question, question.usual, "in", {})
    guess = question.kind in ("length", "readings")
    return Answer(value, Certainty.ASSUMED if guess else Certainty.MEASURED, typed)


def unknown_answer(question: Question, typed: str) -> Answer:
    """Return what “don't know” gives: the book's value as an assumption, or an answer without a value."""
    if question.unknown.take is None:
        return Answer(None, Certainty.UNKNOWN, typed)
    value, _ = read_value(question, question.unknown.take, "in", {})
    return Answer(value, Certainty.MEASURED if question.unknown.settled else Certainty.ASSUMED, typed)


def example_of(question: Question) -> str:
    """Return an example of an answer that would be understood."""
    if question.kind == "choice":
        return listed(question)
    if question.kind == "readings":
        sizes = question.usual or ""
        return sizes or ", ".join(f"… at {place}" for place in question.places)
    return question.usual or {"length": "184 1/2", "count": "2", "names": "2"}.get(question.kind, "none")


def listed(question: Question) -> str:
    """Return the choices with their numbers, in one line."""
    return ", ".join(f"{number} {choice.id}" for number, choice in enumerate(question.choices, 1))


def pick(question: Question, typed: str) -> Choice | None:
    """Return the choice a reply picks: by number, by its words, or by a beginning that only one choice has."""
    plain = typed.lower().strip(" .")
    if plain.isdecimal() and 1 <= int(plain) <= len(question.choices):
        return question.choices[int(plain) - 1]
    for choice in question.choices:
        if plain in (choice.id, choice.say.lower(), *choice.words):
            return choice
    if len(plain) < 2:
        return None
    begun = [c for c in question.choices if any(word.startswith(plain) for word in (c.id, *c.words))]
    return begun[0] if len(begun) == 1 else None


def _wish(talk: Talk, answers: Answers, asked: Asked, wanted: Wanted, typed: str) -> Answer | Wish:
    question = asked.question
    if wanted == "dont_know":
        return unknown_answer(question, typed)
    if wanted == "usual":
        if answer := usual_answer(question, typed):
            return answer
        raise Sorry(talk.say["no_usual"].format(example=example_of(question)))
    old = answers.get(asked.path)
    if wanted in ("keep", "yes") and old is not None and old.confirm:
        return old.confirmed()
    if question.kind in ("count", "text") and wanted == "no":
        return Answer(0 if question.kind == "count" else "none", Certainty.MEASURED, typed)
    if wanted in ("keep", "yes", "no"):
        raise Sorry(talk.say["not_yes_or_no"].format(example=example_of(question)))
    return Wish(wanted)


def _same_as(talk: Talk, typed: str) -> str | None:
    plain = typed.lower()
    for start in talk.same_as:
        if plain.startswith(f"{start} "):
            return plain.removeprefix(start).strip(" .").upper()
    return None


def _copied(book: Book, talk: Talk, answers: Answers, asked: Asked, letter: str, typed: str) -> Answer:
    if scope_of(asked.place) != "wall":
        raise Sorry(talk.say["same_only_walls"])
    other = answers.get(path_of(letter, asked.question.id))
    if letter == asked.place or other is None or other.value is None:
        raise Sorry(talk.say["same_as_nothing"].format(letter=letter, short=asked.question.short))
    return replace(other, typed=typed, confirm=False)


def _length(question: Question, typed: str, bare: Bare) -> tuple[Length, Certainty]:
    try:
        reading = read_length(typed, bare=bare)
    except Unreadable as error:
        raise Sorry(str(error)) from error
    _in_range(question, reading.length, typed)
    return reading.length, Certainty.EYEBALLED if reading.about else Certainty.MEASURED


def _in_range(question: Question, size: Length, typed: str) -> None:
    low, high = question.range_of_lengths()
    if (low is not None and size < low) or (high is not None and size > high):
        raise Sorry(
            load_talk()
            .say["out_of_range"]
            .format(typed=typed, short=question.short, least=question.least or "any", most=question.most or "any")
        )


def _readings(question: Question, typed: str, bare: Bare) -> tuple[Spot, ...]:
    """Read `91 1/4 at left, 91 5/8 at 8 ft, 92 1/8 at right`, or sizes alone in the order of the question's places."""
    talk = load_talk()
    parts = [part.strip() for part in re.split(r"[;,](?!\d)|\band\b(?!\s*\d+\s*/)", typed) if part.strip()]
    spots = tuple(_spot(talk, question, part, bare) for part in parts)
    if all(spot.at == "" for spot in spots):
        spots = _placed(talk, question, spots)
    if any(spot.at == "" for spot in spots):
        raise Sorry(talk.say["place_missing"].format(typed=typed, example=example_of(question)))
    at = [spot.at for spot in spots]
    if len(set(at)) < len(at):
        raise Sorry(talk.say["place_twice"].format(typed=typed))
    if len(spots) < question.fewest or (question.along and not {"left", "right"} <= set(at)):
        raise Sorry(
            talk.say["too_few_readings"].format(places=" and ".join(question.places), example=example_of(question))
        )
    return spots


def _spot(talk: Talk, question: Question, part: str, bare: Bare) -> Spot:
    size_text, place_text = part, ""
    if found := re.fullmatch(r"(?P<size>.+?)\s*(?:\bat\b|@)\s*(?:the\s+)?(?P<place>.+)", part, re.IGNORECASE):
        size_text, place_text = found["size"], found["place"]
    else:
        for place in question.places:
            for word in (place, *talk.places.get(place, ())):
                if found := re.fullmatch(
                    rf"(?P<size>.+?)\s+(?:the\s+)?{word}|(?:the\s+)?{word}[:\s]\s*(?P<late>.+)", part, re.IGNORECASE
                ):
                    size_text, place_text = cast(str, found["size"] or found["late"]), place
    size, known = _length(question, size_text, bare)
    return Spot(_place(talk, question, place_text, bare), size, known)


def _place(talk: Talk, question: Question, text: str, bare: Bare) -> str | Length:
    plain = text.lower().strip(" .")
    if not plain:
        return ""
    for place in question.places:
        if plain in (place, *talk.places.get(place, ())):
            return place
    if not question.along:
        raise Sorry(talk.say["no_such_place"].format(typed=text, places=", ".join(question.places)))
    try:
        at = read_length(plain, bare=bare).length
    except Unreadable as error:
        raise Sorry(
            talk.say["no_such_place"].format(typed=text, places=", ".join((*question.places, "8 ft")))
        ) from error
    if at < ZERO:
        raise Sorry(talk.say["no_such_place"].format(typed=text, places=", ".join((*question.places, "8 ft"))))
    return "left" if at == ZERO and "left" in question.places else at


def _placed(talk: Talk, question: Question, spots: tuple[Spot, ...]) -> tuple[Spot, ...]:
    """Give sizes without places the question's places in order; two of left, middle, right are the ends."""
    places = question.places
    if question.along and len(spots) == 2:
        places = ("left", "right")
    if len(spots) > len(places) or (question.along and len(spots) != len(places)):
        raise Sorry(talk.say["too_few_readings" if len(spots) < 2 else "place_missing"].format(
            typed=len(spots), places=" and ".join(question.places), example=example_of(question)))  # fmt: skip
    return tuple(replace(spot, at=place) for spot, place in zip(spots, places, strict=False))


def _count(question: Question, typed: str) -> int:
    talk = load_talk()
    plain = typed.lower().strip(" .")
    found = talk.counts.get(plain.removesuffix(question.short).strip())
    number = found if found is not None else int(plain) if plain.isdecimal() and len(plain) <= 4 else None
    low, high = int(question.least or 0), int(question.most or 99)
    if number is None:
        raise Sorry(talk.say["not_a_count"].format(typed=typed, example=example_of(question)))
    if not low <= number <= high:
        raise Sorry(talk.say["count_range"].format(typed=typed, short=question.short, least=low, most=high))
    return number


def _names(question: Question, typed: str, answers: Answers) -> tuple[str, ...]:
    """Read how many walls, or their names with commas between; walls without a name keep their letter alone."""
    talk = load_talk()
    plain = typed.lower().strip(" .")
    plain = re.sub(r"\s*walls?$", "", plain)
    number = talk.counts.get(plain, int(plain) if plain.isdecimal() and len(plain) <= 4 else None)
    if number is not None:
        if not 1 <= number <= MOST_WALLS:
            raise Sorry(talk.say["count_range"].format(typed=typed, short=question.short, least=1, most=MOST_WALLS))
        return tuple(f"wall {wall_letter(index)}" for index in range(number))
    names = tuple(name.strip() for name in re.split(r"[,;]|\band\b", typed) if name.strip())
    if not names or len(names) > MOST_WALLS or any(len(name) > 30 for name in names):
        raise Sorry(talk.say["not_names"].format(typed=typed))
    return names
