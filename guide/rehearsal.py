"""A worked talk played at the person's own speed: each question comes with what was said to it, and anything else may be said.

Nothing is kept in a file: it is a rehearsal, and every one begins at the first question.
"""

from __future__ import annotations

from importlib.resources import files

from guide.book.questions import Book
from guide.interview.jobfile import Job, from_text
from guide.interview.replies import clean
from guide.session import Session, Turn


class Rehearsal(Session):
    """The talk about a worked job from its beginning, with the replies of the worked talk to hand."""

    def __init__(self, book: Book, name: str, *, ascii_only: bool = False) -> None:
        worked = from_text(_text(name, "job.json"), book)
        super().__init__(book, Job(note=worked.note), ascii_only=ascii_only)
        self._script = _script(book, _text(name, "replies.txt").splitlines())

    @property
    def worked_reply(self) -> str | None:
        """What the worked talk says to the question asked now; None where it says nothing more to it."""
        left = self._script.get(self.current.path, []) if self.current is not None else []
        return left[0] if left else None

    def take(self, text: str) -> Turn:
        """Take a reply as ever; where it is that of the worked talk, the next one is offered from then on."""
        path = self.current.path if self.current is not None else ""
        if clean(text) == self.worked_reply:
            del self._script[path][0]
        return super().take(text)


def _text(name: str, file: str) -> str:
    return files("walkthroughs").joinpath(name, file).read_text(encoding="utf-8")


def _script(book: Book, replies: list[str]) -> dict[str, list[str]]:
    """Return what is said to each question, by its path, in the order it is said."""
    session, said = Session(book, Job()), dict[str, list[str]]()
    for reply in replies:
        if session.current is not None:
            said.setdefault(session.current.path, []).append(clean(reply))
        session.take(reply)
    return said
