"""The walls of a job seen from above, at the height of the windows: what stands in front of what, and who runs through.

Round an inside corner the next wall turns clockwise, round an outside corner the other way. A partition stands square to the
wall of the job that it meets. A wall that nothing joins begins a new run under the runs before it. Zero is the leftmost and the lowest concrete face.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from guide.drawing.elevation import CONCRETE_SHOWN
from guide.drawing.shapes import Cut, Drawing, Fill, Label, Look, Ruler, Shape, Side, drawing, polygon, rectangle
from guide.interview.asking import CORNERS
from guide.layout.ends import End, slanted
from guide.layout.parts import Kind, Layout, Part, WallLayout
from guide.lengths import ZERO, Length, from_inches, inches
from guide.reference.figures import load_figures
from guide.survey.things import Opening
from guide.survey.traverse import Vector, turned

FOUNDATION_SHOWN = CONCRETE_SHOWN * 2
"""How thick the concrete is drawn from above. Nobody measured it."""
BETWEEN_RUNS = inches("72")
"""What is left free between runs of walls that are not joined."""
WORDS_OFF = inches("12")
"""How far into the room from the studs words stand."""

SIDES: tuple[Side, ...] = ("middle", "left", "middle", "right")
"""Where the words of a wall stand, by its turn: on the side of the room."""

Point = tuple[Length, Length]
Span = tuple[Length, Length]


@dataclass(frozen=True)
class Placed:
    """A wall in the plan: its left concrete corner, and the cosine and sine of its turn clockwise from lying across the top."""

    wall: WallLayout
    x: Length
    z: Length
    heading: Vector = (Fraction(1), Fraction(0))

    @property
    def square(self) -> bool:
        """Whether it lies across or up and down."""
        return 0 in self.heading

    @property
    def turn(self) -> int:
        """How often it is turned clockwise by a right angle, the nearest number."""
        cosine, sine = self.heading
        return (0 if cosine > 0 else 2) if abs(cosine) >= abs(sine) else (1 if sine > 0 else 3)

    def at(self, along: Length, out: Length) -> Point:
        """Return the place so far along the wall and so far out into the room, to the nearest tick."""
        cosine, sine = self.heading
        return self.x + _shared(along, cosine, out, -sine), self.z - _shared(along, sine, out, cosine)

    def box(
        self,
        look: Look,
        along: Span,
        out: Span,
        name: str = "",
        label: str = "",
        cut: Cut = "",
        slants: Span = (ZERO, ZERO),
    ) -> Fill:
        """Return a rectangle given along the wall and out into the room, or what slanted ends leave of it."""
        if self.square and not (slants[0].ticks or slants[1].ticks):
            (xa, za), (xb, zb) = self.at(along[0], out[0]), self.at(along[1], out[1])
            return rectangle(look, min(xa, xb), max(xa, xb), min(za, zb), max(za, zb), name, label, cut)
        points = slanted(along, out, slants)
        return polygon(look, [self.at(*point) for point in points], name, label, cut)


def floor_plan(layout: Layout) -> Drawing:
    """Return the walls of a job seen from above. A job without a wall to draw gives a drawing that says so."""
    placed = _place(layout.walls)
    if not placed:
        return drawing("The walls from above: no wall yet", [Label(ZERO, ZERO, ())], across="", up="")
    shapes = [shape for draw in (_concrete, _foam, _framing, _words) for each in placed for shape in draw(each)]
    right = max(x for each in placed for x in (each.x, each.at(each.wall.wall.length, ZERO)[0]))
    return drawing(
        "The walls from above",
        [*shapes, Ruler(ZERO, right)],
        across="from the leftmost concrete",
        up="from the lowest concrete",
    )


def _shared(along: Length, share: Fraction, out: Length, other: Fraction) -> Length:
    """Return so much of one size and so much of the other; what has no share in it is not rested on."""
    found = ZERO
    for size, part in ((along, share), (out, other)):
        if part:
            found = found + from_inches(size.inch * part).with_rests(size.rests)
    return found


def _place(walls: Iterable[WallLayout]) -> list[Placed]:
    """Return every wall where it lies: each run from the top left, runs under each other, the lowest corner at zero.

    Partitions that meet a wall follow, each where it was told among that wall's openings.
    """
    walls = list(walls)
    meeting = _met(walls)
    runs: list[list[Placed]] = []
    for wall in walls:
        if wall.letter in meeting:
            continue
        before = runs[-1][-1] if runs else None
        if before is not None and wall.wall.left_joined == before.wall.letter:
            x, z = before.at(before.wall.wall.length, ZERO)
            runs[-1].append(Placed(wall, x, z, turned(before.heading, wall.left.turn)))
        else:
            runs.append([Placed(wall, ZERO, ZERO)])
    placed: list[Placed] = []
    floor = ZERO
    for run in reversed(runs):
        left, low, high = _extent(run)
        placed = [replace(each, x=each.x - left, z=each.z - low + floor) for each in run] + placed
        floor = floor + high - low + BETWEEN_RUNS
    for wall in walls:  # one that meets a partition comes after it
        if wall.letter in meeting:
            letter, side, opening = meeting[wall.letter]
            placed.append(_meeting(wall, side, opening, next(each for each in placed if each.wall.letter == letter)))
    return placed


def _met(walls: list[WallLayout]) -> dict[str, tuple[str, str, Opening]]:
    """Return, by the letter of each partition that can be placed, the wall it meets, with which end, and at which opening.

    The partitions of a wall's openings are taken from the left by those that meet it, in the order told.
    """
    free = {wall.letter: sorted(wall.wall.partitions, key=lambda each: each.left) for wall in walls}
    found: dict[str, tuple[str, str, Opening]] = {}
    there = {wall.letter for wall in walls if not wall.wall.is_partition}
    for wall in walls:
        for side in ("left", "right") if wall.wall.is_partition else ():
            letter = wall.wall.met(side) or ""
            if free.get(letter):
                opening = free[letter].pop(0)
                if wall.letter not in found and letter in there:
                    found[wall.letter] = (letter, side, opening)
                    there.add(wall.letter)
    return found


def _meeting(wall: WallLayout, side: str, opening: Opening, met: Placed) -> Placed:
    """Return a partition in its place: its plate between the marks on the wall that it meets, and out into the room."""
    turn = Fraction(1 if side == "left" else -1)
    heading = turned(met.heading, (Fraction(0), turn))
    out = met.wall.offsets.face if met.wall.wall.is_partition else ZERO
    x, z = met.at(opening.right if side == "left" else opening.left, out)
    if side == "left":
        return Placed(wall, x, z, heading)
    back = Placed(wall, x, z, heading).at(-wall.wall.length, ZERO)
    return Placed(wall, *back, heading)


def _extent(run: list[Placed]) -> tuple[Length, Length, Length]:
    """Return the leftmost, lowest and highest place of the concrete faces of a run."""
    corners = [corner for each in run for corner in (each.at(ZERO, ZERO), each.at(each.wall.wall.length, ZERO))]
    # a wall that lies alone still needs the room in front of it, or the next run would stand in its words
    return min(x for x, _ in corners), min(z for _, z in corners), max(z for _, z in corners)


def _concrete(placed: Placed) -> Iterator[Shape]:
    wall, thick = placed.wall, FOUNDATION_SHOWN
    if wall.wall.is_partition:  # what it meets is drawn by itself
        return
    length = wall.wall.length
    left, right = (past_corner(end, thick) for end in (wall.left, wall.right))
    yield from _layer(placed, Look.CONCRETE_CUT, [(-left, length + right)], (-thick, ZERO))
    deep = wall.offsets.drywall * 2
    if wall.left.what == "framed wall" and wall.left.clear > ZERO:
        yield placed.box(Look.FRAMED_WALL, (ZERO, wall.left.clear), (ZERO, deep))
    if wall.right.what == "framed wall" and wall.right.clear > ZERO:
        yield placed.box(Look.FRAMED_WALL, (length - wall.right.clear, length), (ZERO, deep))


def past_corner(end: End, thick: Length) -> Length:
    """Return how far the concrete of a wall is drawn past an inside corner: as far as the back of the other's reaches."""
    if end.what != "inside corner":
        return ZERO
    return thick if not end.turn[0] else -end.at(-thick, -thick)


def _foam(placed: Placed) -> Iterator[Shape]:
    wall = placed.wall
    if wall.wall.is_partition:
        return
    yield from _layer(
        placed, Look.FOAM_CUT, _spans(wall, Kind.FOAM), (ZERO, wall.offsets.foam_face), wall.of(Kind.FOAM)
    )


def _framing(placed: Placed) -> Iterator[Shape]:
    wall, offsets = placed.wall, placed.wall.offsets
    plates = wall.of(Kind.BOTTOM_PLATE)
    yield from _layer(placed, Look.FRAMING, _spans(wall, Kind.BOTTOM_PLATE), (offsets.back, offsets.face), plates)
    for foot in wall.chases:
        yield placed.box(Look.CHASE, (foot.box.x0, foot.box.x1), (offsets.face, foot.box.y1), foot.id)
    for each in wall.wall.partitions:
        yield placed.box(
            Look.FRAMED_WALL, (each.left, each.right), (offsets.face, offsets.face + WORDS_OFF), each.place
        )
    for pipe in wall.wall.pipes:
        if pipe.run == "standing":
            yield placed.box(Look.PIPE, (pipe.left_edge, pipe.right_edge), (pipe.back, pipe.out), pipe.place)


def _spans(wall: WallLayout, kind: Kind) -> list[Span]:
    return [(part.box.x0, part.box.x1) for part in wall.of(kind)]


def _layer(placed: Placed, look: Look, spans: Iterable[Span], out: Span, parts: Iterable[Part] = ()) -> Iterator[Shape]:
    """Return one layer of a wall with the openings in it, its ends as slanted as those of its parts.

    Behind a place kept free the concrete goes on; what hangs under the joists is over the cut.
    """
    whole = look is Look.CONCRETE_CUT
    openings = [o for o in placed.wall.wall.openings if not (o.hangs or (whole and o.kind == "kept free"))]
    for span in _joined(spans):
        for rest in without(span, [(opening.left, opening.right) for opening in openings]):
            slants = (
                next((part.slants[0] for part in parts if part.box.x0 == rest[0]), ZERO),
                next((part.slants[1] for part in parts if part.box.x1 == rest[1]), ZERO),
            )
            yield placed.box(look, rest, out, slants=slants)
    for opening in openings:
        yield placed.box(Look.OPENING_CUT, (opening.left, opening.right), out, opening.place)


def _joined(spans: Iterable[Span]) -> list[Span]:
    """Return spans in order, those that touch, overlap or have only a fireblock between them as one."""
    joined: list[Span] = []
    apart = load_figures().plywood
    for low, high in sorted(spans):
        if joined and low <= joined[-1][1] + apart:
            joined[-1] = joined[-1][0], max(joined[-1][1], high)
        else:
            joined.append((low, high))
    return joined


def without(span: Span, holes: Iterable[Span]) -> list[Span]:
    """Return what is left of a span between holes."""
    left = [span]
    for low, high in holes:
        left = [(a, b) for x0, x1 in left for a, b in ((x0, min(x1, low)), (max(x0, high), x1)) if a < b]
    return left


def _words(placed: Placed) -> Iterator[Shape]:
    wall, w = placed.wall, placed.wall.wall
    off = wall.offsets.face + WORDS_OFF
    side = SIDES[placed.turn]
    x, z = placed.at(w.length // 2, off)
    named = () if w.name.lower() == f"wall {w.letter}".lower() else (f"{w.letter} {w.name}",)
    yield Label(x, z, (*named, w.letter), w.length, side)
    for end, along, away in ((wall.left, off, 1), (wall.right, w.length - off, -1)):
        if end.what in CORNERS and (end.neighbour is None or end is wall.right):
            x, z = placed.at(along, off)
            leftward = placed.turn in (1, 2) if away > 0 else placed.turn in (0, 1)
            yield Label(x, z, _through(wall.letter, end.neighbour, end.through), None, "left" if leftward else "right")
    for opening in w.openings:
        x, z = placed.at((opening.left + opening.right) // 2, off)
        yield Label(x, z, (opening.kind, opening.kind.rpartition(" ")[2]), None, side)


def _through(letter: str, neighbour: str | None, through: bool | None) -> tuple[str, ...]:
    """Say which wall runs through at a corner."""
    if through is None:
        return ("both mitred", "mitred")
    if through or neighbour:
        first = letter if through else neighbour
        return f"{first} runs through", f"{first} through"
    return f"{letter} stops short", f"{letter} short"
