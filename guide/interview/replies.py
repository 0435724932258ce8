"""What every reader of a reply shares: taking the danger out of it, one sentence when it fails, and one size in range."""

from __future__ import annotations

import unicodedata

from guide.book.questions import Question
from guide.book.talk import load_talk
from guide.interview.answers import Certainty, Value
from guide.lengths import Bare, Length, Tape, Unreadable, read_length, with_unit

LONGEST_TEXT = 400
"""Characters in one reply; more than this is asked back, never cut off in silence."""

_SHOWN = 40


class Sorry(ValueError):  # noqa: N818 - it is an answer to the person, said as it stands
    """A reply that could not be understood; the message is one sentence saying what would be."""

    nearest: tuple[Value, Certainty] | None = None
    """The nearest reading, where there is exactly one: the person may say yes to it."""
    path: str | None = None
    """The answer that the nearest reading is for, where it is not the question asked."""

    def with_nearest(self, read: tuple[Value, Certainty] | None, path: str | None = None) -> Sorry:
        """Return the same sentence, with the nearest reading beside it."""
        self.nearest = read if read is not None and read[0] is not None else None
        self.path = path
        return self


def sorry(key: str, **values: object) -> Sorry:
    """Return the sentence of that name in `prompts_data/talk.toml`, what was typed shortened to fit a line."""
    return Sorry(load_talk().say[key].format(**{name: shortened(str(value), name) for name, value in values.items()}))


def clean(text: str) -> str:
    """Return text with control and invisible direction characters taken out and spaces folded."""
    kept = (" " if c.isspace() else c for c in text.replace("\u00ad", "-") if c.isspace() or _visible(c))
    return " ".join("".join(kept).split())


def _visible(char: str) -> bool:
    return unicodedata.category(char)[0] != "C"


def shortened(text: str, name: str = "typed") -> str:
    """Return what a person wrote, cleaned and cut to a few words, to be shown inside a sentence."""
    plain = clean(text)
    return f"{plain[:_SHOWN]}…" if name == "typed" and len(plain) > _SHOWN else plain


def tape_side(bare: Bare) -> Tape:
    """Return the side of the tape whose bare numbers are in this unit."""
    return "millimetres" if bare == "mm" else "inches"


def read_size(question: Question, typed: str, bare: Bare) -> tuple[Length, Certainty]:
    """Read one length in the question's range. Raises Sorry with one sentence when it is not one."""
    try:
        reading = read_length(typed, bare=bare)
    except Unreadable as error:
        raise Sorry(str(error)) from error
    low, high = question.range_of_lengths()
    if (low is not None and reading.length < low) or (high is not None and reading.length > high):
        tape = tape_side(bare)
        least = with_unit(low, tape, toward="up") if low is not None else "any"
        most = with_unit(high, tape, toward="down") if high is not None else "any"
        raise sorry("out_of_range", typed=typed, short=question.short, least=least, most=most)
    return reading.length, Certainty.EYEBALLED if reading.about else Certainty.MEASURED
