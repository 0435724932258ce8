"""Fasteners: the rules of the data turned into a count, and marked places, for each part."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from guide.layout.parts import Fastening, Part
from guide.layout.site import Site
from guide.lengths import Length
from guide.reference.stock import FasteningRule, load_fasteners


def fastened(site: Site, part: Part, supports: Sequence[Length]) -> Part:
    """Return the part with every fastening that the data gives its kind."""
    rules = [
        rule
        for rule in load_fasteners().rule
        if rule.kind == part.kind.value and rule.anchors in (None, site.basement.anchors)
    ]
    return replace(part, fastenings=tuple(_fastening(site, part, rule, supports) for rule in rules))


def _fastening(site: Site, part: Part, rule: FasteningRule, supports: Sequence[Length]) -> Fastening:
    if rule.how == "marked":
        places = marked_places(part.box.x0, part.box.x1, end=site.figures.anchor_end, spacing=rule.spacing_length)
        return Fastening(rule.fastener, len(places) * rule.count, places)
    if rule.how == "per_support":
        bearing = site.figures.joist_thick // 2
        over = tuple(at for at in supports if part.box.x0 - bearing <= at <= part.box.x1 + bearing)
        return Fastening(rule.fastener, len(over) * rule.count, over)
    if rule.how == "along":
        return Fastening(rule.fastener, (-(-part.cut.ticks // rule.spacing_length.ticks) + 1) * rule.count)
    return Fastening(rule.fastener, rule.count)


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
