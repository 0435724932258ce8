"""The question book: what its data may say, and the closed language of its conditions."""

from __future__ import annotations

import tomllib
from itertools import product

import pytest
from pydantic import ValidationError

from guide.book.conditions import Condition, Fact, holds
from guide.book.conditions import tests_in as single_tests  # pytest would take the name for a test
from guide.book.questions import BookError, book_from, load_book
from guide.book.talk import Talk, load_talk
from tests.book.small_book import SOUND

# ------------------------------------------------------------------------------------------------ conditions

FACTS: dict[str, Fact] = {"opening.kind": "window", "basement.walls": 4, "wall.length": "known", "wall.lean": None}


@pytest.mark.parametrize(
    ("text", "true"),
    [
        ('of = "opening.kind", is = "window"', True),
        ('of = "opening.kind", is = "door"', False),
        ('of = "opening.kind", one_of = ["door", "window"]', True),
        ('of = "opening.kind", one_of = ["door"]', False),
        ('of = "basement.walls", at_least = 4', True),
        ('of = "basement.walls", at_least = 5', False),
        ('of = "basement.walls", is = 4', True),
        ('of = "opening.kind", at_least = 1', False),
        ('of = "wall.length", known = true', True),
        ('of = "wall.length", known = false', False),
        ('of = "wall.lean", known = true', False),
        ('of = "wall.lean", known = false', True),
        ('of = "wall.lean", is = "0"', False),
        ('of = "wall.lean", one_of = ["0"]', False),
        ('of = "wall.lean", at_least = 0', False),
        ('all = [{ of = "basement.walls", is = 4 }, { of = "wall.length", known = true }]', True),
        ('all = [{ of = "basement.walls", is = 4 }, { of = "wall.lean", known = true }]', False),
        ('any = [{ of = "basement.walls", is = 3 }, { of = "wall.length", known = true }]', True),
        ('any = [{ of = "basement.walls", is = 3 }, { of = "wall.lean", known = true }]', False),
        ('none = [{ of = "basement.walls", is = 3 }, { of = "wall.lean", known = true }]', True),
        ('none = [{ of = "basement.walls", is = 3 }, { of = "wall.length", known = true }]', False),
        ('none = [{ any = [{ of = "basement.walls", is = 3 }] }]', True),
    ],
)
def test_a_condition_says_what_its_words_say(text: str, true: bool) -> None:
    condition = Condition.model_validate(tomllib.loads(f"when = {{ {text} }}")["when"])
    assert holds(condition, FACTS.get) is true


def test_no_condition_always_holds() -> None:
    assert holds(None, FACTS.get)


@pytest.mark.parametrize(
    "text",
    [
        "",
        'of = "wall.length"',
        'is = "window"',
        'of = "wall.length", is = "x", known = true',
        'of = "wall.length", is = "x", all = [{ of = "a.b", known = true }]',
        "all = []",
        'all = [{ of = "a.b", known = true }], any = [{ of = "a.b", known = true }]',
        'of = "wall.length", when = "now"',
        'all = [{ of = "a.b" }]',
    ],
)
def test_a_condition_of_any_other_shape_is_refused(text: str) -> None:
    with pytest.raises(ValidationError):
        Condition.model_validate(tomllib.loads(f"when = {{ {text} }}")["when"])


def test_every_single_test_in_a_condition_is_found() -> None:
    condition = Condition.model_validate(
        {
            "all": [
                {"of": "a.a", "known": True},
                {"any": [{"of": "b.b", "is": 1}, {"none": [{"of": "c.c", "at_least": 2}]}]},
            ]
        }
    )
    assert [test.of for test in single_tests(condition)] == ["a.a", "b.b", "c.c"]
    assert list(single_tests(None)) == []


# ------------------------------------------------------------------------------------------------- the data


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('kind = "choice"\nask = "What for?"', 'kind = "text"\nask = "What for?"', "choices belong to a choice"),
        ('opens = "wall"', 'opens = "room"', "opens"),
        ('places = ["left", "right"]', "", "places belong to readings"),
        ('least = "24"', 'least = "1/7"', "1/7"),
        ('above = "40 ft"', 'above = "high"', "high"),
        ('usual = "144"', 'usal = "144"', "usal"),
        ('ask = "What for?"', "", "ask"),
        ('scope = "opening"', 'scope = "roof"', "3.toml"),
        ('scope = "opening"', "scope = ", "3.toml"),
        ('kind = "names"', 'kind = "names"\ncounted = ["wall"]', "only a count has words"),
        (
            'kind = "length"\nask = "How long',
            'kind = "length"\nopens = "box"\nask = "How long',
            "only a count or names",
        ),
    ],
)
def test_data_that_is_no_question_names_the_file_and_the_place(old: str, new: str, said: str) -> None:
    (name,) = [name for name, text in SOUND.items() if old in text]
    with pytest.raises(BookError, match=name) as caught:
        book_from({name: SOUND[name].replace(old, new, 1)})
    assert said in str(caught.value)


def test_the_book_that_ships_is_read_in_the_order_of_its_files_and_names_every_question_once() -> None:
    """Scope by scope from the outside in; the shopping, which is the basement's, comes when the walls are known."""
    book = load_book()
    scopes = list(dict.fromkeys(q.scope for q in book.questions))
    assert scopes == ["basement", "wall", "opening", "pipe", "box", "fixture"]
    assert len(book.by_ref) == len(book.questions)
    assert set(book.opener) == {"wall", "opening", "pipe", "box", "fixture"}


def test_a_handful_of_answers_is_enough_for_the_first_drawing_of_a_plain_wall() -> None:
    book = load_book()
    needed = [question for question in book.questions if question.first_drawing and question.when is None]
    assert len([question for question in needed if question.scope == "basement"]) <= 6
    assert len([question for question in needed if question.scope == "wall"]) <= 10


# ----------------------------------------------------------------------------------------------------- wishes

DONT_KNOW = (
    "don{}t know",
    "I don{}t know",
    "Don{}t know.",
    "don{}t know!",
    "i don{}t know that",
    "can{}t tell",
    "I{}m not sure",
)


@pytest.mark.parametrize(("words", "mark"), list(product(DONT_KNOW, "'’‘ʼ´`′＇")))
def test_dont_know_is_heard_with_any_apostrophe(words: str, mark: str) -> None:
    assert load_talk().wish(words.format(mark)) == "dont_know"


@pytest.mark.parametrize(
    ("reply", "wanted"),
    [
        ("dont know", "dont_know"), ("dunno", "dont_know"), ("no idea", "dont_know"), ("Not sure?", "dont_know"),
        ("idk", "dont_know"), ("unknown", "dont_know"), ("back", "back"), ("Go  back", "back"), ("why?", "why"),
        ("WHY", "why"), ("how", "how"), ("how?", "how"), ("How do I measure that?", "how"), ("help", "help"), ("?", "help"),
        ("usual", "usual"), ("the usual.", "usual"), ("keep", "keep"), ("That’s right", "keep"), ("yes", "yes"), ("Ok", "yes"),
        ("no", "no"), ("n", "no"), ("none", "none"), ("nothing", "none"),
        ("", None), ("north", None), ("backyard wall", None), ("why not", None), ("know", None), ("12", None), ("right", None),
    ],
)  # fmt: skip
def test_a_wish_is_told_from_an_answer(reply: str, wanted: str | None) -> None:
    assert load_talk().wish(reply) == wanted


def test_every_word_of_the_talk_is_written_as_it_is_heard_and_means_one_wish() -> None:
    talk: Talk = load_talk()
    words = [word for each in talk.words.values() for word in each]
    assert len(words) == len(set(words))
    assert [word for word in words if talk.folded(word) != word and word.strip("?")] == []
