"""What the job sheet prints for whoever does the wiring: rules of the edition, room in boxes, holes that need no plate."""

from __future__ import annotations

from guide.buying.cable import cable_run
from guide.lengths import ZERO, Length, greatest, least, with_unit
from guide.reference.codes import CANADA, DEFAULT_ELECTRICAL, CodeProfile
from guide.reference.electrical import load_wiring
from guide.reference.figures import load_figures
from guide.reference.sayings import say, saying
from guide.sheets.plan import Plan

GAUGES = ("14", "12")
"""The wires of 15 and 20 A circuits."""
CABLES = (1, 2, 3)
"""Cables that meet in a box: the last of a row, one along it, one where it branches."""


def wiring_rules(plan: Plan) -> tuple[tuple[str, str, str], ...]:
    """Return each rule with where it stands and how sure we are; none under a code whose electrical rules are not here."""
    basement = plan.survey.basement
    if (basement.code or "").startswith(CANADA):
        return ()
    return load_wiring().rules(basement.electrical or DEFAULT_ELECTRICAL, basement.use)


def fill_rows() -> list[tuple[str, ...]]:
    """Return the cubic inches a box needs, one row for each number of cables."""
    fill = load_wiring().fill
    return [(str(cables), *(f"{float(fill.needs(gauge, cables)):g}" for gauge in GAUGES)) for cables in CABLES]


def fill_cited(plan: Plan) -> str:
    """Return where the room in a box stands in the edition, and how sure we are."""
    wiring, edition = load_wiring(), plan.survey.basement.electrical or DEFAULT_ELECTRICAL
    return f"{wiring.standard} {edition}, {wiring.fill.sections[edition]}; {wiring.fill.seen}"


def cable_said(plan: Plan) -> str:
    """Return how much cable joins the new boxes and how it runs, in one sentence; empty where nothing is joined."""
    run, figures = cable_run(plan.layout), load_figures()
    if run <= ZERO:
        return ""
    what = saying("wiring.cable", run=run, high=figures.cable_height, free=figures.cable_free)
    return say(what, plan.tape, plan.guessed)


def bare_hole(deep: Length, code: CodeProfile) -> Length:
    """Return the largest hole in the middle of a stud so deep that needs no steel plate; 0 where every hole needs one."""
    return greatest(deep - code.cable_setback.length * 2, ZERO)


def largest_hole(deep: Length, code: CodeProfile) -> Length:
    """Return the largest hole that may be bored in the middle of a stud so deep that carries nothing: its share, or its edges."""
    share = Length(deep.ticks * int(code.hole_share.value) // 100)
    return least(share, deep - code.hole_edge.length * 2)


def stud_holes(plan: Plan) -> tuple[str, str]:
    """Return the largest hole in a stud of this job that needs no steel plate, empty where there is none, and the largest at all."""
    deep = load_figures().for_stud(plan.survey.basement.stud).stud_deep
    bare, largest = bare_hole(deep, plan.code), largest_hole(deep, plan.code)
    return with_unit(bare, plan.tape, toward="down") if bare > ZERO else "", with_unit(
        largest, plan.tape, toward="down"
    )
