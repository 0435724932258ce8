"""From answers to the Survey: each field gets the answer to its own question, its usual answer while there is none."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, fields, replace
from itertools import pairwise
from typing import Any, TypeVar, cast

from guide.book.questions import Book, Question
from guide.interview.answers import (
    Answer,
    Answers,
    Certainty,
    Spot,
    bare_of,
    count_of,
    item_place,
    path_of,
    scope_of,
    tape_of,
    wall_letter,
)
from guide.interview.asking import applying, corner_right, joined_right, next_wall
from guide.interview.values import read_value
from guide.lengths import ZERO, Length, Tape, exact_inches, least, with_unit
from guide.reference.codes import CODE_OF_TAPE, DEFAULT_ELECTRICAL, CodeProfile, load_code
from guide.reference.figures import load_figures
from guide.reference.office import Office, with_office
from guide.survey.joists import not_read, read_joists
from guide.survey.model import Basement, Survey, Wall
from guide.survey.profile import STEP, Profile
from guide.survey.room import problems_of
from guide.survey.things import Fixture, Opening, OutletBox, Pipe

Filled = TypeVar("Filled", Basement, Wall, Opening, Pipe, OutletBox, Fixture)

_ITEMS: dict[str, type[Opening] | type[Pipe] | type[OutletBox] | type[Fixture]] = {
    "opening": Opening, "pipe": Pipe, "box": OutletBox, "fixture": Fixture,
}  # fmt: skip


def survey_from(book: Book, answers: Answers) -> Survey:
    """Return the survey for the answers given so far.

    A question that is not answered, or was answered “don't know”, gives its usual value, which rests on an answer that
    nobody measured. A question that does not apply gives None. Walls without a length are left out and listed.
    """
    reader = _Reader(book, answers)
    walls, waiting = [], []
    for index in range(count_of(answers.get("basement.walls"))):
        letter = wall_letter(index)
        length = answers.get(path_of(letter, "length"))
        if length is None or length.value is None:
            waiting.append(letter)
        else:
            walls.append(reader.wall(index))
    basement = reader.fill(Basement, "basement")
    survey = Survey(basement, tuple(walls), tuple(waiting), reader.known, reader.names, ())
    return replace(survey, problems=problems_of(survey))


def code_of(survey: Survey, office: Office | None = None) -> CodeProfile:
    """Return the figures of the code a basement is built by; the office's own words win."""
    basement = survey.basement
    profile = load_code(basement.code or CODE_OF_TAPE[basement.tape], basement.electrical or DEFAULT_ELECTRICAL)
    return with_office(profile, office)


@dataclass
class _Reader:
    """Collects, while the values are filled in, how certain each is and what it is called."""

    book: Book
    answers: Answers
    known: dict[str, Certainty] = field(default_factory=dict)
    names: dict[str, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.applies = {asked.path for asked in applying(self.book, self.answers)}
        self.tape: Tape = tape_of(self.answers)

    def fill(self, cls: type[Filled], place: str, length: Length | None = None, /, **given: Any) -> Filled:
        """Make a value of the survey, each `asked` field from its question; `length` places readings along a wall."""
        asked = {f.name: self.value(place, f.metadata["ref"], length) for f in fields(cls) if "ref" in f.metadata}
        return cls(**given, **asked)

    def wall(self, index: int) -> Wall:
        """Return one wall with everything on it."""
        letter = wall_letter(index)
        names = cast(tuple[str, ...], self.answers["basement.walls"].value)
        before, after = next_wall(self.answers, index, -1), next_wall(self.answers, index)
        openings = [self.fill(Opening, p, place=p) for p in self._items(letter, "openings", "opening")]
        length = self.value(letter, "wall.length")
        wall = self.fill(
            Wall,
            letter,
            length,
            letter=letter,
            name=names[index],
            left_joined=wall_letter(before) if before is not None and joined_right(self.answers, before) else None,
            right_joined=wall_letter(after) if after is not None and joined_right(self.answers, index) else None,
            left_corner=corner_right(self.answers, before) if before is not None else None,
            right_corner=corner_right(self.answers, index),
            openings=tuple(each for each in openings if each.kind != "partition"),
            partitions=tuple(each for each in openings if each.kind == "partition"),
            pipes=tuple(self.fill(Pipe, p, length, place=p) for p in self._items(letter, "pipes", "pipe")),
            boxes=tuple(self.fill(OutletBox, p, place=p) for p in self._items(letter, "boxes", "box")),
            fixtures=tuple(self.fill(Fixture, p, place=p) for p in self._items(letter, "fixtures", "fixture")),
        )
        if wall.is_partition:
            wall = replace(wall, concrete=wall.height, string=_FLAT, lean=ZERO, shelf=ZERO)
        wall = wall if wall.concrete else replace(wall, concrete=_under_the_joists(wall))
        return self._with_joists(wall) if wall.joist_edges else wall

    def _with_joists(self, wall: Wall) -> Wall:
        ref = wall.ref("joist_edges")
        self._note(not_read(ref), f"wall {wall.letter}: near edges of joists nobody taped", Certainty.ASSUMED)
        return replace(wall, joists_read=read_joists(wall.joist_edges or "", bare_of(self.answers), ref)[0])

    def _items(self, letter: str, question_id: str, scope: str) -> Iterator[str]:
        path = path_of(letter, question_id)
        if path in self.applies:
            for index in range(count_of(self.answers.get(path))):
                yield item_place(letter, scope, index)

    def value(self, place: str, ref: str, length: Length | None = None) -> Any:
        """Return the answer to a question at a place, as the survey holds it."""
        question = self.book.by_ref[ref]
        path = path_of(place, question.id)
        if path not in self.applies:
            return None
        answer = self.answers.get(path)
        name = self._name(place, question)
        self._note(path, name, _certainty(answer, question))
        value = answer.value if answer is not None else None
        if value is None and question.unknown.take is not None:
            value, _ = read_value(question, question.unknown.take, "in")
        if isinstance(value, Length):
            size = value.on(path, *(answer.leans if answer is not None else ()))
            return Profile(((ZERO, size),)) if question.along else size
        if question.places and value is not None:
            return self._readings(question, path, name, cast(tuple[Spot, ...], value), length)
        return value

    def _readings(
        self, question: Question, path: str, name: str, spots: tuple[Spot, ...], length: Length | None
    ) -> Length | Profile:
        certainty = self.known[path]
        placed = {"left": Length(0), "middle": length // 2, "right": length} if length is not None else {}
        points = []
        for spot in spots:
            place = exact_inches(spot.at) if isinstance(spot.at, Length) else spot.at
            said = with_unit(spot.at, self.tape) if isinstance(spot.at, Length) else spot.at
            rest = f"{path}@{place}"
            self._note(rest, f"{name} at {said}", spot.known if certainty is Certainty.MEASURED else certainty)
            at = spot.at if isinstance(spot.at, Length) else placed.get(spot.at, ZERO)
            points.append((at, spot.size.on(rest)))
        if question.along:
            points.sort(key=lambda point: point[0])
            return Profile(tuple(_stepped(points, length) if question.steps and length else points))
        return least(*(size for _, size in points))

    def _name(self, place: str, question: Question) -> str:
        if place == "basement":
            return question.short
        letter, _, item = place.partition(".")
        if not item:
            return f"wall {letter}: {question.short}"
        kind = scope_of(place)
        return f"wall {letter}, {kind} {item.removeprefix(kind)}: {question.short}"

    def _note(self, rest: str, name: str, certainty: Certainty) -> None:
        self.known[rest] = certainty
        self.names[rest] = name


def _certainty(answer: Answer | None, question: Question) -> Certainty:
    """An answer in doubt counts as assumed until it is confirmed; one not given yet is unknown, but for a choice left to us."""
    if answer is None:
        return Certainty.MEASURED if question.on_request else Certainty.UNKNOWN
    if answer.confirm and answer.known is Certainty.MEASURED:
        return Certainty.ASSUMED
    return answer.known


def _stepped(points: list[tuple[Length, Length]], length: Length) -> list[tuple[Length, Length]]:
    """Part two readings at one place by a tick: the high one stays there, the low one is that much to its own side.

    Which stands on the left is told by the readings beside them. At an end of the wall nothing steps.
    """
    found = list(points)
    for n, ((x, one), (other_x, other)) in enumerate(pairwise(points)):
        if x != other_x or one == other or not ZERO < x < length:
            continue
        left, right = points[n - 1][1] if n else one, points[n + 2][1] if n + 2 < len(points) else other
        if abs(left - one) + abs(other - right) > abs(left - other) + abs(one - right):
            one, other = other, one
        down, x = one > other, x.with_rests(one.rests | other.rests)
        found[n : n + 2] = [(x if down else x - STEP, one), (x + STEP if down else x, other)]
    return found


_FLAT = Profile(((ZERO, load_figures().string_block),))
"""A string that touches nothing: behind a partition there is no concrete to stand off from."""


def _under_the_joists(wall: Wall) -> Profile:
    """Return where the top of the concrete is drawn while nobody has read it: one sill under the joists."""
    drop = load_figures().sill
    return Profile(tuple((x, (value - drop).on(wall.ref("concrete"))) for x, value in wall.height.points))


def refs_read() -> set[str]:
    """Return every question the survey reads, for the proof that each is asked and each answer is read."""
    return {f.metadata["ref"] for cls in (Basement, Wall, *_ITEMS.values()) for f in fields(cls) if "ref" in f.metadata}
