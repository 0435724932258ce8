"""What must hold of the thermal barrier: by area, nothing of the foam is left bare to the room, or a finding says so."""

from __future__ import annotations

from collections.abc import Iterator

from shapely import Polygon, box, union_all
from shapely.geometry.base import BaseGeometry

from guide.checks.barrier import bare_foam
from guide.layout.parts import Box, Kind, WallLayout
from guide.lengths import ZERO, Length, inches
from guide.survey.model import Basement
from tests.properties.seen import swing

STRIP = 0.75
"""A bare strip so wide is caulked; common practice."""
SHEET = inches("96")


def bare_area(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield where foam is bare and no finding says so, or one says so and none is: all areas as seen from the room, in shapely.

    Before the foam stand sheets less what is cut out of them, electrical boxes, plates, partitions, what closes in an
    upright pipe, and at the ends the walls round the corners. On a slope the ends of square pieces gape by so much.
    """
    foam = union_all([_seen(wall, part.box) for part in wall.of(Kind.FOAM)])
    cover: list[BaseGeometry] = [_seen(wall, p.box) for p in wall.of(Kind.BOTTOM_PLATE, Kind.TOP_PLATE, Kind.OUTLET)]
    for sheet in wall.of(Kind.DRYWALL):
        cover.append(_seen(wall, sheet.box).difference(union_all([_seen(wall, each) for each in sheet.notches])))
    long, high = float(wall.wall.length.inch), 200.0
    start, end = (float(each.face.inch) for each in (wall.left, wall.right))
    sides = [(-99.0, start), (long - end, long + 99)]
    sides += [(float(each.left.inch), float(each.right.inch)) for each in wall.wall.partitions]
    wider = float(wall.offsets.deep.inch) + 2  # the studs beside a pipe, and an inch round it (common practice)
    for pipe in (pipe for pipe in wall.wall.pipes if pipe.run == "standing"):
        sides.append((float(pipe.left_edge.inch) - wider, float(pipe.right_edge.inch) + wider))
    bare = foam.difference(union_all([*cover, *(box(x0, 0, x1, high) for x0, x1 in sides)]))
    slope = max(float(swing(wall.wall.height, *each).inch) for each in _stretches(wall))
    left = bare.buffer(-(STRIP + slope) / 2 - 0.001)
    if any(remark.saying.key == "remark.drywall_low" for remark in wall.remarks):
        return  # a sheet that has to be cut along the slab, and that is said
    said = list(bare_foam(wall))
    if not left.is_empty and not said:
        yield f"{bare.area:.1f} sq in of foam are bare"
    if said and bare.area < STRIP:
        yield "foam is said to be bare and none is"


def _seen(wall: WallLayout, each: Box) -> Polygon:
    """Return a box as it is seen from the room, its edges straight between the readings of heights."""
    survey = wall.wall
    xs = sorted({each.x0, each.x1, *survey.height.breaks(each.x0, each.x1), *survey.concrete.breaks(each.x0, each.x1)})
    low = [(float(x.inch), float(each.z0.at(survey, x).inch)) for x in xs]
    high = [(float(x.inch), float(each.z1.at(survey, x).inch)) for x in reversed(xs)]
    return Polygon([*low, *high])


def _stretches(wall: WallLayout) -> Iterator[tuple[Length, Length]]:
    """Yield every stretch as long as a sheet, the last one as the wall's end leaves it."""
    at, end = ZERO, wall.wall.length
    while at < end:
        yield at, min(at + SHEET, end)
        at += SHEET // 2
