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
from dataclasses import dataclass
from functools import cached_property

from guide.interview.answers import Certainty
from guide.lengths import ZERO, Length, Tape, least
from guide.reference.sayings import Saying
from guide.survey.joists import Joist
from guide.survey.profile import Profile
from guide.survey.things import Fixture, Opening, OutletBox, Pipe, asked

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
