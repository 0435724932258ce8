"""How long a step takes on a job, and what has to pass after it: the data's minutes times what is there to be done.

Hours are trade habit, no measure of anybody; guide.order.evenings puts the person's own in their place.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from math import ceil

from guide.book.conditions import Fact, holds
from guide.layout.openings import off_the_face
from guide.layout.parts import Kind, Layout, WallLayout
from guide.lengths import ZERO, inches
from guide.order.facts import open_blocks
from guide.reference.steps import Scale, StepText, Wait

Amounts = Mapping[Scale, Fraction]

ROUND = 5
"""Minutes to which a time is rounded up."""

WALL_OF_THE_HOURS = "16 ft"
"""The length of wall that times given by length are for."""


def amounts(layout: Layout, wall: WallLayout | None) -> Amounts:
    """Return how much there is of everything that times are counted by, on a wall or, without one, in the whole job."""
    walls = layout.walls if wall is None else (wall,)
    return {
        "job": Fraction(1),
        "length": sum((each.wall.length.inch / inches(WALL_OF_THE_HOURS).inch for each in walls), Fraction(0)),
        "stud": _count(walls, Kind.STUD, Kind.KING),
        "opening": Fraction(sum(len(each.wall.openings) for each in walls)),
        "pipe box": Fraction(sum(len(each.chases) for each in walls)),
        "joist block": _count(walls, Kind.JOIST_BLOCK),
        "window buck": Fraction(sum(_lined(each) for each in walls)),
        "rim bay": _count(walls, Kind.RIM),
        "fireblock": _count(walls, Kind.FIREBLOCK, Kind.UPPER_BLOCK),
        "open fireblock": Fraction(sum(len(open_blocks(each)) for each in walls)),
        "framed door": Fraction(sum(_worked(each) for each in walls)),
    }


def minutes(text: StepText, amount: Amounts) -> tuple[int, int]:
    """Return the minutes of a step, alone and as two, rounded up to 5; never under 5."""
    times = amount[text.time.per]
    alone, two = (max(ROUND, ceil(each * times / ROUND) * ROUND) for each in (text.time.alone, text.time.two))
    return alone, two


def wait_after(text: StepText, facts: Mapping[str, Fact]) -> tuple[Wait, ...]:
    """Return the waits of a step that apply here."""
    return tuple(wait for wait in text.wait if holds(wait.when, facts.__getitem__))


def in_hours(minutes: int) -> str:
    """Return minutes as they are said: `45 min`, `2 h`, `1 h 30 min`."""
    hours, rest = divmod(minutes, 60)
    return " ".join(
        part for part in (f"{hours} h" if hours else "", f"{rest} min" if rest or not hours else "") if part
    )


def _count(walls: tuple[WallLayout, ...], *kinds: Kind) -> Fraction:
    return Fraction(sum(len(wall.of(*kinds)) for wall in walls))


def _lined(wall: WallLayout) -> int:
    """Count the windows that get a buck; a board wider than any that is sold lies beside its like on the same side."""
    return len({dict(part.why.values)["what"] for part in wall.of(Kind.BUCK)})


def _worked(wall: WallLayout) -> int:
    """Count the standing door frames whose jamb does not meet the finished face."""
    face = wall.offsets.drywall
    return sum(o.jamb is not None and off_the_face(o, face) != ZERO for o in wall.wall.openings)
