"""What is known of a wall before its first stud: how far it stands off, what its ends are, where the plates run."""

from __future__ import annotations

from dataclasses import dataclass

from guide.layout.parts import Box, End, Kind, Level, Material, Offsets, Part, over_slab, under_joists
from guide.lengths import Length
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

    @property
    def over_plate(self) -> Length:
        """What lies between the top plate and the joists: nothing, or the cap."""
        return self.figures.plywood if self.cap_case == 2 else self.figures.plywood * 0

    @property
    def head(self) -> Level:
        """Underside of the top plate."""
        return under_joists(self.over_plate + self.figures.stud_thick)

    @property
    def room_walk(self) -> frozenset[str]:
        """The answers that say what stands in the wall: another thing there could move any stud."""
        return frozenset({self.wall.ref("openings"), self.wall.ref("pipes")})

    def stud_cut(self, x: Length) -> Length:
        """Return the length of a stud whose centre is at x: plate to plate, rounded down to the cutting step."""
        return (self.head.at(self.wall, x) - self.foot).down_to(self.figures.cut_step)

    def upright(self, kind: Kind, x0: Length, why: Saying) -> Part:
        """Return a full-height stud standing on edge, its left face at x0."""
        x1 = x0 + self.figures.stud_thick
        cut = self.stud_cut((x0 + x1) // 2)
        box = Box(x0, x1, self.offsets.back, self.offsets.face, over_slab(self.foot), over_slab(self.foot + cut))
        return Part(kind, self.letter, Material.STUD, box, cut, why, placed_by=self.room_walk)
