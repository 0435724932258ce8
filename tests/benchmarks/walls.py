"""Re-planning after one answer, for jobs of many walls: each wall like the worked one, none joined to the next."""

from __future__ import annotations

import time
from functools import lru_cache
from pathlib import Path

from guide.book.questions import load_book
from guide.interview.answers import Answer, wall_letter
from guide.interview.jobfile import Job, load
from guide.session import Session

ROOT = Path(__file__).parent.parent.parent


@lru_cache(maxsize=8)
def job_of(walls: int) -> Job:
    """Return a job of so many walls, with open ends between them."""
    one = load(ROOT / "walkthroughs" / "first-wall" / "job.json", load_book()).answers
    answers: dict[str, Answer] = {path: answer for path, answer in one.items() if path.startswith("basement.")}
    names = tuple(f"wall {wall_letter(index)}" for index in range(walls))
    answers["basement.walls"] = Answer(names, answers["basement.walls"].known, "")
    answers["basement.ring"] = Answer("no", answers["basement.walls"].known, "no")
    for index in range(walls):
        for path, answer in one.items():
            if path.startswith("A."):
                answers[f"{wall_letter(index)}.{path.removeprefix('A.')}"] = answer
        answers[f"{wall_letter(index)}.right"] = Answer("open end", answers["basement.walls"].known, "open end")
        answers[f"{wall_letter(index)}.left"] = Answer("open end", answers["basement.walls"].known, "open end")
    return Job(answers)


def replan(walls: int) -> float:
    """Return the seconds from one changed answer to the new layout and findings, in a job of so many walls."""
    session = Session(load_book(), job_of(walls))
    session.change("A.shelf")
    start = time.perf_counter()
    session.reply("2 5/8")
    assert session.plan.layout.walls
    return time.perf_counter() - start
