"""A walk along straight courses: whether it comes back to its start, and how the miss is shared out by the compass rule.

Pure plane geometry in exact fractions, in whatever unit the lengths are given. It knows nothing of walls.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate, pairwise
from math import isqrt

Vector = tuple[Fraction, Fraction]

_PLACES = 16
_FINE = 10**12
"""Square roots are taken to this part of a unit: far below any tape, and the same on every machine."""


@dataclass(frozen=True, slots=True)
class Course:
    """One straight course: how long it is, and the unit vector it runs along."""

    length: Fraction
    heading: Vector

    @property
    def leg(self) -> Vector:
        """How far it goes along each axis: in surveying its latitude and departure, when the axes are north and east."""
        return self.length * self.heading[0], self.length * self.heading[1]


@dataclass(frozen=True)
class Traverse:
    """A closed walk: it ought to end where it began."""

    courses: tuple[Course, ...]

    @property
    def error(self) -> Vector:
        """From the start to where the walk really ends; (0, 0) when it closes."""
        return _sum([course.leg for course in self.courses])

    @property
    def perimeter(self) -> Fraction:
        """The way walked."""
        return sum((course.length for course in self.courses), Fraction(0))

    def adjusted(self) -> tuple[Vector, ...]:
        """Return the legs after the compass rule: each course takes its share of the error by its length.

        The adjusted legs sum to nothing exactly. A walk of no length cannot be shared out: ZeroDivisionError.
        """
        x, y = self.error
        around = self.perimeter
        return tuple((c.leg[0] - x * c.length / around, c.leg[1] - y * c.length / around) for c in self.courses)

    def adjusted_lengths(self) -> tuple[Fraction, ...]:
        """Return the lengths that the adjusted legs have."""
        return tuple(size(leg) for leg in self.adjusted())

    def area(self) -> Fraction:
        """Return the area inside the adjusted walk, never negative: half the sum of the cross products of its corners."""
        corners = list(accumulate(self.adjusted(), _add, initial=(Fraction(0), Fraction(0))))
        return abs(sum((cross(a, b) for a, b in pairwise(corners)), Fraction(0))) / 2


def walk(lengths: Sequence[Fraction], turns: Sequence[Vector]) -> Traverse:
    """Return the walk along these lengths; `turns[i]` is the cosine and sine of the turn to the right after course i.

    The first course runs along the first axis, and right is toward the second. A turn after the last course is not
    needed. Raises ValueError when there are too few turns.
    """
    if len(turns) < len(lengths) - 1:
        raise ValueError(f"{len(lengths)} courses need {len(lengths) - 1} turns between them, not {len(turns)}")
    heading = (Fraction(1), Fraction(0))
    courses = []
    for index, length in enumerate(lengths):
        courses.append(Course(length, heading))
        if index < len(turns):
            heading = turned(heading, turns[index])
    return Traverse(tuple(courses))


def turned(heading: Vector, turn: Vector) -> Vector:
    """Return a heading after a turn to the right, given by its cosine and sine; kept as fine as square roots are."""
    (x, y), (cosine, sine) = heading, turn
    return _fine(x * cosine - y * sine), _fine(x * sine + y * cosine)


def sine_of(cosine: Fraction) -> Fraction:
    """Return the sine of an angle of 0 to 180 degrees from its cosine; ValueError beyond -1..1."""
    if abs(cosine) > 1:
        raise ValueError(f"no angle has the cosine {cosine}")
    return _root(1 - cosine * cosine)


def degrees_of(turn: Vector) -> Fraction:
    """Return a turn from its cosine and sine in degrees, above -180 up to 180, below the truth by less than 1/300.

    Doubled again and again, a turn shows its binary places one by one: whether it passes the straight line.
    """
    cosine, sine = turn[0], abs(turn[1])
    found, place = Fraction(0), Fraction(180)
    for _ in range(_PLACES):
        place /= 2
        cosine, sine = _fine(cosine * cosine - sine * sine), _fine(2 * cosine * sine)
        if sine < 0 or (sine == 0 and cosine < 0):
            found += place
            cosine, sine = -cosine, -sine
    return -found if turn[1] < 0 else found


def angle_across(one: Fraction, other: Fraction, across: Fraction) -> Fraction:
    """Return the cosine of the angle between two sides of a triangle from the third, by the law of cosines.

    Beyond -1..1 when no triangle has these sides.
    """
    return (one * one + other * other - across * across) / (2 * one * other)


def size(vector: Vector) -> Fraction:
    """Return how long a vector is."""
    return _root(vector[0] * vector[0] + vector[1] * vector[1])


def cross(a: Vector, b: Vector) -> Fraction:
    """Return the cross product: positive when b lies to the right of a, as `walk` turns."""
    return a[0] * b[1] - a[1] * b[0]


def _add(a: Vector, b: Vector) -> Vector:
    return a[0] + b[0], a[1] + b[1]


def _sum(vectors: Sequence[Vector]) -> Vector:
    return sum((v[0] for v in vectors), Fraction(0)), sum((v[1] for v in vectors), Fraction(0))


def _fine(value: Fraction) -> Fraction:
    """Round to where square roots are taken: else the fractions of a long walk would grow with every turn."""
    return Fraction(round(value * _FINE), _FINE)


def _root(square: Fraction) -> Fraction:
    return Fraction(isqrt(square.numerator * _FINE * _FINE // square.denominator), _FINE)
