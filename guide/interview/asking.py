"""What applies, what to ask next, and what a change touches. Pure functions of the book and the answers.

There is no stored cursor: the next question is the first that applies and has no answer, or whose answer is in doubt.
An answer to a question that does not apply is parked: kept, but out of the survey, and back as soon as it applies again.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Set
from dataclasses import dataclass
from functools import lru_cache

from guide.book.conditions import Fact, holds, tests_in
from guide.book.questions import OUTER, Book, Question
from guide.interview.answers import (
    Answer,
    Answers,
    count_of,
    fact_of,
    item_place,
    outer_place,
    path_of,
    scope_of,
    wall_index,
    wall_letter,
)

FEWEST_IN_RING = 4
"""Walls that meet at right angles close in a ring of four at least."""

CORNERS = ("inside corner", "outside corner")
"""Ends at which a wall can meet another wall of the job."""

CLOSINGS = {"yes": "inside corner", "outside": "outside corner"}
"""How the last wall of a ring meets the first, by the answer that says so."""


@dataclass(frozen=True, slots=True)
class Asked:
    """A question at a place: what is asked of this wall, this opening."""

    place: str
    question: Question

    @property
    def path(self) -> str:
        """The path its answer is kept under."""
        return path_of(self.place, self.question.id)


def applying(book: Book, answers: Answers) -> Iterator[Asked]:
    """Yield every question that applies now, in the order asked, answered or not."""
    yield from _applying_at(book, answers, "basement", frozenset())


def expected(book: Book, answers: Answers) -> Iterator[Asked]:
    """Yield every question that applies now and that the talk comes to by itself, or that was answered on request."""
    return (a for a in applying(book, answers) if not a.question.on_request or a.path in answers)


def _applying_at(book: Book, answers: Answers, place: str, outer: frozenset[str]) -> Iterator[Asked]:
    """Yield the questions of a place and of the things in it; `outer` are the paths that apply around it.

    Things are asked about right after the question that counts them, and after those that follow it and test the count.
    """
    here = set(outer)
    opened: Asked | None = None
    for question in book.by_scope[scope_of(place)]:
        if opened is not None and opened.question.ref not in {test.of for test in tests_in(question.when)}:
            yield from _things(book, answers, opened, frozenset(here))
            opened = None
        if not holds(question.when, lambda ref: fact_at(answers, place, ref, here)):
            continue
        asked = Asked(place, question)
        here.add(asked.path)
        yield asked
        opened = asked if question.opens else opened
    if opened is not None:
        yield from _things(book, answers, opened, frozenset(here))


def _things(book: Book, answers: Answers, opened: Asked, outer: frozenset[str]) -> Iterator[Asked]:
    assert opened.question.opens is not None
    for index in range(count_of(answers.get(opened.path))):
        yield from _applying_at(book, answers, item_place(opened.place, opened.question.opens, index), outer)


def next_question(
    book: Book, answers: Answers, later: Set[str] = frozenset(), first: str | None = None
) -> Asked | None:
    """Return the one question to ask now, or None when everything that applies is answered and in no doubt.

    Those of the wall `first` come before all others, those whose path is in `later` after them.
    """
    left = found = None
    for asked in expected(book, answers):
        answer = answers.get(asked.path)
        if answer is None or answer.confirm:
            if asked.path in later:
                left = left or asked
            elif first is None or asked.path.partition(".")[0] == first:
                return asked
            found = found or (asked if asked.path not in later else None)
    return found or left


def previous_question(book: Book, answers: Answers, path: str | None) -> Asked | None:
    """Return the answered question before `path` in the order asked (before the end, when `path` is None)."""
    before = None
    for asked in applying(book, answers):
        if asked.path == path:
            break
        if asked.path in answers:
            before = asked
    return before


def asked_at(book: Book, path: str) -> Asked | None:
    """Return the question a path belongs to, or None when the path names none."""
    place, _, question_id = path.rpartition(".")
    if not place:
        return None
    question = book.by_ref.get(f"{scope_of(place)}.{question_id}")
    return Asked(place, question) if question else None


def path_for(place: str, ref: str) -> str:
    """Return the path of the question `ref` as seen from a place: its own scope, or one around it."""
    scope, _, question_id = ref.partition(".")
    at: str | None = place
    while at is not None and scope_of(at) != scope:
        at = outer_place(at)
    assert at is not None, f"{ref} cannot be seen from {place}"
    return path_of(at, question_id)


def fact_at(answers: Answers, place: str, ref: str, applies: Set[str]) -> Fact:
    """Return what a condition at `place` sees of `ref`: a derived fact, or an answer whose own question applies.

    A parked answer is not seen, so that what hung from it is parked with it.
    """
    if ref == "wall.left_joined":
        return "yes" if joined_left(answers, wall_index(place)) else "no"
    if ref == "wall.closes_ring":
        return "yes" if closes_ring(answers, wall_index(place)) else "no"
    if ref == "wall.called_partition":
        return "yes" if _called_partition(answers, wall_index(place)) else "no"
    if ref == "wall.partition":
        return "yes" if is_partition(answers, wall_index(place)) else "no"
    path = path_for(place, ref)
    return fact_of(answers.get(path)) if path in applies else None


def is_partition(answers: Answers, index: int) -> bool:
    """Say whether wall `index` is a plain partition: its name says so, and the person does not say otherwise."""
    if not _called_partition(answers, index):
        return False
    return fact_of(answers.get(path_of(wall_letter(index), "stands"))) != "concrete"


def _called_partition(answers: Answers, index: int) -> bool:
    return index in _called_partitions(_names(answers))


def _names(answers: Answers) -> tuple[object, ...]:
    names = answers.get("basement.walls")
    return names.value if names is not None and isinstance(names.value, tuple) else ()


@lru_cache(maxsize=16)
def _called_partitions(names: tuple[object, ...]) -> frozenset[int]:
    """Return the numbers of the walls whose names say that they are partitions; every question of a wall depends on it."""
    return frozenset(index for index, name in enumerate(names) if "partition" in str(name).casefold())


def against_concrete(answers: Answers) -> tuple[int, ...]:
    """Return the numbers of the walls that are no plain partitions, in the order walked: those that can meet in corners."""
    names = _names(answers)
    walls = range(len(names))
    return tuple(i for i in walls if not is_partition(answers, i)) if _called_partitions(names) else tuple(walls)


def next_wall(answers: Answers, index: int, step: int = 1) -> int | None:
    """Return the number of the wall that follows wall `index` round the room, or with -1 comes before it; None without one.

    Plain partitions are passed over. The last is followed by the first where they close a ring.
    """
    walls = against_concrete(answers)
    if index not in walls:
        return None
    at = walls.index(index) + step
    if 0 <= at < len(walls):
        return walls[at]
    return walls[at % len(walls)] if closes_ring(answers, walls[-1]) else None


def closes_ring(answers: Answers, index: int) -> bool:
    """Say whether wall `index` is the last of a ring: the person said that it meets the first wall."""
    walls = against_concrete(answers)
    return walls[-1:] == (index,) and len(walls) >= FEWEST_IN_RING and fact_of(answers.get("basement.ring")) in CLOSINGS


def joined_right(answers: Answers, index: int) -> bool:
    """Say whether the right end of wall `index` is a corner with the next wall of this job."""
    if closes_ring(answers, index):
        return True
    met = fact_of(answers.get(path_of(wall_letter(index), "right")))
    return met in CORNERS and next_wall(answers, index) is not None


def corner_right(answers: Answers, index: int) -> str | None:
    """Return how wall `index` meets the next wall of this job at its right end, or None where it meets none."""
    if not joined_right(answers, index):
        return None
    closes = closes_ring(answers, index)
    said = fact_of(answers.get("basement.ring" if closes else path_of(wall_letter(index), "right")))
    return CLOSINGS[str(said)] if closes else str(said)


def joined_left(answers: Answers, index: int) -> bool:
    """Say whether the left end of wall `index` is a corner with the wall before it in this job."""
    before = next_wall(answers, index, -1)
    return before is not None and joined_right(answers, before)


@dataclass(frozen=True, slots=True)
class Effect:
    """What one new answer does to the others, by path, in the order asked."""

    parked: tuple[str, ...]
    """Answers that no longer apply; they are kept, and come back if they apply again."""
    back: tuple[str, ...]
    """Parked answers that apply again."""
    confirm: tuple[str, ...]
    """Answers that hang from the changed one: asked again, with the old value offered."""

    @property
    def touches(self) -> bool:
        """Whether anything besides the changed answer is touched."""
        return bool(self.parked or self.back or self.confirm)


def with_answer(book: Book, answers: Answers, path: str, answer: Answer) -> tuple[dict[str, Answer], Effect]:
    """Return the answers after giving `path` this answer, and what that does to the others.

    The first answer to a question touches nothing by itself; only a changed value puts hanging answers in doubt.
    """
    before = [asked.path for asked in applying(book, answers)]
    new = {**answers, path: answer}
    after = list(applying(book, new))
    before_paths, after_paths = set(before), {asked.path for asked in after}
    old = answers.get(path)
    changed = old is not None and old.value != answer.value
    hanging = [
        asked.path
        for asked in after
        if changed and asked.path in answers and _hangs_on(asked, answers[asked.path], path)
    ]
    for each in hanging:
        new[each] = new[each].doubted()
    return new, Effect(
        parked=tuple(p for p in before if p in answers and p not in after_paths),
        back=tuple(a.path for a in after if a.path in answers and a.path not in before_paths),
        confirm=tuple(hanging),
    )


def with_answers(book: Book, answers: Answers, given: Mapping[str, Answer]) -> tuple[dict[str, Answer], Effect]:
    """Return the answers after giving several, and what that does to those that were there before and not given now."""
    new = dict(answers)
    before = {asked.path for asked in applying(book, answers)}
    doubted: list[str] = []
    for path, answer in given.items():
        new, effect = with_answer(book, new, path, answer)
        doubted += [each for each in effect.confirm if each not in given and each not in doubted]
    after = {asked.path for asked in applying(book, new)}
    untouched = [path for path in answers if path not in given]
    return new, Effect(
        parked=tuple(path for path in untouched if path in before and path not in after),
        back=tuple(path for path in untouched if path in after and path not in before),
        confirm=tuple(doubted),
    )


def _hangs_on(asked: Asked, answer: Answer, path: str) -> bool:
    return path in answer.leans or any(path_for(asked.place, ref) == path for ref in asked.question.hangs_on)


def scope_chain(scope: str) -> Iterator[str]:
    """Yield a scope and the scopes around it."""
    at: str | None = scope
    while at is not None:
        yield at
        at = OUTER[at]
