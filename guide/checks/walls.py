"""What is wrong or risky on a wall: the engine's remarks, pipes, doors, old boxes, the plate's distance to the slab's edge."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from guide.checks.electrical import box_findings
from guide.checks.energy import effective_row
from guide.checks.findings import Finding, finding
from guide.checks.flue import flue_findings
from guide.checks.joists import joist_findings
from guide.checks.metal import metal_findings
from guide.checks.moisture import batts_on_cold_foam
from guide.checks.panel import panel_findings
from guide.checks.things import soffit_findings, thing_findings
from guide.layout.crooked import breaks_sheet, places_of
from guide.layout.openings import extended, off_the_face
from guide.layout.parts import FULL_HEIGHT, Kind, Layout, WallLayout
from guide.lengths import ZERO, greatest, inches
from guide.reference.codes import CodeProfile
from guide.reference.figures import load_figures
from guide.survey.model import Basement
from guide.survey.room import thing_name


def wall_findings(wall: WallLayout, basement: Basement, code: CodeProfile) -> Iterator[Finding]:
    """Yield what was found on one wall."""
    for remark in wall.remarks:
        key = remark.saying.key.removeprefix("remark.")
        yield Finding(key, wall.letter, wall.mark_of(remark.x), said=remark.saying)
    yield from _pipes(wall, code)
    yield from _openings(wall)
    yield from panel_findings(wall, code)
    yield from thing_findings(wall)
    yield from soffit_findings(wall)
    yield from joist_findings(wall)
    yield from flue_findings(wall, code)
    yield from metal_findings(wall)
    yield from _headers(wall, code)
    yield from _boxes(wall)
    yield from box_findings(wall, code)
    yield from _bays(wall)
    yield from _studs(wall, basement, code)
    yield from _bends(wall)
    if not wall.wall.is_partition:
        yield from _against_concrete(wall, basement, code)
    if wall.wall.other.strip().lower() not in ("none", "no", ""):
        yield finding("other", wall.letter, what=wall.wall.other)


def _against_concrete(wall: WallLayout, basement: Basement, code: CodeProfile) -> Iterator[Finding]:
    """Yield what concrete behind the wall, and foam on it, bring with them: a partition has neither."""
    yield from _edge(wall, code)
    for place in breaks_sheet(places_of(wall.wall, wall.offsets, load_figures()), load_figures()):
        key = "hump" if place.out > ZERO else "hollow"
        yield finding(key, wall.letter, wall.mark_of(place.x), out=abs(place.out))
    yield from batts_on_cold_foam(wall, basement)
    yield from effective_row(wall, basement)
    if inches(basement.drywall) < code.thermal_barrier.length:
        yield finding(
            "thermal_barrier",
            wall.letter,
            thick=inches(basement.drywall),
            least=code.thermal_barrier.length,
            cited=code.thermal_barrier.cited,
        )


def untold_partitions(layout: Layout) -> Iterator[Finding]:
    """Yield the walls that more partitions of this job end at than were told among their openings."""
    ends = [wall.wall.met(side) for wall in layout.walls for side in ("left", "right")]
    for wall in layout.walls:
        count, told = ends.count(wall.letter), len(wall.wall.partitions)
        if count > told:
            yield finding("partition_untold", wall.letter, ends=count, told=told, more=count - told)


def _edge(wall: WallLayout, code: CodeProfile) -> Iterator[Finding]:
    """The plate's fasteners stand in its middle; their distance to the edge of the slab is to be enough."""
    middle = wall.offsets.back + wall.offsets.deep // 2
    if middle < code.pin_edge.length:
        yield finding("slab_edge", wall.letter, middle=middle, least=code.pin_edge.length, cited=code.pin_edge.cited)


def _pipes(wall: WallLayout, code: CodeProfile) -> Iterator[Finding]:
    for pipe in wall.wall.pipes:
        what, at = thing_name(pipe.place), wall.mark_of((pipe.left_edge + pipe.right_edge) // 2)
        if pipe.carries == "water" and pipe.back < wall.offsets.foam_face:
            yield finding("cold_water", wall.letter, at, what=what)
        if pipe.carries == "gas":
            yield finding("gas", wall.letter, at, what=what)
        if pipe.reach == "yes":
            yield finding("reach", wall.letter, at, what=what, height=pipe.reach_height or ZERO)
        if pipe.reach == "yes" and pipe.carries == "drain":
            clear = code.cleanout_clear
            yield finding("cleanout", wall.letter, at, what=what, clear=clear.length, cited=clear.cited)


def _openings(wall: WallLayout) -> Iterator[Finding]:
    for opening in wall.wall.openings:
        what, at = thing_name(opening.place), wall.mark_of(opening.left)
        if opening.outside == "yes":
            yield finding("outside_door", wall.letter, at, what=what)
        if opening.twist is not None and opening.twist > load_figures().jamb_twist:
            yield finding("door_twisted", wall.letter, at, what=what, far=opening.twist, most=load_figures().jamb_twist)
        if opening.jamb is not None and (gap := off_the_face(opening, wall.offsets.drywall)) != ZERO:
            short = "door_extend" if extended(opening) else "door_pull_in"
            key = short if gap > ZERO else "door_proud"
            yield finding(key, wall.letter, at, what=what, jamb=opening.jamb, face=wall.offsets.drywall, gap=abs(gap))
        if (behind := opening.behind_leaf) is not None:
            for box in wall.wall.boxes:
                if behind[0] < box.at < behind[1]:
                    yield finding(
                        "behind_leaf", wall.letter, wall.mark_of(box.at), box=thing_name(box.place), what=what
                    )


def _headers(wall: WallLayout, code: CodeProfile) -> Iterator[Finding]:
    """A flat header serves openings up to the model code's width, near the plate; else it is for the office or an engineer."""
    for header in wall.of(Kind.HEADER):
        wide, at = header.box.x1 - header.box.x0, wall.mark_of(header.box.x0)
        if wide - load_figures().stud_thick * 2 > code.header_span.length:
            limit = code.header_span
            yield finding("header_wide", wall.letter, at, wide=wide, most=limit.length, cited=limit.cited)
        plates = [p for p in wall.of(Kind.TOP_PLATE) if p.box.x0 <= header.centre <= p.box.x1]
        over = [p.box.z0.at(wall.wall, header.centre) - header.box.z1.at(wall.wall, header.centre) for p in plates]
        if over and (far := greatest(*over)) > code.header_above.length:
            limit = code.header_above
            yield finding(
                "header_low", wall.letter, at, mark=header.mark, far=far, most=limit.length, cited=limit.cited
            )


def _boxes(wall: WallLayout) -> Iterator[Finding]:
    old = sum(box.kind == "existing" for box in wall.wall.boxes)
    if old:
        yield finding("old_boxes", wall.letter, count=old)


def _studs(wall: WallLayout, basement: Basement, code: CodeProfile) -> Iterator[Finding]:
    """A stud that carries nothing stands so tall and no taller; about 2x3 the code says two things."""
    small, apart = basement.stud == "2x3", code.stud_small_apart
    most = code.stud_small_tall if small else code.stud_tall
    cuts = [stud.cut for stud in wall.of(*FULL_HEIGHT)]
    if cuts and greatest(*cuts) > most.length:
        yield finding(
            "stud_tall", wall.letter, stud=basement.stud, tall=greatest(*cuts), most=most.length, cited=most.cited
        )
    if small:
        yield finding(
            "stud_small",
            wall.letter,
            cited=apart.cited,
            apart=apart.length,
            table=most.section,
            tall=most.length,
            ours=load_figures().stud_spacing,
        )


def _bends(wall: WallLayout) -> Iterator[Finding]:
    """Studs are cut to a straight line between readings; where those bend and stand far apart, the line may not be true."""
    figures, points = load_figures(), wall.wall.height.points
    for at, off in enumerate(wall.wall.height.off_line()):
        if abs(off) <= figures.height_bend:
            continue
        (before, _), (x, _), (after, _) = points[at - 1 : at + 2]
        if max(x - before, after - x) > figures.stud_spacing * 2:
            yield finding("height_bends", wall.letter, wall.mark_of(x), x=x, off=abs(off))


def _bays(wall: WallLayout) -> Iterator[Finding]:
    """Two uprights so close that the bay between has to be filled before the second one goes in, or nailed as one."""
    figures = load_figures()
    uprights = sorted(wall.of(Kind.STUD, Kind.KING, Kind.TRIMMER), key=lambda part: part.box.x0)
    for left, right in pairwise(uprights):
        clear = right.box.x0 - left.box.x1
        if ZERO < clear < figures.bay_stuff:
            key = "bay_pack" if clear < figures.bay_pack else "bay_stuff"
            yield finding(key, wall.letter, wall.mark_of(left.box.x1), left=left.mark, right=right.mark, clear=clear)
