"""The job file: what is written is read back to the last word, and a hand may write it too."""

from __future__ import annotations

import json
from pathlib import Path
from typing import cast

import pytest
from hypothesis import given, settings

from guide.interview.answers import Answer, Certainty, Spot
from guide.interview.asking import next_question
from guide.interview.jobfile import FORMAT, SCHEMA_ID, Job, from_json, from_text, load, save, to_json
from guide.interview.written import Json
from guide.lengths import Length, inches
from tests.interview.people import BOOK, jobs
from tests.jobs import BASEMENT, Tree, job, wall, window

MEASURED, EYEBALLED, ASSUMED, UNKNOWN = Certainty


@given(jobs())
@settings(max_examples=150)
def test_any_job_is_read_back_as_it_was_written(before: Job) -> None:
    """Every certainty, doubts, parked answers, and sizes to the last tick."""
    tree = to_json(BOOK, before)
    assert from_json(tree, BOOK) == before
    assert from_text(json.dumps(tree, ensure_ascii=False), BOOK) == before
    assert to_json(BOOK, from_json(tree, BOOK)) == tree


@given(jobs())
@settings(max_examples=60)
def test_every_text_that_was_typed_is_found_in_the_file(before: Job) -> None:
    text = json.dumps(to_json(BOOK, before), ensure_ascii=False)
    values = set(_texts(json.loads(text)))
    for path, answer in before.answers.items():
        if not answer.typed:
            continue
        counts = isinstance(answer.value, int) or path == "basement.walls"
        joined = answer.typed.split(", ") if not counts else []
        listed = counts and answer.typed.isdecimal()
        assert answer.typed in values or all(part in values for part in joined) or listed, path


def _texts(tree: Json) -> list[str]:
    if isinstance(tree, dict):
        return [text for each in tree.values() for text in _texts(each)]
    if isinstance(tree, list):
        return [text for each in tree for text in _texts(each)]
    return [str(tree)]


# ------------------------------------------------------------------------------------------------- by hand

BY_HAND = """
{ "format": 1,
  "basement": { "tape": "inches", "foam_thickness": 2, "floor_finish": 0.5, "drywall": "half inch" },
  "walls": [
    { "name": "north", "length": "16 ft 4 in", "height": ["91 1/4 at left", "about 91 5/8 at 8 ft", "92 1/8 at right"],
      "string": "1 1/4", "concrete": "89 3/4, 90 1/2",
      "openings": [ { "kind": "window", "left": 60.125 } ], "pipes": [], "other": "gas meter" },
    { "length": ["184 1/2 shy at floor"] } ] }
"""


def test_a_hand_may_write_plain_values() -> None:
    answers = from_text(BY_HAND, BOOK).answers
    assert answers["basement.foam_thickness"] == Answer(inches("2"), MEASURED, "2")
    assert answers["basement.floor_finish"] == Answer(inches("1/2"), MEASURED, "0.5")
    assert answers["basement.drywall"] == Answer("1/2", MEASURED, "half inch")
    assert answers["basement.walls"] == Answer(("north", "wall B"), MEASURED, "2")
    assert answers["A.length"].value == (Spot("floor", inches("196")),)
    assert answers["A.height"].value == (
        Spot("left", inches("91 1/4")),
        Spot(inches("96"), inches("91 5/8"), EYEBALLED),
        Spot("right", inches("92 1/8")),
    )
    assert answers["A.concrete"].value == (Spot("left", inches("89 3/4")), Spot("right", inches("90 1/2")))
    assert answers["A.openings"] == Answer(1, MEASURED, "1")
    assert answers["A.opening1.left"] == Answer(inches("60 1/8"), MEASURED, "60.125")
    assert answers["A.other"] == Answer("gas meter", MEASURED, "gas meter")
    assert answers["B.length"].value == (Spot("floor", inches("184 15/32")),)
    asked = next_question(BOOK, answers)
    assert asked is not None
    assert asked.path == "basement.use"


@pytest.mark.parametrize(
    ("written", "answer"),
    [
        ({"value": "2 in"}, Answer(inches("2"), MEASURED, "2 in")),
        ({"value": "about 2 in"}, Answer(inches("2"), EYEBALLED, "about 2 in")),
        ({"value": "2 in", "known": "eyeballed"}, Answer(inches("2"), EYEBALLED, "2 in")),
        ({"value": "2 in", "known": "assumed", "typed": "don't know"}, Answer(inches("2"), ASSUMED, "don't know")),
        ({"value": "2 in", "confirm": True}, Answer(inches("2"), MEASURED, "2 in", confirm=True)),
        ({"known": "unknown"}, Answer(None, UNKNOWN, "")),
        ({"value": None, "known": "unknown", "typed": "no idea"}, Answer(None, UNKNOWN, "no idea")),
        ("50 mm", Answer(inches("50 mm"), MEASURED, "50 mm")),
        ("~2", Answer(inches("2"), EYEBALLED, "~2")),
    ],
)
def test_an_object_says_how_an_answer_is_known(written: Json, answer: Answer) -> None:
    tree: Tree = {"format": 1, "basement": {"foam_thickness": written}}
    assert from_json(tree, BOOK).answers["basement.foam_thickness"] == answer


def test_a_bare_number_is_in_the_unit_of_the_tape_wherever_the_tape_stands() -> None:
    tree: Tree = {"format": 1, "basement": {"foam_thickness": 50, "tape": "millimetres"}}
    assert from_json(tree, BOOK).answers["basement.foam_thickness"].value == inches("50 mm")


def test_answers_that_do_not_apply_are_written_as_parked_wherever_they_were_read() -> None:
    tree = job([wall("144 in", left_framed="4 3/4 in")])
    read = from_json(tree, BOOK)
    written = to_json(BOOK, read)
    assert written["parked"] == {"A.left_framed": "4 3/4 in"}
    assert from_json(written, BOOK) == read


def test_the_file_mirrors_the_book() -> None:
    tree = to_json(BOOK, from_json(job([wall("144 in", openings=[window("40 in")])]), BOOK))
    assert list(tree) == ["$schema", "format", "note", "basement", "walls"]
    assert (tree["$schema"], tree["format"]) == (SCHEMA_ID, FORMAT)
    assert tree["basement"] == BASEMENT
    (first,) = cast(list[Tree], tree["walls"])
    assert list(first)[:2] == ["name", "length"]
    assert first["openings"] == [window("40 in")]


def test_a_metric_job_is_written_in_millimetres_and_keeps_inches_that_were_inches() -> None:
    tree: Tree = {"format": 1, "basement": {"tape": "millimetres", "foam_thickness": "50", "floor_finish": "1/2 in"}}
    basement = cast(Tree, to_json(BOOK, from_json(tree, BOOK))["basement"])
    assert basement["foam_thickness"] == {"value": "50 mm", "typed": "50"}
    assert basement["floor_finish"] == "1/2 in"


def test_a_byte_order_mark_of_a_windows_editor_does_not_matter(tmp_path: Path) -> None:
    path = tmp_path / "job.json"
    path.write_bytes(b"\xef\xbb\xbf" + BY_HAND.encode())
    assert load(path, BOOK) == from_text(BY_HAND, BOOK)


def test_what_is_saved_is_loaded(tmp_path: Path) -> None:
    path = tmp_path / "job.json"
    before = from_text(BY_HAND, BOOK)
    save(path, BOOK, before)
    assert load(path, BOOK) == before
    assert path.read_text(encoding="utf-8").endswith("}\n")


def test_many_readings_along_a_long_wall_fit_into_the_file_whatever_the_tape(tmp_path: Path) -> None:
    """What was typed in a reply that fits the talk may be longer once every reading has its unit."""
    spots = tuple(Spot(Length(n * 24 * 8128 + 1), inches("92") + Length(n)) for n in range(1, 60))
    ends = (Spot("left", inches("92")), *spots, Spot("right", inches("92")))
    for tape in ("inches", "millimetres"):
        answers = {
            "basement.tape": Answer(tape, MEASURED, tape),
            "basement.walls": Answer(("wall A",), MEASURED, "1"),
            "A.height": Answer(ends, MEASURED, "x" * 400),
        }
        save(tmp_path / "job.json", BOOK, Job(answers))
        again = load(tmp_path / "job.json", BOOK)
        assert again.answers == answers
