"""The cross pieces of a box round pipes, which are cut alike: each is told by where it goes."""

from __future__ import annotations

from collections.abc import Callable

from guide.layout.parts import Part, WallLayout
from guide.lengths import Length


def rung_note(wall: WallLayout, part: Part, size: Callable[[Length], str]) -> str:
    """Say where in its box a cross piece goes: foot, top, on one side or across the front, and how high."""
    if part in wall.chases:
        return "treated, the foot, on the slab"
    if part.why.key == "part.chase_lid":
        return "flat under the joists, between the top plate and the head"
    across = "from a stud to a post" if part.box.y0 == wall.offsets.face else "across the front"
    return f"{across}, its bottom {size(part.box.z0.off)} over the slab"
