"""Reading a value of each kind of question. Replies and values in job files go through the same readers.

Rules only, no guessing: what could mean two things is asked back with one sentence.
"""

from __future__ import annotations

import re
from contextlib import suppress

from guide.book.questions import Choice, Doubt, Question
from guide.book.talk import load_talk
from guide.interview.answers import Certainty, Spot, Value, wall_letter
from guide.interview.dates import read_date
from guide.interview.readings import example_of_readings, how_known, read_readings
from guide.interview.replies import Sorry, read_size, sorry, tape_side
from guide.lengths import Bare, Length, in_figures, inches, with_unit

MOST_WALLS = 200
LONGEST_NAME = 30

_NOT_NAMES = set(
    "about all any around both each every few it just many maybe most no only or roughly several some that them they this yes".split()
)
"""Words that a list of wall names does not have; a reply with one of them is a number in disguise, and asked back."""


def read_value(question: Question, typed: str, bare: Bare) -> tuple[Value, Certainty]:
    """Read a value of the question's kind. Raises Sorry with one sentence when it is not one, or out of range."""
    if question.kind == "length":
        return _one_or_along(question, typed, bare)
    if question.kind == "readings":
        spots = read_readings(question, typed, bare)
        return spots, how_known(spots)
    if question.kind == "count":
        return _count(question, typed, bare), Certainty.MEASURED
    if question.kind == "names":
        return _names(question, typed, bare), Certainty.MEASURED
    if question.kind == "choice":
        choice = pick(question, typed)
        if choice is None:
            raise sorry("not_a_choice", typed=typed, choices=listed(question))
        return choice.id, Certainty.MEASURED
    if question.kind == "date":
        return _date(question, typed, bare), Certainty.MEASURED
    if not typed:
        raise sorry("say_something", example=example_of(question, bare))
    return typed, Certainty.MEASURED


def _one_or_along(question: Question, typed: str, bare: Bare) -> tuple[Value, Certainty]:
    """Read one size, or readings along the wall in its stead, each with its place."""
    try:
        return read_size(question, typed, bare)
    except Sorry:
        if question.along:
            with suppress(Sorry):
                spots = read_readings(question, typed, bare)
                return spots, how_known(spots)
        raise


def example_of(question: Question, bare: Bare) -> str:
    """Return an example of an answer that would be understood, sizes in the person's unit."""
    if question.kind == "choice":
        return listed(question)
    if question.kind == "readings":
        return example_of_readings(question, bare)
    if question.kind == "length":
        return with_unit(inches(question.example or question.usual or "184 1/2"), tape_side(bare))
    return question.example or question.usual or {"count": "2", "names": "2"}.get(question.kind, "none")


def listed(question: Question) -> str:
    """Return the choices with their numbers, in one line."""
    return ", ".join(f"{number} = {choice.id}" for number, choice in enumerate(question.choices, 1))


def pick(question: Question, typed: str) -> Choice | None:
    """Return the choice a reply picks: by number, by its words, or by the beginning of a word that only one choice has."""
    talk = load_talk()
    plain = talk.folded(typed)
    if plain.isdecimal() and len(plain) <= 2 and 1 <= int(plain) <= len(question.choices):
        return question.choices[int(plain) - 1]
    for choice in question.choices:
        if plain in (choice.id, talk.folded(choice.say), *choice.words):
            return choice
    if len(plain) < 2 or talk.wish(typed):
        return None
    begun = [
        c for c in question.choices if any(w.startswith(plain) for w in (c.id, *c.words) if w == c.id or " " not in w)
    ]
    return begun[0] if len(begun) == 1 else None


def _number(plain: str) -> int | None:
    """Return a number in digits or in words; None when it is neither."""
    counts, figures = load_talk().counts, in_figures(plain)
    figures = re.sub(r"^(\d{1,3}),(\d{3})$", r"\1\2", figures)
    if plain not in counts and figures.isdecimal() and len(figures) <= 4:
        return int(figures)
    return counts.get(plain)


def _count(question: Question, typed: str, bare: Bare) -> int:
    """Read how many; what is counted may stand after the number."""
    plain = re.sub(r"(?<=\d)(?=[a-z])", " ", load_talk().folded(typed))
    for noun in sorted(question.counted, key=len, reverse=True):
        if plain.endswith(f" {noun}"):
            plain = plain.removesuffix(noun).strip()
            break
    number = _number(plain)
    low, high = int(question.least or 0), int(question.most or 99)
    if number is None:
        raise sorry("not_a_count", typed=typed, example=example_of(question, bare))
    if not low <= number <= high:
        raise sorry("count_range", typed=typed, short=question.short, least=low, most=high)
    return number


def _date(question: Question, typed: str, bare: Bare) -> str:
    """Read a day."""
    found = read_date(typed)
    if found is None:
        raise sorry("not_a_date", typed=typed, example=example_of(question, bare))
    return found


def _names(question: Question, typed: str, bare: Bare) -> tuple[str, ...]:
    """Read how many walls, or their names with commas between; walls without a name keep their letter alone."""
    number = _number(re.sub(r"\s*walls?$", "", load_talk().folded(typed)))
    if number is not None:
        if not 1 <= number <= MOST_WALLS:
            raise sorry("count_range", typed=typed, short=question.short, least=1, most=MOST_WALLS)
        return tuple(f"wall {wall_letter(index)}" for index in range(number))
    names = tuple(part.strip() for part in re.split(r"[,;]|\band\b", typed.strip(" .")) if part.strip(" ."))
    if not 0 < len(names) <= MOST_WALLS or not all(map(_is_name, names)) or _is_a_sentence(names):
        raise sorry("not_names", typed=typed)
    if len({name.lower() for name in names}) < len(names):
        raise sorry("name_twice", typed=typed)
    return names


def _is_name(name: str) -> bool:
    words = name.lower().split()
    begins_with_a_number = words[0][0].isdigit() or (_number(words[0]) is not None and words[0] not in ("a", "an"))
    in_words = any(char.isalpha() for char in name) and "?" not in name and not _NOT_NAMES & set(words)
    return len(name) <= LONGEST_NAME and in_words and not begins_with_a_number


def _is_a_sentence(names: tuple[str, ...]) -> bool:
    return len(names) == 1 and len(names[0].split()) > 3


def doubt_about(question: Question, value: Value) -> Doubt | None:
    """Return why an answer in range is still suspicious, or None."""
    spots = [spot for spot in value if isinstance(spot, Spot)] if isinstance(value, tuple) else []
    sizes = [value] if isinstance(value, Length) else [spot.size for spot in spots]
    steps = question.steps and len({spot.at for spot in spots}) < len(spots)
    for doubt in question.doubts:
        if doubt.is_ is not None and value == doubt.is_:
            return doubt
        if doubt.above and any(size > inches(doubt.above) for size in sizes):
            return doubt
        if doubt.below and any(size < inches(doubt.below) for size in sizes):
            return doubt
        if doubt.spread and sizes and not steps and max(sizes) - min(sizes) > inches(doubt.spread):
            return doubt
    return None
