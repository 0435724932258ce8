"""What the engine says: sentences live in data, the engine names them and fills in the numbers.

A `Saying` is a key of `prompts_data/sayings.toml` with its values; `say` turns it into a sentence in the person's own
unit. The same reason can so be read in the talk, on paper and in plan.json.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files

from guide.lengths import Length, Tape, in_feet, with_unit

SayingValue = Length | str | int


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
    """A length inside a sentence: `{x}` prints `187 3/4 in`, `{x:feet}` prints `15'-7 3/4"` on an inch tape."""

    def __init__(self, length: Length, tape: Tape) -> None:
        self._length, self._tape = length, tape

    def __format__(self, spec: str) -> str:
        if spec == "feet" and self._tape == "inches":
            return in_feet(self._length)
        return with_unit(self._length, self._tape)


def say(what: Saying, tape: Tape = "inches") -> str:
    """Return the sentence. Raises KeyError when the data has no such sentence or it wants a value that is not there."""
    shown = {name: _Shown(value, tape) if isinstance(value, Length) else value for name, value in what.values}
    return load_sayings()[what.key].format_map(shown)
