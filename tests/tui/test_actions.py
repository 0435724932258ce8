"""The palette of actions, and a user who presses and types anything: no exception, no lost answer, no stuck focus."""

from __future__ import annotations

from pathlib import Path

import pytest
from textual.widgets import Input, OptionList, Static

from guide.book.questions import load_book
from guide.interview.jobfile import Job, load
from guide.session import Session
from guide.tui.app import make_app
from guide.tui.asides import WarningList
from guide.tui.talk import Talk
from guide.tui.wall import WallPane
from tests.tui.anybody import misuse
from tests.tui.test_talk import said, say, session_of, settled
from tests.walkthroughs import ROOT, worked

STEPS = 120
"""Keys and lines of each who presses anything; `python -m tests.tui.anybody` goes on for thousands."""


async def test_a_warning_is_signed_off_by_key_in_the_persons_own_words() -> None:
    """F7 puts the beginning into the answer box, before what is typed there; signed off, nothing waits any more."""
    session = session_of()
    app = make_app(load_book(), session, Path())
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        await pilot.press(*"the wall is moved anyway", "f7")
        await pilot.pause()
        box = app.screen.query_one("#reply", Input)
        assert box.value == "sign off A.outlet_reach because the wall is moved anyway"
        await pilot.press("enter")
        await settled(pilot)
        assert [each.because for each in session.job.signed] == ["the wall is moved anyway"]
        await pilot.press("f7")
        await pilot.pause()
        assert "waits to be signed off" in said(app)


async def test_of_several_warnings_the_one_to_sign_off_is_picked() -> None:
    """F7 lists them, each once; typing narrows them, and Enter begins with the one left. On a narrow screen there is no such key."""
    app = make_app(load_book(), Session(load_book(), worked("four-walls")), Path())
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        await pilot.press("f7")
        await pilot.pause()
        assert isinstance(app.screen, WarningList)
        rows = app.screen.query_one("#answers", OptionList).options
        assert len(rows) == len({row.id for row in rows})
        await pilot.press(*"old boxes", "enter")
        await pilot.pause()
        assert app.screen.query_one("#reply", Input).value == "sign off A.old_boxes because "
        await pilot.resize_terminal(60, 20)
        await pilot.press("f7")
        await pilot.pause()
        assert isinstance(app.screen, Talk)


@pytest.mark.parametrize(
    ("part", "left"), [("wall b", {"wall b"}), ("mir wall c", {"mirror wall c"}), ("irror wall c", {"mirror wall c"})]
)
async def test_what_is_typed_is_looked_for_at_the_beginning_of_words_first(part: str, left: set[str]) -> None:
    """The letter of a wall is no letter of another word; only where nothing begins so, the rows that have it anywhere stay."""
    app = make_app(load_book(), Session(load_book(), worked("four-walls")), Path())
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press("f6")
        await pilot.press(*part)
        await pilot.pause()
        rows = app.screen.query_one("#answers", OptionList)
        found = [str(rows.get_option_at_index(row).prompt).lower() for row in range(rows.option_count)]
        assert found
        assert all(any(each in row for each in left) for row in found)


async def test_an_action_is_picked_by_mouse() -> None:
    """A click on a row of the palette does it: the first row says why the question is asked."""
    app = make_app(load_book(), session_of(without="A.shelf"), Path())
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.pause()
        await pilot.press("f6")
        await pilot.pause()
        await pilot.click("#answers", offset=(6, 1))
        await pilot.pause()
        assert isinstance(app.screen, Talk)
        assert "must reach the sill" in said(app)


async def test_how_far_the_wall_can_be_trusted_stands_over_its_drawing() -> None:
    """Measured, guessed, missing and locked are counted in words beside the talk, and change with an answer."""
    session = session_of(without="A.string")
    app = make_app(load_book(), session, Path())
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.pause()
        line = app.screen.query_one(WallPane).query_one("#standing", Static)
        assert "1 missing" in str(line.render())
        await say(pilot, "about 1 1/4")
        await pilot.pause()
        assert session.current is None


async def test_the_worked_room_typed_into_the_app_gives_the_answers_of_its_file(tmp_path: Path) -> None:
    """The replies of the worked talk of four walls, through the app, end with the answers that the plain talk gives."""
    session = Session(load_book(), Job(), tmp_path / "job.json")
    app = make_app(load_book(), session, tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        for reply in (ROOT / "four-walls" / "replies.txt").read_text(encoding="utf-8").splitlines():
            app.screen.query_one("#reply", Input).value = reply
            await pilot.press("enter")
        await pilot.pause()
    kept = load(tmp_path / "job.json", load_book()).answers
    assert {p: (a.value, a.known) for p, a in kept.items()} == {
        p: (a.value, a.known) for p, a in worked("four-walls").answers.items()
    }


@pytest.mark.parametrize("seed", range(3))
async def test_whoever_presses_and_types_anything_breaks_nothing(seed: int, tmp_path: Path) -> None:
    """Any keys, lines, pastes and sizes: the app lives, no answer is lost but by an undo, and Escape leads home."""
    assert await misuse(seed, STEPS, tmp_path) >= STEPS
