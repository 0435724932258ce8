"""A cut through a wall, from the concrete into the room: what stands behind what, and the five sizes it all hangs on.

x is how far from the concrete, z how high above the slab. Drawn wider than true, so that half an inch can be seen.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from guide.drawing.elevation import (
    CONCRETE_SHOWN,
    JOIST_SHOWN,
    LOOKS,
    opening_bottom,
    opening_top,
    part_label,
    pipe_front,
)
from guide.drawing.shapes import Cut, Drawing, Fill, Label, Line, Look, Ruler, Shape, drawing, level, rectangle
from guide.layout.parts import Kind, Part, WallLayout
from guide.lengths import ZERO, Length, greatest, inches, least
from guide.reference.figures import load_figures

STRETCH = 3
"""How many times wider than true a section is drawn."""
SILL_SHOWN = inches("5 1/2")
"""How wide the sill of the house is drawn. Nobody measured it."""
ROOM_SHOWN = inches("38")
"""How much of the room is drawn, for the words in it."""
STEP = inches("5")
"""From one line of sizes to the next, under the slab."""
RULED = inches("12")
"""How far the rule along the bottom reaches, at least."""
BESIDE = inches("3")
"""From the drywall to the first upright line of sizes, and on to its words."""
CUTS: dict[Kind, Cut] = {
    Kind.BOTTOM_PLATE: "across", Kind.TOP_PLATE: "across", Kind.HEADER: "across", Kind.SILL: "across",
    Kind.STUD: "along", Kind.PACK: "along", Kind.KING: "along", Kind.TRIMMER: "along", Kind.CRIPPLE: "along",
    Kind.JOIST_BLOCK: "along", Kind.BUCK: "across",
}  # fmt: skip
"""How wood lies in the cut; what runs along the wall is cut across its grain."""


def section(wall: WallLayout, x: Length | None = None) -> Drawing:
    """Return a wall cut through at x from its left concrete corner; by default at a plain stud near the middle.

    x beyond the wall is taken at its nearest end. Where no stud stands at x, the next one is shown beyond the cut.
    """
    at = _plain_place(wall) if x is None else min(max(x, ZERO), wall.wall.length)
    cut = next((part for part in wall.of(Kind.STUD) if _at(part, at)), None)
    where = f" at stud {part_label(cut)}" if cut else ""
    return drawing(
        f"{wall.wall.title}, cut through{where}",
        [*_house(wall, at), *_built(wall, at), *_sizes(wall, at)],
        across="from the far side of the studs" if wall.wall.is_partition else "from the concrete into the room",
        up="above the slab",
        ceiling=level(wall.wall.height.at(at)),
        stretch=STRETCH,
    )


def _plain_place(wall: WallLayout) -> Length:
    """Return the centre of the stud nearest to the middle with nothing else there; of any stud; or the middle."""
    middle = (wall.plate_start + wall.plate_end) // 2
    studs = sorted(wall.of(Kind.STUD), key=lambda part: (abs(part.centre - middle), part.centre))
    plain = (part.centre for part in studs if not _holes(wall, part.centre) and not _pipes(wall, part.centre))
    return next(plain, studs[0].centre if studs else middle)


def _at(part: Part, x: Length) -> bool:
    return part.box.x0 <= x <= part.box.x1


def _holes(wall: WallLayout, x: Length) -> list[tuple[Length, Length]]:
    """Return bottom and top of every opening that is cut through at x; behind a place kept free the concrete is whole."""
    openings = (o for o in wall.wall.openings if o.kind != "kept free" and not o.hangs)
    return [(o.sill or ZERO, opening_top(wall.wall, o)) for o in openings if o.left <= x <= o.right]


def _pipes(wall: WallLayout, x: Length) -> list[Fill]:
    """Return the pipes that are cut through at x, and what hangs under the joists there."""
    found = []
    for pipe in wall.wall.pipes:
        if not pipe.left_edge <= x <= pipe.right_edge:
            continue
        front = pipe_front(wall.wall, pipe)
        found.append(
            rectangle(Look.PIPE, pipe.back, pipe.out_over(x, x), front.bottom.at(x), front.top.at(x), pipe.place)
        )
    w, end = wall.wall, wall.offsets.drywall + ROOM_SHOWN
    for o in (o for o in w.openings if o.hangs and o.left <= x <= o.right):
        found.append(rectangle(Look.OPENING, ZERO, end, opening_bottom(w, o), opening_top(w, o), o.place))
    return found


def _house(wall: WallLayout, x: Length) -> Iterator[Shape]:
    """Return slab, concrete, the sill of the house and the joists."""
    w = wall.wall
    if w.is_partition:
        yield from _round_partition(wall, x)
        return
    concrete, joists = w.concrete.at(x), w.height.at(x)
    sill = -w.shelf - SILL_SHOWN
    back, end = min(-CONCRETE_SHOWN * 2, sill), wall.offsets.drywall + ROOM_SHOWN
    yield rectangle(Look.CONCRETE_CUT, back, end, -CONCRETE_SHOWN, ZERO, "slab")
    for low, high in _between(ZERO, concrete, _holes(wall, x)):
        yield rectangle(Look.CONCRETE_CUT, back, ZERO, low, high, "concrete")
    for low, high in _holes(wall, x):
        yield rectangle(Look.OPENING, back, wall.offsets.face, low, high)
    if concrete < joists:
        yield rectangle(Look.HOUSE_SILL, sill, -w.shelf, concrete, joists)
    if w.joists != "alongside":
        yield rectangle(Look.JOIST_SIDE, sill, end, joists, joists + JOIST_SHOWN)
    else:
        near = -w.shelf + (w.parallel_gap or ZERO)
        yield rectangle(Look.JOIST_END, near, near + load_figures().joist_thick, joists, joists + JOIST_SHOWN)
        yield from (_side(wall, part, x) for part in _seen(wall, Kind.JOIST_BLOCK, x))
    yield from (_side(wall, part, x) for part in wall.of(Kind.RIM) if _at(part, x))


def _round_partition(wall: WallLayout, x: Length) -> Iterator[Shape]:
    """Return the slab under a partition and the joists over it: across it, at both sides of it, or one right over it."""
    w, thick = wall.wall, load_figures().joist_thick
    joists, back, end = w.height.at(x), -CONCRETE_SHOWN * 2, wall.offsets.drywall + ROOM_SHOWN
    gap = w.parallel_gap or ZERO
    yield rectangle(Look.CONCRETE_CUT, back, end, -CONCRETE_SHOWN, ZERO, "slab")
    for low, high in _holes(wall, x):
        yield rectangle(Look.OPENING, wall.offsets.back, wall.offsets.face, low, high)
    middle = wall.offsets.face // 2
    if w.joists != "alongside":
        yield rectangle(Look.JOIST_SIDE, back, end, joists, joists + JOIST_SHOWN)
    elif gap == ZERO:
        yield rectangle(Look.JOIST_END, middle - thick // 2, middle + thick // 2, joists, joists + JOIST_SHOWN)
    else:
        for near in (middle - gap // 2 - thick, middle + gap // 2):
            yield rectangle(Look.JOIST_END, near, near + thick, joists, joists + JOIST_SHOWN)
    yield from (_side(wall, part, x) for part in _seen(wall, Kind.JOIST_BLOCK, x))


def _built(wall: WallLayout, x: Length) -> Iterator[Shape]:
    """Return what the job builds, from the concrete into the room."""
    w = wall.wall
    inside = _pipes(wall, x)
    yield from (_side(wall, part, x) for part in wall.of(Kind.FOAM) if _at(part, x))
    foam, back = wall.offsets.foam_face, wall.offsets.back
    for low, high in _between(ZERO, min(w.concrete.at(x), w.height.at(x)), _holes(wall, x)) if foam < back else ():
        yield rectangle(Look.GAP, foam, back, low, high)
    for kind in (Kind.CAP, Kind.CAP_LAP, Kind.LEDGE, Kind.LEDGE_LAP, Kind.FIREBLOCK, Kind.UPPER_BLOCK):
        yield from (_side(wall, part, x) for part in wall.of(kind) if _at(part, x))
    yield from (pipe for pipe in inside if pipe.x0 < wall.offsets.back)
    short = [part for part in wall.of(Kind.CRIPPLE, Kind.TRIMMER, Kind.KING, Kind.PACK) if _at(part, x)]
    studs = [] if short or _holes(wall, x) or inside else _seen(wall, Kind.STUD, x)
    yield from (_side(wall, part, x) for part in (*short, *studs))
    for kind in (
        Kind.BUCK,
        Kind.RETURN,
        Kind.EXTENSION,
        Kind.SILL,
        Kind.HEADER,
        Kind.BOTTOM_PLATE,
        Kind.TOP_PLATE,
        Kind.BACKING,
        Kind.OUTLET,
    ):
        yield from (_side(wall, part, x) for part in wall.of(kind) if _at(part, x))
    for plate in (part for part in wall.of(Kind.BOTTOM_PLATE) if _at(part, x)):
        yield rectangle(Look.GASKET, plate.box.y0, plate.box.y1, ZERO, plate.box.z0.at(w, x))
    yield from _drywall(wall, x, wall.sheets_on())
    yield from _drywall(wall, x, wall.sheets_on(far=True))
    yield from (pipe for pipe in inside if pipe.x0 >= wall.offsets.back)
    yield from (_side(wall, part, x) for part in wall.of(Kind.CHASE_RUNG, Kind.CHASE_POST) if _at(part, x))


def _drywall(wall: WallLayout, x: Length, hung: Sequence[Part]) -> Iterator[Shape]:
    """Return the drywall of one side as one where its sheets meet, less what is cut out of them."""
    w = wall.wall
    sheets = [part for part in hung if _at(part, x)]
    cut = [(n.z0.at(w, x), n.z1.at(w, x)) for part in sheets for n in part.notches if n.x0 <= x <= n.x1]
    spans: list[tuple[Length, Length]] = []
    for low, high in sorted((part.box.z0.at(w, x), part.box.z1.at(w, x)) for part in sheets):
        if spans and low <= spans[-1][1]:
            spans[-1] = spans[-1][0], max(spans[-1][1], high)
        else:
            spans.append((low, high))
    for span in spans:
        for low, high in _between(*span, cut):
            yield rectangle(Look.DRYWALL, sheets[0].box.y0, sheets[0].box.y1, low, high)


def _sizes(wall: WallLayout, x: Length) -> Iterator[Shape]:
    """Return the sizes: B, F and D in steps under the slab, C and H in front of the wall, and where the cut is."""
    offsets, w = wall.offsets, wall.wall
    steps: tuple[tuple[str, Length, str], ...] = (
        ("B", offsets.back, "to the back of the studs"),
        ("F", offsets.face, "to their room face"),
        ("D", offsets.drywall, "to the face of the drywall"),
    )
    if w.is_partition:
        steps = (("", offsets.face, "the studs are deep"),)
    for number, (letter, size, what) in enumerate(steps, start=2):
        z = -STEP * number
        yield Line(ZERO, z, size, z, reach=ZERO)
        yield Label(offsets.drywall + BESIDE, z, (f"{letter} {what}:".strip(), letter), size, "right", fixed=True)
    near = offsets.drywall + BESIDE
    far = near + ROOM_SHOWN // 2
    heights = (
        ("C", ("slab to top of concrete", "top of concrete"), near, w.concrete.at(x)),
        ("H", ("slab to joists", "joists"), far, w.height.at(x)),
    )
    for letter, words, at, top in heights[1:] if w.is_partition else heights:
        yield Line(at, ZERO, at, top)
        yield Label(at, top * 2 // 3, (letter,), top, "right")
        yield Label(at, top * 2 // 3 - STEP, words, None, "right")
    under = least(w.height.at(x) // 3, w.concrete.at(x) * 2 // 3 - STEP * 3)  # clear of what is said of C
    yield Label(near, under, ("cut at", "at"), x, "right")
    yield Label(
        near,
        under - STEP,
        ("from the left end" if w.is_partition else "from the left corner", "from the left"),
        None,
        "right",
    )
    yield Ruler(ZERO, greatest(RULED, offsets.drywall))


def _side(wall: WallLayout, part: Part, x: Length) -> Fill:
    """Return a part as it lies in the cut."""
    look = Look.FOAM_CUT if part.kind in (Kind.FOAM, Kind.RIM) else LOOKS[part.kind]
    at = min(max(x, part.box.x0), part.box.x1)
    low, high = part.box.z0.at(wall.wall, at), part.box.z1.at(wall.wall, at)
    return rectangle(look, part.box.y0, part.box.y1, low, high, part.id, part.mark, CUTS.get(part.kind, ""))


def _seen(wall: WallLayout, kind: Kind, x: Length) -> list[Part]:
    """Return the part of a kind that x cuts, else the next to the right, else the last to the left."""
    parts = wall.of(kind)
    return [next((part for part in parts if part.box.x1 >= x), parts[-1])] if parts else []


def _between(low: Length, high: Length, holes: list[tuple[Length, Length]]) -> list[tuple[Length, Length]]:
    """Return what is left from low to high between holes."""
    left = [(low, high)]
    for bottom, top in holes:
        left = [(a, b) for z0, z1 in left for a, b in ((z0, min(z1, bottom)), (max(z0, top), z1)) if a < b]
    return left
