"""From answers to the survey: each value rests on its own answer, and guesses are known for guesses."""

from __future__ import annotations

from guide.interview.answers import Certainty
from guide.lengths import Length, inches
from guide.survey.build import refs_read
from guide.survey.profile import Profile
from tests.jobs import job, layout_of, ring, standing, survey_of, wall, window


def test_the_shortest_reading_of_a_length_counts_and_rests_on_all_three() -> None:
    survey = survey_of(job([{**wall(), "length": ["144 1/4 in at floor", "144 in at chest", "144 1/8 in at joists"]}]))
    (only,) = survey.walls

    assert only.length == inches("144")
    assert only.length.rests == {"A.length@floor", "A.length@chest", "A.length@joists"}


def test_a_height_runs_straight_between_readings_and_rests_on_the_two_beside_it() -> None:
    survey = survey_of(job([wall("192 in", height=["90 in at left", "92 in at 96 in", "91 in at right"])]))
    profile = survey.walls[0].height

    assert profile.at(inches("48")) == inches("91")
    assert profile.at(inches("48")).rests == {"A.height@left", "A.height@96"}
    assert profile.at(inches("144")) == inches("91 1/2")
    assert profile.at(inches("96")) == inches("92")
    assert profile.least_over(inches("48"), inches("192")) == inches("91")
    assert profile.breaks(inches("0"), inches("192")) == (inches("96"),)


def test_beyond_its_last_readings_a_height_stays_level() -> None:
    profile = Profile(((inches("12"), inches("90")), (inches("60"), inches("92"))))

    assert profile.at(inches("0")) == inches("90")
    assert profile.at(inches("100")) == inches("92")


def test_middle_and_right_are_places_along_the_length() -> None:
    survey = survey_of(job([wall("100 in", height=["90 in at left", "93 in at middle", "90 in at right"])]))

    assert [x for x, _ in survey.walls[0].height.points] == [inches("0"), inches("50"), inches("100")]


def test_what_was_not_asked_yet_is_drawn_as_usual_and_known_as_unknown() -> None:
    """The string was not read: 1 in is taken, a hump of 1/2, and nothing that rests on it is certain."""
    tree = wall()
    del tree["string"]
    survey = survey_of(job([tree]))

    assert survey.walls[0].smallest_string == inches("1")
    assert survey.unsure(survey.walls[0].smallest_string.rests) == ("A.string",)
    assert not survey.given({"A.string"})
    assert survey.known["A.string"] is Certainty.UNKNOWN


def test_about_is_an_eyeballed_reading_and_locks_what_rests_on_it() -> None:
    layout = layout_of(job([wall(height=["about 92 in at left", "92 in at right"])]))
    survey = layout.survey

    assert survey.known["A.height@left"] is Certainty.EYEBALLED
    assert survey.given({"A.height@left"})
    assert all(survey.unsure(part.size_rests) for part in layout.walls[0].parts if part.kind.value == "stud")


def test_an_answer_in_doubt_counts_as_assumed() -> None:
    survey = survey_of(job([wall(string={"value": "1 1/4 in", "confirm": True})]))

    assert survey.known["A.string"] is Certainty.ASSUMED


def test_concrete_that_was_not_read_is_drawn_one_sill_under_the_joists_and_is_a_guess() -> None:
    tree = wall(height=["92 in at left", "93 in at right"])
    del tree["concrete"]
    survey = survey_of(job([tree]))
    values = [value for _, value in survey.walls[0].concrete.points]

    assert values == [inches("90 1/2"), inches("91 1/2")]
    assert survey.unsure(values[0].rests) == ("A.concrete",)


def test_a_wall_without_a_length_waits() -> None:
    tree = wall()
    del tree["length"]
    survey = survey_of(job([tree, wall()]))

    assert survey.waiting == ("A",)
    assert [each.letter for each in survey.walls] == ["B"]


def test_an_answer_that_does_not_apply_is_not_in_the_survey() -> None:
    """The wall's ends are inside corners: how far a framed wall stands out is parked, not read."""
    survey = survey_of(job([wall(left_framed="9 in")]))

    assert survey.walls[0].left_framed is None
    assert "A.left_framed" not in survey.known


def test_walls_of_a_ring_are_joined_at_both_ends() -> None:
    survey = survey_of(ring([wall(), wall(), wall(), wall()]))

    assert [(each.left_joined, each.right_joined) for each in survey.walls] == [
        ("D", "B"), ("A", "C"), ("B", "D"), ("C", "A"),
    ]  # fmt: skip


def test_a_pipe_knows_its_edges_and_its_back() -> None:
    """Centre 60, 3 1/2 wide, outermost point 4 1/2: from 58 1/4 to 61 3/4, its back 1 in from the concrete."""
    (pipe,) = survey_of(job([wall(pipes=[standing("60 in")])])).walls[0].pipes

    assert (pipe.left_edge, pipe.right_edge, pipe.back) == (inches("58 1/4"), inches("61 3/4"), inches("1"))
    assert {"A.pipe1.at", "A.pipe1.wide", "A.pipe1.out", "A.pipe1.run", "A.pipe1.way"} == pipe.rests


def test_an_opening_rests_on_all_that_frames_it() -> None:
    (opening,) = survey_of(job([wall(openings=[window("40 in")])])).walls[0].openings

    assert opening.right == inches("72")
    assert opening.rests == {f"A.opening1.{each}" for each in ("kind", "left", "width", "tall", "sill")}


def test_every_question_the_survey_reads_is_named_once_for_the_proof_of_the_book() -> None:
    assert {"basement.foam_thickness", "wall.string", "opening.sill", "pipe.out", "box.height"} <= refs_read()


def test_equal_sizes_with_other_origins_are_equal() -> None:
    assert Length(8128, frozenset({"A.x"})) == inches("1")
