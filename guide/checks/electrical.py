"""What the electrical code asks of a wall that is finished: outlets within reach of every point along its floor."""

from __future__ import annotations

from collections.abc import Iterator

from guide.checks.findings import Finding, finding
from guide.layout.parts import Layout
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
