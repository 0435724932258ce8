"""The start screen: a new job, one that lies in this folder, or a worked one to practise on."""

from __future__ import annotations

from pathlib import Path
from typing import ClassVar

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.screen import Screen
from textual.widgets import Footer, Input, Label, OptionList
from textual.widgets.option_list import Option

from guide.book.questions import load_book
from guide.interview.jobfile import JobFileError, load
from guide.worked import WORKED_JOBS, copy_of_worked_job

NEW = "my-basement"


class Start(Screen[Path | str | None]):
    """Returns the path of the job to open, or the name of a worked talk to play; None to leave."""

    BINDINGS: ClassVar = [("escape", "leave", "Leave")]
    AUTO_FOCUS = "#jobs"

    def __init__(self, folder: Path) -> None:
        super().__init__()
        self._folder = folder
        self._found = sorted(p for p in folder.glob("*.json") if p.is_file())

    def compose(self) -> ComposeResult:
        """Lay out the question, the jobs found, and the name of a new one."""
        with Vertical(id="start"):
            yield Label("Basement walls, one at a time. Which job is it?", classes="heading")
            options = [Option(f"Go on with {path.name}", id=f"open:{n}") for n, path in enumerate(self._found)]
            options += [
                Option(f"Practise on the worked job “{name}” (invented)", id=f"worked:{name}") for name in WORKED_JOBS
            ]
            options += [
                Option(f"Play the worked talk “{name}” step by step", id=f"play:{name}") for name in WORKED_JOBS
            ]
            options.append(Option("Start a new job: type its name below", id="new"))
            yield OptionList(*options, id="jobs")
            yield Input(value=self._free_name(), id="name", placeholder="name of the new job")
            yield Label("", id="trouble", markup=False)
        yield Footer()

    def _free_name(self) -> str:
        names = [NEW, *(f"{NEW}-{number}" for number in range(2, 1000))]
        return next(name for name in names if not (self._folder / f"{name}.json").exists())

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Open what was picked; a new job wants its name first."""
        kind, _, which = (event.option.id or "").partition(":")
        if kind == "open":
            self._leave_with(self._found[int(which)])
        elif kind == "play":
            self.dismiss(which)
        elif kind == "worked":
            self._leave_with(copy_of_worked_job(which, self._folder))
        else:
            self.query_one("#name").focus()

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Start a new job under the name typed."""
        name = "".join(c for c in event.value.strip() if c.isalnum() or c in " -_.").strip(". ")
        if not name:
            self._say("Give the job a short name, such as my-basement.")
            return
        path = self._folder / (name if name.endswith(".json") else f"{name}.json")
        self._leave_with(path)

    def _leave_with(self, path: Path) -> None:
        if path.exists():
            try:
                load(path, load_book())
            except JobFileError as error:
                self._say(str(error))
                return
        self.dismiss(path)

    def _say(self, text: str) -> None:
        self.query_one("#trouble", Label).update(text)

    def action_leave(self) -> None:
        """Leave without a job."""
        self.dismiss(None)
