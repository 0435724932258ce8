"""Upright pipes: behind the studs, between two of them, in a box, or clear in front; and the box itself, round a lying one too."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Literal

from guide.layout.openings import Stretch
from guide.layout.parts import Box, Decision, Kind, Material, Part, Remark, over_slab, overlap
from guide.layout.site import Site
from guide.lengths import ZERO, Length, greatest, least
from guide.reference.figures import Figures
from guide.reference.sayings import Saying, saying
from guide.survey.room import thing_name
from guide.survey.things import Pipe

Way = Literal["behind", "bay", "box", "front"]


@dataclass(frozen=True)
class Stack:
    """An upright pipe, or a lying one that gets a box, and what was decided about it."""

    pipe: Pipe
    way: Way
    x0: Length
    """Left side of its bay, or inside of its box."""
    x1: Length
    decision: Decision
    gap0: Length
    """Left end of the gap in the plates, where it stands in the line of the studs."""
    gap1: Length
    beyond: Length = ZERO
    """How far past both sides of a box along the wall its studs stand, so that the drywall beside it has half of each."""

    @property
    def clear(self) -> Stretch:
        """The stretch that no stud may enter."""
        return self.x0 - self.beyond, self.x1 + self.beyond

    @property
    def in_line(self) -> bool:
        """Whether it stands in the line of the studs, so that they stop on both sides of it."""
        return self.way in ("bay", "box")

    @property
    def parts_plates(self) -> bool:
        """Whether the plates stop on both sides of it; over and under a lying pipe they run on."""
        return self.in_line and self.pipe.run == "standing"


def stacks_of(site: Site) -> tuple[Stack, ...]:
    """Return every upright pipe of the wall with its way past the studs."""
    return tuple(_stack(site, pipe) for pipe in site.wall.pipes if pipe.run == "standing" and pipe.at is not None)


def boxed_stack(site: Site, pipe: Pipe) -> Stack:
    """Return a lying pipe that gets a box, as a stretch without studs."""
    figures, what = site.figures, thing_name(pipe.place)
    side, rests = figures.chase_wider // 2, pipe.rests | site.offsets.back.rests
    x0, x1 = ((pipe.left_edge - side).with_rests(rests), (pipe.right_edge + side).with_rests(rests))
    ends = site.left.face, site.wall.length - site.right.face
    long, deep = box_along(pipe, ends, site.offsets.face, figures)
    shift = (pipe.out + figures.pipe_behind - site.offsets.back).up_to(figures.back_step)
    said = saying("decision.pipe_box_along", what=what, long=long, deep=deep, floor=long.inch * deep.inch)
    beat = saying("alternative.shift", shift=shift, floor=shift.inch * site.wall.length.inch)
    decision = Decision(f"{pipe.place}.way", site.letter, said, (beat,))
    return Stack(pipe, "box", x0, x1, decision, x0, x1, figures.stud_thick // 2)


def box_along(pipe: Pipe, ends: Stretch, face: Length, figures: Figures) -> tuple[Length, Length]:
    """Return how long a box along a lying pipe is between the ends of its wall, and how far into the room from the studs."""
    past = figures.chase_wider // 2 + figures.stud_thick
    x0, x1 = greatest(pipe.left_edge - past, ends[0]), least(pipe.right_edge + past, ends[1])
    return x1 - x0, _posts_at(pipe.out, face, figures) + figures.stud_thick - face


def _posts_at(out: Length, face: Length, figures: Figures) -> Length:
    """Return where the posts of a box begin: clear of the pipe, on the studs' face or with room for a rung between."""
    front = out + figures.chase_clear
    return greatest(front, face + figures.stud_thick) if front > face else face.with_rests(front.rests)


def way_at(pipe: Pipe, back: Length, face: Length, drywall: Length, figures: Figures) -> Way:
    """Return how an upright pipe is passed by studs that stand between `back` and `face`."""
    if pipe.out + figures.pipe_behind <= back:
        return "behind"
    if pipe.back >= drywall:
        return "front"
    return "bay" if pipe.way != "box" and fits_a_bay(pipe, face, figures) else "box"


def fits_a_bay(pipe: Pipe, face: Length, figures: Figures) -> bool:
    """Say whether an upright pipe stays behind the room face of the studs and between two of them."""
    return pipe.out + figures.pipe_in_bay <= face and narrow(pipe, figures)


def narrow(pipe: Pipe, figures: Figures) -> bool:
    """Say whether an upright pipe has room between two studs, however far it stands out."""
    return pipe.wide + figures.pipe_side * 2 <= figures.stud_spacing - figures.stud_thick


def _stack(site: Site, pipe: Pipe) -> Stack:
    figures, back, face = site.figures, site.offsets.back, site.offsets.face
    at, what = pipe.at or ZERO, thing_name(pipe.place)
    half = pipe.wide // 2
    side = figures.pipe_side
    beat: tuple[Saying, ...] = ()
    way = way_at(pipe, back, face, site.offsets.drywall, figures)
    if way == "behind":
        said = saying("decision.pipe_behind", what=what, out=pipe.out, back=back)
    elif way == "front":
        said = saying("decision.pipe_front", what=what, gap=pipe.back - site.offsets.drywall)
    elif way == "bay":
        said = saying("decision.pipe_bay", what=what, at=at, out=pipe.out, face=face)
        beat = (saying("alternative.box", wide=pipe.wide + figures.chase_wider),)
    else:
        side = figures.chase_wider // 2
        spare = figures.pipe_in_bay - figures.stud_deep if narrow(pipe, figures) else figures.pipe_behind
        shift = (pipe.out + spare - back).up_to(figures.back_step)
        floor = shift.inch * site.wall.length.inch
        said = saying("decision.pipe_box", what=what, at=at, out=pipe.out, face=face, inside=pipe.wide + side * 2)
        beat = (saying("alternative.shift", shift=shift, floor=floor),)
        if fits_a_bay(pipe, face, figures):
            beat = (saying("alternative.pipe_bay"),)
    decision = Decision(f"{pipe.place}.way", site.letter, said, beat)
    rests = pipe.out.rests | pipe.wide.rests | back.rests
    clear = half + side
    if pipe.reach == "yes" and way == "bay":  # a panel has to fit between the studs
        clear = greatest(clear, figures.panel_least // 2).on(f"{pipe.place}.reach")
    gap = half + figures.pipe_side
    x0, x1, gap0, gap1 = (edge.with_rests(rests) for edge in (at - clear, at + clear, at - gap, at + gap))
    return Stack(pipe, way, x0, x1, decision, gap0, gap1)


def chases_of(site: Site, stacks: Sequence[Stack], holes: Sequence[Stretch]) -> tuple[list[Part], list[Remark]]:
    """Return the boxes in front of the studs. Pipes that stand close together share one.

    A box that would stand before an opening, or in the wall round the corner, is left out, and a remark says so.
    """
    thick = site.figures.stud_thick
    parts: list[Part] = []
    remarks: list[Remark] = []
    for group in _close_together(stacks, thick):
        x0, x1 = group[0].x0, greatest(*(stack.x1 for stack in group))
        what = " and ".join(thing_name(stack.pipe.place) for stack in group)
        low, high = site.left.face, site.wall.length - site.right.face
        if all(stack.pipe.run == "lying" for stack in group):  # from corner to corner it stands against the other walls
            x0, x1 = greatest(x0, low + thick), least(x1, high - thick)
        span = (x0 - thick, x1 + thick)
        if span[0] < low or span[1] > high or x0 >= x1 or any(overlap(*span, *hole) for hole in holes):
            remarks.append(Remark(saying("remark.chase_unbuilt", what=what), x0))
        else:
            box = _box_round(site, x0, x1, greatest(*(stack.pipe.out for stack in group)), what)
            if any(stack.pipe.run == "standing" for stack in group):  # it goes up where the lid would lie
                box = [part for part in box if part.why.key != "part.chase_lid"]
            parts += [replace(part, placed_by=site.things) for part in box]
    return parts, remarks


def _close_together(stacks: Sequence[Stack], thick: Length) -> list[list[Stack]]:
    """Group the pipes that need a box with those that stand where its posts would stand."""
    groups: list[list[Stack]] = []
    reach = ZERO
    for stack in sorted((s for s in stacks if s.way in ("box", "front")), key=lambda s: s.x0):
        if groups and stack.x0 - thick < reach:
            groups[-1].append(stack)
        else:
            groups.append([stack])
        reach = greatest(reach, stack.x1 + thick)
    return [group for group in groups if any(stack.way == "box" for stack in group)]


def _box_round(site: Site, x0: Length, x1: Length, out: Length, what: str) -> list[Part]:
    """Return the box round what stands between x0 and x1 and reaches `out`: two posts, rungs between and behind them.

    Its posts stand on a treated rung on the slab, in front of the studs that stand on both sides of the pipe. A box wider
    than a bay has more posts between, for its drywall, in place of the rungs.
    """
    figures, wall = site.figures, site.wall
    thick = figures.stud_thick
    front = _posts_at(out, site.offsets.face, figures)
    why = saying("part.chase", what=what, out=out)
    tall = (wall.height.least_over(x0 - thick, x1 + thick) - thick * 2).down_to(figures.cut_step)
    foot = over_slab(thick)
    parts = []
    pitch = x1 - x0 + thick
    apart = -(-pitch.ticks // figures.stud_spacing.ticks)  # spaces between posts
    for number in range(apart + 1):
        post_x = x0 - thick + Length(pitch.ticks * number // apart, pitch.rests)
        box = Box(post_x, post_x + thick, front, front + thick, foot, foot.up(tall))
        parts.append(Part(Kind.CHASE_POST, site.letter, Material.STUD, box, tall, why, wide=thick))
    inside, whole = (x1 - x0).down_to(figures.cut_step), (x1 - x0 + thick * 2).down_to(figures.cut_step)
    floor = Box(x0 - thick, x1 + thick, front, front + thick, over_slab(ZERO), foot)
    parts.append(Part(Kind.CHASE_RUNG, site.letter, Material.TREATED, floor, whole, why, wide=thick))
    head = replace(floor, z0=foot.up(tall), z1=foot.up(tall + thick))
    parts.append(Part(Kind.CHASE_RUNG, site.letter, Material.STUD, head, whole, why, wide=thick))
    bays = -(-tall.ticks // figures.chase_rung.ticks)
    for number in range(1, bays if apart == 1 else 1):
        z0 = foot.up(Length(tall.ticks * number // bays, tall.rests) - thick // 2)
        rung = Box(x0, x1, front, front + thick, z0, z0.up(thick))
        parts.append(Part(Kind.CHASE_RUNG, site.letter, Material.STUD, rung, inside, why, wide=thick))
    reach = front - site.offsets.face
    if reach > ZERO and apart > 1:
        parts += _lid(site, head, reach, what)
    if reach > ZERO:
        for number in range(bays + 1):
            off = Length((tall - thick).ticks * number // bays, tall.rests)
            for post_x in (x0 - thick, x1):
                side = Box(post_x, post_x + thick, site.offsets.face, front, foot.up(off), foot.up(off + thick))
                cut = reach.down_to(figures.cut_step)
                parts.append(Part(Kind.CHASE_RUNG, site.letter, Material.STUD, side, cut, why, wide=thick))
    return parts


def _lid(site: Site, head: Box, reach: Length, what: str) -> list[Part]:
    """Return what closes the top of a long box between the top plate, which runs on behind it, and its head: flat lumber."""
    figures, face = site.figures, site.offsets.face
    count = -(-reach.ticks // figures.stud_deep.ticks)
    edges = [face + Length(reach.ticks * number // count, reach.rests) for number in range(count + 1)]
    cut, why = (head.x1 - head.x0).down_to(figures.cut_step), saying("part.chase_lid", what=what)
    return [
        Part(
            Kind.CHASE_RUNG,
            site.letter,
            Material.STUD,
            replace(head, y0=y0, y1=y1),
            cut,
            why,
            wide=(y1 - y0).down_to(figures.cut_step),
        )
        for y0, y1 in pairwise(edges)
    ]


def blocks(stacks: Sequence[Stack], x0: Length, x1: Length) -> bool:
    """Say whether a stretch runs into a pipe that stands in the line of the studs."""
    return any(s.in_line and overlap(x0, x1, *s.clear) for s in stacks)
