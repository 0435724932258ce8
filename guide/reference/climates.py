"""A year in each climate zone of the energy codes: monthly means of the outdoor air, as `prompts_data/climates.toml` has them."""

from __future__ import annotations

from functools import lru_cache

from guide.reference.data import Data, read_data

DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
"""Days of the months, January first."""


class Climate(Data):
    """One zone's year."""

    zone: str
    """The zone as the question has it: `zone 5`, `zone 4 marine`."""
    degree_days: tuple[float, float]
    """The range of heating degree days, base 65 °F, that makes a place one of this zone, in °F days."""
    months: tuple[float, ...]
    """Mean outdoor temperature of each month, January first, °C."""


class Climates(Data):
    """Every zone, and what is taken for the room."""

    source: str
    room: float
    """Temperature of the room, °C."""
    base: float
    """Base of the degree days, °C: below it a house is heated."""
    climate: tuple[Climate, ...]

    def of(self, zone: str | None) -> Climate | None:
        """Return a zone's year; None when nobody knows the zone."""
        return next((each for each in self.climate if each.zone == zone), None)

    def degree_days(self, climate: Climate) -> float:
        """Return the heating degree days of a year, from its monthly means, in kelvin days."""
        return sum(max(0.0, self.base - mean) * days for mean, days in zip(climate.months, DAYS, strict=True))


@lru_cache(maxsize=1)
def load_climates() -> Climates:
    """Return the climates that ship with wallbrief. Raises DataError when the data is not right."""
    return read_data("climates.toml", Climates)
