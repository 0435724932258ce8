"""The lines a wall could stand on, priced: each laid out in full, so that what is printed of it is counted and not guessed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from guide.book.questions import Book, load_book
from guide.interview.answers import path_of, scope_of
from guide.interview.asking import asked_at
from guide.layout.engine import lay_out
from guide.layout.offsets import stand_off
from guide.layout.openings import off_the_face
from guide.layout.parts import Layout, Material, WallLayout
from guide.layout.plane import Line, left_open, line_at, on_line
from guide.lengths import ZERO, Length, Tape, as_run, inches
from guide.order.crew import crew_of
from guide.order.evenings import calendar_of
from guide.order.plan import order_of_work
from guide.order.times import in_hours
from guide.reference.figures import load_figures
from guide.reference.sayings import Guessed, say, saying
from guide.sheets.piece import change_said
from guide.sheets.spoken import say_of_talk
from guide.sheets.ticket import LOCKED
from guide.sheets.view import WallView
from guide.survey.model import Basement
from guide.survey.room import thing_name


def way_rows(view: WallView) -> list[tuple[str, ...]]:
    """Return the lines a wall could stand on, the one that is built first; none where there is only one.

    Of each: B, what becomes of doors and pipes, floor taken over the nearest line; for this wall pieces of 2x4, their length
    together, sheets of drywall; for the whole job hours of work alone, and evenings.
    """
    survey, wall = view.plan.survey, view.wall
    figures = load_figures().for_stud(survey.basement.stud)
    board = inches(survey.basement.drywall)
    built = line_at(wall.wall, wall.offsets.back, board, figures)
    free = left_open(wall.wall)
    others = [line for line in stand_off(free, survey.basement, figures).lines if line != built]
    layouts = [view.plan.layout]
    for line in others:
        walls = tuple(on_line(free, line) if each.letter == wall.letter else each for each in survey.walls)
        layouts.append(lay_out(replace(survey, walls=walls), view.plan.code, load_figures()))
    lines = [built, *others]
    nearest = min(line.back for line in lines)
    rows = [_row(view, line, nearest, layout) for line, layout in zip(lines, layouts, strict=True)]
    return rows if others else []


def _row(view: WallView, line: Line, nearest: Length, layout: Layout) -> tuple[str, ...]:
    plan, wall = view.plan, layout.by_letter[view.wall.letter]
    steps = order_of_work(layout)
    wood = [part.cut for part in wall.parts if part.material in (Material.STUD, Material.TREATED)]
    return (
        view.bare(line.back),
        _made_of_things(view.wall, line, plan.survey.basement, plan.guessed),
        _floor(view.wall, line, nearest, plan.tape),
        str(len(wood)),
        LOCKED if any(map(plan.guessed, wood)) else as_run(sum(wood, ZERO), plan.tape),
        str(WallView(plan, wall).drywall_sheets),
        in_hours(sum(step.alone for step in steps)),
        str(len(calendar_of(steps, crew_of(plan.survey.basement, steps)).evenings)),
    )


def way_typed(view: WallView) -> str:
    """Return the words by which the person decides otherwise: a question for each door and pipe."""
    built = line_at(view.wall.wall, view.wall.offsets.back, inches(view.plan.survey.basement.drywall), load_figures())
    return _typed(load_book(), built)


def way_lines(book: Book, layout: Layout, letter: str, guessed: Guessed) -> Iterator[str]:
    """Yield what is said in the talk of the lines a wall could stand on; nothing where there is only one."""
    wall, basement = layout.by_letter[letter], layout.survey.basement
    lines = stand_off(wall.wall, basement, load_figures()).lines
    if len(lines) > 1:
        nearest = min(line.back for line in lines)
        taken, *others = (
            say_of_talk(
                "line",
                things=_made_of_things(wall, line, basement, guessed),
                floor=_floor(wall, line, nearest, basement.tape),
            )
            for line in lines
        )
        yield say_of_talk("lines", wall=letter, taken=taken, others=" ".join(others), typed=_typed(book, lines[0]))


def _typed(book: Book, line: Line) -> str:
    paths = (path_of(place, "way" if scope_of(place) == "pipe" else "meets") for place, _ in line.met)
    return "; ".join(change_said(asked) for path in paths if (asked := asked_at(book, path)))


def _made_of_things(wall: WallLayout, line: Line, basement: Basement, guessed: Guessed) -> str:
    """Say what a line makes of doors and pipes."""
    face = line.back + wall.offsets.deep + inches(basement.drywall)
    doors = {opening.place: opening for opening in wall.wall.openings}
    said = []
    for place, way in line.met:
        gap = off_the_face(doors[place], face) if place in doors else ZERO
        back = "_back" if way == "frame" and gap < ZERO else ""
        key = f"line.{way.replace(' ', '_')}{back}"
        said.append(say(saying(key, what=thing_name(place), gap=abs(gap)), basement.tape, guessed))
    return "; ".join(said)


def _floor(wall: WallLayout, line: Line, nearest: Length, tape: Tape) -> str:
    """Say how much floor a line takes over the nearest one."""
    taken = (line.back - nearest).inch * wall.wall.length.inch
    return say(saying("line.floor", floor=taken), tape) if taken else say(saying("line.no_floor"))
