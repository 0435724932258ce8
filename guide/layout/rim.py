"""The bays over the concrete: foam against the rim, cut for each bay before cap and plate close them off for good.

Where the joists run into the wall each bay between two of them has one piece; where they run alongside, pieces lie end
to end between the joist blocks, which reach through to the rim. How far the outermost bays go on behind the corner
nobody has told, so those pieces end at the concrete's corner and say that their bay is measured first.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from guide.layout.cap import between
from guide.layout.ends import End
from guide.layout.openings import Stretch
from guide.layout.overhead import joists_over
from guide.layout.parts import Box, Kind, Material, Part, Remark, under_joists
from guide.layout.site import Site
from guide.lengths import ZERO, Length, greatest
from guide.reference.sayings import saying


def rim_of(site: Site, blocks: Sequence[Part]) -> tuple[list[Part], list[Remark]]:
    """Return the foam of the bays over the concrete; none where foam sits there already and nobody asked for the joists.

    Alongside, where no hand gets between rim and first joist, there is none either, and a remark says so.
    """
    figures, wall, deep = site.figures, site.wall, site.basement.joist_depth
    if deep is None:
        return [], []
    thick, gap = site.basement.foam_thickness, figures.rim_gap
    if wall.joists == "alongside" and wall.parallel_gap is not None and wall.parallel_gap < figures.hand_room + thick:
        return [], [Remark(saying("remark.rim_tight", gap=wall.parallel_gap), site.start)]
    weighed = frozenset({"basement.rim", wall.ref("joists")}).union(*(block.placed_by for block in blocks))
    if wall.parallel_gap is not None:  # whether there are blocks
        weighed |= wall.parallel_gap.rests | wall.shelf.rests | site.offsets.back.rests | thick.rests
    y0 = -_depth(site, wall.shelf)
    tall = (deep - gap * 2).down_to(figures.foam_step).with_rests(weighed)
    first, last = _ends(site)
    parts = []
    for start, end in _bays(site, blocks):
        x0, x1 = start + gap, end - gap
        wide = (x1 - x0).down_to(figures.foam_step).with_rests(weighed)
        if wide < figures.stud_thick:
            continue
        box = Box(x0, x1, y0, y0 + thick, under_joists(-gap), under_joists(-gap - tall))
        why = saying("part.rim_end" if start == first or end == last else "part.rim")
        parts.append(
            Part(Kind.RIM, site.letter, Material.FOAM, box, tall, why, wide=wide, placed_by=weighed, lies=True)
        )
    return parts, []


def _ends(site: Site) -> Stretch:
    """Return where the rim begins and ends: at the concrete's corner, or where the rim round an outside corner stands."""
    left, right = (_round_corner(site, end) for end in (site.left, site.right))
    return left, site.wall.length - right


def _round_corner(site: Site, end: End) -> Length:
    if end.what != "outside corner":
        return ZERO
    back, thick = -_depth(site, site.wall.shelf), site.basement.foam_thickness
    return greatest(*(end.at(-_depth(site, end.shelf), y) for y in (back, back + thick)))


def _depth(site: Site, shelf: Length) -> Length:
    """Return how far behind the face of the concrete the rim is taken to stand: room enough for the foam."""
    return greatest(shelf + site.figures.rim_back, site.basement.foam_thickness)


def _bays(site: Site, blocks: Sequence[Part]) -> list[Stretch]:
    """Return the clear bays from the left, between joists or beside the joist blocks, none longer than one person lifts."""
    figures, (start, end) = site.figures, _ends(site)
    if site.wall.joists == "alongside":
        room = figures.stud_thick // 2
        solid = [(block.box.x0 - room, block.box.x1 + room) for block in blocks]
    else:
        solid = list(joists_over(site.wall, figures))
    return [piece for bay in between(site, start, end, solid) for piece in _lifted(bay, figures.rim_piece)]


def _lifted(bay: Stretch, longest: Length) -> list[Stretch]:
    """Part a bay evenly into pieces that one person lifts into it."""
    count = max(1, -(-(bay[1] - bay[0]).ticks // longest.ticks))
    rests = bay[0].rests | bay[1].rests
    cuts = [bay[0], *(bay[0] + Length((bay[1] - bay[0]).ticks * n // count, rests) for n in range(1, count)), bay[1]]
    return list(pairwise(cuts))
