"""The letter to the building office as it stands in data: the questions, what is planned, which steps wait for an answer.

This module owns the promise that `prompts_data/office.toml` hangs together: every step that waits is one there is, and
every name in braces is one that the job can fill in.
"""

from __future__ import annotations

from functools import lru_cache
from string import Formatter

from pydantic import Field, model_validator

from guide.book.conditions import Condition
from guide.reference.data import Data, read_data
from guide.reference.steps import load_steps

PLACEHOLDERS = frozenset(
    {"permit", "code", "anchors", "openings", "reach", "blocks", "spacing", "cited", "caps", "foam", "yours"}
    | {"drywall", "rim", "strip", "boxes"}
)
"""Every name that may stand in braces in what is planned; guide.sheets.letter fills them in."""


class Ask(Data):
    """One question to the office."""

    about: str
    ask: str
    here: str
    """What these papers do until the office says otherwise."""
    before: tuple[str, ...] = Field(min_length=1)
    """Families of steps that wait for the answer."""
    when: Condition | None = None

    @model_validator(mode="after")
    def _fits(self) -> Ask:
        if odd := [name for name in self.before if not load_steps().named(name)]:
            raise ValueError(f"{self.about}: there is no step {', '.join(odd)}")
        named = {name for _, name, _, _ in Formatter().parse(self.here) if name is not None}
        if odd := sorted(named - PLACEHOLDERS):
            raise ValueError(f"{self.about}: it prints {', '.join(odd)}, which nothing fills in")
        return self


class Letter(Data):
    """Everything in the file."""

    words: dict[str, str]
    """What is filled in for the names in braces, by its own name."""
    question: tuple[Ask, ...]
    """In the order asked."""


@lru_cache(maxsize=1)
def load_letter() -> Letter:
    """Return the letter that ships with wallbrief. Raises DataError when the data is not right."""
    return read_data("office.toml", Letter)
