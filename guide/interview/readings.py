"""Several readings in one reply, each with the place it was taken at.

A size whose place cannot be told is asked back; nothing is guessed, except that sizes without any place stand in the
question's own order.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace

from guide.book.questions import Question
from guide.book.talk import load_talk
from guide.interview.answers import Certainty, Spot
from guide.interview.replies import read_size, sorry, tape_side
from guide.lengths import ZERO, Bare, Length, Unreadable, read_length, with_unit

_FRACTION_NEXT = r"\s*(?:\d+\s*/|a half\b|a quarter\b|three quarters\b)"
_METRIC = r"(?:mm|cm|m|(?:milli|centi)?met(?:re|er)s?)\b"
_BETWEEN: dict[Bare, re.Pattern[str]] = {
    # a comma before one or two digits is a decimal comma where the number is metric, and parts readings anywhere else
    "in": re.compile(rf";|\band\b(?!{_FRACTION_NEXT})|,(?!(?<=\d,)\d{{1,2}}\s*{_METRIC})", re.IGNORECASE),
    "mm": re.compile(rf";|\band\b(?!{_FRACTION_NEXT})|,(?!(?<=\d,)\d{{1,2}}(?!\d))", re.IGNORECASE),
}
_FROM_LEFT = re.compile(r"\s+from\s+(?:the\s+)?left(?:\s+(?:end|corner|side))?$")
_AT = r"(?:\b(?:at|on|by)\b|@)"


def how_known(spots: tuple[Spot, ...]) -> Certainty:
    """Return how certain readings are together: eyeballed when every one of them is."""
    return Certainty.MEASURED if any(s.known is Certainty.MEASURED for s in spots) else Certainty.EYEBALLED


def parted(typed: str, bare: Bare) -> list[str]:
    """Return the parts of a reply that names several things, at commas, semicolons and “and”, none of them empty."""
    return [stripped for part in _BETWEEN[bare].split(typed) if (stripped := part.strip())]


def read_readings(question: Question, typed: str, bare: Bare) -> tuple[Spot, ...]:
    """Read `91 1/4 at left, 91 5/8 at 8 ft, 92 1/8 at right`, or sizes alone in the order of the question's places.

    Also `left 91 1/4; right 92`, `91 1/4 left 92 right`, `8 ft: 91 5/8`. Raises Sorry with one sentence when a size or
    its place is not clear, a place stands twice where nothing steps, or too few are given.
    """
    spots = tuple(
        _spot(question, each, bare) for part in parted(typed, bare) for each in _each_with_its_place(question, part)
    )
    if not spots:
        raise sorry("place_missing", example=example_of_readings(question, bare))
    every = question.kind == "readings"  # a length that takes readings in its stead has no order, and no ends to read
    if every and all(spot.at == "" for spot in spots):
        spots = _in_order(question, spots, bare)
    if any(spot.at == "" for spot in spots):
        raise sorry("place_missing", example=example_of_readings(question, bare))
    at = Counter(spot.at for spot in spots)
    if any(n > (2 if question.steps and isinstance(place, Length) else 1) for place, n in at.items()):
        raise sorry("place_twice", typed=typed)
    if len(spots) < question.fewest or (every and _needs_ends(question) and not {"left", "right"} <= set(at)):
        raise _too_few(question, bare)
    return spots


def example_of_readings(question: Question, bare: Bare) -> str:
    """Return readings that would be understood, in the person's unit."""
    text = question.example or question.usual
    if text is None or question.kind == "length":
        return ", ".join(f"… at {place}" for place in question.places)
    tape = tape_side(bare)
    return ", ".join(
        f"{with_unit(spot.size, tape)} at {spot.at if isinstance(spot.at, str) else with_unit(spot.at, tape)}"
        for spot in read_readings(question, text, "in")
    )


def _too_few(question: Question, bare: Bare) -> ValueError:
    needed = ("left", "right") if _needs_ends(question) else question.places[: question.fewest]
    return sorry("too_few_readings", places=" and ".join(needed), example=example_of_readings(question, bare))


def _needs_ends(question: Question) -> bool:
    """Say whether readings along a wall are a line that has two ends; where one will do, they are single places."""
    return question.along and question.fewest > 1


def _words(question: Question) -> str:
    """Return a pattern for the named places of the question; a number is a place only after “at”."""
    words = [word for place in question.places for word in (place, *load_talk().places.get(place, ()))]
    named = sorted((re.escape(word) for word in words if not word[0].isdigit()), key=len, reverse=True)
    return rf"(?:the\s+)?\b(?:{'|'.join(named)})\b"


def _each_with_its_place(question: Question, part: str) -> Iterator[str]:
    """Part `91.25 left 92 right` or `left 91.25 right 92` where no comma parts it; anything less clear stays whole."""
    word = _words(question)
    named = list(re.finditer(rf"(?:{_AT}\s*)?{word}", part, re.IGNORECASE))
    if len(named) < 2:
        yield part
    elif named[0].start() == 0:
        starts = [found.start() for found in named]
        yield from (part[a:b].strip() for a, b in zip(starts, [*starts[1:], len(part)], strict=True))
    elif named[-1].end() == len(part):
        ends = [found.end() for found in named]
        yield from (part[a:b].strip() for a, b in zip([0, *ends[:-1]], ends, strict=True))
    else:
        yield part


def _spot(question: Question, part: str, bare: Bare) -> Spot:
    word = _words(question)
    for pattern in (
        rf"(?P<size>.+?)\s*{_AT}\s*(?P<place>.+)",
        rf"(?:{_AT}\s*)?(?P<place>{word})\s*[:=]?\s+(?P<size>.+)",
        rf"(?:{_AT}\s*)?(?P<place>[^:=]+?)\s*[:=]\s*(?P<size>.+)",
        rf"(?P<size>.+?)\s+\(?(?P<place>{word})\)?",
    ):
        if found := re.fullmatch(pattern, part, re.IGNORECASE):
            size, known = read_size(question, found["size"], bare)
            at, about = _place(question, found["place"], bare)
            return Spot(at, size, Certainty.EYEBALLED if about else known)
    size, known = read_size(question, part, bare)
    return Spot("", size, known)


def _place(question: Question, text: str, bare: Bare) -> tuple[str | Length, bool]:
    """Return a place, and whether it was only about there."""
    plain = re.sub(r"^the\s+", "", text.lower().strip(" .()"))
    for place in question.places:
        if plain in (place, *load_talk().places.get(place, ())):
            return place, False
    known_places = ", ".join(question.places)
    if question.along:
        known_places += f" or a distance such as {'2400 mm' if bare == 'mm' else '8 ft'}"
    if not question.along:
        raise sorry("no_such_place", typed=text, places=known_places)
    try:
        reading = read_length(_FROM_LEFT.sub("", plain), bare=bare)
    except Unreadable as error:
        raise sorry("no_such_place", typed=text, places=known_places) from error
    if reading.length < ZERO:
        raise sorry("no_such_place", typed=text, places=known_places)
    at_left = reading.length == ZERO and "left" in question.places
    return ("left" if at_left else reading.length), reading.about


def _in_order(question: Question, spots: tuple[Spot, ...], bare: Bare) -> tuple[Spot, ...]:
    """Give sizes without places the question's places in order; two along a wall are its ends."""
    if question.along and not _needs_ends(question):
        raise sorry("place_missing", example=example_of_readings(question, bare))
    places = ("left", "right") if question.along and len(spots) == 2 else question.places
    if question.along and len(spots) == 1:
        raise _too_few(question, bare)
    if len(spots) > len(places) or (question.along and len(spots) < len(places)):
        raise sorry("place_missing", example=example_of_readings(question, bare))
    return tuple(replace(spot, at=place) for spot, place in zip(spots, places, strict=False))
