"""A new door that cannot be framed where it was wished: where along the wall it could be, and how far that is from there."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from guide.layout.openings import Hole, Stretch, frame_hole
from guide.layout.parts import Part, Remark, overlap
from guide.layout.site import Site
from guide.lengths import ZERO, Length
from guide.reference.sayings import saying


def unframed(site: Site, hole: Hole, taken: Sequence[Part], barred: Sequence[Stretch]) -> Remark:
    """Say that a hole could not be framed, and of a new door the nearest place where it could; windows do not move."""
    shift = _shift(site, hole, taken, barred) if hole.opening.kind == "new door" else None
    instead = saying("elsewhere.nowhere")
    if shift is not None:
        side = "right" if shift > ZERO else "left"
        instead = saying("elsewhere.moved", left=hole.opening.left + shift, by=abs(shift), side=side)
    return Remark(saying("remark.opening_unframed", what=hole.name, instead=instead), hole.x0)


def _shift(site: Site, hole: Hole, taken: Sequence[Part], barred: Sequence[Stretch]) -> Length | None:
    """Return the least move after which king and trimmer stand on both sides, below 0 to the left; None without one.

    The least move brings an outer face of the framing to the face of what stood in its way, or to an end of the plates.
    """
    wood = site.figures.stud_thick * (1 if hole.plate_is_header else 2)
    stands = [*barred, *((part.box.x0, part.box.x1) for part in taken)]
    moves = [x1 - (hole.x0 - wood) for _, x1 in stands] + [x0 - (hole.x1 + wood) for x0, _ in stands]
    moves += [site.start - (hole.x0 - wood), site.end - (hole.x1 + wood)]
    for move in sorted(moves, key=lambda each: (abs(each), each < ZERO)):
        there = replace(hole, x0=hole.x0 + move, x1=hole.x1 + move)
        leaf = (hole.opening.left + move, hole.opening.right + move)
        uprights, _, remarks = frame_hole(site, there, taken, barred)
        if (
            uprights
            and not remarks
            and not any(overlap(*leaf, pipe.left_edge, pipe.right_edge) for pipe in site.wall.pipes)
        ):
            return move
    return None
