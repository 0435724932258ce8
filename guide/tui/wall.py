"""The wall beside the talk: its drawing, what the last answer changed in it, and any piece of it to be pointed at."""

from __future__ import annotations

from typing import TYPE_CHECKING, ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import VerticalScroll
from textual.content import Content
from textual.geometry import Region
from textual.message import Message
from textual.widgets import Static

from guide.sheets.spoken import say_of_talk

if TYPE_CHECKING:
    from guide.drawing.pointing import Drawn
    from guide.layout.parts import Layout
    from guide.sheets.changes import Changes

Cell = tuple[int, int]
NARROWEST = 36
"""Columns that a drawing is made for at least."""


class WallPane(VerticalScroll):
    """A wall as wide as the pane allows. With the focus in it, arrows and the mouse go from piece to piece."""

    BINDINGS: ClassVar = [
        Binding("left", "step(-1, 0)", show=False),
        Binding("right", "step(1, 0)", show=False),
        Binding("up", "step(0, -1)", show=False),
        Binding("down", "step(0, 1)", show=False),
        Binding("enter", "choose", show=False),
        Binding("space", "view", show=False),
    ]

    class Pointed(Message):
        """The person points at a piece, or at a thing on the wall, and, where `chosen`, wants to hear all of it."""

        def __init__(self, name: str, *, chosen: bool) -> None:
            super().__init__()
            self.name = name
            self.chosen = chosen

    class WallWanted(Message):
        """The person wants to see another wall."""

        def __init__(self, letter: str) -> None:
            super().__init__()
            self.letter = letter

    def __init__(self, *, id: str, ascii_only: bool) -> None:  # noqa: A002 - the name that every widget takes
        super().__init__(id=id)
        self._ascii_only = ascii_only
        self._walls: Layout | None = None
        self._letter = ""
        self._changes: Changes | None = None
        self._shown_as = 0
        self._drawn: Drawn | None = None
        self._at: Cell | None = None

    def compose(self) -> ComposeResult:
        """How far the wall can be trusted, what changed, its drawing, and the piece that is pointed at."""
        yield Static("", markup=False, id="standing")
        yield Static("", markup=False, id="changed")
        yield Static("", id="drawing")
        yield Static(say_of_talk("pane_keys"), markup=False, id="piece")

    def show(self, layout: Layout, letter: str, standing: str, changes: Changes) -> None:
        """Show a wall by its letter, empty while there is none. `standing` says how far it can be trusted."""
        if letter != self._letter:
            self._at = None
        self._walls, self._letter, self._changes = layout, letter, changes
        self.query_one("#standing", Static).update(standing)
        changed = self.query_one("#changed", Static)
        changed.update(changes.said)
        changed.display = bool(changes.said)
        self._draw()

    def outdated(self) -> None:
        """Leave what is drawn until a wall is shown again, but let nothing in it be pointed at: it may be no more."""
        self._walls = self._drawn = None

    @property
    def letter(self) -> str:
        """The letter of the wall shown; empty while there is none."""
        return self._letter

    def tell(self, line: str) -> None:
        """Say in one line which piece is pointed at."""
        self.query_one("#piece", Static).update(line)

    def on_resize(self, event: events.Resize) -> None:
        """Draw again at the new width."""
        self._draw()

    # ------------------------------------------------------------------------------------------- pointing

    def on_key(self, event: events.Key) -> None:
        """Show the wall of a letter."""
        letter = (event.character or "").upper()
        if self._walls is not None and letter in self._walls.by_letter:
            event.stop()
            self.post_message(self.WallWanted(letter))

    def on_click(self, event: events.Click) -> None:
        """Point at what is clicked; a second click on it wants to hear all of it."""
        at = event.get_content_offset(self.query_one("#drawing"))
        if at is None or self._drawn is None or (name := self._drawn.names.get((at.x, at.y))) is None:
            return
        before = self._piece
        self._at = at.x, at.y
        self._point(chosen=name == before)

    def action_step(self, right: int, down: int) -> None:
        """Go on to the next piece in a direction; the first time, to one that shows."""
        if self._drawn is not None:
            self._at = self._drawn.first() if self._at is None else self._drawn.next(self._at, right, down)
            self._point(chosen=False)

    def action_choose(self) -> None:
        """Hear all of the piece that is pointed at."""
        if self._at is None:
            self.action_step(1, 0)
        else:
            self._point(chosen=True)

    def action_view(self) -> None:
        """Go round the elevation, the section and the floor plan."""
        self._shown_as, self._at = self._shown_as + 1, None
        self.tell(say_of_talk("pane_keys"))
        self._draw()

    @property
    def _piece(self) -> str | None:
        return self._drawn.names.get(self._at) if self._drawn is not None and self._at is not None else None

    def _point(self, *, chosen: bool) -> None:
        self._paint()
        if self._at is not None and self._piece is not None:
            self.scroll_to_region(Region(*self._at, 1, 1).translate(self._offset_of_drawing()), animate=False)
            self.post_message(self.Pointed(self._piece, chosen=chosen))

    def _offset_of_drawing(self) -> tuple[int, int]:
        return self.query_one("#drawing").virtual_region.offset

    # ------------------------------------------------------------------------------------------- drawing

    def _draw(self) -> None:
        if self._walls is None:
            return
        if self._letter not in self._walls.by_letter:
            self._drawn = None
            self.query_one("#drawing", Static).update(say_of_talk("not_drawn_yet"))
            return
        from guide.sheets.shown import drawn_wall  # no wall is drawn before the first question is

        columns = max(NARROWEST, self.scrollable_content_region.width)
        starred = self._changes.names if self._changes is not None else frozenset()
        self._drawn = drawn_wall(
            self._walls, self._letter, self._shown_as, columns, starred, ascii_only=self._ascii_only
        )
        if self._piece is None:
            self._at = None
        self._paint()

    def _paint(self) -> None:
        """Show the drawing, the piece that is pointed at the other way round."""
        if self._drawn is None:
            return
        text, name = Content("\n".join(self._drawn.lines)), self._piece
        starts = [0]
        for line in self._drawn.lines:
            starts.append(starts[-1] + len(line) + 1)
        for column, line_number in self._drawn.cells(name) if name else ():
            start = starts[line_number] + column
            text = text.stylize("reverse", start, start + 1)
        self.query_one("#drawing", Static).update(text)
