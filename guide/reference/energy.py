"""The rows of the model energy codes for basement walls, as data: what may be continuous, in the bays, or both."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache

from guide.reference.data import Data, read_data


class EnergyOption(Data):
    """One way to have enough, in nominal US R-values."""

    continuous: int = 0
    cavity: int = 0


class EnergyRow(Data):
    """What some zones ask; any one of the options is enough."""

    zones: tuple[str, ...]
    options: tuple[EnergyOption, ...]
    humid: bool = False
    """It is not asked for in warm-humid counties."""


class EffectiveRow(Data):
    """What some zones ask of a whole wall in Canada: RSI with wood and all layers counted, m²K/W."""

    zones: tuple[str, ...]
    rsi: Fraction
    with_hrv: Fraction
    """In a house with a heat-recovery ventilator."""


class _Cited(Data):
    standard: str
    edition: str
    section: str
    seen: str

    @property
    def cited(self) -> str:
        """Standard, edition and table in one line."""
        return f"{self.standard} {self.edition}, {self.section}"


class EnergyTable(_Cited):
    """The table of one edition."""

    row: tuple[EnergyRow, ...]

    def of(self, zone: str | None) -> EnergyRow | None:
        """Return the row of a zone; None when nobody knows the zone."""
        return next((row for row in self.row if zone in row.zones), None)


class EffectiveTable(_Cited):
    """Canada's table."""

    row: tuple[EffectiveRow, ...]

    def of(self, zone: str | None) -> EffectiveRow | None:
        """Return the row of a zone; None where there is none, or nobody knows the zone."""
        return next((row for row in self.row if zone in row.zones), None)


class _Energy(Data):
    table: tuple[EnergyTable, ...]
    canada: EffectiveTable


DEFAULT_ENERGY = "2021"
"""The edition while nobody knows it: no older one asks for more."""


def load_energy(edition: str | None = None) -> EnergyTable:
    """Return the table of an edition of the US model energy code. Raises DataError when the data is not right."""
    return next(table for table in _energy().table if table.edition == (edition or DEFAULT_ENERGY))


def load_effective() -> EffectiveTable:
    """Return Canada's table. Raises DataError when the data is not right."""
    return _energy().canada


@lru_cache(maxsize=1)
def _energy() -> _Energy:
    return read_data("energy.toml", _Energy)
