"""The papers, read inside the app, and written with one key.

They are worked out beside the screen, which can be left at any time; writing goes on behind the talk (`guide.tui.writing`).
"""

from __future__ import annotations

from functools import partial
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import VerticalScroll
from textual.message import Message
from textual.screen import Screen
from textual.widgets import Footer, OptionList, Static
from textual.widgets.option_list import Option

from guide.sheets.papers import papers
from guide.sheets.plan import Plan
from guide.sheets.spoken import say_of_talk
from guide.sheets.write import usable


class Papers(Screen[None]):
    """Pick a paper, read it as it will be printed, have them all written."""

    BINDINGS: ClassVar = [
        ("escape", "close", "Back to the talk"),
        ("w", "write", "Write all"),
        Binding("f5", "close", show=False),
    ]
    AUTO_FOCUS = "#which"

    class Ready(Message):
        """The papers are worked out."""

        def __init__(self, papers: dict[str, str]) -> None:
            super().__init__()
            self.papers = papers

    class WriteWanted(Message):
        """The person wants all of them in files."""

    def __init__(self, plan: Plan, prices_said: str, *, ascii_only: bool) -> None:
        super().__init__()
        self._plan = plan
        self._ascii_only = ascii_only
        self._trouble = usable(plan)
        self._prices_said = prices_said
        self._papers: dict[str, str] = {}
        self._told = False

    def compose(self) -> ComposeResult:
        """The list of papers, the one being read, and a line for what is being written."""
        yield Static(self._trouble or say_of_talk("papers_making"), id="wrote", markup=False)
        yield OptionList(id="which")
        with VerticalScroll(id="paper"):
            yield Static("", markup=False, id="text")
        yield Footer()

    def on_mount(self) -> None:
        """Have the papers worked out, if anything can be planned at all."""
        if not self._trouble:
            # described by us, or the whole job is written out to do it
            self.run_worker(partial(self._work_out, self._plan), thread=True, description="papers")

    def _work_out(self, plan: Plan) -> None:
        self.post_message(self.Ready(papers(plan, ascii_only=self._ascii_only)))

    def on_papers_ready(self, event: Ready) -> None:
        """List the papers, and show the first; prices that could not be read are said over them."""
        self._papers = event.papers
        self.query_one("#which", OptionList).add_options(Option(name, id=name) for name in self._papers)
        self.query_one("#which", OptionList).highlighted = 0
        if not self._told:
            self.tell(self._prices_said or say_of_talk("papers_ready"))

    def tell(self, line: str) -> None:
        """Say how far the writing is, or where the files are."""
        self._told = True
        self.query_one("#wrote", Static).update(line)

    def on_option_list_option_highlighted(self, event: OptionList.OptionHighlighted) -> None:
        """Show the paper that the cursor is on."""
        self.query_one("#text", Static).update(self._papers[event.option.id or ""])
        self.query_one("#paper").scroll_home(animate=False)

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Go into the paper to scroll it."""
        self.query_one("#paper").focus()

    def action_write(self) -> None:
        """Have every paper written."""
        if not self._trouble:
            self.post_message(self.WriteWanted())

    def action_close(self) -> None:
        """Go back to the talk."""
        self.dismiss(None)
