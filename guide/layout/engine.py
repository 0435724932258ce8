"""The layout engine: the rooms of this folder called in the order that each needs the one before.

Offsets, cap case and corner roles first, since they decide where the plates end; then the framing from both ends of the
wall; fireblocks beside studs; foam round all of that, with the corners given out; then plates, joists and the cap; the
electrical boxes last, in whatever room is left.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable
from dataclasses import dataclass, replace
from functools import partial
from typing import TypeVar

from guide.layout.backing import backing_of
from guide.layout.cap import cap_of
from guide.layout.corners import Corner, corners_of, end_decisions, end_of
from guide.layout.drywall import edges_named, hang, other_side
from guide.layout.fastening import fastened
from guide.layout.fireblocks import fireblocks_of
from guide.layout.foam import FoamSite, foam_first, foam_of
from guide.layout.heights import case_of
from guide.layout.kept import Kept, exactly, once
from guide.layout.ledge import ledge_of
from guide.layout.lining import linings_of
from guide.layout.offsets import Standing, stand_off
from guide.layout.openings import opening_decisions
from guide.layout.outlets import boxes_of, outlet_places
from guide.layout.overhead import blocks_of, supports_of
from guide.layout.partitions import meeting_decisions, partition_decisions
from guide.layout.parts import Decision, Layout, Material, Part, Remark, WallLayout, numbered
from guide.layout.plates import plates_of, top_runs
from guide.layout.rim import rim_of
from guide.layout.site import Site
from guide.layout.studs import Framing, frame
from guide.lengths import inches
from guide.reference.codes import CodeProfile
from guide.reference.figures import Figures
from guide.reference.sayings import saying
from guide.survey.model import Problem, Survey, Wall

SHORTEST_PLATE = inches("12")
"""A plate shorter than this is no wall to frame."""

BUILT_BY = (
    "anchors", "block_reach", "drywall", "floor_finish", "foam_sheet", "foam_thickness", "joist_depth", "longest_stick", "rim", "sheets", "strip", "stud",
    "trim", "use", "yard_lengths",
)  # fmt: skip
"""What of the basement a layout goes by; an answer to anything else leaves every wall as it stands."""

SMALL = {Material.STUD: Material.SMALL_STUD, Material.TREATED: Material.SMALL_TREATED}
"""What pieces are cut from where the studs are 2x3."""


@dataclass(frozen=True, eq=False)  # what is worked out from one that was kept is found by its being the same one
class _Framed:
    wall: FoamSite
    decisions: tuple[Decision, ...]
    remarks: tuple[Remark, ...]


Worked = TypeVar("Worked")


def lay_out(
    survey: Survey,
    code: CodeProfile,
    figures: Figures,
    kept: Kept | None = None,
    tell: Callable[[str], object] = lambda letter: None,
) -> Layout:
    """Lay out every wall of the survey that has no contradiction in it. Pure: the same survey gives the same layout.

    A wall whose ends leave no room for a plate is left out, too, and the layout's survey has that as a problem.
    `kept` is for laying out one job over and over while its answers change: what is unchanged is taken from it.
    `tell` hears the letter of a wall before anything is worked out of it anew; what it raises ends the work.
    """

    def anew(letter: str, work: Callable[..., Worked], *inputs: object) -> Worked:
        tell(letter)
        return work(*inputs)

    figures = figures.for_stud(survey.basement.stud)
    standing = {wall.letter: stand_off(wall, survey.basement, figures) for wall in survey.walls}
    cases = {wall.letter: case_of(wall, figures) for wall in survey.walls}
    corners = corners_of(survey)
    troubled = {problem.wall for problem in survey.problems}
    framed: dict[str, _Framed] = {}
    cramped: list[Problem] = []
    for wall in survey.walls:
        if wall.letter in troubled:
            continue
        site = site_of(wall, survey, corners, standing, cases, code, figures)
        if site.end - site.start >= SHORTEST_PLATE:
            stands = standing[wall.letter]
            framed[wall.letter] = once(
                kept, ("frame", *_inputs(site, stands)), partial(anew, wall.letter, _frame, site, stands)
            )
        elif survey.given(site.start.rests | site.end.rests):
            cramped.append(_cramped(site))
    foam_sites = {letter: each.wall for letter, each in framed.items() if not each.wall.site.wall.is_partition}
    shared = {key: c for key, c in corners.items() if c.left_wall in framed and c.right_wall in framed}
    foam = foam_of(foam_sites, shared, kept)
    corner_decisions: dict[str, list[Decision]] = {letter: [] for letter in framed}
    for (letter, side), corner in corners.items():
        if side == "right" and letter in framed:
            corner_decisions[letter].append(corner.decision)
    walls = []
    for letter, each in framed.items():
        whole = (each, *foam.get(letter, ((), ())), tuple(corner_decisions[letter]))
        walls.append(once(kept, ("complete", *whole), partial(anew, letter, _complete, *whole)))
    return Layout(replace(survey, problems=(*survey.problems, *cramped)), tuple(walls), code)


def _cramped(site: Site) -> Problem:
    wall = site.wall
    said = saying(
        "problem.cramped", wall=wall.letter, length=wall.length, left=site.left.clear, right=site.right.clear,
        least=SHORTEST_PLATE,
    )  # fmt: skip
    return Problem(wall.letter, (wall.ref("length"),), said)


def site_of(
    wall: Wall,
    survey: Survey,
    corners: dict[tuple[str, str], Corner],
    standing: dict[str, Standing],
    cases: dict[str, int],
    code: CodeProfile,
    figures: Figures,
) -> Site:
    """Return a wall ready to be framed: its ends as corners, neighbours and what stands at them make them."""
    offsets = {letter: each.offsets for letter, each in standing.items()}
    left = end_of("left", wall, survey, corners, offsets, cases, figures)
    right = end_of("right", wall, survey, corners, offsets, cases, figures)
    start = left.clear
    plate = (wall.length - right.clear - start).down_to(figures.cut_step)
    return Site(
        wall,
        survey.basement,
        figures,
        code,
        offsets[wall.letter],
        cases[wall.letter],
        left,
        right,
        start,
        start + plate,
    )


def _inputs(site: Site, standing: Standing) -> tuple[Hashable, ...]:
    """Return everything that the layout of a wall goes by."""
    house = tuple(exactly(getattr(site.basement, name)) for name in BUILT_BY)
    ends = (site.offsets, site.cap_case, site.left, site.right, site.start, site.end)
    return exactly(site.wall), house, site.figures, site.code, exactly(ends), exactly(standing)


def _frame(site: Site, standing: Standing) -> _Framed:
    framing, zero = frame(site, standing.passed)
    blocks, block_decisions, block_remarks = ([], [], []) if site.wall.is_partition else fireblocks_of(site, framing)
    decisions = (*standing.decisions, zero, *(stack.decision for stack in framing.stacks), *block_decisions)
    return _Framed(FoamSite(site, framing, tuple(blocks)), decisions, (*framing.remarks, *block_remarks))


def _over_concrete(
    site: Site, framing: Framing, blocks: tuple[Part, ...], over: list[Part]
) -> tuple[list[Part], list[Decision], list[Remark]]:
    """Return what closes the top of the concrete and the bays over it: cap, ledge and rim; nothing of it in a partition."""
    if site.wall.is_partition:
        return [], [], []
    caps, decisions, remarks = cap_of(site, framing.stacks)
    ledge, ledge_remarks = ledge_of(site, framing, blocks)
    rim, rim_remarks = rim_of(site, over)
    return [*caps, *ledge, *rim], decisions, [*remarks, *ledge_remarks, *rim_remarks]


def _complete(
    framed: _Framed,
    foam: tuple[Part, ...],
    foam_decisions: tuple[Decision, ...],
    corner_decisions: tuple[Decision, ...],
) -> WallLayout:
    site, framing, blocks = framed.wall.site, framed.wall.framing, framed.wall.blocks
    over, over_remarks = blocks_of(site, top_runs(site, framing))
    supports = supports_of(site, over)
    plates, plate_decisions, plate_remarks = plates_of(site, framing, supports)
    behind, behind_decisions, behind_remarks = _over_concrete(site, framing, blocks, over)
    others = [*blocks, *foam, *plates, *behind, *over]
    backing, backing_decisions, backing_remarks = backing_of(site, framing, others)
    others += backing
    linings, lining_remarks = linings_of(site, framing)
    others += linings
    boxes, box_decisions, box_remarks = boxes_of(site, framing, others)
    hung, sheet_decisions, sheet_remarks = hang(site, framing, boxes)
    far, far_remarks = other_side(site, framing, hung) if site.wall.is_partition else ([], [])
    everything = [*edges_named(framing.parts, hung.joints), *others, *boxes, *hung.parts, *far]
    parts = [fastened(site, part, supports, everything) for part in everything]
    if site.basement.stud == "2x3":
        parts = [replace(part, material=SMALL.get(part.material, part.material)) for part in parts]
    decisions = (
        *framed.decisions,
        *end_decisions(site.wall, (site.left, site.right)),
        *meeting_decisions(site),
        *corner_decisions,
        *foam_decisions,
        *plate_decisions,
        *behind_decisions,
        *backing_decisions,
        *box_decisions,
        *sheet_decisions,
        *opening_decisions(site, framing.holes),
        *partition_decisions(site),
    )
    return WallLayout(
        wall=site.wall,
        offsets=site.offsets,
        left=site.left,
        right=site.right,
        plate_start=site.start,
        plate_end=site.end,
        zero_side=framing.zero_side,
        zero=framing.zero,
        cap_case=site.cap_case,
        foam_first=not site.wall.is_partition and foam_first(site),
        sheet_edges=hung.joints,
        sheets=hung.way,
        parts=numbered(site.letter, parts),
        decisions=decisions,
        remarks=(
            *framed.remarks,
            *plate_remarks,
            *behind_remarks,
            *over_remarks,
            *backing_remarks,
            *lining_remarks,
            *box_remarks,
            *sheet_remarks,
            *far_remarks,
        ),
        outlet_places=outlet_places(site, framing, [*others, *boxes]),
    )
