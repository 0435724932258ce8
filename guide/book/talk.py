"""The words of the conversation: what the person may say besides an answer, and the sentences wallbrief says."""

from __future__ import annotations

import tomllib
from functools import lru_cache
from importlib.resources import files
from typing import Literal

from pydantic import BaseModel, ConfigDict

Wanted = Literal[
    "back", "why", "how", "dont_know", "usual", "keep", "yes", "no", "none", "help", "later", "undo", "redo", "repeat", "example", "meaning", "sketch"
]  # fmt: skip
"""What a person can want instead of answering."""

Command = Literal["go", "copy", "mirror", "before", "after", "insert_before", "insert_after", "delete", "draw", "section", "floor", "standing", "findings", "sign", "piece", "find"]  # fmt: skip
"""What a person can have done with the job."""

_APOSTROPHES = str.maketrans(dict.fromkeys("’‘ʼ´`′＇", "'"))


class Understood(BaseModel):
    """Words that are no answer by themselves: round one, before one, or in place of one."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    meaning: tuple[str, ...]
    """How a person asks what {word} means."""
    corrects: tuple[str, ...]
    """How a reply begins that corrects the answer before."""
    denies: tuple[str, ...]
    """The same, where it may as well be an answer to this question."""
    before: tuple[str, ...]
    after: tuple[str, ...]
    """Words before and after an answer that change nothing."""
    hedges_before: tuple[str, ...]
    hedges_after: tuple[str, ...]
    """Words that make an answer a guess."""
    vague: tuple[str, ...]
    """Words that leave a size open; beside one they make the nearest reading a guess."""
    relations: tuple[str, ...]
    """Words that place one thing by another; a size beside one of them is no distance from the left corner."""
    extents: tuple[str, ...]
    """Words that say how large a thing is; a size beside one of them does not say where it is."""
    no_lengths: tuple[str, ...]
    """Units of other things; a number beside one of them is no length."""
    more: tuple[str, ...]
    less: tuple[str, ...]
    """How a size is said to differ from another."""
    everywhere: tuple[str, ...]
    both_ends: tuple[str, ...]
    """Where one reading is said for several places."""
    sizes_of_things: tuple[str, ...]
    """Words before what is counted that say nothing we ask about."""
    fillers: tuple[str, ...]
    """Words that may stand beside a choice without changing it."""
    denials: tuple[str, ...]
    """Words that may stand beside a no without changing it."""
    negations: tuple[str, ...]
    """Words that make a clause deny what it speaks of."""
    turns: tuple[str, ...]
    """Words after which the opposite may follow."""
    takes_back: tuple[str, ...]
    """Words by which a clause takes back a part of what another one says."""
    not_one: tuple[str, ...]
    """Words beside a size that make something else of it."""
    beside_sizes: tuple[str, ...]
    """Words that may stand beside a size or a count without changing it."""
    short_forms: dict[str, str]
    """How words are typed in haste, and how they are compared."""
    left_to_us: tuple[str, ...]
    """Replies that leave a choice to the planner."""
    nothing: tuple[str, ...]
    """Replies to a question for free words that say there is nothing to say."""


class Talk(BaseModel):
    """`prompts_data/talk.toml`: words understood, and sentences said."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    words: dict[Wanted, tuple[str, ...]]
    """Replies that are a wish and not an answer."""
    begins: dict[Wanted, tuple[str, ...]]
    """Beginnings of longer replies that are a wish."""
    understood: Understood
    commands: dict[Command, tuple[str, ...]]
    """How a person has something done; {wall}, {other}, {finding} and {words} stand for what is named."""
    ordinals: dict[str, int]
    """Places in a row said in words."""
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
