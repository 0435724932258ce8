"""The marks on a wall's plates as its page prints them: where each is, from both ends, with its sign and what it is for."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from guide.layout.parts import Datum, Kind
from guide.lengths import ZERO, Length, with_unit
from guide.sheets.view import WallView
from guide.survey.room import thing_name


@dataclass(frozen=True, slots=True)
class Mark:
    """One mark on the plates."""

    at: str
    """Its left edge, running from the left end of the plates."""
    to: str
    """Its right edge; empty for a single line."""
    from_right: str
    """The left edge once more, running from the right end."""
    sign: str
    what: str
    plate: str
    """On which plate it is drawn: `both`, `bottom` or `top`."""


def marks_of(view: WallView) -> tuple[Mark, ...]:
    """Return every mark on the plates, from the left; a place that nobody measured reads `locked`."""
    point = ", their long point" if view.wall.right.slant.ticks else ""
    end = _row(view, view.wall.plate_end, 5, "end", f"right end of the plates{point}")
    framing = *_slant_marks(view), *_framing_marks(view)
    found = [*framing, *_joint_marks(view), *_gap_marks(view), *_box_marks(view), end]
    return tuple(mark for _, _, mark in sorted(found, key=lambda each: (each[0], each[1])))


def mark_rows(view: WallView) -> list[tuple[str, ...]]:
    """Return a row of the table of marks for each: to be ticked, left edge, right edge, from the right, sign, plate, what."""
    return [("", each.at, each.to, each.from_right, each.sign, each.plate, each.what) for each in marks_of(view)]


def _row(
    view: WallView,
    x: Length,
    order: int,
    sign: str,
    what: str,
    rests: Iterable[str] = (),
    to: Length | None = None,
    plate: str = "both",
) -> tuple[int, int, Mark]:
    rests = tuple(rests)
    right = view.bare(view.wall.plate_end - x, {*x.rests, *rests})
    end = view.mark(to, rests) if to is not None else ""
    return x.ticks, order, Mark(view.mark(x, rests), end, right, sign, what, plate)


def _slant_marks(view: WallView) -> Iterable[tuple[int, int, Mark]]:
    """Yield the saw cuts at slanted ends, from the one edge of the plate to the other."""
    left, right = view.wall.left.slant, view.wall.right.slant
    for slant, x0, side in ((left, view.wall.plate_start, 0), (right, view.wall.plate_end - abs(right), 1)):
        if slant.ticks:
            edges = ("concrete", "room") if (slant > ZERO) is (side == 0) else ("room", "concrete")
            what = f"saw cut, slanting from the {edges[0]} edge to the {edges[1]} edge"
            yield _row(view, x0, 0, "/", what, slant.rests, x0 + abs(slant))


def _framing_marks(view: WallView) -> Iterable[tuple[int, int, Mark]]:
    edges = {edge.ticks for edge in view.wall.sheet_edges}
    signs = {Kind.STUD: "X", Kind.PACK: "P", Kind.KING: "K", Kind.TRIMMER: "T", Kind.CRIPPLE: "C"}
    for part in view.wall.of(*signs):
        what, plate = part.mark, "bottom" if part.kind is Kind.TRIMMER else "both"
        if part.kind is Kind.CRIPPLE:
            above = part.box.z1.datum is part.box.z0.datum is Datum.JOISTS
            what += ", over the header" if above else ", under the sill"
            plate = "top" if above else "bottom"
        if part.kind is Kind.PACK:
            what += f", flat, its {with_unit(view.stud_deep, view.plan.tape)} face to the room"
        if part.why.key == "part.partition_stud":
            what += ", under a face of the partition"
        if part.centre.ticks in edges:
            what += ", drywall joint on its centre"
        yield _row(view, part.box.x0, 0, signs[part.kind], what, part.place_rests, part.box.x1, plate)
    for block in view.wall.of(Kind.FIREBLOCK):
        stud = view.stud_beside(block)
        side = "right" if stud is not None and stud.box.x0 < block.box.x0 else "left"
        what = f"{block.mark}, fireblock on the {side} of {stud.mark if stud else 'the stud'}"
        yield _row(view, block.box.x0, 1, "F", what, block.place_rests, block.box.x1)


def _joint_marks(view: WallView) -> Iterable[tuple[int, int, Mark]]:
    for kind, name in ((Kind.BOTTOM_PLATE, "bottom"), (Kind.TOP_PLATE, "top")):
        pieces = view.wall.of(kind)
        for left, right in pairwise(pieces):
            if left.box.x1 == right.box.x0:
                what = f"joint of the {name} plate, {left.mark} to {right.mark}"
                yield _row(view, right.box.x0, 2, "=", what, plate=name)
            else:
                yield _row(view, left.box.x1, 2, "end", f"{left.mark} ends: no {name} plate from here", plate=name)
                yield _row(view, right.box.x0, 2, "start", f"{right.mark} starts", plate=name)


def _gap_marks(view: WallView) -> Iterable[tuple[int, int, Mark]]:
    for pipe in view.wall.wall.pipes:
        if pipe.run == "standing":
            what = f"{thing_name(pipe.place)}: {pipe.carries}"
            yield _row(view, pipe.left_edge, 3, "pipe", what, pipe.wide.rests, pipe.right_edge)


def _box_marks(view: WallView) -> Iterable[tuple[int, int, Mark]]:
    for part in view.wall.of(Kind.OUTLET):
        centre = part.box.z0.off + (part.box.z1.off - part.box.z0.off) // 2
        old = ", the old one brought forward" if part.why.key == "part.box_existing" else ""
        what = f"{part.mark}, electrical box{old}, its centre {view.size(centre)} over the slab"
        yield _row(view, part.box.x0, 4, "O", what, part.place_rests, part.box.x1)
