"""The crew lead's briefing: the next evening in its order, who does what, what stops it; and the command that prints it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from guide.book.questions import load_book
from guide.cli import main
from guide.sheets.papers import brief, papers
from guide.sheets.plan import Plan, make_plan
from guide.sheets.tonight import tonight
from tests.jobs import job, wall
from tests.order.crews import own
from tests.sheets.test_helper import plan_of
from tests.walkthroughs import ROOT, worked


@pytest.fixture(scope="module")
def helped() -> Plan:
    return plan_of(job([wall(), wall()], **own("a helper on Saturday")))


def flat(text: str) -> str:
    return " ".join(text.split())


def test_it_is_the_next_evening_with_every_step_in_its_order_and_every_line_to_do() -> None:
    plan = make_plan(load_book(), worked("four-walls"))
    first = plan.calendar.evenings[0]
    said = flat(papers(plan)["brief.md"])
    heads = [f"**{do.begins} {do.title}**" for do in tonight(plan, first).dos]
    assert [said.index(head) for head in heads] == sorted(said.index(head) for head in heads)
    for task in first.tasks:
        for line in task.step.text:
            assert line.replace("!", "\\!") in said


def test_of_a_wall_it_is_the_first_evening_that_works_on_it(helped: Plan) -> None:
    """Also one on which the helper is not there: whoever leads is there every evening."""
    for letter in ("A", "B"):
        evening = next(
            each for each in helped.calendar.evenings if any(task.step.wall == letter for task in each.tasks)
        )
        assert f"evening {evening.number}\n" in brief(helped, letter)


def test_who_does_what_follows_from_who_is_there_and_what_two_lift_better(helped: Plan) -> None:
    """Alone it is “you”; with two, lifting takes both, and what goes no quicker takes one."""
    said = {
        (evening.two, "two" in do.step.tags, do.step.two < do.step.alone): do.who
        for evening in (tonight(helped, each) for each in helped.calendar.evenings)
        for do in evening.dos
    }
    assert {who for (two, _, _), who in said.items() if not two} == {"you"}
    assert {who for (two, lift, _), who in said.items() if two and lift} == {"both: one holds, one drives"}
    assert said[True, False, True] == "both"
    assert said[True, False, False] == "one of you"


def test_the_command_prints_it_and_changes_nothing(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = str(ROOT / "four-walls" / "job.json")
    plan = make_plan(load_book(), worked("four-walls"))
    assert main(["brief", path]) == 0
    assert capsys.readouterr().out == papers(plan)["brief.md"]
    assert main(["brief", path, "--evening", "7"]) == 0
    assert "evening 7\n" in capsys.readouterr().out
    assert main(["brief", path, "--evening", "12", "--wall", "B"]) == 0
    assert capsys.readouterr().out == brief(plan, "B", 12)
    assert main(["brief", path, "--evening", "0"]) == 2
    last = len(plan.calendar.evenings)
    assert capsys.readouterr().err == f"wallbrief: --evening 0: the calendar of this job has evenings 1 to {last}.\n"
    assert main(["brief", path, "--wall", "b"]) == 0
    assert capsys.readouterr().out == brief(plan, "B")


def test_a_wall_that_is_not_there_is_one_sentence_that_names_those_that_are(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["brief", str(ROOT / "first-wall" / "job.json"), "--wall", "Q"]) == 2
    assert capsys.readouterr().err == "wallbrief: --wall Q: this job has no such wall laid out; it has A.\n"


def test_a_stop_sends_nobody_to_work_and_exits_1(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "wet.json"
    path.write_text(json.dumps(job([wall()], water="wet")), encoding="utf-8")
    assert main(["brief", str(path)]) == 1
    said = capsys.readouterr().out
    assert "A STOP stands" in said
    assert "Who does what" not in said
