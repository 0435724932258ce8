"""A program for the tests of saving: it saves two jobs in turn and says, before every step, which one comes.

python saving.py FILE          saves until it is killed, a line after each save
python saving.py FILE STEP     stops at the step of that number of its second save, says so, and waits to be killed
"""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

from guide.book.questions import load_book
from guide.interview.answers import Answer, Certainty
from guide.interview.jobfile import Job, save

STEPS = ("fsync", "chmod", "replace")
"""The calls by which a save reaches the disk, in their order; the last fsync is the folder's."""


def job_of(note: str) -> Job:
    """Return a job that is long enough not to be written in one go by accident."""
    walls = Answer(tuple(f"wall number {n}" for n in range(50)), Certainty.MEASURED, "fifty of them")
    others = {f"{chr(65 + n)}.other": Answer(note * 40, Certainty.MEASURED, note * 40) for n in range(26)}
    return Job({"basement.walls": walls, **others}, note)


def say(line: str) -> None:
    """Tell the test, at once."""
    print(line, flush=True)


def main() -> None:
    """Save until killed."""
    path, stop_at = Path(sys.argv[1]), int(sys.argv[2]) if len(sys.argv) > 2 else None
    book = load_book()
    save(path, book, job_of("old"))
    say("saved")
    if stop_at is not None:
        _stop_before(stop_at)
        save(path, book, job_of("new"))
        say("done")
        sys.stdin.read()
    number = 0
    while True:
        number += 1
        save(path, book, job_of("new" if number % 2 else "old"))
        say(str(number))


def _stop_before(stop_at: int) -> None:
    """Make the call of that number, over all the steps of a save, say its name and wait to be killed."""
    count = 0

    def watched(name: str, real: Callable[..., Any]) -> Callable[..., Any]:
        def call(*args: Any, **named: Any) -> Any:
            nonlocal count
            if count == stop_at:
                say(f"before {name}")
                sys.stdin.read()
            count += 1
            return real(*args, **named)

        return call

    for name in STEPS:
        setattr(os, name, watched(name, getattr(os, name)))


if __name__ == "__main__":
    main()
