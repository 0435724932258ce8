"""The thermal barrier: whether anything of the wall's foam is left bare to the room, looked at place by place and height by height.

It owns one promise: what no drywall, no plate, no partition and no box round a pipe stands before is told, with where it
begins, how far it runs and how high it is. Foam in the joist bays has rules of its own, and is judged with the house.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from guide.checks.findings import Finding, finding
from guide.layout.parts import Box, Kind, Part, WallLayout, over_slab, overlap
from guide.lengths import SIXTEENTH, ZERO, Length, greatest, least
from guide.reference.figures import load_figures

COVERING = (Kind.DRYWALL, Kind.BOTTOM_PLATE, Kind.TOP_PLATE)
"""What hides foam from the room. What is cut out of a sheet is an opening, where there is no foam, or holds a box."""


def bare_foam(wall: WallLayout) -> Iterator[Finding]:
    """Yield each stretch along which foam stays bare to the room; the walls across the ends of this one hide what is behind them.

    Strips no higher than drywall may leave open are caulked. A sheet that ends over the bottom plate is told already.
    """
    start, end = wall.left.face, wall.wall.length - wall.right.face
    foam, covers = wall.of(Kind.FOAM), list(_covers(wall))
    places = {x.ticks: x for each in (*[part.box for part in foam], *covers) for x in (each.x0, each.x1)}
    inside = [places[ticks] for ticks in sorted(places) if start < places[ticks] < end]
    begun, tall = start, ZERO
    for x0, x1 in pairwise((start, *inside, end)):
        here = _bare_at(wall, foam, covers, x0, x1)
        if tall > ZERO and here == ZERO:
            yield from _told(wall, begun, x0, tall)
            tall = ZERO
        if here > ZERO:
            begun, tall = (x0 if tall == ZERO else begun), greatest(tall, here)
    if tall > ZERO:
        yield from _told(wall, begun, end, tall)


def _told(wall: WallLayout, x0: Length, x1: Length, tall: Length) -> Iterator[Finding]:
    if x1 - x0 > SIXTEENTH:
        yield finding("foam_bare", wall.letter, wall.mark_of(x0), wide=x1 - x0, tall=tall.near(SIXTEENTH))


def _covers(wall: WallLayout) -> Iterator[Box]:
    """Yield what hides foam: wood and drywall as they are, a partition and what closes in an upright pipe from slab to joists."""
    low = any(remark.saying.key == "remark.drywall_low" for remark in wall.remarks)
    slab, top = over_slab(ZERO), over_slab(greatest(*(value for _, value in wall.wall.height.points)))
    for part in wall.of(*COVERING):
        yield replace(part.box, z0=slab) if low and _is_lowest(wall, part) else part.box
    beside = load_figures().chase_wider + wall.offsets.deep
    upright = (pipe for pipe in wall.wall.pipes if pipe.run == "standing")
    stretches = [(pipe.left_edge - beside, pipe.right_edge + beside) for pipe in upright]
    stretches += [(each.left, each.right) for each in wall.wall.partitions]
    yield from (Box(x0, x1, wall.offsets.face, wall.offsets.drywall, slab, top) for x0, x1 in stretches)


def _is_lowest(wall: WallLayout, part: Part) -> bool:
    """Say whether a part is a sheet that no other one hangs under."""
    return part.kind is Kind.DRYWALL and not any(
        other.box.z1.off == part.box.z0.off and overlap(other.box.x0, other.box.x1, part.box.x0, part.box.x1)
        for other in wall.of(Kind.DRYWALL)
    )


def _bare_at(wall: WallLayout, foam: tuple[Part, ...], covers: list[Box], x0: Length, x1: Length) -> Length:
    """Return how high the highest bare strip of foam is between two places that no edge lies between; 0 for none."""
    x, spare, bare = (x0 + x1) // 2, load_figures().drywall_spare, ZERO
    spans = sorted((c.z0.at(wall.wall, x), c.z1.at(wall.wall, x)) for c in covers if c.x0 <= x0 and x1 <= c.x1)
    for piece in foam:
        if not (piece.box.x0 <= x0 and x1 <= piece.box.x1):
            continue
        at, top = (level.at(wall.wall, x) for level in (piece.box.z0, piece.box.z1))
        for z0, z1 in [*spans, (top, top)]:
            if (gap := least(z0, top) - at) > spare:
                bare = greatest(bare, gap)
            at = greatest(at, z1)
    return bare
