"""Who runs through at each corner, told: what the other way round would come to, and what could be won over all walls."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from guide.book.questions import Book
from guide.interview.answers import path_of
from guide.interview.asking import asked_at
from guide.layout.corners import Corner
from guide.layout.roles import Roles
from guide.reference.priorities import decided_by
from guide.reference.sayings import Saying, say, saying
from guide.sheets.piece import change_said
from guide.sheets.spoken import say_of_talk
from guide.sheets.view import WallView


def corner_lines(view: WallView) -> list[str]:
    """Return what a wall's page says of its corners with other walls of the job; those as good either way in one line."""
    roles, letter = view.plan.roles, view.wall.letter
    mine = [each for each in zip(roles.corners, roles.other, strict=True) if letter in _walls(each[0]).values()]
    even = [corner for corner, (now, turned) in mine if now == turned]
    lines = [saying("roles.even", at=_at(even))] if even else []
    for corner, (now, turned) in mine:
        if now != turned:
            lines.append(saying("roles.turned", **_walls(corner), decided=decided_by(now, turned)))
    if any(letter in _walls(corner).values() for corner in roles.change):
        lines.append(_better(roles))
    return [say(line) for line in lines]


def role_lines(book: Book, roles: Roles) -> Iterator[str]:
    """Yield what the talk says of it once every wall is done: only what could be won, and the words to have it."""
    if roles.change:
        asked = (asked_at(book, path_of(corner.left_wall, "right_first")) for corner in roles.change)
        typed = "; ".join(change_said(each) for each in asked if each is not None)
        yield say_of_talk("roles", better=say(_better(roles)), typed=typed)


def _walls(corner: Corner) -> dict[str, str]:
    """Name the two walls of a corner, the one that runs through and the other."""
    one, two = corner.left_wall, corner.right_wall
    return {"one": one, "two": two, "through": corner.through, "butt": two if corner.through == one else one}


def _better(roles: Roles) -> Saying:
    """Say which walls would have to run through for the best of all, and what that wins."""
    walls = ", ".join(_walls(corner)["butt"] for corner in roles.change)
    return saying("roles.better", walls=walls, at=_at(roles.change), decided=decided_by(roles.now, roles.best))


def _at(corners: Iterable[Corner]) -> str:
    return ", ".join(f"{corner.left_wall} and {corner.right_wall}" for corner in corners)
