"""What is at home: read against the names of what is sold; what names nothing is said and comes off nothing."""

from __future__ import annotations

import pytest

from guide.book.questions import load_book
from guide.interview.jobfile import from_json
from guide.reference.sayings import say
from guide.reference.stock import load_fasteners, load_stock
from guide.sheets.plan import make_plan
from guide.sheets.write import usable
from guide.survey.on_hand import read_on_hand
from guide.survey.yard import read_yard
from tests.jobs import job, survey_of, wall

READ = {
    "none": {},
    "Nothing yet.": {},
    "3 tubes of adhesive": {"adhesive": 3},
    "two cans of foam and a roll of seam tape": {"can_foam": 2, "seam_tape": 1},
    "10 2x4 8 ft, 6 studs 92 5/8; 3 treated 2x4s 10 ft": {"stud_2x4 8 ft": 10, "stud_2x4 92 5/8 in": 6, "treated_2x4 10 ft": 3},
    "3 8 ft 2x4s": {"stud_2x4 8 ft": 3},
    "1 sheet of plywood 4x8, 2 4 by 8 foam boards": {"plywood 4 by 8 ft": 1, "foam 4 by 8 ft": 2},
    "1 sheet of 4x8 plywood": {"plywood 4 by 8 ft": 1},
    "40 concrete screws": {"concrete_screw": 40},
    "2 boxes of 2 in screws, 1 lb of 16d nails": {"screw_2": 200, "nail_16d": 50},
    "4 tubes of adhesive, 2 tubes of adhesive": {"adhesive": 6},
    "foam offcut 30 x 60, 2 offcuts of plywood 16 1/2 x 96 in": {"foam offcut 30 x 60": 1, "plywood offcut 16 1/2 x 96": 2},
    "safety glasses, a mask": {"glasses": 1, "half_mask": 1},
}  # fmt: skip


@pytest.mark.parametrize("text", READ)
def test_what_is_at_home_is_counted_by_ware(text: str) -> None:
    """Units, boxes and single screws, singular and plural, the size before or behind the name."""
    assert read_on_hand(text) == (READ[text], ())


@pytest.mark.parametrize(
    "text",
    [
        "a boat",
        "4 2x4",
        "12 studs 9 ft",
        "0 tubes of adhesive",
        "adhesive 3",
        "99999 cans",
        "offcut 3 x 4",
        "foam offcut 30",
        "foam offcut 30 x 200",
    ],
)
def test_what_names_nothing_or_no_size_is_handed_back(text: str) -> None:
    """A stick without its length could be any; a thing nobody sells comes off nothing."""
    assert read_on_hand(f"2 cans, {text}") == ({"can_foam": 2}, (text,))


def test_every_name_means_one_thing() -> None:
    """No word of the data is claimed by two things, and each is read as the thing it stands beside."""
    for key, fastener in load_fasteners().fastener.items():
        assert all(read_on_hand(f"7 {word}") == ({key: 7}, ()) for word in fastener.words), key
    for key, item in load_stock().item.items():
        for size in item.sizes or ("",):
            ware = f"{key} {size}".strip()
            assert all(read_on_hand(f"7 {word} {size}") == ({ware: 7}, ()) for word in item.words), ware


def test_what_could_not_be_read_is_one_sentence_and_holds_the_papers() -> None:
    """The sentence names what was read and what would be right; every wall is laid out all the same."""
    tree = job([wall("12 ft")], shopping="own", on_hand="3 tubes of adhesive, a boat")
    (problem,) = survey_of(tree).problems
    plan = make_plan(load_book(), from_json(tree, load_book()))

    assert problem.paths == ("basement.on_hand",)
    assert "“a boat”" in say(problem.saying)
    assert usable(plan) == say(problem.saying)
    assert len(plan.layout.walls) == 1


def test_the_lengths_of_the_yard_are_read_as_people_say_them() -> None:
    """Bare numbers are feet, the pre-cut is said by its inches; what is no length of a stick is one sentence."""
    assert read_yard("92 5/8, 8, 10 ft and 12 feet") == (frozenset({"92 5/8 in", "8 ft", "10 ft", "12 ft"}), ())
    assert read_yard("2x4 8 ft, 2x4 92 5/8 in") == (frozenset({"92 5/8 in", "8 ft"}), ())
    assert read_yard("all") == read_yard("") == (frozenset(), ())
    assert read_yard("8 ft, 9 ft; long ones") == (frozenset({"8 ft"}), ("9 ft", "long ones"))

    (problem,) = survey_of(job([wall("12 ft")], shopping="own", yard_lengths="8 ft, 9 ft")).problems
    assert problem.paths == ("basement.yard_lengths",)
    assert "“9 ft”" in say(problem.saying)


def test_nothing_is_read_while_the_person_wants_a_plain_list() -> None:
    """An answer that does not apply is kept, and takes nothing off."""
    assert survey_of(job([wall("12 ft")], shopping="plain")).basement.on_hand is None
