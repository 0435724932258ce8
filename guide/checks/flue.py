"""Hot flues in front of a wall: nothing that burns stands as near as the model code forbids."""

from __future__ import annotations

from collections.abc import Iterator
from math import isqrt

from guide.checks.findings import Finding, finding
from guide.layout.parts import Material, Part, WallLayout
from guide.lengths import Length
from guide.reference.codes import CodeProfile
from guide.survey.room import thing_name
from guide.survey.things import Pipe

COLD = (Material.BOX, Material.DRYWALL)
"""Parts that do not count as burning."""


def flue_findings(wall: WallLayout, code: CodeProfile) -> Iterator[Finding]:
    """Yield every flue with wood or foam too near, and which piece is the nearest."""
    for pipe in wall.wall.pipes:
        if pipe.carries != "flue":
            continue
        limit = code.flue_double if pipe.flue == "double" else code.flue_single
        near = [(_apart(part, pipe), part.mark) for part in wall.parts if part.material not in COLD]
        far, mark = min(near)
        if far < limit.length:
            at = wall.mark_of((pipe.left_edge + pipe.right_edge) // 2)
            what = thing_name(pipe.place)
            yield finding(
                "flue_close", wall.letter, at, what=what, mark=mark, far=far, least=limit.length, cited=limit.cited
            )


def _apart(part: Part, pipe: Pipe) -> Length:
    """Return how far a part is from a flue, seen from above; rounded down to a tick. A flue counts from slab to joists."""
    box = part.box
    aside = max(box.x0.ticks - pipe.right_edge.ticks, pipe.left_edge.ticks - box.x1.ticks, 0)
    before = max(box.y0.ticks - pipe.out.ticks, pipe.back.ticks - box.y1.ticks, 0)
    return Length(isqrt(aside * aside + before * before))
