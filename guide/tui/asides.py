"""What opens over the talk and gives something back: help, and the list of answers to change one."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import VerticalScroll
from textual.screen import ModalScreen
from textual.widgets import Footer, Input, Label, OptionList, Static
from textual.widgets.option_list import Option

from guide.sheets.said import Said


class Aside(ModalScreen[None]):
    """Lines to read; any of the usual keys closes it."""

    BINDINGS: ClassVar = [("escape", "close", "Close"), Binding("enter,f1", "close", show=False)]

    def __init__(self, title: str, lines: Iterable[str]) -> None:
        super().__init__()
        self._title = title
        self._lines = tuple(lines)

    def compose(self) -> ComposeResult:
        """One scrolling box."""
        with VerticalScroll(classes="aside"):
            yield Label(self._title, classes="heading")
            for line in self._lines:
                yield Static(line, markup=False, classes="said")
        yield Footer()

    def action_close(self) -> None:
        """Go back to the talk."""
        self.dismiss(None)


class AnswerList(ModalScreen[str | None]):
    """Every answer given so far; returns the path of the one to change, or None. Typing narrows the list."""

    BINDINGS: ClassVar = [("escape", "close", "Leave it"), Binding("down", "into_list", show=False)]
    AUTO_FOCUS = "#find"

    def __init__(self, said: Sequence[Said], heading: Callable[[str], str]) -> None:
        super().__init__()
        self._rows = [(row.path, f"{heading(row.place)}: {row.name}: {row.value} ({row.how_known})") for row in said]

    def compose(self) -> ComposeResult:
        """A box to type part of the answer's name, and the answers."""
        with VerticalScroll(classes="aside"):
            yield Label("Which answer do you want to change? Type part of it, or pick it.", classes="heading")
            yield Input(id="find", placeholder="length, height, foam ...")
            yield OptionList(*self._options(""), id="answers", markup=False)
        yield Footer()

    def _options(self, part: str) -> list[Option]:
        words = part.lower().split()
        return [Option(text, id=path) for path, text in self._rows if all(word in text.lower() for word in words)]

    def on_input_changed(self, event: Input.Changed) -> None:
        """Narrow the list to what is typed."""
        answers = self.query_one("#answers", OptionList)
        answers.clear_options()
        answers.add_options(self._options(event.value))

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Take the only answer left, else go into the list."""
        answers = self.query_one("#answers", OptionList)
        if answers.option_count == 1:
            self.dismiss(answers.get_option_at_index(0).id)
        elif answers.option_count:
            answers.focus()

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Take the answer picked."""
        self.dismiss(event.option.id)

    def action_into_list(self) -> None:
        """Go from the box into the list."""
        self.query_one("#answers").focus()

    def action_close(self) -> None:
        """Change nothing."""
        self.dismiss(None)
