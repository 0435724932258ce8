"""The drywall of a wall seen from the room: its sheets, their joints, and what is cut out of them."""

from __future__ import annotations

from collections.abc import Iterator

from guide.drawing.elevation import ends_met, followed_height, from_where, front, opening_top, part_label
from guide.drawing.shapes import Drawing, Fill, Label, Look, Ruler, Shape, drawing, level, rectangle
from guide.layout.parts import Kind, WallLayout
from guide.lengths import ZERO


def sheets(wall: WallLayout) -> Drawing:
    """Return the sheets of a wall, from the left concrete corner, with openings, electrical boxes and boxes round pipes."""
    w = wall.wall
    parts = [front(w, part) for part in wall.sheets_on()]
    left = min([ZERO, *(fill.x0 for fill in parts)])
    right = max([w.length, *(fill.x1 for fill in parts)])
    behind = [Fill(Look.CONCRETE, left, right, level(ZERO), followed_height(w, left, right), "wall")]
    if w.is_partition:
        behind = list(ends_met(wall))
    return drawing(
        f"{w.title}, its drywall seen from the room",
        [*behind, *parts, *_cut(wall), *_words(wall), Ruler(ZERO, w.length)],
        across=from_where(w),
        up="above the slab",
        ceiling=w.height,
    )


def _cut(wall: WallLayout) -> Iterator[Shape]:
    for opening in wall.wall.openings:
        yield rectangle(
            Look.OPENING,
            opening.left,
            opening.right,
            opening.sill or ZERO,
            opening_top(wall.wall, opening),
            opening.place,
        )
    for kind in (Kind.CHASE_RUNG, Kind.CHASE_POST, Kind.OUTLET):
        yield from (front(wall.wall, part) for part in wall.of(kind))


def _words(wall: WallLayout) -> Iterator[Shape]:
    for part in wall.sheets_on():
        low, high = (edge.at(wall.wall, part.centre) for edge in (part.box.z0, part.box.z1))
        yield Label(part.centre, low + (high - low) // 2, (part_label(part),))
