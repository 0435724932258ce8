"""Openings: the framed hole, and the king studs, trimmers, header, sill and short studs round it."""

from __future__ import annotations

from dataclasses import dataclass, replace

from guide.layout.parts import Box, Kind, Level, Material, Part, Remark, over_slab, overlap, under_joists
from guide.layout.site import Site
from guide.lengths import ZERO, Length
from guide.reference.sayings import Saying, saying
from guide.survey.model import Opening
from guide.survey.room import thing_name


@dataclass(frozen=True)
class Hole:
    """The hole to frame: x0 to x1, from `bottom` to `top` under the joists."""

    opening: Opening
    x0: Length
    x1: Length
    bottom: Level | None
    """Top face of the framed sill; None for a door, which starts at the slab."""
    top: Level
    """Underside of the header."""
    plate_is_header: bool
    """The head is so near the joists that the top plate is the header: there are no trimmers."""
    remarks: tuple[Remark, ...]

    @property
    def is_door(self) -> bool:
        """Whether the bottom plate stops on both sides of it."""
        return self.bottom is None

    @property
    def name(self) -> str:
        """Its name in words: `opening 2`."""
        return thing_name(self.opening.place)


def holes_of(site: Site) -> tuple[Hole, ...]:
    """Return the framed hole of every opening, from the left."""
    return tuple(sorted((_hole(site, opening) for opening in site.wall.openings), key=lambda hole: hole.x0))


def _hole(site: Site, opening: Opening) -> Hole:
    """Work out the framed hole from what was measured; heights are turned to hang from the joists, which are level."""
    figures = site.figures
    kind = frozenset({f"{opening.place}.kind"})
    bottom_z: Length | None = None
    if opening.kind == "window":
        lining = figures.window_buck + figures.window_return_foam
        x0, x1 = opening.left + lining, opening.right - lining
        sill, tall = opening.sill or ZERO, opening.tall or ZERO
        bottom_z, top_z = sill + lining, sill + tall - lining
    elif opening.kind == "new door":
        side = figures.door_wider // 2
        x0, x1 = opening.left - side, opening.right + side
        top_z = (opening.leaf_height or ZERO) + figures.door_taller + site.basement.floor_finish
    else:
        play = figures.frame_play
        x0, x1 = opening.left - play, opening.right + play
        top_z = (opening.frame_height or ZERO) + play
    joists = site.wall.height.at((x0 + x1) // 2)
    head = joists - site.head.at(site.wall, (x0 + x1) // 2)
    drop = joists - top_z
    remarks = []
    if drop < head:
        remarks.append(Remark(saying("remark.head_too_high", what=thing_name(opening.place), by=head - drop), x0))
    plate_is_header = drop <= figures.head_is_plate or drop - head < figures.stud_thick
    top = site.head if plate_is_header else under_joists(drop)
    return Hole(
        opening,
        x0.with_rests(kind),
        x1.with_rests(kind),
        None if bottom_z is None else under_joists(joists - bottom_z),
        top,
        plate_is_header,
        tuple(remarks),
    )


def sides_of(site: Site, hole: Hole, taken: list[Part]) -> tuple[list[Part], list[Remark]]:
    """Return king studs and trimmers of a hole. One that would run into a part that stands already is left out.

    The part in its way does its work then, and a remark says so.
    """
    thick = site.figures.stud_thick
    parts: list[Part] = []
    remarks = list(hole.remarks)
    for side, trimmer_x, king_x in (
        ("left", hole.x0 - thick, hole.x0 - thick * (1 if hole.plate_is_header else 2)),
        ("right", hole.x1, hole.x1 + thick * (0 if hole.plate_is_header else 1)),
    ):
        king = site.upright(Kind.KING, king_x, saying("part.king", what=hole.name, side=side))
        wanted = [king]
        if not hole.plate_is_header:
            trimmer = site.upright(Kind.TRIMMER, trimmer_x, saying("part.trimmer", what=hole.name, side=side))
            wanted.insert(0, _cut_to(site, trimmer, hole.top))
        for part in wanted:
            if any(_in_the_way(part, other) for other in (*taken, *parts)) or not _on_the_plate(site, part):
                remarks.append(
                    Remark(saying("remark.no_room", what=hole.name, part=part.kind.value, side=side), part.box.x0)
                )
            else:
                parts.append(part)
    return parts, remarks


def _on_the_plate(site: Site, part: Part) -> bool:
    return site.start <= part.box.x0 and part.box.x1 <= site.end


def _in_the_way(part: Part, other: Part) -> bool:
    return overlap(part.box.x0, part.box.x1, other.box.x0, other.box.x1)


def _cut_to(site: Site, part: Part, top: Level) -> Part:
    """Return an upright part cut off under `top`."""
    figures = site.figures
    cut = (top.at(site.wall, part.centre) - site.foot).down_to(figures.cut_step)
    return replace(part, cut=cut, box=replace(part.box, z1=part.box.z0.up(cut)))


def spans_of(site: Site, hole: Hole, sides: list[Part]) -> list[Part]:
    """Return header and sill of a hole: the header lies flat on the trimmers, the sill between them."""
    figures = site.figures
    thick, y0, y1 = figures.stud_thick, site.offsets.back, site.offsets.face
    parts: list[Part] = []
    if not hole.plate_is_header:
        x0, x1 = (hole.x0 - thick, hole.x1 + thick)
        if not any(part.kind is Kind.TRIMMER and part.box.x1 == hole.x0 for part in sides):
            x0 = hole.x0
        if not any(part.kind is Kind.TRIMMER and part.box.x0 == hole.x1 for part in sides):
            x1 = hole.x1
        plies = 2 if hole.x1 - hole.x0 > figures.header_doubles else 1
        room = (site.head.off - hole.top.off).ticks // thick.ticks
        for ply in range(min(plies, room)):
            z0 = hole.top.up(thick * ply)
            box = Box(x0, x1, y0, y1, z0, z0.up(thick))
            why = saying("part.header", what=hole.name, wide=hole.x1 - hole.x0)
            parts.append(_flat(site, Kind.HEADER, box, why))
    if hole.bottom is not None:
        box = Box(hole.x0, hole.x1, y0, y1, hole.bottom.up(-thick), hole.bottom)
        parts.append(_flat(site, Kind.SILL, box, saying("part.sill", what=hole.name)))
    return parts


def _flat(site: Site, kind: Kind, box: Box, why: Saying) -> Part:
    cut = (box.x1 - box.x0).down_to(site.figures.cut_step)
    return Part(kind, site.letter, Material.STUD, box, cut, why)


def cripples_at(site: Site, hole: Hole, spans: list[Part], centre: Length) -> list[Part]:
    """Return the short studs over and under a hole at a place of the module; too short ones are left out."""
    figures = site.figures
    half = figures.stud_thick // 2
    x0, x1 = centre - half, centre + half
    why = saying("part.cripple", what=hole.name, centre=centre - site.start)
    found = []
    headers = [part for part in spans if part.kind is Kind.HEADER]
    if headers:
        found.append((max((part.box.z1 for part in headers), key=lambda level: level.off), site.head))
    sill = next((part for part in spans if part.kind is Kind.SILL), None)
    if sill is not None:
        found.append((over_slab(site.foot), sill.box.z0))
    parts = []
    for low, high in found:
        cut = (high.at(site.wall, centre) - low.at(site.wall, centre)).down_to(figures.cut_step)
        if cut >= figures.cripple_least:
            box = Box(x0, x1, site.offsets.back, site.offsets.face, low, low.up(cut))
            parts.append(Part(Kind.CRIPPLE, site.letter, Material.STUD, box, cut, why, placed_by=site.room_walk))
    return parts
