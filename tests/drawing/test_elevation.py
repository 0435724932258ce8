"""A wall seen from the room: what is on it, where, and that nobody can miss a stud."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings

from guide.drawing.elevation import LOOKS, elevation
from guide.drawing.raster import rasterise
from guide.drawing.shapes import Drawing, Fill, Look, Mark
from guide.drawing.text import render
from guide.layout.parts import Kind
from guide.layout.receptacles import proposed
from guide.lengths import ZERO, inches
from tests.drawing.examples import busy_room, first_wall, only
from tests.jobs import Tree, alongside, job, layout_of, lying, new_door, standing, wall, window
from tests.properties.rooms import single_walls


def fills(drawing: Drawing, *looks: Look) -> list[Fill]:
    """Return the filled shapes of a drawing, of some looks or all."""
    return [shape for shape in drawing.shapes if isinstance(shape, Fill) and (not looks or shape.look in looks)]


@settings(max_examples=60)
@given(single_walls())
def test_every_stud_of_the_layout_is_drawn_under_its_id_and_from_left_to_right(tree: Tree) -> None:
    for laid in layout_of(tree).walls:
        drawn = [fill for fill in fills(elevation(laid)) if fill.name.startswith(f"{laid.letter}.stud.")]
        assert [fill.name for fill in drawn] == [part.id for part in laid.of(Kind.STUD)]
        assert [fill.x0 for fill in drawn] == sorted(fill.x0 for fill in drawn)
        assert [fill.label for fill in drawn] == [part.mark for part in laid.of(Kind.STUD)]


@settings(max_examples=60)
@given(single_walls())
def test_every_part_that_shows_from_the_room_is_drawn_once(tree: Tree) -> None:
    """Laps are hidden by cap and ledge, a buck by its framing; rim foam lies over what is drawn; drywall has its own drawing."""
    for laid in layout_of(tree).walls:
        hidden = [
            Kind.CAP_LAP,
            Kind.LEDGE_LAP,
            Kind.RIM,
            Kind.BUCK,
            Kind.RETURN,
            Kind.EXTENSION,
            Kind.DRYWALL,
            *([] if laid.wall.joists == "alongside" else [Kind.JOIST_BLOCK]),
        ]
        names = [fill.name for fill in fills(elevation(laid)) if fill.name in {part.id for part in laid.parts}]
        assert sorted(names) == sorted(part.id for part in laid.parts if part.kind not in hidden)


@pytest.mark.parametrize("columns", range(60, 121, 4))
def test_from_60_columns_every_stud_of_a_16_ft_wall_has_a_column_of_its_own_in_the_right_order(columns: int) -> None:
    laid = first_wall().walls[0]
    for cells in (columns - 6, columns - 8):  # what the margin leaves, on either tape
        grid = rasterise(elevation(laid), cells, 18)
        placed = [grid.placed[part.id] for part in laid.of(Kind.STUD)]
        assert placed == sorted(set(placed))


@pytest.mark.parametrize("columns", range(60, 121, 7))
def test_king_studs_and_trimmers_stand_in_their_order_or_are_drawn_as_doubled(columns: int) -> None:
    laid = busy_room().walls[0]
    grid = rasterise(elevation(laid), columns - 6, 18)
    for kinds in ((Kind.STUD, Kind.KING), (Kind.KING, Kind.TRIMMER)):
        upright = sorted(laid.of(*kinds), key=lambda part: part.box.x0)
        placed = [grid.placed[part.id] for part in upright]
        assert placed == sorted(placed)


@settings(max_examples=60)
@given(single_walls())
def test_at_any_width_no_stud_is_lost_or_changes_places(tree: Tree) -> None:
    """Where there is no room for two studs they share a column, drawn as doubled; they never swap."""
    for laid in layout_of(tree).walls:
        for columns in (30, 54, 70, 104):
            grid = rasterise(elevation(laid), columns, 18)
            placed = [grid.placed[part.id] for part in laid.of(Kind.STUD)]
            assert placed == sorted(placed)


def test_the_numbers_of_the_studs_stand_under_them() -> None:
    text = render(elevation(first_wall().walls[0]), columns=76).split("\n")
    numbers = next(line for line in text if line.lstrip().startswith("stud "))
    studs = next(line for line in text if line.startswith("   48 "))
    assert numbers.split()[1:] == [str(number) for number in range(1, 14)]
    for number in range(1, 10):  # of one digit each, so that the column is sure
        assert studs[numbers.index(f" {number} ") + 1] == "│"


def test_joists_that_run_into_the_wall_show_their_ends_where_they_were_measured() -> None:
    """First joist at 15 1/4, then every 16 in, the last that begins before 144 in: worked by hand."""
    drawn = fills(elevation(only(wall("144 in"))), Look.JOIST_END)
    assert [fill.x0 for fill in drawn] == [inches("15 1/4") + inches("16") * number for number in range(9)]
    assert all(fill.bottom.at(fill.x0) == inches("92") for fill in drawn)


def test_joists_at_19_2_in_do_not_drift() -> None:
    """The eleventh is ten spacings of 19.2 in from the first, 192 in to the tick."""
    drawn = fills(elevation(only(wall("300 in", joist_spacing="19.2"))), Look.JOIST_END)
    assert drawn[10].x0 - drawn[0].x0 == inches("192")


def test_joists_that_run_alongside_show_as_one_line_with_the_blocks_behind_it() -> None:
    laid = only(wall("144 in", **alongside()))
    drawn = elevation(laid)
    (side,) = fills(drawn, Look.JOIST_SIDE)
    assert (side.x0, side.x1) == (ZERO, inches("144"))
    assert [fill.name for fill in fills(drawn, Look.JOIST_BLOCK)] == [part.id for part in laid.of(Kind.JOIST_BLOCK)]
    assert not fills(drawn, Look.JOIST_END)


def test_the_top_plate_follows_the_joists_down_the_slope_of_the_slab() -> None:
    """91 1/4 at the left end, 92 1/8 at the right: the plate's top is at the joists wherever it is asked."""
    laid = first_wall().walls[0]
    for fill in fills(elevation(laid), Look.PLATE):
        if fill.name.startswith("A.top_plate"):
            assert all(
                fill.top.at(x) == laid.wall.height.at(x)
                for x in (fill.x0, fill.x1, inches("96"))
                if fill.x0 <= x <= fill.x1
            )


def test_the_bottom_plate_leaves_the_door_open() -> None:
    text = render(elevation(only(wall("144 in", openings=[new_door("60 in")]))), columns=76)
    floor = next(line for line in text.split("\n") if line.startswith("    0 "))
    assert floor.count("╲") >= 10
    assert floor.index("═") < floor.index("╲") < floor.rindex("═")


def test_an_opening_is_named_where_it_is() -> None:
    text = render(elevation(only(wall("144 in", openings=[window("60 in", width="40 in")]))), columns=76)
    assert "opening 1" in text
    assert "window" in text


def test_a_standing_pipe_runs_from_slab_to_joists_and_breaks_both_plates() -> None:
    laid = only(wall("144 in", pipes=[standing("40 in")]))
    (pipe,) = fills(elevation(laid), Look.PIPE)
    assert (pipe.x0, pipe.x1) == (inches("38 1/4"), inches("41 3/4"))
    assert (pipe.bottom.at(pipe.x0), pipe.top.at(pipe.x0)) == (ZERO, inches("92"))
    lines = render(elevation(laid), columns=76).split("\n")
    for number in (
        next(n for n, line in enumerate(lines) if "═" in line),
        next(n for n, line in enumerate(lines) if line.startswith("    0 ")),
    ):
        assert "▓" in lines[number]


def test_a_pipe_along_the_wall_falls_as_it_was_measured() -> None:
    """42 in at the left end, 40 at the right; halfway it is 41 in high: worked by hand."""
    tree = lying("20 in", "60 in") | {"low_left": "42 in", "low_right": "40 in"}
    (pipe,) = fills(elevation(only(wall("144 in", pipes=[tree]))), Look.PIPE)
    assert pipe.bottom.at(inches("40")) == inches("41")
    assert pipe.top.at(inches("40")) == inches("42")


def test_what_is_in_front_covers_what_is_behind() -> None:
    """Foam before wood, wood before the box round a pipe: the order in which the shapes are laid down."""
    order = [fill.look for fill in fills(elevation(busy_room().walls[1]))]
    last_foam = max(index for index, look in enumerate(order) if look is Look.FOAM)
    first_stud, last_plate = order.index(Look.STUD), len(order) - 1 - order[::-1].index(Look.PLATE)
    assert order.index(Look.CONCRETE) < last_foam < first_stud < last_plate < order.index(Look.CHASE)


def test_foam_seams_show_beside_studs_and_plate_joints_in_the_plates() -> None:
    """Three seams of four sheets; one joint in the bottom plate, two in the top plate, two in the cap."""
    text = render(elevation(first_wall().walls[0]), columns=110)
    picture = text.split("\n\n")[1]
    assert next(line for line in picture.split("\n") if line.startswith("   48 ")).count("┊") == 3
    assert sum(line.count("┼") for line in picture.split("\n")) == 5


def test_readings_of_the_joists_are_printed_where_they_were_taken() -> None:
    marks = [shape for shape in elevation(first_wall().walls[0]).shapes if isinstance(shape, Mark) and shape.row == "H"]
    assert [(mark.x, mark.size) for mark in marks] == [
        (ZERO, inches("91 1/4")), (inches("96"), inches("91 5/8")), (inches("196"), inches("92 1/8")),
    ]  # fmt: skip


@pytest.mark.parametrize(("what", "look"), [("inside corner", Look.CONCRETE), ("framed wall", Look.FRAMED_WALL)])
def test_what_stands_at_an_end_is_drawn_beside_it(what: str, look: Look) -> None:
    drawn = elevation(only(wall("144 in", right=what, right_framed="5 in")))
    assert any(fill.x1 > inches("144") for fill in fills(drawn, look))


def test_at_an_open_end_nothing_is_drawn_beside_the_wall() -> None:
    drawn = elevation(only(wall("144 in", right="open end")))
    assert all(fill.x1 <= inches("144") for fill in fills(drawn) if fill.look is not Look.CAP)


def test_a_slope_far_beyond_a_row_keeps_every_stud_between_its_plates() -> None:
    """A foot of fall over 12 ft is more than any slab has; the picture stays level and tells the heights in figures."""
    tree = wall("144 in", height=["98 in at left", "86 in at right"], concrete=["96 in at left", "84 in at right"])
    lines = render(elevation(only(tree)), columns=76).split("\n")
    plates = [line for line in lines if line.count("═") > 50]
    assert len(plates) == 2


def test_every_kind_of_part_has_a_look() -> None:
    assert set(LOOKS) == set(Kind)


def test_proposed_outlets_are_drawn_as_such_and_are_no_parts() -> None:
    """One place on this wall and one on another: the first is drawn where it would hang, without a name."""
    layout = layout_of(job([wall("240 in")]))
    laid = layout.walls[0]
    places = proposed(layout, layout.code)
    assert places
    here = fills(elevation(laid, [*places, replace(places[0], wall="B")]), Look.PROPOSED)
    assert [(fill.x0, fill.x1, fill.name) for fill in here] == [(p.box.x0, p.box.x1, "") for p in places]
    assert not fills(elevation(laid), Look.PROPOSED)
