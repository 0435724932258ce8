"""Commands in words: whole walls copied, turned, moved and taken out, a wall or an answer gone to, how things stand, drawings."""

from __future__ import annotations

import pytest

from guide.interview.answers import Certainty
from tests.test_session import session_of
from tests.test_session_talk import asked


def test_a_copied_wall_is_asked_about_again_size_by_size_and_undone_as_one() -> None:
    """The copy stands at the end of the row, nothing on it counts as measured, and undo takes it away whole."""
    session = session_of()
    before = dict(session.answers)
    said = session.reply("copy wall A").lines

    assert "wall B" in said[0]
    assert session.answers["B.shelf"].value == before["A.shelf"].value
    assert session.answers["B.shelf"].confirm
    assert session.answers["B.joists"].known is Certainty.MEASURED
    session.reply("undo")
    assert dict(session.answers) == before


def test_a_wall_is_moved_and_taken_out_by_its_name_or_its_letter() -> None:
    """Letters follow the order walked; corners that other walls meet in now are asked again and named."""
    session = session_of("four-walls")
    length = session.answers["D.length"].value
    session.reply("move wall D before wall B")
    assert session.answers["B.length"].value == length
    said = session.reply("delete wall laundry wall")
    assert said.stored
    assert len(session.answers["basement.walls"].value or ()) == 3  # type: ignore[arg-type]
    assert any("ask for these again" in line for line in said.lines)


def test_the_only_wall_stays() -> None:
    """A job without a wall is none."""
    session = session_of()

    assert "only wall" in session.reply("delete wall A").lines[0]
    assert "A.length" in session.answers


def test_going_to_a_wall_asks_about_that_one_first() -> None:
    """The questions of the wall gone to come before those of the walls before it, until it is done."""
    session = session_of("four-walls", without=("B.lean", "C.lean", "C.shelf"))
    session.reply("go to wall C")
    assert asked(session) == "C.lean"
    session.reply("plumb")
    assert asked(session) == "C.shelf"
    session.reply("2 1/2")
    assert asked(session) == "B.lean"


def test_an_answer_is_found_by_words_of_it() -> None:
    """One answer with all the words is asked again with its old value; of several the person hears which there are."""
    session = session_of("four-walls")
    session.reply("change the bare shelf of wall B")
    assert asked(session) == "B.shelf"
    session.go_on()
    said = session.reply("find shelf").lines[0]
    assert said.startswith("4 answers")
    assert session.current is None


@pytest.mark.parametrize(("reply", "seen"), [("draw", "Wall A"), ("floor plan", "A"), ("section", "foam")])
def test_the_plain_talk_draws_when_it_is_asked_to(reply: str, seen: str) -> None:
    """A drawing comes as lines no wider than a page, and nothing is stored by it."""
    session = session_of()
    lines = session.reply(reply).lines

    assert any(seen in line for line in lines)
    assert max(map(len, lines)) <= 80
    assert session.current is None


def test_how_things_stand_is_said_wall_by_wall_with_what_to_measure() -> None:
    """A guessed string locks pieces of its wall; it is counted, and named as what to measure."""
    session = session_of(without=("A.string",))
    session.reply("about 1 1/4")
    lines = session.reply("what is missing").lines

    assert "1 guessed, 0 missing" in lines[1]
    assert "string to the concrete" in lines[-1]
