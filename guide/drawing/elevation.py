"""A wall seen from the room, and what the other drawings share with it: looks of parts, and what is above a wall.

Every part that shows from the room is here under its own id, behind before in front; pipes, openings and joists come
from the survey. x runs from the left concrete corner, z from the slab.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from guide.drawing.shapes import Chain, Drawing, Edge, Fill, Label, Look, Mark, Ruler, Shape, drawing, level, rectangle
from guide.layout.overhead import joists_over
from guide.layout.parts import FULL_HEIGHT, Kind, Level, Part, WallLayout
from guide.lengths import ZERO, Length, inches
from guide.reference.figures import load_figures
from guide.survey.model import Wall
from guide.survey.profile import Profile
from guide.survey.room import thing_name
from guide.survey.things import Opening, Pipe

CONCRETE_SHOWN = inches("4")
"""How thick the walls round the corners are drawn, cut through. Nobody measured it."""
JOIST_SHOWN = inches("9 1/4")
"""How deep a joist is drawn, however deep it is: a wall ends at its underside."""

LOOKS = {
    Kind.BOTTOM_PLATE: Look.PLATE, Kind.TOP_PLATE: Look.PLATE, Kind.STUD: Look.STUD, Kind.PACK: Look.PACK,
    Kind.KING: Look.STUD, Kind.TRIMMER: Look.STUD, Kind.HEADER: Look.SPAN, Kind.SILL: Look.SPAN,
    Kind.CRIPPLE: Look.STUD, Kind.FOAM: Look.FOAM, Kind.CAP: Look.CAP, Kind.CAP_LAP: Look.CAP,
    Kind.LEDGE: Look.CAP, Kind.LEDGE_LAP: Look.CAP, Kind.UPPER_BLOCK: Look.FIREBLOCK,
    Kind.FIREBLOCK: Look.FIREBLOCK, Kind.JOIST_BLOCK: Look.JOIST_BLOCK, Kind.RIM: Look.FOAM, Kind.CHASE_POST: Look.CHASE,
    Kind.CHASE_RUNG: Look.CHASE, Kind.BACKING: Look.BACKING, Kind.BUCK: Look.BUCK, Kind.OUTLET: Look.OUTLET, Kind.DRYWALL: Look.SHEET,
    Kind.RETURN: Look.DRYWALL, Kind.EXTENSION: Look.LEAF,
}  # fmt: skip

_IN_FRONT = (
    Kind.CAP,
    Kind.LEDGE,
    Kind.FIREBLOCK,
    Kind.UPPER_BLOCK,
    Kind.BACKING,
    Kind.PACK,
    Kind.CRIPPLE,
    Kind.TRIMMER,
    Kind.KING,
    Kind.STUD,
    Kind.SILL,
    Kind.HEADER,
    Kind.BOTTOM_PLATE,
    Kind.TOP_PLATE,
    Kind.OUTLET,
)
"""Wood from the concrete into the room. Laps behind the joints of a cap are hidden by it and are left out."""

_MARKED = {Kind.STUD: "stud", Kind.KING: "stud", Kind.FIREBLOCK: "block"}
"""What is named under the wall, and in which row; of what has no room beside the others, the first here stay."""


def elevation(wall: WallLayout, proposed: Sequence[Part] = ()) -> Drawing:
    """Return a wall as seen from the room: concrete corner to corner, slab to joists.

    `proposed` are outlets of any wall that would do and are not built; those of this wall are drawn as such.
    """
    wished = [
        Fill(Look.PROPOSED, part.box.x0, part.box.x1, level(part.box.z0.off), level(part.box.z1.off))
        for part in proposed
        if part.wall == wall.letter
    ]
    shapes = [*_behind(wall), *_wood(wall), *_in_front(wall), *wished, *_words(wall), *_chains(wall)]
    return drawing(
        f"{wall.wall.title}, seen from the room",
        shapes,
        across=from_where(wall.wall),
        up="above the slab; H is the underside of the joists",
        ceiling=wall.wall.height,
    )


def from_where(wall: Wall) -> str:
    """Say where the places along a wall are counted from."""
    return "from its left end, where it is measured from" if wall.is_partition else "from the left concrete corner"


def part_label(part: Part) -> str:
    """Return a part's mark without the wall's letter, which the title says: `7`, `K1`."""
    return part.mark.removeprefix(part.wall)


def followed(wall: Wall, height: Level, x0: Length, x1: Length) -> Profile:
    """Return a height as a line over the slab from x0 to x1."""
    profile = wall.height if height.datum == "joists" else wall.concrete
    return Profile(tuple((x, height.at(wall, x)) for x in (x0, *profile.breaks(x0, x1), x1)))


def front(wall: Wall, part: Part) -> Fill:
    """Return a part as it shows from the room."""
    box = part.box
    bottom, top = (followed(wall, z, box.x0, box.x1) for z in (box.z0, box.z1))
    return Fill(LOOKS[part.kind], box.x0, box.x1, bottom, top, part.id, part.mark)


def opening_top(wall: Wall, opening: Opening) -> Length:
    """Return how high the hole, the leaf or the frame reaches over the slab; a place kept free and what hangs reach the joists."""
    if opening.kind == "kept free" or opening.hangs:
        return wall.height.at((opening.left + opening.right) // 2)
    return opening.frame_height or opening.leaf_height or (opening.sill or ZERO) + (opening.tall or ZERO)


def opening_bottom(wall: Wall, opening: Opening) -> Length:
    """Return where it begins over the slab."""
    return opening_top(wall, opening) - (opening.over_drop or ZERO) if opening.hangs else opening.sill or ZERO


def _behind(wall: WallLayout) -> Iterator[Shape]:
    """Concrete, what is above the wall, foam, and the holes in them."""
    w = wall.wall
    if not w.is_partition:
        yield Fill(Look.CONCRETE, ZERO, w.length, level(ZERO), w.concrete, "concrete")
    yield from ends_met(wall)
    joists = w.height, Profile(tuple((x, z + JOIST_SHOWN) for x, z in w.height.points))
    if w.joists == "alongside":
        yield Fill(Look.JOIST_SIDE, ZERO, w.length, *joists)
        yield from (front(w, part) for part in wall.of(Kind.JOIST_BLOCK))
    else:
        yield from (Fill(Look.JOIST_END, x0, min(x1, w.length), *joists) for x0, x1 in joists_over(w, load_figures()))
    yield from (front(w, part) for part in wall.of(Kind.FOAM))
    for opening in w.openings:
        bottom, top = opening_bottom(w, opening), opening_top(w, opening)
        yield rectangle(Look.OPENING, opening.left, opening.right, bottom, top, opening.place)
        if opening.kind in ("new door", "framed door"):
            yield rectangle(Look.LEAF, opening.left, opening.right, ZERO, top, opening.place)


def ends_met(wall: WallLayout) -> Iterator[Fill]:
    """Return what stands at the ends of a wall: the concrete round an inside corner, or a framed wall."""
    w, side = wall.wall, CONCRETE_SHOWN
    for what, edge, x0, x1 in (
        (wall.left.what, wall.left.clear, -side, ZERO),
        (wall.right.what, w.length - wall.right.clear, w.length, w.length + side),
    ):
        if what == "inside corner":
            yield Fill(Look.CONCRETE, x0, x1, level(ZERO), level(w.concrete.at(edge)), "concrete")
        elif (
            what == "framed wall"
        ):  # it stands in front of the concrete, and beside it, where it goes on past the corner
            yield rectangle(Look.FRAMED_WALL, min(edge, x0), max(edge, x1), ZERO, w.height.at(edge))


def _wood(wall: WallLayout) -> Iterator[Shape]:
    """Pipes that pass behind the room face of the studs, and the wood, from the back to the front."""
    yield from (pipe_front(wall.wall, pipe) for pipe in wall.wall.pipes if pipe.out <= wall.offsets.face)
    for kind in _IN_FRONT:
        yield from (front(wall.wall, part) for part in wall.of(kind))


def _in_front(wall: WallLayout) -> Iterator[Shape]:
    """Pipes that come out past the studs, and the boxes built round them."""
    yield from (pipe_front(wall.wall, pipe) for pipe in wall.wall.pipes if pipe.out > wall.offsets.face)
    yield from (front(wall.wall, part) for part in wall.of(Kind.CHASE_RUNG, Kind.CHASE_POST))


def pipe_front(wall: Wall, pipe: Pipe) -> Fill:
    """Return a pipe as it shows from the room; a standing one from the slab to the joists."""
    x0, x1 = pipe.left_edge, pipe.right_edge
    if pipe.run == "standing":
        return Fill(Look.PIPE, x0, x1, level(ZERO), followed_height(wall, x0, x1), pipe.place)
    left, right = pipe.low_left or ZERO, pipe.low_right or ZERO
    bottom = Profile(((x0, left), (x1, right)))
    return Fill(Look.PIPE, x0, x1, bottom, Profile(((x0, left + pipe.wide), (x1, right + pipe.wide))), pipe.place)


def followed_height(wall: Wall, x0: Length, x1: Length) -> Profile:
    """Return the underside of the joists from x0 to x1."""
    return Profile(tuple((x, wall.height.at(x)) for x in (x0, *wall.height.breaks(x0, x1), x1)))


def _words(wall: WallLayout) -> Iterator[Shape]:
    w = wall.wall
    for opening in w.openings:
        middle = (opening.left + opening.right) // 2
        bottom, top = opening_bottom(w, opening), opening_top(w, opening)
        name = thing_name(opening.place)
        short = name.replace("opening ", "op. ")
        yield Label(middle, bottom + (top - bottom) * 2 // 3, (name, short))
        yield Label(middle, bottom + (top - bottom) // 3, (opening.kind, opening.kind.rpartition(" ")[2]))
        if opening.hinge:
            yield Label(middle, bottom + (top - bottom) // 6, (f"hinges {opening.hinge}", "hinges"))
    for x, height in w.height.points:
        yield Mark("H", x, size=height, above=True)
    for kind, row in _MARKED.items():
        for part in wall.of(kind):
            label = part_label(part)
            yield Mark(row, part.centre, (label, label.rstrip("0123456789") or label), name=part.id)
    for pipe in w.pipes:
        yield Mark(
            "pipe", (pipe.left_edge + pipe.right_edge) // 2, (f"{thing_name(pipe.place)}: {pipe.carries}", pipe.carries)
        )
    yield Ruler(ZERO, w.length)


def _chains(wall: WallLayout) -> Iterator[Shape]:
    """Yield the dimensions: uprights as they are marked on the plates, openings, plates and concrete, heights at the ends."""
    w = wall.wall
    uprights = [part.box.x0.with_rests(part.place_rests) for part in wall.of(*FULL_HEIGHT)]
    edges = _rising(wall.plate_start, *uprights, wall.plate_end)
    yield Chain("below", edges, "left edges of the uprights, and the right end, from the left end of the plates", True)
    between = "from end to end of what is measured" if w.is_partition else "between the concrete corners"
    if w.openings:
        holes = [edge for opening in w.openings for edge in (opening.left, opening.right)]
        yield Chain("below", _rising(ZERO, *holes, w.length), f"openings {between}")
    yield Chain("below", _rising(ZERO, wall.plate_start, wall.plate_end, w.length), f"plates {between}")
    yield Chain("below", (ZERO, w.length), "all that is measured" if w.is_partition else "concrete, corner to corner")
    sides: tuple[tuple[Edge, Length], ...] = (("left", ZERO), ("right", w.length))
    for edge, x in sides:
        if not w.is_partition:
            yield Chain(edge, (ZERO, w.concrete.at(x)), "C")
        yield Chain(edge, (ZERO, w.height.at(x)), "H")
    heights = {(opening_bottom(w, o), opening_top(w, o)): o for o in reversed(w.openings)}  # of several alike the first
    for (sill, top), opening in sorted(heights.items()):
        near: Edge = "left" if opening.left + opening.right < w.length else "right"
        yield Chain(near, _rising(ZERO, sill, top), thing_name(opening.place))


def _rising(*places: Length) -> tuple[Length, ...]:
    """Return places in order, those that are the same place once, resting on all that say so."""
    found: dict[int, Length] = {}
    for place in places:
        found[place.ticks] = place.with_rests(found[place.ticks].rests) if place.ticks in found else place
    return tuple(found[ticks] for ticks in sorted(found))
