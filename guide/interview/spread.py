"""Readings said for many places at once: the same everywhere, from one end to the other, every four feet."""

from __future__ import annotations

import re

from guide.book.questions import Question
from guide.book.talk import load_talk
from guide.interview.answers import Spot
from guide.interview.replies import Sorry, read_size
from guide.lengths import ZERO, Bare, Length, Unreadable, read_length


def spread(question: Question, text: str, length: Length | None, bare: Bare) -> tuple[Spot, ...] | None:
    """Return the readings of a reply that says them for many places at once, or None when it does not.

    `length` is the wall's, where it is known: without it nothing can be placed from step to step.
    """
    plain = load_talk().folded(text)
    return _everywhere(question, plain, bare) or _step_by_step(question, plain, length, bare)


def _everywhere(question: Question, plain: str, bare: Bare) -> tuple[Spot, ...] | None:
    words = load_talk().understood
    for phrases, places in (
        (words.both_ends, ("left", "right") if question.along else ()),
        (words.everywhere, ("left", "right") if question.along else question.places),
    ):
        either = "|".join(re.escape(each) for each in sorted(phrases, key=len, reverse=True))
        found = re.fullmatch(rf"(?P<size>.+?),?\s+(?:at\s+|the\s+)?(?:{either})", plain) or re.fullmatch(
            rf"(?:{either})[:,]?\s+(?:is\s+|it's\s+)?(?P<size>.+)", plain
        )
        if found is None or not places:
            continue
        try:
            size, known = read_size(question, found["size"], bare)
        except Sorry:
            continue
        return tuple(Spot(place, size, known) for place in places)
    return None


def _step_by_step(question: Question, plain: str, length: Length | None, bare: Bare) -> tuple[Spot, ...] | None:
    """Read “every 4 ft: 91, 91 1/4, …”: the first at the left end, the last at the right, and the steps have to fill the wall."""
    found = re.fullmatch(r"(?:from (?:the )?left,?\s+)?every\s+(?P<step>[^:,]+?)\s*[:,]\s*(?P<sizes>.+)", plain)
    if found is None or length is None or not question.along:
        return None
    parts = [part.strip() for part in re.split(r"[,;]|\band\b(?!\s*\d+\s*/)", found["sizes"]) if part.strip()]
    try:
        step = read_length(found["step"], bare=bare).length
        read = [read_size(question, part, bare) for part in parts]
    except (Unreadable, Sorry):
        return None
    gaps = len(read) - 1
    if step <= ZERO or gaps < 1 or not step * (gaps - 1) < length <= step * gaps:
        return None
    places: list[str | Length] = ["left", *(step * gap for gap in range(1, gaps)), "right"]
    return tuple(Spot(at, size, known) for at, (size, known) in zip(places, read, strict=True))
