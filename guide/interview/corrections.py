"""“No, 92 1/2”: a reply that corrects the answer before, told from one to the question asked now.

“I meant” and its like always speak of the answer before. A bare “no,” does where the rest cannot be meant for this
question, or comes close to what was said before; where it could be either, the person is asked which.
"""

from __future__ import annotations

import re
from functools import lru_cache

from guide.book.talk import load_talk
from guide.interview.answers import Answer, Certainty, Spot, Value
from guide.interview.asking import Asked
from guide.interview.loosely import read_loosely
from guide.interview.replies import Sorry, sorry
from guide.lengths import INCH, Bare, Length


def correction(asked: Asked, last: Asked, old: Answer, typed: str, bare: Bare) -> Answer | None:
    """Return the new answer to the question before, or None when the reply is none. Raises Sorry where it could be either."""
    found = _beginnings()[0].match(typed)
    plainly = found is not None
    found = found or _beginnings()[1].match(typed)
    if found is None:
        return None
    rest = _not_that(typed[found.end() :].strip(" ,:;-–—"))
    if not rest or last.question.kind == "text" or load_talk().wish(rest):
        return None
    new = _read(last, rest, bare)
    if new is None:
        return None
    answer = Answer(new[0], new[1], typed)
    free = asked.question.kind == "text"
    here = None if free else _read(asked, rest, bare)
    if plainly or _close(old.value, answer.value) or (here is None and not free):
        return answer
    if free:
        return None
    raise sorry("which_one", short=last.question.short).with_nearest((answer.value, answer.known), last.path)


def without_correction(typed: str) -> str:
    """Return a reply without “I meant” and its like before it: where nothing was answered before, it speaks of this question."""
    found = _beginnings()[0].match(typed)
    return _not_that(typed[found.end() :]) if found else typed


def said_again(typed: str) -> str | None:
    """Return what stands after any beginning of a correction, or None when there is none."""
    found = _beginnings()[0].match(typed) or _beginnings()[1].match(typed)
    return _not_that(typed[found.end() :]) if found else None


def _read(asked: Asked, text: str, bare: Bare) -> tuple[Value, Certainty] | None:
    try:
        return read_loosely(asked.question, text, bare)
    except Sorry:
        return None


def _not_that(rest: str) -> str:
    """Take “not 92 but 91” and “91, not 92” down to what it should be."""
    if found := re.fullmatch(r"not\s+.+?(?:,\s*|\s+but\s+)(?P<new>.+)", rest, re.IGNORECASE):
        return found["new"]
    return re.sub(r",?\s+not\s+.+$", "", rest, flags=re.IGNORECASE)


def _close(old: Value, new: Value) -> bool:
    """Say whether a size is a slip of the other: within an eighth of it, or within a quarter of an inch."""
    if isinstance(old, Length) and isinstance(new, Length):
        return abs(old - new) <= max(INCH // 4, abs(old) // 8)
    if isinstance(old, tuple) and isinstance(new, tuple) and old and new:
        first, second = old[0], new[0]
        return isinstance(first, Spot) and isinstance(second, Spot) and _close(first.size, second.size)
    return False


@lru_cache(maxsize=1)
def _beginnings() -> tuple[re.Pattern[str], re.Pattern[str]]:
    words = load_talk().understood
    return _begins(words.corrects), _begins(words.denies)


def _begins(phrases: tuple[str, ...]) -> re.Pattern[str]:
    either = "|".join(
        r"[\s,]+".join(re.escape(word) for word in each.split()) for each in sorted(phrases, key=len, reverse=True)
    ).replace("'", "['’]")
    return re.compile(rf"(?:{either})\b[\s,:.;!-]+", re.IGNORECASE)
