"""How far the wall stands off the concrete, and what pipes along it do to that."""

from __future__ import annotations

from dataclasses import dataclass

from guide.layout.crooked import swung
from guide.layout.ends import Offsets
from guide.layout.parts import Decision
from guide.layout.pipes import box_along, narrow
from guide.layout.plane import Line, lines_of, moves, weighed
from guide.lengths import SIXTEENTH, ZERO, Length, greatest, inches, least
from guide.reference.figures import Figures
from guide.reference.sayings import saying
from guide.survey.model import Basement, Wall
from guide.survey.room import thing_name
from guide.survey.things import Pipe

FEW_STUDS = 3
"""A pipe that crosses no more studs than this may be let into notches rather than move the whole wall."""


@dataclass(frozen=True)
class Standing:
    """What was decided about a wall's distance from the concrete."""

    offsets: Offsets
    decisions: tuple[Decision, ...]
    passed: tuple[tuple[Pipe, str], ...]
    """Each pipe along the wall and how the studs pass it: `behind`, `notches`, behind with `fittings` in notches, or `box`."""
    lines: tuple[Line, ...]
    """The lines it could stand on, the one taken first; see `guide.layout.plane`."""


def stand_off(wall: Wall, basement: Basement, figures: Figures) -> Standing:
    """Return the offsets of a wall: foam, glue bed and worst hump, rounded up, moved out further for a pipe along it.

    A string reading over its block is a hollow and counts as no hump. A sill that hangs over the room (a shelf below
    nothing) moves the line out to its face. Pipes that move the line are seen to first: the others may then pass behind.
    """
    figures = figures.for_stud(basement.stud)
    if wall.is_partition:
        return _partition(wall, basement, figures)
    hump = _at_least_none(figures.string_block - wall.smallest_string) + wall.lean
    foam_face = basement.foam_thickness + figures.glue_bed
    back = foam_face + hump
    if wall.shelf < ZERO:
        back = greatest(back, -wall.shelf)
    back = back.up_to(figures.back_step)
    turned = swung(wall, foam_face, back, figures)
    decisions = [
        Decision(
            f"{wall.letter}.offset",
            wall.letter,
            saying("decision.offset", foam=basement.foam_thickness, bed=figures.glue_bed, hump=hump, back=back),
            (saying("alternative.bare_foam", foam=basement.foam_thickness), *([turned] if turned else [])),
        )
    ]
    lying = [pipe for pipe in wall.pipes if pipe.run == "lying"]
    longest = inches(f"{basement.longest_stick} ft").on("basement.longest_stick")
    ways = {pipe.place: _lying_pipe(wall, pipe, back, figures, longest) for pipe in lying}
    moved = [pipe for pipe in lying if ways[pipe.place][0] == "shift"]
    moved += [
        pipe for pipe in wall.pipes if pipe.way == "move the wall" or (pipe.way == "bay" and narrow(pipe, figures))
    ]
    board = inches(basement.drywall).on("basement.drywall")
    doors = [
        opening.jamb - board - figures.stud_deep - SIXTEENTH  # so little beyond the face is nothing
        for opening in wall.openings
        if opening.jamb and opening.meets == "wall"
    ]
    back = greatest(back, *(_needed(wall, pipe, figures) for pipe in moved), *doors).up_to(figures.back_step)
    back = back.with_rests(
        frozenset().union(*(pipe.rests for pipe in (*lying, *moved)), *(each.rests for each in doors))
    )
    lines = lines_of(wall, back, board, figures)
    decisions += _plane(wall, back, lines)
    back = lines[0].back.with_rests(back.rests | weighed(wall))
    ways |= {pipe.place: _lying_pipe(wall, pipe, back, figures, longest) for pipe in lying if pipe not in moved}
    face = back + figures.stud_deep
    offsets = Offsets(back, face, face + board, hump, foam_face)
    passed = tuple((pipe, _passed(pipe, ways[pipe.place][0], back, figures)) for pipe in lying)
    return Standing(offsets, (*decisions, *(decision for _, decision in ways.values() if decision)), passed, lines)


def _partition(wall: Wall, basement: Basement, figures: Figures) -> Standing:
    """Return how a partition stands: its studs begin at its back, with nothing behind them but its own drywall."""
    board = inches(basement.drywall).on("basement.drywall")
    zero = Length(0, frozenset({wall.ref("stands")}))
    offsets = Offsets(zero, zero + figures.stud_deep, zero + figures.stud_deep + board, ZERO, ZERO)
    return Standing(
        offsets, (Decision(f"{wall.letter}.stands", wall.letter, saying("decision.partition_stands")),), (), ()
    )


def _passed(pipe: Pipe, way: str, back: Length, figures: Figures) -> str:
    """Say how the studs pass a pipe that was decided on, now that their line is known."""
    if way in ("notches", "box"):
        return way
    return "fittings" if pipe.barrel != pipe.out and pipe.out + figures.notch_clear > back else "behind"


def _needed(wall: Wall, pipe: Pipe, figures: Figures) -> Length:
    """Return where the studs have to begin for a pipe that the wall moves out for.

    Behind the studs a pipe along the wall keeps clear of them with its bare stretches; a stud at a fitting may be notched.
    """
    if pipe.way == "bay":
        return pipe.out + figures.pipe_in_bay - figures.stud_deep
    whole = pipe.out + figures.pipe_behind
    if pipe.barrel == pipe.out or pipe.along == "move the wall" or not _between_the_plates(wall, pipe, figures):
        return whole
    return least(
        whole, greatest(pipe.barrel + figures.pipe_behind, pipe.out + figures.notch_clear - figures.notch_most)
    )


def _plane(wall: Wall, nearest: Length, lines: tuple[Line, ...]) -> list[Decision]:
    """Say for which thing the whole line stands further out than it would have to, where it does."""
    best, *others = lines
    if best.back == nearest:
        return []
    beaten = next(line for line in others if line.back == nearest)
    for_it = moves(best, beaten)
    subject = "line" if any(pipe.place == for_it[0] for pipe in wall.pipes) else "meets"
    shift = best.back - nearest
    what = " and ".join(thing_name(place) for place in for_it)
    said = saying("decision.line_out", what=what, shift=shift, floor=shift.inch * wall.length.inch)
    beat = saying("alternative.line_near", back=nearest, out=beaten.out, worked=beaten.worked)
    return [Decision(f"{for_it[0]}.{subject}", wall.letter, said, (beat,))]


def _lying_pipe(wall: Wall, pipe: Pipe, back: Length, figures: Figures, longest: Length) -> tuple[str, Decision | None]:
    """Decide how a pipe along the wall is passed: behind the studs, in notches, in a box, or by moving the line out.

    A box is for the person to choose; its foot is one stick, and the plates run on over and under the pipe. What is said
    of it is up to the framing, which knows the corners.
    """
    name, what = f"{pipe.place}.way", thing_name(pipe.place)
    shift = (_needed(wall, pipe, figures) - back).up_to(figures.back_step)
    floor = shift.inch * wall.length.inch
    depth = pipe.out + figures.notch_clear - back
    if shift <= ZERO and depth > ZERO:
        said = saying("decision.pipe_fittings", what=what, bare=pipe.barrel, back=back, out=pipe.out, depth=depth)
        far = (pipe.out + figures.pipe_behind - back).up_to(figures.back_step)
        beat = saying("alternative.shift", shift=far, floor=far.inch * wall.length.inch)
        return "behind", Decision(name, wall.letter, said, (beat,))
    if shift <= ZERO:
        said = saying("decision.pipe_behind", what=what, out=pipe.out, back=back)
        return "behind", Decision(name, wall.letter, said)
    crossed = (pipe.right_edge - pipe.left_edge).ticks // figures.stud_spacing.ticks + 1
    few = crossed <= FEW_STUDS and shift > figures.pipe_behind
    wanted = pipe.along == "notches" or (few and pipe.along not in ("move the wall", "box"))
    if wanted and depth <= figures.notch_most and _between_the_plates(wall, pipe, figures):
        said = saying("decision.pipe_notch", what=what, depth=depth, count=crossed)
        return "notches", Decision(name, wall.letter, said, (saying("alternative.shift", shift=shift, floor=floor),))
    long, deep = box_along(pipe, (ZERO, wall.length), back + figures.stud_deep, figures)
    boxable = long <= longest and _between_the_plates(wall, pipe, figures)
    if pipe.along == "box" and boxable:
        return "box", None
    said = saying("decision.pipe_shift", what=what, shift=shift, floor=floor)
    if back + shift < pipe.out + figures.notch_clear:
        said = saying("decision.pipe_shift_fittings", what=what, shift=shift, floor=floor, out=pipe.out)
    beaten = [saying("alternative.notch", depth=depth, count=crossed, most=figures.notch_most)]
    beaten += [saying("alternative.box_along", deep=deep)] if boxable else []
    return "shift", Decision(name, wall.letter, said, tuple(beaten))


def _between_the_plates(wall: Wall, pipe: Pipe, figures: Figures) -> bool:
    """Say whether a pipe meets studs alone: a plate is never notched."""
    low, high = pipe.heights
    foot = figures.gasket + figures.stud_thick
    head = wall.height.least_over(pipe.left_edge, pipe.right_edge) - figures.stud_thick - figures.plywood
    return foot <= low - figures.notch_clear and high + figures.notch_clear <= head


def _at_least_none(size: Length) -> Length:
    return size if size > ZERO else Length(0, size.rests)
