"""The backing list of a wall's page: one line for all blocks of one row that are cut alike."""

from __future__ import annotations

from guide.layout.parts import Kind, Part
from guide.sheets.view import WallView


def backing_rows(view: WallView) -> list[tuple[str, ...]]:
    """Return, the lowest row first: marks, cut, height of the lower edge over the slab, left edges on the plates."""
    rows: dict[tuple[int, int], list[Part]] = {}
    for part in sorted(view.wall.of(Kind.BACKING), key=lambda part: (part.box.z0.off, part.cut, part.box.x0)):
        rows.setdefault((part.box.z0.off.ticks, part.cut.ticks), []).append(part)
    return [
        (
            "",
            ", ".join(part.mark for part in parts),
            view.bare(parts[0].cut, toward="down"),
            view.bare(parts[0].box.z0.off),
            ", ".join(view.mark(part.box.x0, part.place_rests) for part in parts),
        )
        for parts in rows.values()
    ]
