"""The room closes or it does not: how the walk ends, and which readings are most worth taking again. Worked by hand."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from guide.checks.check import check
from guide.lengths import SIXTEENTH, ZERO, inches
from guide.reference.codes import load_code
from guide.reference.sayings import say
from guide.survey.closing import Miss, closing, corners_measured
from tests.jobs import Tree, job, l_room, layout_of, survey_of, wall

PLAIN = ("240 in", "180 in", "240 in", "180 in")


def room(lengths: Sequence[str], across: Sequence[str] = (), **basement: str) -> Tree:
    """Return a ring of walls with four inside corners, and a reading across each when they are given."""
    walls = [wall(length, right="inside corner", right_first="you choose") for length in lengths]
    walls = [{**each, "across": read} for each, read in zip(walls, across, strict=True)] if across else walls
    square = {"square": "across the corners"} if across else {}
    return job(walls, ring="yes", **square, **basement)


def diagonals(first: str, second: str, lengths: Sequence[str] = PLAIN) -> Tree:
    return room(lengths, square="both diagonals", diagonal_first=first, diagonal_second=second)


def missed(tree: Tree) -> Miss:
    miss = closing(survey_of(tree))
    assert miss is not None
    return miss


def found(tree: Tree, key: str) -> list[str]:
    return [f.sentence("inches", lambda _: False) for f in check(layout_of(tree), load_code()) if f.key == key]


def worth(miss: Miss) -> list[tuple[str, ...]]:
    return [(suspect.what, *suspect.walls) for suspect in miss.worth]


def test_a_square_room_closes() -> None:
    miss = missed(room(PLAIN))

    assert (miss.along, miss.into, miss.far, miss.twist) == (ZERO, ZERO, ZERO, ZERO)
    assert miss.around == inches("840")
    assert not miss.opens


def test_a_wall_taped_a_foot_short_is_named_with_the_wall_that_could_hide_it() -> None:
    """F of the L-shaped room runs back 192 = 120 + 72: 60 for 72 on D leaves the end 12 behind A; F or B explain it too."""
    tree = l_room()
    walls = tree["walls"]
    assert isinstance(walls, list)
    assert isinstance(walls[3], dict)
    walls[3]["length"] = ["60 in at floor"]
    miss = missed(tree)

    assert (miss.along, miss.into, miss.far) == (ZERO, -inches("12"), inches("12"))
    assert worth(miss) == [("wall", "F"), ("wall", "B")]
    assert found(tree, "closing") == [
        "Walked round by your tape, the walls end 12 in from where they begin, in 67'-0\" of wall: 12 in behind wall A. "
        "Most worth taping again: wall F, then wall B."
    ]


def test_a_guessed_length_is_the_first_to_tape_again() -> None:
    tree = room(("240 in", "180 in", "241 in", "180 in"))
    walls = tree["walls"]
    assert isinstance(walls, list)
    assert isinstance(walls[0], dict)
    walls[0]["length"] = ["about 240 in at floor"]

    assert worth(missed(tree)) == [("wall", "A"), ("wall", "C")]


def test_both_ways_of_a_miss_are_said() -> None:
    (said,) = found(room(("240 in", "180 in", "239 in", "178 in")), "closing")

    assert "1 in to the right as you face wall A, and 2 in away from wall A, into the room" in said


def test_half_an_inch_is_what_careful_tapes_leave_open() -> None:
    assert not missed(room(("240 1/2 in", "180 in", "240 in", "180 in"))).opens
    assert missed(room(("240 9/16 in", "180 in", "240 in", "180 in"))).opens


def test_equal_diagonals_show_a_square_room_and_unequal_ones_say_how_far_out() -> None:
    """A parallelogram: 302^2 - 298^2 = 4 x 240 x 180 x cos, so cos is 1/72 and 180 in of wall are 2 1/2 out."""
    square, leaning = diagonals("300 in", "300 in"), diagonals("302 in", "298 in")

    assert not found(square, "out_of_square")
    assert not found(leaning, "closing")
    said = found(leaning, "out_of_square")
    assert [sentence.count("2 1/2 in over wall") for sentence in said] == [1, 1, 1, 1]
    assert ["wider" in sentence for sentence in said] == [True, False, True, False]


def test_a_diagonal_that_fits_nothing_is_named() -> None:
    """300 and 302 cannot both be true of 240 by 180: the first that could explain it is a diagonal."""
    miss = missed(diagonals("302 in", "300 in"))

    assert miss.opens
    assert {suspect.what for suspect in miss.worth} == {"first", "second"}


def test_a_diagonal_longer_than_its_two_walls_is_a_contradiction_that_names_all_three() -> None:
    (problem,) = survey_of(diagonals("502 in", "300 in")).problems

    assert problem.paths == ("basement.diagonal_first", "A.length", "B.length")
    assert "420 in" in say(problem.saying)


def test_across_a_square_corner_100_stands_between_60_and_80() -> None:
    """And 120 degrees gives the root of 3600 + 6400 + 4800, 121 21/32 in."""
    square, bay = corners_measured(survey_of(room(PLAIN, ("100 in", "121 21/32 in", "100 in", "100 in"))))[:2]

    assert square.cosine == 0
    assert float(bay.cosine) == pytest.approx(-0.5, abs=1e-4)


def test_at_an_outside_corner_the_turn_goes_the_other_way() -> None:
    """The walk round the L turns left there: 60 degrees between the string and the wall is a turn of 60 to the left."""
    walls = [wall(right="outside corner", across="72 1/8 in"), wall()]
    (corner,) = corners_measured(survey_of(job(walls, square="across the corners")))

    cosine, sine = corner.turn
    assert float(cosine) == pytest.approx(0.5, abs=1e-3)
    assert float(sine) == pytest.approx(-0.866, abs=1e-3)


def test_a_room_out_of_square_on_purpose_closes_by_its_own_corners() -> None:
    """The leaning room again, by readings across: cos 1/72 is 100 less 0.669 at the wide marks, 99 5/16 and 100 11/16."""
    tree = room(PLAIN, ("100 11/16 in", "99 5/16 in", "100 11/16 in", "99 5/16 in"))

    assert not found(tree, "closing")
    assert len(found(tree, "out_of_square")) == 4


def test_corners_that_do_not_turn_once_round_are_said_and_the_worst_named() -> None:
    """A small room with three corners 3/8 wide and one 1 1/2: its ends are near each other, the turns are not."""
    small = ("24 in", "24 in", "24 in", "24 in")
    tree = room(small, ("100 3/8 in", "100 3/8 in", "100 3/8 in", "101 1/2 in"))
    miss = missed(tree)

    assert (miss.opens, miss.twists) == (False, True)
    assert worth(miss)[0] == ("corner", "D", "A")
    assert found(tree, "corners_turn")


def test_diagonals_of_a_room_that_is_no_four_walls_say_that_they_are_idle() -> None:
    tree = l_room()
    basement = tree["basement"]
    assert isinstance(basement, dict)
    basement["square"] = "both diagonals"

    assert found(tree, "diagonals_idle")
    assert not found(diagonals("300 in", "300 in"), "diagonals_idle")


def test_an_open_run_has_nothing_to_close() -> None:
    assert closing(survey_of(job([wall(), wall()]))) is None


@given(st.integers(0, 5), st.integers(-700, 700).filter(lambda sixteenths: abs(sixteenths) > 8))
def test_one_slip_of_the_tape_is_the_whole_miss_and_its_wall_or_one_beside_it_is_named(index: int, slip: int) -> None:
    """Whatever wall of the L is misread by however much: the walk ends just that far off, along that wall."""
    tree = l_room()
    walls = tree["walls"]
    assert isinstance(walls, list)
    each = walls[index]
    assert isinstance(each, dict)
    lengths = (216, 120, 96, 72, 120, 192)
    whole, sixteenths = divmod(lengths[index] * 16 + slip, 16)
    each["length"] = [f"{whole} {sixteenths}/16 in at floor" if sixteenths else f"{whole} in at floor"]
    miss = missed(tree)

    assert miss.opens
    assert abs(miss.along) + abs(miss.into) == miss.far == SIXTEENTH * abs(slip)
    along = index in (0, 2, 4)
    assert (miss.into == ZERO) == along
    parallel = "ACE" if along else "BDF"
    assert all(suspect.walls[0] in parallel for suspect in miss.worth)
