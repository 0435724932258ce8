"""Wall spaces as NEC 210.52(A) breaks and joins them, and the fewest outlets that reach all of them.

Distances are worked by hand on plain walls: 2 in foam, D 6 3/8, so that a wall between two inside corners is finished from
6 3/8 in to 6 3/8 in before its end. The six feet, the two feet and the worked example of a patio door come from answers in
trade magazines and forums about NEC 2020 210.52(A).
"""

from __future__ import annotations

from itertools import combinations
from typing import cast

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from guide.interview.written import Json
from guide.layout.parts import Kind, Layout
from guide.layout.receptacles import (
    Stretch,
    WallSpace,
    _chosen,
    proposed,
    reached_from,
    unreached,
    wall_spaces,
    without,
)
from guide.lengths import Length, inches
from guide.reference.codes import load_code
from tests.jobs import Tree, framed_door, job, kept_free, layout_of, new_door, outlet, ring, standing, wall, window

CODE = load_code()


def spaces(layout: Layout) -> list[list[tuple[str, str, str]]]:
    """Return the wall spaces as walls with the inches where they start and end."""
    return [[(s.wall, _in(s.start), _in(s.end)) for s in space.stretches] for space in wall_spaces(layout, CODE)]


def bare(layout: Layout) -> list[tuple[str, str, str]]:
    """Return what no outlet reaches."""
    return [(s.wall, _in(s.start), _in(s.end)) for s in unreached(layout, CODE)]


def _in(length: Length) -> str:
    return f"{float(length.inch):g}"


def one(length: str = "196 in", **answers: Json) -> Layout:
    """Return a job of one wall that ends free on both sides, so that nothing goes on round a corner."""
    return layout_of(job([wall(length, left="open end", right="open end", **answers)]))


def glass(side: str, width: str = "36 in") -> Tree:
    """Return a patio door from 60 in on, 72 wide, one part of it fixed."""
    door = framed_door("60 in", "72 in")
    return {**door, "outside": "yes", "fixed": side, "fixed_width": width}


def test_a_door_ends_a_wall_space_and_a_window_does_not() -> None:
    """Doorways break the floor line; a window above it is wall."""
    assert spaces(one(openings=[new_door("60 in")])) == [[("A", "0", "60")], [("A", "92", "196")]]
    assert spaces(one(openings=[window("60 in")])) == [[("A", "0", "196")]]
    assert spaces(one(openings=[window("60 in", sill="0 in", tall="70 in")])) == [
        [("A", "0", "60")],
        [("A", "92", "196")],
    ]


def test_a_panel_kept_free_is_wall_but_no_outlet_is_proposed_in_it() -> None:
    """The floor line runs on under a panel; its space stays clear."""
    layout = one(openings=[kept_free("80 in", "36 in")])

    assert spaces(layout) == [[("A", "0", "196")]]
    assert not any(80 < part.centre.inch < 116 for part in layout.walls[0].outlet_places)


@pytest.mark.parametrize(("side", "left", "right"), [("left", "96", "132"), ("right", "60", "96")])
def test_fixed_glass_counts_as_wall_and_the_leaf_that_slides_does_not(side: str, left: str, right: str) -> None:
    """A patio door of 3 ft fixed and 3 ft sliding adds 3 ft of wall and then ends it."""
    assert spaces(one(openings=[glass(side)])) == [[("A", "0", left)], [("A", right, "196")]]


def test_a_wall_space_runs_on_round_an_inside_corner() -> None:
    """2 ft to the corner and 5 ft round it are one wall space of 7 ft less the finishes, not two."""
    first = wall("196 in", left="open end", right_first="this wall", openings=[new_door("132 in", "40 in")])
    second = wall("66 3/8 in", right="open end")
    layout = layout_of(job([first, second]))

    assert spaces(layout) == [[("A", "0", "132")], [("A", "172", "189.625"), ("B", "6.375", "66.375")]]


def test_an_outlet_round_the_cornerreached_from_into_the_wall() -> None:
    """If x = 0 is an inside corner and an outlet sits 4 ft round it, the first 2 ft of the wall are reached."""
    second = wall("120 in", right="open end")
    near = layout_of(job([wall("120 in", left="open end", right_first="this wall", boxes=[outlet("66 in")]), second]))
    at = near.walls[0].of(Kind.OUTLET)[0].centre
    left = inches("72") - (inches("113 5/8") - at)  # what its six feet leave for the wall round the corner

    assert bare(near) == [("B", _in(inches("6 3/8") + left), "120")]


def test_an_outlet_does_not_reach_across_a_door() -> None:
    """Each side of a doorway needs its own."""
    layout = one(openings=[new_door("60 in")], boxes=[outlet("100 in")])

    assert [where for where in bare(layout) if where[2] == "60"] == [("A", "0", "60")]


@pytest.mark.parametrize(("gap", "count"), [("23 15/16 in", 1), ("24 in", 2)])
def test_a_wall_space_under_two_feet_needs_none(gap: str, count: int) -> None:
    """A 23-in strip between two doors needs none, a 24-in strip has one of its own."""
    doors: list[Json] = [new_door("0 in", "30 in"), new_door(f"{_in(inches('30') + inches(gap))} in", "30 in")]

    assert len(spaces(one(openings=doors))) == count


def test_storage_is_no_room_for_it() -> None:
    """210.52(A) is for rooms people live in."""
    assert not wall_spaces(layout_of(job([wall("196 in")], use="storage")), CODE)


@pytest.mark.parametrize(
    ("box", "counted"),
    [(outlet("98 in"), True), (outlet("98 in", "66 in"), True), (outlet("98 in", "66 1/16 in"), False)],
)
def test_an_outlet_over_five_and_a_half_feet_does_not_count(box: Tree, counted: bool) -> None:
    """A box higher than 5 1/2 ft is no reach for a cord."""
    assert (bare(one("144 in", boxes=[box])) != [("A", "0", "144")]) == counted


@pytest.mark.parametrize("holds", ["switch", "junction"])
def test_a_switch_is_no_outlet(holds: str) -> None:
    """What is in the box decides."""
    assert bare(one("144 in", boxes=[{**outlet("98 in"), "holds": holds}])) == [("A", "0", "144")]


ROOMS: dict[str, Layout] = {
    "a wall": one("300 in"),
    "a wall with a door": one("300 in", openings=[new_door("140 in")]),
    "a wall with pipes": one("300 in", pipes=[standing("60 in"), standing("204 in", "2 in")]),
    "one outlet is there": one("300 in", boxes=[outlet("150 in")]),
    "a room without a door": layout_of(ring([wall(n) for n in ("200 in", "150 in", "200 in", "150 in")])),
    "a room": layout_of(ring([wall("200 in", openings=[new_door("60 in")]), *(wall(n) for n in ("150 in", "200 in", "150 in"))])),
}  # fmt: skip


@pytest.mark.parametrize("name", ROOMS)
def test_what_is_there_and_what_is_proposed_reach_every_point(name: str) -> None:
    """Nothing along the floor is further than 6 ft from an outlet of its own wall space."""
    layout = ROOMS[name]
    outlets = [*proposed(layout, CODE), *(part for wall in layout.walls for part in wall.of(Kind.OUTLET))]

    for space in wall_spaces(layout, CODE):
        at = [place for part in outlets if (place := space.at(part.wall, part.centre)) is not None]
        assert without([(0, space.wide.ticks)], reached_from(space, at, inches("6 ft"))) == []


@pytest.mark.parametrize("name", [name for name in ROOMS if "wall" in name])
def test_no_fewer_would_reach_every_point(name: str) -> None:
    """No set of free places that has one outlet less reaches all of it: tried one by one."""
    layout = ROOMS[name]
    for space in wall_spaces(layout, CODE):
        mine = [part for part in proposed(layout, CODE) if space.at(part.wall, part.centre) is not None]
        places = [at for part in layout.walls[0].outlet_places if (at := space.at("A", part.centre)) is not None]

        assert mine
        for fewer in combinations(places, len(mine) - 1):
            assert without([(0, space.wide.ticks)], reached_from(space, fewer, inches("6 ft"))) != []


def test_boxes_told_as_proposed_leave_nothing_to_say() -> None:
    """A person who answers with the places of the page is proposed no more."""
    told = [outlet(f"{float(part.centre.inch)} in") for part in proposed(one("300 in"), CODE)]
    layout = one("300 in", boxes=cast(Json, told))

    assert bare(layout) == []
    assert proposed(layout, CODE) == ()


@settings(max_examples=150, deadline=None)
@given(
    whole=st.integers(10, 60),
    places=st.lists(st.integers(0, 60), min_size=1, max_size=7, unique=True),
    reach=st.integers(3, 12),
    closed=st.booleans(),
)
def test_the_choice_is_the_least_of_all_there_are(whole: int, places: list[int], reach: int, closed: bool) -> None:
    """On any line or ring, with any places free, no other set reaches as much with fewer: every set is tried."""
    places = sorted(place for place in places if place <= whole)
    space = WallSpace((Stretch("A", Length(0), Length(whole)),), ring=closed)
    bare_all = [(0, whole)]
    reaches = reached_from(space, places, Length(reach))
    missed, chosen = _chosen(space, bare_all, reaches)

    def left(numbers: tuple[int, ...]) -> int:
        return sum(b - a for a, b in without(bare_all, [each for each in reaches if each[2] in numbers]))

    everything = tuple(range(len(places)))
    assert missed == left(everything) == left(tuple(chosen))
    assert all(left(some) > missed for n in range(len(chosen)) for some in combinations(everything, n))


def test_places_keep_clear_of_what_is_in_the_wall() -> None:
    """No place shares its box with a stud, a fireblock, a pipe or the stretch behind an open leaf."""
    layout = one("300 in", openings=[new_door("140 in")], pipes=[standing("60 in")])
    (only,) = layout.walls
    clear = inches("1")
    for place in only.outlet_places:
        box = place.box
        assert not 108 < place.centre.inch < 140
        assert box.x1 + clear <= inches("58 1/4") or box.x0 - clear >= inches("61 3/4")
        for part in only.of(Kind.STUD, Kind.KING, Kind.TRIMMER, Kind.PACK, Kind.FIREBLOCK, Kind.CHASE_POST):
            assert box.x1 <= part.box.x0 or part.box.x1 <= box.x0, part.mark
        assert any(
            box.x0 == stud.box.x1 or box.x1 == stud.box.x0 for stud in only.of(Kind.STUD, Kind.KING, Kind.CRIPPLE)
        )
