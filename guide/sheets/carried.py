"""What a command of the person does: the answers as they are then, where the talk goes on, and what is said of it."""

from __future__ import annotations

import re
from dataclasses import dataclass

from guide.book.questions import Book
from guide.interview.answers import Answer, Answers, count_of, outer_place, wall_letter
from guide.interview.asking import applying, expected
from guide.interview.commands import Order
from guide.interview.values import MOST_WALLS
from guide.interview.walls import (
    copied,
    corners_in_doubt,
    deleted,
    inserted,
    mirrored,
    moved,
    name_of_a_copy,
    to_be_read_again,
    wall_names,
)
from guide.sheets.said import said_so_far, wall_title
from guide.sheets.spoken import names_of, say_of_talk


@dataclass(frozen=True, slots=True)
class Carried:
    """What a command led to."""

    lines: tuple[str, ...]
    answers: dict[str, Answer] | None = None
    """The answers from now on; None where they stay as they are."""
    path: str | None = None
    """The answer that the talk goes to."""
    wall: str | None = None
    """The letter of the wall that is asked about first from now on."""


def carried_out(book: Book, answers: Answers, order: Order) -> Carried:
    """Carry a command out. Nothing is changed in place; a command that cannot be carried out says why."""
    if order.command == "find":
        return _found(book, answers, order.words)
    if order.command == "go":
        return _gone(book, answers, order.wall or 0)
    if order.command == "mirror":
        return _turned(book, answers, order.wall or 0)
    return _rearranged(book, answers, order)


def _gone(book: Book, answers: Answers, index: int) -> Carried:
    letter = wall_letter(index)
    here = [asked for asked in expected(book, answers) if asked.place.partition(".")[0] == letter]
    title = wall_title(answers, letter)
    if any(asked.path not in answers or answers[asked.path].confirm for asked in here):
        return Carried((say_of_talk("went_to", wall=title),), wall=letter)
    return Carried((say_of_talk("wall_is_done", wall=title),), path=here[0].path)


def _found(book: Book, answers: Answers, words: str) -> Carried:
    """Go to the one answer whose name, place or value has all the words; of several, say which there are."""
    wanted = [word for word in words.split() if word not in ("of", "the", "in", "on", "at")]
    values = {row.path: row.value for row in said_so_far(book, answers)}
    values |= {
        asked.path: "" for asked in applying(book, answers) if asked.question.on_request and asked.path not in values
    }
    rows = [(path, f"{names_of(book, answers, (path,))} {value}".lower()) for path, value in values.items()]
    hits = [path for path, text in rows if all(_has(word, text) for word in wanted)]
    if len(hits) == 1:
        return Carried((), path=hits[0])
    if not hits:
        return Carried((say_of_talk("no_such_answer", path=words),))
    names = names_of(book, answers, hits[:6])
    first = names_of(book, answers, hits[:1]).replace("(", "").replace(")", "")
    return Carried((say_of_talk("found_several", count=str(len(hits)), names=names, first=first),))


def _has(word: str, text: str) -> bool:
    """Say whether a word of the text begins so; a single letter has to be one by itself."""
    return any(each == word or (len(word) > 1 and each.startswith(word)) for each in re.findall(r"[\w/]+", text))


def _turned(book: Book, answers: Answers, index: int) -> Carried:
    letter = wall_letter(index)
    title = wall_title(answers, letter)
    new = mirrored(book, answers, index)
    if new is None:
        return Carried((say_of_talk("wall_not_mirrored", wall=title),))
    again = [path for path in (f"{letter}.first_joist", f"{letter}.joist_edges") if path in new]
    return _with_doubts(book, new, (say_of_talk("wall_mirrored", wall=title),), tuple(again))


def _rearranged(book: Book, answers: Answers, order: Order) -> Carried:
    """Copy, move, put in or take out a wall, and put in doubt what it says of corners that are others now."""
    walls, index = len(wall_names(answers)), order.wall or 0
    if order.command == "delete" and walls < 2:
        return Carried((say_of_talk("last_wall_stays"),))
    if order.command in ("copy", "insert_before", "insert_after") and walls >= MOST_WALLS:
        return Carried((say_of_talk("too_many_walls", count=str(walls)),))
    new, row, at = _in_new_order(answers, order, walls, index)
    title, letter = wall_title(answers, wall_letter(index)), wall_letter(at)
    if order.command == "delete":
        line = say_of_talk("wall_deleted", old=title, count=str(len(answers) - len(new)))
    else:
        key = (
            "wall_copied" if order.command == "copy" else "wall_inserted" if "insert" in order.command else "wall_moved"
        )
        line = say_of_talk(key, old=title, new=wall_title(new, letter))
    doubts = corners_in_doubt(book, answers, new, lambda number: row[number])
    if order.command == "copy":
        doubts = tuple(dict.fromkeys((*doubts, *to_be_read_again(book, new, at), f"{letter}.joist_edges")))
    return _with_doubts(book, new, (line,), doubts)


def _in_new_order(
    answers: Answers, order: Order, walls: int, index: int
) -> tuple[dict[str, Answer], list[int | None], int]:
    """Return the new answers, the old number of each wall (None where it is new), and the number that the command is about."""
    row: list[int | None] = list(range(walls))
    if order.command == "delete":
        return deleted(answers, index), [each for each in row if each != index], index
    if order.command == "copy":
        new = copied(answers, index, walls, name_of_a_copy(answers, index))
        return new, [*row, None], walls
    if order.command in ("insert_before", "insert_after"):
        at = (order.other or 0) + (order.command == "insert_after")
        return inserted(answers, at), [*row[:at], None, *row[at:]], at
    rest = [each for each in row if each != index]
    at = index if order.other == index else rest.index(order.other or 0) + (order.command == "after")
    return moved(answers, index, at), [*rest[:at], index, *rest[at:]], at


def _with_doubts(book: Book, new: dict[str, Answer], lines: tuple[str, ...], doubts: tuple[str, ...]) -> Carried:
    applies = {asked.path for asked in applying(book, new)}
    asked_again = tuple(path for path in doubts if path in applies)
    answers = {path: answer.doubted() if path in doubts else answer for path, answer in new.items()}
    corners = tuple(path for path in asked_again if outer_place(path.rpartition(".")[0]) in ("basement", None))
    if corners and count_of(new.get("basement.walls")) and len(asked_again) < 12:
        lines = (*lines, say_of_talk("corners_again", names=names_of(book, new, asked_again)))
    return Carried(lines, answers)
