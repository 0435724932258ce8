"""What no layout of any kind can better, in whole numbers.

By area, where a piece may count for more than its own: of a piece that leaves less than a cut beside it no other piece
could use the rest, so it counts as wide (or as long) as the sheet, if in return pieces smaller than that cut count for
nothing. And by pieces longer than half a sheet: two of those cannot stand in one line along it, so that their widths
have to fit side by side: a purchase of boards, whose least price the checker of the cutting room certifies; by wide
pieces in the same way. Of long ones that keep an edge of the sheet only two find room on one.

All hold for layouts that turn pieces: one that could lie across counts with its smaller share.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator

from guide.buying.cutting.cheapest import cheapest
from guide.buying.cutting.job import Board, CuttingJob, Wanted
from guide.buying.sheets.job import SIDES, Piece, SheetJob


def least_price(job: SheetJob) -> int:
    """Return a price below which no layout lies, checked in whole numbers. 0 for nothing to cut."""
    if not job.pieces:
        return 0
    return max(*_by_area(job), _by_long_pieces(job), _by_wide_pieces(job), _by_edges(job))


def _by_area(job: SheetJob) -> Iterator[int]:
    """Yield the bound by area for each pair of cuts that can make a difference."""
    widest, tall = max(kind.wide for kind in job.kinds) + job.kerf, job.tall + job.kerf
    sizes = Counter((piece.wide + job.kerf, piece.tall + job.kerf, piece.edge) for piece in job.pieces)
    across = _cuts((side for size in sizes for side in size[:2]), widest) if len(job.kinds) == 1 else [0]
    for wide_cut in across:
        for tall_cut in _cuts((side for size in sizes for side in size[:2]), tall):
            area = sum(count * _share(size, widest, tall, wide_cut, tall_cut) for size, count in sizes.items())
            if len(job.kinds) == 1:
                yield -(-area // (widest * tall)) * job.kinds[0].price
            else:
                yield min(-(-area * kind.price // ((kind.wide + job.kerf) * tall)) for kind in job.kinds)


def _cuts(sides: Iterable[int], whole: int) -> list[int]:
    """Return where the counting of sides can change: 0, and every side of at most half the sheet."""
    return [0, *sorted({side for side in sides if 2 * side <= whole})]


def _share(size: tuple[int, int, bool], wide: int, tall: int, wide_cut: int, tall_cut: int) -> int:
    """Return what a piece counts for, lying along or, where it can and keeps no edge, across: the smaller."""
    along = _counted(size[0], wide, wide_cut) * _counted(size[1], tall, tall_cut)
    if size[2] or size[1] > wide or size[0] > tall:
        return along
    return min(along, _counted(size[1], wide, wide_cut) * _counted(size[0], tall, tall_cut))


def _counted(side: int, whole: int, cut: int) -> int:
    """Count a side: nothing below the cut, the whole sheet where less than the cut is left, else as it is."""
    if side < cut:
        return 0
    return whole if whole - side < cut else side


def _by_edges(job: SheetJob) -> int:
    """Count pieces that keep an edge longer than half of it: none shares that edge with another."""
    long = sum(piece.edge and 2 * piece.tall + job.kerf > job.tall for piece in job.pieces)
    return -(-long // SIDES) * min(kind.price for kind in job.kinds)


def _by_long_pieces(job: SheetJob) -> int:
    """Count pieces longer than half a sheet, however they lie: their widths have to fit side by side."""
    ways = [_ways(job, piece) for piece in job.pieces]
    long = [min(wide for wide, _ in way) for way in ways if all(2 * tall + job.kerf > job.tall for _, tall in way)]
    return _least_boards(long, [(kind.wide, kind.price) for kind in job.kinds], job.kerf)


def _by_wide_pieces(job: SheetJob) -> int:
    """Count pieces wider than half a sheet, however they lie: their lengths have to fit end to end."""
    widest, cheapest_kind = max(kind.wide for kind in job.kinds), min(kind.price for kind in job.kinds)
    ways = [_ways(job, piece) for piece in job.pieces]
    wide = [min(tall for _, tall in way) for way in ways if all(2 * wide + job.kerf > widest for wide, _ in way)]
    return _least_boards(wide, [(job.tall, cheapest_kind)], job.kerf)


def _ways(job: SheetJob, piece: Piece) -> list[tuple[int, int]]:
    """Return width and length of a piece, and those it has when it is turned, where it may be and fits a sheet so."""
    turned = not piece.edge and piece.tall <= max(kind.wide for kind in job.kinds) and piece.wide <= job.tall
    return [(piece.wide, piece.tall), *([(piece.tall, piece.wide)] if turned else [])]


def _least_boards(sizes: list[int], boards: list[tuple[int, int]], kerf: int) -> int:
    """Return what boards (length, price) that hold pieces of these sizes come to at least; 0 for no piece."""
    if not sizes:
        return 0
    job = CuttingJob(tuple(Wanted(size) for size in sizes), tuple(Board(*board) for board in boards), kerf)
    return cheapest(job).bound
