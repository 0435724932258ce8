"""What cannot be true together is said at once, in one sentence that names both readings, and both are asked for again."""

from __future__ import annotations

import pytest

from guide.book.questions import load_book
from guide.interview.jobfile import from_json
from guide.session import Session
from tests.jobs import Tree, fixture, job, lying, new_door, outlet, standing, wall, window

# A job, the answer that is changed, what is said, both sides of the contradiction as the sentence names them, and the other
# answer that is asked for again. The numbers are those of the jobs.
CONTRADICTIONS: list[tuple[Tree, str, str, tuple[str, str], str]] = [
    (wall("100 in", openings=[new_door("60 in")]), "opening1.left", "80", ("from 80 in to 112 in", "0 to 100 in"), "length"),
    (wall("100 in", pipes=[standing("40 in")]), "pipe1.at", "120", ("stand at 120 in", "0 to 100 in"), "length"),
    (wall("100 in", boxes=[outlet("40 in")]), "box1.at", "120", ("stand at 120 in", "0 to 100 in"), "length"),
    (wall("100 in", fixtures=[fixture("40 in", "80 in")]), "fixture1.to", "120", ("40 in to 120 in", "0 to 100 in"), "length"),
    (wall("196 in", openings=[window("40 in"), window("100 in")]), "opening2.left", "60", ("40 in to 72 in", "60 in to 92 in"), "opening1.left"),
    (wall("196 in", openings=[new_door("40 in")], pipes=[standing("20 in")]), "pipe1.at", "50", ("40 in to 72 in", "48 1/4 in to 51 3/4 in"), "opening1.left"),
    (wall("196 in"), "concrete", "95 left, 95 right", ("reads 95 in", "joists only 92 in"), "height"),
    (wall("196 in", pipes=[lying("40 in", "80 in")]), "pipe1.to", "30", ("end at 30 in", "starts at 40 in"), "pipe1.from"),
    (wall("100 in"), "height", "91 left, 91 at 12 ft, 91 right", ("placed at 144 in", "ends at 100 in"), "length"),
    (wall("196 in", openings=[window("40 in")]), "opening1.sill", "85", ("109 in above the slab", "joists are at 92 in"), "height"),
]  # fmt: skip


@pytest.mark.parametrize(("tree", "path", "reply", "sides", "other"), CONTRADICTIONS)
def test_a_contradiction_is_raised_at_once_and_names_both_readings(
    tree: Tree, path: str, reply: str, sides: tuple[str, str], other: str
) -> None:
    """The turn that brings it says it once, in one sentence; both answers are in doubt then, and so asked for again."""
    session = Session(load_book(), from_json(job([tree]), load_book()))
    assert not session.problem_lines()
    session.change(f"A.{path}")
    lines = session.reply(reply).lines
    lines = session.reply("yes").lines if lines[-1] == "Shall I change it? Say yes or no." else lines
    said = [line for line in lines if all(side in line for side in sides)]

    assert len(said) == 1
    assert said[0].count(". ") == 0
    assert said[0] in session.problem_lines()
    assert session.answers[f"A.{path}"].confirm
    assert session.answers[f"A.{other}"].confirm
