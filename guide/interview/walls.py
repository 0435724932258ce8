"""Whole walls copied, mirrored, moved, put in and taken out, as new answers; letters follow the places in the row.

It owns one promise: no answer is lost or changed by it but those of a wall that is taken out, and a mirrored wall mirrored
again is the wall it was. Which corners a new neighbour puts in doubt is told apart from the answers (`corners_in_doubt`).
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from guide.book.questions import Book, Question
from guide.interview.answers import (
    Answer,
    Answers,
    Certainty,
    Spot,
    count_of,
    path_of,
    scope_of,
    split_path,
    wall_index,
    wall_letter,
)
from guide.interview.asking import applying, joined_left, joined_right, next_wall
from guide.interview.places import wall_length
from guide.interview.values import LONGEST_NAME
from guide.lengths import ZERO, Length

_WALLS = "basement.walls"
_OTHER_SIDE = {"left": "right", "right": "left"}
_CORNER = (
    "left", "right", "left_framed", "right_framed", "left_first", "right_first", "left_foam", "right_foam", "across",
    "left_across",
)  # fmt: skip
"""Questions of a wall that speak of its corners and ends."""


def wall_names(answers: Answers) -> tuple[str, ...]:
    """Return the names of the walls in the order walked; empty before they are known."""
    answer = answers.get(_WALLS)
    return tuple(str(name) for name in answer.value) if answer is not None and isinstance(answer.value, tuple) else ()


def inserted(answers: Answers, at: int, name: str = "") -> dict[str, Answer]:
    """Return the answers with a new wall, not asked about yet, as number `at` (from 0) in the row."""
    order: list[int | None] = list(range(len(wall_names(answers))))
    return _rearranged(answers, [*order[:at], None, *order[at:]], {at: name})


def deleted(answers: Answers, index: int) -> dict[str, Answer]:
    """Return the answers without a wall; the walls after it move up."""
    return _rearranged(answers, [each for each in range(len(wall_names(answers))) if each != index])


def copied(answers: Answers, index: int, at: int, name: str = "") -> dict[str, Answer]:
    """Return the answers with a copy of wall `index` as number `at` in the row; its readings are still those of the first."""
    order = list(range(len(wall_names(answers))))
    return _rearranged(answers, [*order[:at], index, *order[at:]], {at: name})


def moved(answers: Answers, index: int, to: int) -> dict[str, Answer]:
    """Return the answers with wall `index` as number `to` in the row."""
    order = [each for each in range(len(wall_names(answers))) if each != index]
    return _rearranged(answers, [*order[:to], index, *order[to:]])


def _rearranged(
    answers: Answers, order: Sequence[int | None], names: dict[int, str] | None = None
) -> dict[str, Answer]:
    """Return the answers with the walls in this order: old numbers, None for a new wall; `names` by new number."""
    old = wall_names(answers)
    beyond = len(order) - len(old)
    places: dict[int, list[int]] = {}
    for new, was in enumerate(order):
        if was is not None:
            places.setdefault(was, []).append(new)
    found: dict[str, Answer] = {}
    for path, answer in answers.items():
        place, question_id = split_path(path)
        if place == "basement":
            found[path] = answer
            continue
        was = wall_index(place)
        for new in places.get(was, [was + beyond] if was >= len(old) else []):
            turned = {wall_letter(was): wall_letter(new)}
            found[path_of(_lettered(place, turned), question_id)] = replace(
                answer, leans=tuple(_lettered(each, turned) for each in answer.leans)
            )
    named = tuple(_name(old, was, new, (names or {}).get(new, "")) for new, was in enumerate(order))
    by_number = all(name == f"wall {wall_letter(new)}" for new, name in enumerate(named))
    found[_WALLS] = replace(answers[_WALLS], value=named, typed=str(len(named)) if by_number else ", ".join(named))
    return found


def _lettered(place: str, turned: dict[str, str]) -> str:
    letter, dot, rest = place.partition(".")
    return f"{turned.get(letter, letter)}{dot}{rest}"


def _name(old: Sequence[str], was: int | None, new: int, name: str) -> str:
    """Return a wall's name in its new place: its own, or its new letter where it never had one."""
    plain = f"wall {wall_letter(new)}"
    if name or was is None:
        return name or plain
    return plain if old[was] == f"wall {wall_letter(was)}" else old[was]


def name_of_a_copy(answers: Answers, index: int) -> str:
    """Return a name for a copy of a wall that no other wall has; empty where the wall goes by its letter alone."""
    names = wall_names(answers)
    if names[index] == f"wall {wall_letter(index)}":
        return ""
    tries = (
        f"{names[index][: LONGEST_NAME - 9].strip()} copy{f' {n}' if n else ''}" for n in (0, *range(2, len(names) + 3))
    )
    return next(name for name in tries if name not in names)


# ------------------------------------------------------------------------------------------------------- mirrored


def mirrored(book: Book, answers: Answers, index: int) -> dict[str, Answer] | None:
    """Return the answers with one wall turned left for right; None before its length is known, or where things do not fit it.

    What stands on it and its readings are turned. Its ends are turned only where neither is, or would become, a corner with
    another wall of the job: those stay where they are.
    """
    length = wall_length(answers, wall_letter(index))
    if length is None:
        return None
    turned = None if _joined(answers, index) else _mirrored(book, answers, index, length, ends=True)
    if turned is None or _joined(turned, index):
        return _mirrored(book, answers, index, length, ends=False)
    return turned


def _joined(answers: Answers, index: int) -> bool:
    return joined_left(answers, index) or joined_right(answers, index)


def _mirrored(book: Book, answers: Answers, index: int, length: Length, *, ends: bool) -> dict[str, Answer] | None:
    letter = wall_letter(index)
    found = {path: answer for path, answer in answers.items() if not _of_wall(path, letter)}
    for path, answer in answers.items():
        if _of_wall(path, letter):
            new = _mirrored_path(book, answers, path, ends)
            turned = _mirrored_answer(book, answers, path, answer, length)
            # Both ways round, so that what was turned can always be turned back.
            if not (_fits(book, path, answer) and _fits(book, new, turned)):
                return None
            leans = tuple(_mirrored_path(book, answers, each, ends) for each in answer.leans)
            found[new] = replace(turned, leans=leans)
    return found


def _fits(book: Book, path: str, answer: Answer) -> bool:
    """Say whether a turned size is one that its question takes: what stands beyond the wall's end has no place on it."""
    place, question_id = split_path(path)
    question = book.by_ref.get(f"{scope_of(place)}.{question_id}")
    if isinstance(answer.value, Length) and question is not None:
        low, high = question.range_of_lengths()
        return (low is None or low <= answer.value) and (high is None or answer.value <= high)
    if isinstance(answer.value, tuple):
        return all(spot.at >= ZERO for spot in answer.value if isinstance(spot, Spot) and isinstance(spot.at, Length))
    return True


def _of_wall(path: str, letter: str) -> bool:
    return path.partition(".")[0] == letter


def _mirrored_path(book: Book, answers: Answers, path: str, ends: bool) -> str:
    """Return where an answer goes: things are counted from the other end, and left and right change places."""
    place, question_id = split_path(path)
    letter, _, item = place.partition(".")
    if not item:
        return path_of(place, _sided(question_id) if ends and question_id in _CORNER else question_id)
    scope = scope_of(place)
    count = count_of(answers.get(path_of(letter, book.opener[scope].id)))
    number = int(item.removeprefix(scope))
    turned = f"{letter}.{scope}{count + 1 - number if number <= count else number}"
    swapped = {"low_left": "low_right", "low_right": "low_left", "from": "to", "to": "from"}
    return path_of(turned, swapped.get(question_id, question_id))


def _sided(question_id: str) -> str:
    if question_id.endswith("across"):  # of the right corner, unless it says left
        return "across" if question_id == "left_across" else "left_across"
    side, _, rest = question_id.partition("_")
    other = _OTHER_SIDE.get(side)
    return question_id if other is None else f"{other}_{rest}" if rest else other


def _mirrored_answer(book: Book, answers: Answers, path: str, answer: Answer, length: Length) -> Answer:
    place, question_id = split_path(path)
    question = book.by_ref.get(f"{scope_of(place)}.{question_id}")
    value = answer.value
    if question is None or value is None:
        return answer
    if question.along and isinstance(value, tuple):
        spots = (_mirrored_spot(spot, length) for spot in value if isinstance(spot, Spot))
        return replace(answer, value=tuple(spots)[::-1])
    if isinstance(value, Length):
        return replace(answer, value=_mirrored_place(book, answers, place, question, value, length))
    if question.ref in ("opening.hinge", "opening.fixed", "wall.layout_from", "pipe.flows"):
        return replace(answer, value=_OTHER_SIDE.get(str(value), value))
    return answer


def _mirrored_spot(spot: Spot, length: Length) -> Spot:
    at = length - spot.at if isinstance(spot.at, Length) else _OTHER_SIDE.get(spot.at, spot.at)
    return replace(spot, at=at)


def _mirrored_place(
    book: Book, answers: Answers, place: str, question: Question, value: Length, length: Length
) -> Length:
    if question.place in ("centre", "left end", "right end"):
        return length - value
    if question.place == "left edge":
        return length - value - _width(book, answers, place)
    return value


def _width(book: Book, answers: Answers, place: str) -> Length:
    """Return the width of a thing: that of its kind; nothing before it is known."""
    applies = {asked.path for asked in applying(book, answers)}
    for question in book.by_scope[scope_of(place)]:
        path = path_of(place, question.id)
        answer = answers.get(path)
        if question.place == "width" and path in applies and answer is not None and isinstance(answer.value, Length):
            return answer.value
    return ZERO


# ------------------------------------------------------------------------------------------------- what is in doubt


def corners_in_doubt(book: Book, old: Answers, new: Answers, was: Callable[[int], int | None]) -> tuple[str, ...]:
    """Return the answers about ends and corners of walls that meet another wall now than before; `was` gives old numbers."""
    found: list[str] = []
    for index in range(len(wall_names(new))):
        letter, before = wall_letter(index), was(index)
        for side, step in (("left", -1), ("right", 1)):
            now = next_wall(new, index, step)
            then = next_wall(old, before, step) if before is not None else None
            if before is None or (was(now) if now is not None else None) != then:
                found += [path_of(letter, each) for each in _CORNER if (each.startswith("left")) == (side == "left")]
    paths = [path for path in dict.fromkeys(found) if path in new]
    ring = ("basement.ring",) if paths and "basement.ring" in new else ()
    return (*paths, *ring)


def to_be_read_again(book: Book, answers: Answers, index: int) -> tuple[str, ...]:
    """Return the sizes and readings of a wall that was copied from another: they were taken there and not here."""
    letter = wall_letter(index)
    kinds = ("length", "readings")
    return tuple(
        asked.path
        for asked in applying(book, answers)
        if _of_wall(asked.path, letter) and asked.question.kind in kinds and asked.path in answers
        and answers[asked.path].known is Certainty.MEASURED
    )  # fmt: skip
