"""The space before an electrical panel: wide enough, deep enough, and nothing foreign in it."""

from __future__ import annotations

from collections.abc import Iterator

from guide.checks.findings import Finding, finding
from guide.layout.parts import WallLayout, overlap
from guide.reference.figures import load_figures
from guide.survey.room import thing_name


def panel_findings(wall: WallLayout) -> Iterator[Finding]:
    """Yield what the space of every panel on a wall lacks; a finding that asks stands where nothing is lacking."""
    figures = load_figures()
    for opening in wall.wall.openings:
        if opening.keeps != "panel" or opening.free_width is None:
            continue
        at, what = wall.mark_of(opening.left), thing_name(opening.place)
        lacking = False
        if opening.free_width < figures.panel_wide:
            lacking = True
            yield finding("panel_narrow", wall.letter, at, what=what, wide=opening.free_width, least=figures.panel_wide)
        if opening.free_floor is not None and opening.free_floor < figures.panel_deep:
            lacking = True
            yield finding(
                "panel_shallow", wall.letter, at, what=what, deep=opening.free_floor, least=figures.panel_deep
            )
        for pipe in wall.wall.pipes:
            if overlap(opening.left, opening.right, pipe.left_edge, pipe.right_edge):
                lacking = True
                yield finding("panel_pipe", wall.letter, at, what=what, pipe=thing_name(pipe.place))
        if not lacking:
            yield finding("panel_ask", wall.letter, at, what=what, wide=figures.panel_wide, deep=figures.panel_deep)
