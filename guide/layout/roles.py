"""Which wall runs through at each corner, weighed over all walls at once: is there anything better than the longer one?

The layout lets the longer wall run through and leaves it at that on purpose: walls are built one by one, and what is told
of a wall still unmeasured must neither turn a corner whose plates lie already nor lock the length of a plate three walls
away. What could be won by other roles is therefore searched here, exactly, and offered; the person says it to have it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from itertools import product

from guide.layout.corners import Corner, corners_of
from guide.layout.engine import SHORTEST_PLATE, site_of
from guide.layout.heights import case_of
from guide.layout.offsets import stand_off
from guide.layout.parts import Layout
from guide.layout.studs import frame
from guide.reference.figures import Figures
from guide.reference.priorities import ranked

Role = bool | None
"""At a corner: the wall whose right end is in it runs through (True) or butts.

None where no two walls of the job meet, and where both are mitred.
"""
Rank = tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Roles:
    """The corners of a job, who runs through at each, and who might."""

    corners: tuple[Corner, ...]
    """In the order walked."""
    other: tuple[tuple[Rank, Rank], ...]
    """For each corner: what its two walls come to together as they are, and with the roles at this corner changed."""
    now: Rank
    """What all walls come to as they are."""
    best: Rank
    """What they come to at best; corners that the person decided stay as they are."""
    change: tuple[Corner, ...]
    """The corners to change for that, none where nothing is won."""


def roles_of(layout: Layout, figures: Figures) -> Roles:
    """Return the corners of a layout weighed by the priorities: each wall is framed for every role it could have.

    A wall has two ends, so four framings at most are enough for any number of walls. Of equally good ones that with the
    fewest changes is best, then that in which longer walls run through.
    """
    found, laid = corners_of(layout.survey), {wall.letter for wall in layout.round_room}
    corners = {
        key: each
        for key, each in found.items()
        if each.left_wall in laid and each.right_wall in laid and each.measured.joint != "mitred"
    }
    if not corners:
        return Roles((), (), (), (), ())
    table = framed_by_roles(layout, corners, figures)
    now = {w.letter: tuple(_role(corners.get((w.letter, side))) for side in SIDES) for w in layout.round_room}
    in_order = [corners[letter, "right"] for letter in now if (letter, "right") in corners]
    whole, best = _total(table, now), _best(layout, corners, table)
    won = _total(table, best) < whole
    return Roles(
        tuple(in_order),
        tuple(_both_ways(corner, table, now) for corner in in_order),
        whole,
        _total(table, best) if won else whole,
        tuple(corner for corner in in_order if won and best[corner.left_wall][1] != _role(corner)),
    )


SIDES = ("left", "right")
_Ends = tuple[Role, ...]
"""The roles at the two corners of a wall, the left one first."""
_Table = Mapping[str, Mapping[_Ends, Rank]]


def _role(corner: Corner | None) -> Role:
    return None if corner is None else corner.through == corner.left_wall


def _with_role(corner: Corner, role: Role) -> Corner:
    return corner if role is None else replace(corner, through=corner.left_wall if role else corner.right_wall)


def _total(table: _Table, roles: Mapping[str, _Ends]) -> Rank:
    return _sum([table[letter][ends] for letter, ends in roles.items()])


def _sum(ranks: Iterable[Rank]) -> Rank:
    return tuple(map(sum, zip(*ranks, strict=True)))


def _both_ways(corner: Corner, table: _Table, now: Mapping[str, _Ends]) -> tuple[Rank, Rank]:
    """Return what the two walls of a corner come to as it is, and turned round."""
    one, two = corner.left_wall, corner.right_wall
    turned = {one: (now[one][0], not now[one][1]), two: (not now[two][0], now[two][1])}
    return _total(table, {each: now[each] for each in (one, two)}), _total(table, turned)


def framed_by_roles(layout: Layout, corners: Mapping[tuple[str, str], Corner], figures: Figures) -> _Table:
    """Return what every wall comes to for each pair of roles; one that leaves no wall to frame is worse than all others."""
    survey, every = layout.survey, corners_of(layout.survey)
    figures = figures.for_stud(survey.basement.stud)
    standing = {wall.letter: stand_off(wall, survey.basement, figures) for wall in survey.walls}
    cases = {wall.letter: case_of(wall, figures) for wall in survey.walls}
    table: dict[str, dict[_Ends, Rank]] = {}
    for wall in layout.round_room:
        at_ends = [corners.get((wall.letter, side)) for side in SIDES]
        table[wall.letter] = {}
        for roles in product(*((None,) if each is None else (True, False) for each in at_ends)):
            turned = {
                (wall.letter, side): _with_role(corner, role)
                for side, corner, role in zip(SIDES, at_ends, roles, strict=True)
                if corner is not None
            }
            site = site_of(wall.wall, survey, every | turned, standing, cases, layout.code, figures)
            framed = site.end - site.start >= SHORTEST_PLATE
            counts = frame(site, standing[wall.letter].passed)[0].counts if framed else {"edges": NEVER}
            table[wall.letter][roles] = ranked(counts)
    return table


NEVER = 10**6
"""Sheet edges that no wall has."""


def _best(layout: Layout, corners: Mapping[tuple[str, str], Corner], table: _Table) -> dict[str, _Ends]:
    """Return the best roles of all walls.

    Goes along the walls keeping, for either role at the last corner, the best way to it; a ring is gone round once for
    each role at the corner that closes it. So the walls may be as many as they like.
    """
    first = corners.get((layout.round_room[0].letter, "left"))
    found: list[tuple[Rank, dict[str, _Ends]]] = []
    for closing in _options(layout, first):
        ways: dict[Role, tuple[Rank, dict[str, _Ends]]] = {closing: ((), {})}
        for wall in layout.round_room:
            corner = corners.get((wall.letter, "right"))
            reached: dict[Role, tuple[Rank, dict[str, _Ends]]] = {}
            for before, (rank, roles) in ways.items():
                for after in _options(layout, corner):
                    ends = (before, after)
                    worth = (*table[wall.letter][ends], *_habit(layout, corner, after))
                    way = (_sum([rank, worth]) if rank else worth, {**roles, wall.letter: ends})
                    reached[after] = min(reached.get(after, way), way, key=lambda each: each[0])
            ways = reached
        found += [ways[closing]] if first is not None else list(ways.values())
    return min(found, key=lambda each: each[0])[1]


def _options(layout: Layout, corner: Corner | None) -> tuple[Role, ...]:
    """Return the roles that are free to take: one where the person said it, both where it was left to us."""
    if corner is None:
        return (None,)
    said = layout.survey.by_letter[corner.left_wall].right_first
    return (_role(corner),) if said in ("this wall", "other wall") else (True, False)


def _habit(layout: Layout, corner: Corner | None, role: Role) -> Rank:
    """Rank equally good roles: those that are there already first, then those in which the longer wall runs through."""
    if corner is None:
        return (0, 0)
    through = layout.survey.by_letter[corner.left_wall if role else corner.right_wall]
    return int(role != _role(corner)), -through.length.ticks
