"""Rigid foam: whose foam fills each corner, and the pieces of every wall, cut round what stands in their way."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import partial
from itertools import pairwise, product

from guide.interview.asking import CORNERS
from guide.layout.corners import Corner
from guide.layout.ends import squared
from guide.layout.heights import foam_top, readings_of
from guide.layout.kept import Kept, once
from guide.layout.packing import sheets_for
from guide.layout.parts import Box, Decision, Kind, Material, Part, over_slab
from guide.layout.site import Site
from guide.layout.studs import Framing
from guide.lengths import ZERO, Length, greatest, inches, least
from guide.reference.sayings import saying


@dataclass(frozen=True, eq=False)  # one that was kept is known by being the same one
class FoamSite:
    """One wall as its foam sees it."""

    site: Site
    framing: Framing
    blocks: tuple[Part, ...]
    """Upright fireblocks; those that reach the concrete part the foam."""


@dataclass(frozen=True)
class _Gap:
    """A stretch of the wall with no foam between two heights."""

    x0: Length
    x1: Length
    low: Length
    high: Length


def foam_of(
    sites: Mapping[str, FoamSite], corners: Mapping[tuple[str, str], Corner], kept: Kept | None = None
) -> dict[str, tuple[tuple[Part, ...], tuple[Decision, ...]]]:
    """Return foam pieces and decisions of every wall, with each corner given to the wall that makes fewest sheets.

    At a corner of two walls of this job exactly one of them fills it. At a corner whose other wall is not in this job
    either may; room for its foam is left only when that saves a sheet. Runs of walls are decided one by one.
    """
    sheets = {letter: once(kept, ("sheets", foam), partial(_sheets, foam)) for letter, foam in sites.items()}
    takes: dict[str, Takes] = {}
    for run in _runs(sites, corners):
        takes |= _best_takes(run, sites, sheets, corners)
    return {
        letter: once(kept, ("foam", foam, takes[letter]), partial(_with_decisions, foam, sheets[letter], takes[letter]))
        for letter, foam in sites.items()
    }


def _runs(sites: Mapping[str, FoamSite], corners: Mapping[tuple[str, str], Corner]) -> list[list[str]]:
    """Part the walls into runs that are joined by corners, each in the order walked."""
    runs: list[list[str]] = []
    letters = list(sites)
    first = next(
        (n for n, letter in enumerate(letters) if (letter, "left") not in corners), 0
    )  # a ring starts anywhere
    for letter in letters[first:] + letters[:first]:
        corner = corners.get((letter, "left"))
        if corner is not None and runs and corner.left_wall == runs[-1][-1]:
            runs[-1].append(letter)
        else:
            runs.append([letter])
    return runs


Takes = tuple[bool, bool]
"""Whether the foam of a wall stops short left and right, so that the neighbour's fills the corner."""
_Rank = tuple[int, int, tuple[bool, ...]]
"""Sheets, corners left to a wall that may never be built, then the earlier choice: lower is better."""


def _best_takes(
    run: list[str],
    sites: Mapping[str, FoamSite],
    sheets: Mapping[str, Mapping[Takes, int]],
    corners: Mapping[tuple[str, str], Corner],
) -> dict[str, Takes]:
    """Return for each wall of a run whether its foam stops short (the neighbour's fills the corner) left and right.

    Goes along the run keeping, for either choice at the last corner, the best way to it. In a ring the choice at the
    corner that closes it is tried both ways.
    """
    ring = len(run) > 1 and (run[0], "left") in corners and not sites[run[0]].site.left.mitred
    best: tuple[_Rank, dict[str, Takes]] | None = None
    for closing in (False, True) if ring else (None,):
        ways: dict[bool | None, tuple[_Rank, dict[str, Takes]]] = {closing: ((0, 0, ()), {})}
        for letter in run:
            reached: dict[bool | None, tuple[_Rank, dict[str, Takes]]] = {}
            for before, (rank, takes) in ways.items():
                shared = (letter, "left") in corners and not sites[letter].site.left.mitred
                for left in (not before,) if shared else _choices(sites[letter], "left"):
                    for right in _choices(sites[letter], "right"):
                        take = (left, right)
                        ranked = _ranked(rank, sites[letter], sheets[letter][take], take, corners)
                        way = (ranked, {**takes, letter: take})
                        reached[right] = min(reached.get(right, way), way, key=lambda each: each[0])
            ways = reached
        ends = list(ways.values()) if closing is None else [ways[closing]] if closing in ways else []
        best = min(([best] if best else []) + ends, key=lambda each: each[0], default=None)
    assert best is not None
    return best[1]


def _ranked(rank: _Rank, foam: FoamSite, sheets: int, take: Takes, corners: Mapping[tuple[str, str], Corner]) -> _Rank:
    """Add one wall to the rank of the way to it.

    At a corner whose other wall is not in this job, foam that ends at the concrete is better than foam that waits for a
    neighbour: filling an inside corner, stopping at an outside one.
    """
    waits = 0
    for side, end, short in (("left", foam.site.left, take[0]), ("right", foam.site.right, take[1])):
        if (foam.site.letter, side) not in corners and end.what in CORNERS:
            waits += short == (end.what == "inside corner")
    return rank[0] + sheets, rank[1] + waits, (*rank[2], *take)


def _choices(foam: FoamSite, side: str) -> tuple[bool, ...]:
    """Return whether the foam may stop short at an end, or may not: both where nobody has said."""
    wall, end = foam.site.wall, foam.site.left if side == "left" else foam.site.right
    if end.what not in CORNERS or end.mitred:
        return (False,)
    said = wall.left_foam if side == "left" else wall.right_foam
    return {"this wall": (False,), "other wall": (True,)}.get(said or "", (False, True))


def _sheets(foam: FoamSite) -> dict[Takes, int]:
    """Return how many sheets the foam of one wall takes, for every choice it has."""
    sheet, found = inches(foam.site.basement.foam_sheet), {}
    for takes in product(_choices(foam, "left"), _choices(foam, "right")):
        pieces = [(part.wide or ZERO, part.cut) for part in pieces_of(foam, *takes)]
        found[takes] = len(sheets_for(pieces, wide=sheet, tall=foam.site.figures.sheet_long, kerf=ZERO))
    return found


def _with_decisions(
    foam: FoamSite, sheets: Mapping[Takes, int], takes: Takes
) -> tuple[tuple[Part, ...], tuple[Decision, ...]]:
    letter, site = foam.site.letter, foam.site
    count = sheets[takes]
    decisions = []
    for side, short in zip(("left", "right"), takes, strict=True):
        end = site.left if side == "left" else site.right
        if end.what not in CORNERS or end.mitred:
            continue
        other = sheets.get((not takes[0], takes[1]) if side == "left" else (takes[0], not takes[1]))
        keys = ("stops", "laps") if end.what == "outside corner" else ("short", "fills")
        key, beaten = keys if short else reversed(keys)
        said = saying(f"decision.foam_{key}", side=side, gap=site.offsets.foam_face, sheets=count)
        beat = (saying(f"alternative.foam_{beaten}", sheets=other),) if other is not None else ()
        decisions.append(Decision(f"{letter}.foam_{side}", letter, said, beat))
    decisions.append(_order(foam))
    return pieces_of(foam, *takes), tuple(decisions)


def _order(foam: FoamSite) -> Decision:
    site = foam.site
    key = "decision.foam_first" if foam_first(site) else "decision.plate_first"
    return Decision(f"{site.letter}.order", site.letter, saying(key, spare=site.figures.foam_slot_spare))


def foam_first(site: Site) -> bool:
    """Say whether the foam cannot be lifted in over a bottom plate that is down already, so that it goes up first.

    Foam and joists run straight between readings, so it is tightest at a reading of either; a sheet is no taller than sold.
    """
    figures, wall = site.figures, site.wall
    for x in readings_of(wall):
        tall = least(_top(site, x, x) - figures.foam_floor_gap, figures.sheet_long)
        if tall + figures.stud_thick > wall.height.at(x) - figures.foam_slot_spare:
            return True
    return False


def pieces_of(foam: FoamSite, left_short: bool, right_short: bool) -> tuple[Part, ...]:
    """Return the foam pieces of a wall, from the left: full columns and a rest between whatever parts the foam.

    What is no wider than two sealed gaps is left to the can.
    """
    site = foam.site
    start, left_slant = _start(site, "left", left_short)
    off, right_slant = _start(site, "right", right_short)
    end = site.wall.length - off
    parts: list[Part] = []
    steps = tuple(x for step in site.wall.concrete.steps for x in step)
    for x0, x1, gaps in _stretches(start, end, tuple(_gaps(foam)), steps):
        slants = ZERO, ZERO
        if left_slant.ticks or right_slant.ticks:
            (x0, x1), slants = squared((x0, x1), (start, end), (left_slant, right_slant))
        if x1 - x0 > site.figures.foam_cut_gap * 2 + abs(slants[0]) + abs(slants[1]):
            for left, right in pairwise(_edges(site, x0, x1)):
                own = slants[0] if left == x0 else ZERO, slants[1] if right == x1 else ZERO
                parts += [replace(part, slants=own) for part in _column(foam, left, right, gaps)]
    return tuple(parts)


def _start(site: Site, side: str, short: bool) -> tuple[Length, Length]:
    """Return where foam starts and how that end slants; at a corner it rests on all that was weighed in giving it away."""
    end = site.left if side == "left" else site.right
    if end.what == "framed wall":
        return end.clear, ZERO
    if end.what == "open end":
        return ZERO.with_rests(end.clear.rests), ZERO
    concrete = (value.rests for _, value in site.wall.concrete.points)
    said = f"{end.neighbour}.right_foam" if side == "left" and end.neighbour else site.wall.ref(f"{side}_foam")
    weighed = site.things.union(
        site.wall.length.rests, {"basement.foam_sheet", "basement.block_reach", said}, *concrete
    )
    # round an outside corner one wall's foam runs on over the edge of the other's
    gap = site.offsets.foam_face
    if end.mitred:
        bed = site.figures.glue_bed
        at, slant = end.mitre(bed, bed, gap, gap)
        return at.with_rests(weighed), slant.with_rests(weighed)
    depth = gap if short is (end.what == "inside corner") else ZERO
    at, slant = end.parallel(end.at(depth, ZERO), site.figures.glue_bed, gap)
    return Length(at.ticks, depth.rests | weighed), slant.with_rests(weighed)


def _stretches(
    start: Length, end: Length, gaps: tuple[_Gap, ...], steps: tuple[Length, ...]
) -> Iterable[tuple[Length, Length, tuple[_Gap, ...]]]:
    """Part the wall from start to end wherever another set of gaps begins, and where the concrete steps."""
    edges = {start, end, *(x for x in (*steps, *(x for gap in gaps for x in (gap.x0, gap.x1))) if start < x < end)}
    found: list[tuple[Length, Length, tuple[_Gap, ...]]] = []
    for x0, x1 in pairwise(sorted(edges)):
        within = tuple(gap for gap in gaps if gap.x0 <= x0 and x1 <= gap.x1)
        if found and found[-1][2] == within and x0 not in steps:
            x0 = found.pop()[0]
        found.append((x0, x1, within))
    return found


def _gaps(foam: FoamSite) -> Iterable[_Gap]:
    """Yield where foam is cut: openings, pipes that reach into it, fireblocks through it."""
    site, figures = foam.site, foam.site.figures
    cut = figures.foam_cut_gap
    top = greatest(*(value for _, value in site.wall.concrete.points))
    for hole in foam.framing.holes:
        opening = hole.opening
        if opening.kind == "window":
            sill = opening.sill or ZERO
            yield _Gap(opening.left - cut, opening.right + cut, sill - cut, sill + (opening.tall or ZERO) + cut)
        elif opening.kind == "kept free":
            yield _Gap(hole.x0, hole.x1, ZERO, top)
        elif opening.hangs:
            low = least(site.wall.height.least_over(hole.x0, hole.x1) + hole.bottom.off, top) if hole.bottom else ZERO
            yield _Gap(hole.x0, hole.x1, low, top)
        else:
            tall = opening.leaf_height or opening.frame_height or ZERO
            yield _Gap(hole.x0, hole.x1, ZERO, greatest(tall, hole.top.at(site.wall, (hole.x0 + hole.x1) // 2)))
    for pipe in site.wall.pipes:
        if pipe.back < site.offsets.foam_face:
            low, high = pipe.heights if pipe.run == "lying" else (ZERO, top)
            x0, x1 = pipe.left_edge - cut, pipe.right_edge + cut
            yield _Gap(x0.with_rests(pipe.rests), x1.with_rests(pipe.rests), low - cut, high + cut)
    if site.basement.block_reach == "concrete":
        for block in foam.blocks:
            yield _Gap(block.box.x0, block.box.x1, ZERO, top)


def _edges(site: Site, x0: Length, x1: Length) -> list[Length]:
    """Return where the sheets of a stretch end: full ones and a rest; a rest under 12 in is evened out with the one before."""
    figures, sheet = site.figures, inches(site.basement.foam_sheet)
    count = -(-(x1 - x0).ticks // sheet.ticks)
    edges = [(x0 + sheet * number).with_rests(x1.rests) for number in range(count)] + [x1]
    if count > 1 and edges[-1] - edges[-2] < figures.foam_least_piece:
        edges[-2] = edges[-3] + ((edges[-1] - edges[-3]) // 2).up_to(figures.foam_step)
    return edges


def _column(foam: FoamSite, x0: Length, x1: Length, gaps: tuple[_Gap, ...]) -> list[Part]:
    """Return the pieces of one column: from the gap at the slab to the top, less the gaps, split at a sheet's length."""
    site, figures = foam.site, foam.site.figures
    stretches = [(figures.foam_floor_gap, _top(site, x0, x1))]
    for gap in gaps:
        stretches = [piece for stretch in stretches for piece in _without(stretch, gap)]
    parts = []
    for bottom, top in stretches:
        z = bottom
        while (tall := least(top - z, figures.sheet_long).down_to(figures.foam_step)) > ZERO:
            parts.append(_piece(foam, x0, x1, z, tall))
            z = z + tall
            if tall < figures.sheet_long:
                break
    return parts


def _top(site: Site, x0: Length, x1: Length) -> Length:
    """Return how high over the slab foam between two places may reach."""
    top = foam_top(site.wall, site.figures, site.cap_case, x0, x1).with_rests(site.over_plate.rests)
    if site.basement.strip is None:
        return top
    # left bare, to look for the tubes of termites
    return least(top, site.wall.concrete.least_over(x0, x1) - site.basement.strip)


def _without(stretch: tuple[Length, Length], gap: _Gap) -> list[tuple[Length, Length]]:
    low, high = stretch
    if gap.high <= low or high <= gap.low:
        return [stretch]
    return [(a, b) for a, b in ((low, gap.low), (gap.high, high)) if a < b]


def _piece(foam: FoamSite, x0: Length, x1: Length, z: Length, tall: Length) -> Part:
    site = foam.site
    bed = site.figures.glue_bed
    box = Box(x0, x1, bed, site.offsets.foam_face, over_slab(z), over_slab(z + tall))
    wide = (x1 - x0).down_to(site.figures.foam_step)
    rests = site.things.union(site.offsets.foam_face.rests, {"basement.block_reach", "basement.foam_sheet"})
    why = saying("part.foam", low=z)
    return Part(Kind.FOAM, site.letter, Material.FOAM, box, tall, why, wide=wide, placed_by=rests)
