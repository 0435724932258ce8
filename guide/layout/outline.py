"""The finished room: its outline drywall to drywall, worked out from the concrete's outline and each wall's depth."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from guide.layout.parts import Layout
from guide.lengths import Length, from_inches
from guide.survey.closing import Corner, closing, corners_measured
from guide.survey.traverse import walk


@dataclass(frozen=True)
class Outline:
    """A closed room, before and after."""

    finished: dict[str, Length]
    """Each wall's length from finished face to finished face, by its letter."""
    bare_area: Fraction
    """Square inches of floor inside the concrete."""
    finished_area: Fraction
    """Square inches of floor inside the drywall."""


def outline(layout: Layout) -> Outline | None:
    """Return the outline of a room that closes, or None for one that does not, or whose walls are not all laid out.

    Areas are those of the walk after the compass rule has shared out what careful readings leave open.
    """
    survey = layout.survey
    miss = closing(survey)
    if (
        miss is None
        or miss.opens
        or miss.twists
        or any(wall.letter not in layout.by_letter for wall in survey.round_room)
    ):
        return None
    depth = {wall.letter: wall.offsets.drywall for wall in layout.walls}
    corners = corners_measured(survey)
    finished = {wall.letter: wall.length for wall in survey.round_room}
    for corner in corners:
        one, other = corner.wall.letter, corner.other.letter
        finished[one] -= _off(corner, depth[one], depth[other])
        finished[other] -= _off(corner, depth[other], depth[one])
    turns = [corner.turn for corner in corners[:-1]]
    bare = walk([wall.length.inch for wall in survey.round_room], turns).area()
    return Outline(finished, bare, walk([length.inch for length in finished.values()], turns).area())


def _off(corner: Corner, own: Length, other: Length) -> Length:
    """Return how much a wall loses at a corner: where its own finished face meets the other's, along the concrete.

    Less than nothing round an outside corner. A turn of the walk by t leaves an inner angle of 180 - t.
    """
    cosine, sine = corner.turn
    return from_inches((other.inch - own.inch * cosine) / sine).with_rests(own.rests | other.rests | corner.rests)
