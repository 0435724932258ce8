"""The rim list of a wall's page: one line for all pieces of foam over the concrete that are cut alike."""

from __future__ import annotations

from guide.layout.parts import Kind, Part
from guide.lengths import ZERO
from guide.reference.sayings import say, saying
from guide.sheets.stops import marks_of
from guide.sheets.view import WallView


def rim_rows(view: WallView) -> list[tuple[str, ...]]:
    """Return, from the left: marks, how long and how high to cut, left edges from the left concrete corner, what to measure."""
    rows: dict[tuple[int, int, str], list[Part]] = {}
    for part in view.wall.of(Kind.RIM):
        rows.setdefault((part.along.ticks, part.cut.ticks, part.why.key), []).append(part)
    return [
        (
            "",
            marks_of(view, parts),
            view.bare(parts[0].along, toward="down"),
            view.bare(parts[0].across or ZERO, toward="down"),
            ", ".join(dict.fromkeys(view.bare(part.box.x0, part.place_rests) for part in parts)),  # locked is said once
            say(saying("rim.end"), view.plan.tape, view.plan.guessed) if parts[0].why.key == "part.rim_end" else "",
        )
        for parts in rows.values()
    ]
