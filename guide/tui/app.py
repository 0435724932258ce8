"""The app: it opens the talk on a job, or the start screen that finds or makes one."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, ClassVar

from textual.app import App
from textual.filter import LineFilter
from textual.worker import get_current_worker

from guide.book.questions import Book
from guide.session import Session
from guide.tui.talk import Talk

if TYPE_CHECKING:
    from guide.tui.writing import Told, Writing


class Wallbrief(App[None]):
    """The terminal app. It owns the screens, and what is worked out behind them; the session owns the job."""

    TITLE = "wallbrief"
    CSS_PATH = "wallbrief.tcss"
    ENABLE_COMMAND_PALETTE = False
    BINDINGS: ClassVar = [("ctrl+q", "quit", "Quit")]

    def __init__(
        self, book: Book, session: Session | None, folder: Path, *, ascii_only: bool = False, light: bool = False
    ) -> None:
        super().__init__()
        self._ascii_only = ascii_only
        self.theme = "textual-light" if light else self.theme
        self.book = book
        self.session = session
        self.folder = folder
        self._writing: Writing | None = None

    def on_mount(self) -> None:
        """Open the talk, or ask first which job it is about."""
        if self.session is not None:
            self.push_screen(Talk(self.session))
        else:
            from guide.tui.start import Start

            self.push_screen(Start(self.folder), self._open)

    def _open(self, chosen: Path | str | None) -> None:
        if chosen is None:
            self.exit()
            return
        if isinstance(chosen, str):
            from guide.rehearsal import Rehearsal

            self.session = Rehearsal(self.book, chosen, ascii_only=self._ascii_only)
        else:
            self.session = Session.opened(self.book, chosen, ascii_only=self._ascii_only)
        self.push_screen(Talk(self.session))

    def get_line_filters(self) -> Sequence[LineFilter]:
        """Return what goes over every line before it is drawn."""
        if not self._ascii_only:
            return super().get_line_filters()
        from guide.tui.ascii import Ascii

        return (*super().get_line_filters(), Ascii())

    # ------------------------------------------------------------------------------------------- behind the screens

    def on_papers_write_wanted(self) -> None:
        """Write the papers while the talk goes on."""
        from guide.sheets.write import PAPERS_FOLDER
        from guide.tui.writing import Writing

        session = self.session
        assert session is not None
        folder = self.folder / PAPERS_FOLDER / (session.path.stem if session.path else "job")
        if self._writing is None or self._writing.answers != session.answers:
            self._writing = Writing(session.book, session.answers, session.plan, folder, session.again)
            # described by us, or the whole job is written out to do it
            self.run_worker(partial(self._write, self._writing), thread=True, description="write")

    def _write(self, writing: Writing) -> None:
        from guide.tui.writing import write

        worker, session = get_current_worker(), self.session
        assert session is not None
        write(writing, self.post_message, lambda: worker.is_cancelled or session.answers != writing.answers)

    def on_told(self, event: Told) -> None:
        """Say how far the writing is, and what came of it, wherever the person is."""
        from guide.tui.papers import Papers

        if event.finished and self._writing is not None and event.writing.answers == self._writing.answers:
            self._writing = None
        if self.session is not None and event.writing.again is not None:
            self.session.keep_again(event.writing.answers, event.writing.again)
        for screen in self.screen_stack:
            if isinstance(screen, Talk):
                screen.tell(event.line, finished=event.finished)
            elif isinstance(screen, Papers):
                screen.tell(event.line)


def make_app(
    book: Book, session: Session | None, folder: Path, *, ascii_only: bool = False, light: bool = False
) -> Wallbrief:
    """Return the app on a session, or on the start screen without one; `folder` is where jobs and papers are kept.

    `light` is for a screen with a light ground, `ascii_only` for a terminal that has no other characters.
    """
    return Wallbrief(book, session, folder, ascii_only=ascii_only, light=light)
