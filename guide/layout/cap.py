"""The plywood cap that closes the gap behind the wall at the top of the concrete: its case, its strips, their laps."""

from __future__ import annotations

from guide.layout.parts import Box, Datum, Decision, Kind, Level, Material, Part, Remark, under_joists
from guide.layout.site import Site
from guide.lengths import ZERO, Length, greatest, inches, least
from guide.reference.figures import Figures
from guide.reference.sayings import saying
from guide.survey.model import Wall

KNEE_WALL = "4"
"""Inches from concrete to joists from which a cap at either of them leaves a hole behind the wall. Common practice."""


def case_of(wall: Wall, figures: Figures) -> int:
    """Return 1 when the cap lies on the concrete and its edge meets the edge of the top plate, else 2.

    The edges meet when they face each other by half an inch or more all along the wall; the worst place is at a reading.
    """
    return 1 if cap_meets_plate(wall, figures) >= figures.cap_overlap else 2


def cap_meets_plate(wall: Wall, figures: Figures) -> Length:
    """Return by how much a cap lying on the concrete faces the edge of the top plate at the worst place; may be negative."""
    places = sorted({x for x, _ in (*wall.height.points, *wall.concrete.points)})
    overlaps = []
    for x in places:
        joists, concrete = wall.height.at(x), wall.concrete.at(x)
        top = least(concrete + figures.plywood, joists)
        overlaps.append(top - greatest(concrete, joists - figures.stud_thick))
    return least(*overlaps)


def cap_of(site: Site) -> tuple[list[Part], list[Decision], list[Remark]]:
    """Return cap strips and the laps behind their joints, with the decision between the two cases."""
    figures, wall, case = site.figures, site.wall, site.cap_case
    back, face = -wall.shelf, site.offsets.back if case == 1 else site.offsets.face
    x0 = _reach(site, "left")
    x1 = wall.length - _reach(site, "right")
    wide = (face - back).down_to(figures.cut_step)
    low = Level(Datum.CONCRETE, ZERO) if case == 1 else under_joists(figures.plywood)
    why = saying(f"part.cap_{case}", shelf=wall.shelf, to=face)
    parts = []
    places = _pieces(x1 - x0, figures.sheet_long, figures.plate_least_piece)
    for start, end in places:
        box = Box(x0 + start, x0 + end, back, face, low, low.up(figures.plywood))
        cut = (end - start).down_to(figures.cut_step)
        parts.append(Part(Kind.CAP, site.letter, Material.PLYWOOD, box, cut, why, wide=wide))
    lap_low = low.up(figures.plywood) if case == 1 else low.up(-figures.plywood)
    for start, _ in places[1:]:
        half = figures.cap_lap // 2
        left, right = x0 + start - half, x0 + start + half
        lap = _lap(site, left, right, lap_low, wide)
        if lap is not None:
            parts.append(lap)
    remarks = []
    gap = greatest(*(wall.height.at(x) - wall.concrete.at(x) for x, _ in (*wall.height.points, *wall.concrete.points)))
    if gap > inches(KNEE_WALL):
        remarks.append(Remark(saying("remark.knee_wall", gap=gap), x0))
    return parts, [_decision(site)], remarks


def _lap(site: Site, left: Length, right: Length, low: Level, wide: Length) -> Part | None:
    """Return the scrap that backs a joint: on top of a cap on the concrete, if it fits there, else under a cap at the joists."""
    figures, wall = site.figures, site.wall
    back, front = -wall.shelf, site.offsets.back
    room = wall.height.least_over(left, right) - wall.concrete.at((left + right) // 2) - figures.plywood
    if site.cap_case == 1 and room < figures.plywood:
        return None
    box = Box(left, right, back, front, low, low.up(figures.plywood))
    why = saying("part.cap_lap")
    return Part(
        Kind.CAP_LAP,
        site.letter,
        Material.PLYWOOD,
        box,
        figures.cap_lap,
        why,
        wide=(front - back).down_to(figures.cut_step),
    )


def _reach(site: Site, side: str) -> Length:
    """Return how far from the concrete corner the cap starts: past it to the sill where this wall runs through."""
    end = site.left if side == "left" else site.right
    if end.what == "framed wall":
        return end.clear
    if end.what == "open end":
        return ZERO
    return -site.wall.shelf if end.through else end.neighbour_cap


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
    if site.cap_case == 1:
        said = saying("decision.cap_1", meets=meets, least=site.figures.cap_overlap)
        return Decision(
            f"{site.letter}.cap", site.letter, said, (saying("alternative.cap_2", thick=site.figures.plywood),)
        )
    said = saying("decision.cap_2", meets=meets, least=site.figures.cap_overlap)
    return Decision(f"{site.letter}.cap", site.letter, said, (saying("alternative.cap_1"),))
