"""What people say: the whole corpus is heard as written down, nothing is misread, and few replies are asked back."""

from __future__ import annotations

import pytest

from tests.interview.said import CORPUS, outcome, rows_of, same

KINDS = sorted(path.stem for path in CORPUS.glob("*.toml"))
FEWEST = 300
"""Replies for each kind of question."""
MOST_ASKED_BACK = 0.02
"""Of the replies that have a reading: more than one in fifty asked back would be a foreman hard of hearing."""


def is_misread(means: str, found: str) -> bool:
    """Say whether something was taken that has to be asked back, or something else was taken or offered than was meant."""
    taken_in_silence = means.startswith("?") and not found.startswith("?")
    return taken_in_silence or (found != "?" and not same(means.lstrip("?"), found.lstrip("?")))


@pytest.mark.parametrize("kind", KINDS)
def test_no_reply_is_misread(kind: str) -> None:
    """Whatever is taken for an answer, or offered, is what the person meant; asking back is no misreading."""
    found = {(row.ref, row.reply, row.before): (row.means, outcome(row)) for row in rows_of(kind)}
    misread = {key: pair for key, pair in found.items() if is_misread(*pair)}

    assert not misread


@pytest.mark.parametrize("kind", KINDS)
def test_few_replies_are_asked_back(kind: str) -> None:
    """Of the replies that a person would understand, next to none are asked back."""
    meant = [row for row in rows_of(kind) if not row.means.startswith("?")]
    asked_back = [row.reply for row in meant if outcome(row).startswith("?")]

    assert len(asked_back) <= MOST_ASKED_BACK * len(meant), asked_back


@pytest.mark.parametrize("kind", KINDS)
def test_the_corpus_is_large_and_has_no_reply_twice(kind: str) -> None:
    """A kind of question has its hundreds of replies, each different."""
    rows = rows_of(kind)

    assert len({(row.ref, row.reply, row.before) for row in rows}) == len(rows) >= FEWEST
