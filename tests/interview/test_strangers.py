"""What people say who never saw the reader: none of it is misread, and three of four replies are taken at once."""

from __future__ import annotations

import tomllib
from pathlib import Path

from tests.interview.said import Row, outcome, same

ROWS = [Row(*row) for row in tomllib.loads((Path(__file__).parent / "strangers.toml").read_text("utf-8"))["replies"]]
TAKEN = 0.75
"""Of the replies; the others are asked back, most of them with what was meant offered."""


def test_no_reply_of_a_stranger_is_misread_and_three_of_four_are_taken() -> None:
    """What is taken is what was meant, sure or as a guess; the rest is asked back."""
    found = [(row, outcome(row)) for row in ROWS]
    taken = [(row, each) for row, each in found if not each.startswith("?")]
    misread = [(row.ref, row.reply, each) for row, each in taken if not same(row.means.lstrip("~"), each.lstrip("~"))]

    assert not misread
    assert len(taken) >= TAKEN * len(found)
