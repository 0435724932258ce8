"""Metal that sticks out of the concrete: what comes off before the foam, and what stays in its way or in a stud's."""

from __future__ import annotations

from collections.abc import Iterator

from guide.checks.findings import Finding, finding
from guide.layout.parts import FULL_HEIGHT, Kind, WallLayout
from guide.reference.figures import load_figures


def metal_findings(wall: WallLayout) -> Iterator[Finding]:
    """Yield one finding for all that comes off, one for each piece that stays, and one for each upright it would meet."""
    clear, survey = load_figures().pipe_side, wall.wall
    if survey.metal_off is not None:
        yield finding("metal_off", wall.letter, count=len(survey.metal_off.points))
    for x, out in survey.metal_stays.points if survey.metal_stays is not None else ():
        yield finding("metal_stays", wall.letter, wall.mark_of(x), x=x, out=out)
        for part in wall.of(*FULL_HEIGHT, Kind.TRIMMER, Kind.CRIPPLE):
            if part.box.x0 - clear < x < part.box.x1 + clear and out > part.box.y0:
                yield finding("metal_in_stud", wall.letter, wall.mark_of(x), mark=part.mark, x=x, out=out)
