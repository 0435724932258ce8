"""Drywall: every sheet of a wall, lying or standing, its upright edges on wood, cut round openings and boxes.

Sheets hang from the ceiling down, so that whole edges meet and the cut ones lie at the floor. Joints fall on uprights
that are there already: neither way of hanging asks for another stud.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from guide.layout.openings import Stretch
from guide.layout.packing import sheets_for
from guide.layout.parts import Box, Decision, Kind, Level, Material, Part, Remark, overlap, under_joists
from guide.layout.sheeting import Row, Sheeting, joints_of
from guide.layout.site import Site
from guide.layout.studs import Framing
from guide.lengths import FOOT, ZERO, Length, greatest, least
from guide.reference.priorities import ranked
from guide.reference.sayings import saying


@dataclass(frozen=True)
class Hung:
    """The drywall of a wall, hung one way."""

    way: str
    """`lying` or `standing`."""
    parts: tuple[Part, ...]
    joints: tuple[Length, ...]
    """x of its upright joints, each once, from the left."""
    bare: tuple[Length, ...]
    """x of the upright edges that no wood is behind, each once."""
    sheets: int
    """Sheets that it is cut from."""
    feet: int
    """Joints to tape, in feet, rounded up; those in corners and at the ceiling are the same either way."""
    butts: int
    """Upright joints of lying sheets: their short edges are not tapered."""

    @property
    def rank(self) -> tuple[int, ...]:
        """Lower is better: edges without wood, sheets, feet of joints, then lying."""
        return *ranked({"edges": len(self.bare), "money": self.sheets}), self.feet, self.way == "standing"


def hang(site: Site, framing: Framing, boxes: Sequence[Part]) -> tuple[Hung, tuple[Decision, ...], tuple[Remark, ...]]:
    """Return the drywall the way the person said, or the better way where that is left open, beside the other way."""
    ways = {way: _hung(site, framing, boxes, way) for way in ("lying", "standing")}
    wanted = site.basement.sheets
    chosen = ways[wanted] if wanted in ways else min(ways.values(), key=lambda hung: hung.rank)
    (other,) = (hung for hung in ways.values() if hung is not chosen)
    if not chosen.parts:
        return chosen, (), ()
    said = saying(
        f"decision.sheets_{chosen.way}",
        where=saying("part.one_side") if site.wall.is_partition else "",
        sheets=chosen.sheets,
        joints=FOOT * chosen.feet,
        butts=chosen.butts,
        gap=site.figures.drywall_floor_gap,
    )
    beat = saying(
        f"alternative.sheets_{other.way}",
        sheets=other.sheets,
        joints=FOOT * other.feet,
        butts=other.butts,
        bare=len(other.bare),
    )
    edges = [Remark(saying("remark.edge_missed", at=x - site.start), x) for x in chosen.bare]
    decision = Decision(f"{site.letter}.sheets", site.letter, said, (beat,))
    return chosen, (decision,), (*edges, *_low(site, chosen.parts))


def other_side(site: Site, framing: Framing, hung: Hung) -> tuple[list[Part], list[Remark]]:
    """Return the drywall on the side of a partition that one does not face, and its upright edges without wood.

    It is hung the same way; no box and no other partition is there.
    """
    plain = replace(site, wall=replace(site.wall, partitions=(), boxes=()))
    back, board = site.offsets.back, site.offsets.drywall - site.offsets.face

    def turned(box: Box) -> Box:
        return replace(box, y0=back - board, y1=back)

    far = _hung(plain, framing, (), hung.way)
    parts = [
        replace(
            part,
            box=turned(part.box),
            notches=tuple(turned(each) for each in part.notches),
            placed_by=part.placed_by | site.things,
            why=saying("part.drywall_back", **dict(part.why.values)),
        )
        for part in far.parts
    ]
    bare = [x for x in far.bare if x not in hung.bare]
    return parts, [Remark(saying("remark.edge_missed", at=x - site.start), x) for x in bare]


def sheets_in(parts: Sequence[Part], long: Length) -> tuple[tuple[Part, ...], ...]:
    """Return, per sheet half as wide as it is `long`, the pieces of drywall cut from it by a plain first fit."""
    sizes = [(part.across or long // 2, part.along) for part in parts]
    packed = sheets_for(sizes, wide=long // 2, tall=long, kerf=ZERO)
    return tuple(tuple(parts[number] for number in sheet) for sheet in packed)


def tapered(parts: Sequence[Part]) -> frozenset[str]:
    """Return the ids of the pieces of a wall with a long edge that meets another one's: it has to be a sheet's own edge.

    That edge is tapered for the tape. The edge under the ceiling, in a corner, at the floor or at an opening may be cut.
    """
    return frozenset(one.id for one in parts if any(_edges_meet(one, other) for other in parts))


def _edges_meet(one: Part, other: Part) -> bool:
    """Say whether long edges of two pieces hung the same way meet."""
    a, b = one.box, other.box
    if one.lies != other.lies or a.y0 != b.y0:
        return False
    if one.lies:
        return (a.z0.off == b.z1.off or a.z1.off == b.z0.off) and overlap(a.x0, a.x1, b.x0, b.x1)
    return (a.x0 == b.x1 or a.x1 == b.x0) and overlap(a.z0.off, a.z1.off, b.z0.off, b.z1.off)


def rows_of(site: Site, way: str) -> tuple[Row, ...]:
    """Return the rows of sheets from the ceiling down; where standing sheets do not reach, lying ones go under them."""
    figures = site.figures
    long, top = figures.sheet_long, figures.ceiling
    bottom = greatest(*(value for _, value in site.wall.height.points)) - figures.drywall_floor_gap
    rows: list[Row] = []
    while bottom - top > figures.drywall_spare:
        upright = way == "standing" and not rows
        rows.append(Row(top, *((long, long // 2) if upright else (long // 2, long))))
        top = top + rows[-1].tall
    return tuple(rows)


def _hung(site: Site, framing: Framing, boxes: Sequence[Part], way: str) -> Hung:
    sheeting = Sheeting(site, framing)
    parts: list[Part] = []
    joints: dict[int, Length] = {}
    bare: dict[int, Length] = {}
    above: tuple[Length, ...] = ()
    feet = butts = 0
    for number, row in enumerate(rows_of(site, way)):
        mine: list[Length] = []
        for start, end in (*sheeting.runs(row), *((front.x0, front.x1) for front in sheeting.fronts)):
            within, missed = joints_of(sheeting, row, (start, end), above)
            mine += within
            bare |= {x.ticks: x for x in (*missed, *sheeting.bare_ends(row, start, end))}
            pieces = [
                piece
                for x0, x1 in pairwise((start, *within, end))
                for piece in _pieces(sheeting, row, number, (x0, x1), boxes)
            ]
            parts += pieces
            feet += sum((piece.wide or ZERO).ticks for piece in pieces) if number else 0
            feet += sum(sheeting.tall_at(row, x).ticks for x in within)
        butts += len(mine) if row.longest > row.tall else 0
        joints |= {x.ticks: x for x in mine}
        above = tuple(mine)
    return Hung(
        way,
        tuple(parts),
        tuple(joints[ticks] for ticks in sorted(joints)),
        tuple(bare[ticks] for ticks in sorted(bare)),
        len(sheets_in(parts, site.figures.sheet_long)),
        -(-feet // FOOT.ticks),
        butts,
    )


def _pieces(sheeting: Sheeting, row: Row, number: int, span: Stretch, boxes: Sequence[Part]) -> Iterator[Part]:
    """Yield what a row has between two joints: one piece, or what a hole wider than it leaves over and under itself."""
    site, (x0, x1) = sheeting.site, span
    tall = sheeting.tall_over(row, x0, x1)
    if tall <= ZERO or (number and tall <= site.figures.drywall_spare):
        return
    stretches = [(under_joists(row.top + tall), under_joists(row.top))]
    for hole0, hole1, low, high in sheeting.holes:
        if hole0 <= x0 and x1 <= hole1:
            stretches = [
                (a, b)
                for bottom, top in stretches
                for a, b in ((bottom, _lower(low, top)), (_higher(high, bottom), top))
                if b.off - a.off > site.figures.drywall_spare
            ]
    for bottom, top in stretches:
        back = sheeting.out_at(x0, x1)
        room = Box(x0, x1, back, back + (site.offsets.drywall - site.offsets.face), bottom, top)
        yield _piece(sheeting, number, room, boxes, lies=row.longest > row.tall)


def _piece(sheeting: Sheeting, number: int, room: Box, boxes: Sequence[Part], *, lies: bool) -> Part:
    """Return one piece, its top edge where it belongs and its lower one as the cutting step leaves it."""
    site, step = sheeting.site, sheeting.site.figures.drywall_step
    cut = (room.z1.off - room.z0.off).down_to(step)
    box = Box(room.x0, room.x1, room.y0, room.y1, room.z1.up(-cut), room.z1)
    on_wall = box.y0 == site.offsets.face
    inside = [part for part in boxes if on_wall and _in_front(site, box, part)]
    holes = [
        Box(greatest(box.x0, x0), least(box.x1, x1), box.y0, box.y1, _higher(low, box.z0), _lower(high, box.z1))
        for x0, x1, low, high in sheeting.holes
        if overlap(x0, x1, box.x0, box.x1) and overlap(low.off, high.off, box.z0.off, box.z1.off)
    ]
    return Part(
        Kind.DRYWALL,
        site.letter,
        Material.DRYWALL,
        box,
        cut.with_rests(sheeting.weighed),
        saying("part.drywall" if on_wall else "part.drywall_box", row=number + 1),
        wide=(box.x1 - box.x0).down_to(step),
        placed_by=sheeting.weighed.union(*(part.place_rests for part in inside)),
        notches=(*holes, *(part.box for part in inside)),
        lies=lies,
    )


def _in_front(site: Site, box: Box, other: Part) -> bool:
    """Say whether a sheet lies before an electrical box, or by the slope of its edges before one end of it."""
    low, high = other.box.z0, other.box.z1
    return overlap(box.x0, box.x1, other.box.x0, other.box.x1) and any(
        overlap(*(z.at(site.wall, x) for z in (box.z0, box.z1, low, high))) for x in (other.box.x0, other.box.x1)
    )


def _lower(one: Level, other: Level) -> Level:
    return one if one.off < other.off else other


def _higher(one: Level, other: Level) -> Level:
    return one if one.off > other.off else other


def _low(site: Site, parts: Sequence[Part]) -> Iterator[Remark]:
    """Yield a remark for each lowest piece whose lower edge leaves the bottom plate, because the slab falls under it."""
    most = site.foot - site.figures.edge_bearing_least
    high = site.wall.height
    for part in parts:
        box = part.box
        under = (p for p in parts if p.box.z1.off == box.z0.off and overlap(box.x0, box.x1, p.box.x0, p.box.x1))
        least_off = high.least_over(box.x0, box.x1) + box.z0.off
        off = greatest(*(high.at(x) for x in (box.x0, *high.breaks(box.x0, box.x1), box.x1))) + box.z0.off
        if least_off < site.foot and off > most and not any(under):
            yield Remark(saying("remark.drywall_low", off=off, most=most), box.x0)


def edges_named(parts: Sequence[Part], joints: Sequence[Length]) -> list[Part]:
    """Return the parts with each stud of the layout that a joint lands on saying so."""
    landed = {x.ticks for x in joints}
    return [
        replace(part, why=saying("part.edge_stud", **dict(part.why.values)))
        if part.why.key == "part.layout_stud" and part.centre.ticks in landed
        else part
        for part in parts
    ]
