"""Heights over the slab that more than one room of the layout asks for: the cap's case, and the room over the concrete."""

from __future__ import annotations

from guide.lengths import SIXTY_FOURTH, ZERO, Length, greatest, least
from guide.reference.figures import Figures
from guide.survey.model import Wall


def case_of(wall: Wall, figures: Figures) -> int:
    """Return 1 when the cap lies on the concrete and its edge meets the edge of the top plate, else 2; 3 far over the concrete.

    In the third case the cap runs under the joists as in the second, and a ledge of plywood lies on the concrete besides,
    all along or, where its top steps, on the low part. Over a step the cap never lies on the concrete.
    The person may say that it runs under the joists; that it lies on the concrete only where it can.
    """
    if ledges_on(wall, figures):
        return 3
    if wall.is_partition:  # its plate goes up to the joists, and there is no concrete to cap
        return 1
    return 1 if cap_can_lie(wall, figures) and wall.cap != "under the joists" else 2


def cap_can_lie(wall: Wall, figures: Figures) -> bool:
    """Say whether a cap on the concrete would close the gap: its edge and the plate's face each other all along the wall.

    Half an inch is enough. Where the plywood does not even fit between concrete and joists, it cannot lie there.
    """
    fits = over_concrete(wall, ZERO, wall.length) >= figures.plywood and not wall.concrete.steps
    return fits and cap_meets_plate(wall, figures) >= figures.cap_overlap


def ledges_on(wall: Wall, figures: Figures) -> tuple[tuple[Length, Length], ...]:
    """Return the stretches on which a ledge lies: between steps, all that ends far enough under the joists."""
    edges = [ZERO, *(x for step in wall.concrete.steps for x in step), wall.length]
    parts = zip(edges[::2], edges[1::2], strict=True)
    return tuple((x0, x1) for x0, x1 in parts if over_concrete(wall, x0, x1) >= figures.ledge_from)


def cap_meets_plate(wall: Wall, figures: Figures) -> Length:
    """Return by how much a cap lying on the concrete faces the edge of the top plate at the worst place; may be negative.

    Heights run straight between readings, so the worst place is at a reading.
    """
    overlaps = []
    for x in readings_of(wall):
        joists, concrete = wall.height.at(x), wall.concrete.at(x)
        top = least(concrete + figures.plywood, joists)
        overlaps.append(top - greatest(concrete, joists - figures.stud_thick))
    return least(*overlaps)


def over_concrete(wall: Wall, x0: Length, x1: Length) -> Length:
    """Return the least height between the concrete and the joists between two places, to a sixty-fourth.

    Both are rounded down to a tick between readings; that must not decide whether something fits.
    """
    places = [x0, *(x for x in readings_of(wall) if x0 < x < x1), x1]
    return least(*(wall.height.at(x) - wall.concrete.at(x) for x in places)).near(SIXTY_FOURTH)


def most_over_concrete(wall: Wall) -> Length:
    """Return the greatest height between the concrete and the joists along the wall."""
    return greatest(*(wall.height.at(x) - wall.concrete.at(x) for x in readings_of(wall)))


def foam_top(wall: Wall, figures: Figures, cap_case: int, x0: Length, x1: Length) -> Length:
    """Return the height over the slab that foam between two places may have.

    That is the concrete where it is lowest; under a cap at the joists the foam stays a sealed gap below it.
    """
    top = wall.concrete.least_over(x0, x1)
    if cap_case != 1:
        top = least(top, wall.height.least_over(x0, x1) - figures.plywood - figures.cap_under_foam)
    return top


def readings_of(wall: Wall) -> list[Length]:
    """Return every place along a wall where joists or concrete were read, from the left."""
    return sorted({x for x, _ in (*wall.height.points, *wall.concrete.points)})
