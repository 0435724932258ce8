"""Any piece can be pointed at, in words, and tells what it is, why it is there, what it rests on and what was possible instead."""

from __future__ import annotations

import pytest

from guide.book.questions import load_book
from guide.interview.jobfile import Job, from_json, to_json
from guide.layout.parts import Kind
from guide.lint.pieces import lint_pieces
from guide.lint.sources import source_texts
from guide.reference.figures import figure_table
from guide.reference.pieces import KindOfPiece, Pieces, load_pieces
from guide.session import Session
from guide.sheets.pointed import pieces_meant
from guide.sheets.ticket import LOCKED
from guide.worked import WORKED_JOBS
from tests.walkthroughs import worked


def session_of(name: str = "four-walls", *, without: str = "", **changed: str) -> Session:
    """Return a session on a worked job, an answer taken out, others of the basement given anew."""
    answers = {path: answer for path, answer in worked(name).answers.items() if path != without}
    session = Session(load_book(), Job(answers))
    for key, reply in changed.items():
        session.change(f"basement.{key}")
        session.reply(reply)
        session.reply("yes")
    return session


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_every_piece_and_every_thing_can_be_told(name: str) -> None:
    """Each piece of the worked jobs says its mark, its place and its reason, and each opening and pipe what was said of it."""
    session = session_of(name)
    walls = [each.wall for each in session.layout.walls]
    things = [t.place for w in walls for t in w.openings] + [t.place for w in walls for t in w.pipes]

    for part in session.layout.parts.values():
        lines = session.piece_lines((part.id,))
        assert lines[0].startswith(f"{part.mark}: {part.kind.value}")
        assert lines[1].startswith("Where: ")
        assert lines[2].startswith("Why: ")
        assert any(line.startswith("Its ") for line in lines)
    for place in things:
        assert " of wall " in session.piece_lines((place,))[0]


def test_a_mark_gives_the_size_of_the_cut_list_and_its_reason() -> None:
    """“what is B7” names the stud with the cut, the edges on the plates, the layout choice and what that beat."""
    lines = session_of().reply("What is B7?").lines

    assert lines[0] == "B7: stud, 2x4, cut 89 3/8 in."
    assert lines[1].startswith("Where: 79 3/4 to 81 1/4 from the left end of the plates")
    assert lines[2] == "Why: Stands on the 16 in layout, centre at 80 1/2 in from the left end of the plate."
    assert any(line.startswith("Decided: The stud layout starts left") and "Starting right" in line for line in lines)
    assert any("stud spacing" in line and "common practice" in line for line in lines)
    assert any(line.startswith("Its size rests on wall B: ") and "slab to joists" in line for line in lines)


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("AF2", ["A.fireblock.2"]),
        ("Af2", ["A.foam.2"]),
        ("af2", ["A.fireblock.2", "A.foam.2"]),
        ("a k1", ["A.king_stud.1"]),
        ("stud 7", ["B.stud.7"]),
        ("stud 7 of wall a", ["A.stud.7"]),
        ("F1", ["B.fireblock.1"]),
        ("the cap 4 7/8", ["B.cap_strip.1"]),
        ("window 1 of wall A", ["A.opening1"]),
        ("pipe 1", ["B.pipe1"]),
        ("stud 99", []),
        ("Z7", []),
        ("the weather", []),
        ("7", []),
    ],
)
def test_words_mean_the_piece_that_a_person_means(said: str, meant: list[str]) -> None:
    """A mark in its capitals is one piece; without its letter it is on the wall talked about; F and f are told apart."""
    assert sorted(pieces_meant(session_of().layout, said, "B")) == meant


def test_a_mark_without_its_capitals_that_can_be_two_pieces_is_asked_back() -> None:
    """“af2” is foam or a fireblock: both are named, and nothing is told of either."""
    lines = session_of().reply("what is af2").lines

    assert len(lines) == 1
    assert "Af2: foam" in lines[0]
    assert "AF2: fireblock" in lines[0]


def test_a_word_of_the_trade_is_explained_and_not_a_piece() -> None:
    """“what is a header” and “what is drywall” are questions about words, though the wall has such pieces."""
    session = session_of(without="A.other")

    assert session.reply("what is drywall").lines[0].startswith("drywall: ")
    assert session.reply("what is the header").lines[0].startswith("header: ")
    assert session.reply("why do you ask").lines == session.reply("why").lines


def test_a_size_that_nobody_measured_reads_locked_and_its_reading_is_named() -> None:
    """A cap whose shelf was not read is not told with a width, and the shelf is named as what is missing."""
    lines = session_of(without="A.shelf").reply("what is Acap1").lines

    assert LOCKED in lines[0]
    assert any(line.startswith("Not measured yet") and "bare shelf" in line for line in lines)


def test_while_a_stop_stands_no_size_is_told() -> None:
    """With a wet basement nothing may be cut, so the stud is told without its cut."""
    assert session_of(water="wet").reply("what is B7").lines[0] == f"B7: stud, 2x4, cut {LOCKED}."


def test_a_choice_that_a_question_holds_leads_there() -> None:
    """The corner of a plate names the words that change it, and these words go to that question."""
    session = session_of()
    lines = session.reply("why is BBP1 there").lines
    said = next(line for line in lines if line.startswith("To decide it yourself"))

    assert said == "To decide it yourself, say: change which wall runs through on the right of wall A."
    session.reply(said.partition(": ")[2])
    assert session.current is not None
    assert session.current.path == "A.right_first"


def test_the_proof_finds_a_kind_left_out_and_names_that_nothing_has() -> None:
    """The data of pieces is proved: a kind without a row, a figure, a decision and a question that are not there."""
    kind = dict(load_pieces().kind)
    del kind[Kind.SILL]
    kind["header"] = KindOfPiece(words=("header",), decided=("whim",), figures=("girth",), code=("custom",))
    said = lint_pieces(
        Pieces(kind=kind, overruled={"cap": ("wall.mood",)}), set(figure_table()), load_book(), source_texts()
    )

    assert [each.partition(": ")[2] for each in said] == [
        "sill is a piece that it says nothing of.",
        "header names the figure girth, which is not there.",
        "header names custom, which no code has.",
        "header names the decision whim, which nothing makes.",
        "cap is overruled by wall.mood, which is no question.",
    ]


def test_a_choice_on_request_is_never_asked_by_itself_and_counts_nowhere() -> None:
    """The end of the stud layout is asked only of who wants it: unanswered it is neither missing nor guessed nor locked."""
    session = session_of()

    assert session.current is None
    assert "0 missing" in session.standing("B")
    assert session.counts()[0] == session.counts()[1]
    assert session.survey.unsure({"B.layout_from", "B.pipe1.way"}) == ()


def test_each_end_and_each_way_past_a_pipe_that_a_person_decides_is_built() -> None:
    """The layout starts where it is wanted; a pipe that fits between studs gets a box, or the wall moves out past it."""
    session = session_of()
    for side in ("left", "right"):
        session.reply("change where the stud layout starts of wall B")
        session.reply(side)
        assert session.layout.by_letter["B"].zero_side == side
    assert session.layout.by_letter["B"].cap_case == 1
    session.reply("change where the cap lies of wall B")
    session.reply("under the joists")
    assert session.layout.by_letter["B"].cap_case == 2
    before = session.layout.by_letter["B"]
    session.reply("change how the pipe is passed")
    session.reply("box")
    assert session.layout.by_letter["B"].of(Kind.CHASE_POST)
    session.reply("change how the pipe is passed")
    session.reply("move the wall")
    after = session.layout.by_letter["B"]
    assert not after.of(Kind.CHASE_POST)
    assert after.offsets.back > before.offsets.back
    assert after.offsets.back >= after.wall.pipes[0].out


def test_a_choice_on_request_is_kept_in_the_job_file() -> None:
    """Written and read again, the job still has the end that the person decided on."""
    session = session_of()
    session.reply("change where the stud layout starts of wall B")
    session.reply("right")
    kept = from_json(to_json(load_book(), session.job), load_book())

    assert kept.answers["B.layout_from"].value == "right"
