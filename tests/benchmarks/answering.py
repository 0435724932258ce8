"""From Enter to the next question and the wall drawn again, in a job of many walls, against an app that only echoes."""

from __future__ import annotations

import asyncio
import time
from collections.abc import Callable
from pathlib import Path

from textual.app import App, ComposeResult
from textual.containers import VerticalScroll
from textual.widgets import Input, Static

from guide.book.questions import load_book
from guide.session import Session
from guide.tui.app import make_app
from guide.tui.talk import Talk
from tests.benchmarks.walls import job_of

SIZE = (120, 40)
REPLIES = ("2 3/8", "2 5/8", "2 1/2") * 4
LINES = 40
"""Lines of the talk that stand on the screen already."""


class Echo(App[None]):
    """What is typed is said back, nothing else."""

    AUTO_FOCUS = "#reply"

    def compose(self) -> ComposeResult:
        """The talk's lines and its box."""
        with VerticalScroll(id="talk"):
            for number in range(LINES):
                yield Static(f"line {number}")
        yield Input(id="reply")

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Say it back."""
        self.query_one("#talk").mount(Static(event.value))
        event.input.clear()


def ours(walls: int) -> list[float]:
    """Return the seconds that each answer about one finished wall among so many takes, the first left out."""
    app = make_app(load_book(), Session(load_book(), job_of(walls)), Path.cwd())

    def ask() -> None:
        screen = app.screen
        assert isinstance(screen, Talk)
        screen._change("C.shelf")

    return asyncio.run(_answered(app, ask))


def bare() -> list[float]:
    """Return the seconds that an echo takes."""
    return asyncio.run(_answered(Echo(), lambda: None))


async def _answered(app: App[None], ask: Callable[[], None]) -> list[float]:
    times = []
    async with app.run_test(size=SIZE) as pilot:
        await pilot.pause()
        for reply in REPLIES:
            ask()
            await pilot.pause()
            app.screen.query_one("#reply", Input).value = reply
            await pilot.pause()
            start = time.perf_counter()
            await pilot.press("enter")
            await pilot.pause()
            times.append(time.perf_counter() - start)
    return times[1:]
