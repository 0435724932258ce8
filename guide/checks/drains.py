"""Drains along a wall: whether they fall, and the right way. Nothing here changes a fall; it asks before the wall hides it.

It owns one promise: the fall is told from the level joists, so a slab that slopes neither makes nor hides one.
"""

from __future__ import annotations

from collections.abc import Iterator

from guide.checks.findings import Finding, finding
from guide.layout.parts import Layout
from guide.lengths import FOOT, SIXTEENTH, ZERO, Length
from guide.reference.figures import load_figures
from guide.survey.model import Wall
from guide.survey.room import thing_name
from guide.survey.things import Pipe


def drain_findings(layout: Layout) -> Iterator[Finding]:
    """Yield each drain along a wall that rises the way it runs, or falls too little; none whose readings nobody took.

    Where nobody said which way it runs, it is taken to run toward its lower end. A vent has no fall to keep.
    """
    for wall in layout.walls:
        for pipe in wall.wall.pipes:
            if pipe.run != "lying" or pipe.carries != "drain" or pipe.flows == "none":
                continue
            fall, run = _fall(wall.wall, pipe), pipe.right_edge - pipe.left_edge
            if layout.survey.unsure(fall.rests):
                continue
            what, at = thing_name(pipe.place), wall.mark_of((pipe.left_edge + pipe.right_edge) // 2)
            least = load_figures().drain_fall
            need = Length(least.ticks * run.ticks // FOOT.ticks, run.rests).down_to(SIXTEENTH)
            if fall < ZERO:
                yield finding("drain_uphill", wall.letter, at, what=what, side=pipe.flows or "", rise=-fall)
            elif fall < need:
                yield finding("drain_flat", wall.letter, at, what=what, fall=fall, run=run, least=least, need=need)


def _fall(wall: Wall, pipe: Pipe) -> Length:
    """Return how much lower it is where it runs to, to the sixteenth that a tape tells; below 0 where it rises."""
    left, right = (
        wall.height.at(x) - (low or ZERO)
        for x, low in ((pipe.left_edge, pipe.low_left), (pipe.right_edge, pipe.low_right))
    )
    fall = right - left  # both are how far it hangs under the joists
    return {"left": -fall, "right": fall}.get(pipe.flows or "", abs(fall)).near(SIXTEENTH)
