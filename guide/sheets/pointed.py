"""Which piece of a wall a person means: by its mark, by its kind and number, by its kind and size."""

from __future__ import annotations

import re

from guide.interview.replies import clean
from guide.layout.parts import Kind, Layout, Part, WallLayout
from guide.lengths import SIXTEENTH, Length, show
from guide.reference.pieces import load_pieces

_SAID = re.compile(
    r"(?:the |piece |part |mark )*(?P<name>.+?)(?: (?P<number>\d[\d /.-]*?))?(?: ?(?:in|inches|mm|\"))?(?: (?:of|on|in) wall (?P<wall>[a-z]+))?"
    r"(?: (?:there|here|needed|for|long|wide|high|so|that|short|narrow|low|big|small))*",
    re.IGNORECASE,
)
"""How a piece is named: a mark, or a kind with its number or its size, and perhaps a wall."""


def pieces_meant(layout: Layout, words: str, here: str) -> tuple[str, ...]:
    """Return the ids of the pieces, or the place of the thing on a wall, that words mean; none when they mean none.

    `here` is the letter of the wall that is talked about. A mark in its own capitals means one piece; in others it may
    mean two, since F is a fireblock and f is foam.
    """
    found = _SAID.fullmatch(words.strip())
    walls = [layout.by_letter[each] for each in _letters(layout, found["wall"] if found else None, here)]
    if found is None or not walls:
        return ()
    number = (found["number"] or "").strip()
    for mark in (found["name"] + number, found["name"]):
        if hits := _marked(walls, mark.replace(" ", "")):
            return hits
    return _named(walls[0], found["name"].lower(), number, layout)


def as_typed(words: str, typed: str) -> str:
    """Return words of a reply in the capitals they were typed in."""
    plain = clean(typed)
    start = plain.lower().replace("’", "'").find(words)
    return plain[start : start + len(words)] if start >= 0 else words


def _letters(layout: Layout, said: str | None, here: str) -> list[str]:
    """Return the walls to look at, the one that is talked about first."""
    wanted = [said.upper()] if said else [here, *layout.by_letter]
    return list(dict.fromkeys(each for each in wanted if each in layout.by_letter))


def _marked(walls: list[WallLayout], mark: str) -> tuple[str, ...]:
    """Return the pieces with this mark: whole, or on the first wall without its letter; capitals count where that helps."""
    whole = [part for wall in walls for part in wall.parts if part.mark.lower() == mark.lower()]
    short = [part for part in walls[0].parts if _short(part).lower() == mark.lower() and not mark.isdecimal()]
    hits = whole or short
    exact = [part for part in hits if mark in (part.mark, _short(part))]
    return tuple(part.id for part in exact or hits)


def _short(part: Part) -> str:
    return part.mark.removeprefix(part.wall)


def _named(wall: WallLayout, name: str, number: str, layout: Layout) -> tuple[str, ...]:
    """Return what a kind with a number or a size means on a wall: the first of its kind where no number is said."""
    name = name.removesuffix("s")
    openings, pipes = wall.wall.openings, wall.wall.pipes
    things = [o.place for o in openings if name == "opening" or name in o.kind.split()]
    things += [p.place for p in pipes if name == "pipe" or name in p.carries.split()]
    if things and number.isdecimal():
        return tuple(things[int(number) - 1 : int(number)])
    kind = next((Kind(each) for each, piece in load_pieces().kind.items() if name in piece.words), None)
    parts = wall.of(kind) if kind is not None else ()
    if number.isdecimal() and 0 < int(number) <= len(parts):
        return (parts[int(number) - 1].id,)
    tape = layout.survey.basement.tape
    sizes = {part.id: {show(each, tape, SIXTEENTH, "down") for each in _sizes(part)} for part in parts}
    sized = [part.id for part in parts if number in sizes[part.id]]
    return tuple(sized[:1] if sized or number.isdecimal() else [part.id for part in parts[:1]])


def _sizes(part: Part) -> tuple[Length, ...]:
    return (part.cut,) if part.wide is None else (part.cut, part.wide)
