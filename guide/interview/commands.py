"""What a person asks to have done with the job besides answering: go to a wall, copy, mirror or move it, find an answer.

A reply is such a command only where the whole of it fits one of the forms in `prompts_data/talk.toml` and the wall it
names is there; anything else is left to be heard as a reply.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from guide.book.talk import Command, load_talk
from guide.interview.answers import Answers, wall_letter
from guide.interview.replies import clean
from guide.interview.walls import wall_names

_FINDING = re.compile(r"[a-z]+\.[a-z_]{3,}")
"""A finding's name as it stands on the screen, `a.edge_missed`, said alone."""


@dataclass(frozen=True, slots=True)
class Order:
    """One command: what is to be done, to which wall, beside which other, or with which words."""

    command: Command
    wall: int | None = None
    other: int | None = None
    words: str = ""
    finding: str = ""


def order_said(answers: Answers, typed: str) -> Order | None:
    """Return the command that a reply is, or None when it is none."""
    plain = load_talk().folded(clean(typed)).rstrip(" ?")
    if _FINDING.fullmatch(plain):
        return Order("piece", words=plain)
    for command, form in _forms():
        if found := form.fullmatch(plain):
            named = found.groupdict()
            walls = {key: _wall(answers, named[key]) for key in ("wall", "other") if key in named}
            words = named.get("words", "")
            points = command != "sign" and words.startswith(("that ", "it ", "this "))
            if None not in walls.values() and not points:
                return Order(command, walls.get("wall"), walls.get("other"), words, named.get("finding", ""))
    return None


@lru_cache(maxsize=1)
def _forms() -> tuple[tuple[Command, re.Pattern[str]], ...]:
    return tuple((command, _pattern(form)) for command, forms in load_talk().commands.items() for form in forms)


def _pattern(form: str) -> re.Pattern[str]:
    """Return a pattern for a form; {wall}, {other}, {finding} and {words} stand for what is named."""
    return re.compile(re.sub(r"\\\{(wall|other|finding|words)\\\}", r"(?P<\1>.+?)", re.escape(form)))


def _wall(answers: Answers, name: str) -> int | None:
    """Return the number of the wall that is called so, by its letter or its name."""
    plain = re.sub(r"^(?:the|wall)\s+|\s+wall$", "", name.strip())
    for index, own in enumerate(wall_names(answers)):
        if plain == wall_letter(index).lower() or own.lower() in (plain, name.strip()):
            return index
    return None
