"""Lengths of joint and volumes of gap: what tape, can foam, gasket and sealant are counted from.

Volumes go through pint, so that a cubic inch of gap and a can's yield are never mixed up with feet of seam.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise
from math import ceil
from typing import Any

from guide.layout.parts import Kind, Part, WallLayout
from guide.lengths import ZERO, Length
from guide.reference.figures import load_figures
from guide.reference.units import units


@dataclass(frozen=True, slots=True)
class Seams:
    """What one wall, or several together, have to be sealed with. Rounded up to whole units."""

    can_foam: int
    """Cubic inches of gap: under the foam, between its pieces, round the cap."""
    tape: int
    """Feet of upright and level seam between foam pieces."""
    gasket: int
    """Feet of bottom plate."""
    sealant: int
    """Feet of edge on cap strips and fireblocks."""
    bays: int
    """Stud bays wide enough for a batt."""

    def __add__(self, other: Seams) -> Seams:
        return Seams(
            self.can_foam + other.can_foam,
            self.tape + other.tape,
            self.gasket + other.gasket,
            self.sealant + other.sealant,
            self.bays + other.bays,
        )


def seams_of(wall: WallLayout) -> Seams:
    """Return the seams of a wall, from its parts."""
    inch = units().inch

    def run(length: Length) -> Any:
        return float(length.inch) * inch

    figures = load_figures()
    foam = wall.of(Kind.FOAM)
    floor = _sum(part.box.x1 - part.box.x0 for part in foam if part.box.z0.off <= figures.foam_floor_gap)
    upright = _sum(max(a.cut, b.cut) for a, b in pairwise(foam) if a.box.x1 == b.box.x0)
    cap = _sum(part.cut for part in wall.of(Kind.CAP)) * 2
    blocks = _sum(part.cut for part in wall.of(Kind.FIREBLOCK)) * 2
    edge, joint, over = 1.0 * inch, 0.125 * inch * 2.0 * inch, 0.25 * inch * 1.0 * inch
    volume = run(floor) * run(figures.foam_floor_gap) * edge + run(upright) * joint + run(cap // 2) * over
    plate = _sum(part.cut for part in wall.of(Kind.BOTTOM_PLATE))
    return Seams(
        can_foam=ceil(volume.to("inch**3").magnitude),
        tape=ceil(run(upright).to("foot").magnitude),
        gasket=ceil(run(plate).to("foot").magnitude),
        sealant=ceil(run(cap + blocks).to("foot").magnitude),
        bays=_bays(wall),
    )


def _bays(wall: WallLayout) -> int:
    uprights: list[Part] = sorted(wall.of(Kind.STUD, Kind.KING, Kind.TRIMMER), key=lambda part: part.box.x0)
    return sum(b.box.x0 - a.box.x1 >= load_figures().bay_stuff for a, b in pairwise(uprights))


def _sum(lengths: Iterable[Length]) -> Length:
    return sum(lengths, start=ZERO)
