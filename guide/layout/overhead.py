"""What is above the wall: joists that run into it, or blocks between joists that run alongside."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from guide.layout.parts import Box, Kind, Material, Part, Remark, overlap, under_joists
from guide.layout.site import Site
from guide.lengths import ZERO, Length, from_inches
from guide.reference.figures import Figures
from guide.reference.sayings import saying
from guide.survey.joists import apart_of, not_read
from guide.survey.model import Wall
from guide.survey.things import Pipe


def joists_over(wall: Wall, figures: Figures) -> Iterator[tuple[Length, Length]]:
    """Yield the left and right side of each joist that runs into a wall and begins over it, from the left.

    Where they were read one by one they are those; beyond the last one they go on as far apart as those usually are.
    """
    rests = frozenset({wall.ref("joists"), wall.ref("joist_spacing")})
    first, number = (wall.first_joist or ZERO).with_rests(rests), 0
    if read := wall.joists_read:
        for joist in read:
            if joist.edge < wall.length:
                x0 = joist.edge.with_rests(rests)
                yield x0, x0 + figures.joist_thick * joist.plies
        first, number = read[-1].edge.with_rests(rests | {not_read(wall.ref("joist_edges"))}), 1
    spacing = apart_of(read).inch if read else Fraction(wall.joist_spacing or "16")
    while (x0 := first + from_inches(spacing * number)) < wall.length:  # from the first each time: 19.2 must not drift
        yield x0, x0 + figures.joist_thick
        number += 1


def under_a_joist(wall: Wall) -> bool:
    """Say whether a partition stands right under one joist, to which its top plate is nailed anywhere."""
    return wall.is_partition and wall.joists == "alongside" and wall.parallel_gap == ZERO


def supports_of(site: Site, blocks: Sequence[Part]) -> list[Length]:
    """Return the centres, along the wall, of what the top plate can be nailed to: joists, or the blocks between them."""
    if under_a_joist(site.wall):
        run = site.start, site.end
        return [
            x0 + site.figures.stud_thick // 2 for x0 in _evenly(run, site.figures.stud_thick, site.figures.stud_spacing)
        ]
    if site.wall.joists == "alongside":
        return [block.centre for block in blocks]
    centres = ((x0 + x1) // 2 for x0, x1 in joists_over(site.wall, site.figures))
    return [at for at in centres if at < site.wall.length]


def blocks_of(site: Site, runs: Sequence[tuple[Length, Length]]) -> tuple[list[Part], list[Remark]]:
    """Return the blocks between the rim and the first joist alongside: at both ends of each run of top plate, and evenly
    between.

    They reach from the rim, over the sill, to the joist, or over a partition from joist to joist. Where that does not
    bring them over half of the plate there are none, and a remark says so. A block that a pipe goes up through stands
    beside the pipe.
    """
    figures, wall = site.figures, site.wall
    gap = wall.parallel_gap
    if wall.joists != "alongside" or gap is None:
        return [], []
    thick = figures.stud_thick
    y0, cut = -wall.shelf, gap.down_to(figures.cut_step)
    if wall.is_partition:
        if under_a_joist(wall):
            return [], []
        y0 = (site.offsets.face - cut) // 2  # it stands midway between the two joists, as far as anybody said
    elif y0 + cut < site.offsets.back + figures.stud_deep // 2:
        return [], [Remark(saying("remark.blocks_short", gap=gap), site.start)]
    rests = site.things | {wall.ref("joists")}
    why = saying("part.joist_block_between" if wall.is_partition else "part.joist_block", gap=gap)
    pipes = [pipe for pipe in wall.pipes if pipe.run == "standing" and pipe.back < y0 + cut]
    parts: list[Part] = []
    for x0 in [_beside_pipes(site, x0, pipes) for run in runs for x0 in _evenly(run, thick, figures.block_spacing)]:
        if x0 < site.start or x0 + thick > site.end or any(overlap(x0, x0 + thick, p.box.x0, p.box.x1) for p in parts):
            continue
        box = Box(x0, x0 + thick, y0, y0 + cut, under_joists(ZERO), under_joists(-figures.stud_deep))
        parts.append(Part(Kind.JOIST_BLOCK, site.letter, Material.STUD, box, cut, why, placed_by=rests))
    return parts, []


def _evenly(run: tuple[Length, Length], thick: Length, spacing: Length) -> list[Length]:
    """Return the left sides of blocks at both ends of a run and between them, none further apart than the spacing."""
    first, last = run[0], run[1] - thick
    bays = max(1, -(-(last - first).ticks // spacing.ticks))
    rests = first.rests | last.rests
    return [first + Length((last - first).ticks * number // bays, rests) for number in range(bays + 1)]


def _beside_pipes(site: Site, x0: Length, pipes: list[Pipe]) -> Length:
    """Return where a block meant for x0 stands: there, or to the left of the pipe in its way, or else to the right of it."""
    thick, side = site.figures.stud_thick, site.figures.pipe_side
    for pipe in sorted(pipes, key=lambda pipe: pipe.right_edge, reverse=True):
        if overlap(x0, x0 + thick, pipe.left_edge - side, pipe.right_edge + side):
            x0 = pipe.left_edge - side - thick
    if x0 < site.start:
        x0 = site.start
        for pipe in sorted(pipes, key=lambda pipe: pipe.left_edge):
            if overlap(x0, x0 + thick, pipe.left_edge - side, pipe.right_edge + side):
                x0 = pipe.right_edge + side
    return x0
