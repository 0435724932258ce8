"""The plain talk as a screen reader reads it: sentences alone, nothing drawn unless asked for, what can be said at the end."""

from __future__ import annotations

import io
import re

import pytest

from guide.book.questions import load_book
from guide.interview.jobfile import Job
from guide.plain import talk
from guide.session import Session
from guide.worked import WORKED_JOBS
from tests.walkthroughs import ROOT, worked

LOUD = re.compile(r"[\u2500-\u25ff\u2190-\u21ff\u2022|#*~^\\\\]|[-=.]{4,}")
"""Lines, boxes, blocks, arrows and signs in a row: read aloud each is a word of its own, and says nothing."""


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_every_line_is_words_and_the_person_s_turn_comes_after_what_can_be_said(name: str) -> None:
    """In the worked talks no sign is noise, no table stands, and each question ends with its choices or an answer to it."""
    lines = (ROOT / name / "talk.txt").read_text(encoding="utf-8").splitlines()
    answers = [at for at, line in enumerate(lines) if line.startswith("> ")]

    assert not [line for at, line in enumerate(lines) if at not in answers and LOUD.search(line)]
    asked = [at for at, line in enumerate(lines) if line.startswith("[")]
    assert all(lines[min(each for each in answers if each > at) - 1].startswith("  ") for at in asked)


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_every_question_begins_with_where_it_belongs_and_every_answer_with_its_name(name: str) -> None:
    """“[4 of about 33] the basement”, then the question; what is said back begins with what it is about, not with a sign."""
    lines = (ROOT / name / "talk.txt").read_text(encoding="utf-8").splitlines()
    heads = [at for at, line in enumerate(lines) if line.startswith("[")]

    assert heads
    assert all(re.fullmatch(r"\[\d+ of about \d+\] .+", lines[at]) for at in heads)
    assert all(lines[at - 1] == "" and lines[at + 1][0].isalpha() for at in heads)
    assert all(line[0].isalnum() or line[0] in " [>“" for line in lines if line)


def test_a_drawing_comes_only_when_it_is_asked_for() -> None:
    """“how” names its sketch and does not draw it; “sketch” and “draw” do. Where there is none that is said."""
    job = Job(
        {path: each for path, each in worked("first-wall").answers.items() if path not in ("A.length", "A.other")}
    )
    out = io.StringIO()
    talk(Session(load_book(), job), io.StringIO("how\nhelp\n"), out)
    assert "say sketch to have it" in out.getvalue()
    assert not LOUD.search(out.getvalue())

    out = io.StringIO()
    talk(Session(load_book(), job), io.StringIO("sketch\n16'4\nsketch\n"), out)
    assert "##########" in out.getvalue()
    out = io.StringIO()
    job = Job({path: each for path, each in worked("first-wall").answers.items() if path != "A.openings"})
    talk(Session(load_book(), job), io.StringIO("sketch\ndraw\n"), out)
    assert "There is no sketch for this one" in out.getvalue()
    assert "seen from the room" in out.getvalue()
