"""Electrical boxes at the new face: beside a stud, clear of fireblocks, packs, pipes and openings."""

from __future__ import annotations

from dataclasses import dataclass, replace

from guide.layout.parts import Box, Decision, Kind, Material, Part, Remark, over_slab, overlap
from guide.layout.site import Site
from guide.layout.studs import Framing
from guide.lengths import ZERO, Length
from guide.reference.sayings import saying
from guide.survey.room import thing_name
from guide.survey.things import OutletBox, Pipe


@dataclass(frozen=True)
class _Place:
    part: Part
    moved: Length
    beside: Length
    """Left edge of the stud it hangs on."""


def boxes_of(site: Site, framing: Framing, others: list[Part]) -> tuple[list[Part], list[Decision], list[Remark]]:
    """Return the boxes of a wall. A new one goes beside the nearest stud with room; an old one stays where it is if it can."""
    parts: list[Part] = []
    decisions: list[Decision] = []
    remarks: list[Remark] = []
    for box in sorted(site.wall.boxes, key=lambda box: box.at):
        solid = [*framing.parts, *others, *parts]
        weighed = _weighed(site, box)
        stay = _part(site, box, box.at - site.figures.box_wide // 2, weighed)
        name, what = f"{box.place}.place", thing_name(box.place)
        if box.kind == "existing" and _free(site, framing, stay, solid):
            parts.append(stay)
            decisions.append(Decision(name, site.letter, saying("decision.box_forward", what=what, at=box.at)))
            continue
        places = [place for place in _places(site, framing, box, weighed) if _free(site, framing, place.part, solid)]
        if not places:
            remarks.append(Remark(saying("remark.box_no_room", what=what, at=box.at), box.at))
            continue
        best = min(places, key=lambda place: (abs(place.moved), place.part.box.x0))
        parts.append(best.part)
        key = "decision.box_moved_old" if box.kind == "existing" else "decision.box_beside"
        said = saying(
            key, what=what, moved=abs(best.moved), to=best.part.box.x0 - site.start, beside=best.beside - site.start
        )
        decisions.append(Decision(name, site.letter, said))
    return parts, decisions, remarks


def outlet_places(site: Site, framing: Framing, others: list[Part]) -> tuple[Part, ...]:
    """Return every place, from the left, where one more outlet at the usual height would have room beside a stud.

    None is behind the open leaf of a door.
    """
    box = OutletBox("", "new", ZERO, site.figures.box_height, "outlet")
    solid = [*framing.parts, *others]
    weighed = _weighed(site, box) - {".kind"}
    leaves = [opening.behind_leaf for opening in site.wall.openings]
    parts = (place.part for place in _places(site, framing, box, weighed))
    return tuple(
        part
        for part in sorted(parts, key=lambda part: part.box.x0)
        if not any(leaf and overlap(part.box.x0, part.box.x1, *leaf) for leaf in leaves)
        and _free(site, framing, part, solid)
    )


def _places(site: Site, framing: Framing, box: OutletBox, weighed: frozenset[str]) -> list[_Place]:
    wide = site.figures.box_wide
    found = []
    for stud in framing.parts:
        if stud.kind in (Kind.STUD, Kind.KING, Kind.CRIPPLE):
            for x0 in (stud.box.x0 - wide, stud.box.x1):
                part = _part(site, box, x0, weighed)
                low, high = (level.at(site.wall, stud.centre) for level in (stud.box.z0, stud.box.z1))
                if low <= part.box.z0.off and part.box.z1.off <= high:
                    part = replace(part, placed_by=part.placed_by | stud.placed_by)
                    found.append(_Place(part, part.centre - box.at, stud.box.x0))
    return found


def outlet_room(site: Site, box: OutletBox) -> Box:
    """Return the room that a box takes up where it was said to be."""
    return _part(site, box, box.at - site.figures.box_wide // 2, frozenset()).box


def _part(site: Site, box: OutletBox, x0: Length, weighed: frozenset[str]) -> Part:
    """Return a box with its left side at x0; its front is flush with the drywall."""
    figures = site.figures
    x0 = x0.with_rests(box.at.rests)
    low = over_slab(box.height - figures.box_tall // 2)
    room = Box(
        x0,
        x0 + figures.box_wide,
        site.offsets.drywall - figures.box_deep,
        site.offsets.drywall,
        low,
        low.up(figures.box_tall),
    )
    why = saying(f"part.box_{box.kind}", holds=box.holds, height=box.height)
    return Part(
        Kind.OUTLET,
        site.letter,
        Material.BOX,
        room,
        figures.box_wide,
        why,
        placed_by=weighed,
    )


def _weighed(site: Site, box: OutletBox) -> frozenset[str]:
    """Return what a box's place is chosen by: what it is, what else stands in the wall, the wood behind what hangs, the other boxes."""
    hung = (fixture.rests for fixture in site.wall.fixtures)
    others = (other.at.rests | other.height.rests for other in site.wall.boxes)
    lowest = min(value for _, value in site.wall.height.points)
    high = box.height + site.figures.stud_spacing > lowest  # then the top plate may be in its way
    heights = site.over_plate.rests if high else frozenset[str]()
    return site.things.union({f"{box.place}.kind", site.wall.ref("boxes")}, heights, *hung, *others)


def _free(site: Site, framing: Framing, part: Part, solid: list[Part]) -> bool:
    box, clear, wall = part.box, site.figures.box_clear, site.wall
    z0, z1 = box.z0.off, box.z1.off
    if box.x0 < site.left.face or box.x1 > wall.length - site.right.face or z1 > site.head.at(wall, part.centre):
        return False
    if any(overlap(box.x0, box.x1, each.left, each.right) for each in wall.partitions):
        return False
    for other in solid:
        room = clear if other.kind in (Kind.PACK, Kind.FIREBLOCK, Kind.UPPER_BLOCK) else ZERO
        if not overlap(box.x0 - room, box.x1 + room, other.box.x0, other.box.x1):
            continue
        if room == ZERO and not overlap(box.y0, box.y1, other.box.y0, other.box.y1):
            continue
        low = min(other.box.z0.at(wall, x) for x in (box.x0, box.x1))
        high = max(other.box.z1.at(wall, x) for x in (box.x0, box.x1))
        if overlap(z0, z1, low, high):
            return False
    for hole in framing.holes:
        low = hole.bottom.at(wall, part.centre) if hole.bottom else ZERO
        if overlap(box.x0, box.x1, hole.x0, hole.x1) and overlap(z0, z1, low, hole.top.at(wall, part.centre)):
            return False
    return not any(_in_a_pipe(part, pipe, clear) for pipe in wall.pipes)


def _in_a_pipe(part: Part, pipe: Pipe, clear: Length) -> bool:
    """Say whether a box comes too near a pipe that reaches forward to it."""
    box = part.box
    if pipe.out <= box.y0 or not overlap(box.x0 - clear, box.x1 + clear, pipe.left_edge, pipe.right_edge):
        return False
    return pipe.run == "standing" or overlap(box.z0.off - clear, box.z1.off + clear, *pipe.heights)
