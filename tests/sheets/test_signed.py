"""A WARN is signed off in the person's own words, which are kept with the job and print beside it; a STOP or a HOLD is not."""

from __future__ import annotations

import json
from io import StringIO
from pathlib import Path

import jsonschema
import pytest

from guide.book.questions import load_book
from guide.interview.jobfile import Job, JobFileError, from_json, load, save, to_json
from guide.interview.schema import job_schema
from guide.interview.signed import SignOff
from guide.plain import talk
from guide.session import Session
from guide.sheets.papers import papers
from guide.sheets.plan import make_plan
from guide.sheets.plan_json import findings_to_json
from tests.jobs import Tree, job, outlet, ring, wall

OLD = wall(boxes=[outlet("40 in", kind="existing")])
WHY = "Kim's cousin is an electrician, he comes on Tuesday"


def session_of(tree: Tree, path: Path | None = None) -> Session:
    """Return a session on a job."""
    return Session(load_book(), from_json(tree, load_book()), path)


def test_a_warning_is_signed_off_in_the_talk_kept_in_the_file_and_undone(tmp_path: Path) -> None:
    """Word for word, capitals and all; the file holds it after the reply, undo takes it out and redo brings it back."""
    path = tmp_path / "job.json"
    session = session_of(job([OLD]), path)
    assert session.reply(f"sign off a.OLD_boxes because {WHY}").lines[0].startswith("Signed off: A.old_boxes")
    (kept,) = load(path, session.book).signed
    assert (kept.finding, kept.wall, kept.because) == ("old_boxes", "wall A", WHY)
    assert any(line.startswith("WARN A.old_boxes signed off: ") for line in session.reply("findings").lines)
    assert f"  Signed off: “{WHY}”" in session.reply("what is A.old_boxes").lines

    assert session.reply("undo").lines == ("Taken back: what you signed off. Say redo to have it again.",)
    assert load(path, session.book).signed == ()
    session.reply("redo")
    assert load(path, session.book).signed == (kept,)
    session.reply("sign off A.old_boxes: all done by now")
    assert [each.because for each in session.job.signed] == ["all done by now"]


def test_the_words_print_beside_the_warning_on_the_page_the_job_sheet_and_in_json_and_an_open_one_has_a_line() -> None:
    """Signed: the words. Not signed: a line to write them on. A HOLD and a NOTE have neither."""
    session = session_of(job([OLD], radon="untested"))
    session.reply(f"sign off A.old_boxes because {WHY}")
    pages = papers(session.plan)
    for name, times in (("wall-A.md", 1), ("job-sheet.md", 2)):  # the sheet has every finding first, then wall by wall
        page = " ".join(pages[name].split())
        assert page.count(f"*Signed off, in your own words:* “{WHY}”") == times, name
    warns = [each for each in session.plan.findings if each.severity == "WARN" and each.key != "old_boxes"]
    assert page.count("*Signed off, in your own words:* _____") == sum(2 if each.wall else 1 for each in warns) > 0
    found = findings_to_json(session.plan, session.plan.findings)["findings"]
    assert {each["signed_off"] for each in found if each["severity"] != "WARN"} <= {""}
    assert [each["signed_off"] for each in found if each["id"] == "A.old_boxes"] == [WHY]


def test_what_was_signed_for_other_numbers_or_another_wall_does_not_stand_and_is_not_lost() -> None:
    """One old box more: it is to be signed anew, and the old words stay in the file. Walls that change places keep theirs."""
    plain, book = wall(right="inside corner"), load_book()
    session = session_of(ring([{**OLD, "name": "north"}, plain, plain, plain]))
    session.reply(f"sign off A.old_boxes because {WHY}")
    session.reply("move wall A after wall B")
    (moved,) = (each for each in session.plan.findings if each.key == "old_boxes")
    assert (moved.wall, session.plan.signed_off(moved)) == ("B", WHY)

    two = wall(boxes=[outlet("40 in", kind="existing"), outlet("90 in", kind="existing")])
    signed = to_json(book, session_of(job([OLD])).job) | {"signed": to_json(book, session.job)["signed"]}
    other = from_json({**job([{**two, "name": "north"}]), "signed": signed["signed"]}, book)
    plan = make_plan(book, other)
    assert [plan.signed_off(each) for each in plan.findings if each.key == "old_boxes"] == [""]
    assert other.signed == session.job.signed


@pytest.mark.parametrize(("reply", "said"), [
    ("sign off basement.water_unknown because it is dry", "basement.water_unknown is a HOLD: it is settled, not signed off."),
    ("sign off A.old_boxes", "Say in your own words why you go on"),
    ("sign off A.no_such because I say so", "Nothing called a.no_such was found"),
    ("sign off because I say so", "Which one?"),
    ("sign off A.old_boxes because " + "x" * 401, "That is more than 400 characters"),
])  # fmt: skip
def test_what_cannot_be_signed_off_is_said_in_one_sentence_and_nothing_is_kept(reply: str, said: str) -> None:
    """A HOLD, no reason, no such name, no name while nothing was raised."""
    session = session_of(job([OLD], water={"value": None, "known": "unknown"}))
    assert session.reply(reply).lines[0].startswith(said)
    assert session.job.signed == ()


def test_a_warning_just_raised_is_signed_off_without_its_name() -> None:
    """The one WARN that the last answer raised is meant; the talk offers it by name."""
    session = session_of(job([wall(boxes=[outlet("40 in", kind="existing"), outlet("100 in")])]))
    session.reply("outlet")
    said = session.reply("outlet").lines
    assert "To go on all the same, say in your own words: sign off A.old_boxes because ..." in said
    session.reply("sign off because the cousin comes")
    assert [each.because for each in session.job.signed] == ["the cousin comes"]


@pytest.mark.parametrize(("signed", "said"), [
    ({"finding": "old_box", "because": "x"}, "signed[0]: “old_box” is no finding; did you mean “old_boxes”?"),
    ({"finding": "water_wet", "because": "x"}, "signed[0]: “water_wet” is a STOP; only a WARN can be signed off."),
    ({"finding": "old_boxes"}, "signed[0]: because is missing for “old_boxes”"),
    ({"finding": "old_boxes", "why": "x"}, "signed[0]: unknown key “why”"),
    ({"finding": "old_boxes", "because": 3}, "signed[0]: because is “3”; it is a text"),
    ("x", "signed[0]: I read “x”"),
])  # fmt: skip
def test_a_sign_off_typed_wrongly_in_a_job_file_is_one_sentence(signed: object, said: str) -> None:
    """Each names the place, what was read and what would be right."""
    tree = {**job([OLD]), "signed": [signed]}
    with pytest.raises(JobFileError) as error:
        from_json(tree, load_book())  # type: ignore[arg-type]
    assert str(error.value).startswith(said)


def test_a_sign_off_typed_by_hand_stands_whatever_the_warning_says_and_fits_the_schema(tmp_path: Path) -> None:
    """Kind, wall and words are enough; what is written is what was read."""
    book, path = load_book(), tmp_path / "job.json"
    tree = {**job([OLD]), "signed": [{"finding": "old_boxes", "wall": "wall A", "because": WHY}]}
    jsonschema.validate(tree, job_schema(book))
    opened = from_json(tree, book)  # type: ignore[arg-type]
    assert opened.signed == (SignOff("old_boxes", "wall A", "", WHY),)
    plan = make_plan(book, opened)
    assert [plan.signed_off(each) for each in plan.findings if each.key == "old_boxes"] == [WHY]
    save(path, book, opened)
    assert json.loads(path.read_text(encoding="utf-8"))["signed"] == tree["signed"]
    assert load(path, book).signed == opened.signed
    assert Job().signed == ()


def test_a_sign_off_still_stands_when_the_job_is_opened_again_whatever_was_typed(tmp_path: Path) -> None:
    """Odd spaces, quotes and marks in an answer that the warning repeats, and in the words: read back, the words stand."""
    path, why = tmp_path / "job.json", 'he said  "yes", #1 – *really*'
    session = session_of(job([wall(other="a  hose\u00a0tap: 2 <b>_here_</b>")]), path)
    session.reply(f"sign off A.other because {why}")
    again = Session.opened(load_book(), path)
    (found,) = (each for each in again.plan.findings if each.key == "other")
    assert again.plan.signed_off(found) == " ".join(why.split())


def test_a_job_with_nothing_left_to_ask_is_still_talked_about_line_by_line_until_an_empty_line() -> None:
    """Findings, one in whole, a sign-off; what comes after the empty line is not read."""
    session, out = session_of(job([OLD])), StringIO()
    session.reply("outlet")
    assert session.current is None
    replies = StringIO(f"findings\nA.old_boxes\nsign off A.old_boxes because {WHY}\n\nundo\n")
    talk(session, replies, out)
    said = out.getvalue()
    assert said.count("That is everything I need for now.") == 1
    assert "  The cheapest fix: Whoever your building office lets do the wiring" in said
    assert [each.because for each in session.job.signed] == [WHY]
    assert replies.read() == "undo\n"
