"""Upright pipes: behind the studs, between two of them, in a box, or clear in front; and the box itself."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from guide.layout.parts import Box, Decision, Kind, Material, Part, over_slab, overlap
from guide.layout.site import Site
from guide.lengths import ZERO, Length, greatest
from guide.reference.sayings import Saying, saying
from guide.survey.model import Pipe
from guide.survey.room import thing_name

Way = Literal["behind", "bay", "box", "front"]


@dataclass(frozen=True)
class Stack:
    """An upright pipe and what was decided about it."""

    pipe: Pipe
    way: Way
    x0: Length
    """Left limit of the stretch that no stud may enter."""
    x1: Length
    decision: Decision

    @property
    def in_line(self) -> bool:
        """Whether it stands in the line of the studs, so that the plates stop on both sides of it."""
        return self.way in ("bay", "box")


def stacks_of(site: Site) -> tuple[Stack, ...]:
    """Return every upright pipe of the wall with its way past the studs."""
    return tuple(_stack(site, pipe) for pipe in site.wall.pipes if pipe.run == "standing" and pipe.at is not None)


def _stack(site: Site, pipe: Pipe) -> Stack:
    figures, back, face = site.figures, site.offsets.back, site.offsets.face
    at, what = pipe.at or ZERO, thing_name(pipe.place)
    half = pipe.wide // 2
    side = figures.pipe_side
    beat: tuple[Saying, ...] = ()
    if pipe.out + figures.pipe_behind <= back:
        way: Way = "behind"
        said = saying("decision.pipe_behind", what=what, out=pipe.out, back=back)
    elif pipe.back >= site.offsets.drywall:
        way = "front"
        said = saying("decision.pipe_front", what=what, gap=pipe.back - site.offsets.drywall)
    elif pipe.out + figures.pipe_in_bay <= face and pipe.wide + side * 2 <= figures.stud_spacing - figures.stud_thick:
        way = "bay"
        said = saying("decision.pipe_bay", what=what, at=at, out=pipe.out, face=face)
        beat = (saying("alternative.box", wide=pipe.wide + figures.chase_wider),)
    else:
        way, side = "box", figures.chase_wider // 2
        shift = (pipe.out + figures.pipe_in_bay - face).up_to(figures.back_step)
        floor = f"{float(shift.inch * site.wall.length.inch / 144):.1f}"
        said = saying("decision.pipe_box", what=what, at=at, out=pipe.out, face=face, inside=pipe.wide + side * 2)
        beat = (saying("alternative.shift", shift=shift, floor=floor),)
    decision = Decision(f"{pipe.place}.way", site.letter, said, beat)
    rests = pipe.out.rests | back.rests
    x0, x1 = (at - half - side).with_rests(rests), (at + half + side).with_rests(rests)
    return Stack(pipe, way, x0, x1, decision)


def box_round(site: Site, stack: Stack) -> tuple[Part, ...]:
    """Return the box in front of the studs round a pipe: two posts, and rungs between and behind them.

    Its posts stand on a treated rung on the slab, in front of the studs that stand on both sides of the pipe.
    """
    figures, wall = site.figures, site.wall
    thick, pipe = figures.stud_thick, stack.pipe
    front = pipe.out + figures.chase_clear
    depth = front - site.offsets.face
    # a post either stands on the studs' face or leaves room for a rung between
    front = greatest(front, site.offsets.face + thick) if depth > ZERO else site.offsets.face.with_rests(front.rests)
    why = saying("part.chase", what=thing_name(pipe.place), out=pipe.out)
    middle = (stack.x0 + stack.x1) // 2
    tall = (wall.height.at(middle) - thick * 2).down_to(figures.cut_step)
    foot = over_slab(thick)
    parts = []
    for x0 in (stack.x0 - thick, stack.x1):
        box = Box(x0, x0 + thick, front, front + thick, foot, foot.up(tall))
        parts.append(Part(Kind.CHASE_POST, site.letter, Material.STUD, box, tall, why, wide=thick))
    inside, whole = stack.x1 - stack.x0, stack.x1 - stack.x0 + thick * 2
    floor = Box(stack.x0 - thick, stack.x1 + thick, front, front + thick, over_slab(ZERO), foot)
    parts.append(Part(Kind.CHASE_RUNG, site.letter, Material.TREATED, floor, whole, why, wide=thick))
    head = replace(floor, z0=foot.up(tall), z1=foot.up(tall + thick))
    parts.append(Part(Kind.CHASE_RUNG, site.letter, Material.STUD, head, whole, why, wide=thick))
    bays = -(-tall.ticks // figures.chase_rung.ticks)
    for number in range(1, bays):
        z0 = foot.up(Length(tall.ticks * number // bays, tall.rests) - thick // 2)
        rung = Box(stack.x0, stack.x1, front, front + thick, z0, z0.up(thick))
        parts.append(Part(Kind.CHASE_RUNG, site.letter, Material.STUD, rung, inside, why, wide=thick))
    reach = front - site.offsets.face
    if reach > ZERO:
        for number in range(bays + 1):
            off = Length((tall - thick).ticks * number // bays, tall.rests)
            for x0 in (stack.x0 - thick, stack.x1):
                side = Box(x0, x0 + thick, site.offsets.face, front, foot.up(off), foot.up(off + thick))
                parts.append(Part(Kind.CHASE_RUNG, site.letter, Material.STUD, side, reach, why, wide=thick))
    return tuple(parts)


def blocks(stacks: tuple[Stack, ...], x0: Length, x1: Length) -> Stack | None:
    """Return the pipe in the line of the studs that a stretch runs into, or None."""
    return next((s for s in stacks if s.in_line and overlap(x0, x1, s.x0, s.x1)), None)
