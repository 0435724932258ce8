"""The drawings of a plan, each under its name and with its text, so that every paper shows the same ones."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from guide.drawing.elevation import elevation
from guide.drawing.floor_plan import floor_plan
from guide.drawing.section import section
from guide.drawing.shapes import Drawing
from guide.drawing.svg import svg
from guide.drawing.text import render
from guide.layout.parts import WallLayout
from guide.sheets.markdown import COLUMNS
from guide.sheets.plan import Plan


@dataclass(frozen=True, slots=True)
class Picture:
    """One drawing."""

    name: str
    """Its file name without an ending, such as `wall-A-elevation`."""
    drawing: Drawing
    text: str
    """As it stands in the Markdown."""


def pictures(plan: Plan) -> tuple[Picture, ...]:
    """Return every drawing of a plan: the walls from above, and each wall from the room and cut through."""
    drawn = [("floor-plan", floor_plan(plan.layout))] if plan.layout.walls else []
    drawn += [each for wall in plan.layout.walls for each in _of_wall(wall)]
    return tuple(Picture(name, of, render(of, columns=COLUMNS, tape=plan.tape)) for name, of in drawn)


def _of_wall(wall: WallLayout) -> Iterator[tuple[str, Drawing]]:
    yield f"wall-{wall.letter}-elevation", elevation(wall)
    yield f"wall-{wall.letter}-section", section(wall)


def in_ink(plan: Plan, picture: Picture) -> str:
    """Return a drawing as SVG; what rests on anything nobody measured reads `locked` there."""
    return svg(picture.drawing, name=picture.name, tape=plan.tape, locked=plan.guessed)
