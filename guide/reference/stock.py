"""What is bought: fasteners and the rules that place them, and stock with the units a shop sells it in."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Literal, get_args

from guide.lengths import FOOT, Length, Unreadable, in_inches, inches
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
Stage = Literal["first", "second", "inspected"]
"""When a thing is bought: before the first work on a wall; before framing; only once an inspector has looked."""

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
    stage: Stage = "first"
    steps: tuple[str, ...] = ()
    """The steps whose HOLD may change how much of it is needed."""
    words: tuple[str, ...]
    """What a person may call it, in the singular and without “of”."""
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
    stage: Stage = "first"
    steps: tuple[str, ...] = ()
    """The steps whose HOLD may change how much of it is needed."""
    words: tuple[str, ...]
    """What a person may call it, in the singular and without “of”."""
    lengths: tuple[str, ...] = ()
    """Sticks: the lengths a yard sells, shortest first."""
    sheets: tuple[str, ...] = ()
    """Sheets: the sizes a yard sells, such as `4 by 8 ft`."""
    holds: int = 1
    """What one unit yields, in the unit that `of` names."""
    of: str = "piece"
    first: Literal["can", "tube"] | None = None
    """Whose first one on the job tells what one yields."""
    yard_rips: bool = False
    """The yard's panel saw makes strips of it that fit any car; without it a sheet that lies flat nowhere is delivered."""
    takes: str = ""
    """What it is for, with `{n}` for how much of `of` the job takes; cut stock says it where it is cut."""
    each_job: int = 0
    """How many every job takes, whatever its size."""
    anchors: Literal["screws", "pins"] | None = None
    """Only when the plate is fastened this way."""
    spare: int = 0
    """Percent bought over the need."""
    culls: int = 0
    """Sticks: how many of ten are too crooked to cut, until the person has looked at the pile."""
    culled: str = ""
    """What is bought for them, with `{n}` for how many of ten."""
    over: int = 0
    """Whole units bought over that."""
    source: str

    @property
    def sizes(self) -> tuple[str, ...]:
        """How each size it is sold in is asked for; none where there is only one."""
        return self.sheets or tuple(stick_size(inches(length)) for length in self.lengths)

    def size_named(self, label: str) -> str | None:
        """Return the size that a person's words name, as `sizes` has it, or None."""
        sheet = re.fullmatch(r"\s*(\d+)\s*(?:ft|')?\s*(?:x|×|by)\s*(\d+)\s*(?:ft|')?\s*", label.casefold())
        size = f"{sheet[1]} by {sheet[2]} ft" if sheet else ""
        if self.lengths:
            try:
                size = stick_size(inches(label))
            except Unreadable:
                return None
        return size if size in self.sizes else None


def stick_size(length: Length) -> str:
    """Return how a length of lumber is asked for: whole feet, or inches for a pre-cut."""
    feet, rest = divmod(length.inch, 12)
    return f"{in_inches(length)} in" if rest else f"{feet} ft"


def sheet_size(wide: Length, tall: Length) -> str:
    """Return how a sheet is asked for: `4 by 8 ft`."""
    return f"{wide.inch // 12} by {tall.inch // 12} ft"


def sheet_wide(size: str) -> Length:
    """Return the width of a sheet from how it is asked for."""
    return FOOT * int(size.split()[0])


class Way(Data):
    """A way home."""

    say: str
    longest: str
    """The longest thing it holds; 0 where it holds nothing long."""
    widest: str
    """The widest thing that lies flat in it."""
    source: str


class Transport(Data):
    """`prompts_data/stock/transport.toml`."""

    way: dict[str, Way]


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


@lru_cache(maxsize=1)
def load_ways() -> dict[str, Way]:
    """Return every way home by its name in the question. Raises DataError when the data is not right."""
    return read_data("stock/transport.toml", Transport).way


def wares() -> dict[str, str]:
    """Return everything on sale by the name that price files and programs give it, with what it is in words.

    A thing sold in several sizes has one ware a size: `stud_2x4 8 ft`.
    """
    found = {key: f"{fastener.name} ({fastener.unit})" for key, fastener in load_fasteners().fastener.items()}
    for key, item in load_stock().item.items():
        for size in item.sizes or ("",):
            found[f"{key} {size}".strip()] = f"{item.name}{', ' if size else ''}{size} ({item.unit})"
    return found
