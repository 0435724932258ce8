"""The app: it opens the talk on a job, or the start screen that finds or makes one."""

from __future__ import annotations

from pathlib import Path
from typing import ClassVar

from textual.app import App

from guide.book.questions import Book
from guide.rehearsal import Rehearsal
from guide.session import Session
from guide.tui.start import Start
from guide.tui.talk import Talk


class Wallbrief(App[None]):
    """The terminal app. It owns the screens and nothing else; the session owns the job."""

    TITLE = "wallbrief"
    CSS_PATH = "wallbrief.tcss"
    ENABLE_COMMAND_PALETTE = False
    BINDINGS: ClassVar = [("ctrl+q", "quit", "Quit")]

    def __init__(self, book: Book, session: Session | None, folder: Path) -> None:
        super().__init__()
        self.book = book
        self.session = session
        self.folder = folder

    def on_mount(self) -> None:
        """Open the talk, or ask first which job it is about."""
        if self.session is not None:
            self.push_screen(Talk(self.session, self.folder))
        else:
            self.push_screen(Start(self.folder), self._open)

    def _open(self, chosen: Path | str | None) -> None:
        if chosen is None:
            self.exit()
            return
        if isinstance(chosen, str):
            self.session = Rehearsal(self.book, chosen)
        else:
            self.session = Session.opened(self.book, chosen)
        self.push_screen(Talk(self.session, self.folder))


def make_app(book: Book, session: Session | None, folder: Path) -> Wallbrief:
    """Return the app on a session, or on the start screen without one; `folder` is where jobs and papers are kept."""
    return Wallbrief(book, session, folder)
