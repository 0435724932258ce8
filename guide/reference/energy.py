"""The row of the model energy code for basement walls, as data: what may be continuous, what may be in the bays, or both."""

from __future__ import annotations

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
    note: str = ""


class EnergyTable(Data):
    """The table of one edition."""

    standard: str
    edition: str
    section: str
    seen: str
    row: tuple[EnergyRow, ...]

    @property
    def cited(self) -> str:
        """Standard, edition and table in one line."""
        return f"{self.standard} {self.edition}, {self.section}"

    def of(self, zone: str | None) -> EnergyRow | None:
        """Return the row of a zone; None when nobody knows the zone."""
        return next((row for row in self.row if zone in row.zones), None)


@lru_cache(maxsize=1)
def load_energy() -> EnergyTable:
    """Return the table that ships with wallbrief. Raises DataError when the data is not right."""
    return read_data("energy.toml", EnergyTable)
