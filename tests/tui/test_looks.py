"""The app on the terminals people have: nothing but ASCII, a light ground, no colour. Every pane is visited in one run each."""

from __future__ import annotations

import re
from collections.abc import AsyncIterator
from pathlib import Path

import pytest
from rich.segment import Segment
from textual.color import Color
from textual.pilot import Pilot
from textual.widgets import Input

from guide.book.questions import load_book
from guide.interview.jobfile import Job
from guide.session import Session
from guide.tui.app import Wallbrief, make_app
from guide.tui.ascii import Ascii
from guide.tui.papers import Papers
from tests.tui.test_talk import say
from tests.walkthroughs import worked

LEAST_APART = 0.2
"""Difference of brightness, of 1 between black and white, under which a word could not be read."""


def segments(app: Wallbrief) -> list[Segment]:
    """Return everything that stands on the screen, or in the box that stands before it."""
    boxes = list(app.screen.query(".aside"))
    shown = boxes[0].region if boxes else app.screen.region
    strips = app.screen._compositor.render_strips()[shown.y : shown.bottom]
    return [segment for strip in strips for segment in strip.crop(shown.x, shown.right)]


async def panes(app: Wallbrief, pilot: Pilot[None]) -> AsyncIterator[str]:
    """Go round everything that opens: the talk with a wall, a list with a choice marked, a piece told, the palette, the papers."""
    await pilot.pause()
    await say(pilot, "what is D7")
    await say(pilot, "“banana ½” é")
    yield "talk"
    await pilot.press("f4", "right", "right")
    await pilot.pause()
    yield "pointed"
    await pilot.press("enter")
    await pilot.pause()
    yield "piece"
    await pilot.press("escape", "escape", "f6", "s")
    await pilot.pause()
    yield "palette"
    await pilot.press("escape", "f3", "down")
    await pilot.pause()
    yield "answers"
    await pilot.press("escape", "f5")
    await app.workers.wait_for_complete()
    await pilot.pause()
    yield "papers"
    await pilot.press("escape")
    assert app.focused is app.screen.query_one("#reply", Input)


def apart(segment: Segment) -> float:
    """Return how far the brightness of a word is from that of its ground."""
    style = segment.style
    assert style is not None
    assert style.color is not None
    assert style.bgcolor is not None
    words, ground = (Color.from_rich_color(each).brightness for each in (style.color, style.bgcolor))
    return abs(words - ground)


def room(*, ascii_only: bool = False) -> Session:
    """Return a session on four walls, one choice still to be made."""
    answers = {path: each for path, each in worked("four-walls").answers.items() if path != "D.joists"}
    return Session(load_book(), Job(answers), ascii_only=ascii_only)


async def test_a_terminal_with_nothing_but_ascii_gets_nothing_else() -> None:
    """Frames, bars, quotes and the drawing: every character on every pane is ASCII, and things still differ by their sign."""
    app = make_app(load_book(), room(ascii_only=True), Path(), ascii_only=True)
    async with app.run_test(size=(120, 40)) as pilot:
        async for pane in panes(app, pilot):
            text = "".join(segment.text for segment in segments(app))
            assert text.isascii(), pane
            if pane == "talk":
                assert "| stud" in text
                assert "= plate" in text
                assert '"banana' in text
            if pane == "papers":
                assert isinstance(app.screen, Papers)
                drawings = re.findall(r"^```text\n(.*?)^```", app.screen._papers["wall-D.md"], re.DOTALL | re.MULTILINE)
                assert drawings
                assert all(map(str.isascii, drawings)), "signs that were made plain later could be taken for each other"


def test_no_bar_or_block_that_the_terminal_library_draws_turns_into_a_question_mark() -> None:
    """Every block element, U+2580 to U+259F, of which scroll bars and frames are made, has a sign of its own kind."""
    blocks = "".join(map(chr, range(0x2580, 0x25A0)))
    (plain,) = Ascii().apply([Segment(blocks)], Color(0, 0, 0))

    assert plain.text.isascii()
    assert "?" not in plain.text


@pytest.mark.parametrize("look", ["light", "no colour"])
async def test_every_word_can_be_read_on_a_light_ground_and_without_colour(
    look: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Every word on every pane differs from its ground by its brightness; without colour nothing has a hue."""
    if look == "no colour":
        monkeypatch.setenv("NO_COLOR", "1")
    app = make_app(load_book(), room(), Path(), light=look == "light")
    async with app.run_test(size=(120, 40)) as pilot:
        async for pane in panes(app, pilot):
            words = [each for each in segments(app) if any(char.isalnum() for char in each.text)]
            assert words
            assert min(map(apart, words)) >= LEAST_APART, pane
            if look == "light" and pane in ("talk", "papers"):
                grounds = [Color.from_rich_color(each.style.bgcolor) for each in words if each.style is not None]
                assert sum(ground.brightness > 0.5 for ground in grounds) > len(grounds) / 2
            if look == "no colour":
                hues = {c for each in segments(app) if each.style for c in (each.style.color, each.style.bgcolor)}
                assert all(len(set(Color.from_rich_color(c).rgb)) == 1 for c in hues if c is not None), pane
