"""The lines a wall could stand on, priced: each laid out in full, so that what is printed of it is counted and not guessed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from guide.book.questions import Book, load_book
from guide.interview.answers import path_of, scope_of
from guide.interview.asking import asked_at
from guide.layout.engine import lay_out
from guide.layout.offsets import Standing, stand_off
from guide.layout.openings import off_the_face
from guide.layout.parts import FULL_HEIGHT, LUMBER, Kind, Layout, WallLayout
from guide.layout.pipes import box_along
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
from guide.survey.model import Basement, Wall
from guide.survey.room import thing_name


def way_rows(view: WallView) -> list[tuple[str, ...]]:
    """Return the lines a wall could stand on, the one that is built first; none where there is only one.

    Of each: B, what becomes of doors and pipes, floor taken over the nearest line; for this wall pieces of 2x4, their length
    together, sheets of drywall; for the whole job hours of work alone, and evenings.
    """
    survey, letter = view.plan.survey, view.wall.letter
    choices = _choices(view.wall.wall, survey.basement)
    nearest = min(line.back for line, _ in choices)
    rows = []
    for line, told in choices if len(choices) > 1 else ():
        walls = tuple(told if each.letter == letter else each for each in survey.walls)
        built = told is view.wall.wall
        layout = view.plan.layout if built else lay_out(replace(survey, walls=walls), view.plan.code, load_figures())
        rows.append(_row(view, line, nearest, layout))
    return rows


def _choices(wall: Wall, basement: Basement) -> list[tuple[Line, Wall]]:
    """Return every line a wall could stand on, beside the wall as it would be told for it; the one that is built first."""
    figures, board = load_figures().for_stud(basement.stud), inches(basement.drywall)
    standing = stand_off(wall, basement, figures)
    found = [(_with_lying(line_at(wall, standing.offsets.back, board, figures), standing), wall)]
    free = left_open(wall)
    for told in (free, *_passed_otherwise(free)):
        standing = stand_off(told, basement, figures)
        for line in standing.lines:
            whole = _with_lying(line, standing)
            if all(whole != known for known, _ in found):
                found.append((whole, on_line(told, line)))
    return found


def _passed_otherwise(wall: Wall) -> Iterator[Wall]:
    """Yield a wall with one pipe along it told to be notched for, boxed or moved out for; where it cannot, nothing comes of it."""
    for pipe in wall.pipes:
        for way in ("notches", "box", "move the wall") if pipe.run == "lying" else ():
            pipes = tuple(replace(each, along=way) if each is pipe else each for each in wall.pipes)
            yield replace(wall, pipes=pipes)


def _with_lying(line: Line, standing: Standing) -> Line:
    """Return a line with what becomes of the pipes along the wall before what becomes of all others."""
    words = {"behind": "move the wall"}
    lying = ((pipe.place, words.get(way, way)) for pipe, way in standing.passed)
    return replace(line, met=(*lying, *line.met))


def _row(view: WallView, line: Line, nearest: Length, layout: Layout) -> tuple[str, ...]:
    plan, wall = view.plan, layout.by_letter[view.wall.letter]
    steps = order_of_work(layout)
    notched = sum(bool(part.notches) for part in wall.of(*FULL_HEIGHT, Kind.TRIMMER, Kind.CRIPPLE))
    wood = [part.cut for part in wall.parts if part.material in LUMBER]
    return (
        view.bare(line.back),
        _made_of_things(view.wall, line, plan.survey.basement, plan.guessed),
        _floor(view.wall, line, nearest, plan.tape),
        say(saying("line.pieces_notched", count=len(wood), notched=notched)) if notched else str(len(wood)),
        LOCKED if any(map(plan.guessed, wood)) else as_run(sum(wood, ZERO), plan.tape),
        str(WallView(plan, wall).drywall_sheets),
        in_hours(sum(step.alone for step in steps)),
        str(len(calendar_of(steps, crew_of(plan.survey.basement, steps)).evenings)),
    )


def way_typed(view: WallView) -> str:
    """Return the words by which the person decides otherwise: a question for each door and pipe."""
    return _typed(load_book(), view.wall.wall, view.plan.survey.basement)


def way_lines(book: Book, layout: Layout, letter: str, guessed: Guessed) -> Iterator[str]:
    """Yield what is said in the talk of the lines a wall could stand on; nothing where there is only one."""
    wall, basement = layout.by_letter[letter], layout.survey.basement
    lines = [line for line, _ in _choices(wall.wall, basement)]
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
        typed = _typed(book, wall.wall, basement)
        yield say_of_talk("lines", wall=letter, taken=taken, others=" ".join(others), typed=typed)


def _typed(book: Book, wall: Wall, basement: Basement) -> str:
    """Return the words that lead to the question of each thing that the lines of a wall differ in."""
    ways = [dict(line.met) for line, _ in _choices(wall, basement)]
    differ = [place for place in ways[0] if len({each.get(place) for each in ways}) > 1]
    lying = {pipe.place for pipe in wall.pipes if pipe.run == "lying"}
    asks = {place: "along" if place in lying else "way" if scope_of(place) == "pipe" else "meets" for place in differ}
    found = (asked_at(book, path_of(place, question)) for place, question in asks.items())
    return "; ".join(change_said(asked) for asked in found if asked is not None)


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
    """Say how much floor a line takes over the nearest one, boxes along the wall included."""
    taken = (line.back - nearest).inch * wall.wall.length.inch
    boxed = {place for place, way in line.met if way == "box"}
    for pipe in wall.wall.pipes:
        if pipe.run == "lying" and pipe.place in boxed:
            ends = wall.left.face, wall.wall.length - wall.right.face
            long, deep = box_along(pipe, ends, line.back + wall.offsets.deep, load_figures())
            taken += long.inch * deep.inch
    return say(saying("line.floor", floor=taken), tape) if taken else say(saying("line.no_floor"))
