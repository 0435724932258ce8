"""Who runs through at each corner: searched over all walls at once, and offered where it wins something."""

from __future__ import annotations

from itertools import product
from typing import cast

from guide.layout.corners import corners_of
from guide.layout.parts import Kind, Layout
from guide.layout.roles import framed_by_roles, roles_of
from guide.reference.figures import load_figures
from guide.reference.priorities import load_priorities
from tests.jobs import Tree, layout_of, ring, standing, wall, window
from tests.properties.laws import UPRIGHT

FIGURES = load_figures()


def room_of(start: int = 0, **said: str) -> Tree:
    """Return a room of four walls, the walk begun at one of them: a window sits where the first one's corner pack would.

    `said` is who runs through at the right end of a wall, by the wall's name.
    """
    walls: list[Tree] = [
        wall("200 in", name="north", right_first="you choose", openings=[window("7 in", "36 in")]),
        wall("150 in", name="east", right_first="you choose", pipes=[standing("141 in")]),
        wall("200 in", name="south", right_first="you choose"),
        wall("150 in", name="west", right_first="you choose"),
    ]
    walls = [{**each, "right_first": said.get(cast(str, each["name"]), "you choose")} for each in walls]
    return ring(walls[start:] + walls[:start], square="not checked")


def room(start: int = 0, **said: str) -> Layout:
    """Return that room laid out."""
    return layout_of(room_of(start, **said))


def test_a_window_in_the_way_of_a_corner_pack_lets_the_other_wall_run_through() -> None:
    """B 2 3/8: the pack would end at 7 3/8, the window's hole begins at 9 and its king at 6. West has room for a pack."""
    layout = room()
    roles = roles_of(layout, FIGURES)
    names = {each.letter: each.wall.name for each in layout.walls}

    assert {(names[c.left_wall], names[c.through]) for c in roles.change} == {("west", "north")}
    assert roles.best < roles.now


def test_what_is_offered_is_what_comes_of_saying_it() -> None:
    """Told so, the layout counts what the search promised, and nothing better is left."""
    offered, said = roles_of(room(), FIGURES), roles_of(room(west="this wall"), FIGURES)

    assert said.now == offered.best
    assert said.change == ()


def test_a_corner_that_the_person_decided_is_not_turned() -> None:
    """North was said to run through at the west corner: what that costs is told, nothing is offered."""
    roles = roles_of(room(west="other wall"), FIGURES)

    assert roles.change == ()
    assert roles.now == roles_of(room(), FIGURES).now


def test_what_is_weighed_is_what_is_built() -> None:
    """Pieces counted a second way, on the finished layout, in 2x3.

    The window's king stands from 7: a pack of 2x3 ends at 6 3/8 and stays, one of 2x4 would end at 7 3/8.
    """
    tree = room_of()
    cast(list[Tree], tree["walls"])[0]["openings"] = [window("8 in", "36 in")]
    cast(Tree, tree["basement"])["stud"] = "2x3"
    layout = layout_of(tree)

    now = dict(zip((each.id for each in load_priorities().priority), roles_of(layout, FIGURES).now, strict=True))
    assert now["cuts"] == sum(len(wall_.of(*UPRIGHT, Kind.HEADER, Kind.SILL)) for wall_ in layout.walls)


def test_no_choice_of_roles_is_better_than_the_one_found() -> None:
    """Counted a second way: all sixteen choices of four corners, each added up wall by wall."""
    layout = room()
    table = framed_by_roles(layout, corners_of(layout.survey), FIGURES)
    every = product((True, False), repeat=4)
    totals = [
        tuple(map(sum, zip(*(table[w][roles[n - 1], roles[n]] for n, w in enumerate("ABCD")), strict=True)))
        for roles in every
    ]

    assert min(totals) == roles_of(layout, FIGURES).best


def test_the_walk_may_begin_at_any_corner() -> None:
    """The same room named from another wall comes to the same, and the same corner is offered."""
    found = set()
    for start in (0, 1, 3):
        layout = room(start)
        roles = roles_of(layout, FIGURES)
        names = {each.letter: each.wall.name for each in layout.walls}
        found.add((roles.now, roles.best, tuple(names[corner.left_wall] for corner in roles.change)))

    assert len(found) == 1
