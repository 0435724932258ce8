"""The same job gives the same wall, however it is told."""

from __future__ import annotations

from typing import cast

from hypothesis import given, settings

from guide.layout.parts import Kind
from tests.jobs import Tree, layout_of
from tests.properties.rooms import rooms, single_walls
from tests.properties.twins import in_millimetres, mirrored

UPRIGHT = (Kind.STUD, Kind.KING, Kind.TRIMMER, Kind.CRIPPLE)


@settings(max_examples=80)
@given(tree=rooms())
def test_a_job_in_millimetres_gives_the_same_wall_as_in_inches(tree: Tree) -> None:
    """Sizes that are equal give parts, decisions and remarks that are equal, to the tick."""
    ours, theirs = layout_of(tree), layout_of(in_millimetres(tree))

    assert [(w.parts, w.decisions, w.remarks) for w in ours.walls] == [
        (w.parts, w.decisions, w.remarks) for w in theirs.walls
    ]
    assert ours.survey.problems == theirs.survey.problems


@settings(max_examples=80)
@given(tree=rooms())
def test_the_same_job_gives_the_same_layout_every_time(tree: Tree) -> None:
    """Nothing depends on a clock, on the order of a set or on what was laid out before."""
    first, second = layout_of(tree), layout_of(tree)

    assert first.walls == second.walls
    assert [p.size_rests for p in first.parts.values()] == [p.size_rests for p in second.parts.values()]
    assert [p.place_rests for p in first.parts.values()] == [p.place_rests for p in second.parts.values()]


@settings(max_examples=200)
@given(tree=single_walls())
def test_a_wall_and_its_mirror_image_take_the_same_number_of_uprights(tree: Tree) -> None:
    """Both starts of the stud layout are tried, so no side is favoured: the counts are equal, not nearly equal.

    Of two openings too close to be framed both, the left one is framed: such walls are not asked. Of two starts equally
    good the left one is taken, so that the studs may stand elsewhere in the mirror, and fireblocks with them.
    """
    cast(list[Tree], tree["walls"])[0] |= {"boxes": [], "fixtures": []}
    ours, theirs = layout_of(tree).walls, layout_of(mirrored(tree)).walls
    assert len(ours) == len(theirs)
    crowded = {"remark.opening_unframed", "remark.no_room"}
    for one, other in zip(ours, theirs, strict=True):
        if not crowded & {remark.saying.key for remark in (*one.remarks, *other.remarks)}:
            assert len(one.of(*UPRIGHT)) == len(other.of(*UPRIGHT))
            assert len(one.of(Kind.PACK)) == len(other.of(Kind.PACK))
            assert one.plate == other.plate
