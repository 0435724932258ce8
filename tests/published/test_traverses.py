"""Closing a walk by the compass rule (Bowditch) against traverses worked in surveying texts.

A text gives bearings and lengths; the bearings are turned into headings here, since wallbrief itself never reads one.
"""

from __future__ import annotations

import re
from fractions import Fraction
from math import cos, radians, sin

import pytest

from guide.survey.traverse import Course, Traverse, size

BEARING = re.compile(r"([NS]) (\d+)°(?:(\d+)')?(?:(\d+)\")? ([EW])")


def course(bearing: str, length: str) -> Course:
    """Return a course from a bearing such as `N 5°30' E`, its first axis north and its second east."""
    found = BEARING.fullmatch(bearing)
    assert found
    north, degrees, minutes, seconds, east = found.groups()
    angle = radians(int(degrees) + int(minutes or 0) / 60 + int(seconds or 0) / 3600)
    x, y = Fraction(cos(angle)), Fraction(sin(angle))
    return Course(Fraction(length), (x if north == "N" else -x, y if east == "E" else -y))


def rounded(values: list[Fraction] | tuple[Fraction, ...], places: int) -> list[float]:
    return [round(float(value), places) for value in values]


SIX = Traverse(
    (
        course("N 5°30' E", "495.85"),
        course("N 46°02' E", "850.62"),
        course("S 67°38' E", "855.45"),
        course("S 12°25' E", "1020.87"),
        course("S 83°44' W", "1117.26"),
        course("N 55°09' W", "660.08"),
    )
)


def test_six_courses_close_as_the_published_example_does() -> None:
    """A worked compass-rule traverse of six courses, published as scribd.com/doc/279716815 (seen); every figure it prints.

    Its lengths are in no named unit. The last digit printed is the tolerance: the example was worked by machine.
    """
    x, y = SIX.error

    assert float(SIX.perimeter) == 5000.13
    assert rounded((x, y), 4) == [16.8171, 18.0737]
    assert round(float(size(SIX.error)), 4) == 24.6876
    assert rounded([leg[0] for leg in SIX.adjusted()], 4) == [
        491.8995, 587.6733, -328.4036, -1000.4252, -125.7134, 374.9694,
    ]  # fmt: skip
    assert rounded([leg[1] for leg in SIX.adjusted()], 4) == [
        45.7328, 609.1538, 788.0003, 215.8168, -1114.6225, -544.0812,
    ]  # fmt: skip
    assert rounded(SIX.adjusted_lengths(), 4) == [494.0208, 846.4208, 853.6940, 1023.4390, 1121.6894, 660.7771]
    assert round(float(SIX.area()), 4) == 1_715_250.0494


def test_four_courses_give_the_latitudes_and_departures_of_an_open_text() -> None:
    """J. Mahun, open surveying text, traverse computations, chapter I (seen), in feet: rows and sums to a thousandth.

    The text sums rounded rows (+0.083, +0.075); ours are the sums of unrounded ones, so they may differ by a thousandth.
    """
    four = Traverse(
        (
            course("S 68°05'35\" W", "472.68"),
            course("N 19°46'00\" W", "216.13"),
            course("N 45°55'20\" E", "276.52"),
            course("S 54°59'15\" E", "382.24"),
        )
    )

    assert [c.leg[0] for c in four.courses] == pytest.approx([-176.357, 203.395, 192.357, -219.312], abs=0.0006)
    assert [c.leg[1] for c in four.courses] == pytest.approx([-438.548, -73.093, 198.651, 313.065], abs=0.0006)
    assert [float(part) for part in four.error] == pytest.approx([0.083, 0.075], abs=0.001)
    assert float(four.perimeter) == 1347.57


def test_corrections_are_shared_by_length_as_in_a_published_table() -> None:
    """scribd.com/document/493615208 (seen): four corrections in each axis, to four places; the printed sums (.285, -.311) are rounded.

    The corrections printed come from the rounded sum .285, ours from .2836: a ratio of 1.005 is allowed.
    """
    four = Traverse(
        (
            course("N 76° E", "80.40"),
            course("S 36° E", "46.30"),
            course("S 61° W", "72.80"),
            course("N 38° W", "68.00"),
        )
    )
    pairs = list(zip(four.adjusted(), four.courses, strict=True))

    assert float(four.perimeter) == 267.5
    assert [float(part) for part in four.error] == pytest.approx([0.2836, -0.3111], abs=0.0001)
    assert [float(c.leg[0] - leg[0]) for leg, c in pairs] == pytest.approx([0.0857, 0.0493, 0.0776, 0.0724], rel=0.006)
    assert [float(leg[1] - c.leg[1]) for leg, c in pairs] == pytest.approx([0.0935, 0.0538, 0.0846, 0.0791], rel=0.006)


def test_a_single_course_agrees_with_the_traverse_tables_of_navigators() -> None:
    """725 ft at N 15°30' E: 674.50 + 24.09 = 698.59 by the US Navy training manual's traverse tables
    (Engineering Aid 14070, “Adjusting bearings and distances”, seen), which are read to whole degrees and shared between."""
    assert float(course("N 15°30' E", "725").leg[0]) == pytest.approx(698.59, rel=0.0006)
