"""The drawing of the drywall: every sheet once, its joints as lines, and the openings in it."""

from __future__ import annotations

from guide.drawing.shapes import Fill, Look
from guide.drawing.sheets import sheets
from guide.drawing.text import render
from guide.layout.parts import Kind
from tests.jobs import laid, wall, window


def test_every_sheet_is_drawn_once_under_its_id() -> None:
    layout = laid(wall("196 in"))
    drawn = [s.name for s in sheets(layout).shapes if isinstance(s, Fill) and s.look is Look.SHEET]

    assert drawn == [part.id for part in layout.of(Kind.DRYWALL)]


def test_joints_and_names_show_and_the_legend_says_what_the_lines_are() -> None:
    """Five sheets of a wall 196 in long: three upright joints, and one that runs level from end to end."""
    text = render(sheets(laid(wall("196 in"))), columns=78)

    assert all(f"D{number}" in text for number in range(1, 6))
    assert "│ ─ joint of the drywall" in text
    assert max(line.count("─") for line in text.splitlines()[2:16]) > 60


def test_an_opening_shows_in_the_sheets() -> None:
    assert "opening" in render(sheets(laid(wall(openings=[window("40 in")]))), columns=78)
