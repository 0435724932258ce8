"""What must hold of the foam: with the gaps that are meant it covers the concrete."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from guide.layout.parts import Kind, WallLayout
from guide.lengths import ZERO, Length, inches
from guide.survey.model import Basement
from tests.properties.seen import FIGURES, HUNG, TICK, holes, swing


def bare_concrete(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield where concrete stays bare between the two ends of the foam, beside the gaps that are meant.

    Meant are: half an inch at the slab, a quarter round openings and pipes, fireblocks that reach the concrete, strips
    of half an inch or less (sealed with can foam), the cutting step, and on a slope the triangle over a square sheet.
    Under a cap at the joists the foam stops half an inch below it.
    """
    if wall.wall.is_partition:  # it has no concrete
        return
    foam = [p.box for p in wall.of(Kind.FOAM)]
    gaps = list(_foam_gaps(wall, basement))
    start, end = _foam_ends(wall)
    sheet = inches(basement.foam_sheet)
    edges = sorted({start, end, *(x for b in foam for x in (b.x0, b.x1)), *(x for g in gaps for x in g[:2])})
    for x0, x1 in pairwise(x for x in edges if start <= x <= end):
        if x1 - x0 <= FIGURES.foam_cut_gap * 2 and not any(b.x0 < x1 and x0 < b.x1 for b in foam):
            continue
        mid = (x0 + x1) // 2
        cover = [(b.z0.off, b.z1.off) for b in foam if b.x0 <= x0 and x1 <= b.x1]
        cover += [(g[2], g[3]) for g in gaps if g[0] <= x0 and x1 <= g[1]]
        column = max(ZERO, x0 - sheet), min(wall.wall.length, x1 + sheet)
        slope = max(swing(wall.wall.concrete, *column), swing(wall.wall.height, *column))
        top = wall.wall.concrete.at(mid)
        if wall.cap_case == 2:
            top = min(top, wall.wall.height.at(mid) - FIGURES.plywood - FIGURES.cap_under_foam)
        if bare := _bare(cover, FIGURES.foam_floor_gap, top - slope, FIGURES.foam_step):
            yield f"bare from {x0!r} to {x1!r}, {bare[0]!r} to {bare[1]!r} high"


def _bare(cover: list[tuple[Length, Length]], low: Length, high: Length, spare: Length) -> tuple[Length, Length] | None:
    at = low
    for z0, z1 in [*sorted(cover), (high, high)]:
        if min(z0, high) - at > spare + TICK:
            return at, z0
        at = max(at, z1)
    return None


def _foam_ends(wall: WallLayout) -> tuple[Length, Length]:
    """Return where foam starts and ends; at a corner the layout says whether it stops short."""
    ways = {d.id: d.saying.key for d in wall.decisions}
    found = []
    for side, end in (("left", wall.left), ("right", wall.right)):
        way = ways.get(f"{wall.letter}.foam_{side}")
        past = {"decision.foam_short": wall.offsets.foam_face, "decision.foam_laps": -wall.offsets.foam_face}
        found.append(end.clear if end.what == "framed wall" else past.get(way or "", ZERO))
    return found[0], wall.wall.length - found[1]


def _foam_gaps(wall: WallLayout, basement: Basement) -> Iterator[tuple[Length, Length, Length, Length]]:
    cut, high = FIGURES.foam_cut_gap, wall.wall.height
    top = max(value for _, value in high.points)
    for opening, x0, x1 in holes(wall.wall, basement):
        if opening.kind == "window":
            sill, tall = opening.sill or ZERO, opening.tall or ZERO
            yield opening.left - cut, opening.right + cut, sill - cut, sill + tall + cut
        elif opening.kind == "kept free":
            yield x0, x1, ZERO, top
        elif opening.kind == HUNG:
            low = min(high.at(x0), high.at(x1), *(y for x, y in high.points if x0 < x < x1))
            yield x0, x1, low - (opening.over_drop or ZERO) - (opening.over_clear or ZERO), top
        else:
            play = FIGURES.frame_play if opening.kind == "framed door" else FIGURES.door_taller + basement.floor_finish
            tall = (opening.leaf_height or opening.frame_height or ZERO) + play
            joists, plate = (
                high.at((x0 + x1) // 2),
                FIGURES.stud_thick + (FIGURES.plywood if wall.cap_case != 1 else ZERO),
            )
            near = joists - tall <= FIGURES.head_is_plate or joists - tall - plate < FIGURES.stud_thick
            yield x0, x1, ZERO, max(tall, joists - plate) if near else tall
    for pipe in wall.wall.pipes:
        if pipe.back >= wall.offsets.foam_face:
            continue
        low, over = ZERO, top
        if pipe.run == "lying":
            ends = (pipe.low_left or ZERO, pipe.low_right or ZERO)
            low, over = min(ends) - cut, max(ends) + pipe.wide + cut
        yield pipe.left_edge - cut, pipe.right_edge + cut, low, over
    for block in wall.of(Kind.FIREBLOCK):
        if basement.block_reach == "concrete":
            yield block.box.x0, block.box.x1, ZERO, top
