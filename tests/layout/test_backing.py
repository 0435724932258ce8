"""Wood behind what will hang: in which bays, at which heights, and what it gives way to."""

from __future__ import annotations

from guide.interview.written import Json
from guide.layout.parts import Kind, WallLayout
from tests.jobs import fixture, laid, new_door, outlet, standing, wall, window
from tests.layout.sizes import cuts, marks, said, size


def heights(layout: WallLayout) -> list[tuple[str, str]]:
    """Return the lower and the upper edge of every row of blocks over the slab, each once, the lowest first."""
    edges = sorted({(part.box.z0.off, part.box.z1.off) for part in layout.of(Kind.BACKING)})
    return [(size(low), size(high)) for low, high in edges]


def test_a_shelf_gets_one_flat_block_in_every_bay_before_which_it_hangs() -> None:
    """Studs have their near edges at 18 3/4, 34 3/4 and 50 3/4 on the plate; the corner is 2 3/8 from the concrete.

    A shelf from 30 to 48 in of concrete covers parts of two bays of 14 1/2: from 20 1/4 and from 36 1/4.
    """
    layout = laid(wall(fixtures=[fixture("30 in", "48 in", "50 in")]))

    assert marks(layout, Kind.BACKING) == ["20 1/4", "36 1/4"]
    assert cuts(layout.of(Kind.BACKING)) == ["14 1/2", "14 1/2"]
    assert heights(layout) == [("48 1/4", "51 3/4")]
    assert {part.box.y1 for part in layout.of(Kind.BACKING)} == {layout.offsets.face}


def test_cabinets_get_two_rows_and_a_screen_two_double_ones() -> None:
    """A 2x4 lies about the height of the screws; for a screen two over each other stand in for a 2x8 (common practice).

    Worked by hand: each screw meets the middle of a block, never the seam between two.
    """
    cabinets = laid(wall(fixtures=[fixture("30 in", "34 in", "54 in", "cabinets", "84 in")]))
    screen = laid(wall(fixtures=[fixture("30 in", "34 in", "44 in", "screen", "60 in")]))

    assert heights(cabinets) == [("52 1/4", "55 3/4"), ("82 1/4", "85 3/4")]
    assert heights(screen) == [("38 3/4", "42 1/4"), ("42 1/4", "45 3/4"), ("58 1/4", "61 3/4"), ("61 3/4", "65 1/4")]


def test_two_heights_within_one_block_are_one_row() -> None:
    layout = laid(wall(fixtures=[fixture("30 in", "34 in", "54 in", "cabinets", "56 in")]))

    assert heights(layout) == [("53 1/4", "56 3/4")]


def test_a_bay_with_a_pipe_that_comes_too_far_forward_gets_no_block_and_says_so() -> None:
    """The pipe reaches 5 1/8 out: 3/4 in behind the studs' face at 5 7/8, where a block 1 1/2 thick would lie."""
    shelf: list[Json] = [fixture("60 in", "90 in")]
    clear = laid(wall(fixtures=shelf, pipes=[standing("75 in", "2 in", "4 1/4 in")]))
    blocked = laid(wall(fixtures=shelf, pipes=[standing("75 in", "2 in", "5 1/8 in")]))

    assert "backing_missing" not in said(clear)
    assert "backing_missing" in said(blocked)
    assert len(blocked.of(Kind.BACKING)) == len(clear.of(Kind.BACKING)) - 1


def test_before_an_opening_there_is_nothing_to_screw_to_and_over_it_short_studs_carry_the_blocks() -> None:
    """A rod over the door at 87 in gets blocks between the short studs on its header; one at 60 in hangs in the doorway."""
    over, within = (
        laid(wall(openings=[new_door("40 in")], fixtures=[fixture("45 in", "65 in", low)]))
        for low in ("87 in", "60 in")
    )

    assert "backing_missing" not in said(over)
    assert "backing_missing" in said(within)


def test_an_old_electrical_box_keeps_its_bay_and_a_new_one_moves_to_another() -> None:
    shelf: list[Json] = [fixture("60 in", "90 in", "16 in")]
    old = laid(wall(fixtures=shelf, boxes=[outlet("75 in", kind="existing")]))
    new = laid(wall(fixtures=shelf, boxes=[outlet("75 in")]))

    assert "backing_missing" in said(old)
    assert "backing_missing" not in said(new)
    assert all(
        box.box.x1 <= block.box.x0 or block.box.x1 <= box.box.x0
        for box in new.of(Kind.OUTLET)
        for block in new.of(Kind.BACKING)
    )


def test_under_a_window_the_short_studs_carry_the_blocks() -> None:
    layout = laid(wall(openings=[window("50 in")], fixtures=[fixture("55 in", "75 in", "20 in")]))

    assert said(layout) == []
    assert len(layout.of(Kind.BACKING)) >= 2
