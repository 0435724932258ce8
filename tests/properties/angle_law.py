"""What must hold of a corner that is not square: what two walls build there, laid in the plane by shapely, shares no room.

shapely is a general-purpose geometry library; nothing here calls the engine's own way from one wall to the next.
"""

from __future__ import annotations

from collections.abc import Iterator

import shapely

from guide.layout.parts import Kind, Layout, Part, WallLayout
from guide.lengths import ZERO, Length, inches
from tests.properties.seen import TICK, swing

NEAR = inches("40")
"""Further from the corner than this the two walls have nothing to do with each other."""
ROUNDING = 0.01
"""Square inches that the ticks of two slanted ends explain."""


def in_the_plane(wall: WallLayout, start: complex, way: complex) -> Iterator[tuple[Part, shapely.Polygon]]:
    """Yield every part of a wall that starts at a place and runs along a unit vector, from above."""
    for part in wall.parts:
        corners = [start + way * complex(x.inch, y.inch) for x, y in part.plan]
        yield part, shapely.Polygon([(corner.real, corner.imag) for corner in corners])


def meeting(layout: Layout, cosine: float, sine: float) -> Iterator[str]:
    """Yield every two parts of two walls that share room, where the walk turns right by such an angle between them.

    Allowed is what the heights of either wall differ near the corner, as at a square one.
    """
    one, other = layout.walls
    length = one.wall.length
    allowed = TICK + abs(one.wall.concrete.at(length) - other.wall.concrete.at(ZERO))
    for each, x0, x1 in ((one.wall, length - NEAR, length), (other.wall, ZERO, NEAR)):
        allowed += swing(each.height, x0, x1) + swing(each.concrete, x0, x1)
    mine = [each for each in in_the_plane(one, 0j, 1 + 0j) if each[0].box.x1 > length - NEAR]
    theirs = in_the_plane(other, complex(length.inch), complex(cosine, sine))
    for two, there in (each for each in theirs if each[0].box.x0 < NEAR):
        for part, here in mine:
            if _height(one, part, other, two) > allowed and here.intersection(there).area > ROUNDING:
                yield f"{part.id} and {two.id} share room in the corner"


def _height(one: WallLayout, a: Part, other: WallLayout, b: Part) -> Length:
    (a0, a1), (b0, b1) = (
        (part.box.z0.at(wall.wall, x), part.box.z1.at(wall.wall, x))
        for wall, part, x in ((one, a, min(a.centre, one.wall.length)), (other, b, max(b.centre, ZERO)))
    )
    return min(a1, b1) - max(a0, b0)


def gap(layout: Layout, kind: Kind, cosine: float, sine: float) -> float:
    """Return how far apart the parts of a kind of two walls are, in inches."""
    one, other = layout.walls
    ends = [shape for part, shape in in_the_plane(one, 0j, 1 + 0j) if part.kind is kind]
    starts = in_the_plane(other, complex(one.wall.length.inch), complex(cosine, sine))
    return min(float(end.distance(shape)) for part, shape in starts if part.kind is kind for end in ends)
