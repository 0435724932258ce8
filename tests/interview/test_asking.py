"""The engine: one question at a time, any answer changed at any time, and nothing lost or asked twice for it."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from guide.interview.answers import Answer, Certainty, outer_place, scope_of, wall_index, wall_letter
from guide.interview.asking import (
    Effect,
    applying,
    asked_at,
    closes_ring,
    expected,
    joined_left,
    joined_right,
    next_question,
    path_for,
    previous_question,
    with_answer,
)
from guide.interview.jobfile import from_json
from guide.interview.understand import hear
from guide.interview.written import Json
from tests.interview.people import BOOK, answered, edited_talks, replies, talks
from tests.jobs import BASEMENT, Tree, job, new_door, ring, standing, wall, window

Answers = dict[str, Answer]


def answers_of(tree: Tree) -> Answers:
    """Return the answers of a job."""
    return from_json(tree, BOOK).answers


def changed(answers: Answers, path: str, reply: str) -> tuple[Answers, Effect]:
    """Return the answers after one is changed by a reply, and what that did."""
    asked = asked_at(BOOK, path)
    assert asked is not None
    heard = hear(BOOK, answers, asked, reply)
    assert isinstance(heard, Answer)
    return with_answer(BOOK, answers, path, heard)


def in_force(answers: Answers) -> Answers:
    """Return the answers that apply."""
    return {asked.path: answers[asked.path] for asked in applying(BOOK, answers) if asked.path in answers}


# --------------------------------------------------------------------------------------------- in the order asked


@given(st.data())
@settings(max_examples=60)
def test_answering_in_order_never_repeats_a_question_and_ends(data: st.DataObject) -> None:
    answers: Answers = {}
    seen: list[str] = []
    while (asked := next_question(BOOK, answers)) is not None:
        assert asked.path not in seen
        seen.append(asked.path)
        answers = answered(answers, asked, data.draw(replies(asked.question)))
    assert seen == [asked.path for asked in expected(BOOK, answers)]
    assert set(seen) == set(answers)


@given(talks(), st.randoms(use_true_random=False))
@settings(max_examples=60)
def test_the_order_in_which_answers_came_does_not_matter(answers: Answers, chance: object) -> None:
    """There is no cursor: the same answers give the same next question, however they were given."""
    paths = sorted(answers)
    chance.shuffle(paths)  # type: ignore[attr-defined]
    assert next_question(BOOK, {path: answers[path] for path in paths}) == next_question(BOOK, answers)


@given(edited_talks())
@settings(max_examples=60)
def test_the_next_question_is_the_first_that_is_open_or_in_doubt(answers: Answers) -> None:
    asked = next_question(BOOK, answers)
    for each in expected(BOOK, answers):
        if asked is not None and each.path == asked.path:
            break
        assert not answers[each.path].confirm
    if asked is not None:
        assert asked.path not in answers or answers[asked.path].confirm


@given(talks())
@settings(max_examples=40)
def test_going_back_walks_every_answer_that_applies_from_the_last_to_the_first(answers: Answers) -> None:
    asked = next_question(BOOK, answers)
    path = asked.path if asked else None
    walked: list[str] = []
    while (before := previous_question(BOOK, answers, path)) is not None:
        path = before.path
        walked.append(path)
    assert walked[::-1] == list(in_force(answers))


# ------------------------------------------------------------------------------------------------- changing one


@given(edited_talks(), st.data())
@settings(max_examples=150)
def test_a_change_parks_exactly_what_no_longer_applies_and_a_change_back_brings_it_back_unchanged(
    answers: Answers, data: st.DataObject
) -> None:
    paths = sorted(in_force(answers))
    if not paths:
        return
    path = data.draw(st.sampled_from(paths))
    asked = asked_at(BOOK, path)
    assert asked is not None
    new, effect = changed(answers, path, data.draw(replies(asked.question)))

    applied, applies = set(in_force(answers)), set(in_force(new))
    assert set(effect.parked) == applied - applies
    assert set(effect.back) == applies - applied
    value_changed = new[path].value != answers[path].value
    assert set(effect.confirm) == {p for p in applies if value_changed and hangs_on(p, path)}

    assert set(new) == set(answers), "no answer is ever dropped, and none appears"
    for other in set(new) - {path}:
        assert (new[other].value, new[other].known, new[other].typed) == (
            answers[other].value,
            answers[other].known,
            answers[other].typed,
        )
        assert new[other].confirm == (answers[other].confirm or other in effect.confirm)

    again, undone = with_answer(BOOK, new, path, answers[path])
    assert set(in_force(again)) == applied
    assert set(undone.back) == set(effect.parked)
    assert {p: again[p] for p in effect.parked} == {p: answers[p] for p in effect.parked}


def hangs_on(path: str, changed_path: str) -> bool:
    """Say whether the answer at a path hangs on another, read off the book."""
    asked = asked_at(BOOK, path)
    assert asked is not None
    return changed_path in {path_for(asked.place, ref) for ref in asked.question.hangs_on}


@given(talks(whole=True), st.data())
@settings(max_examples=30)
def test_after_any_changes_the_talk_still_ends(answers: Answers, data: st.DataObject) -> None:
    for _ in range(data.draw(st.integers(1, 5))):
        path = data.draw(st.sampled_from(sorted(in_force(answers))))
        asked = asked_at(BOOK, path)
        assert asked is not None
        answers, _effect = changed(answers, path, data.draw(replies(asked.question)))
    steps = 0
    while (asked := next_question(BOOK, answers)) is not None:
        heard = hear(BOOK, answers, asked, "keep" if asked.path in answers else data.draw(replies(asked.question)))
        assert isinstance(heard, Answer)
        answers, _effect = with_answer(BOOK, answers, asked.path, heard)
        steps += 1
        assert steps < 1000
    assert all(not answers[path].confirm for path in in_force(answers))


def test_a_changed_length_puts_in_doubt_what_was_counted_and_read_along_the_wall() -> None:
    answers = answers_of(job([wall("144 in")]))
    new, effect = changed(answers, "A.length", "150")
    assert effect == Effect(
        parked=(), back=(), confirm=("A.height", "A.concrete", "A.openings", "A.pipes", "A.boxes", "A.fixtures")
    )
    assert new["A.height"] == answers["A.height"].doubted()
    asked = next_question(BOOK, new)
    assert asked is not None
    assert asked.path == "A.height"
    kept, effect = changed(new, "A.height", "keep")
    assert kept["A.height"] == answers["A.height"]
    assert not effect.touches


def test_the_same_value_said_otherwise_touches_nothing() -> None:
    new, effect = changed(answers_of(job([wall("144 in")])), "A.length", "12 ft at floor")
    assert not effect.touches
    assert new["A.length"].typed == "12 ft at floor"


def test_what_hung_from_a_parked_answer_is_parked_with_it() -> None:
    """Wall B ended at a framed wall; when wall A turns out to meet it in a corner, neither is asked any more."""
    answers = answers_of(job([wall(right="open end"), wall(left="framed wall", left_framed="4 3/4 in")]))
    new, effect = changed(answers, "A.right", "inside corner")
    assert effect.parked == ("B.left", "B.left_framed")
    assert effect.back == ("A.right_first",)
    _, undone = changed(new, "A.right", "open end")
    assert undone.back == ("B.left", "B.left_framed")


def test_another_kind_of_opening_parks_its_own_measures_and_keeps_its_place() -> None:
    answers = answers_of(job([wall(openings=[window("40 in")])]))
    new, effect = changed(answers, "A.opening1.kind", "new door")
    assert effect.parked == tuple(f"A.opening1.{each}" for each in ("width", "tall", "sill", "depth", "tapers"))
    assert in_force(new)["A.opening1.left"] == answers["A.opening1.left"]
    asked = next_question(BOOK, new)
    assert asked is not None
    assert asked.path == "A.opening1.leaf_width"


def test_fewer_walls_park_the_others_with_everything_on_them_and_more_bring_them_back() -> None:
    answers = answers_of(job([wall(), wall(openings=[new_door("40 in")], pipes=[standing("100 in")])]))
    one, effect = changed(answers, "basement.walls", "1")
    assert {path.partition(".")[0] for path in effect.parked} == {"B"}
    assert {"B.length", "B.opening1.leaf_width", "B.pipe1.at"} <= set(effect.parked)
    assert one["B.pipe1.at"] == answers["B.pipe1.at"]
    two, effect = changed(one, "basement.walls", "2")
    assert {"B.length", "B.opening1.leaf_width", "B.pipe1.at"} <= set(effect.back)
    assert in_force(two) == {**in_force(answers), "basement.walls": two["basement.walls"]}


def test_a_doubt_stays_until_it_is_answered_or_kept() -> None:
    answers = answers_of(job([wall("144 in")]))
    answers["basement.foam"] = answers["basement.foam"].doubted()
    asked = next_question(BOOK, answers)
    assert asked is not None
    assert asked.path == "basement.foam"
    new, _ = changed(answers, "basement.foam", "expanded")
    assert next_question(BOOK, new) is None


# ------------------------------------------------------------------------------------------------------- corners


def test_four_walls_that_close_meet_at_every_end_and_are_asked_only_what_is_open() -> None:
    answers = answers_of(ring([wall(), wall(), wall(), wall()]))
    assert [closes_ring(answers, n) for n in range(4)] == [False, False, False, True]
    assert all(joined_left(answers, n) and joined_right(answers, n) for n in range(4))
    asked = {each.path for each in applying(BOOK, answers)}
    assert {"A.left", "B.left", "D.right", "A.left_first"} & asked == set()
    assert {"A.right", "C.right", "A.right_first", "D.right_first"} <= asked


def test_three_walls_never_close_whatever_a_parked_answer_says() -> None:
    answers = answers_of(ring([wall(), wall(), wall(), wall()]))
    three, effect = changed(answers, "basement.walls", "3")
    assert "basement.ring" in effect.parked
    assert not any(closes_ring(three, n) for n in range(3))
    assert not joined_left(three, 0)
    assert {"A.left", "C.right"} <= {asked.path for asked in applying(BOOK, three)}


def test_walls_that_end_otherwise_do_not_meet() -> None:
    answers = answers_of(job([wall(right="open end"), wall()]))
    assert not joined_right(answers, 0)
    assert not joined_left(answers, 1)
    assert not joined_right(answers, 1)


# --------------------------------------------------------------------------------------------------------- paths


@pytest.mark.parametrize(
    ("index", "letters"), [(0, "A"), (25, "Z"), (26, "AA"), (27, "AB"), (51, "AZ"), (52, "BA"), (199, "GR")]
)
def test_walls_are_lettered_past_z(index: int, letters: str) -> None:
    assert wall_letter(index) == letters
    assert wall_index(letters) == index
    assert wall_index(f"{letters}.opening2") == index


@pytest.mark.parametrize(
    ("place", "scope", "outer"),
    [
        ("basement", "basement", None),
        ("A", "wall", "basement"),
        ("AB", "wall", "basement"),
        ("A.opening12", "opening", "A"),
    ],
)
def test_a_place_knows_what_it_is_and_what_is_round_it(place: str, scope: str, outer: str | None) -> None:
    assert scope_of(place) == scope
    assert outer_place(place) == outer


@pytest.mark.parametrize(
    "path", ["length", "A.colour", "basement.length", "A.opening1.length", "A.roof1.kind", "", "."]
)
def test_a_path_that_names_no_question_is_none(path: str) -> None:
    assert asked_at(BOOK, path) is None


def test_a_question_is_seen_from_inside_its_scope_only() -> None:
    assert path_for("B.opening2", "wall.length") == "B.length"
    assert path_for("B.opening2", "basement.walls") == "basement.walls"
    assert path_for("B.opening2", "opening.kind") == "B.opening2.kind"
    with pytest.raises(AssertionError, match="cannot be seen"):
        path_for("B", "opening.kind")


def test_the_book_of_these_tests_is_answered_by_the_plain_job() -> None:
    tree: dict[str, Json] = {"format": 1, "basement": BASEMENT, "walls": [wall("144 in")]}
    answers = answers_of(tree)
    assert next_question(BOOK, answers) is None
    assert {answer.known for answer in answers.values()} == {Certainty.MEASURED}
