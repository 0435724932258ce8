"""A corner from above, enlarged and cut through at half height: who runs through, whose foam fills it, what backs the drywall.

The wall that ends in the corner lies across the top, the one that begins there goes down on its right, or round an
outside corner up. A corner whose other wall is not laid out shows the one that is, and the concrete of the other.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from guide.drawing.elevation import CONCRETE_SHOWN, opening_top
from guide.drawing.floor_plan import SIDES, Placed, Span, past_corner, without
from guide.drawing.shapes import Chain, Cut, Drawing, Edge, Label, Line, Look, Shape, drawing, polygon
from guide.layout.ends import End
from guide.layout.parts import Kind, WallLayout
from guide.lengths import ZERO, Length, greatest, inches

REACH = inches("18")
"""How much of each wall is drawn past the drywall of the other."""
ROOM = inches("8")
"""How much of the room is drawn for words, past the sizes."""
NEAR, FAR = inches("1 1/4"), inches("3 1/2")
"""How far into the room from the drywall the marks of the uprights stand, and the sizes."""
EDGE, APART = inches("2"), inches("5")
"""From where the drawing ends to the first line of sizes, and on to the next, along the wall."""
_LOOKS: dict[Kind, tuple[Look, Cut]] = {
    Kind.BOTTOM_PLATE: (Look.PLATE, ""), Kind.FOAM: (Look.FOAM_CUT, ""), Kind.FIREBLOCK: (Look.FIREBLOCK, ""),
    Kind.STUD: (Look.STUD, "across"), Kind.KING: (Look.STUD, "across"), Kind.TRIMMER: (Look.STUD, "across"),
    Kind.CRIPPLE: (Look.STUD, "across"), Kind.PACK: (Look.PACK, "across"), Kind.CHASE_POST: (Look.CHASE, "across"),
}  # fmt: skip
"""What shows of a wall from above, from the back to the front."""
_UPRIGHT = (Kind.STUD, Kind.KING, Kind.TRIMMER, Kind.PACK)


@dataclass(frozen=True)
class _Arm:
    """One of the walls of a corner: it begins there or ends there."""

    placed: Placed
    end: End
    ends_here: bool
    reach: Length

    @property
    def wall(self) -> WallLayout:
        return self.placed.wall

    def along(self, out: Length) -> Length:
        """Return the place along the wall so far from the concrete corner, away from it."""
        return self.wall.wall.length - out if self.ends_here else out

    @property
    def seen(self) -> Span:
        """What is drawn of the wall: its reach from the corner, and on past it."""
        far, past = self.along(self.reach), self.along(-self.reach)
        return min(far, past), max(far, past)

    def clipped(self, span: Span) -> Span | None:
        """Return what is drawn of a stretch of the wall, if anything is."""
        low, high = max(span[0], self.seen[0]), min(span[1], self.seen[1])
        return (low, high) if low < high else None

    @property
    def height(self) -> Length:
        """Where it is cut."""
        return self.wall.wall.height.at(self.along(ZERO)) // 2

    @property
    def holes(self) -> list[Span]:
        """The openings that are cut through."""
        w = self.wall.wall
        return [(o.left, o.right) for o in w.openings if (o.sill or ZERO) < self.height < opening_top(w, o)]


def corner_plan(left: WallLayout | None, right: WallLayout | None) -> Drawing:
    """Return the corner in which `left` ends and `right` begins; one of them may be None. Raises ValueError without both."""
    arms = _arms(left, right)
    shapes = [shape for arm in arms for shape in _concrete(arm, alone=len(arms) == 1)]
    shapes += [shape for draw in (_parts, _drywall, _sizes, _marks) for arm in arms for shape in draw(arm)]
    names = " and ".join(arm.wall.letter for arm in arms)
    what = arms[0].end.what
    side = "" if len(arms) == 2 else f", {'right' if arms[0].ends_here else 'left'} end"
    return drawing(
        f"Wall{'s' if len(arms) == 2 else ''} {names}{side}: the {what} from above, cut through at half height",
        [*shapes, *_said(arms), *(chain for arm in arms for chain in _chains(arm, arms))],
        across="",
        up="",
    )


def _arms(left: WallLayout | None, right: WallLayout | None) -> list[_Arm]:
    """Return the walls in their places, the concrete corner at zero across, all of it under zero: no height is meant."""
    walls = [wall for wall in (left, right) if wall is not None]
    reach = greatest(*(wall.offsets.drywall for wall in walls)) + REACH if walls else REACH
    arms = []
    if left is not None:
        arms.append(_Arm(Placed(left, -left.wall.length, -reach * 2), left.right, True, reach))
    if right is not None:
        heading = (Fraction(1), Fraction(0)) if left is None else right.left.turn
        arms.append(_Arm(Placed(right, ZERO, -reach * 2, heading), right.left, False, reach))
    if not arms:
        raise ValueError("a corner needs a wall")
    return arms


def _concrete(arm: _Arm, alone: bool) -> Iterator[Shape]:
    """Return the concrete of a wall with its openings; where the other wall is not drawn, that wall's too."""
    inside = arm.end.what == "inside corner"
    corner = arm.along(-past_corner(arm.end, CONCRETE_SHOWN))
    far = arm.along(arm.reach)
    for span in without((min(far, corner), max(far, corner)), arm.holes):
        yield arm.placed.box(Look.CONCRETE_CUT, span, (-CONCRETE_SHOWN, ZERO), "concrete")
    for hole in arm.holes:
        if cut := arm.clipped(hole):
            yield arm.placed.box(Look.OPENING_CUT, cut, (-CONCRETE_SHOWN, arm.wall.offsets.face), "opening")
    if alone and inside:
        deep = arm.wall.offsets.drywall + FAR + ROOM
        points = [
            arm.placed.at(arm.along(arm.end.at(thick, out)), out)
            for thick in (ZERO, -CONCRETE_SHOWN)
            for out in (ZERO, deep)
        ]
        yield polygon(Look.CONCRETE_CUT, points, "concrete")


def _parts(arm: _Arm) -> Iterator[Shape]:
    """Return what stands at the height of the cut, and the plate that the uprights stand on."""
    w = arm.wall.wall
    for kind, (look, cut) in _LOOKS.items():
        for part in arm.wall.of(kind):
            stands = part.box.z0.at(w, part.centre) <= arm.height <= part.box.z1.at(w, part.centre)
            span = arm.clipped((part.box.x0, part.box.x1))
            if span and (stands or kind is Kind.BOTTOM_PLATE):
                slants = (
                    part.slants[0] if span[0] == part.box.x0 else ZERO,
                    part.slants[1] if span[1] == part.box.x1 else ZERO,
                )
                yield arm.placed.box(look, span, (part.box.y0, part.box.y1), part.id, part.mark, cut, slants)
    for pipe in w.pipes:
        if pipe.run == "standing" and (span := arm.clipped((pipe.left_edge, pipe.right_edge))):
            yield arm.placed.box(Look.PIPE, span, (pipe.back, pipe.out), pipe.place)


def _drywall(arm: _Arm) -> Iterator[Shape]:
    """Return the drywall as it meets that of the other wall: the one hung first runs behind the other's edge."""
    start, far = arm.along(arm.end.clear + arm.end.first_sheet), arm.along(arm.reach)
    offsets = arm.wall.offsets
    for span in without((min(start, far), max(start, far)), arm.holes):
        yield arm.placed.box(Look.DRYWALL, span, (offsets.face, offsets.drywall), "drywall")


def _sizes(arm: _Arm) -> Iterator[Shape]:
    """Return B, F and D, each with its line from the concrete; a line is level or upright."""
    offsets = arm.wall.offsets
    if not arm.placed.square:
        return
    for number, (letter, size) in enumerate((("B", offsets.back), ("F", offsets.face), ("D", offsets.drywall))):
        along = arm.along(arm.reach - EDGE - APART * number)
        (xa, za), (xb, zb) = arm.placed.at(along, ZERO), arm.placed.at(along, size)
        yield Line(min(xa, xb), max(za, zb), max(xa, xb), min(za, zb))
        x, z = arm.placed.at(along, offsets.drywall + FAR)
        yield Label(x, z, (letter,), size, SIDES[arm.placed.turn])


def _marks(arm: _Arm) -> Iterator[Shape]:
    """Return the marks of the uprights, in the room before each, and room for them."""
    yield Label(*arm.placed.at(arm.along(arm.reach), arm.wall.offsets.drywall + FAR + ROOM), ())
    for part in arm.wall.of(*_UPRIGHT):
        if arm.seen[0] <= part.box.x0 and part.box.x1 <= arm.seen[1]:
            x, z = arm.placed.at(part.centre, arm.wall.offsets.drywall + NEAR)
            yield Label(x, z, (part.mark,), None, SIDES[arm.placed.turn], name=part.id)


def _said(arms: list[_Arm]) -> Iterator[Shape]:
    """Say which wall runs through and whose foam fills the corner, in the room between the two."""
    first = arms[0]
    x, z = first.placed.at(first.along(first.reach * 2 // 3), first.wall.offsets.drywall + FAR + ROOM // 2)
    through = next((arm.wall.letter for arm in arms if arm.end.through), None)
    said = f"{through} runs through" if through else f"{first.wall.letter} stops short"
    if first.end.mitred:
        said = "both mitred"
    yield Label(x, z, (said,))
    filling = None if first.end.mitred else next((arm.wall.letter for arm in arms if _fills(arm)), None)
    if filling:
        yield Label(x, z - ROOM // 3, (f"foam of {filling} fills the corner", f"foam of {filling} fills it"))


def _fills(arm: _Arm) -> bool:
    """Say whether the foam of a wall runs into the corner, past the foam of the other."""
    ends = (part.box.x1 if arm.ends_here else part.box.x0 for part in arm.wall.of(Kind.FOAM))
    corner = arm.along(ZERO)
    inside = arm.end.what == "inside corner"
    return any((end == corner if inside else (end > corner) is arm.ends_here and end != corner) for end in ends)


def _chains(arm: _Arm, arms: list[_Arm]) -> Iterator[Chain]:
    """Return the places along a wall from the concrete corner: the end of its plates and both edges of each upright.

    A wall that lies at an angle has them in its table of marks alone.
    """
    if not arm.placed.square:
        return
    places: dict[int, Length] = {}
    for part in arm.wall.of(*_UPRIGHT):
        for edge in (part.box.x0, part.box.x1):
            if arm.seen[0] <= edge <= arm.seen[1]:
                places[edge.ticks] = edge.with_rests(part.place_rests)
    for edge in (arm.along(ZERO), arm.wall.plate_end if arm.ends_here else arm.wall.plate_start):
        places[edge.ticks] = edge
    turn = arm.placed.turn
    across = turn in (0, 2)
    outside = len(arms) == 2 and arm.end.what == "outside corner"
    edge_of: Edge = ("below" if outside else "above") if across else ("left" if outside else "right")
    at = sorted(arm.placed.at(place, ZERO)[0 if across else 1] for place in places.values())
    yield Chain(edge_of, tuple(at), f"wall {arm.wall.letter}: concrete corner, end of the plates, uprights")
