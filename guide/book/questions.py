"""What a question is, and the book that holds them in the order they are asked.

A question belongs to a scope: the basement, a wall, or something on a wall (an opening, a pipe, an electrical box,
something that will hang there).
A question that counts or names things opens their scope: its answer says how many there are, and their questions are
asked right after it, one thing after the other.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property, lru_cache
from importlib.resources import files
from typing import Literal

from pydantic import BaseModel, ConfigDict, ValidationError, model_validator

from guide.book.conditions import Condition
from guide.lengths import Length, Unreadable, inches

Kind = Literal["length", "readings", "choice", "count", "names", "date", "text"]
"""What an answer is: one length; several readings with their places; one of the choices; how many; names; a day; free
words."""

OUTER = {"basement": None, "wall": "basement", "opening": "wall", "pipe": "wall", "box": "wall", "fixture": "wall"}
"""Every scope, and the scope it stands in."""

Scope = Literal["basement", "wall", "opening", "pipe", "box", "fixture"]

DERIVED = dict.fromkeys(
    ("wall.left_joined", "wall.closes_ring", "wall.called_partition", "wall.partition"), ("yes", "no")
)
"""Facts that conditions may test though nobody is asked: the left end is a corner with the wall before it in this job;
the wall is the last of a ring, so that its right end meets the first wall; its name says that it is a partition; it is one."""


class BookError(ValueError):
    """The question book, or other data, is not as it should be; the message names the file and the place."""


class _Data(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid")


class Choice(_Data):
    """One answer that can be picked."""

    id: str
    """What is stored and written in files: plain words."""
    say: str
    """What the person reads."""
    words: tuple[str, ...] = ()
    """Other words that mean it."""
    careful: bool = False
    """It lifts a warning: it is taken only where it is said outright, never out of a sentence in passing."""


class Doubt(_Data):
    """When an answer in range is still suspicious; it is accepted only after confirming."""

    above: str | None = None
    below: str | None = None
    spread: str | None = None
    """Readings further apart than this."""
    is_: str | int | None = None
    say: str
    """Why it is suspicious, as said to the person."""

    @model_validator(mode="before")
    @classmethod
    def _is(cls, data: dict[str, object]) -> dict[str, object]:
        return {("is_" if key == "is" else key): value for key, value in data.items()}


class Unknown(_Data):
    """What “don't know” does."""

    say: str
    """What happens then, as said to the person."""
    take: str | None = None
    """The answer taken in its place; without it the answer stays empty."""
    settled: bool = False
    """The answer taken is right whatever the truth (the stricter way): it does not count as a guess."""


class Question(_Data):
    """One question of the book, in our own plain words."""

    id: str
    scope: Scope
    short: str
    """What it is about, in a few words: how it is named in read-backs and on the papers."""
    ask: str
    why: str
    how: str
    of_partition: dict[Literal["ask", "why", "how"], str] = {}
    """What is said instead where the wall is a plain partition."""
    kind: Kind
    choices: tuple[Choice, ...] = ()
    opens: Scope | None = None
    """The scope whose things this question counts or names."""
    counted: tuple[str, ...] = ()
    """For counts: words for what is counted, which may stand after the number."""
    places: tuple[str, ...] = ()
    """For readings: the places, in the order they are usually called out."""
    along: bool = False
    """For readings: a distance from the left corner is a place too. For a length: readings with their places may be given
    in its stead, at any places along the wall."""
    steps: bool = False
    """For readings along a wall: two at one distance are the heights on both sides of a step there."""
    fewest: int = 1
    """For readings: how many are needed. Along a wall, where one will do, each stands for itself; else they begin at the
    left end and end at the right one."""
    takes: Literal["smallest", "largest", "average"] | None = None
    """For a length: which one it is, where a person gives several readings of it."""
    sizes: dict[str, str] = {}
    """For a length: words that mean a size here, such as plumb."""
    place: Literal["left edge", "centre", "left end", "right end", "width"] | None = None
    """For a length: what it says of where a thing is along the wall."""
    labels: tuple[str, ...] = ()
    """Words beside a size, readings or a choice that say it is this one."""
    least: str | None = None
    most: str | None = None
    """Accepted range, both ends included: lengths, or counts as digits."""
    example: str | None = None
    """An answer as it could be given, where none is usual."""
    usual: str | None = None
    """The usual answer: offered, drawn with until answered, never taken for measured."""
    doubts: tuple[Doubt, ...] = ()
    unknown: Unknown
    when: Condition | None = None
    hangs_on: tuple[str, ...] = ()
    """Questions (`scope.id`) whose change puts this answer in doubt."""
    on_request: bool = False
    """A choice that the engine makes well by itself: asked only of a person who wants to make it."""
    first_drawing: bool = False
    """One of the few answers that the first drawing of a wall needs."""

    def __hash__(self) -> int:
        return hash(self.ref)

    @property
    def ref(self) -> str:
        """The name other data uses for this question: `scope.id`."""
        return f"{self.scope}.{self.id}"

    def worded(self, what: Literal["ask", "why", "how"], *, partition: bool) -> str:
        """Return one of its texts, as it is said of a wall against the concrete or of a plain partition."""
        own: str = getattr(self, what)
        return self.of_partition.get(what, own) if partition else own

    def range_of_lengths(self) -> tuple[Length | None, Length | None]:
        """Return the accepted range of a length, either end open."""
        return (inches(self.least) if self.least else None, inches(self.most) if self.most else None)

    @model_validator(mode="after")
    def _fits_its_kind(self) -> Question:
        if (self.kind == "choice") != bool(self.choices):
            raise ValueError(f"question {self.ref}: choices belong to a choice, and a choice needs them")
        if self.opens and self.kind not in ("count", "names"):
            raise ValueError(f"question {self.ref}: only a count or names can open a scope")
        if self.counted and self.kind != "count":
            raise ValueError(f"question {self.ref}: only a count has words for what is counted")
        if (self.kind == "readings" or (self.kind == "length" and self.along)) != bool(self.places):
            raise ValueError(f"question {self.ref}: places belong to readings, and readings need them")
        if (self.takes or self.sizes or self.place) and self.kind != "length":
            raise ValueError(
                f"question {self.ref}: only a length has words for a size, has a place, or takes one of several"
            )
        if self.labels and self.kind not in ("length", "readings", "choice"):
            raise ValueError(f"question {self.ref}: labels belong to a length, to readings or to a choice")
        if self.kind in ("length", "readings"):
            try:
                self.range_of_lengths()
                _ = [inches(text) for text in self.sizes.values()]
                for doubt in self.doubts:
                    _ = [inches(text) for text in (doubt.above, doubt.below, doubt.spread) if text]
            except Unreadable as error:
                raise ValueError(f"question {self.ref}: {error}") from error
        return self


class _Section(_Data):
    """One file of questions."""

    scope: Scope
    question: tuple[dict[str, object], ...]


@dataclass(frozen=True)
class Book:
    """Every question, in the order asked."""

    questions: tuple[Question, ...]

    @cached_property
    def by_ref(self) -> dict[str, Question]:
        """Questions by `scope.id`."""
        return {question.ref: question for question in self.questions}

    @cached_property
    def by_scope(self) -> dict[str, tuple[Question, ...]]:
        """The questions of each scope, in the order asked."""
        return {scope: tuple(q for q in self.questions if q.scope == scope) for scope in OUTER}

    @cached_property
    def opener(self) -> dict[str, Question]:
        """The question that opens each scope."""
        return {question.opens: question for question in self.questions if question.opens}


@lru_cache(maxsize=1)
def load_book() -> Book:
    """Return the book that ships with wallbrief. Raises BookError naming the file when the data is not right."""
    folder = files("prompts_data") / "questions"
    names = sorted(entry.name for entry in folder.iterdir() if entry.name.endswith(".toml"))
    return book_from({name: (folder / name).read_text(encoding="utf-8") for name in names})


def book_from(texts: dict[str, str]) -> Book:
    """Build a book from TOML texts by file name, read in the order given. Raises BookError naming file and question."""
    questions = [question for name, text in texts.items() for question in _read(name, text)]
    return Book(tuple(questions))


def _read(name: str, text: str) -> Iterator[Question]:
    try:
        section = _Section.model_validate(tomllib.loads(text))
    except (tomllib.TOMLDecodeError, ValidationError) as error:
        raise BookError(f"{name}: {error}") from error
    for data in section.question:
        try:
            yield Question.model_validate({"scope": section.scope, **data})
        except ValidationError as error:
            raise BookError(f"{name}, question {data.get('id', '?')}: {error}") from error
