"""The laws themselves: each one speaks up when a good wall is spoilt in the way that it guards against."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import given, settings

from guide.interview.written import Json
from guide.layout.parts import Kind, Part, WallLayout
from guide.lengths import inches
from tests.jobs import (
    Tree,
    fixture,
    framed_door,
    job,
    laid,
    layout_of,
    new_door,
    outlet,
    ring,
    standing,
    survey_of,
    wall,
    window,
)
from tests.properties import drywall_law, foam_law, laws, seen
from tests.properties.barrier_law import bare_area
from tests.properties.ledge_law import open_ledges
from tests.properties.rim_law import bare_bays
from tests.properties.rooms import single_walls
from tests.properties.test_any_wall import Law
from tests.properties.window_law import open_tunnels, short_jambs

BASEMENT = survey_of(job([wall()])).basement

Spoil = Callable[[Part], Part | None]


def good() -> WallLayout:
    """Return a wall that keeps every law: two doors, a window, a pipe between the studs and an electrical box."""
    openings: list[Json] = [new_door("30 in"), window("120 in"), {**framed_door("270 in"), "outside": "yes"}]
    return laid(
        wall(
            "352 in",
            openings=openings,
            pipes=[standing("200 in")],
            boxes=[outlet("90 in")],
            fixtures=[fixture("92 in", "112 in", "60 in")],
        )
    )


def spoilt(kind: Kind, spoil: Spoil, number: int = 1) -> WallLayout:
    """Return the good wall with its part `number` of a kind changed, or gone."""
    layout = good()
    target = layout.of(kind)[number - 1]
    parts = [spoil(part) if part is target else part for part in layout.parts]
    return replace(layout, parts=tuple(part for part in parts if part is not None))


def moved(by: str, y: str = "0") -> Spoil:
    """Return what moves a part along the wall and into the room."""

    def move(part: Part) -> Part:
        x, out = inches(by), inches(y)
        box = part.box
        return replace(part, box=replace(box, x0=box.x0 + x, x1=box.x1 + x, y0=box.y0 + out, y1=box.y1 + out))

    return move


def shorter(by: str) -> Spoil:
    """Return what takes so much off the top of a part."""
    return lambda part: replace(part, box=replace(part.box, z1=part.box.z1.up(-inches(by))))


def gone(part: Part) -> None:
    """Leave a part out."""


def unscrewed(part: Part) -> Part:
    """Leave out what holds a part."""
    return replace(part, fastenings=())


def cut_out(part: Part) -> Part:
    """Cut a whole sheet away, as if an opening were there."""
    return replace(part, notches=(part.box,))


EVERY: tuple[Law, ...] = (
    laws.clashes, laws.strays, laws.hanging, laws.loose_backing, laws.untiled, laws.joints_in_the_air, laws.open_ways, laws.unheld_blocks, drywall_law.loose_edges,
    drywall_law.bare_framing, drywall_law.loose_sheets, foam_law.bare_concrete, laws.in_the_way, laws.miscounted,
    open_ledges, bare_bays, open_tunnels, short_jambs, bare_area,
)  # fmt: skip


@pytest.mark.parametrize("law", EVERY, ids=lambda law: law.__name__)
def test_a_good_wall_breaks_no_law(law: Law) -> None:
    assert list(law(good(), BASEMENT)) == []


@pytest.mark.parametrize(
    ("law", "kind", "spoil"),
    [
        (laws.clashes, Kind.STUD, moved("1/16", "-1/4")),
        (laws.clashes, Kind.FOAM, moved("0", "1")),
        (laws.clashes, Kind.CAP, moved("0", "1/16")),
        (laws.strays, Kind.STUD, moved("-1/16")),
        (laws.strays, Kind.TRIMMER, moved("0", "1/16")),
        (laws.strays, Kind.FOAM, moved("-3")),
        (laws.hanging, Kind.STUD, shorter("1/8")),
        (laws.hanging, Kind.CRIPPLE, shorter("1/8")),
        (laws.hanging, Kind.TRIMMER, gone),
        (laws.hanging, Kind.BOTTOM_PLATE, gone),
        (laws.hanging, Kind.HEADER, gone),
        (laws.loose_backing, Kind.BACKING, moved("1/16")),
        (laws.loose_backing, Kind.BACKING, moved("0", "-1/16")),
        (laws.in_the_way, Kind.BACKING, moved("-45")),
        (laws.untiled, Kind.BOTTOM_PLATE, gone),
        (laws.untiled, Kind.TOP_PLATE, moved("1/16")),
        (laws.open_ways, Kind.FIREBLOCK, gone),
        (laws.unheld_blocks, Kind.FIREBLOCK, moved("1/16")),
        (laws.unheld_blocks, Kind.FIREBLOCK, moved("0", "-1/16")),
        (laws.unheld_blocks, Kind.FIREBLOCK, unscrewed),
        (laws.unheld_blocks, Kind.STUD, shorter("6")),
        (bare_area, Kind.DRYWALL, cut_out),
        (drywall_law.loose_edges, Kind.STUD, gone),
        (drywall_law.loose_edges, Kind.DRYWALL, moved("8")),
        (drywall_law.bare_framing, Kind.DRYWALL, gone),
        (drywall_law.loose_sheets, Kind.DRYWALL, moved("48")),
        (drywall_law.loose_sheets, Kind.DRYWALL, moved("0", "1/2")),
        (laws.clashes, Kind.DRYWALL, moved("1/16", "-1/16")),
        (foam_law.bare_concrete, Kind.FOAM, gone),
        (foam_law.bare_concrete, Kind.FOAM, shorter("1/4")),
        (laws.in_the_way, Kind.KING, moved("6")),
        (bare_bays, Kind.RIM, gone),
        (bare_bays, Kind.RIM, moved("1/16")),
        (bare_bays, Kind.RIM, shorter("1/8")),
        (short_jambs, Kind.EXTENSION, gone),
        (short_jambs, Kind.EXTENSION, moved("0", "1/16")),
        (open_tunnels, Kind.BUCK, gone),
        (open_tunnels, Kind.BUCK, moved("1/16")),
        (open_tunnels, Kind.BUCK, moved("0", "1/8")),
        (open_tunnels, Kind.RETURN, gone),
        (open_tunnels, Kind.RETURN, shorter("1/16")),
        (open_tunnels, Kind.RETURN, moved("0", "-1/16")),
        (laws.clashes, Kind.BUCK, moved("-1")),
        (laws.miscounted, Kind.STUD, gone),
    ],
    ids=lambda each: getattr(each, "__name__", str(each)),
)
def test_a_spoilt_wall_breaks_the_law(law: Law, kind: Kind, spoil: Spoil) -> None:
    """Whichever part of the kind is spoilt, or at least one of them where only some carry the law's weight."""
    count = len(good().of(kind))

    assert any(list(law(spoilt(kind, spoil, number), BASEMENT)) for number in range(1, count + 1))


@pytest.mark.parametrize(
    ("kind", "spoil"),
    [
        (Kind.LEDGE, gone), (Kind.LEDGE, moved("0", "1/8")), (Kind.UPPER_BLOCK, gone), (Kind.UPPER_BLOCK, moved("0", "1/8")),
        (Kind.UPPER_BLOCK, shorter("1/4")), (Kind.FIREBLOCK, shorter("1/4")),
    ],
)  # fmt: skip
def test_a_spoilt_ledge_breaks_its_law(kind: Kind, spoil: Spoil) -> None:
    low = layout_of(job([wall("196 in", concrete="48 in at left, 48 in at right")])).walls[0]
    assert list(open_ledges(low, BASEMENT)) == []
    first = next(part for part in low.of(kind))
    changed = spoil(first)
    parts = [changed if part is first else part for part in low.parts]

    assert list(open_ledges(replace(low, parts=tuple(p for p in parts if p is not None)), BASEMENT))


def test_a_joint_of_the_top_plate_between_joists_breaks_the_law() -> None:
    layout = good()
    first, second, *_ = layout.of(Kind.TOP_PLATE)
    by = inches("3")
    parts = {
        first.id: replace(first, box=replace(first.box, x1=first.box.x1 + by)),
        second.id: replace(second, box=replace(second.box, x0=second.box.x0 + by)),
    }
    spoiled = replace(layout, parts=tuple(parts.get(part.id, part) for part in layout.parts))

    assert list(laws.joints_in_the_air(spoiled, BASEMENT))


def test_two_parts_that_cross_between_two_readings_are_seen() -> None:
    """A level part and one that follows the joists may meet only in the middle of a stretch without a reading."""
    rising = laid(
        wall(
            "200 in", height=["80 in at left", "100 in at right"], concrete=["78 1/2 in at left", "98 1/2 in at right"]
        )
    )
    plate, stud = rising.of(Kind.TOP_PLATE)[0], rising.of(Kind.STUD)[0]
    x0, x1 = inches("50"), inches("150")
    above = replace(plate, box=replace(plate.box, x0=x0, x1=x1))
    low = replace(stud.box.z0, off=inches("90"))
    level = replace(plate, box=replace(plate.box, x0=x0, x1=x1, z0=low, z1=low.up(inches("1/2"))))

    for x in (x0, x1):
        assert not seen.meet(
            above.box.z0.at(rising.wall, x), above.box.z1.at(rising.wall, x), inches("90"), inches("90 1/2")
        )
    assert laws.shared(rising.wall, above, rising.wall, level) == inches("1/2")


def test_walls_pushed_into_each_other_break_the_law_of_the_corner() -> None:
    layout = layout_of(ring([wall("144 in"), wall("120 in"), wall("144 in"), wall("120 in")]))
    assert not list(laws.corner_clashes(layout))
    first, *others = layout.walls
    grown = replace(first, parts=tuple(moved("2")(part) or part for part in first.parts))

    assert list(laws.corner_clashes(replace(layout, walls=(grown, *others))))


def test_the_random_walls_are_not_all_plain() -> None:
    """Laws over walls without things would say little: the strategy gives most walls something to go round."""
    seen: list[int] = []

    @settings(max_examples=60)
    @given(tree=single_walls())
    def look(tree: Tree) -> None:
        seen.extend(len(each.wall.openings) + len(each.wall.pipes) for each in layout_of(tree).walls)

    look()
    assert sum(count > 0 for count in seen) > len(seen) // 3
