"""The record of what is buried: every thing a drill can meet, where a person in the finished room can measure it."""

import re

import pytest

from guide.book.questions import load_book
from guide.interview.jobfile import from_json
from guide.layout.parts import Kind
from guide.sheets.papers import papers
from guide.sheets.plan import Plan, make_plan
from guide.sheets.record import BURIED, foam_behind, plates_left_of_corner, record_rows
from guide.sheets.view import WallView
from guide.worked import WORKED_JOBS
from tests.jobs import Tree, job, l_room, lying, wall
from tests.walkthroughs import worked


def _view(plan: Plan, letter: str = "A") -> WallView:
    return WallView(plan, plan.layout.by_letter[letter])


def _planned(tree: Tree) -> Plan:
    return make_plan(load_book(), from_json(tree, load_book()))


def _row(view: WallView, what: str) -> tuple[str, ...]:
    return next(row[1:5] for row in record_rows(view) if row[5].startswith(what))


def test_places_run_from_the_finished_corner_and_depths_from_the_drywall() -> None:
    """Worked by hand on the first wall: plates from 2 3/8, the corner at 6 3/8, so A7 at 98 3/4 on them is at 94 3/4."""
    view = _view(make_plan(load_book(), worked("first-wall")))

    assert view.size(plates_left_of_corner(view)) == "4 in"
    assert view.size(foam_behind(view)) == "4 1/4 in"  # D 6 3/8 less foam 2 and glue 1/8
    assert _row(view, "A7, stud") == ("94 3/4", "96 1/4", "1 5/8 to 90 1/8", "1/2 to 4")
    assert _row(view, "AF2, fireblock")[3] == "2 1/2 to 4 1/4"  # from the foam to 1 1/2 over the stud


def test_round_an_outside_corner_places_run_from_the_edge_that_is_seen() -> None:
    """There the plates start right of the corner: its edge is the face of the other wall's drywall, 6 3/8 past the concrete."""
    view = _view(_planned(l_room()), "D")

    assert view.size(plates_left_of_corner(view)) == "-4 in"
    assert _row(view, "D1, stud")[:2] == ("4", "5 1/2")
    page = " ".join(papers(_planned(l_room()))["record.md"].split())
    assert "lies 4 in to the right of that corner" in page


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_everything_a_drill_can_meet_stands_in_it_once(name: str) -> None:
    """Each upright, block, box and backing by its mark, each pipe, each box's cable to be written in."""
    plan = make_plan(load_book(), worked(name))
    page = papers(plan)["record.md"]
    for laid in plan.layout.walls:
        rows = [row[5] for row in record_rows(_view(plan, laid.letter))]
        assert len(rows) == len(laid.of(*BURIED)) + len(laid.wall.pipes)
        for part in laid.of(*BURIED):
            assert rows.count(f"{part.mark}, {part.kind}") == 1
        for box in laid.of(Kind.OUTLET):
            assert f"Cable of {box.mark} goes" in page


def test_a_lying_pipe_has_its_heights_and_how_deep_it_lies() -> None:
    """Bottom at 40, an inch thick, its far side 1 1/2 from the concrete of a wall whose drywall stands 6 3/8 out."""
    view = _view(_planned(job([wall(pipes=[lying("20 in", "60 in")])])))
    left, right, high, deep = _row(view, "pipe 1")
    shift = view.wall.offsets.drywall  # the finished corner of a wall like this one round the corner

    assert (left, right) == (
        view.bare(view.wall.wall.pipes[0].left_edge - shift),
        view.bare(view.wall.wall.pipes[0].right_edge - shift),
    )
    assert high == "40 to 41"
    assert deep.split(" to ") == [
        view.bare(shift - view.wall.wall.pipes[0].out),
        view.bare(shift - view.wall.wall.pipes[0].back),
    ]


def test_a_place_that_rests_on_a_guess_is_locked_and_a_stop_holds_the_record_back() -> None:
    guessed = papers(_planned(job([wall(string="about 1 1/4 in")])))["record.md"]
    assert re.search(r"\| locked +\| locked +\| .* A2, stud", guessed)

    assert "A2, stud" not in papers(_planned(job([wall()], water="wet")))["record.md"]
