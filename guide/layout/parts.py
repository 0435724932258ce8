"""What a layout is made of: parts that are boxes, the decisions behind them, and the walls that hold them.

Every part is a box in wall coordinates: x from the left concrete corner to the right, y from the concrete into the
room, z upward. A slab slopes and joists are level, so a height is a `Level`: so much over the slab, over the top of the
concrete, or over the underside of the joists, at whatever x is asked.

      y  room          z
      ^   +-----+      ^    Level(JOISTS, -1 1/2)  --------  bottom of the top plate
      |   |stud |      |    Level(SLAB, 1 5/8)     ________  top of the bottom plate
      |   +-----+      |
      +----------> x   +----------> x
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import cached_property

from guide.layout.ends import End, Offsets, Point, slanted
from guide.lengths import ZERO, Length
from guide.reference.codes import CodeProfile
from guide.reference.sayings import Saying
from guide.survey.model import Survey, Wall


class Datum(StrEnum):
    """What a height is measured from."""

    SLAB = "slab"
    CONCRETE = "concrete"
    JOISTS = "joists"


@dataclass(frozen=True, slots=True)
class Level:
    """A height over (or, negative, under) a datum that may slope along the wall."""

    datum: Datum
    off: Length

    def at(self, wall: Wall, x: Length) -> Length:
        """Return the height over the slab at x."""
        if self.datum is Datum.SLAB:
            return self.off
        return (wall.concrete if self.datum is Datum.CONCRETE else wall.height).at(x) + self.off

    def up(self, by: Length) -> Level:
        """Return the level that much higher."""
        return Level(self.datum, self.off + by)


def over_slab(off: Length) -> Level:
    """Return a level over the slab."""
    return Level(Datum.SLAB, off)


def under_joists(off: Length) -> Level:
    """Return a level so far under the underside of the joists."""
    return Level(Datum.JOISTS, -off)


@dataclass(frozen=True, slots=True)
class Box:
    """The room a part takes up: x0 < x1, y0 < y1, z0 below z1 everywhere between x0 and x1."""

    x0: Length
    x1: Length
    y0: Length
    y1: Length
    z0: Level
    z1: Level


class Kind(StrEnum):
    """What a part is, in the trade's words."""

    BOTTOM_PLATE = "bottom plate"
    TOP_PLATE = "top plate"
    STUD = "stud"
    PACK = "corner pack stud"
    KING = "king stud"
    TRIMMER = "trimmer"
    HEADER = "header"
    SILL = "sill"
    CRIPPLE = "cripple"
    FOAM = "foam"
    CAP = "cap strip"
    CAP_LAP = "cap lap"
    LEDGE = "ledge strip"
    LEDGE_LAP = "ledge lap"
    FIREBLOCK = "fireblock"
    UPPER_BLOCK = "upper fireblock"
    JOIST_BLOCK = "joist block"
    RIM = "rim foam"
    CHASE_POST = "chase post"
    CHASE_RUNG = "chase rung"
    BACKING = "backing block"
    BUCK = "window buck"
    OUTLET = "electrical box"
    DRYWALL = "drywall sheet"
    RETURN = "window return"
    EXTENSION = "jamb extension"


MARKS = {
    Kind.BOTTOM_PLATE: "BP", Kind.TOP_PLATE: "TP", Kind.STUD: "", Kind.PACK: "P", Kind.KING: "K", Kind.TRIMMER: "T",
    Kind.HEADER: "H", Kind.SILL: "S", Kind.CRIPPLE: "C", Kind.FOAM: "f", Kind.CAP: "cap", Kind.CAP_LAP: "lap", Kind.LEDGE: "L", Kind.LEDGE_LAP: "Llap", Kind.UPPER_BLOCK: "U",
    Kind.FIREBLOCK: "F", Kind.JOIST_BLOCK: "J", Kind.RIM: "r", Kind.CHASE_POST: "X", Kind.CHASE_RUNG: "R", Kind.BACKING: "B", Kind.BUCK: "W", Kind.OUTLET: "O",
    Kind.DRYWALL: "D", Kind.RETURN: "V", Kind.EXTENSION: "E",
}  # fmt: skip
"""What is pencilled on a piece: the wall's letter, this, and a number from the left. Studs have the number alone."""

FULL_HEIGHT = (Kind.STUD, Kind.PACK, Kind.KING)
"""Parts that stand from plate to plate."""


class Material(StrEnum):
    """What a part is cut from; the names of `prompts_data/stock.toml`."""

    STUD = "2x4"
    TREATED = "2x4 treated"
    SMALL_STUD = "2x3"
    SMALL_TREATED = "2x3 treated"
    BOARD_6 = "2x6 treated"
    BOARD_8 = "2x8 treated"
    BOARD_12 = "2x12 treated"
    TRIM = "1x6"
    FOAM = "foam"
    PLYWOOD = "plywood"
    BOX = "box"
    DRYWALL = "drywall"


BOARDS = (Material.BOARD_6, Material.BOARD_8, Material.BOARD_12)
"""Treated boards, ripped to the width of what is cut from them."""

LUMBER = (Material.STUD, Material.TREATED, Material.SMALL_STUD, Material.SMALL_TREATED, *BOARDS, Material.TRIM)
"""What is cut from sticks."""


@dataclass(frozen=True, slots=True)
class Fastening:
    """How a part is held: so many of one fastener, at these places along it where they are marked out."""

    fastener: str
    """A name of `prompts_data/fasteners.toml`."""
    count: int
    at: tuple[Length, ...] = ()
    """x of each in wall coordinates, when they are marked out; empty when the rule in the data says where."""


@dataclass(frozen=True, slots=True)
class Part:
    """One piece of the wall."""

    kind: Kind
    wall: str
    material: Material
    box: Box
    cut: Length
    """The length to cut, already rounded; it rests on what the size rests on."""
    why: Saying
    wide: Length | None = None
    """The width to rip or cut to, for sheet goods and ripped pieces; None is the stock's own width."""
    placed_by: frozenset[str] = frozenset()
    """Answers that a decision weighed in placing it, besides those its box rests on."""
    notches: tuple[Box, ...] = ()
    """What is taken out of it: boxes inside its own."""
    lies: bool = False
    """Its sheet's length runs along the wall: `wide` lies along the sheet then, and `cut` across it."""
    slants: Point = (ZERO, ZERO)
    """How much further in its left and its right end lie at the room side than at the concrete side; below 0 further out.

    The box reaches from long point to long point, and so does the cut.
    """
    fastenings: tuple[Fastening, ...] = ()
    id: str = ""
    """Stable name: wall, kind and number from the left, such as `A.stud.7`; empty until the wall is complete."""
    mark: str = ""
    """What is pencilled on the piece: `A7`."""

    @property
    def along(self) -> Length:
        """Its size along the sheet or stick it is cut from."""
        return self.wide if self.lies and self.wide else self.cut

    @property
    def across(self) -> Length | None:
        """Its size across the sheet it is cut from; None is the stock's own width."""
        return self.cut if self.lies else self.wide

    @property
    def size_rests(self) -> frozenset[str]:
        """The answers its size rests on: one of them not measured locks the cut."""
        return self.cut.rests | (self.wide.rests if self.wide else frozenset())

    @property
    def place_rests(self) -> frozenset[str]:
        """The answers its place along the wall rests on: one of them not measured locks the mark."""
        return self.box.x0.rests | self.placed_by

    @property
    def plan(self) -> tuple[Point, Point, Point, Point]:
        """Its corners from above, (x, y): along the concrete side from the left, then back along the room side."""
        return slanted((self.box.x0, self.box.x1), (self.box.y0, self.box.y1), self.slants)

    @property
    def centre(self) -> Length:
        """The middle of its box along the wall."""
        return (self.box.x0 + self.box.x1) // 2


@dataclass(frozen=True, slots=True)
class Decision:
    """A choice the engine made: what and because, and what it beat."""

    id: str
    """Stable name: wall and subject, such as `A.foam_left`."""
    wall: str
    saying: Saying
    beat: tuple[Saying, ...] = ()
    """What it could have been, and what that would have cost."""


@dataclass(frozen=True, slots=True)
class Remark:
    """Something the engine could not make right, for the checks to report: a sentence and where along the wall."""

    saying: Saying
    x: Length


@dataclass(frozen=True)
class WallLayout:
    """One wall, laid out."""

    wall: Wall
    offsets: Offsets
    left: End
    right: End
    plate_start: Length
    """x of the left end of the plates."""
    plate_end: Length
    zero_side: str
    """`left` or `right`: where the first drywall sheet starts."""
    zero: Length
    """x where that sheet starts; stud centres are whole spacings from it."""
    cap_case: int
    """1: the cap lies on the concrete; 2: it runs under the joists, over the top plate; 3: so it does, and a ledge lies on the
    concrete, which ends far below."""
    foam_first: bool
    """The foam cannot be lifted in behind a plate that is down: it goes up before the plate."""
    sheet_edges: tuple[Length, ...]
    """x of the upright drywall joints, each once, whichever row they are in."""
    sheets: str
    """How the drywall hangs: `lying` or `standing`."""
    parts: tuple[Part, ...]
    decisions: tuple[Decision, ...]
    remarks: tuple[Remark, ...]
    outlet_places: tuple[Part, ...]
    """Where one more outlet at the usual height would have room beside a stud; none of them is built."""

    @property
    def letter(self) -> str:
        """The wall's letter."""
        return self.wall.letter

    @property
    def plate(self) -> Length:
        """The length of the plates."""
        return self.plate_end - self.plate_start

    @property
    def slanted(self) -> bool:
        """Whether an end of the plates is sawn off square."""
        return bool(self.left.slant.ticks or self.right.slant.ticks)

    def of(self, *kinds: Kind) -> tuple[Part, ...]:
        """Return the parts of these kinds, from the left."""
        return tuple(part for part in self.parts if part.kind in kinds)

    def sheets_on(self, *, far: bool = False) -> tuple[Part, ...]:
        """Return the drywall toward the room, or that on the far side of a partition, which is faced from there."""
        return tuple(part for part in self.of(Kind.DRYWALL) if (part.box.y1 <= self.offsets.back) is far)

    @property
    def chases(self) -> tuple[Part, ...]:
        """The treated foot of each box round pipes, from the left: it spans the box."""
        treated = (Material.TREATED, Material.SMALL_TREATED)
        return tuple(part for part in self.of(Kind.CHASE_RUNG) if part.material in treated)

    def mark_of(self, x: Length) -> Length:
        """Return x as it is marked on the plates: running from their left end."""
        return x - self.plate_start


@dataclass(frozen=True)
class Layout:
    """Every wall that could be laid out."""

    survey: Survey
    walls: tuple[WallLayout, ...]
    code: CodeProfile
    """The figures it was laid out by, the office's own among them."""

    @cached_property
    def round_room(self) -> tuple[WallLayout, ...]:
        """The walls against the concrete, in the order walked; the others are partitions."""
        return tuple(wall for wall in self.walls if not wall.wall.is_partition)

    @cached_property
    def by_letter(self) -> dict[str, WallLayout]:
        """The walls by their letter."""
        return {wall.letter: wall for wall in self.walls}

    @cached_property
    def parts(self) -> dict[str, Part]:
        """Every part by its id."""
        return {part.id: part for wall in self.walls for part in wall.parts}


def overlap(low: Length, high: Length, other_low: Length, other_high: Length) -> bool:
    """Say whether two open stretches share anything."""
    return low < other_high and other_low < high


def numbered(letter: str, parts: Iterable[Part]) -> tuple[Part, ...]:
    """Give parts their ids and marks, each kind numbered from the left, in the order of `Kind`."""
    order = list(Kind)
    ranked = sorted(parts, key=lambda p: (order.index(p.kind), p.box.x0, p.box.z0.datum, p.box.z0.off, p.box.y0))
    counts = dict.fromkeys(Kind, 0)
    done = []
    for part in ranked:
        counts[part.kind] += 1
        number = counts[part.kind]
        name = f"{letter}.{part.kind.value.replace(' ', '_')}.{number}"
        done.append(replace(part, id=name, mark=f"{letter}{MARKS[part.kind]}{number}"))
    return tuple(done)
