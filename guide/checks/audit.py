"""A second look at the finished parts: each thing first-timers get wrong, worked out anew from the parts alone.

The engine builds a wall so that none of this happens. It is looked at again all the same, by another way than the one it
was built by: a slip of the engine, or a choice that somebody overruled, is found here and not at the saw. Nothing in this
module asks the engine why a part is where it is.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from guide.checks.barrier import bare_foam
from guide.checks.findings import Finding, finding
from guide.layout.heights import case_of
from guide.layout.parts import BOARDS, FULL_HEIGHT, Datum, Kind, Layout, Material, Part, WallLayout, overlap
from guide.lengths import SIXTEENTH, SIXTY_FOURTH, ZERO, Length, greatest, inches, least
from guide.reference.figures import load_figures
from guide.reference.stock import load_fasteners
from guide.survey.room import thing_name

SLOPE = inches("1/8")
"""Joists that differ by more than this along a wall want studs of different lengths. Common practice."""
ANCHOR_FURTHEST = inches("12")
"""The first fastener of a plate piece stands no further from its end. IRC R403.1.6 for bearing plates (memory)."""


def audit(wall: WallLayout) -> Iterator[Finding]:
    """Yield what does not hold of the parts of one wall."""
    for look in (_cap, _treated, _anchors, _studs, _foam, bare_foam, _plates, _pipes, _old_boxes):
        yield from look(wall)


def corner_roles(layout: Layout) -> Iterator[Finding]:
    """Yield the corners at which both walls run through, or both butt."""
    for wall in layout.walls:
        other = layout.by_letter.get(wall.wall.right_joined or "")
        if other is not None and wall.right.through is not None and wall.right.through == other.left.through:
            yield finding("corner_roles", wall.letter, wall.mark_of(wall.plate_end), other=other.letter)


def _cap(wall: WallLayout) -> Iterator[Finding]:
    """The cap reaches from the sill to the plate, and from end to end but for what comes up through it or hangs into it."""
    figures, back = load_figures(), -wall.wall.shelf
    reach = wall.offsets.back if wall.cap_case == 1 else wall.offsets.face
    if back >= reach:
        return  # the sill hangs over the room as far as the plate, and closes the gap itself
    caps, room = wall.of(Kind.CAP), figures.foam_cut_gap
    closed = [(cap.box.x0, cap.box.x1) for cap in caps]
    closed += [(p.left_edge - room, p.right_edge + room) for p in wall.wall.pipes if p.run == "standing"]
    closed += [opening.kept_clear for opening in wall.wall.openings if opening.hangs]
    at, last = wall.left.cap, wall.wall.length - wall.right.cap
    for start, end in [*sorted(closed), (last, last)]:
        slanted = abs(wall.left.at(ZERO, reach - back)) + abs(wall.right.at(ZERO, reach - back))
        if least(start, last) - at > SIXTY_FOURTH + slanted:
            yield finding("cap_open", wall.letter, wall.mark_of(at), gap=least(start, last) - at)
        at = greatest(at, end)
    for cap in caps:
        short = reach - cap.box.y0 - (cap.wide or ZERO)
        if short >= SIXTEENTH:
            yield finding("cap_short", wall.letter, wall.mark_of(cap.box.x0), mark=cap.mark, short=short)
    if caps and wall.cap_case == 1 and case_of(wall.wall, figures) != 1:
        yield finding("cap_misses", wall.letter, least=figures.cap_overlap)


def _treated(wall: WallLayout) -> Iterator[Finding]:
    """Wood on the slab is treated, and what is driven into it is coated."""
    figures, book = load_figures(), load_fasteners()
    for part in wall.parts:
        low = part.box.z0.datum is Datum.SLAB and part.box.z0.off <= figures.gasket
        if low and part.material in (Material.STUD, Material.SMALL_STUD):
            yield finding("untreated", wall.letter, wall.mark_of(part.box.x0), mark=part.mark)
        treated = part.material in (Material.TREATED, Material.SMALL_TREATED, *BOARDS) or _stands_on_treated(wall, part)
        held = [book.fastener[each.fastener] for each in part.fastenings]
        if treated and held and not any(fastener.treated for fastener in held):
            yield finding("bright_nails", wall.letter, wall.mark_of(part.box.x0), mark=part.mark, nail=held[0].short)


def _stands_on_treated(wall: WallLayout, part: Part) -> bool:
    if part.kind not in FULL_HEIGHT:
        return False
    return any(plate.box.x0 < part.box.x1 and part.box.x0 < plate.box.x1 for plate in wall.of(Kind.BOTTOM_PLATE))


def _anchors(wall: WallLayout) -> Iterator[Finding]:
    """Each piece of bottom plate is held near both its ends, by two fasteners at least."""
    for plate in wall.of(Kind.BOTTOM_PLATE):
        at = sorted(x for held in plate.fastenings for x in held.at)
        start, end = plate.box.x0, plate.box.x1
        if len(at) < 2 or at[0] - start > ANCHOR_FURTHEST or end - at[-1] > ANCHOR_FURTHEST:
            yield finding("plate_end_loose", wall.letter, wall.mark_of(start), mark=plate.mark, most=ANCHOR_FURTHEST)


def _studs(wall: WallLayout) -> Iterator[Finding]:
    """Studs follow the joists in length and the drywall in place; a corner that needs backing has it."""
    figures = load_figures()
    full = wall.of(*FULL_HEIGHT)
    heights = [wall.wall.height.at(stud.centre) for stud in full]
    swing = greatest(*heights) - least(*heights) if heights else ZERO
    if swing > SLOPE and len({stud.cut for stud in full}) == 1:
        yield finding("studs_alike", wall.letter, swing=swing)
    for stud in wall.of(Kind.STUD):
        if stud.why.key in ("part.layout_stud", "part.edge_stud"):
            off = Length(abs(stud.centre - wall.zero).ticks % figures.stud_spacing.ticks)
            off = least(off, figures.stud_spacing - off)
            if off > SIXTY_FOURTH:
                yield finding("stud_off", wall.letter, wall.mark_of(stud.box.x0), mark=stud.mark, off=off)
    dropped = any(remark.saying.key == "remark.pack_dropped" for remark in wall.remarks)
    for end, edge, near in (
        (wall.left, wall.plate_start, figures.stud_spacing),
        (wall.right, wall.plate_end, figures.stud_spacing),
    ):
        backed = any(abs(pack.centre - edge) < near for pack in wall.of(Kind.PACK))
        if end.what == "inside corner" and end.through and not backed and not dropped:
            yield finding("corner_bare", wall.letter, wall.mark_of(edge))


def _foam(wall: WallLayout) -> Iterator[Finding]:
    """The foam goes in behind the plate, stands clear of the worst hump, and has no strips too narrow to handle."""
    figures, offsets = load_figures(), wall.offsets
    for piece in wall.of(Kind.FOAM):
        low, high = (level.at(wall.wall, piece.centre) for level in (piece.box.z0, piece.box.z1))
        over = wall.wall.height.least_over(piece.box.x0, piece.box.x1) - figures.foam_slot_spare
        if not wall.foam_first and high - low + figures.stud_thick > over + SIXTEENTH:
            yield finding("foam_stuck", wall.letter, wall.mark_of(piece.box.x0), mark=piece.mark)
            break
    needs = offsets.foam_face + offsets.hump
    if offsets.back < needs:
        yield finding("hump_ignored", wall.letter, back=offsets.back, needs=needs)
    narrow = [piece for piece in wall.of(Kind.FOAM) if piece.wide is not None and piece.wide < figures.foam_least_piece]
    if narrow:
        marks = ", ".join(piece.mark for piece in narrow)
        yield finding("foam_sliver", wall.letter, marks=marks, least=figures.foam_least_piece)


def _plates(wall: WallLayout) -> Iterator[Finding]:
    """Plates are one straight line; their joints stand apart; blocks alongside are close enough."""
    figures = load_figures()
    plates = wall.of(Kind.BOTTOM_PLATE, Kind.TOP_PLATE)
    bend = greatest(*(p.box.y0 for p in plates)) - least(*(p.box.y0 for p in plates)) if plates else ZERO
    if bend > SLOPE:
        yield finding("plate_bent", wall.letter, bend=bend)
    told = any(remark.saying.key == "remark.top_joint" for remark in wall.remarks)
    bottom, top = (_joints(wall.of(kind)) for kind in (Kind.BOTTOM_PLATE, Kind.TOP_PLATE))
    for joint in top:
        near = [abs(joint - other) for other in bottom if abs(joint - other) < figures.plate_joint_apart]
        if near and not told:
            yield finding("joints_stacked", wall.letter, wall.mark_of(joint), apart=min(near))
    blocks = wall.of(Kind.JOIST_BLOCK)
    if wall.wall.joists == "alongside":
        tops = sorted(wall.of(Kind.TOP_PLATE), key=lambda plate: plate.box.x0)
        free = [(pipe.left_edge, pipe.right_edge) for pipe in wall.wall.pipes]
        free += [(one.box.x1, other.box.x0) for one, other in pairwise(tops)]  # no plate there that a block could hold
        for left, right in pairwise(blocks):
            apart = right.box.x0 - left.box.x0
            between = [each for each in free if overlap(left.box.x1, right.box.x0, *each)]
            if apart > figures.block_spacing + SIXTEENTH and not between:
                yield finding("blocks_apart", wall.letter, wall.mark_of(left.box.x0), apart=apart)


def _joints(plates: tuple[Part, ...]) -> list[Length]:
    return [left.box.x1 for left, right in pairwise(plates) if left.box.x1 == right.box.x0]


def _pipes(wall: WallLayout) -> Iterator[Finding]:
    """No upright stands in a pipe, but where a notch lets it through; and no notch takes too much of a stud."""
    figures = load_figures()
    most = figures.notch_most if wall.offsets.deep == figures.stud_deep else figures.notch_most_2x3
    for part in wall.of(*FULL_HEIGHT, Kind.TRIMMER):
        for pipe in wall.wall.pipes:
            apart = figures.pipe_side if pipe.run == "standing" else ZERO
            if not overlap(part.box.x0, part.box.x1, pipe.left_edge - apart, pipe.right_edge + apart):
                continue
            if not overlap(part.box.y0, part.box.y1, pipe.back, pipe.out_over(part.box.x0, part.box.x1)):
                continue
            if not (pipe.run == "lying" and _let_in(part, pipe.heights_over(part.box.x0, part.box.x1)[1])):
                what = thing_name(pipe.place)
                yield finding("pipe_in_stud", wall.letter, wall.mark_of(part.box.x0), mark=part.mark, what=what)
        for notch in part.notches:
            deep = notch.y1 - part.box.y0
            if deep > most:
                at = wall.mark_of(part.box.x0)
                yield finding("notch_deep", wall.letter, at, mark=part.mark, deep=deep, most=most)


def _let_in(part: Part, top: Length) -> bool:
    return any(notch.z0.off <= top <= notch.z1.off for notch in part.notches)


def _old_boxes(wall: WallLayout) -> Iterator[Finding]:
    """Every old box has its box at the new face."""
    old = [box for box in wall.wall.boxes if box.kind == "existing"]
    forward = sum(part.why.key == "part.box_existing" for part in wall.of(Kind.OUTLET))
    if forward < len(old):
        yield finding("old_box_buried", wall.letter, count=len(old) - forward)
