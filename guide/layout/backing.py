"""Wood behind what will hang on the wall: flat blocks between the studs, flush with their room face."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from guide.layout.openings import Stretch
from guide.layout.outlets import outlet_room
from guide.layout.parts import FULL_HEIGHT, Box, Decision, Kind, Material, Part, Remark, over_slab, overlap
from guide.layout.site import Site
from guide.layout.studs import Framing
from guide.lengths import ZERO, Length
from guide.reference.sayings import saying
from guide.survey.room import thing_name
from guide.survey.things import Fixture

UPRIGHT = (*FULL_HEIGHT, Kind.TRIMMER, Kind.CRIPPLE)
TALL_ROWS = ("screen",)
"""What gets two blocks over each other in every row, in place of a 2x8: its bracket is never quite where it was said."""


def backing_of(site: Site, framing: Framing, others: Sequence[Part]) -> tuple[list[Part], list[Decision], list[Remark]]:
    """Return the blocks behind everything that will hang on a wall, bay by bay, in the order the things were named.

    A bay where an opening, a pipe, an old electrical box or other wood is in the way gets none, and a remark says so;
    where header, sill or a block is there already nothing more is needed.
    """
    parts: list[Part] = []
    decisions: list[Decision] = []
    remarks: list[Remark] = []
    for fixture in site.wall.fixtures:
        mine: list[Part] = []
        missed: list[Length] = []
        for low in _rows(site, fixture):
            for bay in _bays(site, framing, fixture, low):
                block = _block(site, fixture, bay, low)
                if _in_the_way(site, framing, block):
                    missed.append(bay[0])
                elif not any(_shares(site, block, other) for other in (*framing.parts, *others, *parts, *mine)):
                    mine.append(block)
        what = thing_name(fixture.place)
        remarks += [
            Remark(saying("remark.backing_missing", what=what, at=x - site.start), x)
            for x in sorted({x.ticks: x for x in missed}.values())
        ]
        if mine:
            said = saying(
                "decision.backing", what=what, kind=fixture.what, count=len(mine), low=fixture.low, high=_high(fixture)
            )
            decisions.append(Decision(f"{fixture.place}.backing", site.letter, said))
        parts += mine
    return parts, decisions, remarks


def _high(fixture: Fixture) -> Length:
    return fixture.high if fixture.high is not None and fixture.high > fixture.low else fixture.low


def _rows(site: Site, fixture: Fixture) -> list[Length]:
    """Return the lower edges of all rows of blocks: one about the lowest screw, one about the highest, if they part."""
    tall, high = site.figures.stud_deep, _high(fixture)
    at = [fixture.low, high] if high - fixture.low > tall else [(fixture.low + high) // 2]
    rows = [z - tall // 2 for z in at]
    if fixture.what in TALL_ROWS:
        # the second block on the far side, so that no screw meets the seam between the two
        rows += [rows[0] - tall, *(row + tall for row in rows[1:])]
    return rows


def _bays(site: Site, framing: Framing, fixture: Fixture, low: Length) -> Iterator[Stretch]:
    """Yield the bays that a thing hangs before, between two uprights that both stand at that height."""
    high = low + site.figures.stud_deep
    stand = sorted(
        (p for p in framing.parts if p.kind in UPRIGHT and _at_height(site, p, low, high)), key=lambda p: p.box.x0
    )
    for left, right in pairwise(stand):
        x0, x1 = left.box.x1, right.box.x0
        if x1 - x0 >= site.figures.bay_pack and overlap(x0, x1, fixture.start, fixture.end):
            yield x0, x1


def _at_height(site: Site, part: Part, low: Length, high: Length) -> bool:
    z0, z1 = (level.at(site.wall, part.centre) for level in (part.box.z0, part.box.z1))
    return z0 <= low and high <= z1


def _block(site: Site, fixture: Fixture, bay: Stretch, low: Length) -> Part:
    face = site.offsets.face
    box = Box(*bay, face - site.figures.stud_thick, face, over_slab(low), over_slab(low + site.figures.stud_deep))
    heights = (value.rests for _, value in site.wall.height.points)
    old = (box.at.rests | box.height.rests for box in site.wall.boxes)
    rests = site.things.union(fixture.rests, {site.wall.ref("fixtures"), site.wall.ref("boxes")}, *heights, *old)
    return Part(
        Kind.BACKING,
        site.letter,
        Material.STUD,
        box,
        (bay[1] - bay[0]).down_to(site.figures.cut_step),
        saying("part.backing", what=fixture.what, low=low),
        placed_by=rests,
    )


def _in_the_way(site: Site, framing: Framing, block: Part) -> bool:
    """Say whether an opening, a pipe or an old electrical box is where a block would be."""
    box, figures = block.box, site.figures
    low, high = box.z0.off, box.z1.off
    if box.x1 - box.x0 > figures.stud_spacing + figures.stud_spacing // 2:
        return True
    for hole in framing.holes:
        bottom = hole.bottom.at(site.wall, block.centre) if hole.bottom else ZERO
        if overlap(box.x0, box.x1, hole.x0, hole.x1) and overlap(
            low, high, bottom, hole.top.at(site.wall, block.centre)
        ):
            return True
    for pipe in site.wall.pipes:
        side = figures.pipe_side
        beside = overlap(box.x0, box.x1, pipe.left_edge - side, pipe.right_edge + side)
        if beside and pipe.out > box.y0 and (pipe.run == "standing" or overlap(low, high, *pipe.heights)):
            return True
    rooms = [outlet_room(site, each) for each in site.wall.boxes if each.kind == "existing"]
    return any(overlap(box.x0, box.x1, o.x0, o.x1) and overlap(low, high, o.z0.off, o.z1.off) for o in rooms)


def _shares(site: Site, block: Part, other: Part) -> bool:
    a, b, x = block.box, other.box, block.centre
    flat = overlap(a.x0, a.x1, b.x0, b.x1) and overlap(a.y0, a.y1, b.y0, b.y1)
    return flat and any(
        overlap(a.z0.off, a.z1.off, b.z0.at(site.wall, at), b.z1.at(site.wall, at)) for at in (a.x0, x, a.x1)
    )
