"""Heights read at any number of places: whether a sheet of foam still gets in over a bottom plate that is down.

A sheet starts 1/2 in off the slab; the plate takes 1 1/2 in of the way, and 1/4 in is wanted to spare (common practice).
Joists at 92: a sheet up to 92 - 1/4 - 1 1/2 = 90 1/4 goes in, so foam up to 90 3/4 over the slab. Worked by hand.
"""

from __future__ import annotations

import pytest

from guide.interview.written import Json
from tests.jobs import job, laid, layout_of, wall

JOISTS: Json = ["92 in at left", "92 in at right"]


@pytest.mark.parametrize(
    ("middle", "first"), [("90 1/2 in", False), ("90 3/4 in", False), ("90 13/16 in", True), ("91 1/4 in", True)]
)
def test_a_hump_in_the_top_of_the_concrete_is_seen_where_only_the_concrete_was_read(middle: str, first: bool) -> None:
    """The ends would let the sheets in; the reading at 72 in decides, though the joists were not read there."""
    concrete: Json = ["90 1/2 in at left", f"{middle} at 72 in", "90 1/2 in at right"]

    assert laid(wall(height=JOISTS, concrete=concrete)).foam_first is first


def test_foam_that_ends_lower_than_the_concrete_may_go_in_over_the_plate() -> None:
    """Concrete up to 91 1/4 on both ends, but the foam leaves 3 in of it bare for the search for termites."""
    concrete: Json = ["91 1/4 in at left", "91 1/4 in at right"]
    (whole,), (bare,) = (
        layout_of(job([wall(height=JOISTS, concrete=concrete)], **more)).walls
        for more in ({}, {"insects": "yes", "strip": "3 in"})
    )

    assert (whole.foam_first, bare.foam_first) == (True, False)
