"""Changing one tape reading of a job, and finding every part that moved for it."""

from __future__ import annotations

import copy
from collections.abc import Iterator
from typing import cast

from guide.layout.parts import Kind, Part, WallLayout
from guide.lengths import Length, inches
from tests.jobs import Tree
from tests.properties.rooms import tape

NOT_A_SIZE = ("longest_stick", "foam_sheet", "drywall", "joist_spacing", "reach_height")


def readings(tree: Tree) -> Iterator[tuple[str, list[str | int]]]:
    """Yield every tape reading of a one-wall job: the id it is rested on, and the way to it in the tree."""
    basement = cast(Tree, tree["basement"])
    yield from _sizes(basement, "basement", ["basement"])
    (wall,) = cast(list[Tree], tree["walls"])
    way: list[str | int] = ["walls", 0]
    yield from _sizes(wall, "A", way)
    for key in ("length", "height", "concrete"):
        for number in range(len(cast(list[str], wall[key]))):
            yield f"A.{key}", [*way, key, number]
    for key, name in (("openings", "opening"), ("pipes", "pipe"), ("boxes", "box"), ("fixtures", "fixture")):
        for number, item in enumerate(cast(list[Tree], wall[key])):
            yield from _sizes(item, f"A.{name}{number + 1}", [*way, key, number])


def _sizes(place: Tree, prefix: str, way: list[str | int]) -> Iterator[tuple[str, list[str | int]]]:
    for key, value in place.items():
        if isinstance(value, str) and value.endswith(" in") and key not in NOT_A_SIZE:
            yield f"{prefix}.{key}", [*way, key]


def changed(tree: Tree, way: list[str | int], by: int) -> Tree:
    """Return the job with one reading larger by so many sixteenths of an inch."""
    new = copy.deepcopy(tree)
    *outer, last = way
    holder = cast(dict[str | int, object], new)
    for key in outer:
        holder = cast(dict[str | int, object], holder[key])
    before, comma, said = cast(str, holder[last]).rpartition(", ")  # of several in one text the last one
    size, at, place = said.partition(" at ")
    sixteenths = inches(size).ticks // 508
    holder[last] = f"{before}{comma}{tape(sixteenths + by)}{at}{place}"
    return new


Coordinate = tuple[str, Length, frozenset[str]]


def coordinates(part: Part) -> Iterator[Coordinate]:
    """Yield everything that a part's place and size are made of, with the answers that stand behind it."""
    box = part.box
    yield "x0", box.x0, box.x0.rests | part.placed_by
    yield "x1", box.x1, box.x1.rests | part.placed_by
    yield "y0", box.y0, box.y0.rests | part.placed_by
    yield "y1", box.y1, box.y1.rests | part.placed_by
    yield "cut", part.cut, part.size_rests
    if part.wide is not None:
        yield "wide", part.wide, part.size_rests


def unrested(before: WallLayout, after: WallLayout, answer: str) -> Iterator[str]:
    """Yield every change of a part that the changed answer does not stand behind.

    Where a wall keeps as many parts of a kind they are compared one by one from the left; else it is asked of those that
    are new or gone. A size may change with the place when a choice turned out otherwise: that is answered for by the
    place, which locks the mark, so it is not asked of the size again. (A piece of foam is placed by
    both its edges and its foot: a fireblock that goes through the foam may move any of them; a block for what will hang by
    the studs at both its ends.)
    """
    for kind in Kind:
        olds, news = before.of(kind), after.of(kind)
        if len(olds) == len(news):
            for old, new in zip(olds, news, strict=True):
                yield from _compared(old, new, answer)
        else:
            places = [{(p.box.x0, p.box.x1, p.box.z0.off) for p in parts} for parts in (olds, news)]
            for part in (*olds, *news):
                key = (part.box.x0, part.box.x1, part.box.z0.off)
                behind = frozenset[str]().union(*(rests for _, _, rests in coordinates(part)))
                if (key in places[0]) != (key in places[1]) and not _among(answer, behind):
                    yield f"existence of {part.id} changed"


def _compared(old: Part, new: Part, answer: str) -> Iterator[str]:
    moved = old.box.x0 != new.box.x0
    if old.kind in (Kind.FOAM, Kind.BACKING):
        moved |= old.box.x1 != new.box.x1 or old.box.z0 != new.box.z0
    for (name, was, rests), (_, now, new_rests) in zip(coordinates(old), coordinates(new), strict=True):
        if was == now or (name in ("cut", "wide") and moved):
            continue
        if not _among(answer, rests | new_rests):
            yield f"{name} of {new.id} changed from {was!r} to {now!r}"


def _among(answer: str, rests: frozenset[str]) -> bool:
    """Say whether an answer, or one of its readings, is among the ids."""
    return any(rest == answer or rest.startswith(f"{answer}@") for rest in rests)
