"""The drywall list of a wall's page: every piece, where it hangs, and what is cut out of it."""

from __future__ import annotations

from collections.abc import Iterator

from guide.layout.corners import half_degrees
from guide.layout.ends import End
from guide.layout.parts import Box, Kind, Part, overlap
from guide.lengths import ZERO, Length
from guide.reference.sayings import Saying, say, saying
from guide.sheets.view import WallView
from guide.survey.room import thing_name
from guide.survey.traverse import degrees_of


def drywall_rows(view: WallView, *, far: bool = False) -> list[tuple[str, ...]]:
    """Return one row for each piece, the top row first: mark, left and right edge on the plates, wide, tall.

    What hangs on the `far` side of a partition is told as it is seen from there, from the plates' other end.
    """
    ordered = sorted(view.wall.sheets_on(far=far), key=lambda part: (-part.box.z1.off.ticks, _edges(view, part)[0]))
    return [
        (
            "",
            f"{part.mark}, box" if part.why.key == "part.drywall_box" else part.mark,
            _past(view, _edges(view, part)[0], part),
            view.bare(_edges(view, part)[1], part.place_rests),
            view.bare(part.wide or ZERO, toward="down"),
            view.bare(part.cut, toward="down"),
        )
        for part in ordered
    ]


def _edges(view: WallView, part: Part) -> tuple[Length, Length]:
    """Return where a piece begins and ends on the plates, from the end at the left of whoever hangs it."""
    wall, box = view.wall, part.box
    if box.y1 <= wall.offsets.back:
        return wall.plate_end - box.x1, wall.plate_end - box.x0
    return wall.mark_of(box.x0), wall.mark_of(box.x1)


def _past(view: WallView, at: Length, part: Part) -> str:
    """Print where a sheet starts; round an outside corner that is past the plates, and reads so, not as below zero."""
    return f"{view.bare(-at, part.place_rests)} past" if at < ZERO else view.bare(at, part.place_rests)


def outside_lines(view: WallView) -> list[str]:
    """Return one line for each outside corner: whose sheets hang first there, and how far the others run past."""
    ends = (("left", view.wall.left), ("right", view.wall.right))
    said = [_round_it(side, end) for side, end in ends if end.what == "outside corner"]
    return [say(each, view.plan.tape, view.plan.guessed) for each in said]


def _round_it(side: str, end: End) -> Saying:
    other = saying("hung.wall", letter=end.neighbour) if end.neighbour else saying("hung.other")
    if end.mitred:
        degrees = half_degrees(180 - abs(degrees_of(end.turn)))
        return saying("hung.mitred", side=side, other=other, degrees=degrees)
    if end.through:
        return saying("hung.through", side=side, other=other)
    return saying("hung.butt" if end.neighbour else "hung.alone", side=side, other=other, past=-end.first_sheet)


def cut_outs(view: WallView, *, far: bool = False) -> list[str]:
    """Return one line for each hole to cut in a sheet, the sheets as in the list."""
    return [line for part in view.wall.sheets_on(far=far) for line in _cut_outs(view, part)]


def _cut_outs(view: WallView, part: Part) -> Iterator[str]:
    box, wall = part.box, view.wall.wall
    rests = part.place_rests
    for hole in part.notches:
        x = (hole.x0 + hole.x1) // 2
        low, high = (z.at(wall, x) - box.z0.at(wall, x) for z in (hole.z0, hole.z1))
        near, to = hole.x0 - box.x0, hole.x1 - box.x0
        if box.y1 <= view.wall.offsets.back:  # seen from the far side
            near, to = box.x1 - hole.x1, box.x1 - hole.x0
        sides = f"{view.bare(near, rests)} to {view.bare(to, rests)} from its left edge"
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
