"""The talk as people talk: the nearest reading offered, the answer before corrected, undo, later, and words explained."""

from __future__ import annotations

from pathlib import Path

from guide.interview.answers import Certainty
from guide.interview.jobfile import load
from guide.lengths import inches
from guide.reference.sketches import sketch_of
from guide.session import Session
from tests.interview.hearing import spots
from tests.test_session import BOOK, session_of


def asked(session: Session) -> str:
    """Return the path of the question asked now."""
    assert session.current is not None
    return session.current.path


def test_the_nearest_reading_is_offered_and_taken_only_by_a_yes() -> None:
    """A sentence with one size in it and words we do not know stores nothing until the person says yes."""
    session = session_of(without=("A.shelf",))
    said = session.reply("it slopes a bit, 2 1/2 near the stair").lines

    assert "2 1/2 in" in said[-1]
    assert "A.shelf" not in session.answers
    session.reply("yes")
    assert session.answers["A.shelf"].value == inches("2 1/2")
    assert session.answers["A.shelf"].typed == "it slopes a bit, 2 1/2 near the stair"


def test_an_offer_stands_for_one_reply_only() -> None:
    """Anything but a yes is heard as a reply of its own, and the offer is gone."""
    session = session_of(without=("A.shelf",))
    session.reply("2 1/2 near the stair")
    session.reply("banana")
    session.reply("yes")

    assert "A.shelf" not in session.answers


def test_no_with_a_size_corrects_the_answer_before_when_it_cannot_be_meant_for_this_question() -> None:
    """After the shelf the number of openings is asked; “no, 2 5/8” is no number of openings."""
    session = session_of(without=("A.shelf", "A.openings"))
    session.reply("2 1/2")
    assert asked(session) == "A.openings"
    said = session.reply("no, 2 5/8").lines

    assert session.answers["A.shelf"].value == inches("2 5/8")
    assert "two and five eighths inches" in said[0]
    assert asked(session) == "A.openings"


def test_a_no_that_could_be_meant_for_either_question_is_asked_back() -> None:
    """A string of 1 1/4, then the lean: “no, 1/4” may be a lean of 1/4 or a string of 1/4; nothing is taken."""
    session = session_of(without=("A.string", "A.lean"))
    session.reply("1 1/4")
    assert asked(session) == "A.lean"
    said = session.reply("no, 1/4").lines

    assert "string to the concrete" in said[0]
    assert session.answers["A.string"].value == inches("1 1/4")
    assert "A.lean" not in session.answers
    session.reply("1/8")
    assert session.answers["A.lean"].value == inches("1/8")


def test_what_is_counted_is_said_back_once_for_all_and_a_no_speaks_of_the_count() -> None:
    """“6 outlets” says what is in each of them; “no, 5” is no fifth choice for the last one."""
    session = session_of(without=("A.box",))
    assert session.reply("6 outlets").lines[:2] == (
        "electrical boxes (wall A (north)): 6.",
        "what is in it (electrical box 1 to 6 of wall A (north)): an outlet.",
    )
    session.reply("no, 5")
    session.reply("yes")
    assert session.answers["A.boxes"].value == 5
    assert session.answers["A.box5.holds"].value == "outlet"


def test_a_wall_said_in_one_breath_is_asked_no_more_of_what_was_said_and_a_no_speaks_of_the_first_of_it() -> None:
    """“16 ft, 7'5 concrete, no openings” shortens the talk by three questions; one size of the concrete stays a guess."""
    session = session_of(without=("A.length", "A.concrete", "A.openings"))
    assert session.reply("16 ft, 7'5 concrete, no openings").stored
    assert session.current is None
    assert session.survey.unsure(frozenset({"A.concrete@left"}))

    session.reply("no, 16 ft 4")
    session.reply("yes")
    assert session.answers["A.length"].value == spots(("floor", "196"))
    assert session.answers["A.openings"].value == 0


def test_a_slip_close_to_the_answer_before_is_its_correction() -> None:
    """“No, 1 3/8” after a string of 1 1/4 means the string, though a wall may lean as much."""
    session = session_of(without=("A.string", "A.lean"))
    session.reply("1 1/4")
    session.reply("no, 1 3/8")

    assert session.answers["A.string"].value == inches("1 3/8")
    assert asked(session) == "A.lean"


def test_i_meant_speaks_of_this_question_when_its_last_reply_was_not_understood() -> None:
    """After a reply that was asked back, a correction corrects that reply and not the answer before."""
    session = session_of(without=("A.lean", "A.shelf"))
    session.reply("1/8")
    session.reply("two something")
    session.reply("I meant 2 1/2")

    assert session.answers["A.lean"].value == inches("1/8")
    assert session.answers["A.shelf"].value == inches("2 1/2")


def test_a_correction_that_touches_others_waits_for_a_yes() -> None:
    """Correcting the number of walls is a change like any other."""
    session = session_of(without=("A.height",))
    session.reply("91 1/4 left, 92 right")
    said = session.reply("sorry, 91 1/2 left, 92 right").lines

    assert any("height of the concrete" in line for line in said)
    session.reply("yes")
    height = session.answers["A.height"].value
    assert isinstance(height, tuple)
    assert session.answers["A.concrete"].confirm


def test_undo_takes_back_one_answer_after_the_other_and_redo_brings_them_again() -> None:
    """Undo goes back by changes, not by questions; after redo everything stands as it did."""
    session = session_of(without=("A.lean", "A.shelf"))
    empty = dict(session.answers)
    session.reply("1/8")
    session.reply("2 1/2")
    full = dict(session.answers)
    session.reply("undo")
    assert asked(session) == "A.shelf"
    session.reply("undo that")
    assert dict(session.answers) == empty
    assert "nothing to undo" in session.reply("undo").lines[0]
    session.reply("redo")
    session.reply("redo")
    assert dict(session.answers) == full
    assert "nothing to redo" in session.reply("redo").lines[0]


def test_undo_brings_back_what_a_change_had_put_in_doubt() -> None:
    """A changed length puts heights in doubt; undone, they are as sure as before."""
    session = session_of()
    before = dict(session.answers)
    session.change("A.length")
    session.reply("200 at floor")
    session.reply("yes")
    assert session.answers["A.height"].confirm
    session.reply("undo")

    assert dict(session.answers) == before


def test_what_is_left_for_later_is_asked_after_everything_else() -> None:
    """“Later” stores nothing; the question comes again when nothing else is open, and is said to be left."""
    session = session_of(without=("A.string", "A.lean", "A.shelf"))
    session.reply("later")
    assert asked(session) == "A.lean"
    session.reply("plumb")
    said = session.reply("skip").lines
    assert any("string to the concrete" in line and "bare shelf" in line for line in said)
    assert asked(session) == "A.string"
    session.reply("1 1/4")
    session.reply("2 1/2")
    assert session.current is None


def test_a_word_of_the_trade_is_explained_and_the_question_stays() -> None:
    """“What does crown mean” gives the glossary's sentence; a word it has not gives the nearest it has, or says so."""
    session = session_of(without=("A.shelf",))

    assert "bulging edge" in session.reply("what does crown mean?").lines[0]
    assert "crown" in session.reply("what's a crwon").lines[0]
    assert "no explanation" in session.reply("what does zyzzyva mean").lines[0]
    assert asked(session) == "A.shelf"


def test_a_word_is_explained_when_nothing_is_left_to_ask_too() -> None:
    """After the last question a word of the trade still has its sentence, and a piece is still told by its mark."""
    session = session_of()
    assert session.current is None

    assert "stops fire" in session.reply("what is a fireblock?").lines[0]
    assert "bulging edge" in session.reply("crown?").lines[0]
    assert "Did you mean crown" in session.reply("what's a crwon").lines[0]
    assert session.reply("what is A7").lines[0].startswith("A7: stud")
    assert "everything I need" in session.reply("why not").lines[0]


def test_how_says_where_to_hold_the_tape_and_draws_it_where_people_go_wrong() -> None:
    """“How” and “help” have the sketch of the shelf; the lean has its own; a question without one is told in words alone."""
    session = session_of(without=("A.shelf", "A.other"))
    sketch = sketch_of("wall.shelf")

    assert "sill" in sketch
    assert session.reply("how").lines[1:] == (sketch,)
    assert sketch in session.reply("help").lines
    session.reply("2 1/2")
    assert len(session.reply("how").lines) == 1


def test_i_think_makes_a_guess_that_locks_what_rests_on_it() -> None:
    """A hedged answer is taken, read back as a guess, and never stands behind a cut."""
    session = session_of(without=("A.string",))
    session.reply("I think it's an inch and a quarter")

    assert session.answers["A.string"].value == inches("1 1/4")
    assert session.answers["A.string"].known is Certainty.EYEBALLED
    assert session.survey.unsure({"A.string"}) == ("A.string",)


def test_several_answers_in_one_reply_are_each_read_back_with_their_place() -> None:
    """Two windows with their sizes and places leave only what was not said to be asked."""
    session = session_of(without=("A.opening", "A.pipes", "A.boxes"))
    said = session.reply("two windows, 30 wide, one at 4 ft the other at 11'6").lines

    assert session.answers["A.openings"].value == 2
    assert session.answers["A.opening2.left"].value == inches("138")
    assert any("left edge (opening 2 of wall A" in line and "eleven feet, six inches" in line for line in said)
    assert asked(session) == "A.opening1.tall"


def test_no_pipes_no_outlets_answers_the_questions_after_this_one_too() -> None:
    """Said at the pipes, both counts are known and neither is asked again."""
    session = session_of(without=("A.pipes", "A.boxes", "A.other"))
    session.reply("no pipes, no outlets")

    assert (session.answers["A.pipes"].value, session.answers["A.boxes"].value) == (0, 0)
    assert asked(session) == "A.other"


def test_what_was_said_from_another_thing_is_asked_again_when_that_one_moves(tmp_path: Path) -> None:
    """16 after the door leans on the door: it locks with it, and is in doubt when the door is moved; the file keeps that."""
    session = session_of(without=("A.opening", "A.box"), path=tmp_path / "job.json")
    for reply in ("a new door at 40, 32 wide, 80 tall", "left", "no", "1", "new", "16 after the door", "16"):
        session.reply(reply)
    box = session.answers["A.box1.at"]
    assert box.value == inches("88")
    assert set(box.leans) == {"A.opening1.left", "A.opening1.leaf_width"}
    assert load(tmp_path / "job.json", BOOK).answers["A.box1.at"] == box

    session.change("A.opening1.left")
    said = session.reply("about 44").lines
    assert any("centre from the left corner" in line for line in said)
    session.reply("yes")
    assert session.answers["A.box1.at"].confirm
    assert asked(session) == "A.box1.at"
    session.reply("16 after the door")
    assert session.answers["A.box1.at"].value == inches("92")
    assert set(session.survey.by_letter["A"].boxes[0].at.rests) >= {"A.opening1.left"}
    assert session.survey.unsure(session.survey.by_letter["A"].boxes[0].at.rests) == ("A.opening1.left",)


def test_a_reply_of_several_answers_is_undone_as_one() -> None:
    """Undo takes back what one reply gave, all of it."""
    session = session_of(without=("A.opening",))
    before = dict(session.answers)
    session.reply("two windows at 48 and 120")
    session.reply("undo")

    assert dict(session.answers) == before


def test_a_size_taped_again_further_apart_than_taping_explains_asks_for_a_third_reading() -> None:
    """Over 1/8 in apart is said, an eighth is not; nor where the first one was a guess (common practice: two readings agree)."""
    for again, said in (("192 3/16", True), ("192 1/8", False)):
        session = session_of()
        session.change("A.length")
        session.reply("192 at the floor")
        session.reply("yes")
        session.change("A.length")
        lines = [*session.reply(f"{again} at the floor").lines, *session.reply("yes").lines]
        assert any("Tape it a third time" in line and "192 in before, 3/16 in apart" in line for line in lines) == said
