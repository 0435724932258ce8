"""The lines a wall could stand on, priced: each laid out in full, so that what is printed of it is counted and not guessed."""

from __future__ import annotations

from collections.abc import Iterator

from guide.book.questions import Book
from guide.interview.answers import path_of, scope_of
from guide.interview.asking import asked_at
from guide.layout.engine import lay_out
from guide.layout.offsets import stand_off
from guide.layout.openings import off_the_face
from guide.layout.parts import Layout, Material, WallLayout
from guide.layout.plane import Line, on_line
from guide.lengths import ZERO, inches
from guide.order.plan import order_of_work
from guide.order.times import in_hours
from guide.reference.figures import load_figures
from guide.reference.sayings import Guessed, say, saying
from guide.sheets.piece import change_said
from guide.sheets.spoken import say_of_talk
from guide.sheets.view import WallView
from guide.survey.model import Survey
from guide.survey.room import thing_name


def way_rows(view: WallView) -> list[tuple[str, ...]]:
    """Return the lines a wall could stand on, the one taken first; none where there is only one.

    Of each: B, what becomes of doors and pipes, floor taken over the nearest line, pieces of 2x4 and sheets of drywall for
    this wall, hours of work alone in the whole job.
    """
    plan, wall = view.plan, view.wall
    lines = _lines(plan.survey, wall)
    rows: list[tuple[str, ...]] = []
    for line in lines if len(lines) > 1 else ():
        layout = lay_out(on_line(plan.survey, wall.letter, line), plan.code, load_figures())
        laid = layout.by_letter[wall.letter]
        rows.append(
            (
                view.bare(line.back),
                _made_of_things(plan.survey, wall, line, plan.guessed),
                _floor(plan.survey, wall, line),
                str(sum(part.material in (Material.STUD, Material.TREATED) for part in laid.parts)),
                str(WallView(plan, laid).drywall_sheets),
                in_hours(sum(step.alone for step in order_of_work(layout))),
            )
        )
    return rows


def way_lines(book: Book, layout: Layout, letter: str, guessed: Guessed) -> Iterator[str]:
    """Yield what is said in the talk of the lines a wall could stand on; nothing where there is only one."""
    survey, wall = layout.survey, layout.by_letter[letter]
    lines = _lines(survey, wall)
    if len(lines) > 1:
        taken, *others = (
            say_of_talk("line", things=_made_of_things(survey, wall, each, guessed), floor=_floor(survey, wall, each))
            for each in lines
        )
        paths = (path_of(place, "way" if scope_of(place) == "pipe" else "meets") for place, _ in lines[0].met)
        typed = "; ".join(change_said(asked) for path in paths if (asked := asked_at(book, path)))
        yield say_of_talk("lines", wall=letter, taken=taken, others=" ".join(others), typed=typed)


def _lines(survey: Survey, wall: WallLayout) -> tuple[Line, ...]:
    return stand_off(wall.wall, survey.basement, load_figures()).lines


def _made_of_things(survey: Survey, wall: WallLayout, line: Line, guessed: Guessed) -> str:
    """Say what a line makes of every door and pipe that was left open."""
    face = line.back + wall.offsets.deep + inches(survey.basement.drywall)
    doors = {opening.place: opening for opening in wall.wall.openings}
    said = []
    for place, way in line.met:
        gap = off_the_face(doors[place], face) if place in doors else ZERO
        back = "_back" if way == "frame" and gap < ZERO else ""
        key = f"line.{way.replace(' ', '_')}{back}"
        said.append(say(saying(key, what=thing_name(place), gap=abs(gap)), survey.basement.tape, guessed))
    return "; ".join(said)


def _floor(survey: Survey, wall: WallLayout, line: Line) -> str:
    """Say how much floor a line takes over the nearest one."""
    nearest = min(each.back for each in _lines(survey, wall))
    taken = (line.back - nearest).inch * wall.wall.length.inch
    return say(saying("line.floor", floor=taken), survey.basement.tape) if taken else say(saying("line.no_floor"))
