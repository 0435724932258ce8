"""Crooked concrete: what string readings taken place by place say about the wall behind the framing.

The framing itself stays one straight line in front of the worst hump. One reading alone, the smallest anywhere, says how
far that line stands off and nothing about any place: here the concrete then counts as flat.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import product

from guide.layout.ends import Offsets
from guide.lengths import ZERO, Length
from guide.reference.figures import Figures
from guide.reference.sayings import Saying, saying
from guide.survey.model import Wall


@dataclass(frozen=True, slots=True)
class Place:
    """The concrete where the string was read."""

    x: Length
    string: Length
    line: Length
    """From the back line on the slab to the concrete."""
    free: Length
    """Between the face of the foam and the backs of the studs, where the wall leans in most."""
    out: Length
    """How far the concrete stands out of a straight line between the readings on both sides; below 0 in a hollow."""


def proud(wall: Wall, x: Length, figures: Figures) -> Length:
    """Return how far the concrete at x bulges toward the room; below 0 in a hollow, 0 where only one reading was taken."""
    return figures.string_block - wall.string.at(x) if len(wall.string.points) > 1 else ZERO


def places_of(wall: Wall, offsets: Offsets, figures: Figures) -> tuple[Place, ...]:
    """Return every place where the string was read, from the left; none where only one reading was taken."""
    points = wall.string.points
    if len(points) < 2:
        return ()
    places = []
    for (x, reading), off in zip(points, wall.string.off_line(), strict=True):
        line = offsets.back - proud(wall, x, figures)
        places.append(Place(x, reading, line, line - offsets.foam_face - wall.lean, -off))
    return tuple(places)


def swung(wall: Wall, foam_face: Length, back: Length, figures: Figures) -> Saying | None:
    """Return what the back line could be if it need not be parallel to the string; None where that wins no floor.

    It touches the concrete's outline on both sides of the middle of the wall, which takes the least floor, and is turned
    by no more than shows. It is told and never built: in front of the worst hump, at most half the wall from its middle, a
    line turned by 1/2 in over the wall stands 1/4 in nearer at the middle at most, so that it wins no more than 1/4 in by
    the wall's length (a third of a square foot over 16 ft). For that every cap strip would taper, every fireblock would
    have a width of its own, both ends another F, and the finished room would be out of square by all of the turn.
    """
    if len(wall.string.points) < 2:
        return None
    xs = [Length(0), *(x for x, _ in wall.string.points if ZERO < x < wall.length), wall.length]
    points = [(x.ticks, proud(wall, x, figures).ticks) for x in xs]
    middle = Fraction(wall.length.ticks, 2)
    chords = [
        ((a, b), Fraction(b[1] - a[1], b[0] - a[0]))
        for a, b in product(points, points)
        if a[0] <= middle <= b[0] and a[0] < b[0]
    ]
    _, slope = max(chords, key=lambda chord: (chord[0][0][1] + chord[1] * (middle - chord[0][0][0]), -abs(chord[1])))
    most = Fraction(figures.swing_most.ticks, wall.length.ticks)
    slope = min(most, max(-most, slope))
    at_middle = max(out - slope * (x - middle) for x, out in points)
    rests = wall.smallest_string.rests
    left, right = (
        (foam_face + wall.lean + Length(-int(-(at_middle + turn) // 1), rests)).up_to(figures.back_step)
        for turn in (-slope * middle, slope * middle)
    )
    won = back * 2 - left - right
    if won <= ZERO:
        return None
    floor = won.inch * wall.length.inch / 2
    return saying("alternative.swung", left=left, right=right, out=abs(right - left), floor=floor)


def breaks_sheet(places: tuple[Place, ...], figures: Figures) -> tuple[Place, ...]:
    """Return the humps and hollows that a dab of glue does not make up for."""
    return tuple(place for place in places if abs(place.out) > figures.glue_most)
