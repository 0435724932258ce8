"""The trade's words, each explained to a first-timer in one or two sentences, found however they are written."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from guide.reference.data import Data, DataError, read_data


class Entry(Data):
    """One word of the trade."""

    word: str
    also: tuple[str, ...] = ()
    """Other ways to say or write it."""
    says: str
    """What it is, in one or two sentences."""


class Glossary(Data):
    """`prompts_data/glossary.toml`."""

    entry: tuple[Entry, ...]


@lru_cache(maxsize=1)
def load_glossary() -> tuple[Entry, ...]:
    """Return every entry in the order of the data. Raises DataError when the data is not right."""
    return read_data("glossary.toml", Glossary).entry


def look_up(text: str) -> Entry | None:
    """Return the entry for a word or a phrase, or None when it is not in the glossary.

    Capitals, hyphens, quotes, an article before it and a plural ending make no difference.
    """
    known = _by_form()
    return next((known[form] for form in _forms(text) if form in known), None)


@lru_cache(maxsize=1)
def _by_form() -> dict[str, Entry]:
    """Return the entries by each of their written forms. Raises DataError when two of them claim one form."""
    found: dict[str, Entry] = {}
    for entry in load_glossary():
        for written in (entry.word, *entry.also):
            other = found.setdefault(_plain(written), entry)
            if other is not entry:
                raise DataError(
                    f"prompts_data/glossary.toml: “{written}” stands for both {other.word} and {entry.word}"
                )
    return found


def _plain(text: str) -> str:
    return " ".join(re.sub(r"[^\w]+", " ", text.casefold()).split())


def _forms(text: str) -> Iterator[str]:
    """Yield what a word could be in the singular, as it stands first."""
    plain = re.sub(r"^(?:a|an|the) ", "", _plain(text))
    yield plain
    for ending, singular in (("ies", "y"), ("es", ""), ("s", "")):
        if plain.endswith(ending):
            yield plain.removesuffix(ending) + singular
