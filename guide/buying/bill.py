"""The bill: what lines of the shopping list cost, in whole cents, as far as their prices are known."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from guide.buying.lines import Line
from guide.reference.prices import Prices


@dataclass(frozen=True, slots=True)
class Bill:
    """A sum of lines: it covers what has a price, and names what has none."""

    cents: int
    priced: int
    """How many lines it covers."""
    unpriced: tuple[str, ...]
    """The wares of the lines without a price."""


def cost_of(line: Line, prices: Prices) -> int | None:
    """Return what a line costs in whole cents, or None when its price is not known."""
    each = prices.of(line.ware)
    return None if each is None else each * line.buy


def bill_of(lines: Iterable[Line], prices: Prices) -> Bill:
    """Return the sum of lines; nothing is guessed for those without a price."""
    costs = [(line.ware, cost_of(line, prices)) for line in lines if line.buy]
    known = [cost for _, cost in costs if cost is not None]
    return Bill(sum(known), len(known), tuple(dict.fromkeys(ware for ware, cost in costs if cost is None)))
