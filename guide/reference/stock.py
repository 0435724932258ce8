"""What is bought: fasteners and the rules that place them, and stock with the units a shop sells it in."""

from __future__ import annotations

from functools import lru_cache
from typing import Literal, get_args

from guide.lengths import Length, inches
from guide.reference.data import Data, read_data

Aisle = Literal[
    "lumber",
    "foam and air sealing",
    "fasteners",
    "fireblocking",
    "electrical",
    "safety",
    "blades, chalk and the rest",
    "drywall, after the inspections",
]
AISLES: tuple[Aisle, ...] = get_args(Aisle)
"""Where a shop keeps things, in the order walked: long and heavy first."""


class Fastener(Data):
    """One fastener as a shop sells it."""

    name: str
    short: str
    """What it is called in a schedule."""
    unit: str
    many: str
    """The unit when there are several."""
    per_unit: int
    """How many are in a unit."""
    spare: int
    """Percent bought over the count."""
    takes: str
    """What it is for, with `{n}` for how many."""
    treated: bool = False
    """Fit for treated wood: hot-dip galvanised, stainless, or coated for it by the maker's word."""
    source: str


class FasteningRule(Data):
    """How one kind of part is held."""

    kind: str
    fastener: str
    how: Literal["each", "marked", "per_support", "along", "over_uprights"]
    """`each`: `count` per piece. `marked`: marked out at `spacing` at most. `per_support`: `count` at each joist or
    block over the piece. `along`: `count` rows along the piece at `spacing` at most. `over_uprights`: a row up every
    upright behind the piece, at `spacing` at most."""
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
    many: str = ""
    """The unit when there are several, where that is not the unit with an s."""
    aisle: Aisle
    lengths: tuple[str, ...] = ()
    """Sticks: the lengths a yard sells, shortest first."""
    holds: int = 1
    """What one unit yields, in the unit that `of` names."""
    of: str = "piece"
    takes: str = ""
    """What it is for, with `{n}` for how much of `of` the job takes; cut stock says it where it is cut."""
    each_job: int = 0
    """How many every job takes, whatever its size."""
    anchors: Literal["screws", "pins"] | None = None
    """Only when the plate is fastened this way."""
    spare: int = 0
    """Percent bought over the need."""
    over: int = 0
    """Whole units bought over that."""
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
