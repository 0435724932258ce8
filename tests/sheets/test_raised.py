"""What the engine finds is raised in the talk once, when all it hangs on has been said, the worst first."""

from __future__ import annotations

import pytest

from guide.book.questions import load_book
from guide.checks.findings import Finding
from guide.interview.jobfile import Job, from_json
from guide.lengths import Length
from guide.reference.findings import load_findings
from guide.session import Session
from guide.sheets.look import look_over
from guide.sheets.plan import make_plan
from guide.sheets.raised import MOST, finding_line, whole_lines
from tests.jobs import job, wall
from tests.walkthroughs import ROOT, worked


def session_of(*without: str, name: str = "four-walls") -> Session:
    """Return a session on a worked job, answers taken out."""
    answers = {path: answer for path, answer in worked(name).answers.items() if path not in without}
    return Session(load_book(), Job(answers))


def raised(lines: tuple[str, ...]) -> list[str]:
    """Return the lines that raise a finding."""
    return [line for line in lines if line.startswith(("STOP", "HOLD", "WARN", "NOTE"))]


def test_a_finding_is_raised_once_in_a_whole_talk_and_only_of_a_wall_that_is_done() -> None:
    """Through the worked room every raised line comes once, and of a wall only with the answer that completes it."""
    session = Session(load_book(), Job())
    lines: list[str] = []
    for reply in (ROOT / "four-walls" / "replies.txt").read_text(encoding="utf-8").splitlines():
        new = raised(session.reply(reply).lines)
        lines += new
        left = session.current.place.partition(".")[0] if session.current is not None else ""
        assert not [line for line in new if line.startswith(f"HOLD {left}.")]
    assert len(lines) == len(set(lines))
    assert any(line.startswith("HOLD B.reach at ") for line in lines)


def test_a_stop_waits_for_the_question_that_may_settle_it() -> None:
    """“mended” alone is a STOP; three dry rains settle it before it is ever raised, one rain raises it."""
    for rains, stops in (("3", 0), ("1", 1)):
        session = Session(load_book(), Job())
        for reply in ("inches", "living", "mended"):
            assert raised(session.reply(reply).lines) == []
        assert len(raised(session.reply(rains).lines)) == stops


def test_a_change_that_breaks_a_whole_job_raises_the_worst_and_why_tells_all() -> None:
    """Water said of a finished job: the STOP once that is confirmed; “why” gives cost, fix and source."""
    session = session_of()
    session.change("basement.water")
    session.reply("wet")
    session.reply("yes")
    lines = session.reply("keep").lines
    assert raised(lines)[0] == "STOP basement.water_wet: the basement has been wet"
    assert len(raised(lines)) <= MOST
    told = session.reply("why").lines
    assert told[0].startswith("STOP basement.water_wet: The basement has been wet, or still is.")
    assert any("The cheapest fix: Find the cause from outside" in line for line in told)
    assert any("Where it comes from: common practice" in line for line in told)


@pytest.mark.parametrize("code", ["us 2018", "us 2021", "canada 2020"])
def test_the_source_that_why_tells_is_the_figure_of_the_jobs_own_edition(code: str) -> None:
    """A low room breaks a figure of the code: its standard, edition and section are told, never nothing."""
    low = job(
        [wall(height=["80 in at left", "80 in at right"], concrete=["78 1/2 in at left", "78 1/2 in at right"])],
        code=code,
    )
    plan = make_plan(load_book(), from_json(low, load_book()))
    found = next(each for each in plan.findings if each.key == "headroom")

    *_, source = whole_lines([found], plan)

    assert plan.code.habitable_height.cited in source


def test_what_was_not_looked_for_before_the_next_answer_came_is_raised_with_that_one() -> None:
    """Water, then one more answer before anybody looked: the look at the first is taken for nothing, the second's tells the STOP."""
    session = session_of()
    session.change("basement.water")
    for reply in ("wet", "yes", "keep"):
        session.take(reply)
    stale = session.look()
    assert stale is not None
    session.change("A.shelf")
    session.take("2 5/8")
    look = session.look()
    assert look is not None

    assert session.take_in(stale, look_over(stale)) is None
    assert session.why_lines() == ()
    told = session.take_in(look, look_over(look))

    assert told is not None
    assert raised(told)[0] == "STOP basement.water_wet: the basement has been wet"
    assert session.take_in(look, look_over(look)) == ()
    assert session.look() is None


def test_what_stood_when_the_job_was_opened_is_no_news_and_can_be_asked_for() -> None:
    """A job opened again raises nothing old with its first answer; “findings” says everything, the worst first."""
    session = session_of("A.other")
    lines = session.reply("none").lines
    assert not any(line.split()[1].startswith("B.") for line in raised(lines))
    every = session.reply("what did you find").lines
    assert any(line.startswith("HOLD B.") for line in every)
    ranks = [("STOP", "HOLD", "WARN", "NOTE").index(line[:4]) for line in every]
    assert ranks == sorted(ranks)


def test_a_room_that_does_not_close_is_said_with_the_answer_that_shows_it() -> None:
    """A length typed a foot too long: the talk says how far the room stays open and which reading would explain it."""
    session = session_of("C.length")
    lines = session.reply("302 3/4, 302 3/4, 303").lines
    assert "WARN basement.closing: the walls do not close the room" in raised(lines)
    told = session.reply("tell me about Basement.Closing").lines
    assert "12 1/4 in from where they begin" in told[0]
    assert "again: wall C" in told[0]


def test_a_finding_with_its_name_and_place_is_one_line_of_a_screen_and_its_name_asks_for_the_whole() -> None:
    """The longest wall letters and place there can be stay within 78 columns for every kind; a name tells what, cost, fix, source."""
    at = Length(480 * 8128 + 15 * 508, frozenset({"A.length"}))
    for key in load_findings():
        line = finding_line(Finding(key, "AA", at), "inches", lambda length: True)
        assert len(line) <= 78, line
    session = session_of()
    for line in session.reply("findings").lines:
        name = line.split()[1].rstrip(":")
        told = session.reply(f"what is {name}").lines
        assert session.reply(name).lines == told
        assert told[0].startswith(" ".join(line.split()[:2]).rstrip(":"))
        assert sum(each.startswith("  Where it comes from: ") for each in told) == sum(
            each.name == told[0].split()[1].rstrip(":,") for each in session.plan.findings
        )
