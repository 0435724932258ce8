"""The worked jobs are the contract: their papers and their talk come out byte for byte, and the talk gives the same job."""

import pytest

from guide.interview.answers import Answer
from guide.worked import WORKED_JOBS
from tests.walkthroughs import ROOT, files_of, replayed, worked


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_papers_and_talk_come_out_as_they_stand_in_the_folder(name: str) -> None:
    """Every file a worked job gives is the one that was read and committed; no other file lies beside them."""
    found = files_of(name)

    assert {p.relative_to(ROOT / name).as_posix() for p in (ROOT / name).rglob("*") if p.is_file()} == {
        *found, "job.json", "story.md", "replies.txt", "questions.toml",
    }  # fmt: skip
    for path, text in found.items():
        assert (ROOT / name / path).read_bytes() == text.encode(), path


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_the_talk_gives_the_job_that_the_file_holds(name: str) -> None:
    """Answering the questions with the replies of the story ends with the answers of job.json, nothing left to ask."""
    session, _ = replayed(name)

    assert session.current is None
    assert _bare(session.answers) == _bare(worked(name).answers)


def _bare(answers: object) -> dict[str, tuple[object, object]]:
    assert isinstance(answers, dict)
    return {path: (answer.value, answer.known) for path, answer in answers.items() if isinstance(answer, Answer)}


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_stories_say_that_they_are_invented(name: str) -> None:
    """Nobody takes a worked job for a real house."""
    assert "invented" in (ROOT / name / "story.md").read_text(encoding="utf-8").lower()
    assert "invented" in worked(name).note.lower()
