"""Answers as they are written in a job file: plain text wherever that says everything, an object where it does not.

Writing and reading are each other's inverse, and reading uses the same readers as the talk, so a file typed by hand may
spell a length in any way that the conversation takes.
"""

from __future__ import annotations

from typing import cast

from guide.book.questions import Question
from guide.interview.answers import Answer, Certainty, Spot, Value
from guide.interview.replies import LONGEST_TEXT, Sorry, clean, shortened
from guide.interview.values import read_value
from guide.lengths import Bare, Length, Tape, as_written

Json = None | bool | int | float | str | list["Json"] | dict[str, "Json"]

_KEYS = ("value", "known", "typed", "confirm", "leans")
_LONGEST = 10 * LONGEST_TEXT
"""Characters; a reply that fits the talk is longer when each of its readings is written out with its unit."""


def written(answer: Answer, tape: Tape) -> Json:
    """Return an answer as JSON: its value alone when it was measured and typed just so, else an object that says more."""
    value = value_written(answer.value, tape)
    shown = ", ".join(cast(list[str], value)) if isinstance(value, list) else "" if value is None else str(value)
    about = how_known(answer, shown)
    return {"value": value, **about} if about or value is None else value


def how_known(answer: Answer, shown: str) -> dict[str, Json]:
    """Return what there is to say besides the value: nothing when it was measured and typed as it is shown."""
    about: dict[str, Json] = {}
    if answer.known is not Certainty.MEASURED:
        about["known"] = answer.known.value
    if answer.typed != shown:
        about["typed"] = answer.typed
    if answer.confirm:
        about["confirm"] = True
    if answer.leans:
        about["leans"] = list(answer.leans)
    return about


def value_written(value: Value, tape: Tape) -> Json:
    """Return a value as JSON: lengths with their unit, readings as `91 1/4 in at left`, everything else as it is."""
    if isinstance(value, Length):
        return as_written(value, tape)
    if isinstance(value, tuple):
        return [_spot_written(each, tape) if isinstance(each, Spot) else each for each in value]
    return value


def _spot_written(spot: Spot, tape: Tape) -> str:
    about = "about " if spot.known is not Certainty.MEASURED else ""
    at = as_written(spot.at, tape) if isinstance(spot.at, Length) else spot.at
    return f"{about}{as_written(spot.size, tape)} at {at}"


def read_written(question: Question, data: Json, bare: Bare) -> Answer:
    """Read an answer back from JSON. Raises Sorry with one sentence naming what was read and what would be right."""
    if isinstance(data, dict):
        return _read_full(question, data, bare)
    text = _as_text(data)
    value, known = read_value(question, text, bare)
    return Answer(value, known, text)


def _read_full(question: Question, data: dict[str, Json], bare: Bare) -> Answer:
    if odd := sorted(set(data) - set(_KEYS)):
        raise Sorry(f"unknown key {quoted(odd[0])}; an answer has value, known, typed, confirm and leans")
    known = data.get("known", Certainty.MEASURED.value)
    if not isinstance(known, str) or known not in tuple(Certainty):
        raise Sorry(f"known is {quoted(known)}; it can be {', '.join(Certainty)}")
    confirm = data.get("confirm", False)
    if not isinstance(confirm, bool):
        raise Sorry(f"confirm is {quoted(confirm)}; it can be true or false")
    leans = data.get("leans", [])
    if not isinstance(leans, list) or not all(isinstance(each, str) for each in leans):
        raise Sorry(f"leans is {quoted(leans)}; it is a list of paths such as A.length")
    typed = data.get("typed")
    if typed is not None and not isinstance(typed, str):
        raise Sorry(f"typed is {quoted(typed)}; it is the text that was typed")
    if data.get("value") is None:
        if known != Certainty.UNKNOWN:
            raise Sorry("value is missing; leave it out only with known: unknown")
        return Answer(None, Certainty.UNKNOWN, _whole(typed or ""), confirm)
    text = _as_text(data["value"])
    value, about = read_value(question, text, bare)
    certainty = Certainty(known)
    if certainty is Certainty.MEASURED:
        certainty = about
    return Answer(value, certainty, text if typed is None else _whole(typed), confirm, tuple(map(str, leans)))


def _as_text(data: Json) -> str:
    """Return a plain JSON value as the text that the readers take."""
    if isinstance(data, bool) or data is None or isinstance(data, dict):
        raise Sorry(f'I read {quoted(data)} where an answer should be; write it as text, such as "16 ft 4 in"')
    if isinstance(data, list):
        if not data or not all(isinstance(each, (str, int, float)) and not isinstance(each, bool) for each in data):
            raise Sorry(
                f'I read {quoted(data)} where readings should be; write them as a list of texts, such as ["91 1/4 in at left"]'
            )
        return _whole(", ".join(str(each) for each in data))
    return _whole(str(data))


def _whole(text: str) -> str:
    """Return a text cleaned; one that is too long to be an answer is refused, not cut."""
    plain = clean(text)
    if len(plain) > _LONGEST:
        raise Sorry(f"{quoted(plain)} is {len(plain)} characters; an answer has {_LONGEST} at most")
    return plain


def quoted(data: object) -> str:
    """Return what was read, cleaned and cut to a few words, in quotation marks."""
    return f"“{shortened(str(data))}”"
