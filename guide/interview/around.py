"""What people say round an answer: words that change nothing are taken off, words of doubt make it a guess.

Nothing is taken out of the middle of a reply, and never all of it: a reply of such words alone is handed on as it came.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from guide.book.talk import load_talk


@dataclass(frozen=True, slots=True)
class Core:
    """What is left of a reply."""

    text: str
    hedged: bool
    """Words such as “I think” stood beside it."""


def core_of(typed: str) -> Core:
    """Return a reply without the words that may stand before and after any answer.

    >>> core_of("I think it's 92 1/2, by eye"), core_of("92")
    (Core(text='92 1/2', hedged=True), Core(text='92', hedged=False))
    """
    text, hedged, before = typed.strip(), False, None
    while text != before:
        before = text
        for pattern, doubts in _patterns():
            rest = pattern.sub("", text, count=1).strip(" ,;:-")
            if rest and rest != text.strip(" ,;:-") and re.search(r"\w", rest):
                text, hedged = rest, hedged or doubts
    return Core(text, hedged)


@lru_cache(maxsize=1)
def _patterns() -> tuple[tuple[re.Pattern[str], bool], ...]:
    words = load_talk().understood
    return tuple(
        (re.compile(pattern.format(_either(phrases)), re.IGNORECASE), doubts)
        for phrases, pattern, doubts in (
            (words.hedges_before, r"^(?:{})(?![\w'’])[\s,:]*", True),
            (words.before, r"^(?:{})(?![\w'’])[\s,:]*", False),
            (words.hedges_after, r"(?:[\s,(-]+|(?<=\d))(?:{})[\s.!)]*$", True),
            (words.after, r"[\s,(-]+(?:{})[\s.!)]*$", False),
        )
    )


def _either(phrases: tuple[str, ...]) -> str:
    """Return a pattern for any of the phrases, the longest first, with any apostrophe."""
    return "|".join(re.escape(each).replace("'", "['’‘ʼ´`]") for each in sorted(phrases, key=len, reverse=True))
