"""A cut through a wall: what lies behind what, to the sixteenth."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from guide.drawing.section import section
from guide.drawing.shapes import Drawing, Fill, Label, Look
from guide.drawing.text import render
from guide.layout.parts import Kind
from guide.lengths import ZERO, Length, from_inches, inches
from tests.drawing.examples import first_wall, only
from tests.jobs import Tree, alongside, layout_of, level, new_door, standing, wall, window
from tests.properties.rooms import single_walls


def spans(drawing: Drawing, look: Look) -> list[tuple[Length, Length, Length, Length]]:
    """Return the rectangles of a look: from and to out from the concrete, from and to over the slab."""
    return [
        (s.x0, s.x1, s.bottom.at(s.x0), s.top.at(s.x0))
        for s in drawing.shapes
        if isinstance(s, Fill) and s.look is look
    ]


def sizes(drawing: Drawing) -> dict[str, Length]:
    """Return the labelled sizes of a section by their letter."""
    return {s.texts[-1]: s.size for s in drawing.shapes if isinstance(s, Label) and s.size is not None}


def test_the_five_sizes_of_a_plain_wall_are_the_ones_worked_by_hand() -> None:
    """Foam 2, glue bed 1/8, hump 1/4: B 2 3/8; a stud of 3 1/2: F 5 7/8; half-inch drywall: D 6 3/8."""
    found = sizes(section(only(wall("144 in"))))
    assert {letter: found[letter] for letter in "BFDHC"} == {
        "B": inches("2 3/8"), "F": inches("5 7/8"), "D": inches("6 3/8"), "H": inches("92"), "C": inches("90 1/2"),
    }  # fmt: skip


def test_the_sizes_and_what_they_mean_can_be_read_in_the_text() -> None:
    text = render(section(first_wall().walls[0]), columns=76)
    for said in (
        "B to the back of the studs: 2 3/8",
        "F to their room face: 5 7/8",
        "D to the face of the drywall: 6 3/8",
    ):
        assert said in text
    assert "C 90 1/8" in text
    assert "H 91 5/8" in text


def test_at_36_columns_the_five_sizes_still_stand() -> None:
    text = render(section(first_wall().walls[0]), columns=36)
    for said in ("B 2 3/8", "F 5 7/8", "D 6 3/8", "C 90 1/8", "H 91 5/8"):
        assert said in text


def test_from_the_concrete_into_the_room_nothing_overlaps_and_nothing_is_missing() -> None:
    drawn = section(only(wall("144 in")))
    (rim, foam), (stud,), (drywall,) = (spans(drawn, look) for look in (Look.FOAM_CUT, Look.STUD, Look.DRYWALL))
    (gap,) = spans(drawn, Look.GAP)
    assert rim == (-inches("6 1/2"), -inches("4 1/2"), inches("92 1/4"), inches("101"))
    assert foam[:2] == (inches("1/8"), inches("2 1/8"))
    assert gap[:2] == (inches("2 1/8"), inches("2 3/8"))
    assert stud[:2] == (inches("2 3/8"), inches("5 7/8"))
    assert drywall[:2] == (inches("5 7/8"), inches("6 3/8"))


def test_the_stud_stands_on_a_plate_on_a_gasket_and_carries_a_plate() -> None:
    """Gasket 1/8, plate 1 1/2, stud, plate 1 1/2 up to the joists at 92: common practice, worked by hand."""
    drawn = section(only(wall("144 in")))
    (gasket,) = spans(drawn, Look.GASKET)
    bottom, top = spans(drawn, Look.PLATE)
    assert gasket[2:] == (ZERO, inches("1/8"))
    assert bottom[2:] == (inches("1/8"), inches("1 5/8"))
    assert top[2:] == (inches("90 1/2"), inches("92"))
    ((*_, foot, head),) = spans(drawn, Look.STUD)
    assert (foot, head) == (inches("1 5/8"), inches("90 1/2"))


def test_a_cap_on_the_concrete_reaches_from_the_sill_to_the_back_of_the_plate() -> None:
    drawn = section(only(wall("144 in", **level("92 in", "90 1/2 in"))))
    (cap,) = spans(drawn, Look.CAP)
    assert cap == (-inches("2 1/2"), inches("2 3/8"), inches("90 1/2"), inches("91 1/4"))


def test_a_cap_under_the_joists_lies_over_the_plate_to_its_room_edge() -> None:
    """Two sills leave 3 in between concrete and joists: a cap on the concrete would miss the plate."""
    drawn = section(only(wall("144 in", **level("92 in", "89 in"))))
    (cap,) = spans(drawn, Look.CAP)
    assert cap == (-inches("2 1/2"), inches("5 7/8"), inches("91 1/4"), inches("92"))
    lines = render(drawn, columns=76).split("\n")
    rows = [next(n for n, line in enumerate(lines) if sign in line) for sign in ("─", "▄", "═")]
    assert rows == sorted(set(rows))


def test_a_cut_through_a_window_shows_header_sill_and_lining_and_no_stud() -> None:
    """Lining: head and sill of buck and return, from the frame 5 in behind the concrete to B 2 3/8 and to D 6 3/8."""
    drawn = section(only(wall("144 in", openings=[window("60 in")])), inches("70"))
    assert {span[:2] for span in spans(drawn, Look.BUCK)} == {(-inches("5"), inches("2 3/8"))}
    assert [span[:2] for span in spans(drawn, Look.DRYWALL)].count((-inches("5"), inches("6 3/8"))) == 2
    assert len(spans(drawn, Look.SPAN)) == 2
    assert len(spans(drawn, Look.CONCRETE_CUT)) == 3  # slab, under and over the window
    assert len(spans(drawn, Look.DRYWALL)) == 4


def test_a_cut_through_a_door_shows_no_bottom_plate() -> None:
    drawn = section(only(wall("144 in", openings=[new_door("60 in")])), inches("70"))
    assert len(spans(drawn, Look.PLATE)) == 1
    assert not spans(drawn, Look.GASKET)


def test_a_cut_through_a_pipe_shows_it_where_it_stands() -> None:
    drawn = section(only(wall("144 in", pipes=[standing("40 in")])), inches("40"))
    assert [pipe[:2] for pipe in spans(drawn, Look.PIPE)] == [(inches("1"), inches("4 1/2"))]


def test_the_usual_cut_avoids_openings_and_pipes() -> None:
    tree = wall("144 in", openings=[window("40 in", width="60 in")], pipes=[standing("112 in")])
    drawn = section(only(tree))
    assert spans(drawn, Look.STUD)
    assert not spans(drawn, Look.OPENING)
    assert not spans(drawn, Look.PIPE)


def test_a_joist_alongside_is_cut_and_the_block_reaches_it() -> None:
    """Gap 14 1/2 from the sill, which stands 2 1/2 back: the joist begins 12 in into the room."""
    drawn = section(only(wall("144 in", **alongside("14 1/2 in"))))
    assert [joist[:2] for joist in spans(drawn, Look.JOIST_END)] == [(inches("12"), inches("13 1/2"))]
    assert [block[1] for block in spans(drawn, Look.JOIST_BLOCK)] == [inches("12")]


def test_a_cut_beyond_the_wall_is_taken_at_its_end() -> None:
    laid = first_wall().walls[0]
    assert section(laid, inches("900")) == section(laid, laid.wall.length)
    assert section(laid, -inches("5")) == section(laid, ZERO)


def test_a_cut_through_a_bay_shows_the_next_stud_beyond() -> None:
    laid = first_wall().walls[0]
    drawn = section(laid, laid.of(Kind.STUD)[3].box.x1 + inches("4"))
    names = [s.name for s in drawn.shapes if isinstance(s, Fill) and s.look is Look.STUD]
    assert names == ["A.stud.5"]
    assert "stud" not in drawn.title


@settings(max_examples=60)
@given(single_walls(), st.integers(-20, 520))
def test_a_wall_can_be_cut_anywhere(tree: Tree, at: int) -> None:
    for laid in layout_of(tree).walls:
        assert render(section(laid, from_inches(at)), columns=50)


@pytest.mark.parametrize("columns", [50, 76, 110])
def test_half_an_inch_of_drywall_shows_beside_eight_feet(columns: int) -> None:
    text = render(section(first_wall().walls[0]), columns=columns)
    assert all("▐" in line for line in text.split("\n") if "│" in line and "│ stud" not in line)
