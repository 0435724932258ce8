"""Where a wall's framing ends: how far from the concrete, at what slant, and what stands round the corner.

Two walls that do not meet at a right angle end on slanted lines. Everything along a wall is measured between long points;
this module owns what lies between the long and the short one, worked out in exact fractions to the nearest tick.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from guide.lengths import ZERO, Length, from_inches, greatest, least
from guide.survey.traverse import Vector, degrees_of

Point = tuple[Length, Length]


@dataclass(frozen=True, slots=True)
class Offsets:
    """How far things stand from the concrete."""

    back: Length
    """B: to the back of the studs."""
    face: Length
    """F: to the room face of the studs."""
    drywall: Length
    """D: to the face of the drywall."""
    hump: Length
    """The worst hump toward the room, lean included."""
    foam_face: Length
    """To the room face of the foam, where the concrete is flat."""

    @property
    def deep(self) -> Length:
        """How deep the studs are."""
        return self.face - self.back


@dataclass(frozen=True, slots=True)
class End:
    """One end of a wall's framing."""

    what: str
    """`inside corner`, `outside corner`, `framed wall` or `open end`."""
    through: bool | None
    """At a corner: this wall runs through (True) or butts (False); None where both are mitred, and at no corner."""
    neighbour: str | None
    """The letter of the wall of this job round the corner, or that a partition ends at."""
    clear: Length
    """From the concrete corner to the end of the plates, their long point; below 0 where they run on past an outside corner."""
    first_sheet: Length
    """From the end of the plates to where drywall starts at this end; below 0 where it runs on past them."""
    face: Length
    """From the concrete corner to the face of the drywall, or of the framed wall, that stands across this end.

    Round an outside corner nothing does: as `clear`.
    """
    cap: Length
    """From the concrete corner to the end of the cap, in line with the face of this wall's concrete; below 0 where it runs on
    over the corner to the sill."""
    over: bool = True
    """At a corner: the cap of this wall runs on over it, and the other's ends at its front."""
    back: Length = ZERO
    """At a corner: from it to the back of the other wall's studs, in line with this wall's concrete; round an outside corner
    to their face, and below 0."""
    other: Offsets | None = None
    """Where both are mitred: how far things stand from the concrete of the wall round the corner."""
    shelf: Length = ZERO
    """Where both are mitred: the bare shelf of that wall."""
    turn: Vector = (Fraction(0), Fraction(1))
    """Cosine and sine of the turn to the right from the wall on the left of the corner to the one on its right."""
    slant: Length = ZERO
    """How much shorter the plates are at their room face than at the concrete side; below 0 longer."""
    no_ledge: bool = False
    """The wall round the corner has no ledge there: its concrete goes on up."""
    caps_part: bool = False
    """The caps of the two walls lie at different heights here, so that a hole stays between them."""

    @property
    def mitred(self) -> bool:
        """Whether the plates of both walls are mitred here, so that neither runs through."""
        return self.through is None and bool(self.slant.ticks)

    @property
    def off_square(self) -> Fraction:
        """By how many degrees from a square cut the plates are sawn here: half the turn where both are mitred."""
        if not self.slant.ticks:
            return Fraction(0)
        turn = abs(degrees_of(self.turn))
        return turn / 2 if self.mitred else abs(90 - turn)

    def nose(self, thick: Length, deep: Length) -> Length:
        """Return how far from the long point something so thick can end that lies flat at the long side of a slanted end.

        `deep` is how deep the plates are. Rounds up to a tick.
        """
        return Length(-(-abs(self.slant.ticks) * thick.ticks // deep.ticks), self.slant.rests)

    def at(self, depth: Length, out: Length) -> Length:
        """Return how far from the corner, and so far out from this wall's concrete, one is so deep before the other's.

        At a square inside corner that is the depth itself, at an outside one less it. To the nearest tick.
        """
        cosine, sine = self.turn
        return from_inches((depth.inch - out.inch * cosine) / sine).with_rests(depth.rests | out.rests)

    def mitre(self, y0: Length, depth0: Length, y1: Length, depth1: Length) -> Point:
        """Return where something mitred here has its long point, and its slant.

        It lies from y0 to y1 out from this wall's concrete, and its mate from depth0 to depth1 out from the other's.
        """
        near, far = self.at(depth0, y0), self.at(depth1, y1)
        return least(near, far), far - near

    def parallel(self, at: Length, y0: Length, y1: Length) -> Point:
        """Return where something that ends in line with the other wall has its long point, and its slant.

        `at` is where that line leaves this wall's concrete; the thing lies from y0 to y1 out from it.
        """
        if not self.turn[0]:  # square, whatever the depth
            return at, ZERO
        near, far = (at + self.at(ZERO, y) for y in (y0, y1))
        return least(near, far), far - near


def slanted(along: Point, out: Point, slants: Point) -> tuple[Point, Point, Point, Point]:
    """Return the corners of something from above whose ends slant: along the concrete side from the left, then back."""
    left, right = slants
    return (
        (along[0] + greatest(ZERO, -left), out[0]),
        (along[1] - greatest(ZERO, -right), out[0]),
        (along[1] - greatest(ZERO, right), out[1]),
        (along[0] + greatest(ZERO, left), out[1]),
    )


def squared(run: Point, whole: Point, slants: Point) -> tuple[Point, Point]:
    """Return a run inside a whole whose ends slant, and the slants that are its own.

    A run that begins or ends where the whole does has its slant; one that begins beside the slant begins past it, square.
    """
    (x0, x1), (start, end) = run, whole
    short = start + abs(slants[0]), end - abs(slants[1])
    left, right = slants[0] if x0 == start else ZERO, slants[1] if x1 == end else ZERO
    return (x0 if x0 == start else greatest(x0, short[0]), x1 if x1 == end else least(x1, short[1])), (left, right)
