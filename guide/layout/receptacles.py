"""Wall spaces as the electrical code breaks and joins them, what of them no outlet reaches, and the fewest that would.

A wall space is a run of wall along the floor. A doorway and a leaf that slides end it; a window, a place kept free and
fixed glass do not, and it runs on round corners. Where a wall of the space round a corner is not in this job, nothing
beyond the corner is counted.

The fewest are exact, not a rule of thumb. A box hangs beside a stud, so that there are only so many places, each with a
stretch of floor it reaches. The first point that nothing reaches has to be reached by one of them, and of those the one
that reaches furthest leaves the least to do: whatever set of places is given, what another one reaches it reaches too.
Places that are not free (a pipe, a fireblock, a door's leaf) are left out beforehand and change nothing in that. Round a
room without a door each place that reaches the first point is tried. Among choices as few, one is taken that keeps the
furthest point as near as whole inches allow, so that a mark may be a little off.

The module owns this: `proposed` and the outlets that are there together reach every point that any place could.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import reduce

from guide.layout.parts import Kind, Layout, Part, WallLayout
from guide.lengths import ZERO, Length, greatest, inches, least
from guide.reference.codes import CodeProfile
from guide.survey.things import Opening

Span = tuple[int, int]
"""Ticks along a wall space, from and to."""
Reach = tuple[int, int, int]
"""What a place reaches of a wall space, from and to, and the number of the place."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """A part of a wall along the floor, in wall coordinates."""

    wall: str
    start: Length
    end: Length

    @property
    def wide(self) -> Length:
        """How long it is."""
        return self.end - self.start


@dataclass(frozen=True, slots=True)
class WallSpace:
    """One run of wall along the floor, from the left, walls as walked."""

    stretches: tuple[Stretch, ...]
    ring: bool = False
    """It runs all round the room: the end of the last stretch meets the start of the first."""
    goes_on: bool = False
    """It runs on round a corner into a wall that is not laid out."""

    @property
    def wide(self) -> Length:
        """How long it is, round all its corners."""
        return reduce(Length.__add__, (stretch.wide for stretch in self.stretches), ZERO)

    def at(self, wall: str, x: Length) -> int | None:
        """Return where a place on a wall is, in ticks from the left end of the space; None outside of it."""
        before = 0
        for stretch in self.stretches:
            if stretch.wall == wall and stretch.start <= x <= stretch.end:
                return before + (x - stretch.start).ticks
            before += stretch.wide.ticks
        return None

    def back(self, span: Span) -> Iterator[Stretch]:
        """Yield what a span is on the walls it runs along."""
        before = 0
        for each in self.stretches:
            low, high = max(span[0] - before, 0), min(span[1] - before, each.wide.ticks)
            if low < high:
                yield Stretch(each.wall, each.start + Length(low), each.start + Length(high))
            before += each.wide.ticks


def wall_spaces(layout: Layout, code: CodeProfile) -> tuple[WallSpace, ...]:
    """Return the wall spaces that need outlets, walls as walked; none in a basement that is only used for storage."""
    if layout.survey.basement.use == "storage":
        return ()
    spaces = (space for run in runs_round(layout) for space in _spaces(layout, run))
    return tuple(space for space in spaces if space.goes_on or space.wide >= code.wall_space.length)


def unreached(layout: Layout, code: CodeProfile) -> tuple[Stretch, ...]:
    """Return every stretch of floor further from an outlet of its wall space than the code says, from the left."""
    found = (
        stretch
        for space in wall_spaces(layout, code)
        for span in _bare(layout, code, space)
        for stretch in space.back(span)
    )
    return tuple(sorted(found, key=lambda stretch: (stretch.wall, stretch.start)))


def proposed(layout: Layout, code: CodeProfile) -> tuple[Part, ...]:
    """Return the fewest outlets that, with those given, reach every point that can be reached, from the left."""
    found: list[Part] = []
    for space in wall_spaces(layout, code):
        places = [(part, at) for part in _places(layout) if (at := space.at(part.wall, part.centre)) is not None]
        chosen = fewest(space, _bare(layout, code, space), [at for _, at in places], code.receptacle_reach.length)
        found += [places[number][0] for number in chosen]
    return tuple(sorted(found, key=lambda part: (part.wall, part.box.x0)))


def counts(part: Part, code: CodeProfile) -> bool:
    """Say whether a box counts: an outlet, and not too high."""
    middle = (part.box.z0.off + part.box.z1.off) // 2
    return ("holds", "outlet") in part.why.values and middle <= code.receptacle_high.length


def _places(layout: Layout) -> Iterator[Part]:
    return (part for wall in layout.walls for part in wall.outlet_places)


# ------------------------------------------------------------------------------------------------- the spaces


def runs_round(layout: Layout) -> Iterator[tuple[tuple[WallLayout, ...], bool]]:
    """Yield the walls that follow each other round corners, and whether the last meets the first."""
    seen: set[str] = set()
    for wall in layout.walls:
        if wall.letter in seen:
            continue
        first, ring = wall, False
        while not ring and (before := layout.by_letter.get(first.wall.left_joined or "")):
            first, ring = before, before is wall
        run = [first]
        while (after := layout.by_letter.get(run[-1].wall.right_joined or "")) and after is not first:
            run.append(after)
        seen |= {each.letter for each in run}
        yield tuple(run), ring


def _spaces(layout: Layout, run: tuple[tuple[WallLayout, ...], bool]) -> Iterator[WallSpace]:
    walls, ring = run
    groups: list[list[Stretch]] = []
    open_end = False
    for wall in walls:
        start, end = _ends(wall)
        pieces = list(_pieces(layout, wall))
        for piece in pieces:
            if open_end and piece.start == start:
                groups[-1].append(piece)
            else:
                groups.append([piece])
            open_end = False
        open_end = bool(pieces) and pieces[-1].end == end
    if not groups:
        return
    starts_open = groups[0][0].start == _ends(walls[0])[0] and groups[0][0].wall == walls[0].letter
    if ring and open_end and starts_open:
        if len(groups) == 1:
            yield WallSpace(tuple(groups[0]), ring=True)
            return
        groups[0] = groups.pop() + groups[0]
        open_end = starts_open = False
    for number, group in enumerate(groups):
        before = number == 0 and starts_open and not ring and walls[0].left.what != "open end"
        after = number == len(groups) - 1 and open_end and not ring and walls[-1].right.what != "open end"
        yield WallSpace(tuple(group), goes_on=before or after)


def _ends(wall: WallLayout) -> tuple[Length, Length]:
    """Return where the finished wall starts and ends: at the drywall across it, or past an outside corner."""
    left = wall.plate_start + wall.left.first_sheet if wall.left.what == "outside corner" else wall.left.face
    right = wall.plate_end - wall.right.first_sheet if wall.right.what == "outside corner" else None
    return left, wall.wall.length - wall.right.face if right is None else right


def _pieces(layout: Layout, wall: WallLayout) -> Iterator[Stretch]:
    """Yield what of a wall its doors and partitions leave along the floor."""
    at, end = _ends(wall)
    gaps = [gap for opening in wall.wall.openings if (gap := _gap(opening, layout.survey.basement.floor_finish))]
    gaps += [(each.left, each.right) for each in wall.wall.partitions]
    for low, high in [*sorted(gaps), (end, end)]:
        if at < least(low, end):
            yield Stretch(wall.letter, at, least(low, end))
        at = greatest(at, high)


def _gap(opening: Opening, floor: Length) -> tuple[Length, Length] | None:
    """Return where an opening ends a wall space: a door but for its fixed glass, or a hole that reaches the floor."""
    if opening.kind == "kept free" or opening.hangs or (opening.kind == "window" and (opening.sill or ZERO) > floor):
        return None
    glass = least(opening.fixed_width or ZERO, opening.right - opening.left)
    left = opening.left + glass if opening.fixed == "left" else opening.left
    right = opening.right - glass if opening.fixed == "right" else opening.right
    return left, right


# ------------------------------------------------------------------------------------------------- what reaches them


def _bare(layout: Layout, code: CodeProfile, space: WallSpace) -> list[Span]:
    """Return what of a space no outlet reaches that is there or wished for."""
    outlets = [part for wall in layout.walls for part in wall.of(Kind.OUTLET) if counts(part, code)]
    at = [at for part in outlets if (at := space.at(part.wall, part.centre)) is not None]
    reached = reached_from(space, at, code.receptacle_reach.length)
    return without([(0, space.wide.ticks)], reached)


def reached_from(space: WallSpace, places: Sequence[int], reach: Length) -> list[Reach]:
    """Return what each place reaches; round a ring that may be two spans."""
    whole = space.wide.ticks
    found = []
    for number, at in enumerate(places):
        low, high = at - reach.ticks, at + reach.ticks
        found.append((max(low, 0), min(high, whole), number))
        if space.ring and low < 0:
            found.append((max(low + whole, 0), whole, number))
        if space.ring and high > whole:
            found.append((0, min(high - whole, whole), number))
    return found


def without(bare: Iterable[Span], reached: Iterable[Reach]) -> list[Span]:
    """Return what is left of spans without those reached."""
    left = list(bare)
    for low, high, _ in reached:
        cut = ((a, b) for start, end in left for a, b in ((start, min(end, low)), (max(start, high), end)))
        left = sorted({(a, b) for a, b in cut if a < b})
    return left


def fewest(space: WallSpace, bare: list[Span], places: Sequence[int], reach: Length) -> list[int]:
    """Return the numbers of the fewest places that reach what can be reached, the furthest point as near as may be."""
    if not bare:
        return []

    def with_reach(inch: int) -> tuple[int, list[int]]:
        within = least(reach, inches(str(inch)))
        return _chosen(space, bare, reached_from(space, places, within))

    most = -(-reach.ticks // inches("1").ticks)
    missed, chosen = with_reach(most)
    low, high = 0, most  # `high` inches are enough for so few
    while high - low > 1:
        middle = (low + high) // 2
        now, other = with_reach(middle)
        if (now, len(other)) == (missed, len(chosen)):
            high, chosen = middle, other
        else:
            low = middle
    return chosen


def _chosen(space: WallSpace, bare: list[Span], reaches: list[Reach]) -> tuple[int, list[int]]:
    """Return how much nothing reaches, and the fewest places that reach the rest."""
    if not space.ring:
        return _along(bare, reaches)
    whole, first = space.wide.ticks, bare[0][0]
    turned = sorted(span for low, high in bare for span in _turned(low - first, high - first, whole))
    round_it = sorted((low, high, n) for a, b, n in reaches for low, high in _turned(a - first, b - first, whole))
    starts = sorted({n for low, high, n in round_it if low == 0 < high})
    tries = []
    for start in starts:
        missed, rest = _along(without(turned, [each for each in round_it if each[2] == start]), round_it)
        tries.append((missed, len(rest), [start, *rest]))
    if not tries:
        return _along(turned, round_it)
    missed, _, chosen = min(tries)
    return missed, chosen


def _turned(low: int, high: int, whole: int) -> Iterator[Span]:
    """Yield a span of a ring as it reads from another start, cut in two where it runs over that."""
    low, high = low % whole, low % whole + high - low
    yield low, min(high, whole)
    if high > whole:
        yield 0, high - whole


def _along(bare: list[Span], reaches: list[Reach]) -> tuple[int, list[int]]:
    """Walk from the left; at the first point that nothing reaches take the place that reaches it and furthest on."""
    missed, chosen = 0, list[int]()
    while bare:
        at = bare[0][0]
        over = [(high, -number) for low, high, number in reaches if low <= at < high]
        if over:
            to, number = max(over)
            chosen.append(-number)
        else:
            to = min((low for low, _, _ in reaches if low > at), default=bare[0][1])
            to = min(to, bare[0][1])
            missed += to - at
        bare = without(bare, [(at, to, 0)])
    return missed, chosen
