"""The papers, read inside the app, and written with one key."""

from __future__ import annotations

from pathlib import Path
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import VerticalScroll
from textual.screen import Screen
from textual.widgets import Footer, Label, OptionList, Static
from textual.widgets.option_list import Option

from guide.session import Session
from guide.sheets.papers import papers
from guide.sheets.write import PAPERS_FOLDER, usable, write_papers


class Papers(Screen[None]):
    """Pick a paper, read it as it will be printed, write them all."""

    BINDINGS: ClassVar = [
        ("escape", "close", "Back to the talk"),
        ("w", "write", "Write all"),
        Binding("f5", "close", show=False),
    ]
    AUTO_FOCUS = "#which"

    def __init__(self, session: Session, folder: Path) -> None:
        super().__init__()
        self._session = session
        self._folder = folder / PAPERS_FOLDER / (session.path.stem if session.path else "job")
        self._trouble = usable(session.plan)
        self._papers = {} if self._trouble else papers(session.plan)
        self._said = self._trouble or session.price_trouble()

    def compose(self) -> ComposeResult:
        """The list of papers, the one being read, and a line for what was written."""
        yield Label(self._said or "Your papers. Press w to write them all.", id="wrote", markup=False)
        yield OptionList(*(Option(name, id=name) for name in self._papers), id="which")
        with VerticalScroll(id="paper"):
            yield Static(next(iter(self._papers.values()), ""), markup=False, id="text")
        yield Footer()

    def on_option_list_option_highlighted(self, event: OptionList.OptionHighlighted) -> None:
        """Show the paper that the cursor is on."""
        self.query_one("#text", Static).update(self._papers[event.option.id or ""])
        self.query_one("#paper").scroll_home(animate=False)

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Go into the paper to scroll it."""
        self.query_one("#paper").focus()

    def action_write(self) -> None:
        """Write every paper and say where they went."""
        if self._trouble:
            return
        try:
            written = write_papers(self._session.plan, self._folder, self._session.again)
        except OSError as error:
            said = f"I could not write to {self._folder} ({error.strerror or error})."
        else:
            said = f"Wrote {len(written)} files to {self._folder}."
        self.query_one("#wrote", Label).update(said)

    def action_close(self) -> None:
        """Go back to the talk."""
        self.dismiss(None)
