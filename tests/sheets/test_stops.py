"""Uprights that are cut alike are named together, so that the saw's stop is set once; every one still stands in the cut list."""

from __future__ import annotations

from guide.book.questions import load_book
from guide.interview.jobfile import from_json
from guide.sheets.plan import make_plan
from guide.sheets.stops import stops
from guide.sheets.view import WallView
from tests.jobs import Tree, job, wall, window


def lines_of(tree: Tree) -> list[str]:
    plan = make_plan(load_book(), from_json(job([tree]), load_book()))
    return stops(WallView(plan, plan.layout.walls[0]))


def test_on_a_level_slab_every_stud_is_cut_at_one_stop() -> None:
    """144 in, H 92, cap on the concrete: 92 - 3 - 1/8 = 88 7/8 for eight on the module, two ends and the pack."""
    assert lines_of(wall()) == ["88 7/8 in: 11 pieces, A1 to A10, AP1"]


def test_pieces_of_a_window_are_named_with_their_own_stop() -> None:
    """Two pieces alike are no stop; what follows in number is told from the first to the last."""
    lines = lines_of(wall("196 in", openings=[window("60 in", "48 in")]))

    assert lines[0].startswith("88 7/8 in: ")
    assert "AK1, AK2" in lines[0]
    assert all(" pieces, " in line for line in lines)
    assert not any("AT1" in line for line in lines)


def test_on_a_slab_that_falls_no_stop_is_set() -> None:
    """2 in of fall over 144 in: no three studs are alike. A height that was only guessed is no stop either."""
    assert (
        lines_of(wall(height=["92 in at left", "94 in at right"], concrete=["90 1/2 in at left", "92 1/2 in at right"]))
        == []
    )
    assert lines_of({**wall(), "height": {"value": ["92 in at left", "92 in at right"], "known": "eyeballed"}}) == []
