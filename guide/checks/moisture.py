"""Whether batts in front of thin foam get wet: the foam's room face through the year against the dew point of the room.

Air of the room reaches the foam's face through the batt. Where that face is colder than the dew point the water in the
air settles on it, behind the batt, out of sight. The place that counts is the top of the wall, where the concrete
stands in the outdoor air; further down the soil keeps it warmer.

Temperatures in °C, humidity as a share of 1.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import log

from guide.checks.findings import Finding, finding
from guide.checks.heat import assembly_of
from guide.layout.parts import WallLayout
from guide.lengths import Length, Tape
from guide.reference.climates import load_climates
from guide.reference.figures import load_figures
from guide.reference.materials import load_materials
from guide.reference.units import units
from guide.survey.model import Basement

MAGNUS = (17.62, 243.12)
"""Magnus' constants over water (World Meteorological Organization; from memory, high confidence)."""


def dew_point(celsius: float, humidity: float) -> float:
    """Return the temperature at which air of this temperature and humidity is saturated, over water.

    Good to a tenth of a degree from 0 to 60 °C; below 0 it is the dew point over water, not the frost point. `humidity`
    is over 0 and at most 1.
    """
    a, b = MAGNUS
    strength = log(humidity) + a * celsius / (b + celsius)
    return b * strength / (a - strength)


def face_temperature(outside: float, inside: float, outer: float, whole: float) -> float:
    """Return the temperature where `outer` of the `whole` resistance lies toward the outside."""
    return outside + (inside - outside) * outer / whole


@dataclass(frozen=True, slots=True)
class FoamFace:
    """The room face of the foam at the top of a wall, through the year."""

    months: tuple[float, ...]
    """Its mean temperature in each month, January first."""
    dew: float
    """The dew point of the room."""

    @property
    def coldest(self) -> float:
        """The coldest month's."""
        return min(self.months)

    @property
    def wet(self) -> int:
        """How many months it is colder than the dew point."""
        return sum(month < self.dew for month in self.months)


def foam_face(wall: WallLayout, basement: Basement, foam: Length | None = None) -> FoamFace | None:
    """Return the foam's room face through the year, between two studs; None while zone or humidity are not known.

    `foam` is a thickness to reckon with in place of the one answered.
    """
    climates = load_climates()
    climate = climates.of(basement.zone)
    if climate is None or basement.humidity is None:
        return None
    concrete, foamed, *inner = assembly_of(wall, basement, foam).bay.layers
    outer = load_materials().outside_film + concrete + foamed
    whole = outer + sum(inner)
    months = tuple(face_temperature(mean, climates.room, outer, whole) for mean in climate.months)
    return FoamFace(months, dew_point(climates.room, int(basement.humidity) / 100))


def foam_that_would_do(wall: WallLayout, basement: Basement) -> Length | None:
    """Return the thinnest foam on sale whose room face stays dry in every month; None when the thickest does not."""
    figures = load_figures()
    thick = figures.foam_sold_step
    while thick <= figures.foam_sold_most:
        face = foam_face(wall, basement, thick)
        if face is None or not face.wet:
            return thick
        thick += figures.foam_sold_step
    return None


def batts_on_cold_foam(wall: WallLayout, basement: Basement) -> Iterator[Finding]:
    """Yield when batts would keep the foam's room face so cold that the air of the room wets it."""
    face = foam_face(wall, basement) if basement.batts == "yes" else None
    if face is None or not face.wet:
        return
    need = foam_that_would_do(wall, basement)
    yield finding(
        "batts_cold" if need is not None else "batts_wet",
        wall.letter,
        face=degrees(face.coldest, basement.tape),
        dew=degrees(face.dew, basement.tape),
        months=face.wet,
        humidity=basement.humidity or "",
        room=degrees(load_climates().room, basement.tape),
        zone=basement.zone or "",
        need=load_figures().foam_sold_most if need is None else need,
    )


def degrees(celsius: float, tape: Tape) -> str:
    """Print a temperature to a whole degree, in the unit that goes with the tape."""
    shown = units().Quantity(celsius, "degC").to("degF" if tape == "inches" else "degC")
    return f"{float(shown.magnitude):.0f} °{'F' if tape == 'inches' else 'C'}"
