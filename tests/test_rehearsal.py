"""A worked talk is played at the person's own speed: Enter says the next reply, and anything else may be said instead."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from textual.widgets import Input

from guide.book.questions import load_book
from guide.plain import talk
from guide.rehearsal import Rehearsal
from guide.tui.app import make_app
from guide.tui.talk import Talk
from guide.worked import WORKED_JOBS
from tests.tui.test_talk import said, say
from tests.walkthroughs import worked


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_empty_lines_alone_play_the_whole_worked_talk(name: str) -> None:
    """Enough empty lines in the plain talk give the answers of the worked job, each reply shown as it is said."""
    session, out = Rehearsal(load_book(), name), io.StringIO()
    first = session.worked_reply
    talk(session, io.StringIO("\n" * 400), out)

    assert session.current is None
    assert {p: a.value for p, a in session.answers.items()} == {p: a.value for p, a in worked(name).answers.items()}
    assert f"  Enter says: {first}\n> {first}\n" in out.getvalue()


def test_something_else_may_be_said_and_the_talk_goes_on_with_what_it_says_to_the_next_question() -> None:
    """An own answer is taken in place of the worked one; a “why” leaves the worked reply where it was."""
    session = Rehearsal(load_book(), "first-wall")
    session.reply("inches")
    offered = session.worked_reply
    session.reply("why")
    assert session.worked_reply == offered
    session.reply("sleeping")
    assert session.answers["basement.use"].value == "sleeping"
    assert session.worked_reply is not None
    assert session.worked_reply != offered


def test_where_the_worked_talk_says_nothing_an_empty_line_is_answered_as_ever() -> None:
    """A room that the worked talk does not know is asked about plainly: no reply is offered, and an empty one stores nothing."""
    session, out = Rehearsal(load_book(), "first-wall"), io.StringIO()
    talk(session, io.StringIO("\n" * 2 + "mended\n" + "\n"), out)

    assert session.current is not None
    assert session.current.path == "basement.rains"
    assert session.worked_reply is None
    assert "basement.rains" not in session.answers


@pytest.mark.parametrize("size", [(80, 24), (120, 40), (200, 60)])
async def test_in_the_app_the_start_screen_plays_it_and_enter_says_the_next_reply(
    size: tuple[int, int], tmp_path: Path
) -> None:
    """The answer box shows what Enter says; a typed answer counts as well, and nothing is written to the folder."""
    app = make_app(load_book(), None, tmp_path)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        app.screen.dismiss("first-wall")
        await pilot.pause()
        assert isinstance(app.screen, Talk)
        assert app.screen.query_one("#reply", Input).placeholder == "Enter says: inches"
        await say(pilot, "")
        assert app.session is not None
        assert app.session.answers["basement.tape"].value == "inches"
        await say(pilot, "sleeping")
        assert app.session.answers["basement.use"].value == "sleeping"
        assert "> sleeping" in said(app)
    assert list(tmp_path.iterdir()) == []
