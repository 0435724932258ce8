"""Joists that were read one by one, where they drift, are doubled or stand unevenly.

Rules only, no guessing: what is no near edge of a joist is handed back, to be said.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from guide.book.talk import load_talk
from guide.interview.readings import parted
from guide.lengths import FOOT, INCH, Bare, Length, Unreadable, between, read_length
from guide.reference.figures import load_figures

_FURTHEST = FOOT * 100
_PLIES = {"double": 2, "doubled": 2, "a pair": 2, "triple": 3, "tripled": 3}
_MANY = rf"(?:is )?\(?(?P<many>{'|'.join(sorted(_PLIES, key=len, reverse=True))})\)?"
_DOTS = re.compile(r"(?:\.{2,}|…|so on(?: to)?\b|up to\b|(?:the )?last(?: one| joist)?(?: is)?\b)[\s:]*")
_WHICH = re.compile(rf"(?:the )?(?P<which>\w+)(?: one| joist)? {_MANY}")
_EDGE = re.compile(rf"(?:at )?(?P<size>.+?)(?:,? {_MANY})?")


@dataclass(frozen=True, slots=True)
class Joist:
    """A joist that runs into a wall, as it was read."""

    edge: Length
    """Where its near edge is, from the left concrete corner."""
    plies: int
    """How many boards it is made of."""


def not_read(ref: str) -> str:
    """Return the id that joists nobody taped rest on besides `ref`, the answer: those beyond the last one, and guesses."""
    return f"{ref}@the others"


def read_joists(text: str, bare: Bare, ref: str) -> tuple[tuple[Joist, ...], tuple[str, ...]]:
    """Return the joists of `14 1/2, 30, 46 1/4 doubled, ... 190`, in the order given, and what names none.

    Dots stand for joists that were not read: as many are put in evenly as the usual distance of the others asks for.
    `the third is doubled` counts those that were read. `bare` is the unit of a number without one, `ref` what each rests
    on. Over a hundred feet is taken for a slip.
    """
    found: list[Joist] = []
    gaps: set[int] = set()
    unread: list[str] = []
    for chunk in parted(text.lower(), bare):
        which = _WHICH.fullmatch(chunk.rstrip("."))
        number = _ordinal(which["which"]) if which else 0
        if which and 1 <= number <= len(found):
            found[number - 1] = replace(found[number - 1], plies=_PLIES[which["many"]])
            continue
        if dots := _DOTS.match(chunk):
            gaps.add(len(found))
            chunk = chunk[dots.end() :]
        joist = _joist(chunk.rstrip(" .…"), bare, ref)
        found += [joist] if joist else []
        unread += [chunk] if chunk and not joist else []
    return tuple(_filled(found, gaps)), tuple(unread)


def apart_of(joists: Sequence[Joist]) -> Length:
    """Return how far joists usually stand apart, near edge to near edge: the lower middle one of all their distances."""
    return _middle([other.edge - one.edge for one, other in pairwise(joists)])


def _middle(apart: list[Length]) -> Length:
    return sorted(apart)[(len(apart) - 1) // 2] if apart else load_figures().joist_apart


def _joist(text: str, bare: Bare, ref: str) -> Joist | None:
    said = _EDGE.fullmatch(text)
    try:
        reading = read_length(said["size"], bare=bare) if said else None
    except Unreadable:
        return None
    if said is None or reading is None or reading.length > _FURTHEST:
        return None
    rests = (ref, not_read(ref)) if reading.about else (ref,)
    return Joist(reading.length.on(*rests), _PLIES.get(said["many"], 1))


def _ordinal(word: str) -> int:
    """Return which one of the list a word means, 0 for none: `4th`, `fourth`."""
    figures = re.fullmatch(r"(\d{1,2})(?:st|nd|rd|th)", word)
    return int(figures[1]) if figures else load_talk().ordinals.get(word, 0)


def _filled(joists: list[Joist], gaps: set[int]) -> Iterator[Joist]:
    """Put in evenly the joists that dots stand for: before the joist of each number in `gaps`."""
    read = [(one, other) for number, (one, other) in enumerate(pairwise(joists), 1) if number not in gaps]
    apart = max(_middle([other.edge - one.edge for one, other in read]), INCH)
    for number, joist in enumerate(joists):
        if number and number in gaps:
            before = joists[number - 1].edge
            bays = (joist.edge - before + apart // 2).ticks // apart.ticks
            for n in range(1, bays):
                yield Joist(between(before, joist.edge, part=INCH * n, whole=INCH * bays), 1)
        yield joist
