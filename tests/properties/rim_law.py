"""What must hold of the bays over the concrete: foam in each, and none where a joist or a joist block is."""

from __future__ import annotations

from collections.abc import Iterator

from guide.layout.parts import Kind, WallLayout
from guide.lengths import EIGHTH, SIXTEENTH, ZERO, Length, inches
from guide.survey.model import Basement
from tests.properties.seen import TICK, joists

GAP = inches("1/4")
"""Left free on every side for the can; common practice."""
LEAST = inches("2")
"""A narrower bay is left to the can: a stud is thicker than what would fit into it."""


def bare_bays(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield each bay over the concrete that stays bare, and each piece of rim foam that does not fill its own.

    Bays are what joists leave of the concrete's length, or joist blocks with 3/4 in on both sides. At an outside corner
    the last of it lies behind the rim of the other wall: so much may stay bare there.
    """
    survey, pieces = wall.wall, wall.of(Kind.RIM)
    if survey.is_partition:  # no rim stands over it
        return
    if any(remark.saying.key == "remark.rim_tight" for remark in wall.remarks):
        if pieces or survey.joists != "alongside":
            yield "rim foam is said to find no room, and is cut"
        return
    solid: list[tuple[Length, Length]] = []
    if survey.joists == "alongside":
        solid = [(b.box.x0 - GAP * 3, b.box.x1 + GAP * 3) for b in wall.of(Kind.JOIST_BLOCK)]
    else:
        solid = joists(survey)
    for piece in pieces:
        for x0, x1 in solid:
            if piece.box.x0 - GAP + TICK < x1 and x0 < piece.box.x1 + GAP - TICK:
                yield f"{piece.id} is no quarter inch clear of what stands at {x0!r}"
        if not ZERO <= piece.box.x1 - piece.box.x0 - (piece.wide or ZERO) < EIGHTH:
            yield f"{piece.id} is not cut to its place"
        high = piece.box.z1.off - piece.box.z0.off
        if basement.joist_depth is None or not ZERO <= basement.joist_depth - GAP * 2 - high < EIGHTH:
            yield f"{piece.id} is not as high as its bay"
    thick = basement.foam_thickness
    depth = [
        max(end.shelf + inches("4"), thick) if end.what == "outside corner" else ZERO for end in (wall.left, wall.right)
    ]
    at, last = max(ZERO, depth[0]), survey.length - max(ZERO, depth[1])
    filled = [*solid, *((p.box.x0, p.box.x1) for p in pieces)]
    for x0, x1 in [*sorted(filled), (last, last)]:
        if min(x0, last) - at > LEAST + SIXTEENTH:
            yield f"the bay at {at!r} stays bare"
        at = max(at, x1)
