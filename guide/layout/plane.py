"""One finished plane: the lines that a wall's studs could stand on so that its doors and upright pipes meet its face.

It owns one promise: of the lines near enough the one is taken that leaves the fewest boxes and standing jambs out of the
plane, then the fewest door frames to be worked on, then the most floor. What the person decided of a door or a pipe is kept
and not weighed again.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from guide.layout.openings import extended, off_the_face
from guide.layout.pipes import narrow, way_at
from guide.lengths import SIXTEENTH, ZERO, Length
from guide.reference.figures import Figures
from guide.reference.priorities import ranked
from guide.survey.model import Wall
from guide.survey.things import Opening, Pipe

OPEN = (None, "you choose")
"""What stands in the job where the person left a door or a pipe to us."""


@dataclass(frozen=True, slots=True)
class Line:
    """A line the backs of the studs could stand on, and what it makes of each thing that was left open."""

    back: Length
    met: tuple[tuple[str, str], ...]
    """Place and way of each such thing, in the words by which the person could choose it."""
    out: int
    """Boxes in the room, and jambs that stand out beyond the finished face."""
    worked: int
    """Door frames whose jamb does not meet the face."""

    @property
    def rank(self) -> tuple[int, ...]:
        """Lower is better: what breaks the plane, then frames to work on."""
        return ranked({"plane": self.out, "cuts": self.worked})


def lines_of(wall: Wall, nearest: Length, board: Length, figures: Figures) -> tuple[Line, ...]:
    """Return the lines worth taking, the best first: each gains something over every line nearer to the concrete.

    `nearest` is B as foam, humps and what the person decided ask for it; `board` is the thickness of the drywall. A line
    further out than `plane_move_most` is never the first: so much floor is the person's to give.
    """
    wanted = {nearest.ticks: nearest}
    for needed in _needs(wall, board, figures):
        back = needed.up_to(figures.back_step)
        if back > nearest:
            wanted[back.ticks] = back
    worth: list[Line] = []
    for ticks in sorted(wanted):
        line = _line(_stacks(wall), _doors(wall), wanted[ticks], board, figures)
        if not worth or line.rank < min(each.rank for each in worth):
            worth.append(line)
    return tuple(sorted(worth, key=lambda line: (line.back - nearest > figures.plane_move_most, line.rank, line.back)))


def line_at(wall: Wall, back: Length, board: Length, figures: Figures) -> Line:
    """Return what a line makes of every door and upright pipe of a wall, those that the person decided among them."""
    stacks = tuple(pipe for pipe in wall.pipes if pipe.run == "standing" and pipe.at is not None)
    return _line(stacks, tuple(o for o in wall.openings if o.jamb is not None), back, board, figures)


def moves(one: Line, other: Line) -> tuple[str, ...]:
    """Return the places of the things that two lines make something else of."""
    return tuple(place for place, way in one.met if dict(other.met).get(place) != way)


def weighed(wall: Wall) -> frozenset[str]:
    """Return the answers that the line rests on because something was left open."""
    pipes = (pipe.out.rests | pipe.wide.rests | {f"{pipe.place}.run", f"{pipe.place}.way"} for pipe in _stacks(wall))
    doors = (door.jamb.rests | {f"{door.place}.meets"} for door in _doors(wall) if door.jamb)
    return frozenset().union(*pipes, *doors)


def on_line(wall: Wall, line: Line) -> Wall:
    """Return a wall with everything that a line has met decided as the line has it."""
    met = dict(line.met)
    return replace(
        wall,
        pipes=tuple(replace(p, way=met[p.place]) if p.place in met else p for p in wall.pipes),
        openings=tuple(replace(o, meets=met[o.place]) if o.place in met else o for o in wall.openings),
    )


def left_open(wall: Wall) -> Wall:
    """Return a wall as if the person had decided nothing of its doors and pipes."""
    pipes = tuple(replace(pipe, way=None, along=None) for pipe in wall.pipes)
    return replace(wall, pipes=pipes, openings=tuple(replace(opening, meets=None) for opening in wall.openings))


def _stacks(wall: Wall) -> tuple[Pipe, ...]:
    return tuple(p for p in wall.pipes if p.run == "standing" and p.at is not None and p.way in OPEN)


def _doors(wall: Wall) -> tuple[Opening, ...]:
    return tuple(o for o in wall.openings if o.jamb is not None and o.meets in OPEN)


def _needs(wall: Wall, board: Length, figures: Figures) -> list[Length]:
    """Return the backs at which something that was left open begins to be met in another way."""
    needs = []
    for pipe in _stacks(wall):
        needs.append(pipe.out + figures.pipe_behind)
        if narrow(pipe, figures):
            needs.append(pipe.out + figures.pipe_in_bay - figures.stud_deep)
    # a sixteenth off the face is nothing, so that a jamb is met from there on
    return needs + [door.jamb - board - figures.stud_deep - SIXTEENTH for door in _doors(wall) if door.jamb]


def _line(stacks: tuple[Pipe, ...], doors: tuple[Opening, ...], back: Length, board: Length, figures: Figures) -> Line:
    face = back + figures.stud_deep
    met: list[tuple[str, str]] = []
    out = worked = 0
    ways = {"behind": "move the wall", "bay": "bay", "box": "box"}
    for pipe in stacks:
        way = way_at(pipe, back, face, face + board, figures)
        out += way == "box"
        if way in ways:
            met.append((pipe.place, ways[way]))
    for door in doors:
        gap = off_the_face(door, face + board)
        out += gap < ZERO
        worked += gap != ZERO
        met.append((door.place, "wall" if gap == ZERO else "extend" if gap > ZERO and extended(door) else "frame"))
    return Line(back, tuple(met), out, worked)
