"""What must hold over concrete that ends far below the joists: no way is left from the hollow below to the one above."""

from __future__ import annotations

from collections.abc import Iterator

from guide.layout.ends import End
from guide.layout.parts import Kind, Layout, Part, WallLayout
from guide.lengths import SIXTEENTH, ZERO, Length, inches
from guide.survey.model import Basement
from tests.properties.seen import FIGURES, TICK, holes, slope_of

FAR = inches("6")
"""From here on the concrete ends far below the joists; common practice."""


def open_ledges(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield where the top of low concrete is open, and each upright fireblock that stops there without a mate.

    Open it may be for pipes and openings, a quarter inch clear of them, and between two of these where no stick fits.
    """
    survey = wall.wall
    readings = {x for x, _ in (*survey.height.points, *survey.concrete.points)}
    low = all(survey.height.at(x) - survey.concrete.at(x) >= FAR + TICK for x in readings)
    hollow = -survey.shelf < wall.offsets.back
    strips, mates = wall.of(Kind.LEDGE), wall.of(Kind.UPPER_BLOCK)
    if not (low and hollow):
        if (strips or mates) and not hollow:
            yield "a ledge where there is no hollow"
        return
    for part in (*strips, *mates):
        front = wall.offsets.back + (FIGURES.block_lap if part.kind is Kind.UPPER_BLOCK else ZERO)
        if part.box.y0 > -survey.shelf or part.box.y1 < front or (part.wide or ZERO) < front + survey.shelf - SIXTEENTH:
            yield f"{part.id} does not reach from the wood wall to its front"
    at = max(ZERO, wall.plate_start, _others(wall.left))
    last = min(survey.length, wall.plate_end, survey.length - _others(wall.right))
    covered = [(p.box.x0, p.box.x1) for p in strips]
    covered += list(_free(wall, basement))
    for x0, x1 in [*sorted(covered), (last, last)]:
        if x0 - at > FIGURES.stud_thick:
            yield f"no ledge from {at!r} to {x0!r}"
        at = max(at, x1)
    for block in wall.of(Kind.FIREBLOCK):
        mate = next((m for m in mates if (m.box.x0, m.box.x1) == (block.box.x0, block.box.x1)), None)
        if mate is None:
            yield f"{block.id} has no mate"
        elif not _closes(wall, block, mate):
            yield f"{mate.id} leaves a gap over the ledge or under the plate"


def _others(end: End) -> Length:
    """Return how far before an outside corner the ledge of the other wall begins, which lies over that corner."""
    return end.cap if end.what == "outside corner" and not end.over else ZERO


def corner_ledges(layout: Layout) -> Iterator[str]:
    """Yield each outside corner of two told walls whose ledge does not run on over it to the back of the other's studs."""
    for wall in layout.walls:
        other = layout.by_letter.get(wall.wall.right_joined or "")
        if other is None or wall.right.what != "outside corner" or wall.right.mitred:
            continue
        strips = wall.of(Kind.LEDGE), other.of(Kind.LEDGE)
        over = wall.right.over
        if not all(strips):
            continue
        past = max(p.box.x1 for p in strips[0]) - wall.wall.length if over else -min(p.box.x0 for p in strips[1])
        back = (other if over else wall).offsets.back
        things = (wall if over else other).wall
        if past < back and not (things.pipes or things.openings):
            yield f"the ledge of {wall.letter} and {other.letter} ends {past!r} past their corner, not {back!r}"


def _free(wall: WallLayout, basement: Basement) -> Iterator[tuple[Length, Length]]:
    gap, survey = FIGURES.foam_cut_gap, wall.wall
    for pipe in survey.pipes:
        if pipe.back < wall.offsets.back:
            yield pipe.left_edge - gap, pipe.right_edge + gap
    for opening, x0, x1 in holes(survey, basement):
        yield min(x0, opening.left - gap), max(x1, opening.right + gap)


def _closes(wall: WallLayout, block: Part, mate: Part) -> bool:
    """Say whether the two blocks and the ledge, or its lap, between them leave nothing open but what a square cut explains."""
    survey, x, ply = wall.wall, block.centre, FIGURES.plywood
    spare = SIXTEENTH + slope_of(survey, mate) + TICK
    foot, head = mate.box.z0.at(survey, x), mate.box.z1.at(survey, x)
    concrete = survey.concrete.at(x)
    under_plate = survey.height.at(x) - ply - FIGURES.stud_thick
    on = (concrete + ply, concrete + ply * 2)
    stands = any(abs(foot - each) <= spare for each in on)
    return stands and abs(under_plate - head) <= spare and abs(concrete - block.box.z1.at(survey, x)) <= spare
