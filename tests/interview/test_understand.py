"""Understanding replies: what is heard for each kind of question, and what is asked back rather than guessed."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from guide.book.questions import Question
from guide.interview.answers import Answer, Certainty, Spot, Value, item_place
from guide.interview.asking import Asked
from guide.interview.replies import LONGEST_TEXT, Sorry, clean, shortened
from guide.interview.understand import Wish, bare_of, doubt_about, hear, tape_of, unknown_answer, usual_answer
from guide.interview.values import example_of, pick, read_value
from guide.lengths import inches
from tests.interview.people import BOOK, replies

MEASURED, EYEBALLED, ASSUMED, UNKNOWN = Certainty
PLACES = {"basement": "basement", "wall": "A", "opening": "A.opening1", "pipe": "A.pipe1", "box": "A.box1"}
METRIC = {"basement.tape": Answer("millimetres", MEASURED, "mm")}

Heard = Answer | Wish


def heard(ref: str, reply: str, answers: dict[str, Answer] | None = None, place: str | None = None) -> Heard:
    """Return what a reply to a question of the book is understood as."""
    question = BOOK.by_ref[ref]
    return hear(BOOK, answers or {}, Asked(place or PLACES[question.scope], question), reply)


def value(ref: str, reply: str, answers: dict[str, Answer] | None = None) -> Value:
    """Return the value of a reply that has to be a measured answer, kept word for word."""
    answer = heard(ref, reply, answers)
    assert isinstance(answer, Answer)
    assert answer.known is MEASURED
    assert answer.typed == clean(reply)
    assert not answer.confirm
    return answer.value


def said_back(ref: str, reply: str, answers: dict[str, Answer] | None = None) -> str:
    """Return the sentence for a reply that is not one clear answer."""
    with pytest.raises(Sorry) as caught:
        heard(ref, reply, answers)
    said = str(caught.value)
    assert said.endswith(".")
    assert said.isprintable()
    assert len(said) < 300
    return said


def table(text: str) -> list[str]:
    """Return the replies of a table: parted by bars and lines."""
    return [cell.strip() for line in text.strip().splitlines() for cell in line.split(" | ") if cell.strip()]


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
        ("wall.left", "corner", "inside corner"), ("wall.left", "open", "open end"), ("wall.joists", "in", "into"),
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
        ("basement.slab", "not"), ("basement.slab", "n"), ("basement.tape", "cm"), ("basement.tape", "m"), ("basement.tape", "both"),
        ("basement.drywall", "5"), ("basement.longest_stick", "9"), ("basement.longest_stick", "8 or 10"),
        ("wall.left", "no"), ("wall.left", "not"), ("wall.left", "fr"), ("wall.left", "left"), ("wall.left", "outside corner"),
        ("wall.joists", "across"), ("wall.joist_spacing", "400 mm"), ("wall.joist_spacing", "5"),
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
        ("0", 0), ("none", 0), ("no", 0), ("nothing", 0), ("zero", 0), ("no windows", 0), ("1", 1), ("one", 1), ("a window", 1),
        ("an opening", 1), ("one door", 1), ("just one", 1), ("2", 2), ("two", 2), ("2 windows", 2), ("Two doors.", 2),
        ("a pair", 2), ("a couple", 2), ("2 hatches", 2), ("12", 12), ("twelve", 12), ("２", 2),
    ],
)  # fmt: skip
def test_a_count_is_heard_in_digits_and_in_words(reply: str, count: int) -> None:
    assert value("wall.openings", reply) == count


@pytest.mark.parametrize(
    "reply",
    table("""
        13 | 99999 | -1 | 2.0 | 2 or 3 | 2-3 | about 2 | 2? | a few | some | many | window | windows | 2 windows and a door
        one door and two windows | 2 feet | 2 pipes | ² | 1/2 | yes | 2 2 | two or so | dozen
    """),
)
def test_what_is_not_one_count_is_asked_back(reply: str) -> None:
    said_back("wall.openings", reply)


# ---------------------------------------------------------------------------------------------------------- names


@pytest.mark.parametrize(
    ("reply", "names"),
    [
        ("1", ("wall A",)), ("one", ("wall A",)), ("4 walls", ("wall A", "wall B", "wall C", "wall D")), ("two walls", ("wall A", "wall B")),
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
            0 | none | no | 201 | all | all of them | 4 or 5 | about 4 | a few | only one | two or three | north, north
            North, north | what do you mean | north? | 2, 3 | north, 2 small ones | every wall | - | , | 🧱
            the long wall by the stairs | 1.5 | -1 | one, two
        """),
        "x" * 31,
    ],
)
def test_what_is_neither_a_count_nor_names_of_walls_is_asked_back(reply: str) -> None:
    said_back("basement.walls", reply)


# ------------------------------------------------------------------------------------------------------- readings


def spots(*pairs: tuple[str, str]) -> tuple[Spot, ...]:
    """Return readings: a place, or a distance where it is no word, and a size; “~” marks one that is not measured."""
    return tuple(
        Spot(at if at[0].isalpha() else inches(at), inches(size.strip("~")), EYEBALLED if "~" in size else MEASURED)
        for at, size in pairs
    )


LEFT_RIGHT = spots(("left", "91 1/4"), ("right", "92"))
THREE = spots(("left", "91 1/4"), ("middle", "91 5/8"), ("right", "92 1/8"))
AT_8_FT = spots(("left", "91 1/4"), ("96", "91 5/8"), ("right", "92 1/8"))


@pytest.mark.parametrize("reply", table("""
    91 1/4 at left, 92 at right | 91 1/4 left, 92 right | left 91 1/4; right 92 | left: 91 1/4, right: 92 | L 91 1/4, R 92
    91.25 left 92 right | left 91.25 right 92 | 91 1/4 at left 92 at right | 91 1/4 at the left, 92 at the right | 91¼ left, 92 right
    91 1/4 on the left, 92 on the right | 91 1/4 (left), 92 (right) | 91 1/4 @ left, 92@right | at left 91 1/4, at right 92
    91 1/4, 92 | 91 1/4; 92 | 91 1/4 and 92 | 91.25,92 | 91 and 1/4, 92 | 91 1/4 and 92 | left=91 1/4; right=92
    7' 7 1/4", 7' 8" | 7-7 1/4 at left, 7-8 at right | left end 91 1/4, right end 92 | 91 1/4 at left and 92 at right
    91 1/4 at the left corner, 92 at the right corner | 91 1/4 at 0, 92 at right | LEFT 91 1/4 RIGHT 92 | left:91 1/4, right:92
    91 and a quarter at left, 92 at right | 91 1/4 l, 92 r | 7 ft 7 1/4 left, 7 ft 8 right
"""))  # fmt: skip
def test_two_readings_are_heard_with_their_places_or_as_the_ends(reply: str) -> None:
    assert value("wall.height", reply) == LEFT_RIGHT


@pytest.mark.parametrize("reply", table("""
    91 1/4, 91 5/8, 92 1/8 | 91 1/4,91 5/8,92 1/8 | 91 1/4; 91 5/8; 92 1/8 | 91 1/4 left, 91 5/8 middle, 92 1/8 right
    91 1/4 left 91 5/8 mid 92 1/8 right | left 91 1/4 middle 91 5/8 right 92 1/8 | 91 1/4 at left, 91 5/8 at centre, 92 1/8 at right
"""))  # fmt: skip
def test_three_readings_without_places_are_left_middle_and_right(reply: str) -> None:
    assert value("wall.height", reply) == THREE


@pytest.mark.parametrize("reply", table("""
    91 1/4 at left, 91 5/8 at 8 ft, 92 1/8 at right | 91 1/4 left, 91 5/8 at 8', 92 1/8 right | left: 91 1/4, 8 ft: 91 5/8, right: 92 1/8
    91 1/4 at left, 91 5/8 at 96, 92 1/8 at right | 91 1/4 at left, 91 5/8 at 8 ft from the left, 92 1/8 at right
    91 1/4 at left; 91 5/8 @ 96 in; 92 1/8 at right | left 91 1/4; 91 5/8 at 8-0; right 92 1/8
"""))  # fmt: skip
def test_a_distance_from_the_left_corner_is_a_place_too(reply: str) -> None:
    assert value("wall.height", reply) == AT_8_FT


@pytest.mark.parametrize(
    ("reply", "expected"),
    [
        ("184 1/2", spots(("floor", "184 1/2"))), ("16 ft 4 in", spots(("floor", "196"))),
        ("196, 196 1/8, 196 1/4", spots(("floor", "196"), ("chest", "196 1/8"), ("joists", "196 1/4"))),
        ("196 at floor, 196 1/8 at 48, 196 1/4 at top", spots(("floor", "196"), ("chest", "196 1/8"), ("joists", "196 1/4"))),
        ("floor 196 chest 196 1/8 joists 196 1/4", spots(("floor", "196"), ("chest", "196 1/8"), ("joists", "196 1/4"))),
        ("196 1/4 under the joists, 196 low", spots(("joists", "196 1/4"), ("floor", "196"))),
        ("196 at eye height", spots(("chest", "196"))), ("15' 4 1/2\" at the floor", spots(("floor", "184 1/2"))),
    ],
)  # fmt: skip
def test_a_length_is_read_at_the_floor_at_chest_height_and_under_the_joists(
    reply: str, expected: tuple[Spot, ...]
) -> None:
    assert value("wall.length", reply) == expected


@pytest.mark.parametrize(
    ("reply", "expected"),
    [
        ("92 at left, about 92 at right", spots(("left", "92"), ("right", "~92"))),
        ("~91 left, 92 right", spots(("left", "~91"), ("right", "92"))),
        ("92 at left, 93 at about 8 ft, 92 at right", spots(("left", "92"), ("96", "~93"), ("right", "92"))),
        ("92 or so at left, 92 at right", spots(("left", "~92"), ("right", "92"))),
    ],
)
def test_about_is_heard_reading_by_reading(reply: str, expected: tuple[Spot, ...]) -> None:
    assert value("wall.height", reply) == expected


def test_readings_that_are_all_about_are_eyeballed_together() -> None:
    answer = heard("wall.length", "about 12 ft")
    assert isinstance(answer, Answer)
    assert (answer.value, answer.known) == (spots(("floor", "~144")), EYEBALLED)


@pytest.mark.parametrize(
    "reply",
    table("""
        92 | about 92 at right | 92 at left | 92 92 | 91 92 93 | 91 left 92 | left 91 92 right | 92 everywhere | left | left, right
        91 left and right | 92 at both ends | 91 left, 92 left | 91 at left 91 5/8 at 8 ft 92 at right | 91 at left, 92 at right, 93
        91 at left, 92 at 8 ft from the right, 93 at right | 91 at left, 92 at -3, 93 at right | 91 at left, 92 at window, 93 at right
        91 floor, 92 right | 12 at left, 92 at right | 91, 92, 93, 94 | 91/92 | , | ; | at | 7 feet 7 inches | 91 1/3 left, 92 right
        91 left; 92 middle; 92 right; 92 left | 2.3 left, 2.3 right | 2.30 m | 91 to 92 | 91 at 0, 92 at left, 92 at right
    """),
)
def test_readings_whose_place_or_size_is_not_clear_are_asked_back(reply: str) -> None:
    said_back("wall.height", reply)


@pytest.mark.parametrize(
    ("reply", "sizes"),
    [
        ("2337, 2340", ("2337 mm", "2340 mm")), ("2337,2340", ("2337 mm", "2340 mm")), ("2337 left 2340 right", ("2337 mm", "2340 mm")),
        ("2337,5 left, 2340 right", ("2337.5 mm", "2340 mm")), ("2.337 m at left, 2.34 m at right", ("2337 mm", "2340 mm")),
        ("2.337 m, 2.34 m", ("2337 mm", "2340 mm")), ("233,7 cm left; 234 cm right", ("2337 mm", "2340 mm")),
        ("92 in at left, 92 1/8 in at right", ("92 in", "92 1/8 in")), ("l 2337, r 2340", ("2337 mm", "2340 mm")),
    ],
)  # fmt: skip
def test_metric_readings_are_heard_and_no_unit_is_taken_for_a_place(reply: str, sizes: tuple[str, str]) -> None:
    assert value("wall.height", reply, METRIC) == spots(("left", sizes[0]), ("right", sizes[1]))


def test_a_metric_distance_is_a_place() -> None:
    found = value("wall.height", "2337 at left, 2340 at 2400, 2345 at right", METRIC)
    assert found == spots(("left", "2337 mm"), ("2400 mm", "2340 mm"), ("right", "2345 mm"))


# -------------------------------------------------------------------------------------------------- lengths, range


def test_a_length_is_measured_or_eyeballed() -> None:
    assert value("basement.foam_thickness", "2 in") == inches("2")
    about = heard("basement.foam_thickness", "about 2")
    assert isinstance(about, Answer)
    assert (about.value, about.known, about.typed) == (inches("2"), EYEBALLED, "about 2")


def test_a_size_out_of_range_is_said_in_the_unit_of_the_persons_tape() -> None:
    assert "I take 1/2 in to 6 in" in said_back("basement.foam_thickness", "12")
    assert "I take 13 mm to 152 mm" in said_back("basement.foam_thickness", "300", METRIC)
    assert value("basement.foam_thickness", "13", METRIC) == inches("13 mm")
    assert value("basement.foam_thickness", "152", METRIC) == inches("152 mm")


def test_examples_are_in_the_unit_of_the_persons_tape() -> None:
    assert "92 in at left, 92 in at right" in said_back("wall.height", "92")
    assert "2337 mm at left, 2337 mm at right" in said_back("wall.height", "2337", METRIC)
    assert "51 mm" in said_back("basement.foam_thickness", "yes", METRIC)


def test_every_example_is_an_answer_on_either_side_of_the_tape() -> None:
    for question in BOOK.questions:
        if question.kind != "choice":
            assert read_value(question, example_of(question, "in"), "in", {})
            assert read_value(question, example_of(question, "mm"), "mm", {})


def test_the_tape_decides_what_a_bare_number_is() -> None:
    assert (tape_of({}), bare_of({})) == ("inches", "in")
    assert (tape_of(METRIC), bare_of(METRIC)) == ("millimetres", "mm")
    assert value("wall.string", "32", METRIC) == inches("32 mm")


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
    assert heard("wall.length", "usual") == Answer(spots(("floor", "144")), ASSUMED, "usual")
    for question in BOOK.questions:
        answer = usual_answer(question, "usual")
        assert answer is not None
        assert (answer.known is ASSUMED) == (question.kind in ("length", "readings"))


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
    answer = usual_answer(question, "so")
    assert answer is not None
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
