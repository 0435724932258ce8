"""The takeoff: how much of each thing the parts and their schedules take, before spare and before whole packs.

It owns one promise: nothing is typed twice. Every quantity is counted on the parts, so that a wall that moves buys
differently by itself. Lumber and sheets are counted where they are cut; everything else is counted here.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from guide.buying.cable import cable_run
from guide.buying.seams import batts_of, rounded_up, runs_of
from guide.layout.parts import Kind, Layout, Part
from guide.lengths import FOOT
from guide.reference.figures import load_figures
from guide.reference.stock import StockItem, load_fasteners, load_stock
from guide.survey.model import Basement

COUNTED_ON = {
    "adhesive": (Kind.FOAM, Kind.RETURN),
    "can_foam": (Kind.FOAM, Kind.RIM, Kind.BUCK),
    "seam_tape": (Kind.FOAM,),
    "gasket": (Kind.BOTTOM_PLATE,),
    "sealant": (Kind.CAP, Kind.LEDGE, Kind.FIREBLOCK, Kind.UPPER_BLOCK),
    "batt": (Kind.STUD, Kind.KING, Kind.TRIMMER, Kind.CRIPPLE),
    "box": (Kind.OUTLET,),
    "cable": (Kind.OUTLET,),
}
"""The kinds of part that each thing is counted on: what their sizes rest on, the quantity rests on."""


@dataclass(frozen=True, slots=True)
class Need:
    """What the job itself takes of one thing."""

    id: str
    """A name of `prompts_data/stock`: of an item or a fastener."""
    quantity: int
    """In `unit`, rounded up once."""
    unit: str
    holds: int
    """What one unit of it yields, in `unit`."""
    takes: str
    """What it is for, in words, with the quantity."""
    rests: frozenset[str]
    """The answers that the sizes of the parts counted rest on."""


def takeoff(layout: Layout) -> tuple[Need, ...]:
    """Return every need but lumber and sheets, in the order of the data; what the job does not take is left out."""
    return (*_by_yield(layout), *_fasteners(layout), *_by_the_job(layout))


def holds(item: StockItem, basement: Basement) -> int:
    """Return what one unit yields: what the person's own first one gave, where they said it, else the figure of the data."""
    if item.first == "can" and basement.first_can is not None:
        figures = load_figures()
        return int(basement.first_can.inch * figures.foam_floor_gap.inch * figures.can_deep.inch)
    if item.first == "tube" and basement.first_tube is not None:
        return basement.first_tube.ticks // FOOT.ticks
    return item.holds


def _by_yield(layout: Layout) -> Iterable[Need]:
    stock, basement = load_stock(), layout.survey.basement
    walls = [runs_of(wall, basement.foam_thickness) for wall in layout.walls]
    for key in walls[0] if walls else ():
        item = stock.item[key]
        total = sum((wall[key] for wall in walls[1:]), start=walls[0][key])
        yield from _need(layout, key, item, rounded_up(total, item.of))
    if basement.batts == "yes":
        yield from _need(
            layout,
            "batt",
            stock.item["batt"],
            sum(batts_of(wall) for wall in layout.round_room),
        )
    boxes = sum(len(wall.of(Kind.OUTLET)) for wall in layout.walls)
    yield from _need(layout, "box", stock.item["box"], boxes)
    yield from _need(layout, "cable", stock.item["cable"], -(-cable_run(layout).ticks // FOOT.ticks))


def _need(layout: Layout, key: str, item: StockItem, quantity: int) -> Iterable[Need]:
    if quantity:
        parts = (part for part in layout.parts.values() if part.kind in COUNTED_ON[key])
        yield Need(
            key, quantity, item.of, holds(item, layout.survey.basement), item.takes.format(n=quantity), rests_of(parts)
        )


def rests_of(parts: Iterable[Part]) -> frozenset[str]:
    """Return the answers that the sizes of these parts rest on."""
    return frozenset().union(*(part.size_rests for part in parts))


def _fasteners(layout: Layout) -> Iterable[Need]:
    for key, fastener in load_fasteners().fastener.items():
        held = [part for part in layout.parts.values() if any(f.fastener == key for f in part.fastenings)]
        count = sum(f.count for part in held for f in part.fastenings if f.fastener == key)
        if count:
            yield Need(key, count, "piece", fastener.per_unit, fastener.takes.format(n=count), rests_of(held))


def _by_the_job(layout: Layout) -> Iterable[Need]:
    """Yield what a job takes whatever its size: protection, bits, blades, chalk."""
    anchors = layout.survey.basement.anchors
    for key, item in load_stock().item.items():
        if item.each_job and item.anchors in (None, anchors):
            yield Need(key, item.each_job, item.of, item.holds, item.takes.format(n=item.each_job), frozenset())
