"""The bays over the concrete: worked by hand."""

from __future__ import annotations

from guide.layout.parts import Kind, WallLayout
from tests.jobs import alongside, laid, wall
from tests.layout.sizes import size


def rim(layout: WallLayout) -> list[tuple[str, str, str]]:
    """Return where each piece begins from the left concrete corner, how long and how high it is."""
    return [(size(p.box.x0), size(p.along), size(p.cut)) for p in layout.of(Kind.RIM)]


def test_between_joists_at_16_each_bay_has_a_piece_half_an_inch_smaller_both_ways() -> None:
    """72 in, joists at 15 1/4 and every 16: bays of 15 1/4, three of 14 1/2 and the rest from 64 3/4 on; joists 9 1/4 high."""
    assert rim(laid(wall("72 in"))) == [
        ("1/4", "14 3/4", "8 3/4"), ("17", "14", "8 3/4"), ("33", "14", "8 3/4"), ("49", "14", "8 3/4"),
        ("65", "6 3/4", "8 3/4"),
    ]  # fmt: skip


def test_beside_a_joist_alongside_the_foam_leaves_3_in_for_each_joist_block() -> None:
    """Plates from 2 3/8 to 66 1/8: blocks at 2 3/8, 23 1/8, 43 7/8 and 64 5/8, each with 3/4 on both sides, and a gap of 1/4.

    Right of the first block from 4 5/8 + 1/4 on, 18 1/2 less two gaps. What is left at the ends, 1 5/8 and 5 1/8 less gaps, is
    too little for a piece on the left.
    """
    assert rim(laid(wall("72 in", **alongside()))) == [
        ("4 7/8", "17 1/4", "8 3/4"), ("25 5/8", "17 1/4", "8 3/4"), ("46 3/8", "17 1/4", "8 3/4"), ("67 1/8", "4 5/8", "8 3/4"),
    ]  # fmt: skip


def test_where_foam_is_sealed_in_already_none_is_cut() -> None:
    assert rim(laid(wall("72 in"), rim="sealed")) == []
