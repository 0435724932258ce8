"""What wallbrief comes to about the energy code's row and the climate zones."""

from __future__ import annotations

from collections.abc import Callable

from guide.checks.energy import energy_row
from guide.reference.climates import load_climates
from tests.jobs import job, survey_of, wall


def energy(zone: str, thick: str, batts: str) -> str:
    """Return whether a wall with extruded foam so thick, and R-13 batts or none, is `short` of its zone's row or not."""
    survey = survey_of(job([wall()], zone=zone, foam_thickness=thick, batts=batts))
    return "short" if list(energy_row(survey.basement)) else "reached"


def degree_days(zone: str) -> float:
    """Return the heating degree days of the zone's year, base 65 °F, in °F days."""
    climates = load_climates()
    climate = climates.of(zone)
    assert climate is not None
    return climates.degree_days(climate) * 1.8


OURS: dict[str, Callable[..., float | str]] = {each.__name__: each for each in (energy, degree_days)}
