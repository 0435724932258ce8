"""What the electrical code asks of a wall: outlets within reach of every point along its floor, boxes at its face."""

from __future__ import annotations

from collections.abc import Iterator

from guide.checks.findings import Finding, finding
from guide.layout.parts import Kind, Layout, WallLayout
from guide.layout.receptacles import unreached, wall_spaces
from guide.lengths import greatest
from guide.reference.codes import CodeProfile


def outlet_findings(layout: Layout, code: CodeProfile) -> Iterator[Finding]:
    """Yield every stretch that no outlet reaches, once the boxes of all walls round its corners have been asked for."""
    reach = code.receptacle_reach
    asked = {wall.letter for wall in layout.walls if layout.survey.given({wall.wall.ref("boxes")})}
    told = {
        stretch.wall
        for space in wall_spaces(layout, code)
        if {each.wall for each in space.stretches} <= asked
        for stretch in space.stretches
    }
    for bare in unreached(layout, code):
        if bare.wall in told:
            wall = layout.by_letter[bare.wall]
            at = wall.mark_of(greatest(bare.start, wall.plate_start))
            yield finding("outlet_reach", wall.letter, at, wide=bare.wide, most=reach.length, cited=reach.cited)


def box_findings(wall: WallLayout, code: CodeProfile) -> Iterator[Finding]:
    """Yield boxes set too far back behind the drywall, and switches too high to reach."""
    most, high = code.box_setback, code.switch_high
    for part in wall.of(Kind.OUTLET):
        at, back = wall.mark_of(part.box.x0), wall.offsets.drywall - part.box.y1
        if back > most.length:
            yield finding(
                "box_set_back", wall.letter, at, mark=part.mark, back=back, most=most.length, cited=most.cited
            )
        middle = (part.box.z0.off + part.box.z1.off) // 2
        if ("holds", "switch") in part.why.values and middle > high.length:
            yield finding(
                "switch_high", wall.letter, at, mark=part.mark, middle=middle, most=high.length, cited=high.cited
            )
