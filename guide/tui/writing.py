"""Writing the papers behind the talk: in a thread that holds no job, says how far it is, and stops when it is told to.

It is given frozen values and gives messages back; the session is touched by the app alone.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path

from textual.message import Message

from guide.book.questions import Book
from guide.interview.answers import Answers
from guide.sheets.plan import Plan
from guide.sheets.spoken import say_of_talk
from guide.sheets.twice import Doubtful, tape_again
from guide.sheets.write import write_papers
from guide.tui.looking import DroppedError


@dataclass(frozen=True)
class Writing:
    """What is to be written, of which answers, and where."""

    book: Book
    answers: Answers
    plan: Plan
    folder: Path
    again: tuple[Doubtful, ...] | None
    """The readings to tape again, where they are known already."""


class Told(Message):
    """How far the writing is; once it is `finished`, where the files are, or why there are none."""

    def __init__(self, writing: Writing, line: str, *, finished: bool = False) -> None:
        super().__init__()
        self.writing, self.line, self.finished = writing, line, finished


def write(writing: Writing, post: Callable[[Message], object], dropped: Callable[[], bool]) -> None:
    """Write every paper and say where they went; nothing is written once it is dropped. Made for a thread of its own."""

    def tell(done: int, of: int) -> None:
        if dropped():
            raise DroppedError
        post(Told(writing, say_of_talk("papers_writing", done=str(done), of=str(of))))

    folder = str(writing.folder)
    try:
        if writing.again is None:
            writing = replace(writing, again=tape_again(writing.book, writing.answers, tell=tell))
        if dropped():
            raise DroppedError
        written = write_papers(writing.plan, writing.folder, writing.again)
    except DroppedError:
        line = say_of_talk("papers_dropped")
    except OSError as error:
        line = say_of_talk("papers_not_written", folder=folder, why=error.strerror or str(error))
    else:
        line = say_of_talk("papers_wrote", count=str(len(written)), folder=folder)
    post(Told(writing, line, finished=True))
