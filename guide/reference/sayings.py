"""What the engine says: sentences live in data, the engine names them and fills in the numbers.

A `Saying` is a key of `prompts_data/sayings.toml` with its values; `say` turns it into a sentence in the person's own
unit. The same reason can so be read in the talk, on paper and in plan.json.
"""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from importlib.resources import files
from typing import TypeAlias

from guide.lengths import Length, Tape, as_run, in_feet, retold, with_area, with_unit

SayingValue: TypeAlias = "Length | Fraction | str | int | Saying"
"""What a sentence may print: a size, an area in square inches, a word, a number, or another saying as a part of it."""


@dataclass(frozen=True, slots=True)
class Saying:
    """One sentence to be said: its key, such as `part.layout_stud`, and its values by name."""

    key: str
    values: tuple[tuple[str, SayingValue], ...] = ()


def saying(key: str, **values: SayingValue) -> Saying:
    """Return a saying with its values."""
    return Saying(key, tuple(values.items()))


@lru_cache(maxsize=1)
def load_sayings() -> dict[str, str]:
    """Return every sentence by its full key, `group.name`."""
    data = tomllib.loads((files("prompts_data") / "sayings.toml").read_text(encoding="utf-8"))
    return {f"{group}.{name}": text for group, texts in data.items() for name, text in texts.items()}


class _Shown:
    """A length inside a sentence: `{x}` prints `187 3/4 in`, `{x:feet}` prints `15'-7 3/4"` on an inch tape,
    `{x:run}` a run of whole feet or of metres.

    One that nobody measured is printed with “about” before it.
    """

    def __init__(self, length: Length, tape: Tape, *, about: bool) -> None:
        self._length, self._tape, self._about = length, tape, "about " if about else ""

    def __format__(self, spec: str) -> str:
        if spec == "run":
            return self._about + as_run(self._length, self._tape)
        if spec == "feet" and self._tape == "inches":
            return self._about + in_feet(self._length)
        return self._about + with_unit(self._length, self._tape)


Guessed = Callable[[Length], bool]
"""Whether a length rests on something that nobody measured."""


def _never(length: Length) -> bool:
    return False


def say(what: Saying, tape: Tape = "inches", guessed: Guessed = _never) -> str:
    """Return the sentence. Raises KeyError when the data has no such sentence or it wants a value that is not there."""
    return say_text(load_sayings()[what.key], what.values, tape, guessed)


def say_text(
    text: str, values: Iterable[tuple[str, SayingValue]], tape: Tape = "inches", guessed: Guessed = _never
) -> str:
    """Fill a sentence's braces with values, lengths in the person's own unit, and begin it with a capital."""
    filled = _filled(text, values, tape, guessed)
    return filled[:1].upper() + filled[1:]


def _filled(text: str, values: Iterable[tuple[str, SayingValue]], tape: Tape, guessed: Guessed) -> str:
    def shown(value: SayingValue) -> object:
        if isinstance(value, Length):
            return _Shown(value, tape, about=guessed(value))
        if isinstance(value, Fraction):
            return with_area(value, tape)
        if isinstance(value, Saying):
            return _filled(load_sayings()[value.key], value.values, tape, guessed)
        return value

    return retold(text, tape).format_map({name: shown(value) for name, value in values})
