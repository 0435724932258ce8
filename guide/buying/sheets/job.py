"""What is to be cut from sheets and how it was laid out: plain whole numbers, and a check of a layout by counting alone.

A sheet is first ripped from end to end; each strip is then cross-cut. A piece's length stays along the length of the
sheet, so that grain and factory edges stay where they belong, unless the piece may be turned. A saw cut is lost between two strips and
between two pieces; the last one may run off the edge. A strip with a piece that keeps an edge of the sheet is ripped
from its side, so a sheet has two of those at most.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property


@dataclass(frozen=True, slots=True)
class Piece:
    """A rectangle to be cut."""

    wide: int
    tall: int
    edge: bool = False
    """One of its long edges has to be an edge of the sheet."""
    turns: bool = False
    """It may lie across the sheet as well."""


@dataclass(frozen=True, slots=True)
class Kind:
    """A size of sheet on offer; all sizes of a job are equally long."""

    wide: int
    price: int


@dataclass(frozen=True)
class SheetJob:
    """Pieces and the sheets on offer, the narrowest first. Every piece fits the widest."""

    pieces: tuple[Piece, ...]
    kinds: tuple[Kind, ...]
    tall: int
    kerf: int

    @cached_property
    def lying(self) -> tuple[Piece, ...]:
        """The pieces as they lie on a sheet, by number: every one as it is, then every one turned."""
        return (*self.pieces, *(replace(piece, wide=piece.tall, tall=piece.wide) for piece in self.pieces))

    def ways(self, n: int) -> tuple[int, ...]:
        """Return the numbers of the ways in which piece n may lie on the widest sheet."""
        piece, turned = self.pieces[n], n + len(self.pieces)
        can = piece.turns and piece.tall <= max(kind.wide for kind in self.kinds) and piece.wide <= self.tall
        return (n, turned) if can and piece.wide != piece.tall else (n,)


@dataclass(frozen=True, slots=True)
class Rip:
    """One strip, as wide as its widest piece, and the numbers of the pieces cut from it, as `SheetJob.lying` has them."""

    wide: int
    pieces: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Sheet:
    """One sheet and its strips, the widest first."""

    kind: int
    rips: tuple[Rip, ...]


Plan = tuple[Sheet, ...]

SIDES = 2
"""A sheet has so many long edges."""


def price_of(job: SheetJob, plan: Plan) -> int:
    """Return what a layout costs."""
    return sum(job.kinds[sheet.kind].price for sheet in plan)


def keeps_edge(job: SheetJob, strip: Iterable[int]) -> bool:
    """Say whether a strip, given by its pieces, has to be ripped from a side of the sheet."""
    return any(job.lying[n].edge for n in strip)


def sheet_of(job: SheetJob, strips: Sequence[Sequence[int]]) -> Sheet:
    """Return the cheapest sheet that holds these strips, each given by its pieces, in cutting order.

    Raises ValueError when none is wide enough. Strips that keep an edge of the sheet are for its two sides.
    """
    pieces = job.lying
    rips = sorted(
        (
            Rip(max(pieces[n].wide for n in strip), tuple(sorted(strip, key=lambda n: (-pieces[n].tall, n))))
            for strip in strips
        ),
        key=lambda rip: (-rip.wide, rip.pieces),
    )
    used = sum(rip.wide + job.kerf for rip in rips)
    fitting = [n for n, kind in enumerate(job.kinds) if used <= kind.wide + job.kerf]
    if not fitting:
        raise ValueError(f"strips of {used} together fit no sheet.")
    return Sheet(min(fitting, key=lambda n: (job.kinds[n].price, n)), tuple(rips))


def fault(job: SheetJob, plan: Plan) -> str:
    """Return the first thing that is wrong with a layout, in one sentence, or an empty text. Counts, and trusts nobody."""
    cut = [n for sheet in plan for rip in sheet.rips for n in rip.pieces]
    if Counter(n % len(job.pieces) for n in cut) != Counter(range(len(job.pieces))):
        return "some piece is cut twice, or not at all."
    if any(n >= len(job.pieces) and not job.lying[n].turns for n in cut):
        return "a piece is turned that may not be."
    for number, sheet in enumerate(plan, 1):
        if sum(rip.wide + job.kerf for rip in sheet.rips) > job.kinds[sheet.kind].wide + job.kerf:
            return f"the strips of sheet {number} are wider than the sheet."
        if sum(keeps_edge(job, rip.pieces) for rip in sheet.rips) > SIDES:
            return f"more than {SIDES} strips of sheet {number} keep an edge of it."
        for rip in sheet.rips:
            if any(job.lying[n].wide > rip.wide for n in rip.pieces):
                return f"a piece of sheet {number} is wider than its strip."
            if sum(job.lying[n].tall + job.kerf for n in rip.pieces) > job.tall + job.kerf:
                return f"the pieces of a strip of sheet {number} are longer than the sheet."
    return ""
