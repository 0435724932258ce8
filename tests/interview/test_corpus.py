"""What people say: the whole corpus is heard as written down, nothing is misread, and few replies are asked back."""

from __future__ import annotations

from collections import Counter

import pytest

from tests.interview.people import BOOK
from tests.interview.said import CORPUS, outcome, rows_of, same

KINDS = sorted(path.stem for path in CORPUS.glob("*.toml"))
FEWEST = 300
"""Replies for each kind of question."""
FEWEST_OF_ONE = 6
"""Replies to each question, the newest as well."""
MOST_THIN = 0.1
"""Of the questions: more than one in ten with fewer replies than that, and what is new is not looked after."""
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


def test_every_kind_of_question_has_its_hundreds_and_every_question_some() -> None:
    """Counted by what a question takes, and by question: whatever is asked has replies written down for it. `-s` prints the counts."""
    by_question = Counter(row.ref for kind in KINDS for row in rows_of(kind))
    by_kind = Counter(dict.fromkeys(sorted({each.kind for each in BOOK.by_ref.values()}), 0))
    for ref, question in BOOK.by_ref.items():
        by_kind[question.kind] += by_question[ref]
    print(*(f"{count} replies to {kind}" for kind, count in by_kind.items()), sep="\n")

    assert set(by_question) <= set(BOOK.by_ref)
    assert min(by_kind.values()) >= FEWEST, by_kind
    thin = [ref for ref in BOOK.by_ref if by_question[ref] < FEWEST_OF_ONE]
    assert len(thin) <= MOST_THIN * len(BOOK.by_ref), thin
