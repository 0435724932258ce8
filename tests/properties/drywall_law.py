"""What must hold of the drywall: it covers the wall, its edges lie on wood, and openings and pipes stay free of it."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from guide.layout.parts import Kind, Part, WallLayout
from guide.lengths import ZERO, Length, inches
from guide.survey.model import Basement
from guide.survey.things import Opening
from tests.properties.seen import FIGURES, HUNG, TICK, holes, meet, slope_of, swing

WOOD = (Kind.STUD, Kind.KING, Kind.TRIMMER, Kind.CRIPPLE, Kind.PACK, Kind.HEADER, Kind.SILL, Kind.CHASE_POST)
SHEET = inches("96")
Span = tuple[Length, Length]


def loose_edges(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield every upright drywall edge that lacks 3/8 in of wood somewhere along it, when nothing says so.

    Wood is what is flush with the room face of the studs. Allowed are gaps too low for a short stud, and the ends of the
    wall where the wood is another wall's, or where a dropped corner pack is said.
    """
    said = {remark.x for remark in wall.remarks if remark.saying.key == "remark.edge_missed"}
    packs = any(remark.saying.key == "remark.pack_dropped" for remark in wall.remarks)
    bearing = FIGURES.edge_bearing_least
    for sheet in wall.of(Kind.DRYWALL):
        for x, low, high, end, first in (
            (sheet.box.x0, sheet.box.x0, sheet.box.x0 + bearing, wall.left, _run(wall)[0]),
            (sheet.box.x1, sheet.box.x1 - bearing, sheet.box.x1, wall.right, _run(wall)[1]),
        ):
            elsewhere = x == first and (end.what == "outside corner" or packs)
            if x not in said and not elsewhere and (gap := _unbacked(wall, basement, sheet, (low, high))):
                yield f"the edge of {sheet.id} at {x!r} has no wood from {gap[0]!r} to {gap[1]!r}"


def _unbacked(wall: WallLayout, basement: Basement, sheet: Part, span: Span) -> Span | None:
    survey, x = wall.wall, (span[0] + span[1]) // 2
    joists = survey.height.at(x)
    plates = FIGURES.stud_thick + (FIGURES.plywood if wall.cap_case != 1 else ZERO)
    cover = [(ZERO, FIGURES.gasket + FIGURES.stud_thick), (joists - plates, joists)]
    cover += [_heights(wall, p, x) for p in wall.of(*WOOD) if p.box.x0 <= span[0] and span[1] <= p.box.x1]
    cover += [_clear(wall, basement, o, x) for o, x0, x1 in holes(survey, basement) if meet(*span, x0, x1)]
    low, high = _heights(wall, sheet, x)
    return _gap(cover, low, high, FIGURES.cripple_least + slope_of(survey, sheet))


def bare_framing(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield where foam would stay without its cover of drywall, beside openings, boxes round pipes and partitions.

    Meant are: half an inch at the slab and at the ceiling, strips of 3/4 in or less, and on a slope the triangle under a
    square sheet. A sheet that has to be cut along the slab is remarked.
    """
    for far in (False, True) if wall.wall.is_partition else (False,):
        yield from _bare_side(wall, basement, far=far)


def _bare_side(wall: WallLayout, basement: Basement, *, far: bool) -> Iterator[str]:
    """Yield the same of one side of a wall; the far one of a partition is told apart by lying behind its studs."""
    sheets = [part for part in wall.of(Kind.DRYWALL) if (part.box.y1 <= wall.offsets.back) is far]
    low_said = any(remark.saying.key == "remark.drywall_low" for remark in wall.remarks)
    start, end = _run(wall)
    free = [(x0, x1, opening) for opening, x0, x1 in holes(wall.wall, basement)]
    boxes = [
        *(each for each in _boxed(wall) if each not in fronts(wall)),
        *((each.left, each.right) for each in wall.wall.partitions if not far),
    ]
    places = {start, end, *(x for s in sheets for x in (s.box.x0, s.box.x1)), *(x for f in free for x in f[:2])}
    for x0, x1 in pairwise(sorted(x for x in {*places, *(x for b in boxes for x in b)} if start <= x <= end)):
        if x1 - x0 < FIGURES.edge_bearing_least or any(b0 <= x0 and x1 <= b1 for b0, b1 in boxes):
            continue
        mid = (x0 + x1) // 2
        cover = [_heights(wall, s, mid) for s in sheets if s.box.x0 <= x0 and x1 <= s.box.x1]
        cover += [_clear(wall, basement, opening, mid) for h0, h1, opening in free if h0 <= x0 and x1 <= h1]
        slope = swing(wall.wall.height, max(ZERO, x0 - SHEET), min(wall.wall.length, x1 + SHEET))
        low, high = FIGURES.drywall_floor_gap, wall.wall.height.at(mid) - FIGURES.ceiling
        spare = FIGURES.drywall_spare + FIGURES.drywall_step + slope
        if (gap := _gap(cover, low, high, spare)) and not low_said:
            yield f"no drywall from {x0!r} to {x1!r}, {gap[0]!r} to {gap[1]!r} high"


def loose_sheets(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield every sheet that is larger than it is sold, stands off its place, or covers an opening or a pipe."""
    start, end = _run(wall)
    lies = [(wall.offsets.face, wall.offsets.drywall)]
    if wall.wall.is_partition:
        lies.append((wall.offsets.back - inches(basement.drywall), wall.offsets.back))
    for sheet in wall.of(Kind.DRYWALL):
        box = sheet.box
        if not (sheet.wide and min(sheet.wide, sheet.cut) <= SHEET // 2 and max(sheet.wide, sheet.cut) <= SHEET):
            yield f"{sheet.id} is larger than a sheet"
        front = next((y for (x0, x1), y in fronts(wall).items() if x0 <= box.x0 and box.x1 <= x1), wall.offsets.face)
        thick = wall.offsets.drywall - wall.offsets.face
        ends = (box.x0 < start or box.x1 > end) and front == wall.offsets.face
        if (box.y0, box.y1) not in (*lies, (front, front + thick)) or ends:
            yield f"{sheet.id} does not lie on the studs between the wall's ends"
        for x in (box.x0, box.x1):
            low, high = _heights(wall, sheet, x)
            if low < FIGURES.drywall_floor_gap - TICK or high > wall.wall.height.at(x) - FIGURES.ceiling + TICK:
                yield f"{sheet.id} stands on the slab or reaches into the ceiling"
        for x0, x1 in _boxed(wall):
            if meet(box.x0, box.x1, x0, x1) and front == wall.offsets.face:
                yield f"{sheet.id} stands in a box round a pipe"
        for opening, x0, x1 in holes(wall.wall, basement):
            inner = max(x0, box.x0), min(x1, box.x1)
            if inner[0] < inner[1] and _covers_a_hole(wall, basement, sheet, opening, inner):
                yield f"{sheet.id} covers {opening.place}"


def _covers_a_hole(wall: WallLayout, basement: Basement, sheet: Part, opening: Opening, span: Span) -> bool:
    """Say whether a sheet, less its cut-outs, reaches more than an inch and its own slope into a framed hole."""
    mid = (span[0] + span[1]) // 2
    low, high = _clear(wall, basement, opening, mid)
    bottom, top = _heights(wall, sheet, mid)
    slack = inches("1") + slope_of(wall.wall, sheet)
    low, high = max(low + slack, bottom), min(high - slack, top)
    cut = [
        (n.z0.at(wall.wall, mid), n.z1.at(wall.wall, mid)) for n in sheet.notches if n.x0 <= span[0] and span[1] <= n.x1
    ]
    return low < high and _gap(cut, low, high, TICK) is not None


def _clear(wall: WallLayout, basement: Basement, opening: Opening, x: Length) -> Span:
    """Return the heights of a framed hole at x: it hangs level from the joists, which it was measured under."""
    height, middle = wall.wall.height, (opening.left + opening.right) // 2
    joists, fall = height.at(middle), height.at(x) - height.at(middle)
    plates = FIGURES.stud_thick + (FIGURES.plywood if wall.cap_case != 1 else ZERO)
    low, tall = ZERO, (opening.leaf_height or opening.frame_height or ZERO) + FIGURES.frame_play
    if opening.kind == "window":
        lining = FIGURES.window_buck + FIGURES.window_return_foam
        low, tall = (opening.sill or ZERO) + lining + fall, (opening.sill or ZERO) + (opening.tall or ZERO) - lining
    elif opening.kind == "new door":
        tall = (opening.leaf_height or ZERO) + FIGURES.door_taller + basement.floor_finish
    elif opening.kind == "kept free":
        tall = joists
    elif opening.kind == HUNG:
        return joists - (opening.over_drop or ZERO) - (opening.over_clear or ZERO) + fall, joists + fall
    if joists - tall <= FIGURES.head_is_plate or joists - tall - plates < FIGURES.stud_thick:
        tall = joists - plates  # the top plate is the header
    return low, tall + fall


def fronts(wall: WallLayout) -> dict[Span, Length]:
    """Return the boxes wider than a bay, which sheets of their own hang on, with how far out their posts reach."""
    feet = (p.box for p in wall.of(Kind.CHASE_RUNG) if "treated" in p.material)
    least = FIGURES.stud_spacing + FIGURES.stud_thick
    return {(foot.x0, foot.x1): foot.y1 for foot in feet if foot.x1 - foot.x0 > least}


def _boxed(wall: WallLayout) -> Iterator[Span]:
    """Yield where a box round a pipe, or a pipe that needs one, stands through the face of the wall."""
    wider = FIGURES.chase_wider // 2
    spans = [(p.box.x0, p.box.x1) for p in wall.of(Kind.CHASE_RUNG) if "treated" in p.material]
    yield from spans
    ways = {d.id: d.saying.key for d in wall.decisions}
    for pipe in wall.wall.pipes:
        if ways[f"{pipe.place}.way"] in ("decision.pipe_box", "decision.pipe_box_along"):
            x0, x1 = pipe.left_edge - wider, pipe.right_edge + wider
            if not any(left <= x0 and x1 <= right for left, right in spans):
                yield x0, x1


def _run(wall: WallLayout) -> Span:
    return wall.plate_start + wall.left.first_sheet, wall.plate_end - wall.right.first_sheet


def _heights(wall: WallLayout, part: Part, x: Length) -> Span:
    return part.box.z0.at(wall.wall, x), part.box.z1.at(wall.wall, x)


def _gap(cover: list[Span], low: Length, high: Length, spare: Length) -> Span | None:
    """Return the first stretch between two heights that nothing covers and that is more than the spare."""
    at = low
    for z0, z1 in [*sorted(cover), (high, high)]:
        if z0 - at > spare + TICK and at < high:
            return at, z0
        at = max(at, z1)
    return None
