"""Drawings as lines of text, for the talk that has no pane beside it."""

from __future__ import annotations

from collections.abc import Set
from typing import TYPE_CHECKING

from guide.book.talk import Command
from guide.interview.answers import wall_letter
from guide.sheets.spoken import say_of_talk

if TYPE_CHECKING:
    from guide.drawing.pointing import Drawn
    from guide.layout.parts import Layout

COLUMNS = 78
"""Columns of a drawing where nobody says how many there are."""


def picture_lines(
    layout: Layout, command: Command, letter: str, columns: int, *, ascii_only: bool = False
) -> tuple[str, ...]:
    """Return the floor plan, or the elevation or section of a wall: the one asked for, else the last that can be drawn."""
    from guide.drawing.elevation import elevation  # no drawing is loaded before somebody wants one
    from guide.drawing.floor_plan import floor_plan
    from guide.drawing.section import section
    from guide.drawing.text import render

    tape = layout.survey.basement.tape
    if not layout.walls:
        return (say_of_talk("nothing_drawn"),)
    if command == "floor":
        return tuple(render(floor_plan(layout), columns=columns, tape=tape, ascii_only=ascii_only).splitlines())
    wall = layout.by_letter.get(letter, layout.walls[-1])
    drawing = section(wall) if command == "section" else elevation(wall)
    return tuple(render(drawing, columns=columns, tape=tape, ascii_only=ascii_only).splitlines())


def drawn_wall(
    layout: Layout, letter: str, view: int, columns: int, starred: Set[str], *, ascii_only: bool = False
) -> Drawn:
    """Return a wall as it is shown beside the talk: the elevation, its section, the floor plan, and round again."""
    from guide.drawing.elevation import elevation
    from guide.drawing.floor_plan import floor_plan
    from guide.drawing.section import section
    from guide.drawing.text import draw

    wall, views = layout.by_letter[letter], (elevation, section, lambda wall: floor_plan(layout))
    drawing = views[view % len(views)](wall)
    return draw(drawing, columns=columns, tape=layout.survey.basement.tape, starred=starred, ascii_only=ascii_only)


def letter_of(index: int | None, here: str) -> str:
    """Return the letter of the wall that a command names, or of the one that is asked about."""
    return wall_letter(index) if index is not None else here
