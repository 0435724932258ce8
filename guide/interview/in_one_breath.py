"""A whole wall in one breath: “16'4, 7'8 concrete, joists into the wall, 16 apart, no openings, no pipes, nothing else”.

The first part answers the question asked, each of the others names its question; what names none, or could be two things, gives
the whole reply up, to be asked back. One size for what is read in several places is a guess: it is drawn, and never cut from.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from guide.book.questions import Book, Question
from guide.book.talk import load_talk
from guide.interview.answers import Answer, Answers, Certainty, Spot, Value, path_of, scope_of
from guide.interview.asking import Asked, applying
from guide.interview.loosely import size_called
from guide.interview.readings import how_known
from guide.interview.replies import Sorry, read_size
from guide.interview.several import several
from guide.interview.values import read_value
from guide.lengths import Bare

_PARTS = re.compile(r"\s*(?:;|,(?!\d)|,(?=\d{3,}))\s*(?:and\s+)?")
_LONGEST = 4
"""Parts that the readings of one question may have."""

Found = dict[str, Answer]


def in_one_breath(book: Book, answers: Answers, asked: Asked, typed: str, bare: Bare) -> Found | None:
    """Return the answers about a wall that a reply of several parts gives, in the order asked; None when it is not all clear."""
    parts = [part for part in _PARTS.split(typed.strip(" .")) if part]
    if scope_of(asked.place) != "wall" or len(parts) < 2:
        return None
    found = _read(book, answers, asked, parts, bare)
    if found is None or len(found) == 1:
        return None
    now = [each.path for each in applying(book, {**answers, **found})]
    return {path: found[path] for path in now if path in found} if found.keys() <= set(now) else None


def _read(book: Book, answers: Answers, asked: Asked, parts: Sequence[str], bare: Bare) -> Found | None:
    """Read the longest group of parts that is one thing said, and then what follows it; the first answers the question asked."""
    found: Found = {}
    at = 0
    for end in range(min(len(parts), _LONGEST), 0, -1):
        if (read := _value(asked.question, ", ".join(parts[:end]), bare)) is not None:
            found, at = {asked.path: Answer(*read, ", ".join(parts[:end]))}, end
            break
    while at < len(parts):
        for end in range(len(parts), at, -1):
            text = ", ".join(parts[at:end])
            group = _counted(book, answers, asked.place, text, bare)
            if group is None and end - at <= _LONGEST:
                group = _said(book, asked.place, text, bare)
            if group is not None and not group.keys() & found.keys():
                found, at = found | group, end
                break
        else:
            return None
    return found


def _counted(book: Book, answers: Answers, place: str, text: str, bare: Bare) -> Found | None:
    """Read things counted: no openings, two outlets at 4 ft and 9 ft."""
    return several(book, answers, Asked(place, book.by_ref["wall.openings"]), text, bare)


def _said(book: Book, place: str, text: str, bare: Bare) -> Found | None:
    """Read what one group of parts says to the question that it names."""
    questions = book.by_scope["wall"]
    plain = load_talk().folded(text)
    if plain in load_talk().understood.nothing:
        nothing = [q for q in questions if q.kind == "text" and q.usual == "none"]
        return {path_of(place, q.id): Answer("none", Certainty.MEASURED, text) for q in nothing} or None
    named = [(q, size) for q in questions if len(plain) > 2 and (size := size_called(q, text)) is not None]
    if len(named) == 1:
        return {path_of(place, named[0][0].id): Answer(named[0][1], Certainty.MEASURED, text)}
    read_as = {
        path_of(place, question.id): Answer(*read, text)
        for question, rest in _labelled(questions, text)
        if (read := _value(question, rest, bare)) is not None
    }
    both = {each.value for each in read_as.values()}
    return read_as if len(read_as) == 1 or (_ends(text) and len(both) == 1 and len(read_as) == 2) else None


def _ends(text: str) -> bool:
    return any(load_talk().folded(text).endswith(f" {words}") for words in load_talk().understood.both_ends)


def _labelled(questions: Sequence[Question], text: str) -> Iterator[tuple[Question, str]]:
    """Yield each question that a word before or after the rest names, with that rest."""
    both = load_talk().understood.both_ends
    for question in questions:
        labels = (*question.labels, *(both if question.ref in ("wall.left", "wall.right") else ()))
        for label in sorted(labels, key=len, reverse=True):
            joint = r"\s*(?:is|are|of|at|,|:)?\s+"
            found = re.fullmatch(
                rf"(?:the\s+)?{re.escape(label)}{joint}(?P<rest>.+)", text, re.IGNORECASE
            ) or re.fullmatch(rf"(?P<rest>.+?)\s+(?:at\s+|of\s+)?(?:the\s+)?{re.escape(label)}", text, re.IGNORECASE)
            if found is not None:
                yield question, found["rest"]
                break


def _value(question: Question, text: str, bare: Bare) -> tuple[Value, Certainty] | None:
    """Read a value as it stands; one size for readings along the wall is about the same at both ends.

    Several readings need their places: of two sizes without, the second may be anything.
    """
    if ", " in text and not all(_has_a_place(question, part) for part in text.split(", ")):
        return None
    if question.kind == "choice":
        words = {word for choice in question.choices for word in (choice.id, *choice.words)}
        if text.isdecimal() and text not in words:
            return None
    elif question.kind not in ("length", "readings"):
        return None
    if (size := size_called(question, text)) is not None:
        return size, Certainty.MEASURED
    try:
        return read_value(question, text, bare)
    except Sorry:
        return _about_everywhere(question, text, bare)


def _has_a_place(question: Question, part: str) -> bool:
    words = {word for place in question.places for word in (place, *load_talk().places.get(place, ()))}
    return bool(set(load_talk().folded(part).split()) & (words | {"at", "@"}))


def _about_everywhere(question: Question, text: str, bare: Bare) -> tuple[Value, Certainty] | None:
    if not (question.kind == "readings" and question.along):
        return None
    try:
        size, _ = read_size(question, text, bare)
    except Sorry:
        return None
    spots = tuple(Spot(end, size, Certainty.EYEBALLED) for end in ("left", "right"))
    return spots, how_known(spots)
