"""Whether the room closes: the walls walked round by their lengths and corners, and what to tape again if they do not.

A corner is square unless somebody measured it, across marks at 60 and 80 in or by the diagonals of a room of four walls.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import accumulate

from guide.lengths import Length, from_inches
from guide.reference.figures import load_figures
from guide.survey.model import Survey, Wall
from guide.survey.traverse import Traverse, Vector, angle_across, cross, degrees_of, sine_of, size, turned, walk

SQUARE = Fraction(0)
"""Cosine of a square corner."""
FLATTEST = Fraction(1, 5)
"""Sine of the least turn that a corner of framing is laid out for, some 11 degrees: flatter, and two walls are one."""


@dataclass(frozen=True, slots=True)
class Corner:
    """The corner at the right end of a wall of this job."""

    wall: Wall
    other: Wall
    """The next wall."""
    cosine: Fraction
    """Of the angle measured: inside the room at an inside corner, round the concrete less a straight one at an outside one."""
    rests: frozenset[str]
    """The answers that say so; empty where nobody measured and the corner is drawn square."""
    diagonal: str = ""
    """`first` or `second` where it follows from that diagonal of the room."""

    @property
    def turn(self) -> Vector:
        """Cosine and sine of the turn to the right, walking round the room."""
        sine = sine_of(self.cosine)
        return (self.cosine, -sine) if self.wall.right_end == "outside corner" else (-self.cosine, sine)

    @property
    def degrees(self) -> Fraction:
        """The angle between the two walls, seen from the room: under 180 inside, over 180 round an outside corner."""
        return 180 - degrees_of(self.turn)

    @property
    def off_square(self) -> Fraction:
        """By how many degrees it is out of square."""
        return abs(90 - abs(degrees_of(self.turn)))

    @property
    def mitre(self) -> Fraction:
        """By how many degrees from a square cut the plates' ends are sawn where both are mitred: half the turn."""
        return abs(degrees_of(self.turn)) / 2

    @property
    def joint(self) -> str:
        """How the plates meet: `square`, `cut` (butted, their ends cut to the angle), `mitred`, or `none` can be built.

        It is judged by how far the corner is out of square over the depth of a stud.
        """
        figures, (cosine, sine) = load_figures(), self.turn
        out = abs(cosine) * figures.stud_deep.inch
        if out <= figures.corner_square.inch * abs(sine):
            return "square"
        if out <= figures.corner_cut.inch * abs(sine):
            return "cut"
        return "mitred" if cosine > 0 and abs(sine) >= FLATTEST else "none"

    def out_over(self, length: Length) -> Length:
        """How far out of square it is over a length: 0 for a square one, never negative."""
        return from_inches(abs(self.cosine) * length.inch).with_rests(self.rests | length.rests)


@dataclass(frozen=True, slots=True)
class Suspect:
    """A reading that by itself could explain what does not close."""

    what: str
    """`wall`: its length. `corner`: the reading across it. `first` or `second`: that diagonal."""
    walls: tuple[str, ...]
    """The wall, or the two walls of the corner."""
    left_over: Fraction
    """What would still be open, in inches, if this reading were right."""
    guessed: bool
    weight: Fraction
    """The longer the way, or the further the corner from the miss, the likelier the slip."""


@dataclass(frozen=True)
class Miss:
    """How the walk round the room ends."""

    along: Length
    """Along the first wall: positive to the right as you face it."""
    into: Length
    """Square to the first wall: positive into the room."""
    far: Length
    around: Length
    twist: Length
    """How far the corners turn too far or too little, over 10 ft; 0 where none was measured."""
    opens: bool
    """The ends are further apart than readings of this kind explain."""
    twists: bool
    """The corners do not turn once round, by more than readings of this kind explain."""
    worth: tuple[Suspect, ...]
    """The readings most worth taking again, the likeliest first: two."""


def corners_measured(survey: Survey) -> tuple[Corner, ...]:
    """Return the corner at the right end of every wall that meets the next one of this job, in the order walked."""
    return tuple(
        corner_right(survey, wall, other)
        for wall in survey.round_room
        if (other := survey.by_letter.get(wall.right_joined or "")) is not None
    )


def closing(survey: Survey) -> Miss | None:
    """Return how the walk round a closed room ends, or None where the walls close no room or contradict themselves."""
    walls, corners = survey.round_room, corners_measured(survey)
    if survey.waiting or survey.problems or len(corners) != len(walls) or not walls:
        return None
    if walls[-1].right_joined != walls[0].letter:
        return None
    room = walk([wall.length.inch for wall in walls], [corner.turn for corner in corners[:-1]])
    rests = frozenset[str]().union(*(wall.length.rests for wall in walls), *(corner.rests for corner in corners))
    figures, error = load_figures(), room.error
    opens = max(abs(error[0]), abs(error[1])) ** 2 > _allowed(room, corners)
    last = turned(room.courses[-1].heading, corners[-1].turn)
    known = sum(bool(corner.rests) for corner in corners)
    twist = abs(last[1]) * figures.square_over.inch
    turn_error = figures.across_error.inch * figures.square_over.inch / _lever()
    twists = known == len(corners) and (last[0] < 0 or twist**2 > known * turn_error**2)

    def told(value: Fraction) -> Length:
        return from_inches(value).with_rests(rests)

    return Miss(
        told(error[0]),
        told(error[1]),
        told(size(error)),
        told(room.perimeter),
        told(twist),
        opens,
        twists,
        _worth(survey, room, corners, twisted=twists and not opens),
    )


def impossible_diagonals(survey: Survey) -> Iterator[tuple[str, Wall, Wall, Length]]:
    """Yield a diagonal with the two walls that it cannot span: question, walls, diagonal."""
    for question, walls, diagonal in _diagonals(survey):
        for one, other in walls:
            if abs(angle_across(one.length.inch, other.length.inch, diagonal.inch)) >= 1:
                yield question, one, other, diagonal
                break


def _diagonals(survey: Survey) -> Iterator[tuple[str, tuple[tuple[Wall, Wall], tuple[Wall, Wall]], Length]]:
    """Yield each diagonal of a room of four walls and the two pairs of walls it spans from end to end."""
    first, second = survey.basement.diagonal_first, survey.basement.diagonal_second
    if first is None or second is None or len(survey.round_room) != 4 or survey.waiting:
        return
    a, b, c, d = survey.round_room
    yield "basement.diagonal_first", ((a, b), (c, d)), first
    yield "basement.diagonal_second", ((b, c), (d, a)), second


def corner_right(survey: Survey, wall: Wall, other: Wall) -> Corner:
    """Return the corner at the right end of a wall, with the next wall; square where nobody measured it."""
    figures = load_figures()
    for question, pairs, diagonal in _diagonals(survey):
        for one, two in pairs:
            if one is wall:
                cosine = angle_across(one.length.inch, two.length.inch, diagonal.inch)
                if abs(cosine) < 1:
                    rests = diagonal.rests | one.length.rests | two.length.rests
                    return Corner(wall, other, cosine, rests, question.removeprefix("basement.diagonal_"))
    across = wall.across
    if across is None or not survey.given(across.rests):
        return Corner(wall, other, SQUARE, frozenset())
    cosine = angle_across(figures.square_one.inch, figures.square_other.inch, across.inch)
    return Corner(wall, other, cosine, across.rests)


def corner_left(survey: Survey, wall: Wall) -> Corner:
    """Return the corner at the left end of a wall: with the wall before it, or with one like it that is not in this job."""
    before = survey.by_letter.get(wall.left_joined or "")
    if before is None:
        before = replace(wall, right=wall.left_end, right_corner=None, across=wall.left_across)
    return corner_right(survey, before, wall)


def _lever() -> Fraction:
    """How far apart, square to one of them, the two marks of a square corner's check stand: 60 x 80 / 100."""
    one, other = load_figures().square_one.inch, load_figures().square_other.inch
    return one * other / size((one, other))


def _allowed(room: Traverse, corners: tuple[Corner, ...]) -> Fraction:
    """Return the square of what careful readings may leave open: more where a corner was measured far from the end."""
    figures = load_figures()
    allowed = figures.closing_most.inch**2
    for corner, place in zip(corners, _places(room), strict=True):
        if corner.rests:
            allowed += (size(_from(place, room.error)) * figures.across_error.inch / _lever()) ** 2
    return allowed


def _worth(survey: Survey, room: Traverse, corners: tuple[Corner, ...], *, twisted: bool) -> tuple[Suspect, ...]:
    """Return the two readings that best explain the miss by themselves; corners first where only their turn is wrong.

    A wrong length moves the end along its own wall, a wrong corner swings the end round the corner.
    """
    error = room.error
    lengths = [
        Suspect("wall", (wall.letter,), abs(cross(c.heading, error)), bool(survey.unsure(wall.length.rests)), c.length)
        for wall, c in zip(survey.round_room, room.courses, strict=True)
    ]
    swings = []
    for corner, place in zip(corners, _places(room), strict=True):
        if not corner.rests:
            continue
        arm = _from(place, error)
        reach = size(arm)
        left = abs(arm[0] * error[0] + arm[1] * error[1]) / reach if reach else size(error)
        weight = abs(corner.cosine) if twisted else reach
        guessed = bool(survey.unsure(corner.rests))
        swings.append(
            Suspect(corner.diagonal or "corner", (corner.wall.letter, corner.other.letter), left, guessed, weight)
        )
    if twisted:
        return _two(sorted(swings, key=lambda s: (not s.guessed, -s.weight, s.walls)))
    step = load_figures().closing_most.inch
    return _two(sorted(lengths + swings, key=lambda s: (s.left_over // step, not s.guessed, -s.weight, s.walls)))


def _two(likely: list[Suspect]) -> tuple[Suspect, ...]:
    """Return the first two different readings: a diagonal stands behind two corners."""
    first, *rest = likely
    return (first, *[s for s in rest if s.what in ("wall", "corner") or s.what != first.what][:1])


def _places(room: Traverse) -> list[Vector]:
    """Return where each course ends, the start being the origin."""
    return list(accumulate((c.leg for c in room.courses), lambda a, b: (a[0] + b[0], a[1] + b[1])))


def _from(place: Vector, end: Vector) -> Vector:
    return end[0] - place[0], end[1] - place[1]
