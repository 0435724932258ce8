"""Electrical boxes at the new face: beside a stud, clear of fireblocks, packs, pipes and openings."""

from __future__ import annotations

from dataclasses import dataclass

from guide.layout.parts import Box, Decision, Kind, Material, Part, Remark, over_slab, overlap
from guide.layout.site import Site
from guide.layout.studs import Framing
from guide.lengths import ZERO, Length
from guide.reference.sayings import saying
from guide.survey.model import OutletBox
from guide.survey.room import thing_name


@dataclass(frozen=True)
class _Place:
    part: Part
    moved: Length
    beside: Length
    """Centre of the stud it hangs on."""


def boxes_of(site: Site, framing: Framing, others: list[Part]) -> tuple[list[Part], list[Decision], list[Remark]]:
    """Return the boxes of a wall. A new one goes beside the nearest stud with room; an old one stays where it is if it can."""
    parts: list[Part] = []
    decisions: list[Decision] = []
    remarks: list[Remark] = []
    for box in sorted(site.wall.boxes, key=lambda box: box.at):
        solid = [*framing.parts, *others, *parts]
        stay = _part(site, box, box.at - site.figures.box_wide // 2)
        name, what = f"{box.place}.place", thing_name(box.place)
        if box.kind == "existing" and _free(site, framing, stay, solid):
            parts.append(stay)
            decisions.append(Decision(name, site.letter, saying("decision.box_forward", what=what, at=box.at)))
            continue
        places = [place for place in _places(site, framing, box) if _free(site, framing, place.part, solid)]
        if not places:
            remarks.append(Remark(saying("remark.box_no_room", what=what, at=box.at), box.at))
            continue
        best = min(places, key=lambda place: (abs(place.moved), place.part.box.x0))
        parts.append(best.part)
        key = "decision.box_moved_old" if box.kind == "existing" else "decision.box_beside"
        said = saying(
            key, what=what, moved=abs(best.moved), to=best.part.centre - site.start, beside=best.beside - site.start
        )
        decisions.append(Decision(name, site.letter, said))
    return parts, decisions, remarks


def _places(site: Site, framing: Framing, box: OutletBox) -> list[_Place]:
    wide = site.figures.box_wide
    found = []
    for stud in framing.parts:
        if stud.kind in (Kind.STUD, Kind.KING, Kind.CRIPPLE) and stud.box.z0.off < box.height:
            for x0 in (stud.box.x0 - wide, stud.box.x1):
                part = _part(site, box, x0)
                found.append(_Place(part, part.centre - box.at, stud.centre))
    return found


def _part(site: Site, box: OutletBox, x0: Length) -> Part:
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
    why = saying(f"part.box_{box.kind}", height=box.height)
    return Part(
        Kind.OUTLET, site.letter, Material.BOX, room, figures.box_wide, why, placed_by=frozenset({f"{box.place}.kind"})
    )


def _free(site: Site, framing: Framing, part: Part, solid: list[Part]) -> bool:
    box, clear, wall = part.box, site.figures.box_clear, site.wall
    if box.x0 < site.start or box.x1 > site.end:
        return False
    z0, z1 = box.z0.off, box.z1.off
    for other in solid:
        room = clear if other.kind in (Kind.PACK, Kind.FIREBLOCK) else ZERO
        if not overlap(box.x0 - room, box.x1 + room, other.box.x0, other.box.x1):
            continue
        low, high = (level.at(wall, other.centre) for level in (other.box.z0, other.box.z1))
        if overlap(z0, z1, low, high) and (room > ZERO or overlap(box.y0, box.y1, other.box.y0, other.box.y1)):
            return False
    for hole in framing.holes:
        low = hole.bottom.at(wall, part.centre) if hole.bottom else ZERO
        if overlap(box.x0, box.x1, hole.x0, hole.x1) and overlap(z0, z1, low, hole.top.at(wall, part.centre)):
            return False
    return not any(
        overlap(box.x0 - clear, box.x1 + clear, stack.pipe.left_edge, stack.pipe.right_edge) and stack.pipe.out > box.y0
        for stack in framing.stacks
    )
