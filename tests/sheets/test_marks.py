"""The marks to call out at the plates: cumulative from the left, checked from the right, each on its own plate."""

from __future__ import annotations

import pytest

from guide.book.questions import load_book
from guide.interview.jobfile import from_json
from guide.lengths import MM, SIXTEENTH, inches
from guide.sheets.marks import marks_of
from guide.sheets.plan import Plan, make_plan
from guide.sheets.view import WallView
from guide.worked import WORKED_JOBS
from tests.jobs import job, new_door, wall, window
from tests.walkthroughs import worked


def views(plan: Plan) -> list[WallView]:
    return [WallView(plan, laid) for laid in plan.layout.walls]


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_what_is_read_from_the_left_and_from_the_right_end_makes_the_plate(name: str) -> None:
    """Both are rounded to a tape mark, so one more or less; the numbers only grow, and the last is the plate."""
    plan = make_plan(load_book(), worked(name))
    bare, mark_apart = ("mm", MM) if plan.tape == "millimetres" else ("in", SIXTEENTH)
    for view in views(plan):
        read = [mark for mark in marks_of(view) if "locked" not in (mark.at, mark.to, mark.from_right)]
        lefts = [inches(f"{mark.at} {bare}") for mark in read]
        assert lefts == sorted(lefts)
        for mark in read:
            left, right = inches(f"{mark.at} {bare}"), inches(f"{mark.from_right} {bare}")
            assert abs(left + right - view.wall.plate) <= mark_apart
            assert not mark.to or inches(f"{mark.to} {bare}") > left
        assert (read[-1].what, read[-1].from_right) == ("right end of the plates", "0")


def test_each_mark_is_drawn_on_the_plate_that_its_piece_stands_on() -> None:
    """A trimmer ends under the header and a stud under a sill starts at the floor: the top plate shows neither."""
    plan = make_plan(
        load_book(), from_json(job([wall("16 ft", openings=[window("40 in"), new_door("120 in")])]), load_book())
    )
    marks = marks_of(views(plan)[0])
    on = {mark.what.partition(",")[0]: mark.plate for mark in marks}
    assert {on["AT1"], on["AT2"], on["AT3"], on["AT4"]} == {"bottom"}
    assert {on["AK1"], on["A1"], on["AP1"], on["AF1"], on["right end of the plates"]} == {"both"}
    assert {mark.plate for mark in marks if "over the header" in mark.what} == {"top"}
    assert {mark.plate for mark in marks if "under the sill" in mark.what} == {"bottom"}
    for mark in marks:
        if " plate" in mark.what and mark.plate != "both":
            assert f"{mark.plate} plate" in mark.what
