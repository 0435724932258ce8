"""From parts to sheets: what is cut from which sheet, and how sure it is that no layout could do with less."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import gcd

from guide.layout.parts import Part
from guide.lengths import Length

Offcut = tuple[Length, Length, str]
"""Width and length of a part of a sheet, and the mark of the piece it is cut out of; empty for one that is at home."""


@dataclass(frozen=True, slots=True)
class Strip:
    """One strip ripped from end to end of a sheet."""

    wide: Length
    parts: tuple[Part, ...]
    """In cutting order, the longest first."""
    rest: Length
    """What is left of its length, never below 0."""
    edge: bool
    """A piece of it keeps a long edge of the sheet, so that it is ripped from a side."""


@dataclass(frozen=True, slots=True)
class CutSheet:
    """One sheet and how it is cut."""

    wide: Length
    tall: Length
    strips: tuple[Strip, ...]
    rest: Length
    """What is left of its width, never below 0."""
    out_of: str = ""
    """The mark of the piece it is cut out of for an opening; empty for a sheet, and for an offcut at home."""

    @property
    def parts(self) -> tuple[Part, ...]:
        """Every part cut from it."""
        return tuple(part for strip in self.strips for part in strip.parts)


@dataclass(frozen=True, slots=True)
class SheetGoods:
    """The sheets of one material."""

    item: str
    """A name of `prompts_data/stock/stock.toml`."""
    sheets: tuple[CutSheet, ...]
    """What is bought."""
    offcuts: tuple[CutSheet, ...]
    """What gives some of the pieces first: what is at home, then what is cut out for openings."""
    too_large: tuple[Part, ...]
    """The parts that no sheet on the list is large enough for."""
    priced: bool
    """Money decided; else the number of sheets did."""
    total: int
    """All sheets together, in cents where money decided, else how many."""
    least: int
    """No layout of any kind takes less for the pieces that no offcut gives: checked in whole numbers."""

    @property
    def proven(self) -> bool:
        """No layout of any kind takes less."""
        return self.total == self.least


def sheets_from(
    item: str,
    parts: Sequence[Part],
    *,
    wide: Length,
    tall: Length,
    kerf: Length,
    prices: Mapping[Length, int],
    offcuts: Sequence[Offcut] = (),
    edges: frozenset[str] = frozenset(),
    turns: bool = False,
) -> SheetGoods:
    """Return the sheets that hold every part. `kerf` is lost at each cut; `offcuts` go first.

    Parts whose id is in `edges` keep a long edge of their sheet, and so come from no offcut. Where the material has no
    grain and no lapped edge, it `turns`: then the others may lie across their sheet, and say so by `lies`.

    Sheets are `wide`; where prices of that size and of narrower ones are known (`prices`, by width, in cents), those are
    on offer too, and the cheapest purchase is looked for. The same parts in any order give the same sheets.
    """
    from guide.buying.sheets.bound import least_price  # the talk need not wait for the solver
    from guide.buying.sheets.job import Kind, Piece, SheetJob, price_of
    from guide.buying.sheets.quick import quick_plan
    from guide.buying.sheets.search import cheaper_plan

    priced = wide in prices
    offered = sorted({wide, *(size for size in prices if priced and size < wide)})
    fitting = sorted(
        (part for part in parts if _wide(part, wide) <= wide and part.along <= tall),
        key=lambda part: (-_wide(part, wide).ticks, -part.along.ticks, part.id),
    )
    used, fitting = _from_offcuts(offcuts, fitting, edges, wide, kerf, turns=turns)
    sizes = [each.ticks for part in fitting for each in (_wide(part, wide), part.along)]
    unit = gcd(tall.ticks, kerf.ticks, *(size.ticks for size in offered), *sizes)
    job = SheetJob(
        tuple(
            Piece(
                _wide(part, wide).ticks // unit,
                part.along.ticks // unit,
                edge=part.id in edges,
                turns=turns and part.id not in edges,
            )
            for part in fitting
        ),
        tuple(Kind(size.ticks // unit, prices[size] if priced else 1) for size in offered),
        tall.ticks // unit,
        kerf.ticks // unit,
    )
    plan, least = quick_plan(job), least_price(job)
    while price_of(job, plan) > least and (better := cheaper_plan(job, plan)) is not None:
        plan = better
    lying = [*fitting, *(_turned(part) for part in fitting)]
    sheets = [
        _cut(
            Length(job.kinds[sheet.kind].wide * unit),
            tall,
            kerf,
            [[lying[n] for n in rip.pieces] for rip in sheet.rips],
            wide,
            edges,
        )
        for sheet in plan
    ]
    too_large = tuple(part for part in parts if _wide(part, wide) > wide or part.along > tall)
    ordered = tuple(sorted(sheets, key=lambda sheet: (-sheet.wide.ticks, sheet.parts[0].id)))
    return SheetGoods(item, ordered, used, too_large, priced, price_of(job, plan), least)


def _from_offcuts(
    offcuts: Sequence[Offcut], parts: Sequence[Part], edges: frozenset[str], wide: Length, kerf: Length, *, turns: bool
) -> tuple[tuple[CutSheet, ...], list[Part]]:
    """Cut what fits from each offcut, the largest pieces first, and return the offcuts used, and the parts left in order.

    A strip is filled from end to end before the next one is begun beside it. Widths are those of the parts: a piece as
    wide as a whole sheet comes from no offcut.
    """
    left, used = list(parts), []
    for across, along, out_of in offcuts:
        strips: list[list[Part]] = []
        room = across
        free = (part for part in left if part.id not in edges)
        for part in sorted(free, key=lambda part: (-_wide(part, wide).ticks * part.along.ticks, part.id)):
            for lying in (part, _turned(part)) if turns and part.across else (part,):
                mine = _wide(lying, wide)
                strip = next(
                    (s for s in strips if mine <= _wide(s[0], wide) and _ends(s, kerf) + lying.along <= along), None
                )
                if strip is not None:
                    strip.append(lying)
                    break
                if mine <= room and lying.along <= along:
                    strips.append([lying])
                    room = room - mine - kerf
                    break
        if strips:
            cut = {part.id for strip in strips for part in strip}
            left = [part for part in left if part.id not in cut]
            used.append(replace(_cut(across, along, kerf, strips, wide), out_of=out_of))
    return tuple(used), left


def _ends(strip: Sequence[Part], kerf: Length) -> Length:
    """Return where the last saw cut of a strip ends."""
    return sum((part.along + kerf for part in strip), start=Length(0))


def _turned(part: Part) -> Part:
    return replace(part, lies=not part.lies)


def _wide(part: Part, sheet: Length) -> Length:
    return part.across or sheet


def _cut(
    wide: Length,
    tall: Length,
    kerf: Length,
    strips: Sequence[Sequence[Part]],
    sheet: Length,
    edges: frozenset[str] = frozenset(),
) -> CutSheet:
    """Return a sheet; the saw cut after its last strip, and after the last piece of a strip, may run off the edge."""
    ripped = []
    for parts in strips:
        widest = max(parts, key=lambda part: _wide(part, sheet).ticks)
        used = sum((part.along + kerf for part in parts), start=Length(0))
        side = any(part.id in edges for part in parts)
        ripped.append(Strip(_wide(widest, sheet), tuple(parts), max(Length(0), tall - used), side))
    used = sum((strip.wide + kerf for strip in ripped), start=Length(0))
    return CutSheet(wide, tall, tuple(ripped), max(Length(0), wide - used))
