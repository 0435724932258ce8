"""Where sheets of drywall may end: on wood, fewest pieces first, no joint under the joint of the row above."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from guide.layout.openings import Stretch
from guide.layout.parts import Box, Kind, Level, Material, Part, under_joists
from guide.layout.site import Site
from guide.layout.studs import Framing
from guide.lengths import ZERO, Length, least

WOOD = (Kind.STUD, Kind.KING, Kind.TRIMMER, Kind.CRIPPLE, Kind.PACK, Kind.HEADER, Kind.SILL, Kind.CHASE_POST)
"""What is flush with the room face of the studs, besides the plates, or with the front of a box."""
UPRIGHT = (Kind.STUD, Kind.KING, Kind.TRIMMER, Kind.CRIPPLE, Kind.PACK, Kind.CHASE_POST)


@dataclass(frozen=True)
class Row:
    """One row of sheets."""

    top: Length
    """Its top edge, so far under the joists."""
    tall: Length
    """How high a whole sheet is in it."""
    longest: Length
    """How long a whole sheet is in it."""


@dataclass(frozen=True)
class Sheeting:
    """A framed wall as its drywall sees it."""

    site: Site
    framing: Framing

    @cached_property
    def weighed(self) -> frozenset[str]:
        """What the places of all joints are chosen by."""
        heights = (value.rests for _, value in self.site.wall.height.points)
        corners = self.start.rests | self.end.rests | self.site.offsets.face.rests
        return self.site.things.union({"basement.sheets"}, corners, *heights)

    @cached_property
    def start(self) -> Length:
        """Where the drywall of the wall starts."""
        return self.site.start + self.site.left.first_sheet

    @cached_property
    def end(self) -> Length:
        """Where it ends."""
        return self.site.end - self.site.right.first_sheet

    @cached_property
    def holes(self) -> tuple[tuple[Length, Length, Level, Level], ...]:
        """The framed holes: from, to, bottom and top; of a door the bottom lies under every sheet."""
        deep = under_joists(self.site.figures.sheet_long * 3)
        return tuple((hole.x0, hole.x1, hole.bottom or deep, hole.top) for hole in self.framing.holes)

    @cached_property
    def fronts(self) -> tuple[Box, ...]:
        """The feet of the boxes round pipes that are wider than a bay: sheets hang on them too, smaller ones take offcuts."""
        rungs = (part for part in self.framing.parts if part.kind is Kind.CHASE_RUNG)
        bay = self.site.figures.stud_spacing + self.site.figures.stud_thick
        return tuple(p.box for p in rungs if p.material is Material.TREATED and p.box.x1 - p.box.x0 > bay)

    def out_at(self, x0: Length, x1: Length) -> Length:
        """Return how far from the concrete the back of the drywall is between two places."""
        fronts = (front.y1 for front in self.fronts if front.x0 <= x0 and x1 <= front.x1)
        return next(fronts, self.site.offsets.face)

    @cached_property
    def boxed(self) -> tuple[Stretch, ...]:
        """Where a box round a pipe, or the pipe itself, stands through the face of the wall."""
        rungs = (part for part in self.framing.parts if part.kind is Kind.CHASE_RUNG)
        spans = [(foot.box.x0, foot.box.x1) for foot in rungs if foot.material is Material.TREATED]
        bare = [(s.x0, s.x1) for s in self.framing.stacks if s.way == "box"]
        return (*spans, *(each for each in bare if not any(x0 <= each[0] and each[1] <= x1 for x0, x1 in spans)))

    def tall_over(self, row: Row, x0: Length, x1: Length) -> Length:
        """Return how high a piece of a row between two places is: a whole sheet, or what the floor leaves of it."""
        figures = self.site.figures
        over = self.site.wall.height.least_over(x0, x1) - row.top - figures.drywall_floor_gap
        return least(row.tall, over).down_to(figures.drywall_step)

    def tall_at(self, row: Row, x: Length) -> Length:
        """Return how high a row is at one place, never below 0."""
        tall = self.tall_over(row, x, x)
        return tall if tall > ZERO else ZERO

    def runs(self, row: Row) -> Iterator[Stretch]:
        """Yield the stretches of a row between what parts it wholly: openings as high as the row, boxes, pipes, partitions."""
        spare = self.site.figures.drywall_spare
        breaks = [*self.boxed, *((each.left, each.right) for each in self.site.wall.partitions)]
        for x0, x1, low, high in self.holes:
            tall = self.tall_over(row, x0, x1)
            if low.off - spare <= -(row.top + tall) and -row.top <= high.off + spare:
                breaks.append((x0, x1))
        at = self.start
        for x0, x1 in sorted(breaks):
            if x0 - at >= self.site.figures.edge_bearing_least:
                yield at, min(x0, self.end)
            at = max(at, x1)
        if self.end - at >= self.site.figures.edge_bearing_least:
            yield at, self.end

    def bare_ends(self, row: Row, start: Length, end: Length) -> Iterator[Length]:
        """Yield the ends of a run that have no wood behind them.

        Round an outside corner the wood is the other wall's; where a corner pack was dropped that is said already.
        """
        bearing = self.site.figures.edge_bearing_least
        for x, low, high, at_end, whose in (
            (start, start, start + bearing, start == self.start, self.site.left),
            (end, end - bearing, end, end == self.end, self.site.right),
        ):
            elsewhere = at_end and (whose.what == "outside corner" or whose.through)
            if not elsewhere and not self.backed(row, low, high):
                yield x

    def backed(self, row: Row, x0: Length, x1: Length) -> bool:
        """Say whether wood is behind a row from x0 to x1 all the way up, but for holes and gaps too low to frame."""
        site, wall, x = self.site, self.site.wall, (x0 + x1) // 2
        joists = wall.height.at(x).ticks
        high = joists - row.top.ticks
        low = high - self.tall_at(row, x).ticks
        cover = [(0, site.foot.ticks), (joists + site.head.off.ticks, joists)]
        cover += [(part.box.z0.at(wall, x).ticks, part.box.z1.at(wall, x).ticks) for part in self._wood(x0, x1)]
        cover += [
            (joists + bottom.off.ticks, joists + top.off.ticks)
            for h0, h1, bottom, top in self.holes
            if h0 < x1 and x0 < h1
        ]
        at = low
        for bottom, top in sorted(cover):
            if bottom - at > site.figures.cripple_least.ticks and at < high:
                return False
            at = max(at, top)
        return True

    def _wood(self, x0: Length, x1: Length) -> Iterator[Part]:
        return (p for p in self.framing.parts if p.kind in WOOD and p.box.x0 <= x0 and x1 <= p.box.x1)

    @cached_property
    def centres(self) -> tuple[Length, ...]:
        """The middles of all uprights, each once, from the left."""
        found = {part.centre.ticks: part.centre for part in self.framing.parts if part.kind in UPRIGHT}
        return tuple(found[ticks] for ticks in sorted(found))


@dataclass(frozen=True, order=True)
class _Way:
    """Joints from the first sheet as far as they go; the smaller one is the better one."""

    rank: tuple[int, int, int, int, int]
    """Joints without wood, joints under one of the row above, pieces, pieces shorter than a bay, and how much nearer
    than half a sheet the joints are to those above."""
    far: tuple[int, ...]
    """How far each joint is from the start, negative: long pieces first."""


def joints_of(
    sheeting: Sheeting, row: Row, run: Stretch, above: Sequence[Length]
) -> tuple[tuple[Length, ...], tuple[Length, ...]]:
    """Return the joints of a run of sheets, from the left, and those of them that no wood is behind.

    Where no upright is within reach of a whole sheet, a joint stands on the layout's spacing without one.
    """
    start, end = run
    if end - start <= row.longest:
        return (), ()
    bearing, leftward = sheeting.site.figures.edge_bearing_least, sheeting.framing.zero_side == "right"
    wood = [x for x in sheeting.centres if start < x < end and sheeting.backed(row, x - bearing, x + bearing)]
    found = _fewest(sheeting, row, run, [(x, False) for x in wood], above)
    if found is None:
        step = sheeting.site.figures.stud_spacing
        every = [start + step * number for number in range(1, (end - start).ticks // step.ticks + 1)]
        if leftward:
            every = [end - (x - start) for x in every]
        air = [x for x in every if start < x < end and x not in wood]
        found = _fewest(sheeting, row, run, [*((x, False) for x in wood), *((x, True) for x in air)], above)
        assert found is not None, "a joint at every spacing always reaches"
        return tuple(sorted(found)), tuple(sorted(set(found) & set(air)))
    return tuple(sorted(found)), ()


def _fewest(
    sheeting: Sheeting, row: Row, run: Stretch, places: Sequence[tuple[Length, bool]], above: Sequence[Length]
) -> list[Length] | None:
    """Return the best joints among places, each with whether it lacks wood; None when no whole sheet reaches between."""
    start, end = run
    leftward = sheeting.framing.zero_side == "right"
    whole, longest, bay = (end - start).ticks, row.longest.ticks, sheeting.site.figures.stud_spacing.ticks
    nodes = sorted((((end - x) if leftward else (x - start)).ticks, x, bare) for x, bare in places)
    best: list[tuple[int, _Way, list[Length]]] = [(0, _Way((0, 0, 0, 0, 0), ()), [])]
    for at, x, bare in nodes:
        near = min((abs((x - joint).ticks) for joint in above), default=whole)
        adds = (int(bare), int(near < bay), 1, 0, max(0, longest // 2 - near))
        ways = [
            (_Way(_plus(way.rank, adds, at - before < bay), (*way.far, -at)), [*joints, x])
            for before, way, joints in best
            if at - before <= longest
        ]
        if ways:
            best.append((at, *min(ways, key=lambda each: each[0])))
    done = [
        (_Way(_plus(way.rank, (0, 0, 1, 0, 0), whole - at < bay), way.far), joints)
        for at, way, joints in best
        if whole - at <= longest
    ]
    return min(done, key=lambda each: each[0])[1] if done else None


def _plus(
    rank: tuple[int, int, int, int, int], adds: tuple[int, int, int, int, int], short: bool
) -> tuple[int, int, int, int, int]:
    bare, under, pieces, slivers, near = (a + b for a, b in zip(rank, adds, strict=True))
    return bare, under, pieces, slivers + short, near
