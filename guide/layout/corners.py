"""Corners and ends: which wall runs through, how far the plates stop short, where the first sheet of drywall starts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from guide.layout.parts import Decision, End, Offsets
from guide.lengths import ZERO, Length, inches
from guide.reference.figures import Figures
from guide.reference.sayings import saying
from guide.survey.model import Survey, Wall


@dataclass(frozen=True)
class Corner:
    """A corner between two walls of this job."""

    left_wall: str
    """The wall whose right end is in the corner."""
    right_wall: str
    """The wall whose left end is in the corner."""
    through: str
    """The one of them that runs through."""
    rests: frozenset[str]
    decision: Decision


def corners_of(survey: Survey) -> dict[tuple[str, str], Corner]:
    """Return the corners between walls of this job, by (wall, `left` or `right`): each corner stands under both."""
    found: dict[tuple[str, str], Corner] = {}
    for wall in survey.walls:
        other = survey.by_letter.get(wall.right_joined or "")
        if other is not None:
            corner = _corner(wall, other)
            found[wall.letter, "right"] = corner
            found[other.letter, "left"] = corner
    return found


def _corner(wall: Wall, other: Wall) -> Corner:
    name = f"{wall.letter}.corner_right"
    if wall.right_first in ("this wall", "other wall"):
        through, butt = (wall, other) if wall.right_first == "this wall" else (other, wall)
        said = saying("decision.corner_said", through=through.letter, butt=butt.letter)
        rests = frozenset({wall.ref("right_first")})
        decision = Decision(name, wall.letter, said)
    else:
        through, butt = (wall, other) if wall.length >= other.length else (other, wall)
        said = saying("decision.corner_longer", through=through.letter, butt=butt.letter)
        rests = frozenset({wall.ref("right_first")}) | wall.length.rests | other.length.rests
        decision = Decision(name, wall.letter, said, (saying("alternative.corner_other", through=butt.letter),))
    return Corner(wall.letter, other.letter, through.letter, rests, decision)


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
    outside corner the through wall runs on past the concrete by the neighbour's F, the butt wall by its B. A neighbour
    that is not in this job is taken to be built like this wall.
    """
    what = wall.left_end if side == "left" else wall.right_end
    if what == "open end":
        return End(what, None, None, Length(0, frozenset({wall.ref(side)})), ZERO, ZERO, ZERO)
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
    else:
        through = corner.through == wall.letter
        neighbour = corner.left_wall if side == "left" else corner.right_wall
        rests = corner.rests
        round_it = survey.by_letter[neighbour]
        other, case, shelf = offsets[neighbour], cases[neighbour], round_it.shelf
        sheeted_first = _sheeted_first(wall, round_it)
        lengths = wall.length.rests | round_it.length.rests
    lap = ZERO if sheeted_first else inches(survey.basement.drywall).on("basement.drywall")
    parted = case != cases[wall.letter]
    edge = other.back if not parted and case == 1 else other.face  # where the neighbour's cap, or its plate, ends
    if what == "outside corner":
        # the butt wall's drywall covers the end of the through wall's framing, whose cap covers the corner
        clear = face = -(other.face if through else other.back).with_rests(rests)
        first_sheet = ZERO if through else -(figures.stud_deep + lap)
        cap = -edge if through else shelf
    else:
        clear, face = (other.back if through else other.face).with_rests(rests), other.drywall
        first_sheet = (figures.stud_deep if through else ZERO) + lap
        cap = -shelf if through else edge
    first_sheet, cap = first_sheet.with_rests(lengths), cap.with_rests(rests)
    return End(what, through, neighbour, clear, first_sheet, face, cap, parted)


def _sheeted_first(wall: Wall, other: Wall) -> bool:
    """Drywall goes up on the longer wall first; of two equal ones, on the one that comes first in the walk."""
    if wall.length != other.length:
        return wall.length > other.length
    return (len(wall.letter), wall.letter) < (len(other.letter), other.letter)


def end_decisions(wall: Wall, ends: tuple[End, End]) -> tuple[Decision, ...]:
    """Return what was taken for granted at corners whose other wall is not in this job."""
    keys = {"inside corner": "corner", "outside corner": "outside"}
    return tuple(
        Decision(
            f"{wall.letter}.corner_{side}",
            wall.letter,
            saying(
                f"decision.{keys[end.what]}_alone_{'through' if end.through else 'butt'}",
                side=side,
                clear=abs(end.clear),
            ),
        )
        for side, end in zip(("left", "right"), ends, strict=True)
        if end.through is not None and end.neighbour is None
    )
