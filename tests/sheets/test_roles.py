"""Who runs through at a corner, as told: on the page of both walls, and once in the talk when every wall is done."""

from __future__ import annotations

from guide.book.questions import load_book
from guide.interview.jobfile import Job, from_json
from guide.session import Session
from guide.sheets.roles import corner_lines
from guide.sheets.view import WallView
from tests.layout.test_roles import room_of


def test_better_roles_are_told_on_both_pages_and_at_the_end_of_the_talk_with_the_words_to_have_them() -> None:
    """Wall D through at the corner of D and A wins the sheet edge that a window takes from the pack of wall A."""
    book = load_book()
    answers = from_json(room_of(), book).answers
    session = Session(book, Job({path: each for path, each in answers.items() if path != "D.other"}))
    (told,) = [line for line in session.reply("none").lines if "let D run through" in line]
    pages = {wall.letter: corner_lines(WallView(session.plan, wall)) for wall in session.layout.walls}

    assert "change which wall runs through on the right of wall D" in told
    assert ["let D run through" in "".join(pages[letter]) for letter in "ABCD"] == [True, False, False, True]
    assert any(
        "wall A runs through. With wall D through" in line and "1 fewer sheet edge" in line for line in pages["A"]
    )
    even, worse = pages["C"]
    assert even == "As good with the other wall running through: the corner of walls C and D."
    assert worse.endswith("With wall B through, both walls together: 1 more sheet edge(s) without a stud.")  # its pipe

    session.reply("change which wall runs through on the right of wall D")
    assert not any("run through" in line for line in session.reply("this wall").lines)
