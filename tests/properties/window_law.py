"""What must hold of what lines a hole: buck and return close a window's tunnel, and a jamb that stays reaches the face."""

from __future__ import annotations

from collections.abc import Iterator

from guide.layout.parts import Kind, Part, WallLayout
from guide.lengths import SIXTEENTH, ZERO, Length, inches
from guide.survey.model import Basement
from guide.survey.things import Opening
from tests.properties.seen import FIGURES, TICK, holes

BUCK, GAP = inches("1 1/2"), inches("1/2")
"""How thick the treated wood is, and what is foamed between it and the concrete; common practice."""


def open_tunnels(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield each framed window whose concrete is not lined from its frame to the framing, and to the face of the wall."""
    said = sum(remark.saying.key == "remark.lining_by_hand" for remark in wall.remarks)
    for opening, x0, x1 in holes(wall.wall, basement):
        if opening.kind != "window" or not _framed(wall, x0, x1):
            continue
        buck = [p for p in wall.of(Kind.BUCK) if x0 - BUCK <= p.box.x0 and p.box.x1 <= x1 + BUCK]
        lining = [p for p in wall.of(Kind.RETURN) if x0 <= p.box.x0 and p.box.x1 <= x1]
        if not buck and not lining:
            said -= 1
            if said < 0:
                yield f"{opening.place} is lined by nothing"
            continue
        board = inches(basement.drywall)
        wide, tall = opening.width or ZERO, opening.tall or ZERO
        yield from _ring(opening, buck, BUCK, (wide - GAP * 2, tall - GAP * 2))
        yield from _ring(opening, lining, board, (wide - (GAP + BUCK) * 2, tall - (GAP + BUCK) * 2))
        yield from _reaches(wall, opening, [*buck, *lining])


def _framed(wall: WallLayout, x0: Length, x1: Length) -> bool:
    uprights = wall.of(Kind.TRIMMER, Kind.KING)
    return any(p.box.x1 == x0 for p in uprights) and any(p.box.x0 == x1 for p in uprights)


def _ring(opening: Opening, parts: list[Part], thick: Length, outside: tuple[Length, Length]) -> Iterator[str]:
    """Yield what of four boards does not close a rectangle so wide and so tall outside: two lie, two stand between them."""
    if not parts:
        yield f"{opening.place} has no boards of one kind"
        return
    wide, tall = outside
    left, right = min(p.box.x0 for p in parts), max(p.box.x1 for p in parts)
    foot, head = min(p.box.z0.off for p in parts), max(p.box.z1.off for p in parts)
    if abs(right - left - wide) > TICK or abs(head - foot - tall) > TICK or left - opening.left < GAP - TICK:
        yield f"{opening.place}: its lining does not fit the hole in the concrete"
    sides = {
        "lying": [p for p in parts if p.box.x0 == left and p.box.x1 == right and p.box.z1.off - p.box.z0.off == thick],
        "standing": [p for p in parts if p.box.x1 - p.box.x0 == thick and p.box.x0 in (left, right - thick)],
    }
    for name, size in (("lying", wide), ("standing", tall - thick * 2)):
        places = {(p.box.x0, p.box.z0.off) for p in sides[name]}
        if len(places) != 2 or any(not ZERO <= size - p.cut < SIXTEENTH for p in sides[name]):
            yield f"{opening.place}: its {name} boards do not close it"
    if len(sides["lying"]) + len(sides["standing"]) != len(parts):
        yield f"{opening.place} has boards that are in none of its four sides"


def _reaches(wall: WallLayout, opening: Opening, parts: list[Part]) -> Iterator[str]:
    """Yield each board that does not reach from the window's frame to the studs, or to the face of the drywall."""
    depths = [opening.depth or ZERO]
    if opening.tapers == "differ":
        others = (opening.depth_upper_right, opening.depth_lower_left, opening.depth_lower_right)
        depths += [each or ZERO for each in others]
    least, most = min(depths), max(depths)
    bulge = [ZERO]
    if len(wall.wall.string.points) > 1:
        bulge = [FIGURES.string_block - wall.wall.string.at(x) for x in (opening.left, opening.right)]
    for part in parts:
        front = wall.offsets.drywall if part.kind is Kind.RETURN else wall.offsets.back
        mates = [p.box for p in parts if p.kind is part.kind and (p.box.x0, p.box.z0) == (part.box.x0, part.box.z0)]
        back = min(box.y0 for box in mates)
        if max(box.y1 for box in mates) != front:
            yield f"{part.id} does not end at its plane"
        if not min(bulge) - most - TICK <= back <= max(bulge) - least + SIXTEENTH * len(mates) + TICK:
            yield f"{part.id} does not reach the frame of {opening.place}"


def short_jambs(wall: WallLayout, basement: Basement) -> Iterator[str]:
    """Yield each jamb of a door that leads outside, which stays where it is, that no extension brings out to the face.

    Less than a sixteenth is nothing, more than a 1x6 is wide (5 1/2, PS 20) is built up on the spot; so it is where a pipe
    crosses the door, its head finds no room, the wall round the corner stands before it, or
    it stands as deep as the foam under joists that are not level.
    """
    pieces = wall.of(Kind.EXTENSION)
    high = {remark.x for remark in wall.remarks if remark.saying.key == "remark.head_too_high"}
    for door, x0, _ in holes(wall.wall, basement):
        if door.jamb is None or door.outside != "yes" or x0 in high:
            continue
        gap = wall.offsets.drywall - door.jamb
        mine = [p for p in pieces if door.left <= p.box.x0 and p.box.x1 <= door.right]
        piped = any(door.left < pipe.right_edge and pipe.left_edge < door.right for pipe in wall.wall.pipes)
        cornered = door.left < wall.left.face or door.right > wall.wall.length - wall.right.face
        heights = wall.wall.height.at(door.left), wall.wall.height.at(door.right)
        deep = abs(heights[0] - heights[1]) > FIGURES.frame_play and door.jamb < wall.offsets.foam_face
        if gap <= SIXTEENTH or gap >= inches("5 9/16") or piped or cornered or deep:
            if mine:
                yield f"{door.place} has an extension that it cannot take"
            continue
        if len(mine) != 3 or {(p.box.x0, p.box.x1) for p in mine} < {(door.left, door.right)}:
            yield f"{door.place} has no head and two legs"
        for part in mine:
            if part.box.y1 != wall.offsets.drywall or not ZERO <= part.box.y0 - door.jamb < SIXTEENTH:
                yield f"{part.id} does not reach from the jamb to the face"
