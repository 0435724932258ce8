"""Pieces of 2x4 that are cut alike: one stop on the saw serves them all."""

from __future__ import annotations

from guide.layout.parts import FULL_HEIGHT, Kind, Part
from guide.sheets.ticket import LOCKED
from guide.sheets.view import WallView

WORTH_A_STOP = 3
"""Pieces for which a stop is worth clamping on."""


def stops(view: WallView) -> list[str]:
    """Return the lengths that so many uprights of a wall share, the longest first, each with their marks; none locked."""
    alike: dict[str, list[Part]] = {}
    for part in view.wall.of(*FULL_HEIGHT, Kind.TRIMMER, Kind.CRIPPLE):
        alike.setdefault(view.size(part.cut, "down"), []).append(part)
    alike.pop(LOCKED, None)
    worth = sorted((p for p in alike.items() if len(p[1]) >= WORTH_A_STOP), key=lambda p: -p[1][0].cut.ticks)
    return [f"{cut}: {len(parts)} pieces, {marks_of(view, parts)}" for cut, parts in worth]


def marks_of(view: WallView, parts: list[Part]) -> str:
    """Name pieces, those that follow each other by the first and the last: `A1 to A6, AK1, AK2`."""
    runs: list[list[Part]] = []
    place = {part.id: number for number, part in enumerate(view.wall.parts)}
    for part in sorted(parts, key=lambda each: place[each.id]):
        last = runs[-1][-1] if runs else None
        if last is not None and last.kind is part.kind and place[part.id] == place[last.id] + 1:
            runs[-1].append(part)
        else:
            runs.append([part])
    joined = (" to ".join((r[0].mark, r[-1].mark)) if len(r) > 2 else ", ".join(p.mark for p in r) for r in runs)
    return ", ".join(joined)
