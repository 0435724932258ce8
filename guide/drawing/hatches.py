"""How each look is drawn in ink: hatch and line weight by the common practice of drafting, readable in black and white.

What is cut through has the heavy outline and the hatch of its material: stipple and stones for concrete, a lattice for
rigid foam, crossed diagonals for wood across its grain, lines for wood along it. What is only seen is white. Tiles are
written in hundredths of a drawing's unit, as everything a drawing is measured in.
"""

from __future__ import annotations

from dataclasses import dataclass

from guide.drawing.shapes import Fill, Look
from guide.drawing.signs import SIGNS

HEAVY, PLAIN, FINE = 150, 70, 35
"""Line weights: the outline of what is cut, of what is seen, and hatching and dimensions."""


@dataclass(frozen=True, slots=True)
class Tile:
    """One tile of a hatch, repeated over an area."""

    wide: int
    tall: int
    path: str
    """The lines of it, as an SVG path in hundredths of a unit."""
    solid: bool = False
    """Its path is filled: dots and grains."""
    weight: int = FINE


def _dots(*places: tuple[int, int]) -> str:
    return " ".join(f"M{x} {y}h90v90h-90z" for x, y in places)


TILES = {
    "concrete": Tile(
        2600, 2600,
        _dots((200, 300), (900, 1500), (1700, 500), (2300, 1900), (400, 2200), (1300, 2400), (2100, 1200), (1000, 700))
        + " M1200 300l300 100l-200 250z M1600 1700l350 50l-250 300z M300 1200l280 -80l-40 320z M2200 2300l240 60l-150 200z",
        solid=True,
    ),
    "concrete seen": Tile(1500, 1500, _dots((200, 300), (950, 150), (550, 850), (1250, 1100), (150, 1300)), solid=True, weight=0),
    "foam": Tile(700, 700, "M0 0L700 700M700 0L0 700"),
    "grain up": Tile(420, 4000, "M110 0q60 1000 0 2000t0 2000M310 0q-40 1300 0 2600t0 1400"),
    "grain level": Tile(4000, 420, "M0 110q1000 60 2000 0t2000 0M0 310q1300 -40 2600 0t1400 0"),
    "plywood": Tile(900, 260, "M0 130h900M450 0v130", weight=30),
    "gypsum": Tile(500, 500, _dots((50, 60), (300, 310)), solid=True, weight=20),
    "rising": Tile(450, 450, "M-50 500L500 -50M-50 50L50 -50M400 500L500 400"),
    "falling": Tile(450, 450, "M-50 -50L500 500M400 -50L500 50M-50 400L50 500"),
    "upright": Tile(300, 300, "M150 0v300"),
    "black": Tile(400, 400, "M0 0h400v400h-400z", solid=True),
}  # fmt: skip
"""Every hatch by name."""


@dataclass(frozen=True, slots=True)
class Ink:
    """How one look is drawn."""

    says: str
    """What it is, for the legend."""
    tile: str = ""
    """The name of its hatch; empty for white."""
    weight: int = PLAIN
    crossed: bool = False
    """Diagonals from corner to corner: wood cut across its grain, or a hole that goes through."""


_WORDS = {
    Look.FOAM: "foam behind the studs", Look.JOIST_END: "joist, cut through", Look.STUD: "stud",
    Look.CONCRETE: "concrete", Look.CONCRETE_CUT: "concrete, cut", Look.FOAM_CUT: "foam, cut",
}  # fmt: skip
"""What the legend says where the word of the text drawing is too short for one."""

_INKS = {
    Look.CONCRETE: ("concrete seen", PLAIN, False),
    Look.CONCRETE_CUT: ("concrete", HEAVY, False),
    Look.FOAM: ("", FINE, False),
    Look.FOAM_CUT: ("foam", PLAIN, False),
    Look.OPENING: ("", PLAIN, True),
    Look.OPENING_CUT: ("", PLAIN, False),
    Look.LEAF: ("", PLAIN, False),
    Look.JOIST_END: ("", HEAVY, True),
    Look.JOIST_SIDE: ("", PLAIN, False),
    Look.JOIST_BLOCK: ("falling", PLAIN, False),
    Look.HOUSE_SILL: ("", HEAVY, True),
    Look.STUD: ("", PLAIN, False),
    Look.PACK: ("grain up", PLAIN, False),
    Look.PLATE: ("", PLAIN, False),
    Look.SPAN: ("", PLAIN, False),
    Look.BUCK: ("grain level", PLAIN, False),
    Look.CAP: ("plywood", PLAIN, False),
    Look.FIREBLOCK: ("rising", PLAIN, False),
    Look.CHASE: ("", HEAVY, False),
    Look.PIPE: ("upright", PLAIN, False),
    Look.OUTLET: ("black", PLAIN, False),
    Look.PROPOSED: ("", FINE, True),
    Look.BACKING: ("grain up", PLAIN, False),
    Look.GAP: ("", FINE, False),
    Look.GASKET: ("black", FINE, False),
    Look.DRYWALL: ("gypsum", PLAIN, False),
    Look.SHEET: ("", PLAIN, False),
    Look.FRAMING: ("rising", HEAVY, False),
    Look.FRAMED_WALL: ("falling", HEAVY, False),
}


def ink(fill: Fill) -> Ink:
    """Return how a shape is drawn: by its look, and for wood by how it is cut."""
    tile, weight, crossed = _INKS[fill.look]
    says = _WORDS.get(fill.look) or SIGNS[fill.look].says or fill.look.value
    if fill.cut == "across":
        return Ink(f"{says}, cut across", tile, HEAVY, crossed=True)
    if fill.cut == "along":
        middle = (fill.x0 + fill.x1) // 2
        upright = fill.top.at(middle) - fill.bottom.at(middle) > fill.x1 - fill.x0
        return Ink(f"{says}, cut along", "grain up" if upright else "grain level", HEAVY)
    return Ink(says, tile, weight, crossed)
