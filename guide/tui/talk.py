"""The talk: the conversation, and the wall drawn beside it. Where there is no room for both, they take turns."""

from __future__ import annotations

from functools import partial
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Horizontal, Vertical
from textual.screen import Screen
from textual.widgets import Footer, Input, OptionList
from textual.widgets.option_list import Option
from textual.worker import get_current_worker

from guide.session import Session, Turn
from guide.sheets.actions import actions
from guide.sheets.look import Look
from guide.sheets.spoken import say_of_talk
from guide.tui.asides import ActionList, AnswerList, Aside, WarningList
from guide.tui.looking import At, Looked, look_behind
from guide.tui.panels import Conversation, Strip
from guide.tui.wall import WallPane

ALL_KEYS = 72
"""Columns that the line of keys takes when it has all of them."""


class Talk(Screen[None]):
    """One open job. The screen holds no answer: it sends replies to the session and shows what comes back."""

    AUTO_FOCUS = "#reply"
    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (100, "-wide")]  # noqa: RUF012 - declared so by Screen
    BINDINGS: ClassVar = [
        ("f1", "help", "Help"),
        ("f2", "back", "Back"),
        ("f3", "change", "Change"),
        ("f4", "wall", "Wall"),
        ("f5", "papers", "Papers"),
        ("f6", "more", "More"),
        ("f7", "sign", "Sign off"),
        Binding("ctrl+z", "undo", show=False),
        Binding("ctrl+y", "redo", show=False),
        Binding("escape", "reply", show=False),
        Binding("down", "choices", show=False),
        Binding("pageup", "read(-1)", show=False),
        Binding("pagedown", "read(1)", show=False),
    ]

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self._looking: Look | None = None
        self._writing = ""

    def compose(self) -> ComposeResult:
        """Lay out talk and wall side by side, the choices and the answer box under the talk."""
        yield Strip(id="strip")
        with Horizontal(id="both"):
            with Vertical(id="talk"):
                yield Conversation(id="conversation")
                yield OptionList(id="choices")
                yield Input(id="reply")
            yield WallPane(id="wall", ascii_only=self._session.ascii_only)
        yield Footer(show_command_palette=False, compact=True)

    def on_mount(self) -> None:
        """Open the talk with the first question; what is wrong with the job is said as soon as it has been looked over."""
        self._ask()
        self._show_worked_reply()

    def on_resize(self) -> None:
        """Draw a wall for which there is room now, and show the keys there is room for."""
        self.refresh_bindings()
        self._show_standing()

    @property
    def _conversation(self) -> Conversation:
        return self.query_one("#conversation", Conversation)

    # ------------------------------------------------------------------------------------------- the person acts

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Take a typed reply."""
        event.input.clear()
        if reply := event.value.strip() or self._session.worked_reply:
            self._reply(reply)

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Take a choice that was picked."""
        if event.option.id is not None:
            self._reply(event.option.id)
            self.query_one("#reply").focus()

    def action_help(self) -> None:
        """Show why the question is asked and how to measure."""
        self.app.push_screen(Aside("Help", self._session.help_lines()))

    def action_back(self) -> None:
        """Go back to the question before."""
        self._after(self._session.back())

    def action_change(self) -> None:
        """Pick an earlier answer to change."""
        self.app.push_screen(AnswerList(self._session.said, self._session.heading), self._change)

    def _change(self, path: str | None) -> None:
        if path is not None:
            self._after(self._session.change(path))

    def action_more(self) -> None:
        """Pick something to be done, with the question, the answers or a wall."""
        self.app.push_screen(ActionList(actions(self._session.answers, self._session.current)), self._do)

    def _do(self, typed: str | None) -> None:
        if typed is not None:
            self._reply(typed)

    def action_sign(self) -> None:
        """Begin to sign a warning off: the words stand in the answer box but for the reason, which is the person's own."""
        found = self._session.signable()
        if not found:
            self._after(Turn((say_of_talk("sign_none"),)))
        elif len(found) == 1:
            self._begin(found[0].typed)
        else:
            self.app.push_screen(WarningList(found), self._begin)

    def _begin(self, typed: str | None) -> None:
        if typed is not None:
            self.action_reply()
            box = self.query_one("#reply", Input)
            box.value = f"{typed} {box.value}"
            box.cursor_position = len(box.value)

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool:
        """Have the key to sign off only where the line of keys has room for it; in words it goes everywhere."""
        return action != "sign" or self.size.width >= ALL_KEYS

    def action_undo(self) -> None:
        """Take the last change back."""
        self._after(self._session.undo())

    def action_redo(self) -> None:
        """Have again what was taken back."""
        self._after(self._session.redo())

    def action_wall(self) -> None:
        """Where talk and wall take turns, give the other its turn."""
        self.toggle_class("-wall-first")
        self._show_standing()
        self.query_one("#wall" if self.has_class("-wall-first") else "#reply").focus()

    def on_wall_pane_pointed(self, event: WallPane.Pointed) -> None:
        """Say which piece is pointed at, or tell all of it, and let the person decide otherwise there."""
        line = self._session.piece_line(event.name)
        self.query_one("#wall", WallPane).tell(say_of_talk("pane_piece", piece=line))
        if event.chosen:
            lines, decides = self._session.piece_lines((event.name,)), self._session.decides(event.name)
            self.app.push_screen(Aside(line, lines[1:], decides), self._decide)

    def _decide(self, typed: str | None) -> None:
        """Go to the question that holds a choice, where the talk can be seen."""
        if typed is not None:
            self.action_reply()
            self._reply(typed)

    def on_wall_pane_wall_wanted(self, event: WallPane.WallWanted) -> None:
        """Show another wall than the one that is asked about, until the next answer."""
        self.draw_wall(event.letter)

    def action_reply(self) -> None:
        """Go back to the answer box, from wherever the focus is."""
        self.remove_class("-wall-first")
        self.query_one("#reply").focus()

    def action_choices(self) -> None:
        """Go from the answer box into the choices under the talk."""
        choices = self.query_one("#choices")
        if choices.display:
            choices.focus()

    def action_read(self, pages: int) -> None:
        """Read again what was said before."""
        self._conversation.read(pages)

    def action_papers(self) -> None:
        """Read the papers, and write them."""
        from guide.tui.papers import Papers  # the templates are loaded when somebody wants a paper

        session = self._session
        self.app.push_screen(Papers(session.plan, session.price_trouble(), ascii_only=session.ascii_only))

    def tell(self, line: str, *, finished: bool) -> None:
        """Say how far the papers are that are written behind the talk, over it; at last, what came of it, in the talk."""
        self._writing = "" if finished else line
        self._show_strip()
        if finished:
            self._conversation.said(line)

    # ------------------------------------------------------------------------------------------- the talk goes on

    def _reply(self, text: str) -> None:
        self._conversation.heard(text)
        self._session.columns = self._conversation.columns
        self._after(self._session.take(text))

    def _show_worked_reply(self) -> None:
        """Show in the empty answer box what Enter says, in a rehearsal; else what may be said."""
        worked = self._session.worked_reply
        shown = say_of_talk("worked_reply", reply=worked).strip() if worked else say_of_talk("your_answer")
        self.query_one("#reply", Input).placeholder = shown

    def _after(self, turn: Turn) -> None:
        for line in turn.lines:
            self._conversation.said(line)
        if turn.stored or not turn.lines:
            self._ask()
        else:
            self.call_after_refresh(self._conversation.keep_question_in_sight)
        self._show_worked_reply()

    def _ask(self) -> None:
        asked = self._session.current
        lines = self._session.question_lines()
        heading = self._session.heading(asked.place) if asked is not None else ""
        self._conversation.asked(heading, [line for line in lines if not line.startswith("  ") or asked is None])
        choices = self.query_one("#choices", OptionList)
        choices.clear_options()
        hints = [line.strip() for line in lines if line.startswith("  ")]
        if asked is not None and asked.question.choices:
            shown = [Option(f"{number} {c.say}", id=c.id) for number, c in enumerate(asked.question.choices, 1)]
            choices.add_options(shown)
            ids = [c.id for c in asked.question.choices]
            choices.highlighted = ids.index(asked.question.usual) if asked.question.usual in ids else 0
            hints = hints[len(shown) :]
        for hint in hints:
            self._conversation.said(hint)
        choices.display = bool(choices.option_count)
        self._show_standing()

    def _show_standing(self) -> None:
        self._show_strip()
        self.call_after_refresh(self._look)

    def _show_strip(self, work: str = "") -> None:
        self.query_one("#strip", Strip).show(self._session, self._writing or work)

    # ------------------------------------------------------------------------------------------- behind the talk

    def _look(self) -> None:
        """Have the job looked over, once the question is on the screen; draw the wall when all is known of it.

        Where talk and wall take turns and it is the talk's, no wall is laid out only to be drawn.
        """
        drawn = self.query_one("#wall").display
        look = self._session.look(drawn=drawn)
        if look is None:
            self.draw_wall()
        elif self._looking is None or self._looking.job is not look.job or drawn > self._looking.drawn:
            self._looking = look
            self.query_one("#wall", WallPane).outdated()
            # described by us, or the whole job is written out to do it
            self.run_worker(partial(self._look_over, look), thread=True, description="look")

    def _look_over(self, look: Look) -> None:
        worker = get_current_worker()
        look_behind(look, self.post_message, lambda: worker.is_cancelled or self._looking is not look)

    def on_at(self, event: At) -> None:
        """Say which wall is laid out again."""
        if event.look is self._looking:
            self._show_strip(event.line)

    def on_looked(self, event: Looked) -> None:
        """Say over the question what came to light, and draw the wall; nothing of a job that is another by now."""
        if event.look is not self._looking:
            return
        self._looking = None
        lines = self._session.take_in(event.look, event.seen) if event.seen is not None else None
        if lines is None:
            return
        if event.look.raised is None:  # the first look at this job
            lines = (*self._session.trouble_lines(), *lines)
        self._conversation.said_before(lines)
        self._show_strip()
        self.draw_wall()

    def draw_wall(self, letter: str | None = None) -> None:
        """Draw a wall, the one that is asked about without a letter, else the one that was drawn before."""
        session, pane = self._session, self.query_one("#wall", WallPane)
        if not pane.display:
            return
        asked = session.current
        if letter is None and asked is not None and asked.place != "basement":
            letter = asked.place.partition(".")[0]
        last = session.layout.walls[-1].letter if session.layout.walls else ""
        shown = letter or (pane.letter if pane.letter in session.layout.by_letter else last)
        told_of = shown if asked is None else letter
        pane.show(session.layout, shown, session.standing(told_of), session.changes(shown))
