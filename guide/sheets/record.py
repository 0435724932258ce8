"""The record of what is buried in the walls, for whoever drills there later: measured in the finished room.

It owns one invariant: every number can be taken without opening the wall. Places run from the finished left corner,
heights from the slab, depths from the face of the drywall.
"""

from __future__ import annotations

from collections.abc import Iterator

from guide.layout.parts import Kind, Level, Part
from guide.lengths import ZERO, Length, greatest
from guide.reference.sayings import say, saying
from guide.sheets.view import WallView
from guide.survey.room import thing_name

BURIED = (
    *(Kind.STUD, Kind.PACK, Kind.KING, Kind.TRIMMER, Kind.CRIPPLE, Kind.HEADER, Kind.SILL),
    *(Kind.FIREBLOCK, Kind.UPPER_BLOCK, Kind.CHASE_POST, Kind.CHASE_RUNG, Kind.BACKING, Kind.OUTLET),
)
"""The kinds of part that a drill can meet between floor and ceiling."""

Row = tuple[str, str, str, str, str, str]
"""To tick, left edge, right edge, heights, depths, what it is."""


def finished_left(view: WallView) -> Length:
    """Return x of the corner that is seen at the left of the finished wall; the end of the plates where there is none."""
    end, neighbour = view.wall.left, view.plan.layout.by_letter.get(view.wall.left.neighbour or "")
    if end.what != "outside corner":
        return end.face
    return -(neighbour or view.wall).offsets.drywall  # the face of the wall round the corner, which its own x is 0 at


def record_rows(view: WallView) -> list[Row]:
    """Return one row for each thing in a wall, from the left."""
    found = [*_parts(view), *_pipes(view)]
    return [row for _, row in sorted(found, key=lambda each: each[0])]


def _parts(view: WallView) -> Iterator[tuple[int, Row]]:
    zero, wall = finished_left(view), view.wall
    for part in wall.of(*BURIED):
        left, right = (view.bare(x - zero, part.place_rests) for x in (part.box.x0, part.box.x1))
        yield (
            part.box.x0.ticks,
            ("", left, right, _heights(view, part), _depths(view, part), f"{part.mark}, {part.kind}"),
        )


def _pipes(view: WallView) -> Iterator[tuple[int, Row]]:
    zero, tape, guessed = finished_left(view), view.plan.tape, view.plan.guessed
    for pipe in view.wall.wall.pipes:
        left, right = (view.bare(x - zero, pipe.rests) for x in (pipe.left_edge, pipe.right_edge))
        high = "all the way up"
        if pipe.run != "standing":
            high = " to ".join(view.bare(each, pipe.rests) for each in pipe.heights)
        face = view.wall.offsets.drywall
        deep = " to ".join(view.bare(greatest(ZERO, face - y), pipe.rests) for y in (pipe.out, pipe.back))
        what = f"{thing_name(pipe.place)}: {pipe.carries}"
        if pipe.reach == "yes" and pipe.reach_height is not None:
            what += f", {say(saying('look.reached', height=pipe.reach_height), tape, guessed)}"
        yield pipe.left_edge.ticks, ("", left, right, high, deep, what)


def _heights(view: WallView, part: Part) -> str:
    """Print where a part begins and ends over the slab, at its middle."""
    return " to ".join(_height(view, part, level) for level in (part.box.z0, part.box.z1))


def _height(view: WallView, part: Part, level: Level) -> str:
    return view.bare(level.at(view.wall.wall, part.centre), part.place_rests)


def _depths(view: WallView, part: Part) -> str:
    """Print how far behind the face of the drywall a part begins and ends."""
    face = view.wall.offsets.drywall
    return " to ".join(view.bare(face - y, part.place_rests) for y in (part.box.y1, part.box.y0))


def plates_left_of_corner(view: WallView) -> Length:
    """Return how far the left end of the plates lies left of the finished corner; below 0 right of it."""
    return finished_left(view) - view.wall.plate_start


def foam_behind(view: WallView) -> Length:
    """Return how far behind the face of the drywall the foam begins."""
    return view.wall.offsets.drywall - view.foam_face
