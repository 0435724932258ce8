"""The lining table of a wall's page: buck and return of every window, extension of every jamb, piece by piece."""

from __future__ import annotations

from guide.layout.parts import Kind, Part
from guide.lengths import ZERO
from guide.reference.sayings import say, saying
from guide.sheets.view import WallView
from guide.survey.room import thing_name

NOTED = {"part.buck_packed": "lining.packed", "part.return_tapered": "lining.tapered"}
"""What is noted of a piece, by what its reason says."""


def lining_rows(view: WallView) -> list[tuple[str, ...]]:
    """Return a row for each piece, opening by opening from the left: mark, what it is, wood, cut, width, what else to mind."""
    rows = []
    for opening in view.wall.wall.openings:
        what = ("what", thing_name(opening.place))
        rows += [
            _row(view, part) for part in view.wall.of(Kind.BUCK, Kind.RETURN, Kind.EXTENSION) if what in part.why.values
        ]
    return rows


def _row(view: WallView, part: Part) -> tuple[str, ...]:
    values = dict(part.why.values)
    note = NOTED.get(part.why.key)
    return (
        "",
        part.mark,
        f"{values['what']}, {values['side']} of the {part.kind.value.removeprefix('window ')}",
        part.material.value,
        view.bare(part.cut, toward="down"),
        view.bare(part.wide or ZERO, toward="down"),
        say(saying(note, **values), view.plan.tape, view.plan.guessed) if note else "",
    )
