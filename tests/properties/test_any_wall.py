"""What holds of any wall: random walls, one by one, with things on them at legal and often awkward places.

Every test draws its walls afresh from `rooms.single_walls` and asks one law of `laws`; a wall whose answers contradict
each other is not laid out, so there is nothing to ask of it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from hypothesis import given, settings

from guide.layout.parts import WallLayout
from guide.survey.model import Basement
from tests.jobs import Tree, layout_of
from tests.properties import drywall_law, foam_law, laws
from tests.properties.barrier_law import bare_area
from tests.properties.ledge_law import open_ledges
from tests.properties.rim_law import bare_bays
from tests.properties.rooms import single_walls
from tests.properties.window_law import open_tunnels, short_jambs

Law = Callable[[WallLayout, Basement], Iterator[str]]

any_wall = given(tree=single_walls())
often = settings(max_examples=120)


def broken(law: Law, tree: Tree) -> list[str]:
    """Return every sentence in which a job breaks a law."""
    layout = layout_of(tree)
    return [said for wall in layout.walls for said in law(wall, layout.survey.basement)]


@often
@any_wall
def test_no_two_parts_share_volume(tree: Tree) -> None:
    """Parts may touch; on a slope a square cut end may stand into its plate by the slope over its own thickness."""
    assert not broken(laws.clashes, tree)


@often
@any_wall
def test_every_part_lies_within_its_wall(tree: Tree) -> None:
    """Framing stands over the plates in the line of the studs, foam between the concrete corners, all under the joists."""
    assert not broken(laws.strays, tree)


@often
@any_wall
def test_every_upright_bears_at_both_ends(tree: Tree) -> None:
    """Over a stud there is from nothing to a sixteenth of an inch, and what the slope over its thickness explains."""
    assert not broken(laws.hanging, tree)


@often
@any_wall
def test_every_block_for_what_will_hang_reaches_from_upright_to_upright(tree: Tree) -> None:
    """Flat and flush with the room face of the two, which stand all the way along its ends."""
    assert not broken(laws.loose_backing, tree)


@often
@any_wall
def test_plate_pieces_tile_the_plates_between_doors_and_pipes(tree: Tree) -> None:
    """No gap, no overlap, no piece longer than a stick, and no plate in a door or a pipe."""
    assert not broken(laws.untiled, tree)


@often
@any_wall
def test_every_joint_of_the_top_plate_is_under_a_joist_or_a_block_or_is_remarked(tree: Tree) -> None:
    """Where no rule could be kept a remark says to scab the joint."""
    assert not broken(laws.joints_in_the_air, tree)


@often
@any_wall
def test_fire_cannot_run_further_than_the_limit_or_it_is_remarked(tree: Tree) -> None:
    """Model code, IRC 2021 R302.11: ten feet along the wall; and each end is closed, or a remark says that it is not."""
    assert not broken(laws.open_ways, tree)


@often
@any_wall
def test_every_fireblock_lies_against_one_stud_all_the_way_up(tree: Tree) -> None:
    """Common practice: it is screwed flat to the side of a stud, a lap wide, so that it needs no second stud to hold it."""
    assert not broken(laws.unheld_blocks, tree)


@often
@any_wall
def test_low_concrete_is_closed_by_its_ledge_and_every_fireblock_goes_on_above_it(tree: Tree) -> None:
    """Model code, IRC 2021 R302.11: the hollow below and the one above, which reaches back to the wood wall, are parted."""
    assert not broken(open_ledges, tree)


@often
@any_wall
def test_every_bay_over_the_concrete_has_its_foam_or_it_is_remarked(tree: Tree) -> None:
    """Between joists, or between joist blocks, a quarter inch clear of them all round."""
    assert not broken(bare_bays, tree)


@often
@any_wall
def test_every_framed_window_is_lined_from_its_frame_to_the_face_of_the_wall_or_it_is_remarked(tree: Tree) -> None:
    """A buck half an inch off the concrete (common practice), and drywall on it, each closed all round."""
    assert not broken(open_tunnels, tree)


@settings(max_examples=40)
@any_wall
def test_every_jamb_that_stays_is_brought_out_to_the_face(tree: Tree) -> None:
    """The frame of a door that leads outside is not moved (common practice)."""
    assert not broken(short_jambs, tree)


@often
@any_wall
def test_every_upright_drywall_edge_has_wood_behind_it_or_is_remarked(tree: Tree) -> None:
    """Three eighths of an inch of it, all the way up (common practice)."""
    assert not broken(drywall_law.loose_edges, tree)


@often
@any_wall
def test_drywall_openings_and_boxes_cover_the_wall(tree: Tree) -> None:
    """Foam may not stay bare: from the gap at the slab to the ceiling, end to end; the law names the gaps that are meant."""
    assert not broken(drywall_law.bare_framing, tree)


@settings(max_examples=30)
@any_wall
def test_by_area_no_foam_stays_bare_to_the_room_or_it_is_found(tree: Tree) -> None:
    """Model code, IRC 2021 R316.4: half an inch of drywall or an equal between foam and room; strips of 3/4 in are caulked."""
    assert not broken(bare_area, tree)


@often
@any_wall
def test_every_sheet_is_one_that_is_sold_and_covers_no_opening_and_no_pipe(tree: Tree) -> None:
    """Four by eight feet, half an inch off the slab, cut out where the framing leaves a hole."""
    assert not broken(drywall_law.loose_sheets, tree)


@often
@any_wall
def test_foam_and_its_meant_gaps_cover_the_concrete(tree: Tree) -> None:
    """From the gap at the slab to the top of the concrete, wall end to wall end; the law names the gaps that are meant."""
    assert not broken(foam_law.bare_concrete, tree)


@often
@any_wall
def test_nothing_stands_in_a_pipe_or_in_the_clear_of_an_opening(tree: Tree) -> None:
    """What is notched counts without its notches."""
    assert not broken(laws.in_the_way, tree)


@often
@any_wall
def test_every_part_is_counted_once_under_its_own_name(tree: Tree) -> None:
    """The takeoff counts names, so names have to count parts."""
    assert not broken(laws.miscounted, tree)
