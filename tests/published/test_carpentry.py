"""Carpentry against what is published: each figure with the book, standard or code that gives it.

“From memory” means that the paper was not open when the figure was written down; how sure we are stands beside it.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from guide.layout.engine import lay_out
from guide.layout.parts import Kind, WallLayout
from guide.lengths import Length, inches
from guide.reference.codes import load_code
from guide.reference.figures import load_figures
from tests.jobs import Tree, alongside, job, laid, layout_of, level, new_door, ring, survey_of, wall, window
from tests.layout.sizes import cuts, marks, size

OPEN: Tree = {"left": "open end", "right": "open end"}


def nails(layout: WallLayout, *kinds: Kind) -> dict[str, int]:
    """Return how many of each fastener hold parts of these kinds."""
    found: dict[str, int] = {}
    for part in layout.of(*kinds):
        for held in part.fastenings:
            found[held.fastener] = found.get(held.fastener, 0) + held.count
    return found


def test_a_2x4_is_an_inch_and_a_half_by_three_and_a_half() -> None:
    """American Softwood Lumber Standard, NIST PS 20-20, dressed dry sizes: from memory, high confidence.

    The same book gives a nominal 2 in thickness, so joists and sills too, as 1 1/2 in.
    """
    figures = load_figures()

    assert (figures.stud_thick, figures.stud_deep) == (inches("1 1/2"), inches("3 1/2"))
    assert (figures.joist_thick, figures.sill) == (inches("1 1/2"), inches("1 1/2"))
    for stud in laid(wall()).of(Kind.STUD):
        assert (stud.box.x1 - stud.box.x0, stud.box.y1 - stud.box.y0) == (inches("1 1/2"), inches("3 1/2"))


def test_cap_and_fireblock_plywood_is_no_thinner_than_the_model_code_counts_as_a_block() -> None:
    """IRC R302.11.1: 23/32 in wood structural panel, joints backed by the same (seen in the matching IBC text)."""
    assert load_code().fireblock_plywood.length == inches("23/32")
    layout = laid(wall(), block_reach="concrete")
    for part in layout.of(Kind.CAP, Kind.CAP_LAP):
        assert part.box.z1.off - part.box.z0.off >= inches("23/32")
    for block in layout.of(Kind.FIREBLOCK):
        assert block.box.x1 - block.box.x0 >= inches("23/32")


@pytest.mark.parametrize(("feet", "between"), [(10, 0), (24, 2), (31, 3)])
def test_fireblocks_along_the_wall_are_ten_feet_apart_at_most(feet: int, between: int) -> None:
    """IRC R302.11: concealed spaces are blocked horizontally at 10 ft or less (seen in quotations of the code).

    Ends closed, that is ceil(length / 10) - 1 between them: none in 10 ft, two in 24, three in 31.
    """
    layout = laid(wall(f"{feet} ft", right_first="this wall"))

    assert load_code().blocks_along.length == inches("10 ft")
    assert len(layout.of(Kind.FIREBLOCK)) == between + 2
    assert len(layout.of(Kind.FIREBLOCK)) - 2 == -(-feet // 10) - 1


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


def test_the_first_stud_is_marked_at_fifteen_and_a_quarter() -> None:
    """US Navy, Builder 3 & 2, volume 1 (NAVEDTRA 14044), figure 1-42: 15 1/4 in, so that a panel's edge falls on a stud's middle."""
    layout = laid(wall("12 ft", **OPEN))

    assert marks(layout, Kind.STUD)[:3] == ["0", "15 1/4", "31 1/4"]
    assert [size(edge) for edge in layout.sheet_edges] == ["48", "96"]


def test_where_a_panel_is_up_already_the_first_mark_is_its_thickness_further() -> None:
    """The same figure of the Navy's book: 15 1/4 plus the thickness of the panel on the crossing wall, here 1/2 in."""
    first, second, *_ = layout_of(
        ring([wall(n, right_first="you choose") for n in ("20 ft", "15 ft", "20 ft", "15 ft")])
    ).walls

    assert marks(second, Kind.STUD)[1] == "15 3/4"
    assert first.left.through


@pytest.mark.parametrize(("feet", "studs"), [(8, 7), (12, 10), (60, 46), (148, 112)])
def test_studs_are_three_quarters_of_the_feet_and_one(feet: int, studs: int) -> None:
    """Estimating in Building Construction, page 157: 148 ft x 0.75 = 111, and one to start with makes 112.

    The Building Trades Pocketbook has the same: 60 ft less a quarter is 45, and one makes 46. A wall between two open
    ends, nothing in it. (148 ft is longer than a wall may be in a job, so its length is set behind the reader's back.)
    """
    survey = survey_of(job([wall("12 ft", **OPEN)]))
    (only,) = survey.walls
    longer = replace(survey, walls=(replace(only, length=inches(f"{feet} ft")),))
    (layout,) = lay_out(longer, load_code(), load_figures()).walls

    assert len(layout.of(Kind.STUD)) == studs == feet * 3 // 4 + 1


def test_a_corner_of_two_walls_takes_three_studs() -> None:
    """Estimating in Building Construction, page 157, counts a 2x4 corner as three studs: two more than the one of the run."""
    first, second, *_ = layout_of(
        ring([wall(n, right_first="you choose") for n in ("20 ft", "15 ft", "20 ft", "15 ft")])
    ).walls
    near = first.plate_end - inches("5")
    through = [part for part in first.of(Kind.STUD, Kind.PACK) if part.box.x0 >= near]
    butt = [part for part in second.of(Kind.STUD, Kind.PACK) if part.box.x1 <= second.plate_start + inches("5")]

    assert (len(through), len(butt)) == (2, 1)


def test_studs_set_in_place_take_eight_8d_nails_each() -> None:
    """IRC table R602.3(1): stud to plate, toe nail, 4-8d at each end (from memory, high confidence).

    Washington State's table, WAC 246-359-340, says the same of the sole plate (seen). 14 studs: 112 nails. Those into the
    treated plate are galvanised: IRC R317.3 (seen).
    """
    layout = laid(wall("208 in", **OPEN))

    assert len(layout.of(Kind.STUD)) == 14
    assert nails(layout, Kind.STUD) == {"nail_8d": 56, "nail_8d_galv": 56}


def test_double_studs_are_nailed_every_two_feet() -> None:
    """WAC 246-359-340: double studs, 16d at 24 in (seen). A trimmer of 81 3/8 has four spaces of 24 or less: five nails."""
    layout = laid(wall("144 in", **OPEN, openings=[new_door("50 in")]))

    assert cuts(layout.of(Kind.TRIMMER)) == ["81 3/8", "81 3/8"]
    assert nails(layout, Kind.TRIMMER) == {"nail_16d": 10}


def test_blocks_between_joists_take_three_8d_at_each_end() -> None:
    """IRC table R602.3(1) and WAC 246-359-340: blocking, toe nail, 3-8d (seen in the matching IBC table and the state's)."""
    layout = laid(wall(**alongside()))

    assert nails(layout, Kind.JOIST_BLOCK) == {"nail_8d": 6 * len(layout.of(Kind.JOIST_BLOCK))}


def test_a_notch_takes_forty_percent_of_a_stud_that_carries_nothing() -> None:
    """IRC 2018 R602.6 (seen): 40 % of 3 1/2 is 1.4 in."""
    assert load_figures().notch_most.inch == pytest.approx(
        inches("3 1/2").inch * int(load_code().notch_share.value) / 100, abs=1e-4
    )


def test_a_door_is_framed_two_inches_wider_than_its_leaf() -> None:
    """The Navy's book, chapter 1: unit width, finish frame, and 1/2 in for shims. 32 + 2 x 3/4 + 1/2 = 34.

    Height: leaf and 2 to 2 1/2 in, US Department of Agriculture, Agriculture Handbook 73 (from memory, medium).
    """
    layout = laid(wall("144 in", **OPEN, openings=[new_door("50 in")]), floor_finish="0 in")
    left, right = layout.of(Kind.TRIMMER)
    head = layout.of(Kind.HEADER)[0].box.z0.at(layout.wall, inches("66"))

    assert right.box.x0 - left.box.x1 == inches("32") + inches("3/4") * 2 + inches("1/2")
    assert inches("82") <= head <= inches("82 1/2")


def test_an_opening_to_eight_feet_has_a_flat_2x4_for_its_header() -> None:
    """IRC R602.7.4: in a wall that carries nothing, to 8 ft wide (seen in an older edition). Two are ours, for the trim."""
    layout = laid(wall("200 in", **OPEN, openings=[window("40 in", "96 in")]))

    assert load_code().header_span.length == inches("8 ft")
    assert {size(part.box.y1 - part.box.y0) for part in layout.of(Kind.HEADER)} == {"3 1/2"}
    assert layout.of(Kind.TRIMMER)[1].box.x0 - layout.of(Kind.TRIMMER)[0].box.x1 <= load_code().header_span.length


def test_a_stud_is_the_height_less_two_plates_and_the_gasket() -> None:
    """Precut studs are 92 5/8 (Journal of Light Construction, seen): with three plates of 1 1/2 that is a 97 1/8 wall.

    Ours has two plates on a gasket of 1/8 under joists at 96, so each stud is 92 7/8: a precut one would be 1/4 short.
    """
    layout = laid(wall(**level("96 in", "94 1/2 in")))

    assert inches("92 5/8") + load_figures().stud_thick * 3 == inches("97 1/8")
    assert set(cuts(layout.of(Kind.STUD))) == {"92 7/8"}
