"""A first layout by rules of thumb: pieces into strips, strips into sheets, in several orders, the cheapest kept."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import product

from guide.buying.sheets.job import SIDES, Plan, SheetJob, keeps_edge, price_of, sheet_of

Strips = list[list[int]]


def quick_plan(job: SheetJob) -> Plan:
    """Return the cheapest layout that first fit and best fit find. The same job gives the same layout."""
    pieces = job.lying
    ways = [job.ways(n) for n in range(len(job.pieces))]
    turned = {  # every piece as it is; the smaller side of those that may be turned across the sheet; the larger one
        tuple(way[0] for way in ways),
        tuple(min(way, key=lambda n: (pieces[n].wide, n)) for way in ways),
        tuple(max(way, key=lambda n: (pieces[n].wide, -n)) for way in ways),
    }
    orders: tuple[Callable[[int], tuple[int, ...]], ...] = (
        lambda n: (-pieces[n].wide, -pieces[n].tall, n),
        lambda n: (-pieces[n].tall, -pieces[n].wide, n),
        lambda n: (-pieces[n].wide * pieces[n].tall, -pieces[n].wide, n),
    )
    plans = []
    for lying, order, tightest in product(sorted(turned), orders, (False, True)):
        strips = _strips(job, sorted(lying, key=order), tightest=tightest)
        widest = max((pieces[n].wide for n in lying), default=0)
        plans += [
            _sheets(job, strips, widest=kind.wide, tightest=tightest) for kind in job.kinds if widest <= kind.wide
        ]
    return min(plans, key=lambda plan: (price_of(job, plan), len(plan)), default=())


def _strips(job: SheetJob, order: Sequence[int], *, tightest: bool) -> Strips:
    """Put pieces into strips: a piece goes where it is no wider than the strip and there is length left for it."""
    pieces, strips = job.lying, list[list[int]]()
    wide, left = list[int](), list[int]()
    for n in order:
        fits = [s for s in range(len(strips)) if pieces[n].wide <= wide[s] and pieces[n].tall <= left[s]]
        if not fits:
            strips.append([])
            wide.append(pieces[n].wide)
            left.append(job.tall)
            fits = [len(strips) - 1]
        at = min(fits, key=lambda s: (wide[s] - pieces[n].wide, left[s], s)) if tightest else fits[0]
        strips[at].append(n)
        left[at] -= pieces[n].tall + job.kerf
    return strips


def _sheets(job: SheetJob, strips: Strips, *, widest: int, tightest: bool) -> Plan:
    """Put strips into sheets of one size, the widest strip first; each sheet then shrinks to the cheapest that holds it."""
    wide = [max(job.lying[n].wide for n in strip) for strip in strips]
    edge = [keeps_edge(job, strip) for strip in strips]
    sheets, left, sides = list[Strips](), list[int](), list[int]()
    for s in sorted(range(len(strips)), key=lambda s: (-wide[s], s)):
        fits = [k for k in range(len(sheets)) if wide[s] <= left[k] and edge[s] <= sides[k]]
        if not fits:
            sheets.append([])
            left.append(widest)
            sides.append(SIDES)
            fits = [len(sheets) - 1]
        at = min(fits, key=lambda k: (left[k], k)) if tightest else fits[0]
        sheets[at].append(strips[s])
        left[at] -= wide[s] + job.kerf
        sides[at] -= edge[s]
    return tuple(sheet_of(job, each) for each in sheets)
