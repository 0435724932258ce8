"""The finished room against shapely, a general-purpose geometry library: its own inward offset of the concrete's outline."""

from __future__ import annotations

from itertools import accumulate

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from guide.layout.outline import outline
from guide.lengths import inches
from tests.jobs import Tree, job, l_room, layout_of, wall
from tests.survey.test_closing import diagonals, room


def polygon(lengths: list[float], turns: list[tuple[float, float]]) -> shapely.Polygon:
    """Return the polygon of a walk that closes; `turns` are cosine and sine of each turn to the right."""
    headings = [complex(1, 0)]
    for cosine, sine in turns:
        headings.append(headings[-1] * complex(cosine, sine))
    corners = list(accumulate((length * way for length, way in zip(lengths, headings, strict=False)), initial=0j))
    return shapely.Polygon([(corner.real, corner.imag) for corner in corners])


def inset(shape: shapely.Polygon, depth: float) -> shapely.Polygon:
    return shape.buffer(-depth, join_style="mitre", mitre_limit=100)


RIGHT, LEFT = (0.0, 1.0), (0.0, -1.0)


def test_an_l_shaped_room_shrinks_as_the_library_says() -> None:
    """30 by 24 less 12 by 12, in units of 8 in; every wall stands 6 3/8 in to the face of its drywall."""
    got = outline(layout_of(l_room()))
    concrete = polygon([216, 120, 96, 72, 120, 192], [RIGHT, RIGHT, LEFT, RIGHT, RIGHT])
    finished = inset(concrete, 6.375)

    assert got is not None
    assert float(got.bare_area) == pytest.approx(concrete.area)
    assert float(got.finished_area) == pytest.approx(finished.area)
    assert float(sum(length.inch for length in got.finished.values())) == pytest.approx(finished.length)


def test_the_published_rule_of_thumb_eight_depths_off_the_perimeter_holds() -> None:
    """A ring of square corners has four more inside corners than outside ones, so the way round loses 8 D. Plane geometry."""
    got = outline(layout_of(l_room()))

    assert got is not None
    assert sum(length.inch for length in got.finished.values()) == inches("816").inch - 8 * inches("6 3/8").inch


def test_a_room_out_of_square_shrinks_as_the_library_says() -> None:
    """A parallelogram of 240 by 180 whose first corner has the cosine -1/72; walls stand 6 3/8 in.

    Its diagonals squared sum to 180,000; in whole inches 302 and 298 give 180,008, which moves the floor by 0.3 sq in.
    """
    got = outline(layout_of(diagonals("302 in", "298 in")))
    sine = (1 - (1 / 72) ** 2) ** 0.5
    concrete = polygon([240, 180, 240, 180], [(1 / 72, sine), (-1 / 72, sine), (1 / 72, sine)])

    assert got is not None
    assert float(got.bare_area) == pytest.approx(concrete.area)
    assert float(got.finished_area) == pytest.approx(inset(concrete, 6.375).area, abs=0.3)


@given(st.lists(st.integers(4, 24), min_size=4, max_size=4), st.sampled_from(["1 in", "2 in", "3 in"]))
def test_any_room_with_a_corner_cut_out_shrinks_as_the_library_says(feet: list[int], foam: str) -> None:
    """Any L: a rectangle less a smaller one at its right, with any thickness of foam."""
    wide, tall, cut_wide, cut_tall = (12 * each for each in (feet[0] + feet[2], feet[1] + feet[3], feet[2], feet[3]))
    lengths = [wide, tall - cut_tall, cut_wide, cut_tall, wide - cut_wide, tall]
    turns = ["inside", "inside", "outside", "inside", "inside", "inside"]
    tree: Tree = job(
        [wall(f"{n} in", right=f"{t} corner", right_first="you choose") for n, t in zip(lengths, turns, strict=True)],
        ring="yes",
        foam_thickness=foam,
    )
    layout = layout_of(tree)
    got = outline(layout)
    depth = float(layout.walls[0].offsets.drywall.inch)
    concrete = polygon([float(n) for n in lengths], [RIGHT, RIGHT, LEFT, RIGHT, RIGHT])

    assert got is not None
    assert float(got.finished_area) == pytest.approx(inset(concrete, depth).area)
    assert float(sum(n.inch for n in got.finished.values())) == pytest.approx(inset(concrete, depth).length)


def test_a_room_that_does_not_close_has_no_finished_outline() -> None:
    assert outline(layout_of(room(("240 in", "180 in", "230 in", "180 in")))) is None
    assert outline(layout_of(job([wall()]))) is None
