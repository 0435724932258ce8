"""How well things hold heat back: the values of `prompts_data/materials.toml`, turned into SI once, at this edge.

Everything that reckons with heat does so in SI, as floats: m²K/W for a thing as it stands, mK/W for a metre of it,
W/mK for a conductivity. A value that is missing in the data, or that nothing here names, is an error.
"""

from __future__ import annotations

from dataclasses import dataclass, fields
from functools import lru_cache
from typing import Literal

from guide.reference.data import Data, DataError, read_toml
from guide.reference.units import units

_UNITS = {
    "R/in": ("hour * foot**2 * delta_degF / Btu / inch", "m * K / W"),
    "R": ("hour * foot**2 * delta_degF / Btu", "m**2 * K / W"),
    "W/m/K": ("W / m / K", "W / m / K"),
}
"""The units that the data may use: as pint reads each, and what it becomes."""


class MaterialValue(Data):
    """One value as it stands in data."""

    value: str
    unit: Literal["R/in", "R", "W/m/K"]
    what: str
    source: str

    @property
    def si(self) -> float:
        """The value in SI: mK/W, m²K/W or W/mK."""
        given, wanted = _UNITS[self.unit]
        return float(units().Quantity(float(self.value), given).to(wanted).magnitude)


@dataclass(frozen=True, slots=True)
class Materials:
    """Every value in SI; what each is stands beside it in the data."""

    extruded: float
    expanded: float
    polyiso: float
    batt: float
    empty_bay: float
    wood: float
    gypsum: float
    concrete: float
    inside_film: float
    outside_film: float
    soil: float
    below_grade_bare: float

    def foam(self, kind: str) -> float:
        """Return what a metre of this kind of foam holds back, mK/W; the kinds are those of the question."""
        return {"extruded": self.extruded, "expanded": self.expanded, "polyiso": self.polyiso}[kind]


@lru_cache(maxsize=1)
def load_materials() -> Materials:
    """Return the values that ship with wallbrief. Raises DataError when data and code do not name the same ones."""
    table = material_table()
    if odd := {field.name for field in fields(Materials)}.symmetric_difference(table):
        raise DataError(f"prompts_data/materials.toml: {', '.join(sorted(odd))} is in the data or in the code only")
    return Materials(**{name: each.si for name, each in table.items()})


def material_table() -> dict[str, MaterialValue]:
    """Return every value with its source, by name."""
    return {name: MaterialValue.model_validate(entry) for name, entry in read_toml("materials.toml").items()}


def us_r(resistance: float) -> float:
    """Return a resistance in m²K/W as the US writes it, h sq ft F / Btu."""
    return float(units().Quantity(resistance, _UNITS["R"][1]).to(_UNITS["R"][0]).magnitude)


def metres(inch: float) -> float:
    """Return inches as metres, for thicknesses that heat has to cross."""
    return float(units().Quantity(inch, "inch").to("m").magnitude)
