"""Where a thing is along a wall, as people say it: from the right, after the door, in the middle.

What is said from somewhere else is turned into the distance from the left corner that the question asks for, and leans on
the answers it was worked out from: when one of them changes, it is asked again. An edge that was not said is asked for.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from guide.book.questions import Book, Question
from guide.book.talk import load_talk
from guide.interview.answers import Answer, Answers, Certainty, Spot, count_of, fact_of, item_place, path_of, scope_of
from guide.interview.replies import read_size, sorry
from guide.interview.several import may_apply
from guide.lengths import Bare, Length, Unreadable, as_written, least, read_length

_ENDS = {"left": r"(?:in\s+|off\s+)?(?:from|of)\s+(?:the\s+)?(?:left(?:[-\s]hand)?(?:\s+(?:end|corner|side|wall))?|corner)",
         "right": r"(?:in\s+|off\s+)?from\s+(?:the\s+)?right(?:[-\s]hand)?(?:\s+(?:end|corner|side|wall))?"}  # fmt: skip
_AFTER = r"(?:after|past|beyond|(?:to\s+the\s+)?right\s+of)"
_BEFORE = r"(?:before|short\s+of|(?:to\s+the\s+)?left\s+of)"
_EDGE = (
    r"(?:to\s+)?(?:its\s+|the\s+)?(?P<edge>left\s+edge|right\s+edge|cent(?:re|er)|middle)\b(?:\s+(?:is\s+)?(?:at\s+)?)?"
)
_POINT_OF = re.compile(
    r"^(?:the |its )?(?:(?P<side>left|right) (?:edge|side|end)|cent(?:re|er)) of |(?:'s)? (?:(?P<own>left|right) (?:edge|side|end)|cent(?:re|er))$"
)
"""A point of a thing that a distance is said from: its centre, or one of its edges."""
_MIDDLE = re.compile(
    r"(?:dead |right |exactly )?(?:in the |the )?(?:middle|centred|centered|cent(?:re|er)|half ?way(?: along)?)(?: of the wall)?"
)


@dataclass(frozen=True, slots=True)
class Thing:
    """Something on a wall with what is known of it: where its edges and its middle are, and which answers say so."""

    place: str
    words: frozenset[str]
    """Words it may be called by."""
    left: Length | None
    right: Length | None
    leans: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Point:
    """A point on a wall, from the left corner."""

    at: Length
    known: Certainty
    leans: tuple[str, ...] = ()
    edge: str | None = None
    """Which edge of the thing it is, as far as was said."""
    open: bool = False
    """It could be either edge, and the person has to say which."""


def place_said(book: Book, answers: Answers, place: str, question: Question, text: str, bare: Bare) -> Answer | None:
    """Read a place along the wall that is said from somewhere else; None when it is not said so. Raises Sorry with one sentence."""
    if question.place in (None, "width"):
        return None
    plain = load_talk().folded(text)
    plain, edge = (plain, None) if _MIDDLE.fullmatch(plain) else _edge_said(plain)
    point = _from_an_end(answers, place, plain, bare) or _from_a_thing(book, answers, place, plain, bare)
    if point is None and _MIDDLE.fullmatch(plain):
        point = _middle(answers, place)
    if point is None and edge is not None and (read := _size(plain, bare)):
        point = _Point(*read)
    if point is None:
        return None
    if point.open and edge is None and question.place == "left edge":
        raise sorry("which_edge", typed=text)
    point = _moved(book, answers, place, question, replace(point, edge=edge or point.edge))
    size, _ = read_size(question, as_written(point.at), bare)  # the range holds for what was worked out
    return Answer(size, point.known, text, leans=point.leans)


def _edge_said(plain: str) -> tuple[str, str | None]:
    """Return a reply without the edge that it names, and the edge."""
    if found := re.match(rf"{_EDGE}(?=\S)", plain) or re.search(rf"(?<!'s)\s+{_EDGE}$", plain):
        return (plain[: found.start()] + plain[found.end() :]).strip(), re.sub("center|middle", "centre", found["edge"])
    return plain, None


def _moved(book: Book, answers: Answers, place: str, question: Question, point: _Point) -> _Point:
    """Move a point from the edge that was said to the one that the question asks for."""
    if point.edge in (None, question.place):
        return point
    if question.place not in ("left edge", "centre"):
        raise sorry("which_edge", typed=point.edge)
    width = _width(book, answers, place)
    if width is None:
        raise sorry("edge_needs_width", edge=point.edge, wanted=question.place)
    size, path = width
    shift = {"left edge": size * 0, "centre": size // 2, "right edge": size}
    moved = point.at - shift[str(point.edge)] + shift[question.place]
    return replace(point, at=moved, leans=(*point.leans, path))


def _width(book: Book, answers: Answers, place: str) -> tuple[Length, str] | None:
    questions = book.by_scope[scope_of(place)]
    facts = {q.id: fact_of(answers.get(path_of(place, q.id))) for q in questions}
    for question in questions:
        path = path_of(place, question.id)
        answer = answers.get(path) if may_apply(question, facts) else None
        if question.place == "width" and answer is not None and isinstance(answer.value, Length):
            return answer.value, path
    return None


def wall_length(answers: Answers, place: str) -> Length | None:
    """Return the length of the wall at or around a place: the shortest of its readings, or None before it is known."""
    answer = answers.get(path_of(place.partition(".")[0], "length"))
    if answer is None or not isinstance(answer.value, tuple):
        return None
    sizes = [spot.size for spot in answer.value if isinstance(spot, Spot)]
    return least(*sizes) if sizes else None


def from_the_left(typed: str, length: Length | None, bare: Bare) -> str:
    """Return readings with each place that is said from the right end said from the left one; as it came without a length."""

    def turned(found: re.Match[str]) -> str:
        read = _size(found["size"], bare)
        return found[0] if read is None or length is None else f"at {as_written(length - read[0])}"

    return re.sub(rf"(?:\bat|@)\s+(?P<size>[^,;@]+?)\s+{_ENDS['right']}", turned, typed, flags=re.IGNORECASE)


def _from_an_end(answers: Answers, place: str, plain: str, bare: Bare) -> _Point | None:
    for end, pattern in _ENDS.items():
        found = re.fullmatch(rf"(?P<size>.+?)\s+{pattern}", plain) or re.fullmatch(
            rf"{pattern}[:,]?\s+(?P<size>.+)", plain
        )
        read = _size(found["size"], bare) if found is not None else None
        if read is not None:
            if end == "left":
                return _Point(*read)
            length, path = _known_length(answers, place, plain)
            return _Point(length - read[0], read[1], (path,), open=True)
    return None


def _middle(answers: Answers, place: str) -> _Point:
    length, path = _known_length(answers, place, "the middle")
    return _Point(length // 2, Certainty.MEASURED, (path,), "centre")


def _known_length(answers: Answers, place: str, typed: str) -> tuple[Length, str]:
    length = wall_length(answers, place)
    if length is None:
        raise sorry("no_length_yet", typed=typed)
    return length, path_of(place.partition(".")[0], "length")


def _from_a_thing(book: Book, answers: Answers, place: str, plain: str, bare: Bare) -> _Point | None:
    found = re.fullmatch(rf"(?P<size>.+?)\s+(?:(?P<after>{_AFTER})|{_BEFORE})\s+(?P<thing>.+)", plain)
    read = _size(found["size"], bare) if found is not None else None
    if found is None or read is None:
        return None
    point_of = _POINT_OF.search(found["thing"])
    name = _POINT_OF.sub("", found["thing"])
    things = [thing for thing in _called(things_on(book, answers, place), name) if thing.place != place]
    if len(things) != 1:
        raise sorry("which_thing", typed=name)
    left, right, leans = things[0].left, things[0].right, things[0].leans
    if left is None or right is None:
        raise sorry("thing_not_placed", typed=name)
    if point_of is not None:
        at = {"left": left, "right": right}
        left = right = at.get(point_of["side"] or point_of["own"] or "", left + (right - left) // 2)
    elif left == right:
        raise sorry("only_its_centre", typed=name)
    meant = right + read[0] if found["after"] else left - read[0]
    return _Point(meant, read[1], leans, open=not found["after"])


def _size(text: str, bare: Bare) -> tuple[Length, Certainty] | None:
    try:
        reading = read_length(re.sub(r"^at\s+", "", text), bare=bare)
    except Unreadable:
        return None
    return reading.length, Certainty.EYEBALLED if reading.about else Certainty.MEASURED


# --------------------------------------------------------------------------------------------- the things on a wall


def things_on(book: Book, answers: Answers, place: str) -> Iterator[Thing]:
    """Yield what is known of the things on the wall around `place`."""
    wall = place.partition(".")[0]
    for opener in book.by_scope["wall"]:
        if opener.opens is None:
            continue
        for index in range(count_of(answers.get(path_of(wall, opener.id)))):
            at = item_place(wall, opener.opens, index)
            yield _thing(book, answers, opener, at)


def _thing(book: Book, answers: Answers, opener: Question, place: str) -> Thing:
    found: dict[str, tuple[Length, str]] = {}
    facts = {q.id: fact_of(answers.get(path_of(place, q.id))) for q in book.by_scope[scope_of(place)]}
    words = {word for word in opener.counted if not _is_a_choice(book, opener, word)}
    for question in book.by_scope[scope_of(place)]:
        path = path_of(place, question.id)
        answer = answers.get(path)
        if not may_apply(question, facts):
            continue
        if answer is not None and isinstance(answer.value, Length) and question.place is not None:
            found.setdefault(question.place, (answer.value, path))
        if any(choice.id in ("yes", "no") for choice in question.choices):
            continue
        for choice in question.choices:
            if answer is not None and answer.value == choice.id:
                words |= {choice.id, *choice.id.split(), *choice.words}
    left, right, leans = _edges(found)
    return Thing(place, frozenset(words), left, right, leans)


def _is_a_choice(book: Book, opener: Question, word: str) -> bool:
    """Say whether a counted word is one kind of the things, as door is, and no name for all of them."""
    assert opener.opens is not None
    single = word.removesuffix("s")
    return any(single in (*c.id.split(), *c.words) for q in book.by_scope[opener.opens] for c in q.choices)


def _edges(found: dict[str, tuple[Length, str]]) -> tuple[Length | None, Length | None, tuple[str, ...]]:
    if "left end" in found and "right end" in found:
        return found["left end"][0], found["right end"][0], (found["left end"][1], found["right end"][1])
    if "left edge" in found and "width" in found:
        left, width = found["left edge"][0], found["width"][0]
        return left, left + width, (found["left edge"][1], found["width"][1])
    if "centre" in found:
        at, path = found["centre"]
        if "width" not in found:
            return at, at, (path,)
        half = found["width"][0] // 2
        return at - half, at + half, (path, found["width"][1])
    return None, None, ()


def _called(things: Iterator[Thing], name: str) -> Iterator[Thing]:
    """Yield the things that a name means: “the door”, “window 2”, “the second pipe”, “the last opening”."""
    plain = re.sub(r"^the\s+", "", name.strip(" ."))
    number = None
    if found := re.fullmatch(r"(?P<word>.+?)\s+(?:number\s+|no\.\s*|#)?(?P<number>\d+)", plain):
        plain, number = found["word"], int(found["number"])
    elif found := re.fullmatch(r"(?P<which>\w+)\s+(?P<word>.+)", plain):
        which = load_talk().ordinals.get(found["which"], -1 if found["which"] == "last" else None)
        plain, number = (found["word"], which) if which is not None else (plain, None)
    meant = [thing for thing in things if plain in thing.words]
    if number is None:
        yield from meant
    elif number == -1:
        yield from meant[-1:]
    else:
        yield from meant[number - 1 : number]
