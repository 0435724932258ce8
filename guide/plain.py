"""The plain talk: the same conversation line by line, for pipes, dumb terminals and screen readers."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import partial
from typing import TextIO

from guide.interview.replies import clean
from guide.session import Session
from guide.sheets.spoken import in_ascii, say_of_talk


def talk(session: Session, replies: TextIO, out: TextIO) -> None:
    """Ask and answer until the replies end, or an empty one comes when nothing is left to ask. Replies that are not typed at a screen are echoed.

    Nothing is drawn that was not asked for. In a rehearsal an empty line says what the worked talk says. `replies` need not be a terminal; the job is kept after every answer, so the end of input loses nothing.
    """
    echo = not replies.isatty()
    say = partial(_say, out, ascii_only=session.ascii_only)
    for problem in session.trouble_lines():
        say((problem,))
    asked_before = True
    while True:
        asking = session.current is not None
        if asking or asked_before:
            say(_question(session) if asking else _all_done(session))
        asked_before = asking
        worked = session.worked_reply
        say((say_of_talk("worked_reply", reply=worked),) if worked else ())
        out.write("> ")
        out.flush()
        reply = replies.readline()
        if not reply or not (asking or reply.strip()):
            out.write("\n")
            break
        played = bool(worked) and not reply.strip()
        reply = worked if worked and played else reply
        if echo or played:
            say((clean(reply),))
        say(_unless_asked_for(session.reply(reply).lines))


def _unless_asked_for(lines: Sequence[str]) -> Iterator[str]:
    """Yield what is said; a sketch that comes with other words is only named, for read aloud it is noise."""
    for line in lines:
        yield say_of_talk("sketch_to_have") if "\n" in line and len(lines) > 1 else line


def _all_done(session: Session) -> Iterator[str]:
    """Yield that nothing is left to ask, what contradicts itself all the same, and how to end the talk."""
    yield from session.question_lines()
    yield from session.trouble_lines()
    yield say_of_talk("enter_ends")


def _question(session: Session) -> Iterator[str]:
    """Yield a question with where it belongs before it."""
    asked = session.current
    assert asked is not None
    done, whole, _ = session.counts()
    yield ""
    yield f"[{done + 1} of about {whole}] {session.heading(asked.place)}"
    yield from session.question_lines()


def _say(out: TextIO, lines: Iterable[str], *, ascii_only: bool) -> None:
    for line in lines:
        out.write(f"{in_ascii(line) if ascii_only else line}\n")
