"""What a crew says to each other, as it stands in `prompts_data/briefing.toml`: safety, calling out, stopping, leaving."""

from __future__ import annotations

from collections.abc import Set
from functools import lru_cache

from guide.reference.data import Data, read_data
from guide.reference.steps import Tag


class Word(Data):
    """One thing to say."""

    say: str
    head: str = ""
    """Its first words, in bold; it is then said over the evening as well."""
    on: Tag | None = None
    """Said when a step with this tag is done; always, without one."""


class Who(Data):
    """Who does a step."""

    alone: str
    lift: str
    """Both, since two lift it better."""
    share: str
    """Both, since it goes quicker."""
    one: str
    """One of two, since two are no quicker."""


class Briefing(Data):
    """`prompts_data/briefing.toml`."""

    source: str
    who: Who
    safe: tuple[Word, ...]
    """Before anybody picks up a tool."""
    call: tuple[Word, ...]
    """How a number goes from the paper to the pencil."""
    stop: tuple[Word, ...]
    """What ends the work, whoever sees it."""
    leave: tuple[Word, ...]
    """What is done last."""


def said_on(words: tuple[Word, ...], tags: Set[str]) -> tuple[Word, ...]:
    """Return what is said on an evening whose steps have these tags, in the order of the data."""
    return tuple(word for word in words if word.on is None or word.on in tags)


@lru_cache(maxsize=1)
def load_briefing() -> Briefing:
    """Return what a crew says. Raises DataError when the data is not right."""
    return read_data("briefing.toml", Briefing)
