"""What is known of a wall before its first stud: how far it stands off, what its ends are, where the plates run."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from guide.layout.ends import End, Offsets
from guide.layout.heights import cap_meets_plate, ledges_on
from guide.layout.parts import Box, Kind, Level, Material, Part, over_slab, overlap, under_joists
from guide.lengths import ZERO, Length, greatest, least
from guide.reference.codes import CodeProfile
from guide.reference.figures import Figures
from guide.reference.sayings import Saying
from guide.survey.model import Basement, Wall


@dataclass(frozen=True)
class Site:
    """One wall, ready to be framed."""

    wall: Wall
    basement: Basement
    figures: Figures
    code: CodeProfile
    offsets: Offsets
    cap_case: int
    left: End
    right: End
    start: Length
    """x of the left end of the plates."""
    end: Length
    """x of their right end."""

    @property
    def letter(self) -> str:
        """The wall's letter."""
        return self.wall.letter

    @property
    def foot(self) -> Length:
        """Top of the bottom plate over the slab: gasket and plate."""
        return self.figures.gasket + self.figures.stud_thick

    @cached_property
    def over_plate(self) -> Length:
        """What lies between the top plate and the joists: nothing, or the cap."""
        thick = self.figures.plywood if self.cap_case != 1 else ZERO
        said = set() if self.wall.cap in (None, "you choose") else {self.wall.ref("cap")}
        return thick.with_rests(cap_meets_plate(self.wall, self.figures).rests | said)

    @cached_property
    def head(self) -> Level:
        """Underside of the top plate."""
        return under_joists(self.over_plate + self.figures.stud_thick)

    @cached_property
    def ledges(self) -> tuple[tuple[Length, Length], ...]:
        """The stretches of concrete on which a ledge lies."""
        return ledges_on(self.wall, self.figures) if self.cap_case == 3 else ()

    def on_ledge(self, x: Length) -> bool:
        """Say whether a ledge lies at a place."""
        return any(x0 <= x <= x1 for x0, x1 in self.ledges)

    @property
    def stands(self) -> tuple[Length, Length]:
        """Between which places studs can stand: the ends of the plates, or the short points of their slanted ends."""
        return self.start + abs(self.left.slant), self.end - abs(self.right.slant)

    @property
    def run(self) -> tuple[Length, Length]:
        """Where fire can run behind the studs: between the concrete corners, at an outside corner to the plate's end."""
        return least(ZERO, self.start), greatest(self.wall.length, self.end)

    @property
    def room_walk(self) -> frozenset[str]:
        """The answers that say how much stands in the wall: another thing there could move any stud."""
        openings = frozenset({self.wall.ref("openings")})
        return openings if self.wall.is_partition else openings | {self.wall.ref("pipes")}

    @cached_property
    def things(self) -> frozenset[str]:
        """The answers that say what stands in the wall, where, and between which ends.

        The layout is chosen as a whole, so everything placed by it rests on them: a pipe can turn it round.
        """
        openings = (opening.rests for opening in (*self.wall.openings, *self.wall.partitions))
        pipes = (pipe.rests for pipe in self.wall.pipes)
        ends = (self.start.rests, self.end.rests, self.offsets.back.rests)
        head = self.over_plate.rests if self.wall.openings else frozenset[str]()  # whether the plate is the header
        return self.room_walk.union(*ends, *openings, *pipes, head)

    def near(self, x0: Length, x1: Length) -> frozenset[str]:
        """Return the answers that say what is within one stud spacing of a stretch: things on the wall, and its ends."""
        reach = self.figures.stud_spacing
        found = frozenset[str]()
        for end in (self.start, self.end):
            if overlap(x0 - reach, x1 + reach, end, end):
                found |= end.rests
        for opening in (*self.wall.openings, *self.wall.partitions):
            if overlap(x0 - reach, x1 + reach, opening.left, opening.right):
                found |= opening.rests
        for pipe in self.wall.pipes:
            if overlap(x0 - reach, x1 + reach, pipe.left_edge, pipe.right_edge):
                found |= pipe.rests
        return found

    def stud_cut(self, x: Length) -> Length:
        """Return the length of a stud whose centre is at x: plate to plate, rounded down to the cutting step."""
        return (self.head.at(self.wall, x) - self.foot).down_to(self.figures.cut_step)

    def upright(self, kind: Kind, x0: Length, why: Saying) -> Part:
        """Return a full-height stud standing on edge, its left face at x0."""
        x1 = x0 + self.figures.stud_thick
        cut = self.stud_cut((x0 + x1) // 2)
        box = Box(x0, x1, self.offsets.back, self.offsets.face, over_slab(self.foot), over_slab(self.foot + cut))
        rests = self.room_walk | self.near(x0, x1)
        return Part(kind, self.letter, Material.STUD, box, cut, why, placed_by=rests)
