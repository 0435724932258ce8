"""What stands on a wall, hangs on it or comes through it, as the layout needs it: openings, pipes, boxes, fixtures.

Values and no more. Every field names the question whose answer it is; places run from the left concrete corner.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from guide.lengths import ZERO, Length, least
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
