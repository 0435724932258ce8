"""Exact lengths and their arithmetic; the only module that knows how many ticks there are in an inch."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

TICKS_PER_INCH = 8128
TICKS_PER_MM = 320

Tape = Literal["inches", "millimetres"]
"""Which side of the tape the person reads; it decides what a bare number means and how sizes are printed."""

DENOMINATORS = (2, 4, 8, 16, 32, 64)
"""The fractions printed on a tape or a rule."""

Toward = Literal["nearest", "down", "up"]
"""Which way printing or rounding goes when a length falls between two steps."""


@dataclass(frozen=True, order=True, slots=True)
class Length:
    """An exact length, positive or negative, and the answers it rests on.

    Two lengths are equal, and ordered, by their ticks alone: where a number came from does not change its size.

    >>> inches("2 3/8") + inches("3 1/2") == inches("5 7/8")
    True
    """

    ticks: int
    """Whole ticks: 8128 to the inch, 320 to the millimetre."""
    rests: frozenset[str] = field(default=frozenset(), compare=False)
    """Ids of the answers this number was worked out from; empty for a figure that nobody measured."""

    def __add__(self, other: Length) -> Length:
        return Length(self.ticks + other.ticks, self.rests | other.rests)

    def __sub__(self, other: Length) -> Length:
        return Length(self.ticks - other.ticks, self.rests | other.rests)

    def __neg__(self) -> Length:
        return Length(-self.ticks, self.rests)

    def __mul__(self, count: int) -> Length:
        return Length(self.ticks * count, self.rests)

    __rmul__ = __mul__

    def __floordiv__(self, count: int) -> Length:
        """Divide, rounding down to a whole tick: the one place where division rounds."""
        return Length(self.ticks // count, self.rests)

    def __abs__(self) -> Length:
        return Length(abs(self.ticks), self.rests)

    def __repr__(self) -> str:
        mark = f" on {sorted(self.rests)}" if self.rests else ""
        return f"<{exact_inches(self)} in{mark}>"

    def on(self, *ids: str) -> Length:
        """Return the same size, resting on these answers as well."""
        return Length(self.ticks, self.rests.union(ids))

    def with_rests(self, ids: Iterable[str]) -> Length:
        """Return the same size, resting on these answers as well (any iterable of ids)."""
        return Length(self.ticks, self.rests.union(ids))

    def down_to(self, step: Length) -> Length:
        """Round down to a whole number of steps (toward minus infinity)."""
        return Length(self.ticks // step.ticks * step.ticks, self.rests)

    def up_to(self, step: Length) -> Length:
        """Round up to a whole number of steps (toward plus infinity)."""
        return Length(-(-self.ticks // step.ticks) * step.ticks, self.rests)

    def near(self, step: Length) -> Length:
        """Round to the nearest whole number of steps; a tie goes up."""
        return Length((self.ticks + step.ticks // 2) // step.ticks * step.ticks, self.rests)

    def to(self, step: Length, toward: Toward) -> Length:
        """Round to a whole number of steps, `toward` nearest, down or up."""
        return {"nearest": self.near, "down": self.down_to, "up": self.up_to}[toward](step)

    @property
    def inch(self) -> Fraction:
        """The size in inches, exactly."""
        return Fraction(self.ticks, TICKS_PER_INCH)


ZERO = Length(0)
INCH = Length(TICKS_PER_INCH)
FOOT = INCH * 12
MM = Length(TICKS_PER_MM)
EIGHTH = INCH // 8
SIXTEENTH = INCH // 16
SIXTY_FOURTH = INCH // 64


def least(first: Length, *others: Length) -> Length:
    """Return the smallest, resting on everything that was compared."""
    return Length(min(first.ticks, *(o.ticks for o in others)) if others else first.ticks, _joined(first, *others))


def greatest(first: Length, *others: Length) -> Length:
    """Return the largest, resting on everything that was compared."""
    return Length(max(first.ticks, *(o.ticks for o in others)) if others else first.ticks, _joined(first, *others))


def between(low: Length, high: Length, *, part: Length, whole: Length) -> Length:
    """Interpolate on the straight line from `low` to `high`, `part` of the way along `whole`; rounds down to a tick.

    `part` outside 0..`whole` extrapolates. `whole` must not be zero. Rests on all four.
    """
    rise = (high.ticks - low.ticks) * part.ticks // whole.ticks
    return Length(low.ticks + rise, _joined(low, high, part, whole))


def _joined(*lengths: Length) -> frozenset[str]:
    return frozenset[str]().union(*(length.rests for length in lengths))


def from_inches(value: Fraction | int) -> Length:
    """Return that many inches, to the nearest tick."""
    return Length(round(value * TICKS_PER_INCH))


def from_mm(value: Fraction | int) -> Length:
    """Return that many millimetres, to the nearest tick."""
    return Length(round(value * TICKS_PER_MM))


def exact_inches(length: Length) -> str:
    """Print inches so that reading them back gives the same length: a fraction where one is exact, else a decimal.

    >>> exact_inches(inches("92 5/8")), exact_inches(from_mm(3))
    ('92 5/8', '0.11811')
    """
    value = length.inch
    return mixed(value) if value.denominator in (1, *DENOMINATORS) else decimal(value)


def mixed(value: Fraction) -> str:
    """Print inches as a whole number and a fraction in lowest terms: `187 3/4`, `-1/2`, `0`."""
    sign, value = ("-", -value) if value < 0 else ("", value)
    whole, rest = divmod(value, 1)
    if not rest:
        return f"{sign}{whole}"
    return f"{sign}{f'{whole} ' if whole else ''}{rest.numerator}/{rest.denominator}"


def decimal(value: Fraction) -> str:
    """Print a decimal with five places at most: a tick is over a ten-thousandth of an inch, so none is ever lost."""
    sign, units = ("-" if value < 0 else ""), round(abs(value) * 100_000)
    return f"{sign}{units // 100_000}.{units % 100_000:05}".rstrip("0").rstrip(".")
