"""The job file: one JSON tree that mirrors the question book, written so that a crash never costs an answer.

    { "format": 1, "note": "...",
      "basement": { "tape": "inches", ... },
      "walls": [ { "name": "north", "length": "16 ft 4 in", "openings": [ { "kind": "window", ... } ], ... } ],
      "signed": [ { "finding": "old_boxes", "wall": "north", "because": "the electrician comes on Tuesday" } ],
      "parked": { "A.left_framed": "4 3/4 in" } }

Things that are counted or named (walls, openings, pipes, boxes) are lists; their length is the answer. Answers that do
not apply now are kept under `parked` by their path.
"""

from __future__ import annotations

import json
import os
import re
import stat
import tempfile
from collections.abc import Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from difflib import get_close_matches
from pathlib import Path
from typing import cast

from guide.book.questions import Book, Question
from guide.interview.answers import (
    Answer,
    Answers,
    bare_of,
    count_of,
    item_place,
    path_of,
    scope_of,
    tape_of,
    wall_letter,
)
from guide.interview.asking import Asked, applying, asked_at
from guide.interview.replies import LONGEST_TEXT, Sorry, clean
from guide.interview.signed import SignOff, read_sign_off, written_sign_off
from guide.interview.values import LONGEST_NAME, MOST_WALLS
from guide.interview.written import Json, how_known, quoted, read_written, written
from guide.lengths import Bare, Tape

FORMAT = 1
SCHEMA_ID = "wallbrief-job-1"
LARGEST = 2_000_000
"""Bytes; a job of two hundred walls is a tenth of it."""

_WALLS = "basement.walls"


class JobFileError(ValueError):
    """A job file that cannot be used; the message is one sentence with the place in the file."""


@dataclass(frozen=True)
class Job:
    """What a job file holds."""

    answers: dict[str, Answer] = field(default_factory=dict)
    note: str = ""
    """A remark about the job that prints on its papers, such as that it is invented."""
    signed: tuple[SignOff, ...] = ()
    """The warnings signed off, in the order they were."""


# ------------------------------------------------------------------------------------------------------ writing


def to_json(book: Book, job: Job) -> dict[str, Json]:
    """Return the tree for a job, applying answers in their place and the rest under `parked`."""
    tape = tape_of(job.answers)
    in_force: dict[str, list[Asked]] = {}
    for asked in applying(book, job.answers):
        if asked.path in job.answers:
            in_force.setdefault(asked.place, []).append(asked)
    paths = {asked.path for each in in_force.values() for asked in each}
    parked: dict[str, Json] = {
        path: written(answer, tape) for path, answer in sorted(job.answers.items()) if path not in paths
    }
    tree: dict[str, Json] = {"$schema": SCHEMA_ID, "format": FORMAT}
    if job.note:
        tree["note"] = job.note
    basement = _place_tree(in_force, job.answers, "basement", tape)
    walls = basement.pop("walls", None)
    tree["basement"] = basement
    if walls is not None:
        tree["walls"] = walls
    if job.signed:
        tree["signed"] = [written_sign_off(each) for each in job.signed]
    if parked:
        tree["parked"] = parked
    return tree


def _place_tree(in_force: Mapping[str, list[Asked]], answers: Answers, place: str, tape: Tape) -> dict[str, Json]:
    tree: dict[str, Json] = {}
    for asked in in_force.get(place, ()):
        opens = asked.question.opens
        answer = answers[asked.path]
        tree[asked.question.id] = _list_tree(in_force, answers, asked, tape) if opens else written(answer, tape)
    return tree


def _list_tree(in_force: Mapping[str, list[Asked]], answers: Answers, asked: Asked, tape: Tape) -> Json:
    """Write a counting or naming answer as the list of its things, in an object only when there is more to say."""
    answer = answers[asked.path]
    assert asked.question.opens is not None
    items: list[Json] = []
    for index in range(count_of(answer)):
        place = item_place(asked.place, asked.question.opens, index)
        item = _place_tree(in_force, answers, place, tape)
        if isinstance(answer.value, tuple):
            item = {"name": cast(str, answer.value[index]), **item}
        items.append(item)
    about = how_known(answer, str(len(items)))
    return {"items": items, **about} if about else items


def save(path: Path, book: Book, job: Job) -> None:
    """Write the job so that the file always holds a whole job: temporary file beside it, fsync, rename, fsync folder.

    A link is followed: the file it points to is replaced, not the link. Raises OSError when the folder cannot be
    written; the old file is untouched then.
    """
    path = path.resolve()
    text = json.dumps(to_json(book, job), indent=2, ensure_ascii=False) + "\n"
    handle, name = tempfile.mkstemp(prefix=f".{path.name}.", suffix=".new", dir=path.parent)
    try:
        with os.fdopen(handle, "w", encoding="utf-8") as out:
            out.write(text)
            out.flush()
            os.fsync(out.fileno())
        os.chmod(name, path.stat().st_mode & 0o777 if path.exists() else 0o644)
        os.replace(name, path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise
    _fsync_folder(path.parent)


def _fsync_folder(folder: Path) -> None:
    """Make the rename durable where the system can: some file systems cannot sync a folder, and the file is whole anyway."""
    with suppress(OSError):
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)


# ------------------------------------------------------------------------------------------------------ reading


def load(path: Path, book: Book) -> Job:
    """Read a job file. Raises JobFileError with one sentence; nothing is ever written by reading."""
    name = clean(str(path))
    try:
        info = path.stat()
        if not stat.S_ISREG(info.st_mode):
            raise JobFileError(
                f"{name}: this is {'a folder' if path.is_dir() else 'not an ordinary file'}; name a job file."
            )
        if info.st_size > LARGEST:
            raise JobFileError(f"{name}: this is {info.st_size:,} bytes; a job file is never over {LARGEST:,}.")
        raw = path.read_bytes()
    except OSError as error:
        raise JobFileError(f"{name}: cannot be read ({error.strerror or error}).") from error
    try:
        return from_text(raw.decode("utf-8-sig"), book)
    except UnicodeDecodeError as error:
        raise JobFileError(f"{name}: byte {error.start} is not UTF-8 text; a job file is JSON text.") from error
    except JobFileError as error:
        raise JobFileError(f"{name}: {error}") from error


def from_text(text: str, book: Book) -> Job:
    """Read a job from JSON text. Raises JobFileError with one sentence naming the place."""
    try:
        # a number with a point stays the text it was written in: a length is never a float
        data = json.loads(
            text, object_pairs_hook=_once, parse_constant=_no_constant, parse_float=str, parse_int=_whole_number
        )
    except json.JSONDecodeError as error:
        raise JobFileError(f"line {error.lineno}, column {error.colno}: this is not JSON ({error.msg}).") from error
    except RecursionError as error:
        raise JobFileError("this is nested far deeper than any job.") from error
    return from_json(data, book)


def from_json(data: Json, book: Book) -> Job:
    """Read a job from its tree. Raises JobFileError with one sentence naming the place."""
    if not isinstance(data, dict):
        raise JobFileError("the file must hold one object with format, basement and walls.")
    if "format" not in data:
        raise JobFileError(
            '“format” is missing; a job file begins { "format": 1, "basement": { ... }, "walls": [ ... ] }.'
        )
    if data["format"] != FORMAT or isinstance(data["format"], bool):
        newer = isinstance(data["format"], int) and data["format"] > FORMAT
        why = "is newer than this wallbrief; please update it" if newer else f"is not one I know; it should be {FORMAT}"
        raise JobFileError(f"format {quoted(data['format'])} {why}.")
    _known_keys(data, ("$schema", "format", "note", "basement", "walls", "signed", "parked"), "the job")
    note = data.get("note", "")
    if not isinstance(note, str) or len(note) > LONGEST_TEXT:
        raise JobFileError(f"note: I read {quoted(note)}; it is a text of {LONGEST_TEXT} characters at most.")
    basement = _object(data.get("basement", {}), "basement")
    if "walls" in basement:
        raise JobFileError("basement.walls: the walls are the list beside basement, not in it.")
    answers: dict[str, Answer] = {}
    bare = _read_tape(book, basement, answers)
    for path, answer in _read_place(book, "basement", basement, bare):
        answers[path] = answer
    if "walls" in data:
        for path, answer in _read_list(book, book.by_ref[_WALLS], "basement", data["walls"], "walls", bare):
            answers[path] = answer
    for path, value in _object(data.get("parked", {}), "parked").items():
        asked = asked_at(book, path) if _is_path(path) else None
        if asked is None:
            raise JobFileError(f"parked: {quoted(path)} is not the path of a question, such as A.left_framed.")
        if path in answers:
            raise JobFileError(f"parked: {quoted(path)} is answered above as well; keep one of them.")
        answers[path] = _read_one(asked.question, value, f"parked.{path}", bare)
    return Job(answers, clean(note), _read_signed(data.get("signed", [])))


def _read_signed(data: Json) -> tuple[SignOff, ...]:
    if not isinstance(data, list):
        raise JobFileError(f"signed: I read {quoted(data)}; it is a list with one object for each, [] for none.")
    found = []
    for index, item in enumerate(data):
        where = f"signed[{index}]"
        try:
            found.append(read_sign_off(_object(item, where)))
        except Sorry as error:
            raise JobFileError(f"{where}: {str(error).rstrip('.')}.") from error
    return tuple(found)


def _read_tape(book: Book, basement: dict[str, Json], answers: dict[str, Answer]) -> Bare:
    """Read first which side of the tape is meant: it decides the unit of every number without one."""
    if "tape" in basement:
        question = book.by_ref["basement.tape"]
        answers["basement.tape"] = _read_one(question, basement["tape"], "basement, tape", "in")
    return bare_of(answers)


def _read_place(book: Book, place: str, data: dict[str, Json], bare: Bare) -> Iterator[tuple[str, Answer]]:
    questions = {question.id: question for question in book.by_scope[scope_of(place)]}
    named = ("name",) if place != "basement" and scope_of(place) == "wall" else ()
    where = "basement" if place == "basement" else _where(place)
    _known_keys(data, (*questions, *named), where)
    for key, value in data.items():
        if key in named:
            continue
        question = questions[key]
        if question.opens:
            yield from _read_list(book, question, place, value, f"{where}, {key}", bare)
        else:
            yield path_of(place, key), _read_one(question, value, f"{where}, {key}", bare)


def _read_list(
    book: Book, question: Question, place: str, data: Json, where: str, bare: Bare
) -> Iterator[tuple[str, Answer]]:
    extra: dict[str, Json] = {}
    items = data
    if isinstance(data, dict):
        _known_keys(data, ("items", "known", "typed", "confirm"), where)
        extra = {key: value for key, value in data.items() if key != "items"}
        items = data.get("items", [])
    if not isinstance(items, list):
        raise JobFileError(f"{where}: I read {quoted(items)}; it is a list with one object for each, [] for none.")
    assert question.opens is not None
    if len(items) > MOST_WALLS:
        raise JobFileError(f"{where}: {len(items)} of them; {MOST_WALLS} is the most I take.")
    objects = [_object(item, f"{where}[{index}]") for index, item in enumerate(items)]
    counted = _read_one(question, {"value": len(items), **extra}, where, bare)
    names = tuple(_read_name(item, index, where) for index, item in enumerate(objects))
    value = names if question.kind == "names" else counted.value
    yield path_of(place, question.id), Answer(value, counted.known, counted.typed, counted.confirm)
    for index, item in enumerate(objects):
        yield from _read_place(book, item_place(place, question.opens, index), item, bare)


def _read_name(item: dict[str, Json], index: int, where: str) -> str:
    name = item.get("name", f"wall {wall_letter(index)}")
    if not isinstance(name, str) or not clean(name) or len(name) > LONGEST_NAME:
        raise JobFileError(
            f"{where}[{index}].name: I read {quoted(name)}; it is a text of 1 to {LONGEST_NAME} characters."
        )
    return clean(name)


def _read_one(question: Question, data: Json, where: str, bare: Bare) -> Answer:
    try:
        return read_written(question, data, bare)
    except Sorry as error:
        raise JobFileError(f"{where}: {str(error).rstrip('.')}.") from error


def _where(place: str) -> str:
    """Return a wall or a thing on it in words: `wall A`, `wall A, opening 2`."""
    wall, _, item = place.partition(".")
    if not item:
        return f"wall {wall}"
    kind = scope_of(place)
    return f"wall {wall}, {kind} {item.removeprefix(kind)}"


def _known_keys(data: dict[str, Json], keys: tuple[str, ...], where: str) -> None:
    for key in data:
        if key not in keys:
            near = get_close_matches(key, keys, n=1)
            right = f"did you mean “{near[0]}”" if near else "wallbrief schema job lists the keys there can be"
            raise JobFileError(f"{where}: unknown key {quoted(key)}; {right}{'?' if near else '.'}")


def _object(data: Json, where: str) -> dict[str, Json]:
    if not isinstance(data, dict):
        raise JobFileError(f"{where}: I read {quoted(data)}; it is an object in braces.")
    return data


def _is_path(path: str) -> bool:
    return bool(re.fullmatch(r"(basement|[A-Z]{1,2}(\.[a-z]+[1-9]\d{0,2})?)\.[a-z_]+", path))


def _once(pairs: list[tuple[str, Json]]) -> dict[str, Json]:
    found: dict[str, Json] = {}
    for key, value in pairs:
        if key in found:
            raise JobFileError(f"the key {quoted(key)} stands twice in one object; keep one of them.")
        found[key] = value
    return found


def _no_constant(name: str) -> Json:
    raise JobFileError(f"{name} is not a number that a tape shows.")


def _whole_number(digits: str) -> int:
    if len(digits) > 15:
        raise JobFileError(f"{quoted(digits)} has {len(digits)} digits; no tape shows such a number.")
    return int(digits)
