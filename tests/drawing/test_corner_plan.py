"""Corners from above: who runs through, what stands where, to the sixteenth."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from guide.drawing.corner_plan import corner_plan
from guide.drawing.shapes import Chain, Drawing, Fill, Label, Look
from guide.drawing.svg import svg
from guide.drawing.text import render
from guide.interview.asking import CORNERS
from guide.layout.parts import Layout
from guide.lengths import ZERO, Length, inches
from tests.drawing.examples import busy_room, first_wall
from tests.drawing.test_svg import boxes_of, parsed
from tests.jobs import Tree, job, l_room, layout_of, wall, window
from tests.properties.rooms import rooms, single_walls


def corners(layout: Layout) -> list[Drawing]:
    """Return every corner of a layout, those of walls alone too."""
    found = []
    for laid in layout.walls:
        if laid.right.what in CORNERS:
            found.append(corner_plan(laid, layout.by_letter.get(laid.right.neighbour or "")))
        if laid.left.what in CORNERS and laid.left.neighbour not in layout.by_letter:
            found.append(corner_plan(None, laid))
    return found


def box(drawn: Drawing, name: str) -> tuple[Length, Length, Length, Length]:
    """Return a part: from and to across from the concrete corner, from and to under the concrete of the wall on top."""
    (fill,) = (shape for shape in drawn.shapes if isinstance(shape, Fill) and shape.name == name)
    zero = max(s.top.at(s.x0) for s in drawn.shapes if isinstance(s, Fill) and s.look is Look.FOAM_CUT) + inches("1/8")
    return fill.x0, fill.x1, zero - fill.top.at(fill.x0), zero - fill.bottom.at(fill.x0)


def fills(drawn: Drawing, look: Look) -> list[Fill]:
    return [shape for shape in drawn.shapes if isinstance(shape, Fill) and shape.look is look]


def test_at_an_inside_corner_every_piece_lies_where_the_trade_puts_it() -> None:
    """B 2 3/8 and F 5 7/8 on both walls, worked by hand: the through wall's end stud stands B short of the other concrete,
    the flat stud beside it with its face to the room, the butt wall's end stud against the through wall's face.
    """
    drawn = corner_plan(*busy_room().walls[:2])
    assert box(drawn, "A.stud.9") == (-inches("3 7/8"), -inches("2 3/8"), inches("2 3/8"), inches("5 7/8"))
    assert box(drawn, "A.corner_pack_stud.2") == (-inches("7 3/8"), -inches("3 7/8"), inches("4 3/8"), inches("5 7/8"))
    assert box(drawn, "B.stud.1") == (-inches("5 7/8"), -inches("2 3/8"), inches("5 7/8"), inches("7 3/8"))


def test_the_sheet_hung_first_runs_into_the_corner_and_the_other_stops_at_its_face() -> None:
    """A is longer and hung first: its sheet ends at B's studs, 5 7/8 from the concrete; B's begins at A's face, 6 3/8."""
    first, second = fills(corner_plan(*busy_room().walls[:2]), Look.DRYWALL)
    assert first.x1 == -inches("5 7/8")
    assert second.x0 == -inches("6 3/8")
    assert second.top.at(second.x0) == first.bottom.at(first.x0)


def test_one_foam_fills_the_corner_and_the_other_stops_at_its_face() -> None:
    drawn = corner_plan(*busy_room().walls[:2])
    through, butt = fills(drawn, Look.FOAM_CUT)[-2:]
    assert through.x1 == ZERO
    assert butt.top.at(butt.x0) == through.bottom.at(through.x0)
    assert any(
        isinstance(shape, Label) and shape.texts[:1] == ("foam of A fills the corner",) for shape in drawn.shapes
    )


def test_round_an_outside_corner_the_butt_walls_sheet_covers_the_end_of_the_through_wall() -> None:
    layout = layout_of(l_room())
    through, butt = fills(corner_plan(layout.by_letter["C"], layout.by_letter["D"]), Look.DRYWALL)
    assert through.x1 == inches("5 7/8")
    assert (butt.x0, butt.x1) == (inches("5 7/8"), inches("6 3/8"))
    assert butt.bottom.at(butt.x0) == through.bottom.at(through.x0)


def test_uprights_are_cut_across_and_the_plate_under_them_is_seen() -> None:
    drawn = corner_plan(None, first_wall().walls[0])
    assert {fill.cut for look in (Look.STUD, Look.PACK) for fill in fills(drawn, look)} == {"across"}
    assert {fill.cut for fill in fills(drawn, Look.PLATE)} == {""}


def test_sizes_run_from_the_concrete_corner_through_the_end_of_the_plates() -> None:
    """2 3/8 to the plates, a stud of 1 1/2, the flat stud of 3 1/2, worked by hand."""
    drawn = corner_plan(None, first_wall().walls[0])
    (chain,) = (shape for shape in drawn.shapes if isinstance(shape, Chain))
    assert chain.places[:4] == (ZERO, inches("2 3/8"), inches("3 7/8"), inches("7 3/8"))


def test_a_window_near_the_corner_is_cut_out_of_concrete_and_drywall() -> None:
    layout = layout_of(job([wall("144 in", openings=[window("14 in", sill="40 in")])]))
    drawn = corner_plan(None, layout.walls[0])
    assert fills(drawn, Look.OPENING_CUT)[0].x0 == inches("14")
    for look in (Look.CONCRETE_CUT, Look.DRYWALL):
        assert not any(fill.x0 < inches("20") and fill.x1 > inches("20") for fill in fills(drawn, look))


def test_a_corner_without_a_wall_is_refused() -> None:
    with pytest.raises(ValueError, match="needs a wall"):
        corner_plan(None, None)


@settings(max_examples=40)
@given(rooms() | single_walls())
def test_any_corner_is_drawn_in_text_and_in_ink(tree: Tree) -> None:
    """No line too wide, words apart and on the sheet, everything within the extents of the drawing."""
    for each in corners(layout_of(tree)):
        assert all(len(line) <= 78 for line in render(each, columns=78).split("\n"))
        root = parsed(svg(each, name="d"))
        across, down = (round(float(edge) * 100) for edge in root.get("viewBox", "").split()[2:])
        boxes = boxes_of(root)
        assert [t for t, b in boxes if b.left < 0 or b.top < 0 or b.right > across or b.bottom > down] == []
        assert [(a, c) for n, (a, b) in enumerate(boxes) for c, d in boxes[:n] if b.meets(d)] == []
        for fill in (shape for shape in each.shapes if isinstance(shape, Fill)):
            assert each.left <= fill.x0 < fill.x1 <= each.right
            assert each.bottom <= fill.bottom.at(fill.x0) < fill.top.at(fill.x0) <= each.top
