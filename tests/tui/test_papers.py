"""The papers in the app: worked out and written behind the talk, which goes on; of answers that have changed none is written."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from pathlib import Path
from threading import Event

import pytest
from textual.widgets import Input, OptionList, Static

from guide.book.questions import Book, load_book
from guide.interview.answers import Answers
from guide.sheets.twice import Doubtful
from guide.tui import writing
from guide.tui.app import make_app
from guide.tui.papers import Papers
from guide.tui.talk import Talk
from tests.tui.test_talk import said, session_of

SIZES = [(80, 24), (120, 40), (200, 60)]
WAIT = 30
"""Seconds after which a thread that waits for the test gives up."""


async def test_writing_goes_on_behind_the_talk_and_is_dropped_when_an_answer_changes(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """How far it is stands over the talk while the person types; a changed answer ends it, no file is there; kept, all are."""
    started, go_on = Event(), Event()

    def slow(book: Book, answers: Answers, *, tell: Callable[[int, int], None]) -> tuple[Doubtful, ...]:
        tell(1, 2)
        started.set()
        assert go_on.wait(WAIT)
        tell(2, 2)
        return ()

    monkeypatch.setattr(writing, "tape_again", slow)
    session = session_of(tmp_path / "job.json")
    app = make_app(load_book(), session, tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        try:
            for reply in ("2 3/8", "keep"):
                started.clear()
                go_on.clear()
                await pilot.press("f5")
                assert isinstance(app.screen, Papers)
                await pilot.press("w", "w")
                await asyncio.to_thread(started.wait, WAIT)
                await pilot.pause()
                assert "1 of 2" in str(app.screen.query_one("#wrote", Static).render())
                await pilot.press("escape")
                await pilot.press(*"shelf")
                assert isinstance(app.screen, Talk)
                assert app.screen.query_one("#reply", Input).value == "shelf"
                assert "1 of 2" in str(app.screen.query_one("#strip", Static).render())
                app.screen._change("A.shelf")
                app.screen.query_one("#reply", Input).value = reply
                await pilot.press("enter")
                go_on.set()
                await app.workers.wait_for_complete()
                await pilot.pause()
                assert "readings tried" not in str(app.screen.query_one("#strip", Static).render())
                assert ("stopped writing" if reply == "2 3/8" else "Wrote") in said(app).splitlines()[-1]
                assert (tmp_path / "wallbrief-papers").exists() == (reply == "keep")
        finally:
            go_on.set()


@pytest.mark.parametrize("size", SIZES)
async def test_the_papers_open_at_once_are_read_across_and_written(
    size: tuple[int, int], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """F5 opens them before they are there, and any key still works; then each is in the list, and the first is shown.

    Prose and drawings fit across the smallest screen, wide tables are scrolled sideways by key, and w writes all of them.
    """

    def nothing_doubtful(book: Book, answers: Answers, *, tell: object) -> tuple[Doubtful, ...]:
        return ()

    monkeypatch.setattr(writing, "tape_again", nothing_doubtful)
    app = make_app(load_book(), session_of(), tmp_path)
    async with app.run_test(size=size) as pilot:
        await pilot.press("f5")
        screen = app.screen
        assert isinstance(screen, Papers)
        await app.workers.wait_for_complete()
        await pilot.pause()
        names = screen.query_one("#which", OptionList)
        assert [names.get_option_at_index(at).id for at in range(3)] == ["job-sheet.md", "shopping.md", "wall-A.md"]
        paper, text = screen.query_one("#paper"), screen.query_one("#text", Static)
        assert "# Job sheet" in str(text.render())
        assert "Press w" in str(screen.query_one("#wrote", Static).render())
        narrow = [line for line in str(text.render()).splitlines() if not line.startswith(("|", "#"))]
        assert max(map(len, narrow)) <= paper.scrollable_content_region.width
        assert paper.max_scroll_x == max(0, text.region.width - paper.scrollable_content_region.width)
        await pilot.press("enter", "right", "pagedown")
        await pilot.pause()
        assert (paper.scroll_x > 0) == (paper.max_scroll_x > 0)
        assert paper.scroll_y > 0
        await pilot.press("w", "escape")
        await app.workers.wait_for_complete()
        await pilot.pause()
        assert "Wrote" in said(app).splitlines()[-1]
        assert (tmp_path / "wallbrief-papers" / "job" / "wall-A.md").exists()
