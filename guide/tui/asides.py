"""What opens over the talk and gives something back: help, and the list of answers to change one."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import VerticalScroll
from textual.screen import ModalScreen
from textual.widgets import Footer, Input, Label, OptionList, Static
from textual.widgets.option_list import Option

from guide.sheets.actions import Action
from guide.sheets.said import Said


class Aside(ModalScreen[str | None]):
    """Lines to read, and perhaps something to do about them; returns the words that do it, or None.

    Any of the usual keys closes it; what can be done is picked by its number, by the mouse, or from its list.
    """

    BINDINGS: ClassVar = [("escape", "close", "Close"), Binding("enter,f1", "close", show=False)]

    def __init__(self, title: str, lines: Iterable[str], actions: Sequence[Action] = ()) -> None:
        super().__init__()
        self._title = title
        self._lines = tuple(lines)
        self._actions = actions

    def compose(self) -> ComposeResult:
        """What can be done on top, where it is found at once, and under it one scrolling box."""
        with VerticalScroll(classes="aside"):
            yield Label(self._title, classes="heading", markup=False)
            if self._actions:
                numbered = (Option(f"{n}  {each.says}", id=each.typed) for n, each in enumerate(self._actions, 1))
                yield OptionList(*numbered, id="do", markup=False)
            for line in self._lines:
                yield Static(line, markup=False, classes="said")
        yield Footer()

    def on_key(self, event: events.Key) -> None:
        """Take what has this number."""
        if (event.character or "").isdecimal() and 0 < int(event.character or "") <= len(self._actions):
            event.stop()
            self.dismiss(self._actions[int(event.character or "") - 1].typed)

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Take what was picked."""
        self.dismiss(event.option.id)

    def action_close(self) -> None:
        """Go back to the talk."""
        self.dismiss(None)


Rows = Sequence[tuple[str, str]]


class Picker(ModalScreen[str | None]):
    """Rows to pick one from; returns its key, or None.

    Typing narrows them to those that have what is typed as it stands; without any, to those in which each word of it begins a
    word; without any, to those that have each somewhere.
    """

    BINDINGS: ClassVar = [("escape", "close", "Leave it"), Binding("down", "into_list", show=False)]
    AUTO_FOCUS = "#find"

    def __init__(self, title: str, rows: Rows) -> None:
        super().__init__()
        self._title, self._rows = title, rows

    def compose(self) -> ComposeResult:
        """A heading, a box to type in, and the rows."""
        with VerticalScroll(classes="aside"):
            yield Label(self._title, classes="heading")
            yield Input(id="find", placeholder="type part of it")
            yield OptionList(*self._options(""), id="answers", markup=False)
        yield Footer()

    def _options(self, part: str) -> list[Option]:
        words = [re.escape(word) for word in part.lower().split()]
        for patterns in ([rf"\b{' '.join(words)}"], [rf"\b{word}" for word in words], words):
            found = [
                Option(text, id=key) for key, text in self._rows if all(re.search(p, text.lower()) for p in patterns)
            ]
            if found:
                return found
        return []

    def on_input_changed(self, event: Input.Changed) -> None:
        """Narrow the rows to what is typed."""
        answers = self.query_one("#answers", OptionList)
        answers.clear_options()
        answers.add_options(self._options(event.value))

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Take the only row left, else go into the list."""
        answers = self.query_one("#answers", OptionList)
        if answers.option_count == 1:
            self.dismiss(answers.get_option_at_index(0).id)
        elif answers.option_count:
            answers.focus()

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Take the row picked."""
        self.dismiss(event.option.id)

    def action_into_list(self) -> None:
        """Go from the box into the list."""
        self.query_one("#answers").focus()

    def action_close(self) -> None:
        """Pick nothing."""
        self.dismiss(None)


class ActionList(Picker):
    """Everything that can be done now; returns the words that do it."""

    def __init__(self, actions: Sequence[Action]) -> None:
        super().__init__(
            "What do you want to do? Type part of it, or pick it. You can say it in the talk as well.",
            [(each.typed, f"{each.typed}: {each.says}") for each in actions],
        )


class WarningList(Picker):
    """The warnings that are not signed off; returns the words that sign one off, the reason still to come."""

    def __init__(self, signable: Sequence[Action]) -> None:
        super().__init__(
            "Which warning do you sign off? Pick it, then say in your own words why you go on.",
            [(each.typed, each.says) for each in signable],
        )


class AnswerList(Picker):
    """Every answer given so far; returns the path of the one to change."""

    def __init__(self, said: Sequence[Said], heading: Callable[[str], str]) -> None:
        super().__init__(
            "Which answer do you want to change? Type part of it, or pick it.",
            [(row.path, f"{heading(row.place)}: {row.name}: {row.value} ({row.how_known})") for row in said],
        )
