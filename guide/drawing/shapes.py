"""What a drawing is made of, so that text, screen and paper all render the same one.

A `Drawing` lies in its own plane: `x` runs to the right, `z` upward, both in true lengths. Its shapes are in the order
they are laid down, later ones over earlier ones, and every one of them lies within the drawing's extents. Nothing here
knows how big a character is; a renderer decides what fits.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

from guide.lengths import Length
from guide.survey.profile import Profile

Side = Literal["middle", "right", "left"]
"""Where words stand: over their place, or to the right or the left of it."""
Cut = Literal["", "across", "along"]
"""How the plane of a drawing cuts a piece of wood: not at all, across its grain, or along it."""
Edge = Literal["below", "above", "left", "right"]
"""Beside which edge of the drawing something stands."""


LOCKED = "locked"
"""Stands in place of a size that rests on something nobody measured."""


class Look(StrEnum):
    """What a filled shape is, for the renderer to choose a sign, a colour or a hatch for."""

    CONCRETE = "concrete"
    CONCRETE_CUT = "concrete, cut through"
    FOAM = "foam"
    """Seen from the room: all of the wall behind the studs."""
    FOAM_CUT = "foam, cut through"
    OPENING = "opening"
    OPENING_CUT = "opening, cut through"
    LEAF = "door leaf"
    JOIST_END = "joist, cut through"
    JOIST_SIDE = "joist, seen from its side"
    JOIST_BLOCK = "block between joists"
    HOUSE_SILL = "sill of the house"
    STUD = "stud"
    PACK = "flat corner stud"
    PLATE = "plate"
    SPAN = "header or sill"
    BUCK = "window buck"
    CAP = "cap"
    FIREBLOCK = "fireblock"
    CHASE = "box round a pipe"
    PIPE = "pipe"
    BACKING = "backing block"
    OUTLET = "electrical box"
    PROPOSED = "outlet proposed"
    """A place where one would do; no part of the wall."""
    GAP = "gap behind the studs"
    GASKET = "gasket"
    DRYWALL = "drywall"
    SHEET = "sheet of drywall"
    """Seen from the room: all of the wall before the studs."""
    FRAMING = "framing seen from above"
    FRAMED_WALL = "wall that stands already"


@dataclass(frozen=True, slots=True)
class Fill:
    """A filled shape with upright sides; a rectangle, unless its bottom or top follows a sloping line."""

    look: Look
    x0: Length
    x1: Length
    bottom: Profile
    top: Profile
    name: str = ""
    """The id of the part or the place of the thing it shows; empty for what has none."""
    label: str = ""
    """A short label: what is pencilled on the part."""
    cut: Cut = ""
    """For wood: how it is cut; what a look calls cut through is so without this."""


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line that shows how far a dimension reaches, level or upright."""

    x0: Length
    z0: Length
    x1: Length
    z1: Length
    reach: Length | None = None
    """For a level line: the height of what it measures, from which a fine renderer leads thin lines to its ends."""


@dataclass(frozen=True, slots=True)
class Label:
    """Words at a place, the fullest wording first; a renderer takes the first that fits, or none."""

    x: Length
    z: Length
    texts: tuple[str, ...]
    size: Length | None = None
    """A length to print after the words, in the unit of the person's tape."""
    side: Side = "middle"
    fixed: bool = False
    """It stands level with its place or not at all, since it belongs to a line there."""
    name: str = ""
    """The fill it is the mark of: a renderer that has written that inside the fill leaves this out."""


@dataclass(frozen=True, slots=True)
class Mark:
    """A word or a size in a row above or under the drawing, level with a place along it."""

    row: str
    """The name of its row; marks of one name stand in one line."""
    x: Length
    texts: tuple[str, ...] = ()
    """The fullest wording first."""
    size: Length | None = None
    name: str = ""
    """The fill it belongs to: it stands over or under wherever that is drawn."""
    above: bool = False


@dataclass(frozen=True, slots=True)
class Ruler:
    """A rule along the bottom, zero at x0; a renderer divides it as the person's tape is divided."""

    x0: Length
    x1: Length


@dataclass(frozen=True, slots=True)
class Chain:
    """Dimensions in one line beside the drawing, from place to place; or running, each from the first place.

    Only a renderer fine enough for an eighth of an inch draws it. Chains of one edge stand in their order, the first
    nearest to the drawing.
    """

    edge: Edge
    places: tuple[Length, ...]
    """Two or more, rising; along the bottom or the top x, at a side heights."""
    says: str
    """What is measured, in words."""
    running: bool = False


Shape = Fill | Line | Label | Mark | Ruler | Chain


@dataclass(frozen=True, slots=True)
class Drawing:
    """One drawing; every shape lies within `left` to `right` and `bottom` to `top`."""

    title: str
    left: Length
    right: Length
    bottom: Length
    top: Length
    shapes: tuple[Shape, ...]
    across: str
    """What the rule along the bottom counts from, in words."""
    up: str
    """What the heights count from, in words."""
    ceiling: Profile
    """A line that thin things crowd under: a renderer in coarse steps draws it level and keeps a little room over it."""
    stretch: int
    """How many times wider than true it may be drawn, where half an inch has to show beside eight feet."""

    @property
    def wide(self) -> Length:
        """Its horizontal extent."""
        return self.right - self.left

    @property
    def tall(self) -> Length:
        """Its vertical extent."""
        return self.top - self.bottom


def level(z: Length) -> Profile:
    """Return a level line."""
    return Profile(((z - z, z),))


def rectangle(
    look: Look, x0: Length, x1: Length, z0: Length, z1: Length, name: str = "", label: str = "", cut: Cut = ""
) -> Fill:
    """Return a filled rectangle."""
    return Fill(look, x0, x1, level(z0), level(z1), name, label, cut)


def polygon(
    look: Look, points: Sequence[tuple[Length, Length]], name: str = "", label: str = "", cut: Cut = ""
) -> Fill:
    """Return a filled shape of three points or more that bulges nowhere inward, in whatever order they come."""
    left = sorted(points, key=lambda point: (point[0].ticks, point[1].ticks))
    right = sorted(points, key=lambda point: (point[0].ticks, -point[1].ticks))
    bottom, top = _outer(left, 1), _outer(right, -1)
    return Fill(look, left[0][0], left[-1][0], Profile(bottom), Profile(top), name, label, cut)


def _outer(points: Iterable[tuple[Length, Length]], way: int) -> tuple[tuple[Length, Length], ...]:
    """Return the lower (1) or upper (-1) edge round points that come from the left, the outermost of each upright first."""
    edge: list[tuple[Length, Length]] = []
    for x, z in points:
        if edge and edge[-1][0] == x:
            continue
        while len(edge) > 1:
            (xa, za), (xb, zb) = edge[-2:]
            bend = (xb - xa).ticks * (z - za).ticks - (zb - za).ticks * (x - xa).ticks
            if bend * way > 0:
                break
            edge.pop()
        edge.append((x, z))
    return tuple(edge)


def drawing(
    title: str, shapes: Iterable[Shape], *, across: str, up: str, ceiling: Profile | None = None, stretch: int = 1
) -> Drawing:
    """Return a drawing just large enough for its shapes. Raises ValueError when there are none.

    Without a ceiling its own top is one.
    """
    laid = tuple(shapes)
    xs, zs = zip(*(point for shape in laid for point in _corners(shape)), strict=True)
    across_all, upright = ([at for at in ats if at is not None] for ats in (xs, zs))
    bottom, top = min(upright), max(upright)
    return Drawing(
        title, min(across_all), max(across_all), bottom, top, laid, across, up, ceiling or level(top), stretch
    )


def _corners(shape: Shape) -> list[tuple[Length | None, Length | None]]:
    match shape:
        case Fill(_, x0, x1, bottom, top):
            places = [x0, x1, *bottom.breaks(x0, x1), *top.breaks(x0, x1)]
            return [(x, edge.at(x)) for x in places for edge in (bottom, top)]
        case Line(x0, z0, x1, z1):
            return [(x0, z0), (x1, z1)]
        case Label(x, z):
            return [(x, z)]
        case Mark(_, x):
            return [(x, None)]
        case Ruler(x0, x1):
            return [(x0, None), (x1, None)]
        case Chain(edge, places):
            level_with = edge in ("below", "above")
            return [(at, None) if level_with else (None, at) for at in places]
