"""Joints and gaps: what can foam, tape, adhesive, gasket and sealant are counted from, measured on the parts themselves.

A joint between two pieces of foam is where their edges share a line; what is left of the edges is a gap round something,
or an end of the wall. Volumes and runs go through pint in fractions, so that a cubic inch of gap is never taken for a
foot of seam, and nothing is rounded before whole packs are counted.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from itertools import combinations, pairwise
from typing import Any

from guide.layout.parts import Datum, Kind, Part, WallLayout, overlap
from guide.lengths import ZERO, Length, greatest, least
from guide.reference.figures import Figures, load_figures
from guide.reference.units import units

Runs = Mapping[str, Any]
"""What a wall takes, by the name of what is bought for it, each with its unit."""

BESIDE_A_BAY = (Kind.STUD, Kind.KING, Kind.TRIMMER)


def runs_of(wall: WallLayout, foam_thick: Length) -> Runs:
    """Return what a wall takes of everything that is sold by its yield. Beads run 1 in from the edge, and down the middle."""
    figures, foam = load_figures(), wall.of(Kind.FOAM)
    wide = {part.id: part.box.x1 - part.box.x0 for part in foam}
    floor = _sum(wide[part.id] for part in foam if part.box.z0.off <= figures.foam_floor_gap)
    upright, level = _joints(foam)
    ends = _edge(foam, "left") + _edge(foam, "right")
    rims = _sum(_rims(foam, wall.of(Kind.FIREBLOCK))) - upright * 2
    under, over = _sum(wide.values()) - floor - level, _sum(wide.values()) - level
    deep = figures.can_deep
    round_rim = _sum((part.along + part.cut) * 2 for part in wall.of(Kind.RIM))
    buck = (_volume(part.cut, figures.window_return_foam, _in_concrete(part)) for part in wall.of(Kind.BUCK))
    gaps = (
        _volume(floor, figures.foam_floor_gap, deep)
        + _volume(rims + under + over, figures.foam_cut_gap, deep)
        + _volume(round_rim, figures.rim_gap, deep)
        + _volume(upright + level + ends // 2, figures.foam_seam, foam_thick)
        + sum(buck, start=_volume(ZERO, ZERO, ZERO))
    )
    closing = _sum(part.cut for part in wall.of(Kind.CAP, Kind.LEDGE, Kind.FIREBLOCK, Kind.UPPER_BLOCK))
    return {
        "adhesive": _run(
            _sum(_bead(part, figures) for part in foam) + _sum(part.cut * 2 for part in wall.of(Kind.RETURN))
        ),
        "can_foam": gaps,
        "seam_tape": _run(upright + level + _taped_corners(wall, foam)),
        "gasket": _run(_sum(part.cut for part in wall.of(Kind.BOTTOM_PLATE))),
        "sealant": _run(closing * 2),
    }


def _in_concrete(part: Part) -> Length:
    """Return how much of a board's width lies in the hole of the concrete, where a joint runs along it."""
    return greatest(ZERO, least(ZERO, part.box.y1) - part.box.y0)


def _run(length: Length) -> Any:
    return length.inch * units().inch


def _volume(long: Length, wide: Length, deep: Length) -> Any:
    return _run(long) * _run(wide) * _run(deep)


def _joints(foam: Sequence[Part]) -> tuple[Length, Length]:
    """Return how long the upright and the level joints between pieces are in all."""
    upright = level = ZERO
    for one, other in combinations(foam, 2):
        a, b = one.box, other.box
        if a.x0 == b.x1 or b.x0 == a.x1:
            upright += greatest(ZERO, least(a.z1.off, b.z1.off) - greatest(a.z0.off, b.z0.off))
        elif a.z0.off == b.z1.off or b.z0.off == a.z1.off:
            level += greatest(ZERO, least(a.x1, b.x1) - greatest(a.x0, b.x0))
    return upright, level


def _reach(foam: Sequence[Part]) -> tuple[Length, Length]:
    """Return where the foam of a wall begins and where it ends."""
    return least(*(part.box.x0 for part in foam)), greatest(*(part.box.x1 for part in foam))


def _edge(foam: Sequence[Part], side: str) -> Length:
    """Return how tall the foam's edge at one end of the wall is."""
    if not foam:
        return ZERO
    x0, x1 = _reach(foam)
    return _sum(part.cut for part in foam if (part.box.x0 == x0 if side == "left" else part.box.x1 == x1))


def _rims(foam: Sequence[Part], blocks: Sequence[Part]) -> Iterable[Length]:
    """Yield the upright edges between the ends of the wall, joints included, but not those that a fireblock stands at.

    A fireblock that goes through to the concrete has a bead of sealant of its own at both of its faces.
    """
    if not foam:
        return
    x0, x1 = _reach(foam)
    for part in foam:
        through = [block.box for block in blocks if block.box.y0 < part.box.y1]
        if part.box.x0 > x0 and not any(block.x1 == part.box.x0 for block in through):
            yield part.cut
        if part.box.x1 < x1 and not any(block.x0 == part.box.x1 for block in through):
            yield part.cut


def _taped_corners(wall: WallLayout, foam: Sequence[Part]) -> Length:
    """Return the seams in the corners: one that two walls of this job share is taped by the wall at whose right it is."""
    sides = [("left", wall.left)] if not wall.wall.left_joined else []
    return _sum(_edge(foam, side) for side, end in [*sides, ("right", wall.right)] if end.what != "open end")


def _bead(part: Part, figures: Figures) -> Length:
    wide = greatest(ZERO, part.box.x1 - part.box.x0 - figures.bead_in * 2)
    tall = greatest(ZERO, part.cut - figures.bead_in * 2)
    return wide * 2 + tall * 3


def batts_of(wall: WallLayout) -> int:
    """Return how many batts fill the bays of a wall: one and more for each bay from plate to plate, the short ones together."""
    figures, full, short = load_figures(), 0, ZERO
    uprights = sorted(wall.of(*BESIDE_A_BAY), key=lambda part: part.box.x0)
    for left, right in pairwise(uprights):
        inside = [c for c in wall.of(Kind.CRIPPLE) if left.box.x1 <= c.box.x0 and c.box.x1 <= right.box.x0]
        in_hole = any(overlap(left.box.x1, right.box.x0, h.box.x0, h.box.x1) for h in wall.of(Kind.HEADER, Kind.SILL))
        for cripples in _over_and_under(inside):
            edges = [left.box.x1, *(x for c in cripples for x in (c.box.x0, c.box.x1)), right.box.x0]
            bays = [b - a for a, b in zip(edges[::2], edges[1::2], strict=True)]
            short += cripples[0].cut * sum(bay >= figures.bay_stuff for bay in bays)
        if not in_hole and not inside and right.box.x0 - left.box.x1 >= figures.bay_stuff:
            full += -(-least(left.cut, right.cut).ticks // figures.batt_long.ticks)
    return full + -(-short.ticks // figures.batt_long.ticks)


def _over_and_under(cripples: Sequence[Part]) -> Iterable[list[Part]]:
    """Part the short studs of one opening by what they stand on: the header, or the bottom plate."""
    groups: dict[tuple[Datum, int], list[Part]] = {}
    for cripple in cripples:
        groups.setdefault((cripple.box.z0.datum, cripple.box.z0.off.ticks), []).append(cripple)
    return groups.values()


def _sum(lengths: Iterable[Length]) -> Length:
    return sum(lengths, start=ZERO)


def rounded_up(run: Any, unit: str) -> int:
    """Return a run or volume in whole units, rounded up."""
    amount = Fraction(run.to(unit).magnitude)
    return -(-amount.numerator // amount.denominator)
