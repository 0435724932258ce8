"""Fasteners: the rules of the data turned into a count, and marked places, for each part."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from guide.layout.parts import Fastening, Kind, Part
from guide.layout.site import Site
from guide.lengths import Length
from guide.reference.stock import FasteningRule, load_fasteners

BUTT_END = "end stud of a butt wall"
"""The rule for a stud that is nailed to the corner pack of the wall round the corner, besides its own."""

STANDING = (Kind.STUD, Kind.KING, Kind.TRIMMER, Kind.CRIPPLE)
"""Parts that may stand on the bottom plate."""


def fastened(site: Site, part: Part, supports: Sequence[Length], parts: Sequence[Part]) -> Part:
    """Return the part with every fastening that the data gives its kind; `parts` are all parts of the wall."""
    kinds = {part.kind.value, BUTT_END} if _butts(site, part) else {part.kind.value}
    rules = [
        rule for rule in load_fasteners().rule if rule.kind in kinds and rule.anchors in (None, site.basement.anchors)
    ]
    return replace(part, fastenings=tuple(_fastening(site, part, rule, supports, parts) for rule in rules))


def _butts(site: Site, part: Part) -> bool:
    """Say whether a part is the end stud that is nailed to the corner pack of the wall round the corner."""
    if part.kind is not Kind.STUD:
        return False
    left, right = part.box.x0 == site.stands[0], part.box.x1 == site.stands[1]
    return (left and site.left.through is False) or (right and site.right.through is False)


def _fastening(
    site: Site, part: Part, rule: FasteningRule, supports: Sequence[Length], parts: Sequence[Part]
) -> Fastening:
    if rule.how == "marked":
        places = _off_studs(site, part, rule.spacing_length, parts)
        return Fastening(rule.fastener, len(places) * rule.count, places)
    if rule.how == "per_support":
        bearing = site.figures.joist_thick // 2
        over = tuple(at for at in supports if part.box.x0 - bearing <= at <= part.box.x1 + bearing)
        return Fastening(rule.fastener, len(over) * rule.count, over)
    if rule.how == "over_uprights":
        behind = _uprights_behind(part, parts)
        return Fastening(rule.fastener, (-(-part.cut.ticks // rule.spacing_length.ticks) + 1) * behind * rule.count)
    if rule.how == "along":
        return Fastening(rule.fastener, (-(-part.cut.ticks // rule.spacing_length.ticks) + 1) * rule.count)
    return Fastening(rule.fastener, rule.count)


def _uprights_behind(sheet: Part, parts: Sequence[Part]) -> int:
    """Return how many uprights a sheet crosses or ends on; short studs over and under one opening count as one."""
    box = sheet.box
    places = {
        part.box.x0.ticks
        for part in parts
        if part.kind in (*STANDING, Kind.PACK) and part.box.x0 < box.x1 and box.x0 < part.box.x1
    }
    return len(places)


def _off_studs(site: Site, plate: Part, spacing: Length, parts: Sequence[Part]) -> tuple[Length, ...]:
    """Return the marked places of a plate's fasteners, each moved off the foot of an upright that would stand on it.

    They are first spaced closer by what the two of them next to each other could move apart.
    """
    off, figures = site.figures.anchor_off_stud, site.figures
    furthest = figures.stud_thick // 2 + off
    uprights = [
        (part.box.x0 - off, part.box.x1 + off) for part in parts if part.kind in STANDING and part.box.y0 < plate.box.y1
    ]
    places = []
    for x in marked_places(plate.box.x0, plate.box.x1, end=figures.anchor_end, spacing=spacing - furthest * 2):
        under = next(((x0, x1) for x0, x1 in uprights if x0 < x < x1), None)
        if under is not None and under[1] - under[0] <= furthest * 2:
            x = min(under, key=lambda edge: (abs(edge - x), -edge.ticks)).with_rests(x.rests)
        places.append(x)
    return tuple(places)


def marked_places(x0: Length, x1: Length, *, end: Length, spacing: Length) -> tuple[Length, ...]:
    """Return evenly spaced places along a piece: the first and last `end` from its ends, none further apart than `spacing`.

    A piece shorter than four ends gets two, a quarter of its length from each end.
    """
    whole = x1 - x0
    inset = end if whole >= end * 4 else whole // 4
    first, last = x0 + inset, x1 - inset
    bays = max(1, -(-(last - first).ticks // spacing.ticks))
    rests = first.rests | last.rests
    return tuple(first + Length((last - first).ticks * number // bays, rests) for number in range(bays + 1))
