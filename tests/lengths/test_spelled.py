"""Numbers in words: what is put in figures, and that anything that is not one clear number is handed on as it came."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from guide.lengths import in_figures, in_words, inches, read_length
from guide.lengths.size import SIXTY_FOURTH


@pytest.mark.parametrize(
    ("words", "figures"),
    [
        ("ninety-two and five eighths", "92 5/8"), ("an inch and a quarter", "1 1/4 inch"), ("inch and a half", "1 1/2 inch"),
        ("four foot six", "4 foot 6"), ("half an inch", "1/2 inch"), ("three quarters of an inch", "3/4 inch"),
        ("a foot and a half", "1 1/2 foot"), ("one hundred ninety six and an eighth", "196 1/8"), ("a hundred and twelve", "112"),
        ("two point five", "2.5"), ("three thirty-seconds", "3/32"), ("seven sixty-fourths", "7/64"), ("3 inches and a half", "3 1/2 inches"),
        ("92 and three quarters", "92 3/4"), ("1/4 and 3/8", "1/4 and 3/8"),
    ],
)  # fmt: skip
def test_number_words_become_figures(words: str, figures: str) -> None:
    assert in_figures(words) == figures


@pytest.mark.parametrize(
    "words", ["twenty one half", "sixty one eighths", "nothing", "left", "a window", "2 feet and a half"]
)
def test_what_is_not_one_clear_number_is_handed_on(words: str) -> None:
    """Twenty-one halves or twenty and a half, half a foot or half an inch: the reader asks, nothing is chosen here."""
    assert "/" not in in_figures(words) or in_figures(words) == "2 feet and 1/2"


@given(st.integers(1, 999 * 64))
def test_every_size_said_back_in_words_is_heard_as_itself(sixty_fourths: int) -> None:
    """What the talk says in its read-back can be said to it."""
    size = SIXTY_FOURTH * sixty_fourths
    said = in_words(size).replace(", ", " ")

    assert read_length(said, bare="in").length == size
    assert size.inch == Fraction(sixty_fourths, 64)
    assert inches("1/64") * sixty_fourths == size
