"""The cross pieces of a box round pipes, which are cut alike: each is told by where it goes."""

from __future__ import annotations

from guide.layout.parts import Part, WallLayout
from guide.reference.sayings import Saying, saying


def rung_note(wall: WallLayout, part: Part) -> Saying:
    """Say where in its box a cross piece goes: foot, top, on one side or across the front, and how high."""
    if part in wall.chases:
        return saying("rung.foot")
    if part.why.key == "part.chase_lid":
        return saying("rung.lid")
    where = "side" if part.box.y0 == wall.offsets.face else "front"
    return saying(f"rung.{where}", high=part.box.z0.off)
