"""Upright fireblocks behind the studs: one at each end, and between them never further apart than the code's limit."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise

from guide.layout.crooked import proud
from guide.layout.openings import Stretch
from guide.layout.parts import (
    FULL_HEIGHT,
    Box,
    Decision,
    Kind,
    Material,
    Part,
    Remark,
    over_slab,
    overlap,
)
from guide.layout.pipes import Stack, blocks
from guide.layout.site import Site
from guide.layout.studs import Framing, notched_for
from guide.lengths import ZERO, Length, greatest, inches, least
from guide.reference.sayings import saying


@dataclass(frozen=True)
class Spot:
    """A place where a fireblock can stand: beside a stud."""

    stud: Part
    part: Part
    on_edge: bool
    """The stud carries a drywall joint."""


def fireblocks_of(site: Site, framing: Framing) -> tuple[list[Part], list[Decision], list[Remark]]:
    """Return the fireblocks of a wall: at both ends, and the fewest between that keep within the limit.

    Among equally few, studs without a drywall joint come first; then, where blocks go through the foam, the fewest
    pieces of it, so that a block stands in a seam if it can; then the smallest widest gap, then the left.
    """
    spots = _spots(site, framing)
    ends, remarks = _ends(site, framing, spots)
    for closed in (_sides, _steps):
        more, said = closed(site, framing, spots, ends)
        ends, remarks = [*ends, *more], [*remarks, *said]
    limit = site.code.blocks_along.length
    free = [s for s in spots if not any(_meets(s.part.box, end.part.box) for end in ends)]
    between: list[Spot] = []
    for run in _sections(site, framing):
        within = [s for s in free if run[0] <= s.part.box.x0 and s.part.box.x1 <= run[1]]
        foam = _foam_of(run, ends)
        found = _fewest(site, within, limit, run, foam)
        if found is None:
            remarks.append(Remark(saying("remark.fireblock_far", limit=limit), ZERO))
            found = _fewest(site, within, limit, run, foam, strict=False) or []
        between += found
    along = [pipe for pipe in site.wall.pipes if pipe.run == "lying"]
    parts = [notched_for(site, spot.part, along) for spot in (*ends, *between)]
    return parts, _decisions(site, ends, between, spots, limit), remarks


def gaps(run: tuple[Length, Length], blocks: list[Part]) -> list[tuple[Length, Length]]:
    """Return the open stretches of a run between its ends and its blocks, each to the far face of its blocks."""
    ordered = sorted(blocks, key=lambda part: part.box.x0)
    edges = [(run[0], run[0]), *((part.box.x0, part.box.x1) for part in ordered), (run[1], run[1])]
    return [(left[0], right[1]) for left, right in pairwise(edges)]


def _block(site: Site, x0: Length, why_key: str, centre: Length) -> Part:
    """Return a strip of plywood on edge at x0, from the foam or the concrete to its lap on the stud, plate to cap."""
    figures, offsets = site.figures, site.offsets
    x1 = x0 + figures.plywood
    y0 = proud(site.wall, (x0 + x1) // 2, figures) if site.basement.block_reach == "concrete" else offsets.foam_face
    y1 = offsets.back + figures.block_lap
    low = over_slab(site.foot)
    middle = (x0 + x1) // 2
    top = site.head.at(site.wall, middle)
    if site.cap_case == 1 or site.on_ledge(
        middle
    ):  # up to the cap or the ledge on the concrete; never into the top plate that it laps
        top = least(top, site.wall.concrete.at(middle))
    cut = (top - site.foot).down_to(figures.cut_step)
    wide = (y1 - y0).down_to(figures.cut_step).on("basement.block_reach")
    why = saying(why_key, centre=centre - site.start, reach=site.basement.block_reach)
    rests = site.things | site.wall.length.rests | {"basement.block_reach", "basement.foam_sheet", "basement.sheets"}
    if site.on_ledge(middle):
        rests |= site.wall.shelf.rests
    return Part(
        Kind.FIREBLOCK,
        site.letter,
        Material.PLYWOOD,
        Box(x0, x1, y0, y1, low, low.up(cut)),
        cut,
        why,
        wide=wide,
        placed_by=rests,
    )


def _spots(site: Site, framing: Framing) -> list[Spot]:
    """Return every place beside a full-height stud that is free, from the left, the right side of each stud first."""
    thick = site.figures.plywood
    spots = []
    for stud in sorted((p for p in framing.parts if p.kind in (Kind.STUD, Kind.KING)), key=lambda p: p.box.x0):
        for x0 in (stud.box.x1, stud.box.x0 - thick):
            part = _block(site, x0, "part.fireblock", stud.centre)
            if _free(site, part, framing):
                on_edge = any(stud.box.x0 < edge < stud.box.x1 for edge in framing.sheet_edges)
                spots.append(Spot(stud, part, on_edge))
    return spots


def _free(site: Site, part: Part, framing: Framing) -> bool:
    box = part.box
    start, end = _behind(site)
    if box.x0 < start or box.x1 > end or blocks(framing.stacks, box.x0, box.x1):
        return False
    if any(
        _meets(box, other.box) for other in framing.parts if other.kind in (*FULL_HEIGHT, Kind.TRIMMER, Kind.CRIPPLE)
    ):
        return False
    if any(overlap(box.x0, box.x1, hole.x0, hole.x1) for hole in framing.holes):
        return False
    if any(overlap(box.x0, box.x1, o.left, o.right) for o in site.wall.openings if o.kind == "window"):
        return False
    if site.on_ledge(part.centre):  # its upper mate reaches back to the wood wall
        box = replace(box, y0=least(box.y0, -site.wall.shelf))
    return not any(_pipe_in_way(stack, box) for stack in framing.stacks)


def _behind(site: Site) -> tuple[Length, Length]:
    """Return where blocks can stand: along the plates, but not past an outside corner, where the other wall comes up."""
    return greatest(site.stands[0], ZERO), least(site.stands[1], site.wall.length)


def _meets(box: Box, other: Box) -> bool:
    return overlap(box.x0, box.x1, other.x0, other.x1) and overlap(box.y0, box.y1, other.y0, other.y1)


def _pipe_in_way(stack: Stack, box: Box) -> bool:
    pipe = stack.pipe
    return overlap(box.x0, box.x1, pipe.left_edge, pipe.right_edge) and overlap(box.y0, box.y1, pipe.back, pipe.out)


def _ends(site: Site, framing: Framing, spots: list[Spot]) -> tuple[list[Spot], list[Remark]]:
    """Return the blocks at the two ends: on the inner side of the end stud, or of the nearest stud with room."""
    if not spots:
        return [], [Remark(saying("remark.fireblock_end", side=side), ZERO) for side in ("left", "right")]
    first, last = spots[0], max(spots, key=lambda spot: spot.part.box.x1)
    far = site.figures.stud_spacing
    start, end = _behind(site)
    remarks = []
    if first.part.box.x0 - start > far:
        remarks.append(Remark(saying("remark.fireblock_end", side="left"), ZERO))
    if end - last.part.box.x1 > far:
        remarks.append(Remark(saying("remark.fireblock_end", side="right"), site.wall.length))
    return ([first] if _meets(first.part.box, last.part.box) else [first, last]), remarks


def _sections(site: Site, framing: Framing) -> list[Stretch]:
    """Part the run where fire cannot go on behind the studs: at a place kept free, where there is no hollow."""
    begin, end = site.run
    edges = [begin]
    for hole in framing.holes:
        if hole.opening.kind == "kept free":
            edges += [hole.x0, hole.x1]
    edges.append(end)
    return [(x0, x1) for x0, x1 in zip(edges[::2], edges[1::2], strict=True) if x0 < x1]


def _sides(site: Site, framing: Framing, spots: list[Spot], ends: list[Spot]) -> tuple[list[Spot], list[Remark]]:
    """Return the blocks that close the hollow at both sides of a place kept free, beside the stud there."""
    found: list[Spot] = []
    remarks = []
    begin, end = site.run
    for hole in framing.holes:
        if hole.opening.kind != "kept free":
            continue
        left = max((s for s in spots if s.part.box.x1 <= hole.x0), key=lambda s: s.part.box.x1, default=None)
        right = min((s for s in spots if s.part.box.x0 >= hole.x1), key=lambda s: s.part.box.x0, default=None)
        near = [(spot, edge) for spot, edge in ((left, hole.x0), (right, hole.x1)) if begin < edge < end]
        for spot, edge in near:
            if spot is None or _away(spot.part.box, edge) > site.figures.stud_spacing:
                remarks.append(Remark(saying("remark.fireblock_side"), edge))
            elif not any(_meets(spot.part.box, other.part.box) for other in (*ends, *found)):
                found.append(spot)
    return found, remarks


def _steps(site: Site, framing: Framing, spots: list[Spot], ends: list[Spot]) -> tuple[list[Spot], list[Remark]]:
    """Return the blocks that close the hollow over a ledge where the concrete steps up, beside the nearest stud before it.

    On its low side: there the hollow reaches back to the wood wall, and the block has its upper mate.
    """
    found: list[Spot] = []
    remarks = []
    for left, right in site.wall.concrete.steps:
        low_right = site.wall.concrete.at(left) > site.wall.concrete.at(right)
        at = right if low_right else left
        if not site.on_ledge(at):
            continue
        beyond = [s for s in spots if (s.part.box.x0 >= at if low_right else s.part.box.x1 <= at)]
        spot = min(beyond, key=lambda s: _away(s.part.box, at), default=None)
        if spot is None or _away(spot.part.box, at) > site.figures.stud_spacing:
            remarks.append(Remark(saying("remark.fireblock_step"), at))
        elif not any(_meets(spot.part.box, other.part.box) for other in (*ends, *found)):
            found.append(spot)
    return found, remarks


def _away(box: Box, edge: Length) -> Length:
    return least(abs(box.x0 - edge), abs(box.x1 - edge))


def _fewest(
    site: Site, spots: list[Spot], limit: Length, run: Stretch, foam: Stretch, *, strict: bool = True
) -> list[Spot] | None:
    """Return the fewest spots that keep every gap of a run within the limit, or None when none do.

    Works from the left, keeping for each spot the best way to reach it. Not `strict` it may pass the limit, by as little
    as can be, and returns None only when there is no spot at all. `foam` is the stretch of foam that they would part.
    """
    begin, end = run
    if end - begin <= limit:
        return []
    best: dict[int, _Way] = {}
    order = sorted(range(len(spots)), key=lambda index: spots[index].part.box.x0)
    start = _Way((0, 0, 0, 0, 0), ())
    for index in order:
        box = spots[index].part.box
        ways = []
        if box.x1 - begin <= limit or not strict:
            ways.append(_step(site, start, spots, index, (begin, foam[0]), limit))
        for before in order:
            if before not in best or before == index:
                continue
            other = spots[before].part.box
            if other.x1 <= box.x0 and (box.x1 - other.x0 <= limit or not strict):
                ways.append(_step(site, best[before], spots, index, (other.x0, other.x1), limit))
        if ways:
            best[index] = min(ways)
    done = [
        _to_the_end(site, way, spots[index].part.box, (end, foam[1]), limit)
        for index, way in best.items()
        if end - spots[index].part.box.x0 <= limit or not strict
    ]
    return [spots[index] for index in min(done).chosen] if done else None


@dataclass(frozen=True, order=True)
class _Way:
    """Blocks from the left as far as they go; the smaller one is the better one."""

    rank: tuple[int, int, int, int, int]
    """By how much gaps pass the limit, how many blocks there are, how many of them stand on a stud with a drywall joint,
    pieces that the foam between them is wide, the widest gap."""
    chosen: tuple[int, ...]


def _step(site: Site, way: _Way, spots: list[Spot], index: int, start: Stretch, limit: Length) -> _Way:
    """Return a way with one block more; `start` is where the gap before it begins and where the foam in that gap does.

    The gap is measured to the block's far face, the foam to its near one.
    """
    box = spots[index].part.box
    over, count, edges, pieces, widest = way.rank
    gap = (box.x1 - start[0]).ticks
    rank = (
        over + max(0, gap - limit.ticks),
        count + 1,
        edges + spots[index].on_edge,
        pieces + _pieces(site, start[1], box.x0),
        max(widest, gap),
    )
    return _Way(rank, (*way.chosen, index))


def _to_the_end(site: Site, way: _Way, last: Box, end: Stretch, limit: Length) -> _Way:
    """Return a way with its last gap counted in; `end` is where that gap ends and where the foam in it does."""
    over, count, edges, pieces, widest = way.rank
    gap = (end[0] - last.x0).ticks
    pieces += _pieces(site, last.x1, end[1])
    return _Way((over + max(0, gap - limit.ticks), count, edges, pieces, max(widest, gap)), way.chosen)


def _foam_of(run: Stretch, ends: list[Spot]) -> Stretch:
    """Return the stretch of foam within a run that is left to part: between the blocks that stand at its ends."""
    middle = (run[0] + run[1]) // 2
    boxes = [spot.part.box for spot in ends if run[0] <= spot.part.box.x0 and spot.part.box.x1 <= run[1]]
    return (
        greatest(run[0], *(box.x1 for box in boxes if box.x1 <= middle)),
        least(run[1], *(box.x0 for box in boxes if box.x0 >= middle)),
    )


def _pieces(site: Site, start: Length, end: Length) -> int:
    """Return how many pieces wide the foam between two blocks is, where they part it at all; a sliver counts as two."""
    if site.basement.block_reach != "concrete" or end <= start:
        return 0
    whole = -(-(end - start).ticks // inches(site.basement.foam_sheet).ticks)
    return whole + (end - start < site.figures.foam_least_piece)


def _decisions(site: Site, ends: list[Spot], between: list[Spot], spots: list[Spot], limit: Length) -> list[Decision]:
    length = site.run[1] - site.run[0]
    if not between and length > limit:
        return []
    if not between:
        return [
            Decision(
                f"{site.letter}.fireblocks",
                site.letter,
                saying("decision.fireblocks_none", length=length, limit=limit, cited=site.code.blocks_along.cited),
            )
        ]
    widest = greatest(*(end - start for start, end in gaps(site.run, [spot.part for spot in (*ends, *between)])))
    said = saying(
        "decision.fireblocks",
        count=len(between),
        widest=widest,
        limit=limit,
        length=length,
        cited=site.code.blocks_along.cited,
    )
    beat = saying("alternative.fireblocks", count=len({s.stud.box.x0 for s in spots}))
    return [Decision(f"{site.letter}.fireblocks", site.letter, said, (beat,))]
