"""The top of the concrete steps along one wall, worked by hand: shelf 2 1/2, B 2 3/8, joists at 92, concrete at 90 1/2 and 48."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from guide.interview.written import Json
from guide.layout.parts import Kind, WallLayout
from guide.lengths import Length, inches
from tests.jobs import Tree, job, laid, layout_of, level, wall
from tests.layout.sizes import cuts, decided, said, size, spans
from tests.properties import drywall_law, foam_law, laws
from tests.properties.rooms import basements, sizes, tape, walls


def stepped(*readings: str, joists: str = "92 in", **answers: Json) -> WallLayout:
    """Return a wall 196 in long whose concrete was read at these places."""
    heights: Tree = {**level(joists, "90 1/2 in"), "concrete": list[Json](readings)}
    return laid(wall("196 in", **heights, **answers))


DOWN = stepped("90 1/2 in at left", "90 1/2 in at 96 in", "48 in at 96 in", "48 in at right")


def rounded(length: Length) -> str:
    """Return a size without the tick that a step is wide."""
    return size(Length(length.ticks // 8 * 8))


def test_foam_is_cut_for_each_part_and_parts_at_the_step() -> None:
    """Half an inch off the slab: 90 tall on the left of 96, 47 1/2 on its right; 196 - 96 - 48 = 52 is evened out."""
    foam = DOWN.of(Kind.FOAM)

    assert [(rounded(p.box.x0), rounded(p.box.x1)) for p in foam] == [
        ("0", "48"), ("48", "96"), ("96", "144"), ("144", "170"), ("170", "196")
    ]  # fmt: skip
    assert cuts(foam) == ["90", "90", "47 1/2", "47 1/2", "47 1/2"]


def test_the_cap_goes_on_under_the_joists_and_a_ledge_lies_on_the_low_part_alone() -> None:
    """The ledge from the step at 96 to 196 - 2 3/8 at the butt end: 97 5/8, a strip and one of 24 that takes from it."""
    ledge = DOWN.of(Kind.LEDGE)

    assert decided(DOWN, "cap") == "cap_step"
    assert {size(p.box.z0.at(DOWN.wall, p.centre)) for p in DOWN.of(Kind.CAP)} == {"91 1/4"}
    assert [(rounded(p.box.x0), rounded(p.box.x1)) for p in ledge] == [("96", "169 5/8"), ("169 5/8", "193 5/8")]
    assert {size(p.box.z0.at(DOWN.wall, p.centre)) for p in ledge} == {"48"}


def test_all_studs_are_of_one_length_and_an_upright_fireblock_stands_beside_the_step() -> None:
    """92 less gasket, two plates and the cap: 88 1/8. Blocks to the plate before the step; behind it to 48, and mates above.

    The step's is beside the first stud past 96: the layout's at 99 5/8 in from the corner.
    """
    assert set(cuts(DOWN.of(Kind.STUD))) == {"88 1/8"}
    assert cuts(DOWN.of(Kind.FIREBLOCK)) == ["88 1/8", "88 1/8", "46 3/8", "46 3/8"]
    assert cuts(DOWN.of(Kind.UPPER_BLOCK)) == ["41", "41"]
    assert spans(DOWN.of(Kind.UPPER_BLOCK)) == spans(DOWN.of(Kind.FIREBLOCK)[2:])
    assert size(DOWN.of(Kind.FIREBLOCK)[2].box.x0) == "100 3/8"
    assert said(DOWN) == ["wood_wall_over"]


def test_a_step_up_is_the_same_seen_from_the_other_side() -> None:
    """Which of the two heights stands on which side is told by the readings at the ends, not by which was typed first."""
    up = stepped("48 in at left", "90 1/2 in at 100 in", "48 in at 100 in", "90 1/2 in at right")

    assert sorted(cuts(up.of(Kind.FOAM))) == sorted(cuts(DOWN.of(Kind.FOAM)))
    assert rounded(up.of(Kind.LEDGE)[-1].box.x1 + Length(8)) == "100"
    assert [size(p.box.z1.at(up.wall, p.centre)) for p in up.of(Kind.FIREBLOCK)][:2] == ["48", "48"]


def test_a_step_of_an_inch_takes_the_cap_off_the_concrete_and_needs_no_ledge() -> None:
    small = stepped("90 1/2 in at left", "90 1/2 in at 96 in", "89 1/2 in at 96 in", "89 1/2 in at right")

    assert (small.cap_case, decided(small, "cap"), small.of(Kind.LEDGE, Kind.UPPER_BLOCK)) == (2, "cap_step", ())


def test_a_step_rests_on_both_its_readings_and_bends_nothing() -> None:
    """The readings beside it are no curve: nobody is asked for more between them."""
    foam = DOWN.of(Kind.FOAM)[2]

    assert "A.concrete@96" in foam.place_rests
    assert [size(each) for each in DOWN.wall.concrete.off_line()] == ["0"] * 4


def test_a_step_past_the_end_of_the_wall_or_at_it_is_refused() -> None:
    """A step stands between the ends; what is read twice at an end is one reading too many."""
    heights: Tree = {
        **level("92 in", "90 in"),
        "concrete": ["90 in at left", "90 in at 200 in", "48 in at 200 in", "48 in at right"],
    }
    problems = layout_of(job([wall("196 in", **heights)])).survey.problems

    assert problems[0].saying.key == "problem.reading_outside"

    heights["concrete"] = ["90 in at left", "90 in at 196 in", "48 in at 196 in", "48 in at right"]
    problems = layout_of(job([wall("196 in", **heights)])).survey.problems
    assert problems[0].saying.key == "problem.reading_twice"


def test_caps_under_the_joists_of_both_walls_of_a_corner_meet_whatever_the_concrete_does_further_on() -> None:
    """The first wall steps down to 48 before the corner and meets concrete as low; at its other end it is a double sill high."""
    low = level("92 in", "48 in")
    down: Tree = {**low, "concrete": ["89 in at left", "89 in at 60 in", "48 in at 60 in", "48 in at right"]}
    a, b = layout_of(job([wall("144 in", right_first="this wall", **down), wall("120 in", **low)])).walls

    assert (a.cap_case, b.cap_case) == (3, 3)
    assert "caps_part" not in said(a) + said(b)
    assert size(a.of(Kind.LEDGE)[-1].box.x1 - a.wall.length) == "2 1/2"  # on to the other wall's wood
    high = layout_of(
        job([wall("144 in", right_first="this wall", **down), wall("120 in", **level("92 in", "89 in"))])
    ).walls[0]
    assert "caps_part" not in said(high)
    assert size(high.wall.length - high.of(Kind.LEDGE)[-1].box.x1) == "2 3/8"  # its concrete is in the way


@st.composite
def steps(draw: st.DrawFn) -> Tree:
    """Draw a wall with anything on it whose concrete steps once or twice."""
    tree: Tree = draw(walls())
    length = draw(sizes(400, 440))  # longer than any that was drawn, so that all on it still is
    tree["length"] = [f"{tape(length)} at floor"]
    tree["height"] = ["92 in at left", "92 in at right"]
    heights = [draw(st.sampled_from((1448, 1400, 1300, 768, 640))) for _ in range(3)]
    places = sorted(draw(st.sets(st.integers(128, length - 128), min_size=1, max_size=2)))
    readings = [f"{tape(heights[0])} at left"]
    for number, place in enumerate(places):
        if heights[number] == heights[number + 1]:
            heights[number + 1] -= 32
        readings += [f"{tape(heights[number])} at {tape(place)}", f"{tape(heights[number + 1])} at {tape(place)}"]
    tree["concrete"] = [*readings, f"{tape(heights[len(places)])} at right"]
    return job([tree], **draw(basements()))


@settings(max_examples=10)
@given(tree=steps())
def test_a_wall_with_steps_keeps_the_laws_of_one_without(tree: Tree) -> None:
    layout = layout_of(tree)
    each = (
        laws.clashes, laws.strays, laws.hanging, laws.untiled, laws.open_ways, laws.in_the_way, laws.miscounted,
        foam_law.bare_concrete, drywall_law.loose_edges, drywall_law.bare_framing,
    )  # fmt: skip
    assert not [said for law in each for w in layout.walls for said in law(w, layout.survey.basement)]
    for w in layout.walls:
        mates = {part.box.x0 for part in w.of(Kind.UPPER_BLOCK)}
        hollow = -w.wall.shelf < w.offsets.back
        for block in w.of(Kind.FIREBLOCK):
            low = w.wall.height.at(block.centre) - w.wall.concrete.at(block.centre) >= inches("6")
            assert (block.box.x0 in mates) is (low and hollow)
