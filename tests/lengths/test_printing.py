"""What is printed reads back to the same size; nothing is rounded twice on the way to paper."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from guide.lengths import (
    EIGHTH,
    MM,
    SIXTEENTH,
    SIXTY_FOURTH,
    ZERO,
    Bare,
    Length,
    Tape,
    Toward,
    as_written,
    count_in_words,
    exact_inches,
    from_mm,
    in_feet,
    in_inches,
    in_mm,
    in_words,
    inches,
    show,
    with_unit,
)
from tests.lengths.sizes import LONGEST, any_length, bares, steps, tape


@given(any_length, bares)
def test_exact_inches_reads_back_to_the_same_tick(length: Length, bare: Bare) -> None:
    assert tape(f"{exact_inches(length)} in", bare) == length
    assert tape(exact_inches(length), "in") == length


@given(any_length, st.sampled_from(["inches", "millimetres"]), bares)
def test_what_is_written_to_a_file_reads_back_to_the_same_tick_whatever_the_tape(
    length: Length, side: Tape, bare: Bare
) -> None:
    assert tape(as_written(length, side), bare) == length


sixty_fourths = st.integers(-LONGEST // SIXTY_FOURTH.ticks, LONGEST // SIXTY_FOURTH.ticks).map(
    lambda n: SIXTY_FOURTH * n
)


@given(sixty_fourths)
def test_printed_inches_and_feet_read_back_to_the_same_sixty_fourth(length: Length) -> None:
    assert tape(in_inches(length, SIXTY_FOURTH)) == length
    assert tape(in_feet(length, SIXTY_FOURTH)) == length
    assert tape(with_unit(length, "inches", SIXTY_FOURTH), "mm") == length


@given(st.integers(-3_000_000, 3_000_000))
def test_printed_millimetres_read_back_to_the_same_millimetre(count: int) -> None:
    assert tape(in_mm(from_mm(count)), "mm") == from_mm(count)
    assert as_written(from_mm(count), "millimetres") == f"{count} mm"


@pytest.mark.parametrize(
    ("length", "side", "text"),
    [
        (inches("92 5/8"), "inches", "92 5/8 in"),
        (inches("92 5/8"), "millimetres", "92 5/8 in"),
        (from_mm(3770), "inches", "3770 mm"),
        (from_mm(3770), "millimetres", "3770 mm"),
        (from_mm(Fraction(4673, 2)), "millimetres", "2336.5 mm"),
        (Length(1), "inches", "0.00012 in"),
        (Length(-1), "inches", "-0.00012 in"),
        (ZERO, "inches", "0 in"),
    ],
)
def test_a_file_keeps_the_unit_in_which_a_size_is_exact(length: Length, side: Tape, text: str) -> None:
    assert as_written(length, side) == text


@pytest.mark.parametrize(
    ("text", "printed_inches", "printed_feet"),
    [
        ("0", "0", '0"'),
        ("1/16", "1/16", '1/16"'),
        ("7 3/4", "7 3/4", '7 3/4"'),
        ("12", "12", "1'-0\""),
        ("187 3/4", "187 3/4", "15'-7 3/4\""),
        ("-1/2", "-1/2", '-1/2"'),
        ("-18 1/4", "-18 1/4", "-1'-6 1/4\""),
    ],
)
def test_sizes_print_as_a_tape_shows_them(text: str, printed_inches: str, printed_feet: str) -> None:
    assert in_inches(inches(text)) == printed_inches
    assert in_feet(inches(text)) == printed_feet
    assert with_unit(inches(text)) == f"{printed_inches} in"


@given(any_length, steps)
def test_rounding_keeps_its_direction_and_stays_within_one_step(length: Length, step: Length) -> None:
    down, up, near = length.down_to(step), length.up_to(step), length.near(step)
    assert down <= length <= up
    assert up - down == (ZERO if length.ticks % step.ticks == 0 else step)
    assert near in (down, up)
    assert abs(near - length) * 2 <= step
    for rounded in (down, up, near):
        assert rounded.ticks % step.ticks == 0


@given(any_length, steps)
def test_a_tie_goes_up(length: Length, step: Length) -> None:
    middle = length.down_to(step) + step // 2
    if step.ticks % 2 == 0:
        assert middle.near(step) == length.down_to(step) + step


@given(any_length, st.sampled_from(["nearest", "down", "up"]))
def test_printing_rounds_once_in_the_direction_asked_for(length: Length, toward: Toward) -> None:
    assert tape(show(length, "inches", SIXTEENTH, toward)) == length.to(SIXTEENTH, toward)
    assert tape(in_feet(length, EIGHTH, toward)) == length.to(EIGHTH, toward)
    assert tape(show(length, "millimetres", SIXTEENTH, toward), "mm") == length.to(MM, toward)


@pytest.mark.parametrize(
    ("length", "side", "words"),
    [
        ("184 1/2", "inches", "fifteen feet, four and a half inches"),
        ("0", "inches", "no inches"),
        ("1", "inches", "one inch"),
        ("1/2", "inches", "half an inch"),
        ("1/8", "inches", "an eighth of an inch"),
        ("3/16", "inches", "three sixteenths of an inch"),
        ("12", "inches", "one foot"),
        ("12 1/4", "inches", "one foot, a quarter of an inch"),
        ("-2 3/4", "inches", "minus two and three quarters inches"),
        ("1200", "inches", "one hundred feet"),
        ("3770 mm", "millimetres", "three metres, seven hundred and seventy millimetres"),
        ("1 mm", "millimetres", "one millimetre"),
        ("1 m", "millimetres", "one metre"),
        ("-1 m", "millimetres", "minus one metre"),
        ("2001 mm", "millimetres", "two metres, one millimetre"),
    ],
)
def test_a_size_is_said_in_words(length: str, side: Tape, words: str) -> None:
    assert in_words(inches(length), side) == words


def test_no_two_sixty_fourths_up_to_a_hundred_feet_are_said_alike() -> None:
    said = {in_words(SIXTY_FOURTH * count) for count in range(100 * 12 * 64 + 1)}
    assert len(said) == 100 * 12 * 64 + 1


def test_no_two_millimetres_up_to_thirty_metres_are_said_alike() -> None:
    assert len({in_words(MM * count, "millimetres") for count in range(30_001)}) == 30_001


def test_a_size_that_rounds_to_nothing_is_not_said_to_be_below_nothing() -> None:
    assert in_words(Length(-1)) == "no inches"
    assert in_words(Length(-1), "millimetres") == "no millimetres"


@pytest.mark.parametrize(
    ("number", "words"),
    [
        (0, "no"),
        (13, "thirteen"),
        (21, "twenty-one"),
        (40, "forty"),
        (101, "one hundred and one"),
        (1000, "one thousand"),
        (10_000, "ten thousand"),
        (999_999, "nine hundred and ninety-nine thousand nine hundred and ninety-nine"),
    ],
)
def test_a_count_is_said_in_words(number: int, words: str) -> None:
    assert count_in_words(number) == words
