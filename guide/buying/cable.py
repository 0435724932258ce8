"""Cable from box to box as it has to run: through the studs at one height, up or down to each box, over doors, round corners.

It owns one promise: no new outlet or switch is passed by. The way to the electrical panel is not counted: nobody was asked
where that is. Old boxes keep the cable they have.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from guide.layout.parts import Kind, Layout, WallLayout
from guide.layout.receptacles import runs_round
from guide.lengths import ZERO, Length, greatest
from guide.reference.figures import load_figures
from guide.survey.things import Opening

WIRED = (("holds", "outlet"), ("holds", "switch"))
"""Boxes that one circuit runs through; a light or a data box has its own way."""


@dataclass(frozen=True, slots=True)
class _Stop:
    """A box on the way."""

    at: Length
    """Along the middle of the studs, from the left end of the first wall's concrete, round all corners."""
    ends: Length
    """What its end of a cable takes: the way up or down, and what hangs free in the box."""


@dataclass(frozen=True, slots=True)
class _Detour:
    """An opening that the cable has to climb over."""

    at: Length
    more: Length


def cable_run(layout: Layout) -> Length:
    """Return how long the cable is that joins the new outlets and switches, walls that meet in corners as one run.

    Round a closed room it leaves out the longest of the ways between two boxes. Nothing for a box that stands alone.
    """
    total = ZERO
    for walls, ring in runs_round(layout):
        ways = _ways(walls, ring)
        total = total + sum(ways, ZERO) - (greatest(*ways) if ring and ways else ZERO)
    return total


def _ways(walls: Sequence[WallLayout], ring: bool) -> list[Length]:
    """Return the cable between each box and the next, from the left; the last way of a ring comes round to the first box."""
    stops: list[_Stop] = []
    detours: list[_Detour] = []
    start = ZERO
    for wall, after in zip(walls, [*walls[1:], walls[0]], strict=True):
        stops += [_Stop(start + at, ends) for at, ends in sorted(_boxes(wall))]
        detours += [_Detour(start + at, more) for at, more in _climbs(wall)]
        # of a corner at an angle too: that is off by a few inches, and the spare is more
        turn = _middle(wall) + _middle(after)
        start = start + wall.wall.length + (turn if wall.right.what == "outside corner" else -turn)
    if len(stops) < 2:
        return []
    if ring:
        stops.append(_Stop(stops[0].at + start, stops[0].ends))
        detours += [_Detour(each.at + start, each.more) for each in detours]
    return [
        right.at - left.at + left.ends + right.ends + sum((d.more for d in detours if left.at < d.at < right.at), ZERO)
        for left, right in pairwise(stops)
    ]


def _middle(wall: WallLayout) -> Length:
    return wall.offsets.back + wall.offsets.deep // 2


def _boxes(wall: WallLayout) -> list[tuple[Length, Length]]:
    """Return where each new outlet or switch is along the wall, and what its end of a cable takes."""
    figures = load_figures()
    found = []
    for part in wall.of(Kind.OUTLET):
        if part.why.key != "part.box_existing" and any(held in part.why.values for held in WIRED):
            middle = (part.box.z0.off + part.box.z1.off) // 2
            found.append((part.centre, abs(figures.cable_height - middle) + figures.cable_free))
    return found


def _climbs(wall: WallLayout) -> list[tuple[Length, Length]]:
    """Return the middle of every opening that is in the cable's way, and what the way up, over it and down takes more."""
    found = []
    for opening in wall.wall.openings:
        middle = (opening.left + opening.right) // 2
        if (more := (_top(wall, opening, middle) - load_figures().cable_height) * 2) > ZERO:
            found.append((middle, more))
    return found


def _top(wall: WallLayout, opening: Opening, middle: Length) -> Length:
    """Return how high a cable has to climb at an opening: over its header, or to the joists; 0 where it passes under a sill."""
    figures = load_figures()
    if opening.hangs:
        return ZERO
    if opening.kind == "window" and (opening.sill or ZERO) >= figures.cable_height + figures.stud_thick * 2:
        return ZERO
    over = [part.box.z1.at(wall.wall, middle) for part in wall.of(Kind.HEADER) if part.box.x0 < middle < part.box.x1]
    return greatest(*over) if over else wall.wall.height.at(middle)
