"""Carpentry against what is published: each figure with the book, standard or code that gives it.

“From memory” means that the paper was not open when the figure was written down; how sure we are stands beside it.
"""

from __future__ import annotations

import pytest

from guide.layout.parts import Kind
from guide.lengths import Length, inches
from guide.reference.codes import load_code
from guide.reference.figures import load_figures
from tests.jobs import Tree, laid, wall, window
from tests.layout.sizes import size

OPEN: Tree = {"left": "open end", "right": "open end"}


def test_cap_and_fireblock_plywood_is_no_thinner_than_the_model_code_counts_as_a_block() -> None:
    """IRC R302.11.1: 23/32 in wood structural panel, joints backed by the same (seen in the matching IBC text)."""
    assert load_code().fireblock_plywood.length == inches("23/32")
    layout = laid(wall(), block_reach="concrete")
    for part in layout.of(Kind.CAP, Kind.CAP_LAP):
        assert part.box.z1.off - part.box.z0.off >= inches("23/32")
    for block in layout.of(Kind.FIREBLOCK):
        assert block.box.x1 - block.box.x0 >= inches("23/32")


def test_twenty_feet_takes_two_fireblocks_where_a_block_has_a_thickness() -> None:
    """The rule's one block would have to stand at exactly 10 ft from both ends, and be no thicker than a line.

    Ours is measured to its far face from either side, and stands beside a stud, so that it is never over the limit: at
    240 in no 3/4 in block keeps both 120s, and there are two.
    """
    layout = laid(wall("20 ft", right_first="this wall"))
    blocks = layout.of(Kind.FIREBLOCK)[1:-1]

    assert len(blocks) == 2
    edges = [Length(0), *(b.box.x0 for b in blocks)], [*(b.box.x1 for b in blocks), layout.wall.length]
    assert all(right - left <= inches("10 ft") for left, right in zip(*edges, strict=True))


def test_a_notch_takes_forty_percent_of_a_stud_that_carries_nothing() -> None:
    """IRC 2018 R602.6 (seen): 40 % of 3 1/2 is 1.4 in."""
    assert load_figures().notch_most.inch == pytest.approx(
        inches("3 1/2").inch * int(load_code().notch_share.value) / 100, abs=1e-4
    )


def test_an_opening_to_eight_feet_has_a_flat_2x4_for_its_header() -> None:
    """IRC R602.7.4: in a wall that carries nothing, to 8 ft wide (seen in an older edition). Two are ours, for the trim."""
    layout = laid(wall("200 in", **OPEN, openings=[window("40 in", "96 in")]))

    assert load_code().header_span.length == inches("8 ft")
    assert {size(part.box.y1 - part.box.y0) for part in layout.of(Kind.HEADER)} == {"3 1/2"}
    assert layout.of(Kind.TRIMMER)[1].box.x0 - layout.of(Kind.TRIMMER)[0].box.x1 <= load_code().header_span.length
