"""Metal that sticks out of the concrete: asked for when somebody has some, and then a list to tick on the wall's page."""

from __future__ import annotations

import pytest

from guide.book.questions import load_book
from guide.interview.jobfile import from_json
from guide.session import Session
from guide.sheets.concrete import metal_rows
from guide.sheets.view import WallView
from tests.jobs import job, survey_of, wall


@pytest.fixture
def session() -> Session:
    """Open a job of one plain wall that says nothing of metal."""
    return Session(load_book(), from_json(job([wall("196 in")]), load_book()))


def test_what_comes_off_and_what_stays_is_told_in_the_talk_and_listed_from_the_left(session: Session) -> None:
    view = WallView(session.plan, session.plan.layout.walls[0])
    assert metal_rows(view) == []
    for line in ("change proud metal of wall A", "some of it stays", "3/4 at 24, 1/2 at 72", "3 at 48"):
        session.reply(line)
    plan = session.plan

    assert metal_rows(WallView(plan, plan.layout.walls[0])) == [
        ("", "24", "3/4", "Nip it off, or grind it flush"),
        ("", "48", "3", "Stays: cut the foam round it"),
        ("", "72", "1/2", "Nip it off, or grind it flush"),
    ]


def test_metal_past_the_end_of_the_wall_is_a_contradiction() -> None:
    (problem,) = survey_of(job([wall("196 in", metal="off", metal_off=["3/4 in at 197 in"])])).problems

    assert problem.paths == ("A.metal_off", "A.length")
