"""What wallbrief comes to about closed walks and square corners."""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from functools import lru_cache
from math import acos, cos, degrees, radians, sin

from guide.survey.traverse import Course, Traverse, angle_across, size

BEARING = re.compile(r"([NS]) (\d+)°(?:(\d+)')?(?:(\d+)\")? ([EW])")
TRAVERSES: dict[str, str] = {
    "six": "N 5°30' E 495.85, N 46°02' E 850.62, S 67°38' E 855.45, S 12°25' E 1020.87, S 83°44' W 1117.26, N 55°09' W 660.08",
    "four": "S 68°05'35\" W 472.68, N 19°46'00\" W 216.13, N 45°55'20\" E 276.52, S 54°59'15\" E 382.24",
    "table": "N 76° E 80.40, S 36° E 46.30, S 61° W 72.80, N 38° W 68.00",
    "navy": "N 15°30' E 725",
}
"""The courses of each worked traverse: bearing and length, as printed."""


def course(text: str) -> Course:
    """Return a course from a bearing and a length, its first axis north and its second east."""
    bearing, _, length = text.strip().rpartition(" ")
    found = BEARING.fullmatch(bearing)
    assert found
    north, whole, minutes, seconds, east = found.groups()
    angle = radians(int(whole) + int(minutes or 0) / 60 + int(seconds or 0) / 3600)
    x, y = Fraction(cos(angle)), Fraction(sin(angle))
    return Course(Fraction(length), (x if north == "N" else -x, y if east == "E" else -y))


@lru_cache(maxsize=8)
def traverse(name: str) -> Traverse:
    """Return a worked traverse."""
    return Traverse(tuple(course(each) for each in TRAVERSES[name].split(",")))


def perimeter(name: str) -> float:
    """Return the way walked."""
    return float(traverse(name).perimeter)


def error(name: str, axis: int) -> float:
    """Return by how much the walk misses its start along an axis, 0 north and 1 east."""
    return float(traverse(name).error[axis])


def misses(name: str) -> float:
    """Return by how much it misses in all."""
    return float(size(traverse(name).error))


def leg(name: str, number: int, axis: int) -> float:
    """Return a course's latitude (0) or departure (1)."""
    return float(traverse(name).courses[number].leg[axis])


def adjusted(name: str, number: int, axis: int) -> float:
    """Return the same after the compass rule."""
    return float(traverse(name).adjusted()[number][axis])


def adjusted_length(name: str, number: int) -> float:
    """Return the length that an adjusted course has."""
    return float(traverse(name).adjusted_lengths()[number])


def correction(name: str, number: int, axis: int) -> float:
    """Return the size of a course's correction."""
    return abs(adjusted(name, number, axis) - leg(name, number, axis))


def area(name: str) -> float:
    """Return the area inside the adjusted walk."""
    return float(traverse(name).area())


def corner(one: float, other: float, across: float) -> float:
    """Return the angle in degrees of a corner with these sides and this line across it."""
    return degrees(acos(angle_across(Fraction(one), Fraction(other), Fraction(across))))


OURS: dict[str, Callable[..., float | str]] = {
    each.__name__: each
    for each in (
        perimeter, error, misses, leg, adjusted, adjusted_length, correction, area, corner,
    )
}  # fmt: skip
