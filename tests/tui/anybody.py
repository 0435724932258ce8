"""Somebody who presses, types, pastes and resizes anything. `python -m tests.tui.anybody STEPS SEED` goes on for thousands of steps."""

from __future__ import annotations

import asyncio
import random
import sys
import tempfile
from pathlib import Path

from textual import events
from textual.widgets import Input

from guide.book.questions import load_book
from guide.interview.jobfile import load, save
from guide.rehearsal import Rehearsal
from guide.session import Session
from guide.tui.app import make_app
from guide.tui.talk import Talk
from tests.tui.test_talk import session_of

SIZES = [(80, 24), (120, 40), (200, 60), (50, 15)]
KEYS = ("enter", "escape", "tab", "shift+tab", "up", "down", "left", "right", "home", "end", "pageup", "pagedown", "backspace",
        "f1", "f2", "f3", "f4", "f5", "f6", "f7", "ctrl+z", "ctrl+y", "1", "2", "3", "space", "a", "w", "quotation_mark")  # fmt: skip
LINES = ("92 1/2", "no, 93", "why", "how", "back", "later", "undo", "redo", "don't know", "usual", "keep", "yes", "no", "two windows at 4 ft and 9 ft",
         "no pipes, no outlets", "196 at floor", "91 left, 92 right", "inside corner", "none", "1", "[/red]", "what does crown mean",
         "what is missing", "find shelf", "mirror wall a", "copy wall a", "go to wall a", "draw", "floor plan", "findings", "what is A3",
         "about 3", "from 20 to 60", "sketch", "a partition at 10 ft", "16 after the door", "a column at 60", "16 ft, 7'8 concrete, no openings", "\x1b[2J", "é" * 50)  # fmt: skip
KEYS_AT_ONCE = 12


async def misuse(seed: int, steps: int, folder: Path) -> int:
    """Do so many steps and return how many were done. AssertionError when an answer is lost but by an undo, or the focus is stuck.

    Every third one plays a worked talk; the others have a job of their own, which has to be in its file at the end.
    """
    chance, book = random.Random(seed), load_book()
    session: Session = Rehearsal(book, "first-wall")
    if seed % 3 != 1:
        session = session_of(folder / "job.json", without=("A.", "", "A.openings")[seed % 3])
        save(folder / "job.json", book, session.job)
    app, done = make_app(book, session, folder), 0
    async with app.run_test(size=SIZES[seed % len(SIZES)]) as pilot:
        await pilot.pause()
        while done < steps and app.is_running:
            before, undone = set(session.answers), False
            what = chance.random()
            if what < 0.1:
                await pilot.resize_terminal(*chance.choice(SIZES))
            elif what < 0.5 and isinstance(app.screen, Talk):
                line = chance.choice(LINES)
                box = app.screen.query_one("#reply", Input)
                box.focus()
                if what < 0.2:
                    box.post_message(events.Paste(line))
                else:
                    box.value = line
                await pilot.press("enter")
                undone = "undo" in line
            else:
                keys = chance.choices(KEYS, k=KEYS_AT_ONCE)
                await pilot.press(*keys)
                undone = "ctrl+z" in keys or "f6" in keys
                done += len(keys) - 1
            done += 1
            assert undone or before <= set(session.answers), (seed, done)
        for _ in range(4):
            await pilot.press("escape")
        await pilot.pause()
        assert isinstance(app.screen, Talk), (seed, done)
        assert app.focused is app.screen.query_one("#reply"), (seed, done)
    if session.path is not None:
        assert load(session.path, book).answers == session.answers
    return done


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as kept:
        print(f"{asyncio.run(misuse(int(sys.argv[2]), int(sys.argv[1]), Path(kept)))} steps, nothing broke")
