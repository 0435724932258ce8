"""What is bought: fasteners and the rules that place them, and stock with the units a shop sells it in."""

from __future__ import annotations

from functools import lru_cache
from typing import Literal

from guide.lengths import Length, inches
from guide.reference.data import Data, read_data


class Fastener(Data):
    """One fastener as a shop sells it."""

    name: str
    short: str
    """What it is called in a schedule."""
    unit: str
    per_unit: int
    """How many are in a unit."""
    spare: int
    """Percent bought over the count."""
    source: str


class FasteningRule(Data):
    """How one kind of part is held."""

    kind: str
    fastener: str
    how: Literal["each", "marked", "per_support", "along"]
    """`each`: `count` per piece. `marked`: marked out at `spacing` at most. `per_support`: `count` at each joist or
    block over the piece. `along`: `count` rows along the piece at `spacing` at most."""
    count: int = 1
    spacing: str | None = None
    anchors: Literal["screws", "pins"] | None = None
    """Only when the plate is fastened this way."""
    say: str
    source: str

    @property
    def spacing_length(self) -> Length:
        """The spacing as a length; rules without one have none to give."""
        return inches(self.spacing or "0")


class FastenerBook(Data):
    """`prompts_data/stock/fasteners.toml`."""

    fastener: dict[str, Fastener]
    rule: tuple[FasteningRule, ...]


class StockItem(Data):
    """Something sold by length, by sheet or by the piece."""

    name: str
    unit: str
    aisle: Literal["lumber", "foam and air sealing", "fasteners", "fireblocking", "electrical", "safety"]
    lengths: tuple[str, ...] = ()
    """Sticks: the lengths a yard sells, shortest first."""
    holds: str = ""
    """What one unit yields, as a plain number in the unit that `of` names."""
    of: str = ""
    spare: int = 0
    """Percent bought over the need."""
    source: str


class Stock(Data):
    """`prompts_data/stock/stock.toml`."""

    item: dict[str, StockItem]


@lru_cache(maxsize=1)
def load_fasteners() -> FastenerBook:
    """Return fasteners and their rules. Raises DataError when the data is not right."""
    return read_data("stock/fasteners.toml", FastenerBook)


@lru_cache(maxsize=1)
def load_stock() -> Stock:
    """Return everything else that is bought. Raises DataError when the data is not right."""
    return read_data("stock/stock.toml", Stock)
