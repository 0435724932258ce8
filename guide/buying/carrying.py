"""How things get home: what fits the person's way, what the yard cuts first, what has to be delivered."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal

from guide.layout.parts import Part
from guide.lengths import ZERO, Length, greatest, inches
from guide.reference.stock import StockItem, Way, load_ways
from guide.survey.model import Basement

Carry = Literal["carried", "yard", "delivered"]
"""It fits; the yard cuts it, and then it fits; the yard brings it."""


def way_of(basement: Basement) -> Way:
    """Return the person's way home; a car until they say otherwise."""
    return load_ways()[basement.transport or "car"]


def stick_carry(length: Length, cuts: Iterable[Length], basement: Basement) -> Carry:
    """Return how a stick gets home: whole, cut to its pieces at the yard, or by the yard's lorry."""
    longest = inches(way_of(basement).longest)
    if length <= longest:
        return "carried"
    return "yard" if greatest(ZERO, *cuts) <= longest else "delivered"


def sheet_carry(item: StockItem, wide: Length, tall: Length, pieces: Iterable[Part], basement: Basement) -> Carry:
    """Return how a sheet gets home. One that the yard rips goes as strips where it does not lie flat, or nobody can rip."""
    way = way_of(basement)
    longest, widest = inches(way.longest), inches(way.widest)
    if wide <= widest and tall <= longest and not (item.yard_rips and basement.rips == "yard"):
        return "carried"
    strips = all((part.across or wide) <= widest and part.along <= longest for part in pieces)
    return "yard" if item.yard_rips and strips else "delivered"
