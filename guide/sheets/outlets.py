"""The outlets of a wall's page: those proposed, where their boxes hang, and what to say to have them drawn."""

from __future__ import annotations

from guide.layout.parts import Kind
from guide.layout.receptacles import counts, wall_spaces
from guide.sheets.view import WallView


def outlet_rows(view: WallView) -> list[tuple[str, ...]]:
    """Return one row for each outlet proposed on the wall: left and right edge on the plates, its stud, its centre.

    The last is from the left concrete corner, as the question about a box asks for it.
    """
    wall = view.wall
    rows: list[tuple[str, ...]] = []
    for part in view.plan.outlets:
        if part.wall != wall.letter:
            continue
        beside = view.stud_beside(part)
        assert beside is not None, "a box hangs beside an upright"
        side = "right" if beside.box.x0 < part.box.x0 else "left"
        rows.append(
            (
                "",
                view.mark(part.box.x0, part.place_rests),
                view.mark(part.box.x1, part.place_rests),
                f"{side} of {beside.mark}",
                view.bare(part.centre, part.place_rests),
            )
        )
    return rows


def outlets_given(view: WallView) -> str:
    """Return the marks of the boxes of the wall that count as outlets, from the left; empty where there are none."""
    return ", ".join(part.mark for part in view.wall.of(Kind.OUTLET) if counts(part, view.plan.code))


def needs_outlets(view: WallView) -> bool:
    """Say whether any of the wall belongs to a wall space that needs outlets."""
    spaces = wall_spaces(view.plan.layout, view.plan.code)
    return any(stretch.wall == view.wall.letter for space in spaces for stretch in space.stretches)
