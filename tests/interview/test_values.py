"""Values of each kind: what is heard as one choice, one count, names, and what is asked back rather than guessed."""

from __future__ import annotations

import pytest

from guide.interview.answers import Answer, item_place
from guide.interview.values import doubt_about, pick
from tests.interview.hearing import (
    heard,
    said_back,
    table,
    value,
)
from tests.interview.people import BOOK

# -------------------------------------------------------------------------------------------------------- choices


@pytest.mark.parametrize(
    ("ref", "reply", "choice"),
    [
        ("basement.use", "1", "living"), ("basement.use", "2.", "sleeping"), ("basement.use", "living", "living"),
        ("basement.use", "LIVING", "living"), ("basement.use", "Family room", "living"), ("basement.use", "liv", "living"),
        ("basement.use", "sto", "storage"), ("basement.use", "somebody will sleep there, now or later", "sleeping"),
        ("basement.water", "no", "dry"), ("basement.water", "never", "dry"), ("basement.water", "yes", "wet"),
        ("basement.water", "a little", "wet"), ("basement.slab", "none", "nothing"), ("basement.slab", "noth", "nothing"),
        ("basement.drywall", "1/2", "1/2"), ("basement.drywall", '5/8"', "5/8"), ("basement.drywall", "½ in", "1/2"),
        ("basement.longest_stick", "8", "8"), ("basement.longest_stick", "10 ft", "10"), ("basement.longest_stick", "12’", "12"),
        ("basement.longest_stick", "1", "8"), ("basement.foam_sheet", "4x8", "48"), ("basement.tape", "mm", "millimetres"),
        ("wall.left", "outside", "outside corner"), ("wall.left", "open", "open end"), ("wall.joists", "in", "into"),
        ("wall.joist_spacing", "19.2", "19.2"), ("wall.joist_spacing", '16"', "16"), ("wall.joist_spacing", "4", "24"),
        ("opening.kind", "window", "window"), ("opening.hinge", "r", "right"), ("opening.outside", "n", "no"),
        ("pipe.run", "upright", "standing"), ("pipe.carries", "duct", "air"), ("box.kind", "already", "existing"),
    ],
)  # fmt: skip
def test_a_choice_is_picked_by_number_by_word_or_by_its_beginning(ref: str, reply: str, choice: str) -> None:
    assert value(ref, reply) == choice


@pytest.mark.parametrize(
    ("ref", "reply"),
    [
        ("basement.use", "s"), ("basement.use", "9"), ("basement.use", "0"), ("basement.use", "-1"), ("basement.use", "both"),
        ("basement.use", "storage?"), ("basement.use", "living or storage"), ("basement.use", "1 2"), ("basement.use", "²"),
        ("basement.slab", "not"), ("basement.tape", "cm"), ("basement.tape", "m"), ("basement.tape", "both"),
        ("basement.drywall", "5"), ("basement.longest_stick", "9"), ("basement.longest_stick", "8 or 10"),
        ("wall.left", "no"), ("wall.left", "not"), ("wall.left", "fr"), ("wall.left", "left"), ("wall.left", "corner"),
        ("wall.joists", "across"), ("wall.joist_spacing", "450 mm"), ("wall.joist_spacing", "6"),
        ("opening.kind", "door"), ("pipe.run", "both"), ("basement.cracks", "a small one"),
    ],
)  # fmt: skip
def test_a_reply_that_picks_no_one_choice_is_asked_back_with_the_choices(ref: str, reply: str) -> None:
    assert "1 = " in said_back(ref, reply)


def test_every_choice_is_picked_by_its_id_its_number_and_every_one_of_its_words() -> None:
    for question in BOOK.questions:
        for number, choice in enumerate(question.choices, 1):
            for word in (choice.id, str(number), choice.say, *choice.words):
                assert pick(question, word) is choice, f"{question.ref}: {word}"


# --------------------------------------------------------------------------------------------------------- counts


@pytest.mark.parametrize(
    ("reply", "count"),
    [
        ("0", 0), ("none", 0), ("no", 0), ("nothing", 0), ("zero", 0), ("no windows", 0), ("1", 1), ("one", 1), ("one opening", 1),
        ("an opening", 1), ("one door", 1), ("just one", 1), ("2", 2), ("two", 2), ("2 openings", 2), ("Two doors.", 2),
        ("a pair", 2), ("a couple", 2), ("2 hatches", 2), ("12", 12), ("twelve", 12), ("２", 2),
    ],
)  # fmt: skip
def test_a_count_is_heard_in_digits_and_in_words(reply: str, count: int) -> None:
    assert value("wall.openings", reply) == count


@pytest.mark.parametrize(
    "reply",
    table("""
        13 | 99999 | -1 | 2.0 | 2 or 3 | 2-3 | 2? | a few | some | many | window | windows | 2 feet | ² | 1/2 | yes | 2 2 | dozen
    """),
)
def test_what_is_not_one_count_is_asked_back(reply: str) -> None:
    said_back("wall.openings", reply)


# ---------------------------------------------------------------------------------------------------------- names


@pytest.mark.parametrize(
    ("reply", "names"),
    [
        ("1", ("wall A",)), ("one", ("wall A",)), ("only one", ("wall A",)), ("we have two walls", ("wall A", "wall B")), ("4 walls", ("wall A", "wall B", "wall C", "wall D")), ("two walls", ("wall A", "wall B")),
        ("north, east and south", ("north", "east", "south")), ("north; stair wall", ("north", "stair wall")),
        ("north and south", ("north", "south")), ("north", ("north",)), ("North wall, East wall.", ("North wall", "East wall")),
        ("north,, east,", ("north", "east")), ("wall 1, wall 2", ("wall 1", "wall 2")), ("Küche, Flur", ("Küche", "Flur")),
    ],
)  # fmt: skip
def test_walls_are_counted_or_named(reply: str, names: tuple[str, ...]) -> None:
    assert value("basement.walls", reply) == names


@pytest.mark.parametrize(
    "reply",
    [
        *table("""
            0 | none | no | 201 | all | all of them | 4 or 5 | about 4 | a few | two or three | north, north
            North, north | I think four | north? | 2, 3 | north, 2 small ones | every wall | - | , | 🧱
            the long wall by the stairs | 1.5 | -1 | one, two
        """),
        "x" * 31,
    ],
)
def test_what_is_neither_a_count_nor_names_of_walls_is_asked_back(reply: str) -> None:
    said_back("basement.walls", reply)


# --------------------------------------------------------------------------------------------------------- doubts


@pytest.mark.parametrize(
    ("ref", "reply", "doubted"),
    [
        ("basement.water", "wet", True), ("basement.water", "dry", False), ("basement.foam_thickness", "4 in", False),
        ("basement.foam_thickness", "4 1/16 in", True), ("basement.foam_thickness", "15/16", True), ("basement.foam_thickness", "1", False),
        ("wall.length", "40 ft", False), ("wall.length", "481", True), ("wall.length", "196, 196 1/2", False),
        ("wall.length", "196, 196 9/16", True), ("wall.height", "84, 86", False), ("wall.height", "83 15/16, 85", True),
        ("wall.height", "90, 92 1/16", True), ("wall.string", "1", False), ("wall.string", "15/16", True), ("wall.lean", "1", False),
        ("wall.lean", "1 1/16", True), ("wall.shelf", "0", False), ("wall.shelf", "-1/8", True), ("wall.first_joist", "25", True),
        ("wall.openings", "12", False), ("wall.other", "none", False),
    ],
)  # fmt: skip
def test_a_suspicious_answer_is_doubted_and_one_at_the_edge_is_not(ref: str, reply: str, doubted: bool) -> None:
    answer = heard(ref, reply)
    assert isinstance(answer, Answer)
    assert (doubt_about(BOOK.by_ref[ref], answer.value) is not None) is doubted


def test_the_first_thing_that_is_wrong_is_the_one_that_is_said() -> None:
    answer = heard("wall.string", "-1")
    assert isinstance(answer, Answer)
    doubt = doubt_about(BOOK.by_ref["wall.string"], answer.value)
    assert doubt is not None
    assert "engineer" in doubt.say


def test_things_on_a_wall_have_their_own_place() -> None:
    assert item_place("A", "opening", 1) == "A.opening2"
    assert item_place("basement", "wall", 27) == "AB"
