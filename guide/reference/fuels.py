"""What heat is bought as: what a unit holds, and how much of that reaches the rooms."""

from __future__ import annotations

from functools import lru_cache

from guide.reference.data import Data, read_toml
from guide.reference.units import units


class Fuel(Data):
    """One way to buy heat."""

    unit: str
    """What the bill counts."""
    energy: str
    """What that holds, as pint reads it."""
    reaches: int
    """Percent of it that reaches the rooms; over 100 for a heat pump."""
    source: str

    @property
    def kwh(self) -> float:
        """The heat that one unit brings into the rooms, kWh."""
        return float(units().Quantity(self.energy).to("kWh").magnitude) * self.reaches / 100


@lru_cache(maxsize=1)
def load_fuels() -> dict[str, Fuel]:
    """Return every fuel by the answer that names it. Raises DataError when the data is not right."""
    return {name: Fuel.model_validate(entry) for name, entry in read_toml("fuels.toml").items()}
