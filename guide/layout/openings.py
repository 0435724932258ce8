"""Openings: the framed hole, and the king studs, trimmers, header, sill and short studs round it.

An opening is framed whole or not at all: where a stud that it cannot do without finds no room, all of it is left out,
the hole stays free of studs, and a remark says so.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from guide.layout.parts import (
    FULL_HEIGHT,
    Box,
    Decision,
    Kind,
    Level,
    Material,
    Part,
    Remark,
    over_slab,
    overlap,
    under_joists,
)
from guide.layout.site import Site
from guide.lengths import SIXTEENTH, ZERO, Length, inches
from guide.reference.sayings import Saying, saying
from guide.survey.room import thing_name
from guide.survey.things import Opening

Stretch = tuple[Length, Length]
"""From x0 to x1 along the wall."""


@dataclass(frozen=True)
class Hole:
    """The hole to frame: x0 to x1, from `bottom` to `top` under the joists."""

    opening: Opening
    x0: Length
    x1: Length
    bottom: Level | None
    """Top face of the framed sill; None for a door, which starts at the slab."""
    top: Level
    """Underside of the header; of what hangs over the wall, the joists."""
    plate_is_header: bool
    """The head is so near the joists that the top plate is the header: there are no trimmers."""
    rests: frozenset[str]
    """The answers its framing is worked out from."""
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
    elif opening.kind == "kept free":
        x0, x1 = opening.left, opening.right
        top_z = site.wall.height.at((x0 + x1) // 2)  # nothing below the top plate
    elif opening.hangs:
        x0, x1 = opening.kept_clear
        top_z = site.wall.height.at((x0 + x1) // 2)
        bottom_z = top_z - (opening.over_drop or ZERO) - (opening.over_clear or ZERO)
    else:
        play = figures.frame_play
        x0, x1 = opening.left - play, opening.right + play
        top_z = (opening.frame_height or ZERO) + play
    joists = site.wall.height.at((x0 + x1) // 2)
    head = joists - site.head.at(site.wall, (x0 + x1) // 2)
    drop = joists - top_z
    remarks = []
    if drop < head and opening.kind != "kept free" and not opening.hangs:
        remarks.append(Remark(saying("remark.head_too_high", what=thing_name(opening.place), by=head - drop), x0))
    plate_is_header = drop <= figures.head_is_plate or drop - head < figures.stud_thick
    top = site.head if plate_is_header and not opening.hangs else under_joists(drop)  # what hangs parts the top plate
    return Hole(
        opening,
        x0.with_rests(kind),
        x1.with_rests(kind),
        None if bottom_z is None else under_joists(joists - bottom_z),
        top,
        plate_is_header,
        opening.rests | drop.rests | head.rests,
        tuple(remarks),
    )


def frame_hole(
    site: Site, hole: Hole, taken: Sequence[Part], barred: Sequence[Stretch]
) -> tuple[list[Part], list[Part], list[Remark]]:
    """Return the uprights of a hole, what spans between them, and what could not be made right; no uprights without room.

    `taken` is what stands already; no stud may enter a `barred` stretch (a pipe, another hole).
    """
    thick = site.figures.stud_thick
    remarks = list(hole.remarks)
    uprights: list[Part] = []
    fits = _high_enough(site, hole) and not any(overlap(hole.x0 - thick, hole.x1 + thick, *each) for each in barred)
    for side in ("left", "right"):
        found = _side(site, hole, side, [*taken, *uprights], barred) if fits else None
        if found is None:
            return [], [], remarks
        uprights += found[0]
        remarks += found[1]
    rests = hole.rests | site.near(hole.x0, hole.x1)
    weighed = [replace(part, placed_by=part.placed_by | rests) for part in (*uprights, *_spans(site, hole))]
    return weighed[: len(uprights)], weighed[len(uprights) :], remarks


def _high_enough(site: Site, hole: Hole) -> bool:
    """Say whether there is any height to frame: a head over the sill, and over the bottom plate at both sides."""
    if hole.bottom is not None and hole.bottom.off >= hole.top.off:
        return False
    thick = site.figures.stud_thick
    return all(hole.top.at(site.wall, x) - site.foot > thick for x in (hole.x0 - thick, hole.x1 + thick))


def _side(
    site: Site, hole: Hole, side: str, taken: Sequence[Part], barred: Sequence[Stretch]
) -> tuple[list[Part], list[Remark]] | None:
    """Return trimmer and king on one side, or None when there is no room for what carries the header.

    A full-height stud that stands where the king would stand does its work; unless it stands in the very place, a
    remark says so.
    """
    thick = site.figures.stud_thick
    beside, beyond = (hole.x0 - thick, hole.x0 - thick * 2) if side == "left" else (hole.x1, hole.x1 + thick)
    parts: list[Part] = []
    if not hole.plate_is_header:
        trimmer = _cut_to(
            site, site.upright(Kind.TRIMMER, beside, saying("part.trimmer", what=hole.name, side=side)), hole
        )
        if not _free(site, trimmer, taken, barred):
            return None
        parts.append(trimmer)
    king = site.upright(
        Kind.KING, beside if hole.plate_is_header else beyond, saying("part.king", what=hole.name, side=side)
    )
    if _free(site, king, taken, barred):
        return [*parts, king], []
    studs = [part for part in taken if part.kind in FULL_HEIGHT and _in_the_way(king, part)]
    if any(part.box.x0 == king.box.x0 for part in studs):
        return parts, []
    if not studs or hole.plate_is_header:
        return None
    said = saying("remark.no_room", what=hole.name, part=king.kind.value, side=side)
    return parts, [Remark(said, king.box.x0)]


def _free(site: Site, part: Part, taken: Sequence[Part], barred: Sequence[Stretch]) -> bool:
    box = part.box
    on_the_plate = site.stands[0] <= box.x0 and box.x1 <= site.stands[1]
    clear = not any(overlap(box.x0, box.x1, *each) for each in barred)
    return on_the_plate and clear and not any(_in_the_way(part, other) for other in taken)


def _in_the_way(part: Part, other: Part) -> bool:
    return overlap(part.box.x0, part.box.x1, other.box.x0, other.box.x1)


def _cut_to(site: Site, part: Part, hole: Hole) -> Part:
    """Return an upright part cut off under the header."""
    cut = (hole.top.at(site.wall, part.centre) - site.foot).down_to(site.figures.cut_step)
    return replace(part, cut=cut, box=replace(part.box, z1=part.box.z0.up(cut)))


def _spans(site: Site, hole: Hole) -> list[Part]:
    """Return header and sill of a hole: the header lies flat on the trimmers, the sill between them.

    Where the sill would run into the bottom plate, the plate is the sill.
    """
    figures = site.figures
    thick, y0, y1 = figures.stud_thick, site.offsets.back, site.offsets.face
    parts: list[Part] = []
    if not hole.plate_is_header:
        plies = 2 if hole.x1 - hole.x0 > figures.header_doubles else 1
        room = (site.head.off - hole.top.off).ticks // thick.ticks
        for ply in range(min(plies, room)):
            z0 = hole.top.up(thick * ply)
            box = Box(hole.x0 - thick, hole.x1 + thick, y0, y1, z0, z0.up(thick))
            why = saying("part.header", what=hole.name, wide=hole.x1 - hole.x0)
            parts.append(_flat(site, Kind.HEADER, box, why))
    if hole.bottom is not None:
        low = hole.bottom.up(-thick)
        if site.wall.height.least_over(hole.x0, hole.x1) + low.off >= site.foot:
            box = Box(hole.x0, hole.x1, y0, y1, low, hole.bottom)
            why = saying("part.sill_under" if hole.opening.hangs else "part.sill", what=hole.name)
            parts.append(_flat(site, Kind.SILL, box, why))
    return parts


def _flat(site: Site, kind: Kind, box: Box, why: Saying) -> Part:
    cut = (box.x1 - box.x0).down_to(site.figures.cut_step)
    return Part(kind, site.letter, Material.STUD, box, cut, why)


def cripples_at(site: Site, hole: Hole, spans: Sequence[Part], centre: Length) -> list[Part]:
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


def opening_decisions(site: Site, holes: tuple[Hole, ...]) -> tuple[Decision, ...]:
    """Say of each opening how its framed hole follows from what was measured, and what a standing frame has to do."""
    return tuple(_decision(site, hole) for hole in holes)


def off_the_face(door: Opening, face: Length) -> Length:
    """Return how far the finished face stands before a standing jamb, below 0 behind it; a sixteenth is nothing."""
    gap = face - (door.jamb or ZERO)
    return gap if abs(gap) > SIXTEENTH else Length(0, gap.rests)


def extended(door: Opening) -> bool:
    """Say whether a jamb that falls short of the face is extended; else its frame is pulled in.

    The frame of a door that leads outside stays: its sill and its flashing are another trade's.
    """
    return door.meets == "extend" or (door.meets != "frame" and door.outside == "yes")


def _decision(site: Site, hole: Hole) -> Decision:
    opening, face = hole.opening, site.offsets.drywall
    name, at = f"{opening.place}.hole", hole.x0 - site.start
    if opening.jamb is not None:
        gap = off_the_face(opening, face)
        short = "extend" if extended(opening) else "pull_in"
        key = "flush" if gap == ZERO else short if gap > ZERO else "proud"
        said = saying(f"decision.door_{key}", what=hole.name, jamb=opening.jamb, face=face, gap=abs(gap))
        others = {"pull_in": "jamb_extension", "extend": "pull_frame"}
        beat = (saying(f"alternative.{others[key]}", gap=abs(gap)),) if key in others else ()
        return Decision(name, site.letter, said, beat)
    wide = hole.x1 - hole.x0
    if opening.kind == "kept free":
        key = "decision.kept_column" if opening.keeps == "column" else "decision.kept_free"
        return Decision(name, site.letter, saying(key, what=hole.name, wide=wide, at=at))
    if opening.hangs:
        clear = opening.over_clear or ZERO
        said = saying("decision.hangs", what=hole.name, drop=opening.over_drop or ZERO, clear=clear, wide=wide, at=at)
        return Decision(name, site.letter, said)
    if opening.width is None or opening.tall is None:
        said = saying("decision.new_door", what=hole.name, leaf=opening.leaf_width or ZERO, wide=wide, at=at)
        return Decision(name, site.letter, said)
    figures, board = site.figures, inches(site.basement.drywall).on("basement.drywall")
    tall = opening.tall - (figures.window_buck + figures.window_return_foam) * 2
    said = saying(
        "decision.window",
        what=hole.name,
        hole_wide=opening.width,
        hole_tall=opening.tall,
        buck=figures.window_buck,
        foam=figures.window_return_foam,
        wide=wide,
        tall=tall,
        at=at,
        clear_wide=wide - board * 2,
        clear_tall=tall - board * 2,
    )
    return Decision(name, site.letter, said)
