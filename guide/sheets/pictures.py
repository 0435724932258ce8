"""The drawings of a plan, each under its name and with its text, so that every paper shows the same ones."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from guide.drawing.corner_plan import corner_plan
from guide.drawing.elevation import elevation
from guide.drawing.floor_plan import floor_plan
from guide.drawing.section import section
from guide.drawing.shapes import Drawing
from guide.drawing.sheets import sheets
from guide.drawing.svg import svg
from guide.drawing.text import render
from guide.interview.asking import CORNERS
from guide.layout.parts import Kind, Layout
from guide.sheets.markdown import COLUMNS
from guide.sheets.plan import Plan


@dataclass(frozen=True, slots=True)
class Picture:
    """One drawing."""

    name: str
    """Its file name without an ending, such as `wall-A-elevation`."""
    walls: tuple[str, ...]
    """The letters of the walls on whose pages it stands."""
    drawing: Drawing
    text: str
    """As it stands in the Markdown."""


def pictures(plan: Plan, *, ascii_only: bool = False) -> tuple[Picture, ...]:
    """Return every drawing of a plan: the walls from above, each wall from the room and cut through, each corner."""
    if not plan.layout.walls:
        return ()
    drawn = [("floor-plan", (), floor_plan(plan.layout)), *_of_walls(plan), *_of_corners(plan.layout)]
    return tuple(
        Picture(
            name,
            on,
            of,
            render(of, columns=COLUMNS, tape=plan.tape, locked=plan.guessed, ascii_only=ascii_only),
        )
        for name, on, of in drawn
    )


_Named = tuple[str, tuple[str, ...], Drawing]


def _of_walls(plan: Plan) -> Iterator[_Named]:
    for wall in plan.layout.walls:
        yield f"wall-{wall.letter}-elevation", (wall.letter,), elevation(wall, plan.outlets)
        yield f"wall-{wall.letter}-section", (wall.letter,), section(wall)
        if wall.of(Kind.DRYWALL):
            yield f"wall-{wall.letter}-sheets", (wall.letter,), sheets(wall)


def _of_corners(layout: Layout) -> Iterator[_Named]:
    """Yield each corner once, in the order walked; where the wall round it is not laid out, as the one wall has it."""
    for wall in layout.walls:
        before = layout.by_letter.get(wall.left.neighbour or "")
        if wall.left.what in CORNERS and before is None:
            yield f"corner-{wall.letter}-left", (wall.letter,), corner_plan(None, wall)
        after = layout.by_letter.get(wall.right.neighbour or "")
        if wall.right.what in CORNERS:
            name = f"corner-{wall.letter}-{after.letter if after else 'right'}"
            yield name, (wall.letter, *([after.letter] if after else [])), corner_plan(wall, after)


def corners_of(drawn: Iterable[Picture], letter: str) -> list[str]:
    """Return the corners of a wall as they stand in the Markdown, the one at its left end first."""
    found = [picture for picture in drawn if letter in picture.walls and picture.name.startswith("corner-")]
    return [picture.text for picture in sorted(found, key=lambda picture: picture.walls[0] == letter)]


def in_ink(plan: Plan, picture: Picture, name: str = "") -> str:
    """Return a drawing as SVG, its ids under a name of its own; what rests on anything nobody measured reads `locked`."""
    return svg(picture.drawing, name=name or picture.name, tape=plan.tape, locked=plan.guessed)
