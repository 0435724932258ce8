"""The space before an electrical panel: wide enough, deep enough, and nothing foreign in it."""

from __future__ import annotations

from collections.abc import Iterator

from guide.checks.findings import Finding, finding
from guide.layout.parts import WallLayout, overlap
from guide.reference.codes import CodeProfile
from guide.survey.room import thing_name


def panel_findings(wall: WallLayout, code: CodeProfile) -> Iterator[Finding]:
    """Yield what the space of every panel on a wall lacks; a finding that asks stands where nothing is lacking."""
    wide, deep = code.panel_wide, code.panel_deep
    for opening in wall.wall.openings:
        if opening.keeps != "panel" or opening.free_width is None:
            continue
        at, what = wall.mark_of(opening.left), thing_name(opening.place)
        lacking = False
        if opening.free_width < wide.length:
            lacking = True
            yield finding(
                "panel_narrow", wall.letter, at, what=what, wide=opening.free_width, least=wide.length, cited=wide.cited
            )
        if opening.free_floor is not None and opening.free_floor < deep.length:
            lacking = True
            yield finding(
                "panel_shallow",
                wall.letter,
                at,
                what=what,
                deep=opening.free_floor,
                least=deep.length,
                cited=deep.cited,
            )
        for pipe in wall.wall.pipes:
            if overlap(opening.left, opening.right, pipe.left_edge, pipe.right_edge):
                lacking = True
                yield finding("panel_pipe", wall.letter, at, what=what, pipe=thing_name(pipe.place))
        if not lacking:
            high = code.panel_high.length
            yield finding("panel_ask", wall.letter, at, what=what, wide=wide.length, deep=deep.length, high=high)
