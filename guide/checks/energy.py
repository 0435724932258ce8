"""The model energy code's row for the basement wall, beside what the wall has.

The row is judged as its notation means: insulation counts by the R printed on it, continuous where no wood breaks it, in
the bays otherwise, and the two are added only where the row itself asks for both.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from guide.checks.findings import Finding, finding
from guide.checks.heat import assembly_of
from guide.layout.parts import WallLayout
from guide.lengths import Length
from guide.reference.codes import CANADA, DEFAULT_CODE
from guide.reference.energy import EnergyOption, load_effective, load_energy
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


def in_canada(basement: Basement) -> bool:
    """Say whether the wall is judged by Canada's table, which counts in another way."""
    return (basement.code or DEFAULT_CODE).startswith(CANADA)


def options_of(basement: Basement) -> tuple[EnergyOption, ...] | None:
    """Return what the job's edition asks in the job's zone, any one of which is enough; None while nobody knows the zone."""
    row = load_energy(basement.energy).of(basement.zone)
    if row is None:
        return None
    return () if row.humid and basement.humid == "yes" else row.options


def asked_for(basement: Basement) -> str:
    """Return the row of the job's zone in words; empty when nobody knows the zone."""
    if in_canada(basement):
        effective = load_effective().of(basement.zone)
        if effective is None:
            return ""
        return say(saying("energy_row.effective", rsi=_rsi(effective.rsi), hrv=_rsi(effective.with_hrv)))
    options = options_of(basement)
    if options is None:
        return ""
    if not options:
        return say(saying("energy_row.nothing"))
    return say(saying("energy_row.any", options="; or ".join(map(_said, options))))


def energy_row(basement: Basement) -> Iterator[Finding]:
    """Yield when no option of the zone's row is reached in a basement that is lived in."""
    options = options_of(basement)
    if not options or in_canada(basement) or basement.use == "storage":
        return
    has = nominal(basement)
    if any(has.reaches(option) for option in options):
        return
    figures, table = load_figures(), load_energy(basement.energy)
    thick = figures.foam_sold_step
    while thick < figures.foam_sold_most and not any(nominal(basement, thick).reaches(each) for each in options):
        thick += figures.foam_sold_step
    yield finding(
        "energy_short",
        cited=table.cited,
        seen=table.seen,
        zone=basement.zone or "",
        row=asked_for(basement),
        yours=has.said,
        need=thick,
    )


def effective_row(wall: WallLayout, basement: Basement) -> Iterator[Finding]:
    """Yield when a wall that is lived behind in Canada holds less than its zone's effective RSI, by the cautious sum."""
    table = load_effective()
    row = table.of(basement.zone)
    if row is None or not in_canada(basement) or basement.use == "storage":
        return
    has = assembly_of(wall, basement).planes
    if has < row.rsi:
        yield finding(
            "energy_effective",
            wall.letter,
            cited=table.cited,
            seen=table.seen,
            zone=basement.zone or "",
            row=asked_for(basement),
            yours=f"{has:.2f}",
        )


def _rsi(value: Fraction) -> str:
    return f"{float(value):.2f}"


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
