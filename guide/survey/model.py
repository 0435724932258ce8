"""The Survey and what stands in it. Every field that comes from an answer names its question with `asked`.

That makes the reading of answers provable in both directions: `wallbrief book lint` compares these names with the book.

Wall coordinates: face the wall from inside the room. x runs from the left concrete corner to the right, y from the
concrete into the room, z from the slab up.

        z |      joists                 H(x) slab to joists
          |  ~~~~~~~~~~~~~~~            C(x) slab to top of concrete
          |  |             |
          0--------------------> x      0 = left concrete corner, L = right one
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from guide.interview.answers import Certainty
from guide.lengths import ZERO, Length, Tape, least
from guide.reference.sayings import Saying
from guide.survey.joists import Joist
from guide.survey.profile import Profile


def asked(ref: str) -> Any:
    """Declare a field that holds the answer to a question, `scope.id`; None when the question does not apply."""
    return field(default=None, metadata={"ref": ref})


@dataclass(frozen=True, slots=True)
class Opening:
    """A window or hatch in the concrete, a new door, a door that is framed already, a place kept free, a beam's end or a
    duct that hangs over it; or a partition.

    A partition is asked for with the openings, since the framing goes by it too, and stands apart in the wall.
    """

    place: str
    kind: str = asked("opening.kind")
    left: Length = asked("opening.left")
    width: Length | None = asked("opening.width")
    free_width: Length | None = asked("opening.free_width")
    over_width: Length | None = asked("opening.over_width")
    over_drop: Length | None = asked("opening.over_drop")
    over_clear: Length | None = asked("opening.over_clear")
    keeps: str | None = asked("opening.keeps")
    thing_wide: Length | None = asked("opening.thing_wide")
    thing_clear: Length | None = asked("opening.thing_clear")
    free_floor: Length | None = asked("opening.free_floor")
    tall: Length | None = asked("opening.tall")
    sill: Length | None = asked("opening.sill")
    depth: Length | None = asked("opening.depth")
    """From the face of the concrete back to the window's own frame, at the upper left corner of its hole."""
    tapers: str | None = asked("opening.tapers")
    depth_upper_right: Length | None = asked("opening.depth_upper_right")
    depth_lower_left: Length | None = asked("opening.depth_lower_left")
    depth_lower_right: Length | None = asked("opening.depth_lower_right")
    well_wide: Length | None = asked("opening.well_wide")
    """0 where the sill lies above the ground."""
    well_out: Length | None = asked("opening.well_out")
    leaf_width: Length | None = asked("opening.leaf_width")
    leaf_height: Length | None = asked("opening.leaf_height")
    hinge: str | None = asked("opening.hinge")
    frame_width: Length | None = asked("opening.frame_width")
    frame_height: Length | None = asked("opening.frame_height")
    jamb: Length | None = asked("opening.jamb")
    twist: Length | None = asked("opening.twist")
    meets: str | None = asked("opening.meets")
    outside: str | None = asked("opening.outside")
    fixed: str | None = asked("opening.fixed")
    fixed_width: Length | None = asked("opening.fixed_width")
    partition_width: Length | None = asked("opening.partition_width")

    @property
    def right(self) -> Length:
        """The right edge, of the hole, the leaf, the frame, the free place or the partition's studs."""
        sizes = (
            self.width,
            self.leaf_width,
            self.frame_width,
            self.free_width,
            self.over_width,
            self.partition_width,
        )
        return self.left + next((size for size in sizes if size), ZERO)

    @property
    def hangs(self) -> bool:
        """Whether it is a beam's end or a duct: it hangs under the joists, and the wall goes on below it."""
        return self.kind == "beam or duct"

    @property
    def kept_clear(self) -> tuple[Length, Length]:
        """From where to where wood stays away from what hangs over the wall."""
        clear = self.over_clear or ZERO
        return self.left - clear, self.right + clear

    @property
    def behind_leaf(self) -> tuple[Length, Length] | None:
        """The stretch of wall that the open leaf of a new door stands before."""
        if self.hinge is None or self.leaf_width is None:
            return None
        if self.hinge == "left":
            return self.left - self.leaf_width, self.left
        return self.right, self.right + self.leaf_width

    @property
    def rests(self) -> frozenset[str]:
        """Every answer that its framing is worked out from."""
        sizes = (
            self.left,
            self.width,
            self.free_width,
            self.over_width,
            self.over_drop,
            self.over_clear,
            self.tall,
            self.sill,
            self.leaf_width,
            self.leaf_height,
            self.frame_width,
            self.frame_height,
            self.partition_width,
        )
        return frozenset({f"{self.place}.kind"}).union(*(size.rests for size in sizes if size is not None))


@dataclass(frozen=True, slots=True)
class Pipe:
    """A pipe or duct in front of the concrete, standing upright or lying along the wall."""

    place: str
    run: str = asked("pipe.run")
    carries: str = asked("pipe.carries")
    flue: str | None = asked("pipe.flue")
    at: Length | None = asked("pipe.at")
    start: Length | None = asked("pipe.from")
    end: Length | None = asked("pipe.to")
    low_left: Length | None = asked("pipe.low_left")
    low_right: Length | None = asked("pipe.low_right")
    flows: str | None = asked("pipe.flows")
    wide: Length = asked("pipe.wide")
    out: Length = asked("pipe.out")
    hubs: str | None = asked("pipe.hubs")
    bare: Length | None = asked("pipe.bare")
    fittings: Profile | None = asked("pipe.fittings")
    """Each fitting's length along the pipe, at its middle."""
    reach: str = asked("pipe.reach")
    way: str | None = asked("pipe.way")
    along: str | None = asked("pipe.along")
    reach_height: Length | None = asked("pipe.reach_height")

    @property
    def left_edge(self) -> Length:
        """The leftmost x that it takes up."""
        return self.at - self.wide // 2 if self.at is not None else self.start or ZERO

    @property
    def right_edge(self) -> Length:
        """The rightmost x that it takes up."""
        return self.at + self.wide // 2 if self.at is not None else self.end or ZERO

    @property
    def back(self) -> Length:
        """How far from the concrete its nearest point is: the outermost point less its thickness, never below 0."""
        gap = self.out - self.wide
        return gap if gap > ZERO else Length(0, gap.rests)

    @property
    def barrel(self) -> Length:
        """How far from the concrete it reaches away from its fittings; where nobody told those, its outermost point."""
        return least(self.out, self.bare) if self.bare is not None and self.fittings is not None else self.out

    def out_over(self, x0: Length, x1: Length) -> Length:
        """Return how far it reaches anywhere between two places: its outermost point where a fitting is, else the bare pipe."""
        points = self.fittings.points if self.fittings is not None else ()
        at_fitting = any(x0 < at + long // 2 and at - long // 2 < x1 for at, long in points)
        return self.out.with_rests(self.barrel.rests) if at_fitting else self.barrel

    @property
    def heights(self) -> tuple[Length, Length]:
        """Its lowest and its highest point over the slab, its fall included, for one that lies along the wall."""
        return self.heights_over(self.left_edge, self.right_edge)

    def heights_over(self, x0: Length, x1: Length) -> tuple[Length, Length]:
        """Return its lowest and its highest point over the slab between two places, for one that lies along the wall."""
        bottom = Profile(((self.left_edge, self.low_left or ZERO), (self.right_edge, self.low_right or ZERO)))
        low, high = sorted((bottom.at(x0), bottom.at(x1)))
        return low.with_rests(high.rests), high.with_rests(low.rests) + self.wide

    @property
    def rests(self) -> frozenset[str]:
        """Every answer that its way past the framing is worked out from."""
        fittings = [size for point in (self.fittings.points if self.fittings else ()) for size in point]
        sizes = (
            self.at, self.start, self.end, self.low_left, self.low_right, self.wide, self.out, self.bare, *fittings,
        )  # fmt: skip
        chosen = {f"{self.place}.{each}" for each in ("way", "along") if getattr(self, each) is not None}
        return frozenset({f"{self.place}.run"}).union(chosen, *(size.rests for size in sizes if size is not None))


@dataclass(frozen=True, slots=True)
class OutletBox:
    """An electrical box, there already or wished for."""

    place: str
    kind: str = asked("box.kind")
    at: Length = asked("box.at")
    height: Length = asked("box.height")
    holds: str = asked("box.holds")


@dataclass(frozen=True, slots=True)
class Fixture:
    """Something that will hang on the finished wall."""

    place: str
    what: str = asked("fixture.what")
    start: Length = asked("fixture.from")
    end: Length = asked("fixture.to")
    low: Length = asked("fixture.low")
    high: Length | None = asked("fixture.high")

    @property
    def rests(self) -> frozenset[str]:
        """Every answer that the wood behind it is placed by."""
        sizes = (self.start, self.end, self.low, self.high)
        return frozenset({f"{self.place}.what"}).union(*(size.rests for size in sizes if size is not None))


_MEETS = {"wall of this job": "framed wall", "framed wall": "framed wall", "open end": "open end"}
"""What the end of a partition is to its framing, by what it meets: its end stud stands against a framed wall, or is free."""


@dataclass(frozen=True, slots=True)
class Wall:
    """One wall as surveyed; where it is a partition its concrete is as high as the joists, flat and out of the way."""

    letter: str
    name: str
    left_joined: str | None
    """The letter of the wall of this job that meets its left end in a corner, if one does."""
    right_joined: str | None
    left_corner: str | None
    """What corner that is: `inside corner` or `outside corner`."""
    right_corner: str | None
    openings: tuple[Opening, ...]
    """All but the partitions."""
    partitions: tuple[Opening, ...]
    pipes: tuple[Pipe, ...]
    boxes: tuple[OutletBox, ...]
    fixtures: tuple[Fixture, ...]
    stands: str | None = asked("wall.stands")
    """`partition`, or `concrete` like None."""
    left_meets: str | None = asked("wall.left_meets")
    right_meets: str | None = asked("wall.right_meets")
    left_wall: str | None = asked("wall.left_wall")
    right_wall: str | None = asked("wall.right_wall")
    openings_count: int = asked("wall.openings")
    pipes_count: int = asked("wall.pipes")
    boxes_count: int = asked("wall.boxes")
    fixtures_count: int = asked("wall.fixtures")
    length: Length = asked("wall.length")
    left: str | None = asked("wall.left")
    right: str | None = asked("wall.right")
    left_framed: Length | None = asked("wall.left_framed")
    right_framed: Length | None = asked("wall.right_framed")
    left_first: str | None = asked("wall.left_first")
    right_first: str | None = asked("wall.right_first")
    left_foam: str | None = asked("wall.left_foam")
    right_foam: str | None = asked("wall.right_foam")
    layout_from: str = asked("wall.layout_from")
    cap: str | None = asked("wall.cap")
    across: Length | None = asked("wall.across")
    left_across: Length | None = asked("wall.left_across")
    height: Profile = asked("wall.height")
    concrete: Profile = asked("wall.concrete")
    string: Profile = asked("wall.string")
    """One reading, the smallest anywhere, or as many as were taken along the wall."""
    lean: Length = asked("wall.lean")
    joists: str = asked("wall.joists")
    joist_spacing: str | None = asked("wall.joist_spacing")
    first_joist: Length | None = asked("wall.first_joist")
    joist_edges: str | None = asked("wall.joist_edges")
    """As it was said; `joists_read` is what that means."""
    parallel_gap: Length | None = asked("wall.parallel_gap")
    shelf: Length = asked("wall.shelf")
    metal: str | None = asked("wall.metal")
    metal_off: Profile | None = asked("wall.metal_off")
    """How far each piece of metal that comes off sticks out of the concrete, at its place; no line runs between them."""
    metal_stays: Profile | None = asked("wall.metal_stays")
    other: str = asked("wall.other")
    joists_read: tuple[Joist, ...] = ()
    """Joists read one by one, from the left; none where they stand evenly from the first one on."""

    @property
    def smallest_string(self) -> Length:
        """The smallest reading of the string: the worst hump."""
        return least(*(reading for _, reading in self.string.points))

    @property
    def left_end(self) -> str:
        """What is at the left end: `inside corner`, `outside corner`, `framed wall` or `open end`."""
        return _MEETS.get(self.left_meets or "") or self.left_corner or self.left or "inside corner"

    @property
    def right_end(self) -> str:
        """What is at the right end: `inside corner`, `outside corner`, `framed wall` or `open end`."""
        return _MEETS.get(self.right_meets or "") or self.right_corner or self.right or "inside corner"

    @property
    def is_partition(self) -> bool:
        """Whether it is a plain partition: no concrete behind it, drywall on both sides, no part of the ring."""
        return self.stands == "partition"

    def met(self, side: str) -> str | None:
        """Return the letter of the wall of this job that one end of a partition meets, as it was said; None for no wall."""
        said = self.left_wall if side == "left" else self.right_wall
        return None if said is None else said.casefold().removeprefix("wall").strip(" .").upper()

    def ref(self, question_id: str) -> str:
        """Return the id under which an answer about this wall is rested on."""
        return f"{self.letter}.{question_id}"

    @property
    def title(self) -> str:
        """The wall's letter, and its name when it has one: `Wall A (north)`."""
        plain = f"wall {self.letter}"
        return f"Wall {self.letter}" if self.name.lower() == plain.lower() else f"Wall {self.letter} ({self.name})"


@dataclass(frozen=True, slots=True)
class Basement:
    """What holds for the whole basement."""

    tape: Tape = asked("basement.tape")
    use: str = asked("basement.use")
    water: str | None = asked("basement.water")
    rains: int | None = asked("basement.rains")
    wet_place: str | None = asked("basement.wet_place")
    cracks: str | None = asked("basement.cracks")
    suspects: str | None = asked("basement.suspects")
    soil: str | None = asked("basement.soil")
    permit: str = asked("basement.permit")
    code: str = asked("basement.code")
    electrical: str | None = asked("basement.electrical")
    office_words: str | None = asked("basement.office_words")
    radon: str = asked("basement.radon")
    flames: str = asked("basement.flames")
    burner_input: int | None = asked("basement.burner_input")
    burner_room: int | None = asked("basement.burner_room")
    rim: str | None = asked("basement.rim")
    joist_depth: Length | None = asked("basement.joist_depth")
    foam_label: str = asked("basement.foam_label")
    foam_weight: str = asked("basement.foam_weight")
    block_material: str = asked("basement.block_material")
    insects: str | None = asked("basement.insects")
    strip: Length | None = asked("basement.strip")
    hangs: str | None = asked("basement.hangs")
    hangs_at: Length | None = asked("basement.hangs_at")
    riser: Length | None = asked("basement.riser")
    slab: str = asked("basement.slab")
    anchors: str = asked("basement.anchors")
    slab_thickness: Length | None = asked("basement.slab_thickness")
    foam: str = asked("basement.foam")
    foam_thickness: Length = asked("basement.foam_thickness")
    batts: str = asked("basement.batts")
    zone: str | None = asked("basement.zone")
    energy: str | None = asked("basement.energy")
    humid: str | None = asked("basement.humid")
    humidity: str | None = asked("basement.humidity")
    heat: str | None = asked("basement.heat")
    heat_price: int | None = asked("basement.heat_price")
    foam_sheet: str = asked("basement.foam_sheet")
    block_reach: str = asked("basement.block_reach")
    sheets: str = asked("basement.sheets")
    drywall: str = asked("basement.drywall")
    stud: str = asked("basement.stud")
    longest_stick: str = asked("basement.longest_stick")
    floor_finish: Length = asked("basement.floor_finish")
    shopping: str = asked("basement.shopping")
    transport: str | None = asked("basement.transport")
    way_in: str | None = asked("basement.way_in")
    rips: str | None = asked("basement.rips")
    foam_edge: str | None = asked("basement.foam_edge")
    on_hand: str | None = asked("basement.on_hand")
    price_file: str | None = asked("basement.price_file")
    yard_lengths: str | None = asked("basement.yard_lengths")
    trim: Length | None = asked("basement.trim")
    culls: int | None = asked("basement.culls")
    """Of ten."""
    first_can: Length | None = asked("basement.first_can")
    first_tube: Length | None = asked("basement.first_tube")
    evenings: str = asked("basement.evenings")
    crew: str | None = asked("basement.crew")
    days: str | None = asked("basement.days")
    helper_day: str | None = asked("basement.helper_day")
    evening_hours: int | None = asked("basement.evening_hours")
    loud_hours: int | None = asked("basement.loud_hours")
    inspection_days: int | None = asked("basement.inspection_days")
    start: str | None = asked("basement.start")
    """The first day, as `2027-03-02`."""
    first_wall_hours: int | None = asked("basement.first_wall_hours")
    """0 while no wall stands."""
    walls: tuple[str, ...] = asked("basement.walls")
    ring: str | None = asked("basement.ring")
    square: str | None = asked("basement.square")
    diagonal_first: Length | None = asked("basement.diagonal_first")
    diagonal_second: Length | None = asked("basement.diagonal_second")

    @property
    def end_trim(self) -> Length:
        """What is sawn off one end of each stick. It is chosen, not taped, so that no cut waits for it to be measured."""
        return ZERO if self.trim is None else Length(self.trim.ticks)


@dataclass(frozen=True, slots=True)
class Problem:
    """Answers that cannot all be true, or that no wall can be built from; the wall is not laid out until one changes."""

    wall: str
    paths: tuple[str, ...]
    """The answers that contradict each other, the one most likely wrong first."""
    saying: Saying


@dataclass(frozen=True)
class Survey:
    """The basement as the answers give it, so far."""

    basement: Basement
    walls: tuple[Wall, ...]
    """The walls that have a length, in the order walked."""
    waiting: tuple[str, ...]
    """Letters of the walls that have no length yet."""
    known: Mapping[str, Certainty]
    """How certain each reading is, by the id that lengths rest on; what was not asked yet is unknown."""
    names: Mapping[str, str]
    """What each id is, in words."""
    problems: tuple[Problem, ...]

    @cached_property
    def round_room(self) -> tuple[Wall, ...]:
        """The walls against the concrete, in the order walked; the others are partitions."""
        return tuple(wall for wall in self.walls if not wall.is_partition)

    @cached_property
    def by_letter(self) -> dict[str, Wall]:
        """The walls by their letter."""
        return {wall.letter: wall for wall in self.walls}

    def given(self, rests: Iterable[str]) -> bool:
        """Say whether every one of these ids was answered, if only with a guess: nothing is just drawn as usual."""
        return all(self.known.get(rest) is not Certainty.UNKNOWN for rest in rests)

    def unsure(self, rests: Iterable[str]) -> tuple[str, ...]:
        """Return those of the ids that nobody has measured: what rests on them is locked."""
        return tuple(sorted(i for i in rests if self.known.get(i, Certainty.UNKNOWN) is not Certainty.MEASURED))
