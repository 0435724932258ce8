"""Bad job files: one sentence that names the place, whatever is wrong, and the file as it was."""

from __future__ import annotations

import copy
import json
import os
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from guide.interview.jobfile import LARGEST, JobFileError, from_json, from_text, load
from guide.interview.written import Json
from tests.interview.people import BOOK
from tests.jobs import Tree, framed_door, job, lying, new_door, outlet, ring, standing, wall, window

FULL: Tree = {
    **ring(
        [
            wall(
                "196 in",
                openings=[window("60 in"), new_door("120 in")],
                pipes=[standing("20 in"), lying("0 in", "40 in")],
            ),
            wall(openings=[framed_door("40 in")], boxes=[outlet("20 in")]),
            wall(
                string={"value": "about 1 1/4 in", "typed": "about 1 1/4"},
                lean={"known": "unknown", "typed": "no idea"},
            ),
            wall(openings={"items": [], "known": "assumed", "typed": "don't know", "confirm": True}),
        ]
    ),
    "parked": {"A.left_framed": "4 3/4 in", "B.opening1.sill": {"value": "40 in", "confirm": True}},
}
"""A job with everything in it that a file can have."""


def refused(text: str | bytes, path: Path) -> str:
    """Return the sentence with which a file of this text is refused, without its path; the file stays as it was."""
    raw = text.encode() if isinstance(text, str) else text
    path.write_bytes(raw)
    with pytest.raises(JobFileError) as caught:
        load(path, BOOK)
    assert path.read_bytes() == raw
    assert list(path.parent.iterdir()) == [path]
    assert str(caught.value).startswith(f"{path}: ")
    return one_sentence(str(caught.value).removeprefix(f"{path}: "))


def one_sentence(said: str) -> str:
    """Check that what is said is one line, short, safe on a terminal, and ends."""
    assert said.isprintable()
    assert 10 < len(said) < 300
    assert said[-1] in ".?"
    return said


def with_basement(**answers: Json) -> str:
    """Return the text of a job whose basement has only these answers."""
    return json.dumps({"format": 1, "basement": answers})


def with_wall(**answers: Json) -> str:
    """Return the text of a job with one wall that has only these answers."""
    return json.dumps({"format": 1, "walls": [answers]})


WRONG = {
    "empty": ("", "line 1, column 1: this is not JSON"),
    "not JSON": ("format = 1", "line 1, column 1: this is not JSON"),
    "cut off": ('{ "format": 1,\n "basement": { "tape"', "line 2, column 22: this is not JSON"),
    "a list": ("[]", "the file must hold one object"),
    "a number": ("7", "the file must hold one object"),
    "nothing": ("null", "the file must hold one object"),
    "no format": ("{}", "“format” is missing"),
    "a newer format": ('{ "format": 2 }', "format “2” is newer than this wallbrief; please update it."),
    "a format of another kind": ('{ "format": "1" }', "format “1” is not one I know; it should be 1."),
    "a format with a point": ('{ "format": 1.0 }', "format “1.0” is not one I know"),
    "a true format": ('{ "format": true }', "format “True” is not one I know"),
    "an old format": ('{ "format": 0 }', "format “0” is not one I know"),
    "an unknown key": ('{ "format": 1, "basment": {} }', "the job: unknown key “basment”; did you mean “basement”?"),
    "an unknown key of a basement": (with_basement(foam_thicknes="2"), "basement: unknown key “foam_thicknes”; did you mean “foam_thickness”?"),
    "an unknown key of a wall": (with_wall(lenght="12 ft"), "wall A: unknown key “lenght”; did you mean “length”?"),
    "an unknown key of an opening": (
        with_wall(openings=[{}, {"knid": "window"}]), "wall A, opening 2: unknown key “knid”; did you mean “kind”?",
    ),
    "a key like no other": (with_wall(zzz=1), "wall A: unknown key “zzz”; wallbrief schema job lists the keys there can be."),
    "an unknown key of an answer": (
        with_basement(foam_thickness={"value": "2", "sure": True}), "basement, foam_thickness: unknown key “sure”; an answer has value,",
    ),
    "a key that stands twice": ('{ "format": 1, "format": 1 }', "the key “format” stands twice in one object"),
    "a key that stands twice deep inside": (
        '{ "format": 1, "walls": [ { "string": "1", "string": "2" } ] }', "the key “string” stands twice in one object",
    ),
    "an impossible length": (with_basement(foam_thickness="thick"), "basement, foam_thickness: I cannot read “thick” as one length"),
    "a length out of range": (
        with_basement(foam_thickness="12"), "basement, foam_thickness: “12” cannot be right for foam thickness: I take 1/2 in to 6 in.",
    ),
    "an ambiguous length": (with_wall(string="1 1"), "wall A, string: “1 1” could be feet and inches"),
    "no number of a tape": ('{ "format": 1, "basement": { "foam_thickness": NaN } }', "NaN is not a number that a tape shows."),
    "an endless number": ('{ "format": 1, "basement": { "foam_thickness": -Infinity } }', "-Infinity is not a number that a tape shows."),
    "a number of very many digits": ('{ "format": ' + "9" * 5000 + " }", "has 5000 digits; no tape shows such a number."),
    "a very large number": ('{ "format": 1, "basement": { "foam_thickness": 1e400 } }', "basement, foam_thickness: I cannot read “1e400”"),
    "an unknown choice": (with_basement(use="disco"), "basement, use: “disco” is none of the choices; say one of 1 = living"),
    "an empty text": (with_wall(other=""), "wall A, other: I did not get anything"),
    "true for an answer": (with_basement(foam_thickness=True), "basement, foam_thickness: I read “True” where an answer should be"),
    "nothing for an answer": (with_basement(foam_thickness=None), "basement, foam_thickness: I read “None” where an answer should be"),
    "an empty object for an answer": (with_basement(foam_thickness={}), "basement, foam_thickness: value is missing"),
    "an object in an answer": (with_basement(foam_thickness={"value": {}}), "basement, foam_thickness: I read “{}” where an answer"),
    "a certainty nobody has": (
        with_basement(foam_thickness={"value": "2", "known": "sure"}), "basement, foam_thickness: known is “sure”; it can be measured,",
    ),
    "a list of certainties": (with_basement(foam_thickness={"value": "2", "known": ["measured"]}), "basement, foam_thickness: known is"),
    "a doubt that is no yes or no": (
        with_basement(foam_thickness={"value": "2", "confirm": 1}), "basement, foam_thickness: confirm is “1”; it can be true or false.",
    ),
    "typed that is no text": (with_basement(foam_thickness={"value": "2", "typed": 2}), "basement, foam_thickness: typed is “2”"),
    "readings without places": (with_wall(height=["91", "92", "93", "94"]), "wall A, height: I cannot tell where each of these readings"),
    "an empty list of readings": (with_wall(height=[]), "wall A, height: I read “[]” where readings should be"),
    "a reading that is no text": (with_wall(height=[["91"], "92"]), "wall A, height: I read"),
    "walls that are no list": ('{ "format": 1, "walls": 4 }', "walls: I read “4”; it is a list with one object for each, [] for none."),
    "walls in the basement": (with_basement(walls=[{}]), "basement.walls: the walls are the list beside basement, not in it."),
    "no wall": ('{ "format": 1, "walls": [] }', "walls: 0 cannot be right for walls: I take 1 to 200."),
    "too many walls": (json.dumps({"format": 1, "walls": [{}] * 201}), "walls: 201 of them; 200 is the most I take."),
    "too many openings": (with_wall(openings=[{}] * 13), "wall A, openings: 13 cannot be right for openings: I take 0 to 12."),
    "a wall that is no object": ('{ "format": 1, "walls": [ "north" ] }', "walls[0]: I read “north”; it is an object in braces."),
    "a basement that is no object": ('{ "format": 1, "basement": [] }', "basement: I read “[]”; it is an object in braces."),
    "a name that is no text": (with_wall(name=7), "walls[0].name: I read “7”; it is a text of 1 to 30 characters."),
    "a name that is too long": (with_wall(name="x" * 31), "walls[0].name: I read"),
    "a name of nothing": (with_wall(name="\u200b"), "walls[0].name: I read “”"),
    "a name for an opening": (with_wall(openings=[{"name": "x"}]), "wall A, opening 1: unknown key “name”"),
    "a note that is no text": ('{ "format": 1, "note": 7 }', "note: I read “7”; it is a text"),
    "a note without end": (json.dumps({"format": 1, "note": "x" * 401}), "note: I read"),
    "parked under no path": ('{ "format": 1, "parked": { "attic": 1 } }', "parked: “attic” is not the path of a question, such as A.left_framed."),
    "parked under no question": ('{ "format": 1, "parked": { "A.colour": 1 } }', "parked: “A.colour” is not the path of a question"),
    "parked and answered": (
        '{ "format": 1, "basement": { "tape": "mm" }, "parked": { "basement.tape": "mm" } }', "parked: “basement.tape” is answered above as well",
    ),
    "a terminal escape in a key": ('{ "format": 1, "\\u001b[2J\\u0007red": 1 }', "the job: unknown key “[2Jred”"),
    "a terminal escape in an answer": (with_basement(use="\x1b]0;title\x07"), "basement, use: “]0;title” is none of the choices"),
    "lines in an answer": (with_basement(use="a\nb\r\nc"), "basement, use: “a b c” is none of the choices"),
    "a text without end": (with_wall(other="x" * 5000), "wall A, other: “xxxxxxxx"),
    "a lone half of a character": (with_basement(use="\ud800"), "basement, use: “” is none of the choices"),
    "nested without end": ("[" * 100_000, "this is nested far deeper than any job."),
    "nested deep in an answer": (
        '{ "format": 1, "basement": { "use": ' + "[" * 300 + "]" * 300 + " } }", "basement, use: I read “[[[[[",
    ),
}  # fmt: skip


@pytest.mark.parametrize("what", WRONG)
def test_a_bad_file_gives_one_sentence_with_the_place_and_stays_as_it_was(what: str, tmp_path: Path) -> None:
    text, begins = WRONG[what]
    said = refused(text, tmp_path / "job.json")
    assert begins in said


def test_ten_megabytes_of_junk_are_refused_by_their_size(tmp_path: Path) -> None:
    said = refused(b"\x00\xff junk" * 1_500_000, tmp_path / "job.json")
    assert said == f"this is 10,500,000 bytes; a job file is never over {LARGEST:,}."


def test_bytes_that_are_no_text_are_named_by_their_place(tmp_path: Path) -> None:
    assert (
        refused(b'{ "format": \xff }', tmp_path / "job.json") == "byte 12 is not UTF-8 text; a job file is JSON text."
    )


def test_what_is_no_ordinary_file_is_refused_without_waiting_for_it(tmp_path: Path) -> None:
    with pytest.raises(JobFileError, match="this is a folder; name a job file"):
        load(tmp_path, BOOK)
    os.mkfifo(tmp_path / "pipe")
    with pytest.raises(JobFileError, match="not an ordinary file"):
        load(tmp_path / "pipe", BOOK)
    with pytest.raises(JobFileError, match="cannot be read \\(No such file"):
        load(tmp_path / "absent.json", BOOK)


def test_a_file_name_cannot_reach_the_terminal_either(tmp_path: Path) -> None:
    path = tmp_path / "a\x1b[31m\nb.json"
    path.write_text("")
    with pytest.raises(JobFileError) as caught:
        load(path, BOOK)
    assert str(caught.value).isprintable()


# ---------------------------------------------------------------------------------------- anything, anywhere


def places(tree: Json, way: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    """Return the way to every node of a tree, the root first."""
    inside: list[tuple[str | int, Json]] = []
    if isinstance(tree, dict):
        inside = list(tree.items())
    elif isinstance(tree, list):
        inside = list(enumerate(tree))
    return [way, *(each for key, node in inside for each in places(node, (*way, key)))]


EVERYWHERE = places(FULL)

anything: st.SearchStrategy[Any] = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-(10**12), 10**12)
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(max_size=12)
    | st.sampled_from(["2 in", "92 at left, 92 at right", "living", "north", "0", "don't know", "\x1b[2J"]),
    lambda inner: (
        st.lists(inner, max_size=4)
        | st.dictionaries(
            st.text(max_size=6) | st.sampled_from(["value", "known", "typed", "confirm", "items", "name", "length"]),
            inner,
            max_size=4,
        )
    ),
    max_leaves=12,
)


def replaced(way: tuple[str | int, ...], new: Json) -> Json:
    """Return the full job with one node replaced."""
    if not way:
        return new
    tree = copy.deepcopy(FULL)
    node: Any = tree
    for key in way[:-1]:
        node = node[key]
    node[way[-1]] = new
    return tree


def test_the_full_job_is_a_good_one() -> None:
    assert len(from_json(FULL, BOOK).answers) > 120


@given(st.sampled_from(EVERYWHERE), anything)
@settings(max_examples=1200)
def test_anything_anywhere_is_read_or_refused_with_one_sentence(way: tuple[str | int, ...], new: Json) -> None:
    tree = replaced(way, new)
    for text in (None, json.dumps(tree)):
        try:
            from_json(tree, BOOK) if text is None else from_text(text, BOOK)
        except JobFileError as error:
            one_sentence(str(error))


@given(st.sampled_from(EVERYWHERE[1:]), st.text(max_size=8))
@settings(max_examples=300)
def test_any_key_anywhere_is_known_or_refused_with_one_sentence(way: tuple[str | int, ...], key: str) -> None:
    tree = copy.deepcopy(FULL)
    node: Any = tree
    for step in way:
        node = node[step]
    if not isinstance(node, dict) or key in node:
        return
    node[key] = "2 in"
    with pytest.raises(JobFileError) as caught:
        from_json(tree, BOOK)
    one_sentence(str(caught.value))


@given(st.integers(0, 10**6), st.binary(max_size=6))
@settings(max_examples=300)
def test_any_damage_to_the_text_is_read_or_refused_with_one_sentence(at: int, damage: bytes) -> None:
    raw = json.dumps(FULL).encode()
    at %= len(raw)
    text = (raw[:at] + damage + raw[at + len(damage) :]).decode("utf-8", errors="replace")
    try:
        from_text(text, BOOK)
    except JobFileError as error:
        one_sentence(str(error))


def test_a_reading_that_is_refused_names_its_wall() -> None:
    tree = job([wall(), wall(lean="7 ft")])
    with pytest.raises(JobFileError, match=r"^wall B, lean: “7 ft” cannot be right"):
        from_json(tree, BOOK)
