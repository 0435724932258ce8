"""The walls are laid out and checked behind the talk: it goes on meanwhile, and what is stale is dropped, never lost."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from pathlib import Path
from threading import Event

import pytest
from textual.widgets import Input, Static

from guide.book.questions import load_book
from guide.interview.jobfile import Job
from guide.lengths import inches
from guide.session import Session
from guide.sheets.look import Look, Seen, look_over
from guide.tui import looking
from guide.tui.app import make_app
from guide.tui.talk import Talk
from tests.tui.test_papers import WAIT
from tests.tui.test_talk import drawn, said, session_of, settled
from tests.walkthroughs import worked

TOO_LONG = "302 3/4, 302 3/4, 303"
"""The back wall a foot longer than it is: the room does not close."""


async def test_the_talk_goes_on_while_the_walls_are_laid_out_and_only_the_last_answer_is_told_of(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The next question stands and can be typed at before the walls are laid out; another answer drops them, and the last one's stand."""
    started, go_on, dropped = Event(), Event(), list[Look]()

    def slow(look: Look, tell: Callable[[str], object]) -> Seen:
        tell("A")
        started.set()
        assert go_on.wait(WAIT)
        try:
            return look_over(look, tell)
        except looking.DroppedError:
            dropped.append(look)
            raise

    session = session_of()
    app = make_app(load_book(), session, Path())
    async with app.run_test(size=(120, 40)) as pilot:
        await settled(pilot)
        before = drawn(app)
        monkeypatch.setattr(looking, "look_over", slow)
        try:
            for thick in ("3", "1"):
                started.clear()
                assert isinstance(app.screen, Talk)
                app.screen._change("basement.foam_thickness")
                app.screen.query_one("#reply", Input).value = thick
                await pilot.press("enter")
                await asyncio.to_thread(started.wait, WAIT)
                await pilot.press(*"why")
                assert app.screen.query_one("#reply", Input).value == "why"
                assert said(app).endswith(session.question_lines()[0])
                assert "Laying out wall A" in str(app.screen.query_one("#strip", Static).render())
                assert drawn(app) == before
                assert all(len(worker.description) < 20 for worker in app.workers)  # no job is written out for it
                app.screen.query_one("#reply", Input).clear()
        finally:
            go_on.set()
        await settled(pilot)
        assert [look.job.answers["basement.foam_thickness"].value for look in dropped] == [inches("3")]
        assert "Laying out" not in str(app.screen.query_one("#strip", Static).render())
        assert drawn(app) != before
    assert session.layout.by_letter["A"].offsets.foam_face < inches("3")


async def test_what_came_to_light_is_said_over_the_question_it_was_found_behind() -> None:
    """The app says every line that the plain talk says to the same answer, before the question that comes next."""
    answers = {path: each for path, each in worked("four-walls").answers.items() if path != "C.length"}
    session, plain = (Session(load_book(), Job(answers)) for _ in range(2))
    app = make_app(load_book(), session, Path())
    async with app.run_test(size=(120, 40)) as pilot:
        await settled(pilot)
        app.screen.query_one("#reply", Input).value = TOO_LONG
        await pilot.press("enter")
        await settled(pilot)
        lines = said(app).splitlines()
    told = plain.reply(TOO_LONG).lines
    at = [lines.index(line) for line in told]
    assert len(told) > 1
    assert at == sorted(at)
    assert at[-1] < lines.index(plain.question_lines()[0])


async def test_what_contradicts_itself_in_a_job_that_is_opened_is_said_over_its_first_question() -> None:
    """Concrete higher than the joists, by hand in the file: the sentence stands before the question, and the line over the talk warns."""
    plain = session_of(without="A.concrete")
    plain.take("93 at left, 93 at right")
    (trouble,) = plain.problem_lines()
    session = Session(load_book(), plain.job)
    app = make_app(load_book(), session, Path())
    async with app.run_test(size=(120, 40)) as pilot:
        await settled(pilot)
        shown = said(app)
        assert trouble in shown
        assert shown.index(trouble) < shown.index(session.question_lines()[0])
        assert "! answers contradict" in str(app.screen.query_one("#strip", Static).render())
