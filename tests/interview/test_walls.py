"""Whole walls copied, mirrored, moved, put in and taken out: no answer is lost by it, and each undoes its opposite."""

from __future__ import annotations

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from guide.interview.answers import Answer, Certainty, Spot, wall_letter
from guide.interview.jobfile import from_json
from guide.interview.walls import (
    copied,
    corners_in_doubt,
    deleted,
    inserted,
    mirrored,
    moved,
    name_of_a_copy,
    wall_names,
)
from guide.lengths import Length, inches
from tests.interview.people import BOOK, talks
from tests.jobs import Tree, job, kept_free, new_door, partition, ring, standing, wall, window

Answers = dict[str, Answer]


def values(answers: Answers) -> dict[str, object]:
    """Return everything the answers say; how the count of walls was typed is no matter."""
    return {p: a if p != "basement.walls" else a.value for p, a in answers.items()}


def four_walls() -> Answers:
    """Return a ring of four walls with a door, a window and a pipe on the second."""
    things: Tree = {"openings": [new_door("60 in"), window("120 in")], "pipes": [standing("40 in")]}
    return from_json(ring([wall("196 in", **(things if n == 1 else {})) for n in range(4)]), BOOK).answers


@given(talks(), st.data())
@settings(max_examples=15, deadline=None)
def test_a_wall_that_is_copied_and_taken_out_again_leaves_every_answer_as_it_was(
    answers: Answers, data: st.DataObject
) -> None:
    walls = len(wall_names(answers))
    assume(walls)
    index, at = data.draw(st.integers(0, walls - 1)), data.draw(st.integers(0, walls))

    assert values(deleted(copied(answers, index, at, name_of_a_copy(answers, index)), at)) == values(answers)


@given(talks(), st.data())
@settings(max_examples=15, deadline=None)
def test_a_wall_put_in_and_taken_out_or_moved_and_moved_back_leaves_every_answer_as_it_was(
    answers: Answers, data: st.DataObject
) -> None:
    walls = len(wall_names(answers))
    assume(walls)
    index, to = data.draw(st.integers(0, walls - 1)), data.draw(st.integers(0, walls - 1))

    assert values(deleted(inserted(answers, to), to)) == values(answers)
    assert values(moved(moved(answers, index, to), to, index)) == values(answers)


@given(talks(), st.data())
@settings(max_examples=25, deadline=None)
def test_a_wall_mirrored_twice_is_the_wall_it_was(answers: Answers, data: st.DataObject) -> None:
    walls = len(wall_names(answers))
    assume(walls)
    index = data.draw(st.integers(0, walls - 1))
    once = mirrored(BOOK, answers, index)
    assume(once is not None)
    assert once is not None
    twice = mirrored(BOOK, once, index)

    assert twice == answers


@given(talks(), st.data())
@settings(max_examples=10, deadline=None)
def test_taking_a_wall_out_loses_its_own_answers_and_no_other(answers: Answers, data: st.DataObject) -> None:
    walls = len(wall_names(answers))
    assume(walls)
    index = data.draw(st.integers(0, walls - 1))
    own = {path for path in answers if path.partition(".")[0] == wall_letter(index)}

    assert len(deleted(answers, index)) == len(answers) - len(own)


def test_things_are_counted_from_the_other_end_of_a_mirrored_wall() -> None:
    """A wall of 196: a door leaf of 32 at 60 stands at 104 then, a window of 32 at 120 at 44; worked by hand."""
    before = four_walls()
    after = mirrored(BOOK, before, 1)
    assert after is not None
    length = before["B.length"].value
    assert isinstance(length, tuple)
    size = min(spot.size for spot in length if isinstance(spot, Spot))
    door, width = before["B.opening1.left"].value, before["B.opening1.leaf_width"].value
    assert isinstance(door, Length)
    assert isinstance(width, Length)

    assert after["B.opening2.kind"].value == "new door"
    assert after["B.opening2.left"].value == size - door - width
    assert after["B.opening2.hinge"].value != before["B.opening1.hinge"].value
    assert after["B.right"] == before["B.right"], "a corner with another wall of the job stays where it is"


def test_whatever_has_a_left_edge_is_turned_by_its_own_width() -> None:
    """Of a wall of 196, worked by hand: a partition of 3 1/2 at 60 stands at 132 1/2 then, 30 in kept free at 100 at 66.

    A width that was said while it was taken for a window counts no more.
    """
    things: Tree = {"openings": [{**partition("60 in"), "width": "32 in"}, kept_free("100 in")]}
    after = mirrored(BOOK, from_json(job([wall("196 in", **things)]), BOOK).answers, 0)
    assert after is not None

    assert (after["A.opening1.kind"].value, after["A.opening1.left"].value) == ("kept free", inches("66"))
    assert (after["A.opening2.kind"].value, after["A.opening2.left"].value) == ("partition", inches("132 1/2"))


def test_a_lying_pipe_whose_far_end_is_not_yet_known_is_turned_and_turned_back() -> None:
    """Where it starts becomes where it ends: a place that is right for the one end is not held against the other."""
    pipe: Tree = {"run": "lying", "carries": "drain", "from": "0 in"}
    before = from_json(job([wall("100 in", pipes=[pipe])]), BOOK).answers
    once = mirrored(BOOK, before, 0)
    assert once is not None

    assert once["A.pipe1.to"].value == inches("100")
    assert mirrored(BOOK, once, 0) == before


def test_the_ends_of_a_wall_that_meets_no_other_are_turned_with_it() -> None:
    """A single wall between a framed wall and an open end lies between an open end and a framed wall then."""
    one = wall(left="framed wall", left_framed="6 in", right="open end")
    after = mirrored(BOOK, from_json(job([one]), BOOK).answers, 0)
    assert after is not None

    assert (after["A.left"].value, after["A.right"].value) == ("open end", "framed wall")
    assert after["A.right_framed"].value == inches("6")


def test_the_angle_of_a_corner_goes_with_it_to_the_other_end() -> None:
    """The reading across the left corner is the one across the right corner then, and the other way round."""
    after = mirrored(BOOK, from_json(job([wall(left_across="104 in", across="96 in")]), BOOK).answers, 0)
    assert after is not None

    assert (after["A.left_across"].value, after["A.across"].value) == (inches("96"), inches("104"))


def test_only_corners_that_other_walls_meet_in_now_are_in_doubt() -> None:
    """Of four walls in a ring, taking the third out leaves the first one's corner with the second alone."""
    before = four_walls()
    after = deleted(before, 2)
    rows = [0, 1, 3]
    doubted = corners_in_doubt(BOOK, before, after, lambda number: rows[number])

    assert "B.right" in doubted
    assert "A.right" not in doubted


def test_leaning_answers_follow_their_wall() -> None:
    """What a place was worked out from is found under the wall's new letter."""
    before = four_walls()
    box = Answer(inches("88"), Certainty.MEASURED, "16 after the door", leans=("B.opening1.left",))
    after = inserted({**before, "B.box1.at": box}, 0)

    assert after["C.box1.at"].leans == ("C.opening1.left",)
    assert wall_names(after)[0] == "wall A"
