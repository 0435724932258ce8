"""What laws look at: the figures, how stretches meet, and where openings, pipes and joists of a survey lie.

Worked out from the survey and the figures alone, as the laws are: nothing here calls the rules they check.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from guide.layout.parts import Part, WallLayout
from guide.lengths import Length, from_inches
from guide.reference.figures import load_figures
from guide.survey.model import Basement, Wall
from guide.survey.profile import Profile
from guide.survey.things import Opening, Pipe

FIGURES = load_figures()
HUNG = "beam or duct"
TICK = Length(4)
"""Heights between two readings are rounded down to a tick (1/8128 in) each time they are worked out."""


def meet(a0: Length, a1: Length, b0: Length, b1: Length) -> bool:
    """Say whether two open stretches share anything."""
    return max(a0, b0) < min(a1, b1)


def swing(profile: Profile, x0: Length, x1: Length) -> Length:
    """Return how much a height changes between two places."""
    values = [profile.at(x).ticks for x in (x0, *profile.breaks(x0, x1), x1)]
    return Length(max(values) - min(values))


def slope_of(wall: Wall, part: Part) -> Length:
    """Return what the slope over a part's own thickness explains: nothing on a level wall."""
    box = part.box
    return max(swing(wall.height, box.x0, box.x1), swing(wall.concrete, box.x0, box.x1))


# ---------------------------------------------------------------------------------------------- nothing shares volume


def holes(wall: Wall, basement: Basement) -> Iterator[tuple[Opening, Length, Length]]:
    """Yield the framed hole of every opening: what it is let into the framing as."""
    for opening in wall.openings:
        if opening.kind == "window":
            lining = FIGURES.window_buck + FIGURES.window_return_foam
            yield opening, opening.left + lining, opening.right - lining
        elif opening.kind == "kept free":
            yield opening, opening.left, opening.right
        elif opening.over_clear:
            yield opening, opening.left - opening.over_clear, opening.right + opening.over_clear
        else:
            wider = FIGURES.door_wider // 2 if opening.kind == "new door" else FIGURES.frame_play
            yield opening, opening.left - wider, opening.right + wider


def stacks(wall: WallLayout) -> Iterator[tuple[Pipe, Length, Length]]:
    """Yield every upright pipe in the line of the studs, with the gap it needs in the plates."""
    ways = {d.id: d.saying.key for d in wall.decisions}
    for pipe in wall.wall.pipes:
        in_line = ways[f"{pipe.place}.way"] in ("decision.pipe_bay", "decision.pipe_box")
        if pipe.run == "standing" and in_line:
            yield pipe, pipe.left_edge - FIGURES.pipe_side, pipe.right_edge + FIGURES.pipe_side


def joists(wall: Wall) -> list[tuple[Length, Length]]:
    """Return both sides of every joist that runs into a wall, and of many beyond its end."""
    thick = FIGURES.joist_thick
    found = [(joist.edge, joist.edge + thick * joist.plies) for joist in wall.joists_read]
    if found:  # beyond the last as far apart as half of them stand or less
        edges = [x0 for x0, _ in found]
        apart = sorted(b - a for a, b in pairwise(edges)) or [FIGURES.joist_apart]
        first, step = edges[-1], apart[(len(apart) - 1) // 2].inch
    else:
        assert wall.first_joist is not None
        first, step = wall.first_joist, Fraction(wall.joist_spacing or "16")
    near = [first + from_inches(step * number) for number in range(bool(found), 200)]
    return [*found, *((x0, x0 + thick) for x0 in near)]


# --------------------------------------------------------------------------------------------------- fireblocks
