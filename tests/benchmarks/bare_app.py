"""The unavoidable: an app with the same widgets as the talk, that starts, draws once and leaves."""

from textual.app import App, ComposeResult
from textual.containers import Horizontal, Vertical, VerticalScroll
from textual.widgets import Footer, Input, OptionList, Static


class Bare(App[None]):
    """The widgets of the talk with nothing behind them."""

    ENABLE_COMMAND_PALETTE = False

    def compose(self) -> ComposeResult:
        """The same tree."""
        yield Static("strip")
        with Horizontal():
            with Vertical():
                with VerticalScroll():
                    yield Static("question")
                yield OptionList("one", "two")
                yield Input()
            with VerticalScroll():
                yield Static("wall")
        yield Footer()

    def on_mount(self) -> None:
        """Leave as soon as the first picture is drawn."""
        self.call_after_refresh(self.exit)


if __name__ == "__main__":
    Bare().run(headless=True)
