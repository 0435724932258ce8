"""From Enter to the next question, and on to the wall drawn again, in a job of many walls, against an app that only echoes."""

from __future__ import annotations

import asyncio
import time
from collections.abc import Sequence
from pathlib import Path

from textual.app import App, ComposeResult
from textual.containers import VerticalScroll
from textual.widgets import Input, Static

from guide.book.questions import load_book
from guide.interview.jobfile import Job
from guide.session import Session
from guide.tui.app import make_app
from guide.tui.talk import Talk
from tests.benchmarks.walls import job_of
from tests.tui.test_talk import settled

SIZE = (120, 40)
SIZES = ("2 3/8", "2 5/8", "2 1/2") * 3
LINES = 40
"""Lines of the talk that stand on the screen already."""


class Echo(App[None]):
    """What is typed is said back, nothing else."""

    AUTO_FOCUS = "#reply"
    shown = 0.0

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
        self.call_after_refresh(self._seen)

    def _seen(self) -> None:
        self.shown = time.perf_counter()


class Timed(Talk):
    """The talk, with the moment at which the next question is on the screen, and that at which the wall is."""

    asked = shown = 0.0

    def _look(self) -> None:
        self.asked = time.perf_counter()
        super()._look()

    def draw_wall(self, letter: str | None = None) -> None:
        """Draw the wall, and take the time when it can be seen."""
        super().draw_wall(letter)
        self.call_after_refresh(self._seen)

    def _seen(self) -> None:
        self.shown = time.perf_counter()


def ours(walls: int, path: str, replies: Sequence[str]) -> tuple[list[float], list[float]]:
    """Return the seconds from Enter to the next question, and to the wall, in a job of so many finished walls.

    Each reply is another answer to the question of this path; the first is left out.
    """
    return asyncio.run(_answered(job_of(walls), path, replies))


async def _answered(job: Job, path: str, replies: Sequence[str]) -> tuple[list[float], list[float]]:
    asked, shown = [], []
    app = make_app(load_book(), None, Path.cwd())
    async with app.run_test(size=SIZE) as pilot:
        screen = Timed(Session(load_book(), job))
        await app.push_screen(screen)
        await settled(pilot)
        for reply in replies:
            screen._change(path)
            await settled(pilot)
            screen.query_one("#reply", Input).value = reply
            await pilot.pause()
            start = time.perf_counter()
            await pilot.press("enter")
            await settled(pilot)
            asked.append(screen.asked - start)
            shown.append(screen.shown - start)
    return asked[1:], shown[1:]


def bare() -> list[float]:
    """Return the seconds that an echo takes to be on the screen."""
    return asyncio.run(_echoed())


async def _echoed() -> list[float]:
    times = []
    app = Echo()
    async with app.run_test(size=SIZE) as pilot:
        await pilot.pause()
        for reply in SIZES:
            app.screen.query_one("#reply", Input).value = reply
            await pilot.pause()
            start = time.perf_counter()
            await pilot.press("enter")
            await pilot.pause()
            times.append(app.shown - start)
    return times[1:]
