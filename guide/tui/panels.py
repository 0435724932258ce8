"""The panels of the talk: the conversation, the strip over it, and the wall beside it. They are given values and show them."""

from __future__ import annotations

from collections.abc import Iterable

from textual.containers import VerticalScroll
from textual.widgets import Static

from guide.session import Session
from guide.tui.wall import NARROWEST

MOST_LINES = 96
"""Lines of the talk that can be scrolled back to; what was answered before is found in the list of answers."""

INDENT = 2
"""Columns by which the style sheet moves in what wallbrief said."""


class Conversation(VerticalScroll):
    """What was asked, heard and said, the newest at the bottom. Everything is text; nothing in it is markup."""

    can_focus = False

    def __init__(self, *, id: str) -> None:  # noqa: A002 - the name that every widget takes
        super().__init__(id=id)
        self._question: tuple[Static, ...] = ()
        self._top: Static | None = None

    def on_mount(self) -> None:
        """Stay at the bottom while lines come in."""
        self.anchor()

    def asked(self, heading: str, lines: list[str]) -> None:
        """Show a question under the name of what it is about."""
        self.anchor()
        over = self._add(heading, "heading") if heading else None
        self._question = tuple(self._add(line, "asked") for line in lines)
        self._top = over or self._question[0]

    def keep_question_in_sight(self) -> None:
        """Show the question again where what was said after it has pushed it out of sight."""
        if any(line.region.y < self.region.y for line in self._question):
            self._question = tuple(self._add(str(line.content), "asked") for line in self._question)
            self._top = self._question[0]

    @property
    def columns(self) -> int:
        """Columns that a line of what is said can have without being broken."""
        return max(NARROWEST, self.scrollable_content_region.width - INDENT)

    def read(self, pages: int) -> None:
        """Scroll by so many screens, a line less each, so that nothing is passed over; until the next reply."""
        self.scroll_relative(y=pages * (self.scrollable_content_region.height - 1), animate=False)

    def heard(self, text: str) -> None:
        """Show what the person said."""
        self.anchor()
        self._add(f"> {''.join(c for c in text if c.isprintable())}", "heard")

    def said(self, line: str) -> None:
        """Show what wallbrief said."""
        self._add(line, "said")

    def said_before(self, lines: Iterable[str]) -> None:
        """Show over the question what came to light after it was asked; the question stays where it is."""
        top = self._top if self._top in self.children else None
        for line in lines:
            self.mount(Static(line, markup=False, classes="said"), before=top)

    def _add(self, text: str, kind: str) -> Static:
        if len(self.children) > MOST_LINES:  # every line is laid out again with every answer, so the oldest go
            self.remove_children(self.children[: MOST_LINES // 2])
        line = Static(text, markup=False, classes=kind)
        self.mount(line)
        return line


class Strip(Static):
    """One line: how far the talk is, what is still locked, and where the job is kept."""

    def __init__(self, *, id: str) -> None:  # noqa: A002 - the name that every widget takes
        super().__init__(markup=False, id=id)

    def show(self, session: Session, work: str = "") -> None:
        """Show where the job stands, and before it what is worked out behind the talk."""
        done, whole, guessed = session.counts()
        parts = [*([work] if work else []), f"{done} of {whole} answered"]
        if guessed:
            parts.append(f"{guessed} guessed, so locked")
        if session.contradicted:
            parts.append("! answers contradict each other")
        parts.append(f"kept in {session.path.name}" if session.path else "not kept")
        self.update("  |  ".join(parts))
