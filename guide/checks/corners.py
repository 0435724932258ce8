"""What is wrong with the room as a whole: it does not close, its corners do not turn once round, one is out of square."""

from __future__ import annotations

from collections.abc import Iterator

from guide.checks.findings import Finding, finding
from guide.layout.corners import half_degrees
from guide.lengths import SIXTEENTH, ZERO
from guide.reference.figures import load_figures
from guide.reference.sayings import Saying, saying
from guide.survey.closing import Miss, Suspect, closing, corners_measured
from guide.survey.model import Survey


def corner_findings(survey: Survey) -> Iterator[Finding]:
    """Yield what the lengths, the readings across corners and the diagonals say against each other."""
    miss = closing(survey)
    if miss is not None and miss.opens:
        first, second = (_named(suspect) for suspect in miss.worth)
        yield finding(
            "closing", far=miss.far, where=_where(miss, survey), around=miss.around, first=first, second=second
        )
    elif miss is not None and miss.twists:
        first, second = (_named(suspect) for suspect in miss.worth)
        yield finding("corners_turn", out=miss.twist, first=first, second=second)
    yield from _out_of_square(survey, miss)
    if survey.basement.square == "both diagonals" and survey.basement.diagonal_first is None:
        yield finding("diagonals_idle")


def _out_of_square(survey: Survey, miss: Miss | None) -> Iterator[Finding]:
    """A corner that was measured, and is out by more than shows: not while the readings contradict each other.

    What is framed at its angle is no fault.
    """
    if miss is not None and (miss.opens or miss.twists):
        return
    for corner in corners_measured(survey):
        swung = corner.wall if corner.wall.length < corner.other.length else corner.other
        out = corner.out_over(swung.length)
        if corner.joint != "square":
            one, other = corner.wall.letter, corner.other.letter
            yield finding("corner_angle", one=one, other=other, degrees=half_degrees(corner.degrees))
        elif out > load_figures().square_shows:
            # at an outside corner a wide angle of the walk is a sharp edge of concrete
            wide = (corner.cosine < 0) != (corner.wall.right_end == "outside corner")
            yield finding(
                "out_of_square",
                one=corner.wall.letter,
                other=corner.other.letter,
                out=out,
                swung=swung.letter,
                way=saying("closing.wider" if wide else "closing.sharper"),
            )


def _named(suspect: Suspect) -> Saying:
    if suspect.what == "wall":
        return saying("closing.wall", wall=suspect.walls[0])
    if suspect.what == "corner":
        return saying("closing.corner", one=suspect.walls[0], other=suspect.walls[1])
    return saying(f"closing.diagonal_{suspect.what}")


def _where(miss: Miss, survey: Survey) -> Saying:
    """Say where the end lies: along the first wall, away from it, or both where both are worth saying."""
    first = survey.round_room[0].letter
    along = saying("closing.right" if miss.along > ZERO else "closing.left", first=first, size=abs(miss.along))
    into = saying("closing.into" if miss.into > ZERO else "closing.back", first=first, size=abs(miss.into))
    said = [way for way, size in ((along, miss.along), (into, miss.into)) if abs(size) >= SIXTEENTH]
    return said[0] if len(said) == 1 else saying("closing.both", one=said[0], other=said[1])
