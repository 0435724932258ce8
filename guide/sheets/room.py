"""What the job sheet prints of the finished room: its floor and its clear lengths."""

from __future__ import annotations

from dataclasses import dataclass

from guide.layout.outline import outline
from guide.lengths import in_feet, with_area, with_unit
from guide.sheets.plan import Plan


@dataclass(frozen=True)
class RoomView:
    """A room that closes, as the job sheet prints it."""

    finished: str
    """Floor inside the drywall."""
    bare: str
    """Floor inside the concrete."""
    lengths: tuple[str, ...]
    """Each wall, from finished face to finished face; “about” where a reading is missing."""


def room_view(plan: Plan) -> RoomView | None:
    """Return the finished room, or None where the walls close none."""
    room = outline(plan.layout)
    if room is None:
        return None
    lengths = tuple(
        f"wall {letter} {'about ' if plan.guessed(length) else ''}"
        + (in_feet(length) if plan.tape == "inches" else with_unit(length, plan.tape))
        for letter, length in room.finished.items()
    )
    return RoomView(with_area(room.finished_area, plan.tape), with_area(room.bare_area, plan.tape), lengths)
