"""Plates and their joints: bottom pieces between doors and pipes, top pieces with every joint under a joist or a block."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from guide.layout.ends import squared
from guide.layout.parts import Box, Decision, Kind, Material, Part, Remark, over_slab, under_joists
from guide.layout.site import Site
from guide.layout.studs import Framing
from guide.lengths import ZERO, Length, inches, least
from guide.reference.sayings import saying
from guide.reference.stock import load_stock
from guide.survey.yard import yard_lengths

FEWEST_SUPPORTS = 3
"""Joists that each piece of top plate is nailed to, where it can be helped. Common practice."""


@dataclass(frozen=True)
class _Rules:
    """What a joint of the top plate has to keep; the later sets give up one rule after the other."""

    supports: int
    apart: bool
    shortest: bool
    anywhere: bool = False


_RULES = (
    _Rules(FEWEST_SUPPORTS, apart=True, shortest=True),
    _Rules(1, apart=True, shortest=True),
    _Rules(1, apart=False, shortest=True),
    _Rules(0, apart=False, shortest=False),
    _Rules(0, apart=False, shortest=False, anywhere=True),
)


def plates_of(
    site: Site, framing: Framing, supports: Sequence[Length]
) -> tuple[list[Part], list[Decision], list[Remark]]:
    """Return all pieces of both plates. Doors break the bottom plate; pipes and columns in the line of the studs break both."""
    longest = inches(f"{site.basement.longest_stick} ft").on("basement.longest_stick")
    at_yard = yard_lengths(load_stock().item[f"treated_{site.basement.stud}"], site.basement.yard_lengths or "")
    stock = least(longest, at_yard[-1]) - site.basement.end_trim
    pipes = [(s.gap0, s.gap1) for s in framing.stacks if s.parts_plates]
    doors = [(hole.x0, hole.x1) for hole in framing.holes if hole.is_door]
    parts: list[Part] = []
    joints: list[Length] = []
    for x0, x1 in _runs(site, [*pipes, *doors]):
        ends = _bottom_ends(site, x0, x1, stock)
        joints += ends[1:-1]
        rests = x0.rests | x1.rests | stock.rests
        parts += [_piece(site, Kind.BOTTOM_PLATE, a, b, rests) for a, b in pairwise(ends)]
    decisions: list[Decision] = []
    remarks: list[Remark] = []
    overhead = least(stock, site.figures.overhead_longest)
    for x0, x1 in top_runs(site, framing):
        ends, used = _top_ends(site, x0, x1, overhead, supports, joints)
        if len(ends) > 2 or used:
            decisions.append(_joint_decision(site, ends, used, len(decisions)))
        if used >= 2:
            remarks.append(Remark(saying("remark.top_joint", rule=used), ends[1] if len(ends) > 2 else x0))
        rests = x0.rests | x1.rests | stock.rests
        if len(ends) > 2:
            over = (site.wall.parallel_gap or ZERO).rests | site.wall.shelf.rests
            rests = rests.union(over, *(at.rests for at in supports))
        parts += [_piece(site, Kind.TOP_PLATE, a, b, rests) for a, b in pairwise(ends)]
    return parts, decisions, remarks


def top_runs(site: Site, framing: Framing) -> list[tuple[Length, Length]]:
    """Return the stretches of top plate: from end to end, broken where a pipe, a column or a beam is in the line of the studs."""
    broken = [(h.x0, h.x1) for h in framing.holes if h.opening.keeps == "column" or h.opening.hangs]
    return _runs(site, [*((stack.gap0, stack.gap1) for stack in framing.stacks if stack.parts_plates), *broken])


def _runs(site: Site, breaks: list[tuple[Length, Length]]) -> list[tuple[Length, Length]]:
    """Return the stretches of plate left between the breaks; what no stud could stand on is left out."""
    runs = []
    at = site.start
    for x0, x1 in sorted(breaks, key=lambda pair: pair[0]):
        runs.append((at, min(x0, site.end)))
        at = max(at, x1)
    runs.append((at, site.end))
    if site.left.slant.ticks or site.right.slant.ticks:
        slants = site.left.slant, site.right.slant
        runs = [squared(run, (site.start, site.end), slants)[0] for run in runs]
    starts, ends = site.stands
    return [(x0, x1) for x0, x1 in runs if min(x1, ends) - max(x0, starts) >= site.figures.stud_thick]


def _piece(site: Site, kind: Kind, x0: Length, x1: Length, rests: frozenset[str]) -> Part:
    """Return one piece of plate. How a run is parted rests on both its ends, and on whatever stands in the wall."""
    figures = site.figures
    rests |= site.things
    if kind is Kind.BOTTOM_PLATE:
        material, low, high = Material.TREATED, over_slab(figures.gasket), over_slab(site.foot)
    else:
        material, low, high = Material.STUD, site.head, under_joists(site.over_plate)
    box = Box(x0, x1, site.offsets.back, site.offsets.face, low, high)
    why = saying(f"part.{kind.value.replace(' ', '_')}", start=x0 - site.start, end=x1 - site.start)
    cut = (x1 - x0).down_to(figures.cut_step)
    slants = site.left.slant if x0 == site.start else ZERO, site.right.slant if x1 == site.end else ZERO
    return Part(kind, site.letter, material, box, cut.with_rests(rests), why, placed_by=rests, slants=slants)


def _bottom_ends(site: Site, x0: Length, x1: Length, stock: Length) -> list[Length]:
    """Return where the bottom pieces of a run end: whole sticks from the left; a short rest takes from the one before."""
    shortest = site.figures.plate_least_piece
    count = max(1, -(-(x1 - x0).ticks // stock.ticks))
    ends = [x0 + stock * number for number in range(count)] + [x1]
    if count > 1 and ends[-1] - ends[-2] < shortest:
        ends[-2] = ends[-1] - shortest
    return ends


def _top_ends(
    site: Site, x0: Length, x1: Length, stock: Length, supports: Sequence[Length], joints: Sequence[Length]
) -> tuple[list[Length], int]:
    """Return where the top pieces of a run end, and which set of rules gave it (0 is every rule kept).

    Fewest pieces first, then each piece from the left as long as it can be.
    """
    if x1 - x0 <= stock:
        return [x0, x1], 0
    for number, rules in enumerate(_RULES):
        places = [at for at in supports if x0 < at < x1]
        if rules.anywhere:
            places = _bottom_ends(site, x0, x1, stock)[1:-1]
        if rules.apart:
            places = [at for at in places if all(abs(at - joint) >= site.figures.plate_joint_apart for joint in joints)]
        ends = _longest_first(site, [x0, *places, x1], stock, supports, rules)
        if ends:
            return ends, number
    raise AssertionError("a joint anywhere always works")


def _longest_first(
    site: Site, ends: list[Length], stock: Length, supports: Sequence[Length], rules: _Rules
) -> list[Length]:
    """Return the ends of the fewest pieces between the first and the last of `ends`, or nothing when they do not reach."""
    fewest: dict[int, int] = {len(ends) - 1: 0}
    for start in range(len(ends) - 2, -1, -1):
        ways = [
            fewest[end] + 1
            for end in range(start + 1, len(ends))
            if end in fewest and _allowed(site, ends[start], ends[end], stock, supports, rules)
        ]
        if ways:
            fewest[start] = min(ways)
    if 0 not in fewest:
        return []
    chosen, at = [0], 0
    while at < len(ends) - 1:
        at = max(
            end
            for end in range(at + 1, len(ends))
            if fewest.get(end) == fewest[at] - 1 and _allowed(site, ends[at], ends[end], stock, supports, rules)
        )
        chosen.append(at)
    return [ends[index] for index in chosen]


def _allowed(site: Site, a: Length, b: Length, stock: Length, supports: Sequence[Length], rules: _Rules) -> bool:
    figures = site.figures
    if b - a > stock or (rules.shortest and b - a < figures.plate_least_piece):
        return False
    bearing = figures.joist_thick // 2
    return sum(a - bearing <= at <= b + bearing for at in supports) >= rules.supports


def _joint_decision(site: Site, ends: list[Length], used: int, number: int) -> Decision:
    marks = [end - site.start for end in ends[1:-1]]
    said = saying(
        f"decision.top_joints_{min(used, 3)}",
        count=len(marks),
        first=marks[0] if marks else ZERO,
        apart=site.figures.plate_joint_apart,
    )
    return Decision(f"{site.letter}.top_joints{number or ''}", site.letter, said)
