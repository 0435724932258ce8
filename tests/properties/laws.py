"""What must hold of every wall ever laid out, each law as a function that returns the sentences in which it is broken.

The laws are worked out from the survey, the figures and the parts alone: none of them calls the rules it checks.
A law that allows something says how much and why.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import combinations, pairwise

from guide.layout.parts import FULL_HEIGHT, Box, Datum, Kind, Layout, Level, Part, WallLayout
from guide.lengths import SIXTEENTH, ZERO, Length, inches
from guide.reference.codes import load_code
from guide.survey.model import Basement, Wall
from guide.survey.things import Opening, Pipe
from tests.properties.seen import FIGURES, HUNG, TICK, holes, joists, meet, slope_of, stacks, swing

UPRIGHT = (*FULL_HEIGHT, Kind.TRIMMER, Kind.CRIPPLE)
OVERHEAD = (Kind.CAP, Kind.CAP_LAP, Kind.JOIST_BLOCK, Kind.LEDGE, Kind.LEDGE_LAP, Kind.RIM)
"""Parts that lie on the concrete or over the joists' underside, behind and above the wall; pipes pass through them."""

SCREWED = inches("16").ticks
"""The furthest from screw to screw through a block's lap; common practice."""

LINING = (Kind.BUCK, Kind.RETURN, Kind.EXTENSION)
"""Parts in the tunnel of a window or on the jamb of a door, whose clear they narrow."""

CUT_AT_CENTRE = (*UPRIGHT, Kind.FIREBLOCK, Kind.UPPER_BLOCK)
"""Parts cut square to the height at their own centre: on a slope one edge stands a little high, the other low."""


def clashes(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield every two parts that share volume: touching is allowed, and the slope over a square cut end."""
    for one, other in combinations(wall.parts, 2):
        if depth := shared(wall.wall, one, wall.wall, other):
            yield f"{one.id} and {other.id} share {depth!r} of height"


def shared(wall: Wall, one: Part, other_wall: Wall, other: Part) -> Length | None:
    """Return by how much two parts of one wall overlap in height where their footprints meet, or None."""
    a, b = one.box, other.box
    x0, x1 = max(a.x0, b.x0), min(a.x1, b.x1)
    if x0 >= x1 or not meet(a.y0, a.y1, b.y0, b.y1):
        return None
    allowed = max([ZERO, *(slope_of(w, p) for w, p in ((wall, one), (other_wall, other)) if p.kind in CUT_AT_CENTRE)])
    depth = _deepest(wall, a, b, x0, x1)
    if depth <= allowed + TICK or _in_a_notch(wall, one, other) or _in_a_notch(wall, other, one):
        return None
    return depth


def _deepest(wall: Wall, a: Box, b: Box, x0: Length, x1: Length) -> Length:
    """Return the greatest common height of two boxes between two places.

    Between two readings every level is a straight line, and so is each of the four differences of which the common
    height is the smallest; the greatest of the smallest lies at an end or where two of the lines cross.
    """
    bends = sorted({x0, x1, *wall.height.breaks(x0, x1), *wall.concrete.breaks(x0, x1)})
    found = []
    for left, right in pairwise(bends):
        lines = [
            (
                high.at(wall, left).ticks - low.at(wall, left).ticks,
                high.at(wall, right).ticks - low.at(wall, right).ticks,
            )
            for high in (a.z1, b.z1)
            for low in (a.z0, b.z0)
        ]
        places = [0.0, 1.0]
        for (p0, p1), (q0, q1) in combinations(lines, 2):
            if (p1 - p0) != (q1 - q0):
                places.append((q0 - p0) / ((p1 - p0) - (q1 - q0)))
        found += [min(p0 + (p1 - p0) * at for p0, p1 in lines) for at in places if 0 <= at <= 1]
    return Length(int(max(found)))


def _in_a_notch(wall: Wall, notched: Part, other: Part) -> bool:
    """Say whether what two parts share lies in wood that was taken out of one of them."""
    b = other.box
    x = (max(notched.box.x0, b.x0) + min(notched.box.x1, b.x1)) // 2
    low = max(b.z0.at(wall, x), notched.box.z0.at(wall, x))
    high = min(b.z1.at(wall, x), notched.box.z1.at(wall, x))
    return any(
        notch.y0 <= max(b.y0, notched.box.y0)
        and min(b.y1, notched.box.y1) <= notch.y1
        and notch.z0.at(wall, x) <= low
        and high <= notch.z1.at(wall, x)
        for notch in notched.notches
    )


def corner_clashes(layout: Layout) -> Iterator[str]:
    """Yield every two parts of neighbouring walls that share volume in their corner.

    The corner is one place, but each wall is read by itself: allowed is what the two readings of the concrete's top
    differ there, and what each wall rises or falls within two feet.
    """
    near = inches("24")
    for wall in layout.walls:
        other = layout.by_letter.get(wall.wall.right_joined or "")
        if other is None:
            continue
        length = wall.wall.length
        allowed = TICK + abs(wall.wall.concrete.at(length) - other.wall.concrete.at(ZERO))
        for each, x0, x1 in ((wall.wall, length - near, length), (other.wall, ZERO, near)):
            allowed += swing(each.height, x0, x1) + swing(each.concrete, x0, x1)
        for one in (p for p in wall.parts if p.box.x1 > length - near):
            a, (a0, a1) = one.box, _heights(wall, one, length)
            for two in (p for p in other.parts if p.box.x0 < near):
                b, (b0, b1) = two.box, _heights(other, two, ZERO)
                if wall.right.what == "inside corner":
                    across = meet(length - a.x1, length - a.x0, b.y0, b.y1) and meet(a.y0, a.y1, b.x0, b.x1)
                else:  # round an outside corner the other wall goes on behind this one
                    across = meet(a.x0 - length, a.x1 - length, b.y0, b.y1) and meet(-a.y1, -a.y0, b.x0, b.x1)
                if across and min(a1, b1) - max(a0, b0) > allowed:
                    yield f"{one.id} and {two.id} share volume in the corner"


def _heights(wall: WallLayout, part: Part, corner: Length) -> tuple[Length, Length]:
    x = max(part.box.x0, min(part.box.x1, corner))
    return part.box.z0.at(wall.wall, x), part.box.z1.at(wall.wall, x)


# ---------------------------------------------------------------------------------------------- each within its wall


def reach(wall: WallLayout) -> tuple[Length, Length]:
    """Return how far a wall may reach: from concrete to concrete, at an outside corner to the plate or the foam beyond."""
    beyond = []
    for end in (wall.left, wall.right):
        beyond.append(max(-end.clear, wall.offsets.foam_face) if end.what == "outside corner" else ZERO)
    return -beyond[0], wall.wall.length + beyond[1]


def strays(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield every part that is empty, or reaches out of its wall."""
    survey = wall.wall
    deepest = min(ZERO, *(FIGURES.string_block - reading for _, reading in survey.string.points))  # a hollow
    for part in wall.parts:
        box = part.box
        if not (box.x0 < box.x1 and box.y0 < box.y1 and part.cut > ZERO):
            yield f"{part.id} is empty"
        mid = part.centre
        if not box.z0.at(survey, mid) < box.z1.at(survey, mid):
            yield f"{part.id} has no height"
        if part.kind in (*OVERHEAD, *LINING, Kind.DRYWALL):  # drywall and what lines a window have laws of their own
            continue
        x0, x1 = reach(wall)
        nearest = -survey.shelf if part.kind is Kind.UPPER_BLOCK else deepest
        if box.x0 < x0 or box.x1 > x1 or box.y0 < nearest:
            yield f"{part.id} is not between the two concrete corners"
        slope = slope_of(survey, part)
        for x in (box.x0, box.x1):
            if box.z0.at(survey, x) < ZERO or box.z1.at(survey, x) > survey.height.at(x) + slope + TICK:
                yield f"{part.id} reaches into the slab or over the joists"
        framing = part.kind not in (Kind.FOAM, Kind.CHASE_POST, Kind.CHASE_RUNG, Kind.OUTLET)
        if framing and (box.x0 < wall.plate_start or box.x1 > wall.plate_end):
            yield f"{part.id} is not over the plates"
        if (
            framing
            and part.kind not in (Kind.FIREBLOCK, Kind.UPPER_BLOCK)
            and not (wall.offsets.back <= box.y0 and box.y1 <= wall.offsets.face)
        ):
            yield f"{part.id} is not in the line of the studs"


# ------------------------------------------------------------------------------------------------------ bearing


def hanging(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield every upright, header or sill that does not bear at both ends.

    The gap over a square cut end is less than the cutting step, and what the slope over its own thickness explains.
    """
    bottoms, tops = wall.of(Kind.BOTTOM_PLATE), wall.of(Kind.TOP_PLATE)
    headers, sills = wall.of(Kind.HEADER), wall.of(Kind.SILL)
    under = {Kind.TRIMMER: bottoms, Kind.CRIPPLE: (*bottoms, *headers)}
    over = {Kind.TRIMMER: headers, Kind.CRIPPLE: (*tops, *sills)}
    for part in wall.of(*UPRIGHT):
        if not _stands(wall, part, under.get(part.kind, bottoms)):
            yield f"{part.id} stands on nothing"
        if not _reaches(wall, part, over.get(part.kind, tops)):
            yield f"{part.id} has nothing over it"
    for header in headers:
        trimmers = [p.box for p in wall.of(Kind.TRIMMER)]
        if not any(t.x0 == header.box.x0 for t in trimmers) or not any(t.x1 == header.box.x1 for t in trimmers):
            yield f"{header.id} does not lie on two trimmers"
    uprights = wall.of(*FULL_HEIGHT, Kind.TRIMMER)
    for sill in sills:
        left = any(p.box.x1 == sill.box.x0 for p in uprights)
        if not left or not any(p.box.x0 == sill.box.x1 for p in uprights):
            yield f"{sill.id} is not between two uprights"


def _stands(wall: WallLayout, part: Part, on: Iterable[Part]) -> bool:
    foot = part.box.z0.at(wall.wall, part.centre)
    near = [p.box for p in on if abs(p.box.z1.at(wall.wall, part.centre) - foot) <= TICK]
    return _covers([(b.x0, b.x1) for b in near], part.box.x0, part.box.x1)


def _reaches(wall: WallLayout, part: Part, under: Iterable[Part]) -> bool:
    head, slope = part.box.z1.at(wall.wall, part.centre), slope_of(wall.wall, part)
    near = []
    for other in under:
        gap = other.box.z0.at(wall.wall, part.centre) - head
        if -slope - TICK <= gap <= SIXTEENTH + slope + TICK:
            near.append((other.box.x0, other.box.x1))
    return _covers(near, part.box.x0, part.box.x1)


def _covers(stretches: list[tuple[Length, Length]], x0: Length, x1: Length) -> bool:
    """Say whether stretches that touch or overlap cover x0 to x1 without a gap."""
    at = x0
    for left, right in sorted(stretches):
        if left <= at < right:
            at = right
    return at >= x1


def loose_backing(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield every block for what will hang that does not reach from one upright to the next, flush with their face."""
    survey, uprights = wall.wall, wall.of(*UPRIGHT)
    for block in wall.of(Kind.BACKING):
        box = block.box
        low, high = box.z0.at(survey, block.centre), box.z1.at(survey, block.centre)
        for side, x in (("left", box.x0), ("right", box.x1)):
            beside = [p for p in uprights if x == (p.box.x1 if side == "left" else p.box.x0)]
            heights = [(p.box.z0.at(survey, p.centre), p.box.z1.at(survey, p.centre)) for p in beside]
            if not any(z0 <= low and high <= z1 for z0, z1 in heights):
                yield f"{block.id} has no upright on its {side}"
        if box.y1 != wall.offsets.face or box.y1 - box.y0 != FIGURES.stud_thick:
            yield f"{block.id} does not lie flat and flush with the studs"


# ------------------------------------------------------------------------------------------------------- plates


def untiled(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield where plate pieces do not tile what pipes, columns and beams leave of the plates (and doors, of the bottom one).

    A rest shorter than a stud is thick carries nothing and need not be there.
    """
    pipes = [(x0, x1) for _, x0, x1 in stacks(wall)]
    doors = [(x0, x1) for o, x0, x1 in holes(wall.wall, basement) if o.kind not in ("window", HUNG)]
    columns = [(x0, x1) for o, x0, x1 in holes(wall.wall, basement) if o.keeps == "column" or o.kind == HUNG]
    for kind, breaks in ((Kind.BOTTOM_PLATE, [*pipes, *doors]), (Kind.TOP_PLATE, [*pipes, *columns])):
        pieces = [(p.box.x0, p.box.x1) for p in wall.of(kind)]
        for (_, right), (left, _) in pairwise(sorted(pieces)):
            if left < right:
                yield f"two pieces of {kind.value} overlap at {left!r}"
        at = wall.plate_start
        for x0, x1 in [*sorted(breaks), (wall.plate_end, wall.plate_end)]:
            run = (at, min(x0, wall.plate_end))
            inside = [p for p in pieces if meet(*p, *run)]
            within = all(run[0] <= left and right <= run[1] for left, right in inside)
            if run[1] - run[0] >= FIGURES.stud_thick and not (within and _covers(inside, *run)):
                yield f"{kind.value} does not tile {run}"
            at = max(at, x1)
    for part in wall.of(Kind.BOTTOM_PLATE, Kind.TOP_PLATE):
        if part.cut > inches(f"{basement.longest_stick} ft"):
            yield f"{part.id} is longer than a stick"
        if part.kind is Kind.TOP_PLATE and part.cut > FIGURES.overhead_longest:
            yield f"{part.id} is longer than one person puts up"


def joints_in_the_air(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield every joint of the top plate that no joist or block is over, when nothing says so.

    A partition right under a joist has that over all of its plate.
    """
    if wall.wall.is_partition and wall.wall.joists == "alongside" and wall.wall.parallel_gap == ZERO:
        return
    said = any(remark.saying.key == "remark.top_joint" for remark in wall.remarks)
    supports = _supports(wall)
    pieces = sorted(wall.of(Kind.TOP_PLATE), key=lambda p: p.box.x0)
    for left, right in pairwise(pieces):
        if left.box.x1 == right.box.x0 and not said:
            at = left.box.x1
            if not any(abs(at - support) <= FIGURES.joist_thick // 2 for support in supports):
                yield f"the joint at {at!r} is under nothing"


def _supports(wall: WallLayout) -> list[Length]:
    survey = wall.wall
    if survey.joists == "alongside":
        return [block.centre for block in wall.of(Kind.JOIST_BLOCK)]
    return [(x0 + x1) // 2 for x0, x1 in joists(survey)]


def open_ways(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield where fire could run further along the wall than the code profile's limit, when nothing says so.

    Behind a partition there is no hollow: its plates and end studs close its bays.
    """
    if wall.wall.is_partition:
        return
    said = {remark.saying.key for remark in wall.remarks}
    limit = load_code().blocks_along.length
    blocks = sorted(wall.of(Kind.FIREBLOCK), key=lambda p: p.box.x0)
    start, end = min(ZERO, wall.plate_start), max(wall.wall.length, wall.plate_end)
    edges = [start, *(x for b in blocks for x in (b.box.x0, b.box.x1)), end]
    told = {dict(r.saying.values)["side"] for r in wall.remarks if r.saying.key == "remark.fireblock_end"}
    spans = list(pairwise(edges))[::2]  # a way on past an end without a block is closed with wool, and that is said
    spans = spans["left" in told : len(spans) - ("right" in told)] or spans
    widest = max(right - left for left, right in spans)
    if widest > limit and not said & {"remark.fireblock_far", "remark.fireblock_side"}:  # or beside a place kept free
        yield f"{widest!r} between fireblocks"
    ends = sum(remark.saying.key == "remark.fireblock_end" for remark in wall.remarks)
    left, right = (
        FIGURES.stud_spacing + abs(end.slant) for end in (wall.left, wall.right)
    )  # uprights stand clear of it
    for near in (
        [b for b in blocks if b.box.x0 - max(ZERO, wall.plate_start) <= left],
        [b for b in blocks if min(wall.wall.length, wall.plate_end) - b.box.x1 <= right],
    ):
        if not near:
            ends -= 1
    if ends < 0:
        yield "an end without a fireblock"
    sides = [
        e for o, x0, x1 in holes(wall.wall, basement) if o.kind == "kept free" for e in (x0, x1) if start < e < end
    ]
    unclosed = [
        e for e in sides if not any(abs(b.centre - e) <= FIGURES.stud_spacing + FIGURES.stud_thick for b in blocks)
    ]
    if len(unclosed) > sum(remark.saying.key == "remark.fireblock_side" for remark in wall.remarks):
        yield "a place kept free with the hollow open beside it"


def unheld_blocks(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield each upright fireblock that does not lie flat against one upright, all the way up and a full lap over its side.

    A screw every 16 in goes through the lap. Each is cut square at its own centre, to a sixteenth: by so much, and by the
    slope from one centre to the other, the block may stand over the stud.
    """
    survey, uprights = wall.wall, wall.of(Kind.STUD, Kind.KING)
    for block in wall.of(Kind.FIREBLOCK, Kind.UPPER_BLOCK):
        box = block.box
        low, high = box.z0.at(survey, block.centre), box.z1.at(survey, block.centre)
        beside = [p for p in uprights if p.box.x1 == box.x0 or p.box.x0 == box.x1]
        if not any(
            p.box.y0 + FIGURES.block_lap <= box.y1 <= p.box.y1
            and p.box.z0.at(survey, block.centre) <= low
            and high
            <= p.box.z1.at(survey, block.centre) + SIXTEENTH + slope_of(survey, p) + slope_of(survey, block) + TICK
            for p in beside
        ):
            yield f"{block.id} lies against no upright all the way up"
        if sum(held.count for held in block.fastenings) * SCREWED < block.cut.ticks:
            yield f"{block.id} has a screw further than 16 in from the next"


# ------------------------------------------------------------------------------------- pipes, openings and counting


def in_the_way(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield every part that stands in a pipe or in the clear of an opening."""
    survey = wall.wall
    solid = [p for p in wall.parts if p.kind not in (*OVERHEAD, Kind.DRYWALL)]
    for pipe in survey.pipes:
        low, high = ZERO, max(value for _, value in survey.height.points)
        for part in solid:
            out = pipe.out
            if pipe.run == "lying" and meet(part.box.x0, part.box.x1, pipe.left_edge, pipe.right_edge):
                low, high, out = lying_at(pipe, part)
            if pipe.run == "lying" and part.kind in (Kind.BOTTOM_PLATE, Kind.TOP_PLATE, Kind.HEADER, Kind.SILL):
                continue  # a pipe at such a height is let into the plate by hand
            body = _without_notches(survey, part)
            if any(
                meet(b.x0, b.x1, pipe.left_edge, pipe.right_edge)
                and meet(b.y0, b.y1, pipe.back, out)
                and meet(b.z0.at(survey, part.centre), b.z1.at(survey, part.centre), low, high)
                for b in body
            ):
                yield f"{part.id} stands in {pipe.place}"
    for opening, x0, x1 in holes(survey, basement):
        for part in solid:
            if (
                part.kind not in (Kind.RETURN, Kind.EXTENSION)
                and (part.kind is not Kind.TOP_PLATE or opening.keeps == "column" or opening.kind == HUNG)
                and meet(part.box.x0, part.box.x1, x0, x1)
                and _in_the_clear(wall, opening, part)
            ):
                yield f"{part.id} stands in {opening.place}"


def lying_at(pipe: Pipe, part: Part) -> tuple[Length, Length, Length]:
    """Return the bottom, the top and the outermost point of a pipe along the wall where it passes a part."""
    left, right = pipe.low_left or ZERO, pipe.low_right or ZERO
    run = (pipe.right_edge - pipe.left_edge).ticks
    places = [max(pipe.left_edge, min(pipe.right_edge, x)) for x in (part.box.x0, part.box.x1)]
    lows = [left + Length((right - left).ticks * (x - pipe.left_edge).ticks // run) for x in places]
    fat = [(at - long // 2, at + long // 2) for at, long in (pipe.fittings.points if pipe.fittings else ())]
    bare = not any(meet(part.box.x0, part.box.x1, *each) for each in fat)
    out = min(pipe.bare, pipe.out) if pipe.bare is not None and pipe.fittings and bare else pipe.out
    return min(lows), max(lows) + pipe.wide, out


def _without_notches(wall: Wall, part: Part) -> list[Box]:
    """Return a part as the boxes that are left of it: each notch takes the back away between two heights."""
    left = [part.box]
    for notch in part.notches:
        cut: list[Box] = []
        for b in left:
            low, high = (level.at(wall, part.centre) for level in (notch.z0, notch.z1))
            z0, z1 = (level.at(wall, part.centre) for level in (b.z0, b.z1))
            levels = sorted({z0, z1, *(z for z in (low, high) if z0 < z < z1)})
            for bottom, top in pairwise(levels):
                y0 = notch.y1 if low <= bottom and top <= high else b.y0
                if y0 < b.y1:
                    cut.append(Box(b.x0, b.x1, y0, b.y1, Level(Datum.SLAB, bottom), Level(Datum.SLAB, top)))
        left = cut
    return left


def _in_the_clear(wall: WallLayout, opening: Opening, part: Part) -> bool:
    """Say whether a part reaches more than an inch into the clear of an opening.

    Its framing hangs level from the joists; foam is cut round the hole in the concrete, at its height over the slab.
    """
    survey, inch = wall.wall, inches("1")
    middle = (opening.left + opening.right) // 2
    low, high = ZERO, (opening.leaf_height or opening.frame_height or survey.height.at(middle))
    if opening.kind == "window":
        lining = FIGURES.window_buck + FIGURES.window_return_foam
        low, high = (opening.sill or ZERO) + lining, (opening.sill or ZERO) + (opening.tall or ZERO) - lining
    elif opening.kind == HUNG:
        low = high - (opening.over_drop or ZERO) - (opening.over_clear or ZERO)
    fall = (
        ZERO
        if part.kind is Kind.FOAM and opening.kind != HUNG
        else survey.height.at(part.centre) - survey.height.at(middle)
    )
    slope = slope_of(survey, part)
    z0, z1 = (level.at(survey, part.centre) for level in (part.box.z0, part.box.z1))
    return meet(z0, z1, low + fall + inch + slope, high + fall - inch - slope)


def miscounted(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield where names do not count the parts: each kind is numbered from the left without a gap, each mark once."""
    for kind in Kind:
        ids = [part.id for part in wall.of(kind)]
        if ids != [f"{wall.letter}.{kind.value.replace(' ', '_')}.{n}" for n in range(1, len(ids) + 1)]:
            yield f"{kind.value}: {ids}"
    marks = [part.mark for part in wall.parts]
    if len(set(marks)) != len(marks):
        yield "a mark stands twice"
