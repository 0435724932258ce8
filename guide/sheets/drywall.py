"""The drywall list of a wall's page: every piece, where it hangs, and what is cut out of it."""

from __future__ import annotations

from collections.abc import Iterator

from guide.layout.parts import Box, Kind, Part, overlap
from guide.lengths import ZERO, Length
from guide.sheets.view import WallView
from guide.survey.room import thing_name


def drywall_rows(view: WallView) -> list[tuple[str, ...]]:
    """Return one row for each piece, the top row first: mark, left and right edge on the plates, wide, tall."""
    wall = view.wall
    ordered = sorted(wall.of(Kind.DRYWALL), key=lambda part: (-part.box.z1.off.ticks, part.box.x0))
    return [
        (
            "",
            part.mark,
            _left_edge(view, part),
            view.mark(part.box.x1, part.place_rests),
            view.bare(part.wide or ZERO, toward="down"),
            view.bare(part.cut, toward="down"),
        )
        for part in ordered
    ]


def _left_edge(view: WallView, part: Part) -> str:
    """Print where a sheet starts; round an outside corner that is past the plates, and reads so, not as below zero."""
    at = view.wall.mark_of(part.box.x0)
    return f"{view.bare(-at, part.place_rests)} past" if at < ZERO else view.bare(at, part.place_rests)


def cut_outs(view: WallView) -> list[str]:
    """Return one line for each hole to cut in a sheet, the sheets as in the list."""
    return [line for part in view.wall.of(Kind.DRYWALL) for line in _cut_outs(view, part)]


def _cut_outs(view: WallView, part: Part) -> Iterator[str]:
    box, wall = part.box, view.wall.wall
    rests = part.place_rests
    for hole in part.notches:
        x = (hole.x0 + hole.x1) // 2
        low, high = (z.at(wall, x) - box.z0.at(wall, x) for z in (hole.z0, hole.z1))
        sides = f"{view.bare(hole.x0 - box.x0, rests)} to {view.bare(hole.x1 - box.x0, rests)} from its left edge"
        yield f"{part.mark}, {_named(view, hole)}: {sides}, {view.bare(low, rests)} to {view.bare(high, rests)} up from its lower edge"


def _named(view: WallView, hole: Box) -> str:
    """Return what a hole is cut for: an electrical box, or an opening."""
    box = next((part for part in view.wall.of(Kind.OUTLET) if part.box == hole), None)
    if box is not None:
        return f"box {box.mark}"

    def shared(left: Length, right: Length) -> bool:
        return overlap(left, right, hole.x0, hole.x1)

    return next(
        (thing_name(each.place) for each in view.wall.wall.openings if shared(each.left, each.right)), "opening"
    )
