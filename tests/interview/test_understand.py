"""Replies at any question: wishes, “same as”, what is taken out of a reply, and that nothing else can come of one."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from guide.book.questions import Question
from guide.interview.answers import Answer
from guide.interview.replies import LONGEST_TEXT, Sorry, clean, shortened
from guide.interview.understand import Wish, unknown_answer, usual_answer
from guide.lengths import inches
from tests.interview.hearing import (
    ASSUMED,
    MEASURED,
    METRIC,
    PLACES,
    UNKNOWN,
    heard,
    said_back,
    spots,
    value,
)
from tests.interview.people import BOOK, replies

# --------------------------------------------------------------------------------------------------------- wishes


@pytest.mark.parametrize(
    ("reply", "wanted"),
    [("back", "back"), ("Go back", "back"), ("why?", "why"), ("how", "how"), ("How do I measure that?", "how"), ("help", "help"), ("?", "help")],
)  # fmt: skip
@pytest.mark.parametrize(
    "ref", ["basement.use", "wall.length", "wall.string", "wall.openings", "basement.walls", "wall.other"]
)
def test_a_wish_is_granted_at_every_kind_of_question(ref: str, reply: str, wanted: str) -> None:
    assert heard(ref, reply) == Wish(wanted)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    "reply", ["don't know", "Don’t know", "dont know", "I don´t know.", "dunno", "no idea", "not sure", "idk"]
)
def test_dont_know_does_what_the_book_says(reply: str) -> None:
    typed = clean(reply)
    assert heard("wall.length", reply) == Answer(None, UNKNOWN, typed)
    assert heard("basement.foam_thickness", reply) == Answer(inches("2"), ASSUMED, typed)
    assert heard("basement.slab", reply) == Answer("something", MEASURED, typed)
    assert heard("wall.openings", reply) == Answer(0, ASSUMED, typed)
    assert heard("wall.height", reply) == Answer(spots(("left", "92"), ("right", "92")), ASSUMED, typed)


def test_dont_know_at_any_question_gives_an_answer_that_is_not_measured_unless_it_is_the_strict_one() -> None:
    for question in BOOK.questions:
        answer = unknown_answer(question, "don't know")
        assert (answer.known is MEASURED) == question.unknown.settled
        assert (answer.value is None) == (question.unknown.take is None)
        assert not question.unknown.settled or question.kind in ("choice", "names")


def test_usual_is_settled_for_a_choice_and_only_assumed_for_what_a_tape_would_tell() -> None:
    assert heard("basement.use", "usual") == Answer("living", MEASURED, "usual")
    assert heard("basement.foam_thickness", "the usual") == Answer(inches("2"), ASSUMED, "the usual")
    for question in BOOK.questions:
        answer = usual_answer(question, "usual")
        if answer is not None:
            assert (answer.known is ASSUMED) == (question.kind in ("length", "readings"))


def test_what_only_a_tape_can_tell_has_no_usual_answer_but_an_example() -> None:
    assert "196 in at floor" in said_back("wall.length", "usual")
    assert "60 in" in said_back("opening.left", "the usual")
    assert all((q.usual is None) == (q.example is not None) for q in BOOK.questions)


DOUBTED = Answer(inches("2"), MEASURED, "2 in", confirm=True)


@pytest.mark.parametrize(
    "reply", ["keep", "keep it", "yes", "y", "ok", "that's right", "It’s right", "correct", "still right"]
)
def test_an_answer_in_doubt_is_kept_as_it_was_typed(reply: str) -> None:
    assert heard("wall.lean", reply, {"A.lean": DOUBTED}) == DOUBTED.confirmed()


def test_an_answer_that_is_not_in_doubt_is_kept_only_when_that_is_said() -> None:
    sure = DOUBTED.confirmed()
    assert heard("wall.lean", "keep", {"A.lean": sure}) == sure
    said_back("wall.lean", "yes", {"A.lean": sure})
    said_back("wall.lean", "keep")


@pytest.mark.parametrize("ref", ["wall.lean", "wall.openings", "wall.height", "basement.walls"])
def test_no_to_an_answer_in_doubt_is_not_taken_for_none(ref: str) -> None:
    question = BOOK.by_ref[ref]
    answer = unknown_answer(question, "so")
    path = f"{PLACES[question.scope]}.{question.id}"
    said_back(ref, "no", {path: answer.doubted()})


@pytest.mark.parametrize("reply", ["yes", "no", "none", "keep"])
def test_yes_and_no_are_no_size(reply: str) -> None:
    said_back("basement.foam_thickness", reply)
    said_back("wall.height", reply)


# -------------------------------------------------------------------------------------------------- same as wall A

WALLS = {
    "basement.walls": Answer(("north", "east", "long side"), MEASURED, "north, east, long side"),
    "A.lean": Answer(inches("1/4"), MEASURED, "1/4"),
    "A.string": Answer(None, UNKNOWN, "no idea"),
    "A.shelf": Answer(inches("-1"), MEASURED, "-1", confirm=True),
    "A.other": Answer("gas meter at 9 ft", MEASURED, "gas meter at 9 ft"),
}


@pytest.mark.parametrize(
    "reply",
    ["same as wall A", "Same as A", "same as A.", "like wall A", "as wall A", "same as north", "same as the north wall", "Same as wall a"],
)  # fmt: skip
def test_same_as_another_wall_copies_its_answer(reply: str) -> None:
    assert heard("wall.lean", reply, WALLS, "B") == Answer(inches("1/4"), MEASURED, reply)


def test_same_as_copies_the_doubt_with_the_answer() -> None:
    assert heard("wall.shelf", "same as wall A", WALLS, "B") == Answer(
        inches("-1"), MEASURED, "same as wall A", confirm=True
    )


@pytest.mark.parametrize(
    "reply",
    ["same as wall C", "same as wall B", "same as Q", "same as the garage", "same as wall AA", "same", "same as"],
)
def test_same_as_nothing_is_asked_back(reply: str) -> None:
    with pytest.raises(Sorry):
        heard("wall.lean", reply, WALLS, "B")


def test_same_as_works_for_whole_walls_and_known_answers_only() -> None:
    assert "whole wall" in said_back("basement.use", "same as wall A", WALLS)
    assert "whole wall" in said_back("opening.left", "same as wall A", WALLS)
    with pytest.raises(Sorry, match="could copy"):
        heard("wall.string", "same as wall A", WALLS, "B")


def test_free_words_that_begin_like_same_as_stay_words() -> None:
    assert value("wall.other", "like wall paper, it peels", WALLS) == "like wall paper, it peels"
    copied = heard("wall.other", "same as wall A", WALLS, "B")
    assert isinstance(copied, Answer)
    assert copied.value == "gas meter at 9 ft"


# ----------------------------------------------------------------------------------------------- what is taken out


@pytest.mark.parametrize(
    ("reply", "kept"),
    [
        ("gas meter\x1b[31m at 9 ft", "gas meter[31m at 9 ft"),
        ("\x1b]0;title\x07meter", "]0;titlemeter"),
        ("a\tb\nc\r\nd", "a b c d"),
        ("\u202egnp.exe", "gnp.exe"),
        ("zero\u200bwidth", "zerowidth"),
        ("  spaces   fold  ", "spaces fold"),
        ("c1 \x9b31m", "c1 31m"),
        ("soft\u00adhyphen", "soft-hyphen"),
        ("<b>*bold*</b> [x](y) `q`", "<b>*bold*</b> [x](y) `q`"),
        ("№ 7 – Öl ½ ✓", "№ 7 – Öl ½ ✓"),
    ],
)
def test_control_and_direction_characters_are_taken_out_of_free_words_and_nothing_else_is(
    reply: str, kept: str
) -> None:
    assert heard("wall.other", reply) == Answer(kept, MEASURED, kept)


@given(st.text(max_size=60))
def test_no_control_character_is_ever_kept(text: str) -> None:
    kept = clean(text)
    assert all(unicodedata.category(char)[0] != "C" for char in kept)
    assert clean(kept) == kept
    assert len(shortened(text)) <= 41


def test_free_words_are_never_cut_in_silence() -> None:
    longest = "x" * LONGEST_TEXT
    assert value("wall.other", longest) == longest
    assert str(LONGEST_TEXT) in said_back("wall.other", f"{longest}x")


@pytest.mark.parametrize("reply", ["", " ", "\n", "\x00", "\u200b"])
def test_an_empty_reply_is_asked_back_with_an_example(reply: str) -> None:
    assert "I did not get anything" in said_back("wall.other", reply)
    assert "1 = living" in said_back("basement.use", reply)


# ------------------------------------------------------------------------------------------------ every question

questions = st.sampled_from(BOOK.questions)


@given(questions, st.text(max_size=40), st.booleans())
@settings(max_examples=300)
def test_no_reply_of_any_characters_is_more_than_an_answer_a_wish_or_one_sentence(
    question: Question, reply: str, metric: bool
) -> None:
    answer_wish_or_sentence(question, reply, METRIC if metric else {})


JUMBLE = """91 1/4 92 2337 at left right middle floor 8 ft in mm m , ; and about ~ - the same as wall A no yes keep 1 2 none
    don't know usual window north ? . : ( ) @ = ½ ' " one""".split()


@given(questions, st.lists(st.sampled_from(JUMBLE), min_size=1, max_size=7).map(" ".join), st.booleans())
@settings(max_examples=400)
def test_no_jumble_of_words_of_the_talk_is_either(question: Question, reply: str, metric: bool) -> None:
    answer_wish_or_sentence(question, reply, METRIC if metric else {})


def answer_wish_or_sentence(question: Question, reply: str, answers: dict[str, Answer]) -> None:
    """Check that a reply is one of the three, and that an answer lies in the question's range."""
    try:
        found = heard(question.ref, reply, answers)
    except Sorry:
        said_back(question.ref, reply, answers)
        return
    if isinstance(found, Answer) and question.kind in ("length", "readings") and found.value is not None:
        low, high = question.range_of_lengths()
        assert low is not None
        assert high is not None
        sizes = [found.value] if question.kind == "length" else [spot.size for spot in found.value]  # type: ignore[union-attr]
        assert all(low <= size <= high for size in sizes)  # type: ignore[operator]


@given(questions, st.data())
@settings(max_examples=200)
def test_a_reply_that_a_person_gives_is_kept_word_for_word(question: Question, data: st.DataObject) -> None:
    reply = data.draw(replies(question))
    answer = heard(question.ref, reply)
    assert isinstance(answer, Answer)
    assert answer.typed == reply
