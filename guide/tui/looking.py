"""Looking the job over behind the talk: in a thread that holds no job, says which wall it is at, and stops when it is told to.

It is given frozen values and gives messages back; the session is touched by the app alone.
"""

from __future__ import annotations

from collections.abc import Callable

from textual.message import Message

from guide.sheets.look import Look, Seen, look_over
from guide.sheets.spoken import say_of_talk


class DroppedError(Exception):
    """The job is another by now; nobody wants to know what came of this one."""


class At(Message):
    """How far a look is, in one line."""

    def __init__(self, look: Look, line: str) -> None:
        super().__init__()
        self.look, self.line = look, line


class Looked(Message):
    """What came of a look; nothing when it was dropped."""

    def __init__(self, look: Look, seen: Seen | None) -> None:
        super().__init__()
        self.look, self.seen = look, seen


def look_behind(look: Look, post: Callable[[Message], object], dropped: Callable[[], bool]) -> None:
    """Look a job over. Made for a thread of its own."""

    def tell(letter: str) -> None:
        if dropped():
            raise DroppedError
        post(At(look, say_of_talk("laying_out", wall=letter)))

    try:
        post(Looked(look, look_over(look, tell)))
    except DroppedError:
        post(Looked(look, None))
