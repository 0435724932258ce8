"""Every check, in the order a person should hear of it."""

from __future__ import annotations

from guide.checks.audit import audit, corner_roles
from guide.checks.corners import corner_findings
from guide.checks.drains import drain_findings
from guide.checks.electrical import outlet_findings
from guide.checks.energy import energy_row
from guide.checks.findings import Finding
from guide.checks.gate import gate
from guide.checks.house import house_findings
from guide.checks.walls import untold_partitions, wall_findings
from guide.layout.parts import Layout
from guide.reference.codes import CodeProfile
from guide.reference.findings import Severity
from guide.survey.model import Survey


def check(layout: Layout, code: CodeProfile) -> tuple[Finding, ...]:
    """Return every finding: the worst first, the whole basement before its walls, walls as walked, from the left."""
    survey = layout.survey
    found = [*basement_findings(survey, code)]
    for wall in layout.walls:
        found += wall_findings(wall, survey.basement, code)
        found += audit(wall)
    found += corner_roles(layout)
    found += untold_partitions(layout)
    found += outlet_findings(layout, code)
    found += drain_findings(layout)
    order = list(Severity)
    letters = [None, *(wall.letter for wall in survey.walls)]
    return tuple(sorted(found, key=lambda f: (order.index(f.severity), letters.index(f.wall))))


def basement_findings(survey: Survey, code: CodeProfile) -> tuple[Finding, ...]:
    """Return the findings that need no layout: of the whole basement, and whether the room closes."""
    house = (*gate(survey, code), *house_findings(survey.basement, code))
    return (*house, *energy_row(survey.basement), *corner_findings(survey))


def stopped(findings: tuple[Finding, ...]) -> bool:
    """Say whether a STOP stands: then no cut and no shopping list is printed."""
    return any(finding.severity is Severity.STOP for finding in findings)
