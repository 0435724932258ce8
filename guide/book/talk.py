"""The words of the conversation: what the person may say besides an answer, and the sentences wallbrief says."""

from __future__ import annotations

import tomllib
from functools import lru_cache
from importlib.resources import files
from typing import Literal

from pydantic import BaseModel, ConfigDict

Wanted = Literal["back", "why", "how", "dont_know", "usual", "keep", "yes", "no", "none", "help"]
"""What a person can want instead of answering."""

_APOSTROPHES = str.maketrans(dict.fromkeys("’‘ʼ´`′＇", "'"))


class Talk(BaseModel):
    """`prompts_data/talk.toml`: words understood, and sentences said."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    words: dict[Wanted, tuple[str, ...]]
    """Replies that are a wish and not an answer."""
    same_as: tuple[str, ...]
    """How “same as wall A” begins; what follows is the wall."""
    counts: dict[str, int]
    """Counts said in words."""
    places: dict[str, tuple[str, ...]]
    """Other words for the places of readings."""
    say: dict[str, str]
    """Sentences by name, with their values in braces."""

    def folded(self, reply: str) -> str:
        """Return a reply as it is compared with words: lower case, plain apostrophes, no full stop."""
        return " ".join(reply.lower().translate(_APOSTROPHES).strip(" !.").split())

    def wish(self, reply: str) -> Wanted | None:
        """Return what the reply asks for, or None when it is no such word."""
        plain = self.folded(reply).rstrip(" ?") or reply.strip()
        for wanted, words in self.words.items():
            if plain in words:
                return wanted
        return None


@lru_cache(maxsize=1)
def load_talk() -> Talk:
    """Return the talk that ships with wallbrief."""
    return Talk.model_validate(tomllib.loads((files("prompts_data") / "talk.toml").read_text(encoding="utf-8")))
