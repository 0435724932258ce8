"""Words of the trade are found however they are written, and the glossary holds those that are used and no others."""

from __future__ import annotations

import re
from importlib.resources import files
from importlib.resources.abc import Traversable

import pytest

from guide.layout.parts import Kind
from guide.reference.glossary import Glossary, load_glossary, look_up

ASKED_FOR = (
    "plate stud crown king trimmer cripple header sill cap fireblock hump shelf gasket toenail chase bay notch rim joist "
    "slab batt drywall pin jamb leaf buck cleanout shim backing bead kerf lean string locked offset".split()
)
"""Single words that a first-timer meets in questions, parts and steps."""


def _prose() -> str:
    """Return every text that ships, the glossary itself left out, as plain words."""

    def texts(folder: Traversable) -> list[str]:
        entries = sorted(folder.iterdir(), key=lambda entry: entry.name)
        return [
            text
            for entry in entries
            if entry.name != "glossary.toml"
            for text in (
                texts(entry)
                if entry.is_dir()
                else [entry.read_text(encoding="utf-8")]
                if entry.name.endswith((".toml", ".j2"))
                else []
            )
        ]

    return " ".join(re.sub(r"[^\w]+", " ", " ".join(texts(files("prompts_data"))).casefold()).split())


@pytest.mark.parametrize("kind", Kind)
def test_every_kind_of_part_is_explained(kind: Kind) -> None:
    assert look_up(kind.value) is not None


@pytest.mark.parametrize("word", [*ASKED_FOR, "through wall", "butt wall", "corner pack", "on centre", "running inches",
                                  "thermal barrier"])  # fmt: skip
def test_every_word_that_a_first_timer_meets_is_explained(word: str) -> None:
    assert look_up(word) is not None


@pytest.mark.parametrize(
    ("written", "word"),
    [
        ("Plates", "plate"), ("the STUDS", "stud"), ("fire-blocks", "fireblock"), ("leaves", "leaf"), ("sashes", "sash"),
        ("O.C.", "on centre"), ("on-center", "on centre"), ("“cripples”", "cripple"), ("a king", "king stud"),
        ("Post-tensioned slab", "post-tensioned"), ("  toe   nail ", "toenail"), ("boxes", "electrical box"),
    ],
)  # fmt: skip
def test_a_word_is_found_however_it_is_written(written: str, word: str) -> None:
    found = look_up(written)
    assert found is not None
    assert found.word == word


@pytest.mark.parametrize("text", ["", "  ", "...", "the", "guitar", "plates and studs", "s"])
def test_what_is_no_word_of_the_trade_is_not_found(text: str) -> None:
    assert look_up(text) is None


def test_an_entry_is_one_or_two_sentences() -> None:
    for entry in load_glossary():
        sentences = re.findall(r"[.:;]?[^.]+\.(?= |$)", entry.says)
        assert 1 <= len(sentences) <= 2, entry.word
        assert entry.says.endswith("."), entry.word


def test_every_word_in_the_glossary_is_used_somewhere() -> None:
    prose = f" {_prose()} "
    for entry in load_glossary():
        written = [" ".join(re.sub(r"[^\w]+", " ", word.casefold()).split()) for word in (entry.word, *entry.also)]
        assert any(re.search(rf" {re.escape(word)}(?:s|es)? ", prose) for word in written), entry.word


def test_no_two_entries_claim_one_word() -> None:
    written = [word.casefold() for entry in load_glossary() for word in (entry.word, *entry.also)]
    assert len(written) == len(set(written))


def test_an_entry_with_anything_else_in_it_is_refused() -> None:
    with pytest.raises(ValueError, match="picture"):
        Glossary.model_validate({"entry": [{"word": "a", "says": "b.", "picture": "c"}]})
