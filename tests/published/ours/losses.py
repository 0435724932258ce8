"""What wallbrief comes to about heat that goes out below the ground, in the units of the source."""

from __future__ import annotations

from collections.abc import Callable

from guide.checks.losses import below_grade_u, yearly_heat
from guide.reference.materials import metres, us_r

US_R = us_r(1.0)
"""h sq ft F / Btu in a m²K/W."""
BTU_PER_KWH = 3412.142
W_PER_BTU_PER_F = 1 / 3.412142 * 1.8
"""W/K in a Btu/h F."""


def below_grade(depth: float, added: float) -> float:
    """Return the average U from the ground down to a depth in metres, W/m²K."""
    return below_grade_u(0, depth, added)


def below_grade_foot(top: float, added: float) -> float:
    """Return the U of one foot of depth from `top` feet down, for an added R, in Btu/h sq ft F."""
    return below_grade_u(metres(top * 12), metres(top * 12 + 12), added / US_R) / US_R


def wall_per_foot(added: list[float]) -> float:
    """Return what goes out through a foot of wall, foot by foot of depth with these added R's, in Btu/h ft F."""
    return sum(below_grade_foot(top, held) for top, held in enumerate(added))


def yearly_mbtu(loss: float, degree_days: float) -> float:
    """Return the MBtu of a year for a loss in Btu/h F over degree days in F days."""
    return yearly_heat(loss * W_PER_BTU_PER_F, degree_days / 1.8) * BTU_PER_KWH / 1e6


OURS: dict[str, Callable[..., float | str]] = {
    each.__name__: each for each in (below_grade, below_grade_foot, wall_per_foot, yearly_mbtu)
}
