"""What holds of rooms: walls joined by corners, and jobs of which only a part was told."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from guide.layout.parts import Kind
from guide.lengths import ZERO
from tests.jobs import Tree, layout_of
from tests.properties import drywall_law, foam_law, laws
from tests.properties.ledge_law import corner_ledges
from tests.properties.rooms import parted_rooms, rooms, single_walls
from tests.properties.twins import half_told


@settings(max_examples=80)
@given(tree=rooms())
def test_walls_that_meet_in_a_corner_share_no_volume(tree: Tree) -> None:
    """Plates, packs, foam, caps and boxes of the two walls of a corner stand beside each other, one ledge over the corner."""
    layout = layout_of(tree)

    assert not [*laws.corner_clashes(layout), *corner_ledges(layout)]


@settings(max_examples=60)
@given(tree=st.one_of(rooms(), parted_rooms()))
def test_each_wall_of_a_room_keeps_the_laws_of_a_single_wall(tree: Tree) -> None:
    """A neighbour moves ends, foam and caps, and gives nothing leave to clash, hang or be bare."""
    layout = layout_of(tree)
    each = (
        laws.clashes, laws.strays, laws.hanging, foam_law.bare_concrete, laws.open_ways, drywall_law.loose_edges,
        drywall_law.bare_framing, drywall_law.loose_sheets,
    )  # fmt: skip

    assert not [said for law in each for wall in layout.walls for said in law(wall, layout.survey.basement)]


@settings(max_examples=100)
@given(tree=rooms())
def test_exactly_one_wall_fills_each_corner_with_foam_and_one_runs_through(tree: Tree) -> None:
    """Two fills would clash, two gaps would leave bare concrete; two through walls would cross."""
    layout = layout_of(tree)
    for wall in layout.walls:
        other = layout.by_letter.get(wall.wall.right_joined or "")
        if other is None:
            continue
        assert wall.right.through is not other.left.through
        past = ZERO if wall.right.what == "inside corner" else wall.offsets.foam_face
        fills = [
            max((part.box.x1 for part in wall.of(Kind.FOAM)), default=ZERO) == wall.wall.length + past,
            min((part.box.x0 for part in other.of(Kind.FOAM)), default=ZERO) == -past,
        ]
        things = (*wall.wall.pipes, *wall.wall.openings, *other.wall.pipes, *other.wall.openings)
        # a thing in the corner keeps foam out of it, and so does a fireblock that goes through the foam
        assert sum(fills) == 1 or things or layout.survey.basement.block_reach == "concrete"


@settings(max_examples=120)
@given(tree=half_told(st.one_of(single_walls(), rooms())))
def test_a_job_told_in_part_is_drawn_all_the_same(tree: Tree) -> None:
    """The wall is drawn beside the talk from the first answers on: usual values stand in, and even they never clash."""
    layout = layout_of(tree)
    each = (laws.clashes, laws.strays, laws.hanging, laws.in_the_way)

    assert not [said for law in each for wall in layout.walls for said in law(wall, layout.survey.basement)]
