"""The plywood cap that closes the gap behind the wall at the top of the concrete: its case, its strips, their laps."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from guide.layout.ends import End, squared
from guide.layout.heights import cap_can_lie, cap_meets_plate, most_over_concrete, over_concrete
from guide.layout.openings import Stretch
from guide.layout.parts import Box, Datum, Decision, Kind, Level, Material, Part, Remark, under_joists
from guide.layout.pipes import Stack
from guide.layout.site import Site
from guide.lengths import ZERO, Length, greatest, least
from guide.reference.sayings import Saying, saying
from guide.survey.things import Pipe


def cap_of(site: Site, stacks: Sequence[Stack]) -> tuple[list[Part], list[Decision], list[Remark]]:
    """Return cap strips and the laps behind their joints, with the decision between the two cases.

    A pipe that comes up through the cap parts it, and so does a beam or a duct that hangs there. There is no strip where the sill hangs over the room as far as the back of the plate: the sill itself closes the gap.
    """
    figures, wall, case = site.figures, site.wall, site.cap_case
    remarks = []
    gap = most_over_concrete(wall)
    if gap > figures.knee_wall and case != 3:
        remarks.append(Remark(saying("remark.knee_wall", gap=gap), site.start))
    remarks += [
        Remark(saying("remark.caps_part", side=side), x)
        for side, end, x in (("left", site.left, ZERO), ("right", site.right, wall.length))
        if end.caps_part
    ]
    # which case it is rests on every reading of joists and concrete, and so does all that follows from it
    weighed = site.over_plate.rests | site.wall.length.rests | site.left.cap.rests | site.right.cap.rests
    stacks = [stack for stack in stacks if stack.pipe.run == "standing"]
    if stacks:  # each may part the cap, where it stands behind the cap's front
        weighed = weighed.union(site.offsets.face.rests, *(s.pipe.out.rests | s.pipe.wide.rests for s in stacks))
    hung = [opening for opening in wall.openings if opening.hangs]
    weighed = weighed.union(*(opening.rests for opening in hung))
    back = _back(site).with_rests(weighed)
    face = (site.offsets.back if case == 1 else site.offsets.face).with_rests(weighed)
    if back >= face:
        said = saying("decision.cap_sill", out=back)
        return [], [Decision(f"{site.letter}.cap", site.letter, said)], remarks
    if wall.cap == "on the concrete" and case != 1:
        remarks.append(Remark(saying("remark.cap_not_there"), site.start))
    (x0, left), (off, right) = (_start(end, back, face, case, weighed) for end in (site.left, site.right))
    x1 = wall.length - off
    low = Level(Datum.CONCRETE, ZERO) if case == 1 else under_joists(figures.plywood)
    why = saying(f"part.cap_{1 if case == 1 else 2}", shelf=wall.shelf, to=face)
    parts = []
    free = [round_pipe(site, s.pipe) for s in stacks if s.pipe.back < face]
    free += [(x0.with_rests(o.rests), x1.with_rests(o.rests)) for o in hung for x0, x1 in (o.kept_clear,)]
    for run in between(site, x0, x1, free):
        run, slants = squared(run, (x0, x1), (left, right))
        box = Box(*run, back, face, low, low.up(figures.plywood))
        strips, joints = strips_of(site, Kind.CAP, run, box, why, slants)
        parts += strips
        for joint in joints:
            lap = _lap(site, joint, low, back)
            if lap is None:
                remarks.append(Remark(saying("remark.cap_unbacked", at=joint), joint))
            else:
                parts.append(lap)
    return parts, [_decision(site)], remarks


def _start(end: End, back: Length, face: Length, case: int, weighed: frozenset[str]) -> tuple[Length, Length]:
    """Return how far from the concrete corner the cap begins, and how that end slants; mitred plates have mitred caps."""
    if end.mitred and end.other is not None:
        front = end.other.back if case == 1 else end.other.face
        return end.mitre(back, (-end.shelf).with_rests(weighed), face, front)
    return end.parallel(end.cap.with_rests(weighed), back, face)


def strips_of(
    site: Site, kind: Kind, run: Stretch, box: Box, why: Saying, slants: tuple[Length, Length]
) -> tuple[list[Part], list[Length]]:
    """Return the strips of plywood that cover a run, and where their joints are; the box gives their width and height.

    `slants` are those of the first strip's left and the last one's right end; a run that they use up has no strip.
    """
    figures = site.figures
    wide = (box.y1 - box.y0).down_to(figures.cut_step)
    slanted = greatest(*(abs(each) for each in slants))
    if run[1] - run[0] <= slanted * 2:
        return [], []
    places = _pieces(run[1] - run[0], figures.sheet_long, greatest(figures.plate_least_piece, slanted * 2))
    strips: list[Part] = []
    for start, end in places:
        own = replace(box, x0=run[0] + start, x1=run[0] + end)
        cut = (end - start).down_to(figures.cut_step).with_rests(box.y0.rests)
        ends = ZERO if strips else slants[0], slants[1] if end == places[-1][1] else ZERO
        strips.append(Part(kind, site.letter, Material.PLYWOOD, own, cut, why, wide=wide, slants=ends))
    return strips, [run[0] + start for start, _ in places[1:]]


def round_pipe(site: Site, pipe: Pipe) -> Stretch:
    """Return the stretch that plywood leaves free for a pipe that comes up through it: a cutting gap on both sides."""
    gap, rests = site.figures.foam_cut_gap, pipe.out.rests | pipe.wide.rests
    return (pipe.left_edge - gap).with_rests(rests), (pipe.right_edge + gap).with_rests(rests)


def between(site: Site, x0: Length, x1: Length, free: Sequence[Stretch]) -> list[Stretch]:
    """Return what is left of a run between the stretches that stay free; a rest thinner than a stud is none."""
    runs, at = [], x0
    for left, right in sorted(free):
        runs.append((at, least(left, x1)))
        at = greatest(at, right)
    runs.append((at, x1))
    return [(start, end) for start, end in runs if end - start >= site.figures.stud_thick]


def _back(site: Site) -> Length:
    """Return how far out the cap begins: at the sill, or at the concrete where that rises into a cap at the joists."""
    back = -site.wall.shelf
    blocked = site.cap_case != 1 and over_concrete(site.wall, ZERO, site.wall.length) < site.figures.plywood
    return greatest(back, ZERO) if blocked else back


def _lap(site: Site, joint: Length, low: Level, back: Length) -> Part | None:
    """Return the scrap that backs a joint, or None where it finds no room.

    It lies on top of a cap on the concrete, and hangs under a cap at the joists, over the foam.
    """
    figures = site.figures
    left, right = joint - figures.cap_lap // 2, joint + figures.cap_lap // 2
    front = site.offsets.back
    if over_concrete(site.wall, left, right) < figures.plywood * 2 or back >= front:
        return None
    low = low.up(figures.plywood if site.cap_case == 1 else -figures.plywood)
    box = Box(left, right, back, front, low, low.up(figures.plywood))
    wide = (front - back).down_to(figures.cut_step)
    return Part(Kind.CAP_LAP, site.letter, Material.PLYWOOD, box, figures.cap_lap, saying("part.cap_lap"), wide=wide)


def _pieces(whole: Length, stock: Length, shortest: Length) -> list[tuple[Length, Length]]:
    """Cut a run into full pieces and a rest; a rest too short takes from the piece before it."""
    count = max(1, -(-whole.ticks // stock.ticks))
    ends = [stock * number for number in range(1, count)] + [whole]
    if count > 1 and whole - ends[-2] < shortest:
        ends[-2] = whole - shortest
    starts = [ZERO, *ends[:-1]]
    return list(zip(starts, ends, strict=True))


def _decision(site: Site) -> Decision:
    meets = cap_meets_plate(site.wall, site.figures)
    if site.wall.concrete.steps:
        said = saying(
            "decision.cap_step",
            count=len(site.wall.concrete.steps),
            at=site.wall.concrete.steps[0][0],
            ledges=len(site.ledges),
            gap=site.figures.ledge_from,
        )
        return Decision(f"{site.letter}.cap", site.letter, said, (saying("alternative.cap_stepped"),))
    if site.cap_case == 1:
        said = saying("decision.cap_1", meets=meets, least=site.figures.cap_overlap)
        return Decision(
            f"{site.letter}.cap", site.letter, said, (saying("alternative.cap_2", thick=site.figures.plywood),)
        )
    if over_concrete(site.wall, ZERO, site.wall.length) < site.figures.plywood:
        return Decision(f"{site.letter}.cap", site.letter, saying("decision.cap_2_tight", thick=site.figures.plywood))
    if site.cap_case == 3:
        said = saying("decision.cap_3", gap=over_concrete(site.wall, ZERO, site.wall.length))
        return Decision(f"{site.letter}.cap", site.letter, said, (saying("alternative.cap_joists_alone"),))
    if cap_can_lie(site.wall, site.figures):
        said = saying("decision.cap_2_said")
        beaten = saying("alternative.cap_on_concrete", meets=meets, thick=site.figures.plywood)
        return Decision(f"{site.letter}.cap", site.letter, said, (beaten,))
    said = saying("decision.cap_2", meets=meets, least=site.figures.cap_overlap)
    return Decision(f"{site.letter}.cap", site.letter, said, (saying("alternative.cap_1"),))
