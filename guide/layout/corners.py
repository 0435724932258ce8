"""Corners and ends: which wall runs through, how far the plates stop short, where the first sheet of drywall starts.

A corner out of square by no more than shows over the depth of a stud is framed as a square one. A little more, and one
wall still runs through, the ends of the plates cut to the angle. Wide open, both plates are mitred to half the angle.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from guide.interview.asking import CORNERS
from guide.layout.ends import End, Offsets
from guide.layout.heights import ledges_on
from guide.layout.parts import Decision
from guide.lengths import ZERO, Length, greatest, inches, least
from guide.reference.figures import Figures
from guide.reference.sayings import Saying, saying
from guide.survey.closing import Corner as Measured
from guide.survey.closing import corner_left, corner_right
from guide.survey.model import Survey, Wall
from guide.survey.traverse import Vector, degrees_of


@dataclass(frozen=True)
class Corner:
    """A corner between two walls of this job."""

    left_wall: str
    """The wall whose right end is in the corner."""
    right_wall: str
    """The wall whose left end is in the corner."""
    through: str
    """The one of them that runs through; where both are mitred, the one whose cap does."""
    measured: Measured
    rests: frozenset[str]
    decision: Decision


def corners_of(survey: Survey) -> dict[tuple[str, str], Corner]:
    """Return the corners between walls of this job, by (wall, `left` or `right`): each corner stands under both."""
    found: dict[tuple[str, str], Corner] = {}
    for wall in survey.walls:
        other = survey.by_letter.get(wall.right_joined or "")
        if other is not None:
            corner = _corner(wall, other, corner_right(survey, wall, other))
            found[wall.letter, "right"] = corner
            found[other.letter, "left"] = corner
    return found


def _corner(wall: Wall, other: Wall, measured: Measured) -> Corner:
    name, joint = f"{wall.letter}.corner_right", measured.joint
    beat: tuple[Saying, ...] = ()
    if wall.right_first in ("this wall", "other wall"):
        through, butt = (wall, other) if wall.right_first == "this wall" else (other, wall)
        said = saying("decision.corner_said", through=through.letter, butt=butt.letter)
        rests = frozenset({wall.ref("right_first")})
    else:
        through, butt = (wall, other) if wall.length >= other.length else (other, wall)
        said = saying("decision.corner_longer", through=through.letter, butt=butt.letter)
        rests = frozenset({wall.ref("right_first")}) | wall.length.rests | other.length.rests
        beat = (saying("alternative.corner_other", through=butt.letter),)
    if joint == "mitred":
        beat = ()
    if joint != "square":
        key, off = ("mitred", measured.mitre) if joint == "mitred" else ("cut", measured.off_square)
        angles = {"degrees": half_degrees(measured.degrees), "off": half_degrees(off)}
        said = saying(f"decision.corner_{key}", through=through.letter, butt=butt.letter, **angles)
    return Corner(
        wall.letter,
        other.letter,
        through.letter,
        measured,
        rests | measured.rests,
        Decision(name, wall.letter, said, beat),
    )


def half_degrees(angle: Fraction) -> str:
    """Print an angle to the nearest half degree, as a saw can be set: `22 1/2`."""
    whole, half = divmod(round(angle * 2), 2)
    return f"{whole} 1/2" if half else str(whole)


def _turn(measured: Measured, what: str) -> Vector:
    """Return the turn that is framed: that of a square corner where it is out by no more than shows."""
    if measured.joint == "square":
        return Fraction(0), Fraction(-1 if what == "outside corner" else 1)
    return measured.turn


def end_of(
    side: str,
    wall: Wall,
    survey: Survey,
    corners: Mapping[tuple[str, str], Corner],
    offsets: Mapping[str, Offsets],
    cases: Mapping[str, int],
    figures: Figures,
) -> End:
    """Return one end of a wall's framing.

    At an inside corner the through wall stops the neighbour's B short of the concrete, the butt wall its F. At an
    outside corner the through wall runs on past the concrete by the neighbour's F, the butt wall by its B. Mitred plates
    reach from where the backs meet to where the faces do. A neighbour that is not in this job is taken to be built like
    this wall.
    """
    what = wall.left_end if side == "left" else wall.right_end
    if what == "open end":
        asked = f"{side}_meets" if wall.is_partition else side
        return End(what, None, None, Length(0, frozenset({wall.ref(asked)})), ZERO, ZERO, ZERO)
    if what == "framed wall" and wall.is_partition:
        return _meets(side, wall, survey, offsets)
    if what == "framed wall":
        clear = ((wall.left_framed if side == "left" else wall.right_framed) or ZERO).on(wall.ref(side))
        return End(what, None, None, clear, ZERO, clear, clear)
    corner = corners.get((wall.letter, side))
    if corner is None:
        first = wall.left_first if side == "left" else wall.right_first
        through = first != "other wall"
        neighbour, rests = None, frozenset({wall.ref(side), wall.ref(f"{side}_first")})
        other, case, shelf = offsets[wall.letter], cases[wall.letter], wall.shelf
        sheeted_first, lengths = True, frozenset[str]()
        measured = corner_right(survey, wall, wall) if side == "right" else corner_left(survey, wall)
        no_ledge = False
    else:
        through = corner.through == wall.letter
        neighbour = corner.left_wall if side == "left" else corner.right_wall
        rests = corner.rests
        round_it = survey.by_letter[neighbour]
        other, case, shelf = offsets[neighbour], cases[neighbour], round_it.shelf
        # round an outside corner the sheets of the butt wall lap the edge of those of the through wall
        sheeted_first = through if what == "outside corner" else _sheeted_first(wall, round_it)
        lengths = wall.length.rests | round_it.length.rests
        measured = corner.measured
        there = ZERO if side == "right" else round_it.length
        low = case == 3 and any(x0 <= there <= x1 for x0, x1 in ledges_on(round_it, figures))
        no_ledge = cases[wall.letter] == 3 and not low
    lap = ZERO if sheeted_first else inches(survey.basement.drywall).on("basement.drywall")
    parted = (case == 1) is not (cases[wall.letter] == 1)  # on the concrete here, under the joists there
    edge = other.back if not parted and case == 1 else other.face  # where the neighbour's cap, or its plate, ends
    inside, joint = what == "inside corner", measured.joint
    turn, angle = _turn(measured, what), measured.rests
    rests |= angle
    # at an outside corner the butt wall's drywall covers the end of the through wall's framing, whose cap covers the corner
    runs_on = through == inside
    end = End(
        what, through, neighbour, ZERO, ZERO, ZERO, ZERO, over=through, turn=turn, no_ledge=no_ledge, caps_part=parted
    )
    at, own = end.at, offsets[wall.letter]
    deep = other.back if runs_on else other.face
    near, far = at(deep, own.back), at(deep, own.face)
    covers = other.face if not inside and through else other.face + lap
    sheet = greatest(at(covers, own.face), at(covers, own.drywall))
    if joint == "mitred":
        near, far = at(other.back, own.back), at(other.face, own.face)
        sheet = at(other.drywall, own.drywall) if inside else far
    clear = least(near, far)
    if joint == "square":  # nothing of this wall's own depth is in it
        clear, near, far = (Length(each.ticks, deep.rests) for each in (clear, near, far))
        first_sheet = Length((sheet - clear).ticks, lap.rests)
        face = Length(at(other.drywall, own.drywall).ticks, other.drywall.rests)
    else:
        first_sheet, face = sheet - clear, at(other.drywall, own.drywall)
    clear = clear.with_rests(rests)
    if joint == "mitred":
        end = replace(end, other=other)
    if joint == "mitred" or not inside:  # the rim goes on round an outside corner
        end = replace(end, shelf=shelf)
    return replace(
        end,
        through=None if joint == "mitred" else through,
        clear=clear,
        first_sheet=first_sheet.with_rests(lengths),
        face=face.with_rests(angle) if inside else clear,
        cap=at(-shelf if runs_on else edge, ZERO).with_rests(rests),
        back=at(other.back if inside else other.face, ZERO).with_rests(rests),
        slant=(far - near).with_rests(rests),
    )


def _meets(side: str, wall: Wall, survey: Survey, offsets: Mapping[str, Offsets]) -> End:
    """Return the end of a partition that meets a framed wall: at its face, and its sheets at the drywall that hangs there.

    It is measured to bare concrete where a wall of this job stands against that, else to the face it ends at.
    """
    told = (wall.ref(f"{side}_meets"), wall.ref(f"{side}_wall"))
    other = survey.by_letter.get(wall.met(side) or "")
    clear = ZERO if other is None or other.is_partition else offsets[other.letter].face
    board = ZERO if other is None else inches(survey.basement.drywall).on("basement.drywall")
    clear = clear.on(*told)
    letter = other.letter if other is not None else None
    return End("framed wall", None, letter, clear, board.on(*told), clear + board, clear)


def _sheeted_first(wall: Wall, other: Wall) -> bool:
    """Drywall goes up on the longer wall first; of two equal ones, on the one that comes first in the walk."""
    if wall.length != other.length:
        return wall.length > other.length
    return (len(wall.letter), wall.letter) < (len(other.letter), other.letter)


def end_decisions(wall: Wall, ends: tuple[End, End]) -> tuple[Decision, ...]:
    """Return what was taken for granted at corners whose other wall is not in this job."""
    return tuple(
        Decision(f"{wall.letter}.corner_{side}", wall.letter, _alone(side, end))
        for side, end in zip(("left", "right"), ends, strict=True)
        if end.what in CORNERS and end.neighbour is None
    )


def _alone(side: str, end: End) -> Saying:
    """Say how a wall ends at a corner whose other wall is not in this job."""
    if end.mitred:
        degrees = half_degrees(180 - degrees_of(end.turn))
        return saying("decision.corner_alone_mitred", side=side, degrees=degrees, off=half_degrees(end.off_square))
    what, role = end.what.removesuffix(" corner").replace("inside", "corner"), "through" if end.through else "butt"
    return saying(f"decision.{what}_alone_{role}", side=side, clear=abs(end.clear))
