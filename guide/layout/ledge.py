"""Concrete that ends far below the joists: a ledge of plywood on it, and an upper mate for each upright fireblock.

The cap at the joists closes the top. Between it and the concrete the hollow behind the studs is deeper than below, since it
reaches back to the house's own wood wall; so each upright fireblock is two: one up to the ledge, its mate from there on.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from guide.layout.cap import between, round_pipe, strips_of
from guide.layout.ends import End, squared
from guide.layout.heights import most_over_concrete
from guide.layout.openings import Hole, Stretch
from guide.layout.parts import Box, Datum, Kind, Level, Material, Part, Remark, over_slab, overlap
from guide.layout.site import Site
from guide.layout.studs import Framing, notched_for
from guide.lengths import ZERO, Length, greatest, least
from guide.reference.sayings import saying
from guide.survey.things import Pipe


def ledge_of(site: Site, framing: Framing, blocks: Sequence[Part]) -> tuple[list[Part], list[Remark]]:
    """Return ledge strips, the laps on their joints, and the mates of the upright fireblocks; nothing but in cap case 3.

    A pipe that comes up through the ledge parts it, and so does an opening. Where the sill hangs over the room as far as the
    back of the studs there is no hollow over the concrete, and nothing to close.
    """
    weighed = site.over_plate.rests | site.wall.shelf.rests | site.things | site.left.cap.rests | site.right.cap.rests
    back, front = (-site.wall.shelf).with_rests(weighed), site.offsets.back
    if site.cap_case != 3 or back >= front:
        return [], []
    figures, low = site.figures, Level(Datum.CONCRETE, ZERO)
    crossing = [pipe for pipe in site.wall.pipes if pipe.run == "lying" and _crosses(site, pipe)]
    pipes = [
        *(stack.pipe for stack in framing.stacks if stack.pipe.run == "standing" and stack.pipe.back < front),
        *crossing,
    ]
    free = [*(round_pipe(site, pipe) for pipe in pipes), *_openings(site, framing)]
    (x0, left), (off, right) = (_start(end, back, front, site.offsets.deep, weighed) for end in (site.left, site.right))
    x1 = site.wall.length - off
    strips: list[Part] = []
    laps: list[Part] = []
    for run in (each for part in _lengthened(site, x0, x1) for each in between(site, *part, free)):
        run, slants = squared(run, (x0, x1), (left, right))
        box = Box(*run, back, front, low, low.up(figures.plywood))
        why = saying("part.ledge", shelf=site.wall.shelf, to=front)
        found, joints = strips_of(site, Kind.LEDGE, run, box, why, slants)
        strips += found
        laps += [_lap(site, joint, box) for joint in joints]
    mates = [
        notched_for(site, _mate(site, block, laps, back, weighed), site.wall.pipes)
        for block in blocks
        if site.on_ledge(block.centre)
    ]
    remarks = [Remark(saying("remark.wood_wall_over", gap=most_over_concrete(site.wall)), site.start)]
    remarks += [Remark(saying("remark.ledge_pipe", at=pipe.left_edge), pipe.left_edge) for pipe in crossing]
    return [*strips, *laps, *mates], remarks


def _lengthened(site: Site, x0: Length, x1: Length) -> list[Stretch]:
    """Return the stretches that have a ledge, those at an end of the concrete as far as the ledge goes there."""
    length = site.wall.length
    return [(x0 if low == ZERO else low, x1 if high == length else high) for low, high in site.ledges]


def _start(end: End, back: Length, front: Length, deep: Length, weighed: frozenset[str]) -> tuple[Length, Length]:
    """Return how far from the concrete corner the ledge begins, below 0 where it runs on past it, and how that end slants.

    At a corner one ledge runs back to the other wall's wood and the other ends at its back line, where the caps end at its
    face; mitred plates have mitred ledges. Where the other wall has no ledge, its concrete is in the way.
    """
    if end.other is not None and not end.no_ledge:
        return end.mitre(back, (-end.shelf).with_rests(weighed), front, end.other.back)
    at = end.cap
    if end.no_ledge:
        at = end.back
    elif (end.what == "inside corner" and not end.over) or (end.what == "outside corner" and end.over):
        at = end.cap - end.at(deep, ZERO)
    return end.parallel(at.with_rests(weighed), back, front)


def _openings(site: Site, framing: Framing) -> Iterator[Stretch]:
    """Yield the stretches of the openings that the ledge would run through."""
    gap = site.figures.foam_cut_gap
    for hole in framing.holes:
        low, high = _clear(site, hole)
        concrete = site.wall.concrete.at(hole.x0), site.wall.concrete.at(hole.x1)
        if low - gap < greatest(*concrete) + site.figures.plywood and least(*concrete) < high + gap:
            opening = hole.opening
            x0, x1 = (opening.left - gap, opening.right + gap) if opening.kind == "window" else (hole.x0, hole.x1)
            yield x0.with_rests(opening.rests), x1.with_rests(opening.rests)


def _clear(site: Site, hole: Hole) -> Stretch:
    """Return from where to where over the slab an opening reaches."""
    opening, middle = hole.opening, (hole.x0 + hole.x1) // 2
    if opening.kind == "kept free":
        return ZERO, site.wall.height.at(middle)
    if opening.hangs and hole.bottom is not None:
        return hole.bottom.at(site.wall, middle), site.wall.height.at(middle)
    if opening.kind == "window":
        sill = opening.sill or ZERO
        return sill, sill + (opening.tall or ZERO)
    return ZERO, hole.top.at(site.wall, middle)


def _crosses(site: Site, pipe: Pipe) -> bool:
    """Say whether a pipe along the wall runs where the ledge would lie."""
    low, high = pipe.heights
    concrete = site.wall.concrete.at(pipe.left_edge), site.wall.concrete.at(pipe.right_edge)
    return pipe.back < site.offsets.back and overlap(
        low, high, least(*concrete), greatest(*concrete) + site.figures.plywood
    )


def _lap(site: Site, joint: Length, strip: Box) -> Part:
    """Return the scrap on top of a joint of the ledge."""
    figures = site.figures
    half = figures.cap_lap // 2
    box = replace(strip, x0=joint - half, x1=joint + half, z0=strip.z1, z1=strip.z1.up(figures.plywood))
    wide = (box.y1 - box.y0).down_to(figures.cut_step)
    cut = figures.cap_lap.with_rests(box.y0.rests)
    return Part(Kind.LEDGE_LAP, site.letter, Material.PLYWOOD, box, cut, saying("part.ledge_lap"), wide=wide)


def _mate(site: Site, block: Part, laps: Sequence[Part], back: Length, weighed: frozenset[str]) -> Part:
    """Return the upper mate of an upright fireblock: on the ledge or its lap, back to the wood wall, up to the top plate."""
    figures, x0, x1 = site.figures, block.box.x0, block.box.x1
    on_lap = any(overlap(x0, x1, lap.box.x0, lap.box.x1) for lap in laps)
    foot = site.wall.concrete.at(block.centre) + figures.plywood * (2 if on_lap else 1)
    cut = (site.head.at(site.wall, block.centre) - foot).down_to(figures.cut_step).with_rests(weighed)
    front = site.offsets.back + figures.block_lap
    return Part(
        Kind.UPPER_BLOCK,
        site.letter,
        Material.PLYWOOD,
        Box(x0, x1, back, front, over_slab(foot), over_slab(foot + cut)),
        cut,
        saying("part.upper_block", to=front),
        wide=(front - back).down_to(figures.cut_step),
        placed_by=block.placed_by | weighed,
    )
