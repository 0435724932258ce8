"""The lines a wall could stand on: a short table on its page, a word in the talk, and the person's own choice by pointing."""

from __future__ import annotations

import pytest

from guide.book.questions import load_book
from guide.interview.jobfile import Job, from_json
from guide.lengths import ZERO, as_run
from guide.order.times import in_hours
from guide.session import Session
from guide.sheets.view import WallView
from guide.sheets.ways import way_rows, way_typed
from tests.jobs import Tree, framed_door, job, lying, standing, wall


@pytest.fixture
def session() -> Session:
    """Open a job of one wall: a pipe that wants B 3 1/4 and a jamb that wants B 3, worked by hand in tests/layout."""
    things: Tree = {
        "pipes": [standing("140 in", "3 1/2 in", "6 in")],
        "openings": [{**framed_door("40 in", jamb="7 in"), "twist": "0 in"}],
    }
    return Session(load_book(), from_json(job([wall("196 in", **things)]), load_book()))


def test_the_table_prices_each_line_and_its_first_row_is_what_is_built(session: Session) -> None:
    """Floor over 2 3/8: 7/8 by 196 is 1.2 sq ft, 5/8 by 196 is 0.9. The box of two posts is wood and hours that are saved."""
    plan = session.plan
    rows = way_rows(WallView(plan, plan.layout.by_letter["A"]))

    assert [row[0] for row in rows] == ["3 1/4", "3", "2 3/8"]
    assert rows[0][1] == "Pipe 1 between two studs; Opening 1: frame pulled 1/4 in into the room"
    assert [row[2] for row in rows] == ["1.2 sq ft", "0.9 sq ft", "0"]
    assert int(rows[0][3]) < int(rows[1][3]) < int(rows[2][3])
    wood = [part.cut for part in plan.layout.walls[0].parts if part.material.startswith("2x4")]
    hours = in_hours(sum(step.alone for step in plan.steps))
    evenings = len(plan.calendar.evenings)
    assert rows[0][3:] == (str(len(wood)), as_run(sum(wood, ZERO)), "4", hours, str(evenings))


def test_the_talk_tells_the_lines_once_when_the_wall_is_done(session: Session) -> None:
    """The last answer of the wall brings it up, with the words that decide otherwise; the same words change the wall."""
    opened = Session(load_book(), Job({path: each for path, each in session.answers.items() if path != "A.other"}))
    lines = opened.reply("none").lines

    (told,) = [line for line in lines if "more than one line" in line]
    assert "change how the pipe is passed of pipe 1 of wall A" in told
    assert "change how its jamb and the wall meet of opening 1 of wall A" in told
    opened.reply("change how the pipe is passed of pipe 1 of wall A")
    opened.reply("box")
    assert opened.layout.walls[0].offsets.back.inch == 3  # the jamb's line


def test_a_plate_that_was_pointed_at_says_why_it_stands_so_far_out(session: Session) -> None:
    """The bottom plate stands on the line; its decision and the words to overrule it come with it."""
    lines = session.piece_lines(("A.bottom_plate.1",))

    assert any("for the sake of pipe 1" in line for line in lines)
    assert any("change how the pipe is passed of pipe 1 of wall A" in line for line in lines)


def test_what_the_person_decided_stands_first_and_what_it_beat_below(session: Session) -> None:
    """With the pipe in a box the jamb's line is built, B 3; the line that needs no box is still priced beside it."""
    session.change("A.pipe1.way")
    session.reply("box")
    view = WallView(session.plan, session.plan.layout.by_letter["A"])

    assert [row[0] for row in way_rows(view)] == ["3", "3 1/4", "2 3/8"]
    assert way_rows(view)[0][1] == "Pipe 1 in a box in the room; Opening 1: jamb flush with the wall"
    assert way_typed(view) == (
        "change how the pipe is passed of pipe 1 of wall A; change how its jamb and the wall meet of opening 1 of wall A"
    )


def test_notches_for_a_pipe_along_the_wall_are_priced_beside_moving_the_wall() -> None:
    """Out 3 over 60 in crosses four studs: B 3 1/2 behind them, or B 2 3/8 with notches 7/8 deep. 1 1/8 by 196 is 1.5 sq ft."""
    book = load_book()
    lain = Session(book, from_json(job([wall("196 in", pipes=[lying("0 in", "60 in", out="3 in")])]), book))
    rows = way_rows(WallView(lain.plan, lain.plan.layout.walls[0]))

    assert [row[:3] for row in rows] == [
        ("3 1/2", "Pipe 1 behind the studs", "1.5 sq ft"),
        ("2 3/8", "Pipe 1 in notches in the backs of the studs", "0"),
        (
            "2 3/8",
            "Pipe 1 in a box in the room",
            "0.6 sq ft",
        ),  # 2 1/2 past the pipe less the other wall's 6 3/8, by 1 1/2
    ]
    assert rows[1][3].endswith("4 of them notched")  # the end stud and the three of the module up to 60
    assert way_typed(WallView(lain.plan, lain.plan.layout.walls[0])) == (
        "change how the pipe along the wall is passed of pipe 1 of wall A"
    )
    lain.change("A.pipe1.along")
    lain.reply("notches")
    assert [row[0] for row in way_rows(WallView(lain.plan, lain.plan.layout.walls[0]))] == ["2 3/8", "3 1/2", "2 3/8"]
