"""What lines a hole up to the face of the wall: of a window buck and return, of a standing door its jamb extension.

    concrete | gap, foamed | buck | return     head and sill of both run the full width, the sides stand between them
    y:  window frame ........ 0 ..... B: back of the studs, where the buck stops ..... D: where the return stops

The buck's inner faces are those of the framed hole, so that the return lies flat on buck and framing. All of a window is
lined or nothing: where the hole is not one plain box a remark leaves it to the tape on the spot. A jamb extension stands
on the room edge of the jamb, as wide as that falls short of the face.
"""

from __future__ import annotations

from collections.abc import Iterator

from guide.layout.crooked import proud
from guide.layout.openings import Hole, extended, off_the_face
from guide.layout.parts import Box, Kind, Level, Material, Part, Remark, over_slab, overlap, under_joists
from guide.layout.site import Site
from guide.layout.studs import Framing
from guide.lengths import EIGHTH, SIXTEENTH, ZERO, Length, greatest, inches, least
from guide.reference.sayings import Saying, saying
from guide.survey.things import Opening

ENDS = {True: ("left end", "right end"), False: ("upper end", "lower end")}
"""What the two ends of a side are called, where it lies and where it stands."""


def linings_of(site: Site, framing: Framing) -> tuple[list[Part], list[Remark]]:
    """Return the lining of windows that are framed and of doors that stand, and a remark for each that cannot be cut beforehand."""
    parts: list[Part] = []
    remarks: list[Remark] = []
    for hole in framing.holes:
        window = hole.opening
        parts += _extension(site, hole)
        beside = {part.box.x1 for part in framing.parts if part.kind in (Kind.TRIMMER, Kind.KING)}
        if window.kind != "window" or hole.x0 not in beside:
            continue
        if _is_plain(site, hole):
            parts += _buck(site, hole)
            parts += _return(site, hole)
        else:
            remarks.append(Remark(saying("remark.lining_by_hand", what=hole.name), hole.x0))
    return parts, remarks


def _extension(site: Site, hole: Hole) -> Iterator[Part]:
    """Yield the three strips on the jamb of a standing door that make up for what it falls short of the face.

    None where a pipe, the top plate, the foam or the wall round the corner is in their way, or where it takes more than one
    board: the step says what to do.
    """
    door, figures, wall = hole.opening, site.figures, site.wall
    gap = off_the_face(door, site.offsets.drywall) if door.jamb is not None and extended(door) else ZERO
    wide = gap.down_to(figures.cut_step).on(f"{door.place}.outside", f"{door.place}.meets")
    piped = any(overlap(door.left, door.right, pipe.left_edge, pipe.right_edge) for pipe in wall.pipes)
    cornered = not _between_the_walls(site, door.left, door.right)
    if wide <= ZERO or wide > figures.board_1x6 or piped or cornered or hole.remarks or _in_foam(site, door, wide):
        return
    joists, thick = wall.height.at((hole.x0 + hole.x1) // 2), figures.board_1x
    high, finish = door.frame_height or ZERO, site.basement.floor_finish
    head, foot = under_joists(joists - high), under_joists(joists - finish)
    long, tall = door.frame_width or ZERO, high - finish - thick
    for side, x0, x1, z0, z1, cut in (
        ("head", door.left, door.right, head.up(-thick), head, long),
        ("left leg", door.left, door.left + thick, foot, head.up(-thick), tall),
        ("right leg", door.right - thick, door.right, foot, head.up(-thick), tall),
    ):
        why = saying("part.extension", what=hole.name, side=side)
        box = Box(x0, x1, site.offsets.drywall - wide, site.offsets.drywall, z0, z1)
        yield _piece(site, hole, Kind.EXTENSION, Material.TRIM, box, (cut, wide), why)


def corners_of(window: Opening) -> dict[tuple[str, str], Length]:
    """Return how far behind the concrete the window's frame stands, by the corners of its hole: (upper, left) and so on."""
    first = window.depth or ZERO
    corners = {("upper", "left"): first, ("upper", "right"): first, ("lower", "left"): first, ("lower", "right"): first}
    if window.tapers == "differ":
        corners[("upper", "right")] = window.depth_upper_right or first
        corners[("lower", "left")] = window.depth_lower_left or first
        corners[("lower", "right")] = window.depth_lower_right or first
    return {corner: depth.on(f"{window.place}.tapers") for corner, depth in corners.items()}


def _is_plain(site: Site, hole: Hole) -> bool:
    """Say whether the hole is a box with room for its lining: in the concrete, level with the joists, no pipe and no wall round the corner before it."""
    window, wall = hole.opening, site.wall
    x0, x1, low = window.left, window.right, window.sill or ZERO
    high = low + (window.tall or ZERO)
    joists = [wall.height.at(x) for x in (x0, *wall.height.breaks(x0, x1), x1)]
    lining = site.figures.window_buck + site.figures.window_return_foam
    return (
        not hole.remarks
        and least(x1 - x0, high - low) > lining * 2
        and _between_the_walls(site, x0, x1)
        and high <= wall.concrete.least_over(x0, x1)
        and greatest(*joists) - least(*joists) <= site.figures.window_return_foam
        and not any(
            overlap(x0, x1, pipe.left_edge, pipe.right_edge)
            and (pipe.run == "standing" or overlap(low, high, *pipe.heights))
            for pipe in wall.pipes
        )
    )


def _in_foam(site: Site, door: Opening, wide: Length) -> bool:
    """Say whether a jamb stands so deep, under joists so far from level, that its extension would meet the foam over the door."""
    heights = site.wall.height.at(door.left), site.wall.height.at(door.right)
    uneven = greatest(*heights) - least(*heights) > site.figures.frame_play
    return uneven and site.offsets.drywall - wide < site.offsets.foam_face


def _between_the_walls(site: Site, x0: Length, x1: Length) -> bool:
    """Say whether a stretch lies clear of the walls round both corners, drywall and all."""
    return site.left.face <= x0 and x1 <= site.wall.length - site.right.face


def _levels(site: Site, hole: Hole) -> tuple[Level, Level]:
    """Return the inner faces of the buck's sill and head: those of the framed hole, but where the top plate is the header."""
    window = hole.opening
    joists = site.wall.height.at((hole.x0 + hole.x1) // 2)
    lining = site.figures.window_buck + site.figures.window_return_foam
    top = (window.sill or ZERO) + (window.tall or ZERO) - lining
    return hole.bottom or over_slab(lining), under_joists(joists - top)


def _round(
    outer: tuple[Length, Length, Level, Level], wide: Length, tall: Length, thick: Length
) -> Iterator[tuple[str, tuple[Length, Length, Level, Level], Length]]:
    """Yield the four sides of a frame from its outer edges: name, edges, and how long each is; `wide` by `tall` outside."""
    x0, x1, z0, z1 = outer
    yield "head", (x0, x1, z1.up(-thick), z1), wide
    yield "sill", (x0, x1, z0, z0.up(thick)), wide
    yield "left side", (x0, x0 + thick, z0.up(thick), z1.up(-thick)), tall - thick * 2
    yield "right side", (x1 - thick, x1, z0.up(thick), z1.up(-thick)), tall - thick * 2


def _buck(site: Site, hole: Hole) -> Iterator[Part]:
    """Yield the four boards of the buck, each as two side by side where one is not wide enough."""
    figures, window = site.figures, hole.opening
    thick, gap, step = figures.window_buck, figures.window_return_foam, figures.cut_step
    bottom, top = _levels(site, hole)
    outer = (hole.x0 - thick, hole.x1 + thick, bottom.up(-thick), top.up(thick))
    long, tall = ((each or ZERO) - gap * 2 for each in (window.width, window.tall))
    for side, (x0, x1, z0, z1), cut in _round(outer, long, tall, thick):
        wide = least(*_wides(site, hole, side, site.offsets.back))
        boards = max(1, -(-wide.ticks // figures.board_2x12.ticks))
        each = (wide // boards).down_to(step)
        packed = top.off - hole.top.off if side == "head" and hole.plate_is_header else ZERO
        why = saying("part.buck", what=hole.name, side=side)
        if abs(packed) > SIXTEENTH:
            why = saying("part.buck_packed", what=hole.name, side=side, gap=abs(packed))
        for number in range(boards):
            y1 = site.offsets.back - each * number
            box = Box(x0, x1, y1 - each, y1, z0, z1)
            yield _piece(site, hole, Kind.BUCK, _board_for(site, each), box, (cut, each), why)


def _board_for(site: Site, wide: Length) -> Material:
    """Return the narrowest treated board that a piece is ripped from."""
    figures = site.figures
    sold = ((figures.board_2x6, Material.BOARD_6), (figures.board_2x8, Material.BOARD_8))
    return next((board for actual, board in sold if wide <= actual), Material.BOARD_12)


def _return(site: Site, hole: Hole) -> Iterator[Part]:
    """Yield the four strips of the return: as wide as the tunnel is deep, tapered where its corners differ by more than 1/8."""
    figures, window, face = site.figures, hole.opening, site.offsets.drywall
    board = inches(site.basement.drywall).on("basement.drywall")
    lining = (figures.window_buck + figures.window_return_foam) * 2
    outer = (hole.x0, hole.x1, *_levels(site, hole))
    long, tall = ((each or ZERO) - lining for each in (window.width, window.tall))
    for side, (x0, x1, z0, z1), cut in _round(outer, long, tall, board):
        one, other = (wide.down_to(figures.cut_step) for wide in _wides(site, hole, side, face))
        wide = greatest(one, other)
        why = saying("part.return", what=hole.name, side=side)
        if abs(one - other) > EIGHTH:
            first, last = ENDS[side in ("head", "sill")]
            why = saying("part.return_tapered", what=hole.name, side=side, one=one, first=first, other=other, last=last)
        box = Box(x0, x1, face - wide, face, z0, z1)
        yield _piece(site, hole, Kind.RETURN, Material.DRYWALL, box, (cut, wide), why)


def _wides(site: Site, hole: Hole, side: str, front: Length) -> tuple[Length, Length]:
    """Return how far it is from the window's frame to a plane in front of it, at the two ends of a side.

    The depth was read from the concrete itself, which stands out of the string's line or lies behind it.
    """
    window, corners = hole.opening, corners_of(hole.opening)
    found = []
    for (height, across), depth in corners.items():
        on_side = {"head": height == "upper", "sill": height == "lower"}.get(side, side.startswith(across))
        if on_side:
            x = window.left if across == "left" else window.right
            found.append(front - proud(site.wall, x, site.figures) + depth)
    one, other = found
    return one, other


def _piece(
    site: Site, hole: Hole, kind: Kind, material: Material, box: Box, size: tuple[Length, Length], why: Saying
) -> Part:
    """Return one strip, so long and so wide."""
    heights = (value.rests for _, value in (*site.wall.height.points, *site.wall.concrete.points))
    weighed = site.things.union(hole.rests, *heights)
    cut, wide = size
    return Part(kind, site.letter, material, box, cut.down_to(site.figures.cut_step), why, wide=wide, placed_by=weighed)
