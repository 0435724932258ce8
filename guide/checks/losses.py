"""Heat that goes out through the walls in a year, bare and built, and what the difference saves.

Below the ground heat leaves along arcs through the soil, the longer the deeper: the published method averages the
transmittance from one depth to another. Above the ground it leaves straight. Everything in SI, as floats: metres, W/m²K,
kelvin days, kWh.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import log, pi

from guide.checks.heat import area_under, assembly_of
from guide.layout.parts import WallLayout
from guide.lengths import ZERO
from guide.reference.climates import load_climates
from guide.reference.figures import load_figures
from guide.reference.fuels import load_fuels
from guide.reference.materials import load_materials, metres
from guide.survey.model import Basement


def below_grade_u(top: float, bottom: float, added: float) -> float:
    """Return the average transmittance of a basement wall from one depth below the ground to another.

    `added` is what insulation adds to the bare wall, m²K/W. The depths are from 0 and differ.
    """
    materials = load_materials()
    arc = 2 * materials.soil / pi
    resistance = materials.below_grade_bare + added
    return arc / (bottom - top) * (log(bottom + arc * resistance) - log(top + arc * resistance))


def yearly_heat(loss: float, degree_days: float) -> float:
    """Return the kWh that go out in a year through a loss in W/K, over heating degree days in kelvin days."""
    return loss * degree_days * 24 / 1000


@dataclass(frozen=True, slots=True)
class Saving:
    """What goes out through a wall in a year, kWh."""

    bare: float
    built: float

    @property
    def saved(self) -> float:
        """What the wall keeps in the house."""
        return self.bare - self.built


def price_of(kwh: float, basement: Basement) -> float | None:
    """Return what heat in the rooms costs, in dollars, at the person's own price; None while there is none."""
    fuel = load_fuels().get(basement.heat or "")
    if fuel is None or basement.heat_price is None:
        return None
    return kwh / fuel.kwh * basement.heat_price / 100


def saving_of(wall: WallLayout, basement: Basement) -> Saving | None:
    """Return what a wall saves in a year; None while the climate zone is not known.

    The concrete is taken to stand out of the ground by the usual height and to go on below it to the slab. Openings
    count as wall, and the soil is taken to be as cold as the air: it is a round figure, for comparing.
    """
    climates, materials = load_climates(), load_materials()
    climate = climates.of(basement.zone)
    if climate is None:
        return None
    length = wall.wall.length
    out = load_figures().grade_below
    wide, high = metres(float(length.inch)), metres(float(out.inch))
    deep = metres(area_under(wall.wall.concrete, ZERO, length) / float(length.inch)) - high
    bare = materials.concrete + materials.inside_film
    built = assembly_of(wall, basement).parallel
    losses = [
        wide * (high / (materials.outside_film + held) + deep * below_grade_u(0, deep, held - bare))
        for held in (bare, built)
    ]
    return Saving(*(yearly_heat(loss, climates.degree_days(climate)) for loss in losses))
