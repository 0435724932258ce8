"""A place kept free, such as for an electrical panel: worked by hand."""

from __future__ import annotations

from guide.layout.parts import Kind, overlap
from guide.lengths import inches
from tests.jobs import kept_free, laid, stands, wall
from tests.layout.sizes import marks, size

WALL = laid(wall("196 in", openings=[kept_free("70 in")]))
"""70 to 100 from the concrete corner; the plates start at 2 3/8."""


def test_nothing_is_built_in_a_place_kept_free_but_what_runs_on_over_it() -> None:
    inside = [p for p in WALL.parts if overlap(p.box.x0, p.box.x1, inches("70"), inches("100"))]

    (sheet,) = [part for part in inside if part.kind is Kind.DRYWALL and part.box.z0.off < inches("-48")]
    assert any(hole.x0 == inches("70") and hole.x1 == inches("100") for hole in sheet.notches)
    assert {part.kind for part in inside} - {Kind.DRYWALL} == {Kind.TOP_PLATE, Kind.CAP, Kind.CAP_LAP, Kind.RIM}


def test_the_wall_ends_at_a_full_stud_and_a_fireblock_on_both_sides() -> None:
    """Kings at 68 1/2 and 100, blocks of 3/4 behind them away from the free place, all less 2 3/8 on the plates."""
    assert marks(WALL, Kind.KING) == ["66 1/8", "97 5/8"]
    assert marks(WALL, Kind.FIREBLOCK)[1:3] == ["65 3/8", "99 1/8"]


def test_the_bottom_plate_stops_on_both_sides_of_it() -> None:
    """67 5/8 to its left, and from 97 5/8 to the end at 187 3/4."""
    assert [size(part.cut) for part in WALL.of(Kind.BOTTOM_PLATE)] == ["67 5/8", "90 1/8"]


def test_fireblocks_are_counted_on_each_side_by_themselves() -> None:
    """A long wall: 250 in of hollow left of the place need two more blocks, the 40 in right of it none."""
    long = laid(wall("320 in", openings=[kept_free("250 in")]))
    between = [p for p in long.of(Kind.FIREBLOCK) if inches("20") < p.box.x0 < inches("230")]

    assert len(between) == 2


def test_at_a_column_the_top_plate_stops_too_and_the_wall_ends_on_both_sides_of_it() -> None:
    """Kept free from 70 to 80; both plates start at 2 3/8 and end at 190 1/8: no wood touches what holds up the house."""
    column = laid(wall("196 in", openings=[stands("70 in", "column", "10 in", thing_wide="6 in")]))

    for kind in (Kind.TOP_PLATE, Kind.BOTTOM_PLATE):
        ends = [(size(part.box.x0), size(part.box.x1)) for part in column.of(kind)]
        assert (ends[0][0], ends[-1][1]) == ("2 3/8", "190 1/8")
        assert "70" in [end for _, end in ends]
        assert "80" in [start for start, _ in ends]
    assert marks(column, Kind.KING) == ["66 1/8", "77 5/8"]
