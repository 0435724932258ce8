"""What holds of any two walls whose corner is not square."""

from __future__ import annotations

import math

from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from tests.jobs import Tree, job, layout_of
from tests.properties import drywall_law, laws
from tests.properties.angle_law import meeting
from tests.properties.rooms import basements, sizes, tape, walls


@st.composite
def bent(draw: st.DrawFn) -> Tree:
    """Draw two walls with a corner of any angle that can be framed, the reading across it to the sixteenth."""
    corner = draw(sizes(86, 98))
    outside = draw(st.booleans())
    one: Tree = draw(walls(corners=(None, corner)))
    other: Tree = draw(walls(corners=(corner, None)))
    if one["joists"] == other["joists"] == "alongside":  # joists of one floor run alongside no two walls that meet
        other["joists"] = "into"
        del other["parallel_gap"]
    one["right"] = "outside corner" if outside else "inside corner"
    # the marks lie as far apart inside a corner of 80 to 166 degrees as round one that leaves 80 to 166 of concrete
    least, most = (39, 106) if outside else (92, 138)
    one["across"] = tape(draw(sizes(least, most)))
    least, most = (39, 106) if one["left"] == "outside corner" else (92, 138)
    one["left_across"] = tape(draw(sizes(least, most)))
    return job([one, other], square="across the corners", **draw(basements()))


@settings(max_examples=12, phases=[Phase.generate])
@given(tree=bent())
def test_walls_that_meet_at_any_angle_share_no_room(tree: Tree) -> None:
    layout = layout_of(tree)
    if len(layout.walls) < 2:
        return
    reading = layout.survey.walls[0].across
    assert reading is not None
    cosine = (10_000 - float(reading.inch) ** 2) / 9_600
    sine = math.sqrt(1 - cosine * cosine)
    outside = layout.walls[0].right.what == "outside corner"
    turn = (cosine, -sine) if outside else (-cosine, sine)
    if 0 in layout.walls[0].right.turn:  # out by no more than shows: framed as a square one
        turn = (0, -1) if outside else (0, 1)

    assert not list(meeting(layout, *turn))
    each = (
        laws.clashes,
        laws.hanging,
        laws.open_ways,
        drywall_law.loose_edges,
        drywall_law.bare_framing,
        drywall_law.loose_sheets,
    )
    assert not [said for law in each for wall in layout.walls for said in law(wall, layout.survey.basement)]
