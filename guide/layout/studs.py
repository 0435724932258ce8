"""Studs: ends and corner packs, the module from where the first sheet starts, and what pipes and openings do to it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Literal

from guide.layout.elsewhere import unframed
from guide.layout.openings import Hole, Stretch, cripples_at, frame_hole, holes_of
from guide.layout.partitions import posts_of
from guide.layout.parts import FULL_HEIGHT, Box, Decision, Kind, Part, Remark, over_slab, overlap
from guide.layout.pipes import Stack, blocks, boxed_stack, chases_of, stacks_of
from guide.layout.site import Site
from guide.lengths import ZERO, Length, greatest, inches, least
from guide.reference.priorities import decided_by, ranked
from guide.reference.sayings import Saying, saying
from guide.survey.things import Pipe

Side = Literal["left", "right"]
SHEET_EDGE_EVERY = 3
"""Upright drywall joints fall on every third stud at 16 in: sheets are 48 wide, and lying rows are staggered by half."""


@dataclass(frozen=True)
class Framing:
    """The upright framing of a wall for one choice of where the first sheet starts."""

    zero_side: Side
    zero: Length
    parts: tuple[Part, ...]
    sheet_edges: tuple[Length, ...]
    """Where whole sheets would end if nothing stood in their way."""
    remarks: tuple[Remark, ...]
    holes: tuple[Hole, ...]
    stacks: tuple[Stack, ...]
    missed_edges: int
    """How many of those have no stud behind them, so that a sheet is cut back."""

    @property
    def counts(self) -> dict[str, int]:
        """What the framing is weighed by: sheet edges without wood, those in corners too, narrow bays, pieces to cut."""
        uprights = sorted((p for p in self.parts if p.kind in FULL_HEIGHT), key=lambda p: p.box.x0)
        narrow = sum(ZERO < b.box.x0 - a.box.x1 < inches("3") for a, b in pairwise(uprights))
        packs = sum(remark.saying.key == "remark.pack_dropped" for remark in self.remarks)
        return {"edges": self.missed_edges + packs, "bays": narrow, "cuts": len(self.parts)}


def frame(site: Site, passed: tuple[tuple[Pipe, str], ...]) -> tuple[Framing, Decision]:
    """Frame the wall from both ends and return the better one, or the one the person wants, with the decision between them.

    `passed` is how the studs pass each pipe along the wall, as `guide.layout.offsets` has it.
    """
    notched = tuple(pipe for pipe, way in passed if way in ("notches", "fittings"))
    boxed = tuple(boxed_stack(site, pipe) for pipe, way in passed if way == "box")
    both = [(each, each.counts) for each in (_frame_from(site, "left", boxed), _frame_from(site, "right", boxed))]
    both.sort(key=lambda each: (each[0].zero_side != site.wall.layout_from, ranked(each[1]), each[0].zero_side))
    (best, ours), (other, theirs) = both
    beaten = "alternative.zero_yours" if best.zero_side == site.wall.layout_from else "alternative.zero"
    decision = Decision(
        f"{site.letter}.zero",
        site.letter,
        _zero_said(site, best, ours["cuts"]),
        (
            saying(
                beaten,
                side=other.zero_side,
                missed=other.missed_edges,
                narrow=theirs["bays"],
                pieces=theirs["cuts"],
                decided=decided_by(ranked(ours), ranked(theirs)),
            ),
        ),
    )
    return replace(best, parts=tuple(notched_for(site, part, notched) for part in best.parts)), decision


def _zero_said(site: Site, framing: Framing, pieces: int) -> Saying:
    """Say where the stud layout starts; round an outside corner the first sheet starts past the end of the plate."""
    counts = {"count": pieces, "missed": framing.missed_edges}
    past = site.start - framing.zero if framing.zero_side == "left" else framing.zero - site.end
    if past > ZERO:
        return saying("decision.zero_past", side=framing.zero_side, past=past, **counts)
    return saying("decision.zero", side=framing.zero_side, at=framing.zero - site.start, **counts)


def _frame_from(site: Site, side: Side, boxed: tuple[Stack, ...]) -> Framing:
    zero = site.start + site.left.first_sheet if side == "left" else site.end - site.right.first_sheet
    holes, stacks = holes_of(site), (*stacks_of(site), *boxed)
    pipes = [s.clear for s in stacks if s.in_line]
    clear = [(hole.x0, hole.x1) for hole in holes]
    parts, remarks = _ends(site, pipes, clear)
    spans: dict[str, list[Part]] = {}
    for number, hole in enumerate(holes):
        standing = [p for p in parts if p.kind is not Kind.PACK]
        barred = [*pipes, *clear[:number], *clear[number + 1 :]]
        uprights, spans[hole.opening.place], said = frame_hole(site, hole, standing, barred)
        parts += [*uprights, *spans[hole.opening.place]]
        remarks += said if uprights else [*said, unframed(site, hole, standing, barred)]
    parts, said = _without_crowded_packs(site, parts, [*pipes, *clear])
    remarks += said
    posts, said = posts_of(site, parts, [*pipes, *clear])
    parts += posts
    remarks += said
    weighed = site.things | {"basement.sheets", site.wall.ref("layout_from")}
    centres = list(_module(site, side, zero))
    for _, centre in centres:
        parts += [
            replace(part, placed_by=part.placed_by | weighed) for part in _at(site, centre, parts, holes, stacks, spans)
        ]
    for stack in stacks:
        if stack.in_line:
            displaced = any(_hits(site, stack, c) for _, c in centres)
            parts += _beside(site, stack, parts, [*pipes, *clear], displaced=displaced)
    boxes, said = chases_of(site, stacks, clear)
    parts += boxes
    remarks += said
    edges = tuple(centre for number, centre in centres if number % SHEET_EDGE_EVERY == 0 and _is_joint(site, centre))
    missed = [edge for edge in edges if not _bears(site, edge, parts)]
    return Framing(side, zero, tuple(parts), edges, tuple(remarks), holes, stacks, len(missed))


def _module(site: Site, side: Side, zero: Length) -> Iterator[tuple[int, Length]]:
    """Yield (k, centre) of every place of the module between the ends of the plates, from the left."""
    step = site.figures.stud_spacing
    count = (site.end - zero if side == "left" else zero - site.start).ticks // step.ticks
    numbers = range(1, count + 1) if side == "left" else range(count, 0, -1)
    for number in numbers:
        yield number, zero + step * number if side == "left" else zero - step * number


def _ends(site: Site, pipes: list[Stretch], holes: list[Stretch]) -> tuple[list[Part], list[Remark]]:
    """Return the end studs and, where a through wall meets a corner, the flat stud that backs it.

    Round a mitred outside corner the flat stud stands first, as near the mitre as it can. A pipe that leaves no room for an end stud moves it to its other side; in an opening there is none.
    """
    thick, deep = site.figures.stud_thick, site.figures.stud_deep
    x0, x1 = _past_pipes(site, pipes)
    studs: list[Part] = []
    packs: list[Part] = []
    remarks: list[Remark] = []
    starts, ends = site.stands
    for side, end, at, inner, home in (
        ("left", site.left, x0, x0 + thick, x0 == starts),
        ("right", site.right, x1 - thick, x1 - thick - deep, x1 == ends),
    ):
        first = end.mitred and end.what == "outside corner"
        if first and home:
            nose = end.nose(thick, deep)
            flat = site.start + nose if side == "left" else site.end - nose - deep
            beside = flat + deep if side == "left" else flat - thick
            home = not any(overlap(least(flat, beside), greatest(flat + deep, beside + thick), *pipe) for pipe in pipes)
            inner, at = (flat, beside) if home else (inner, at)
        stud = site.upright(Kind.STUD, at, saying("part.end_stud", side=side, what=end.what))
        barred = [*holes, *((other.box.x0, other.box.x1) for other in studs)]
        if starts <= at and at + thick <= ends and not any(overlap(at, at + thick, *each) for each in barred):
            studs.append(stud)
        backed = first or (end.through and end.what == "inside corner")
        if backed and home:
            packs.append(_pack(site, stud, inner, "part.pack_first" if first else "part.pack"))
        elif backed:
            remarks.append(Remark(saying("remark.pack_dropped"), at))
    return [*studs, *packs], remarks


def _past_pipes(site: Site, pipes: list[Stretch]) -> Stretch:
    """Return where the outermost studs begin and end: at the plates' ends, or past a pipe that leaves no room there."""
    thick, (x0, x1) = site.figures.stud_thick, site.stands
    for left, right in sorted(pipes):
        if overlap(x0, x0 + thick, left, right):
            x0 = right.with_rests(x0.rests)
    for left, right in sorted(pipes, key=lambda pipe: pipe[1], reverse=True):
        if overlap(x1 - thick, x1, left, right):
            x1 = left.with_rests(x1.rests)
    return x0, x1


def _pack(site: Site, stud: Part, x0: Length, why: str) -> Part:
    """Return the flat stud beside an end stud, its face flush with the room."""
    x1, face = x0 + site.figures.stud_deep, site.offsets.face
    cut = site.stud_cut((x0 + x1) // 2)
    box = Box(x0, x1, face - site.figures.stud_thick, face, stud.box.z0, stud.box.z0.up(cut))
    return replace(stud, kind=Kind.PACK, box=box, cut=cut, why=saying(why))


def _without_crowded_packs(site: Site, parts: list[Part], barred: list[Stretch]) -> tuple[list[Part], list[Remark]]:
    """Drop a corner pack where an opening, a pipe or another stud needs its room."""
    kept, remarks = [], []
    for part in parts:
        box = part.box
        taken = [(p.box.x0, p.box.x1) for p in parts if p is not part]
        if part.kind is Kind.PACK and any(overlap(box.x0, box.x1, *each) for each in (*taken, *barred)):
            remarks.append(Remark(saying("remark.pack_dropped"), box.x0))
        else:
            kept.append(part)
    return kept, remarks


def _at(
    site: Site,
    centre: Length,
    parts: list[Part],
    holes: tuple[Hole, ...],
    stacks: tuple[Stack, ...],
    spans: dict[str, list[Part]],
) -> list[Part]:
    """Return what stands at one place of the module: a stud, short studs round an opening, or nothing."""
    half = site.figures.stud_thick // 2
    x0, x1 = centre - half, centre + half
    starts, ends = site.stands
    if x0 < starts or x1 > ends:
        return []
    for hole in holes:
        if hole.x0 <= x0 and x1 <= hole.x1:
            return [] if blocks(stacks, x0, x1) else cripples_at(site, hole, spans[hole.opening.place], centre)
        if overlap(x0, x1, hole.x0, hole.x1):
            return []
    # beside a box along the wall its own stud stands, half of it for the drywall that stops there
    half_for = [(s.clear[0] - half * 2, s.clear[1] + half * 2) for s in stacks if s.beyond > ZERO]
    if any(overlap(x0, x1, *each) for each in half_for):
        return []
    if blocks(stacks, x0, x1) or any(overlap(x0, x1, part.box.x0, part.box.x1) for part in parts):
        return []
    return [site.upright(Kind.STUD, x0, saying("part.layout_stud", centre=centre - site.start))]


def _hits(site: Site, stack: Stack, centre: Length) -> bool:
    half = site.figures.stud_thick // 2
    return overlap(centre - half, centre + half, *stack.clear)


def _beside(site: Site, stack: Stack, parts: list[Part], barred: list[Stretch], *, displaced: bool) -> list[Part]:
    """Return the studs that stand on both sides of a pipe: always round a box, else where a stud had to give way."""
    if stack.way == "bay" and not displaced:
        return []
    thick = site.figures.stud_thick
    left, right = stack.clear
    found = []
    for x0, side in ((left - thick, "left"), (right, "right")):
        x1 = x0 + thick
        free = not any(overlap(x0, x1, part.box.x0, part.box.x1) for part in parts)
        free &= not any(overlap(x0, x1, *each) for each in barred)
        if free and site.stands[0] <= x0 and x1 <= site.stands[1]:
            stud = site.upright(Kind.STUD, x0, saying("part.pipe_stud", side=side, wide=stack.pipe.wide))
            found.append(replace(stud, placed_by=stud.placed_by | site.things))
    return found


def _is_joint(site: Site, edge: Length) -> bool:
    """Say whether drywall goes on beyond a sheet's edge: at the end of the wall, and in the wall round it, it does not."""
    margin = site.figures.edge_bearing_least
    return site.start + site.left.first_sheet + margin < edge < site.end - site.right.first_sheet - margin


def _bears(site: Site, edge: Length, parts: list[Part]) -> bool:
    """Say whether a sheet edge has enough wood on both sides of it."""
    margin = site.figures.edge_bearing_least
    return any(
        part.box.x0 + margin <= edge <= part.box.x1 - margin
        for part in parts
        if part.kind in (*FULL_HEIGHT, Kind.TRIMMER, Kind.CRIPPLE)
    )


def notched_for(site: Site, part: Part, pipes: Iterable[Pipe]) -> Part:
    """Return an upright part with notches in its back for the pipes along the wall that cross it."""
    if part.kind not in (*FULL_HEIGHT, Kind.TRIMMER, Kind.CRIPPLE, Kind.FIREBLOCK, Kind.UPPER_BLOCK):
        return part
    clear, notches = site.figures.notch_clear, []
    z0, z1 = (level.at(site.wall, part.centre) for level in (part.box.z0, part.box.z1))
    for pipe in pipes:
        low, high = pipe.heights_over(part.box.x0, part.box.x1)
        low, high, deep = low - clear, high + clear, pipe.out_over(part.box.x0, part.box.x1) + clear
        beside = overlap(part.box.x0, part.box.x1, pipe.left_edge, pipe.right_edge)
        if beside and overlap(low, high, z0, z1) and part.box.y0 < deep:
            box = replace(part.box, y1=deep, z0=over_slab(greatest(low, z0)), z1=over_slab(least(high, z1)))
            notches.append(box)
    return replace(part, notches=tuple(notches)) if notches else part
