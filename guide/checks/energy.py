"""The model energy code's row for the basement wall, beside what the wall has.

The row is judged as its notation means: insulation counts by the R printed on it, continuous where no wood breaks it, in
the bays otherwise, and the two are added only where the row itself asks for both.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from guide.checks.findings import Finding, finding
from guide.lengths import Length
from guide.reference.codes import CANADA, DEFAULT_CODE
from guide.reference.energy import EnergyOption, load_energy
from guide.reference.figures import load_figures
from guide.reference.materials import load_materials, metres, us_r
from guide.reference.sayings import say, saying
from guide.survey.model import Basement


@dataclass(frozen=True, slots=True)
class Nominal:
    """The R printed on the insulation."""

    continuous: float
    cavity: float

    def reaches(self, option: EnergyOption) -> bool:
        """Say whether an option's figures are reached; a hundredth is forgiven to the rounding of labels."""
        return self.continuous + 0.01 >= option.continuous and self.cavity + 0.01 >= option.cavity

    @property
    def said(self) -> str:
        """What there is, in words."""
        return say(
            saying(
                "energy_row.yours_both" if self.cavity else "energy_row.yours",
                foam=_r(self.continuous),
                batt=_r(self.cavity),
            )
        )


def nominal(basement: Basement, foam: Length | None = None) -> Nominal:
    """Return what the wall has; `foam` is a thickness to reckon with in place of the one answered."""
    materials = load_materials()
    thick = metres(float((basement.foam_thickness if foam is None else foam).inch))
    return Nominal(
        us_r(thick * materials.foam(basement.foam)), us_r(materials.batt) if basement.batts == "yes" else 0.0
    )


def zone_judged(basement: Basement) -> str | None:
    """Return the climate zone whose row judges the wall; None under another country's code, whose rows are not these."""
    return None if (basement.code or DEFAULT_CODE).startswith(CANADA) else basement.zone


def asked_for(zone: str | None) -> str:
    """Return the row of a zone in words; empty when nobody knows the zone."""
    row = load_energy().of(zone)
    if row is None:
        return ""
    if not row.options:
        return say(saying("energy_row.nothing"))
    options = "; or ".join(map(_said, row.options))
    return say(saying("energy_row.any", options=options, note=row.note)).strip()


def energy_row(basement: Basement) -> Iterator[Finding]:
    """Yield when no option of the zone's row is reached in a basement that is lived in."""
    table, zone = load_energy(), zone_judged(basement)
    row = table.of(zone)
    if row is None or not row.options or basement.use == "storage":
        return
    has = nominal(basement)
    if any(has.reaches(option) for option in row.options):
        return
    figures = load_figures()
    thick = figures.foam_sold_step
    while thick < figures.foam_sold_most and not any(nominal(basement, thick).reaches(each) for each in row.options):
        thick += figures.foam_sold_step
    yield finding(
        "energy_short",
        cited=table.cited,
        zone=zone or "",
        row=asked_for(zone),
        yours=has.said,
        need=thick,
    )


def _said(option: EnergyOption) -> str:
    key = (
        "energy_row.both"
        if option.continuous and option.cavity
        else "energy_row.continuous"
        if option.continuous
        else "energy_row.cavity"
    )
    return say(saying(key, continuous=option.continuous, cavity=option.cavity))


def _r(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")
