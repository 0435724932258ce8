"""One open job: what a reply does, what a change touches, and that nothing typed is lost."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from guide.book.questions import load_book
from guide.interview.answers import Answer, Certainty
from guide.interview.jobfile import Job, load
from guide.session import Session
from tests.walkthroughs import ROOT, worked

BOOK = load_book()


def session_of(name: str = "first-wall", *, without: tuple[str, ...] = (), path: Path | None = None) -> Session:
    """Return a session on a worked job, some answers taken out."""
    answers = {p: a for p, a in worked(name).answers.items() if not p.startswith(without or ("-",))}
    return Session(BOOK, Job(answers), path)


def test_a_suspicious_answer_is_kept_but_counts_only_once_it_is_confirmed() -> None:
    """A string reading of 1/4 is a hump of 1 1/4: stored at once, locked, asked again, and sure after “keep”."""
    session = session_of(without=("A.string",))
    said = session.reply("1/4").lines

    assert any("engineer" in line for line in said)
    assert session.answers["A.string"].confirm
    assert session.current is not None
    assert session.current.path == "A.string"
    assert session.survey.unsure({"A.string"}) == ("A.string",)
    session.reply("keep")
    assert session.survey.unsure({"A.string"}) == ()
    assert session.current is None


def test_a_price_file_is_taken_only_if_it_can_be_read_and_the_old_one_stays(tmp_path: Path) -> None:
    """No such file, or one with a slip: one sentence, and the answer and the prices of before stay; so they do later."""
    job = worked("first-wall")
    answers = {**job.answers, "basement.shopping": Answer("own", Certainty.MEASURED, "own")}
    session, file = Session(BOOK, Job(answers), tmp_path / "job.json"), tmp_path / "yard.toml"
    file.write_text("[price]\nadhesive = 8.98\n", encoding="utf-8")
    while session.current is not None and session.current.path != "basement.price_file":
        session.reply("usual")

    (said,) = session.reply("yrad.toml").lines
    assert "yrad.toml" in said
    assert "there is no such file" in said
    assert "basement.price_file" not in session.answers
    session.reply("yard.toml")
    assert session.answers["basement.price_file"].value == "yard.toml"
    assert session.plan.prices.of("adhesive") == 898
    assert session.trouble_lines() == ()

    file.write_text("[price]\nadhesive = 7\n", encoding="utf-8")
    assert session.plan.prices.of("adhesive") == 700
    file.write_text("[price]\nadhesive = -7\n", encoding="utf-8")
    (trouble,) = session.trouble_lines()
    assert "price.adhesive" in trouble
    assert session.plan.prices.of("adhesive") == 700


def test_the_same_suspicious_answer_given_twice_is_confirmed_by_that() -> None:
    """A person who reads the tape again and gets the same number is believed."""
    session = session_of(without=("A.string",))
    session.reply("1/4")
    session.reply("1/4")

    assert not session.answers["A.string"].confirm


def test_a_change_that_touches_others_waits_for_a_yes_and_no_leaves_everything() -> None:
    """The person is told which answers would be asked again before anything changes."""
    session = session_of()
    before = dict(session.answers)
    session.change("A.length")
    said = session.reply("200 at floor").lines

    assert any("slab to joists" in line and "height of the concrete" in line for line in said)
    assert dict(session.answers) == before
    session.reply("perhaps")
    assert dict(session.answers) == before
    session.reply("no")
    assert dict(session.answers) == before
    session.change("A.length")
    session.reply("200 at floor")
    session.reply("yes")
    assert session.layout.by_letter["A"].wall.length.inch == 200
    assert session.answers["A.height"].confirm
    assert session.answers["A.height"].typed == before["A.height"].typed


def test_what_no_longer_applies_is_parked_and_comes_back() -> None:
    """Joists turned alongside park the spacing; turned back, the old spacing is there again, unasked."""
    session = session_of()
    session.change("A.joists")
    session.reply("alongside")
    session.reply("yes")
    assert session.current is not None
    assert session.current.path == "A.parallel_gap"
    assert session.answers["A.joist_spacing"].value == "16"
    session.reply("14 1/2")
    session.change("A.joists")
    said = session.reply("into").lines
    assert any("joist spacing" in line for line in said)
    session.reply("yes")
    assert session.current is None
    assert session.layout.by_letter["A"].wall.joist_spacing == "16"


def test_answers_that_contradict_each_other_are_both_asked_again() -> None:
    """Concrete higher than the joists: one sentence names both, both are in doubt, and the wall is not laid out."""
    session = session_of(without=("A.concrete",))
    said = session.reply("93 at left, 93 at right").lines

    assert any("concrete cannot be higher than the joists" in line for line in said)
    assert session.layout.walls == ()
    assert session.answers["A.height"].confirm
    assert session.answers["A.concrete"].confirm
    session.reply("keep")
    session.reply("90 at left, 90 at right")
    assert session.problem_lines() == ()
    assert list(session.layout.by_letter) == ["A"]


def test_an_answer_not_given_yet_contradicts_nothing() -> None:
    """A box that is drawn at a usual place inside a door is no contradiction before its place was asked."""
    session = session_of("four-walls", without=("C.box", "C.other"))
    session.reply("one")

    assert session.problem_lines() == ()


def test_dont_know_and_about_lock_what_hangs_on_them() -> None:
    """An eyeballed hump is drawn with, and every plate, stud and cap that hangs on it is locked."""
    session = session_of(without=("A.string",))
    session.reply("about 1 1/4")

    assert session.answers["A.string"].known is Certainty.EYEBALLED
    survey = session.survey
    parts = session.layout.by_letter["A"].parts
    locked = {part.kind.value for part in parts if survey.unsure(part.size_rests)}
    assert {"bottom plate", "cap strip"} <= locked


def test_back_goes_through_the_answers_and_keeps_the_later_ones() -> None:
    """Back from the end to the last answer, and on to the one before it; nothing is lost by looking."""
    session = session_of()
    before = dict(session.answers)
    session.reply("back")
    assert session.current is not None
    assert session.current.path == "basement.evenings"
    session.reply("back")
    assert session.current.path == "basement.shopping"
    session.go_on()
    assert session.current is None
    assert dict(session.answers) == before


def test_back_at_the_first_question_says_so() -> None:
    """There is nothing before the first question."""
    session = Session(BOOK, Job())

    assert "first question" in session.reply("back").lines[0]
    assert session.current is not None
    assert session.current.path == "basement.tape"


@pytest.mark.parametrize("reply", ["why", "how", "help", "what?", "banana", ""])
def test_a_reply_that_is_no_answer_stores_nothing(reply: str) -> None:
    """Wishes and nonsense leave the answers as they were and the same question asked."""
    session = session_of(without=("A.shelf",))
    before = dict(session.answers)
    turn = session.reply(reply)

    assert turn.lines
    assert not turn.stored
    assert dict(session.answers) == before
    assert session.current is not None
    assert session.current.path == "A.shelf"


def test_killed_anywhere_the_talk_loses_at_most_the_reply_being_typed(tmp_path: Path) -> None:
    """A talk fed line by line is killed at a random moment again and again; what was acknowledged is in the file."""
    replies = (ROOT / "first-wall" / "replies.txt").read_text(encoding="utf-8").splitlines()
    job = tmp_path / "job.json"
    environment = {**os.environ, "PYTHONPATH": str(ROOT.parent), "PYTHONUNBUFFERED": "1"}
    command = [sys.executable, "-m", "guide.cli", "talk", str(job), "--plain"]
    kept: list[str] = []
    for round_, stop in enumerate((4, 9, 15)):
        talk = subprocess.Popen(
            command, env=environment, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, cwd=tmp_path
        )
        assert talk.stdin is not None
        assert talk.stdout is not None
        session = Session.opened(BOOK, job)
        for reply in replies[len(kept) : stop]:
            talk.stdin.write(f"{reply}\n")
            talk.stdin.flush()
            asked = session.current
            turn = session.reply(reply)
            if turn.stored and asked is not None:
                _wait_until(job, asked.path)
            kept.append(reply)
        talk.send_signal(signal.SIGKILL)
        talk.wait()
        talk.stdout.close()
        talk.stdin.close()
        again = load(job, BOOK).answers
        assert {p: a.value for p, a in again.items()} == {p: a.value for p, a in session.answers.items()}, round_
    assert not list(tmp_path.glob(".*.new")) or load(job, BOOK)


def _wait_until(job: Path, path: str) -> None:
    """Wait until the other process has kept an answer; the file is whole whenever it is read."""
    deadline = time.monotonic() + 20
    while not job.exists() or path not in load(job, BOOK).answers:
        assert time.monotonic() < deadline, f"{path} was never kept"
        os.sched_yield()


def test_what_was_typed_stands_in_the_file_word_for_word(tmp_path: Path) -> None:
    """The reply itself is kept beside the value it was understood as."""
    session = session_of(without=("A.shelf",), path=tmp_path / "job.json")
    session.reply("2½” strong")
    kept = json.loads((tmp_path / "job.json").read_text(encoding="utf-8"))["walls"][0]["shelf"]

    assert kept == {"value": "2 17/32 in", "typed": "2½” strong"}
