"""Lengths: whole ticks, exact arithmetic, and the answers a number rests on."""

from __future__ import annotations

import doctest
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from guide.lengths import (
    INCH,
    MM,
    SHY,
    SHY_MM,
    SIXTY_FOURTH,
    ZERO,
    Length,
    Toward,
    between,
    from_mm,
    greatest,
    inches,
    least,
)
from guide.lengths import size as size_module
from tests.lengths.sizes import LONGEST, resting, steps


@given(resting, resting, st.integers(1, 9))
def test_arithmetic_is_exact_and_joins_what_numbers_rest_on(a: Length, b: Length, count: int) -> None:
    both = a.rests | b.rests
    assert ((a + b).ticks, (a + b).rests) == (a.ticks + b.ticks, both)
    assert ((a - b).ticks, (a - b).rests) == (a.ticks - b.ticks, both)
    assert a + b - b == a
    assert (a * count, (count * a).rests) == (Length(a.ticks * count), a.rests)
    assert ((-a).ticks, (-a).rests) == (-a.ticks, a.rests)
    assert abs(a).rests == a.rests
    assert least(a, b).rests == greatest(a, b).rests == both
    assert (least(a, b), greatest(a, b)) == (Length(min(a.ticks, b.ticks)), Length(max(a.ticks, b.ticks)))
    assert least(a).rests == greatest(a).rests == a.rests


@given(resting, st.integers(1, 9))
def test_division_rounds_down_to_a_whole_tick(a: Length, count: int) -> None:
    part = a // count
    assert part.rests == a.rests
    assert part * count <= a < part * count + Length(count)


@given(resting, steps, st.sampled_from(["nearest", "down", "up"]))
def test_rounding_keeps_what_a_number_rests_on(length: Length, step: Length, toward: Toward) -> None:
    assert length.to(step, toward).rests == length.rests


@given(resting, resting, st.integers(0, LONGEST), st.integers(1, LONGEST))
def test_interpolation_stays_between_its_ends_hits_both_and_joins_rests(
    low: Length, high: Length, a: int, b: int
) -> None:
    part, whole = Length(min(a, b), frozenset({"part"})), Length(max(a, b), frozenset({"whole"}))
    found = between(low, high, part=part, whole=whole)
    assert min(low, high) <= found <= max(low, high)
    assert found.rests == low.rests | high.rests | {"part", "whole"}
    assert between(low, high, part=ZERO, whole=whole) == low
    assert between(low, high, part=whole, whole=whole) == high


def test_interpolation_by_hand() -> None:
    """Worked by hand: from 91 1/4 to 91 5/8 over 96 in, at 19 1/2: 91 1/4 + 3/8 x 19.5/96."""
    found = between(inches("91 1/4"), inches("91 5/8"), part=inches("19 1/2"), whole=inches("96"))
    assert found == Length(int((Fraction("91.25") + Fraction(3, 8) * Fraction("19.5") / 96) * 8128))


def test_where_a_number_comes_from_does_not_change_its_size() -> None:
    assert Length(8, frozenset({"A.length"})) == Length(8)
    assert hash(Length(8, frozenset({"A.length"}))) == hash(Length(8))
    assert Length(8).on("A.length", "B.length").rests == {"A.length", "B.length"}
    assert Length(8).on("A.length").with_rests(["B.length"]).rests == {"A.length", "B.length"}
    assert "A.length" in repr(inches("2 3/8").on("A.length"))
    assert repr(inches("2 3/8")) == "<2 3/8 in>"


def test_sixty_fourths_and_millimetres_are_both_whole_ticks() -> None:
    """25.4 mm to the inch, exactly: the international inch, in force since 1959 (from memory, certain)."""
    assert from_mm(Fraction("25.4")) == INCH
    assert SIXTY_FOURTH * 64 == INCH
    assert MM * 254 == INCH * 10
    assert (SHY * 32, SHY_MM * 2) == (INCH, MM)


def test_the_examples_in_the_code_are_true() -> None:
    tried = doctest.testmod(size_module, extraglobs={"inches": inches})
    assert (tried.failed, tried.attempted) == (0, 2)
