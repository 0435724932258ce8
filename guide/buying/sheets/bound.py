"""What no layout of any kind can better, in whole numbers.

By area, where a piece may count for more than its own: of a piece that leaves less than a cut beside it no other piece
could use the rest, so it counts as wide (or as long) as the sheet, if in return pieces smaller than that cut count for
nothing. And by pieces longer than half a sheet: two of those cannot stand in one line along it, so that their widths
have to fit side by side: a purchase of boards, whose least price the checker of the cutting room certifies.

Both hold for layouts that turn pieces: one that could lie across counts with its smaller share.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator

from guide.buying.cutting.cheapest import cheapest
from guide.buying.cutting.job import Board, CuttingJob, Wanted
from guide.buying.sheets.job import SheetJob


def least_price(job: SheetJob) -> int:
    """Return a price below which no layout lies, checked in whole numbers. 0 for nothing to cut."""
    if not job.pieces:
        return 0
    return max(*_by_area(job), _by_long_pieces(job))


def _by_area(job: SheetJob) -> Iterator[int]:
    """Yield the bound by area for each pair of cuts that can make a difference."""
    widest, tall = max(kind.wide for kind in job.kinds) + job.kerf, job.tall + job.kerf
    sizes = Counter((piece.wide + job.kerf, piece.tall + job.kerf) for piece in job.pieces)
    across = _cuts((side for size in sizes for side in size), widest) if len(job.kinds) == 1 else [0]
    for wide_cut in across:
        for tall_cut in _cuts((side for size in sizes for side in size), tall):
            area = sum(count * _share(size, widest, tall, wide_cut, tall_cut) for size, count in sizes.items())
            if len(job.kinds) == 1:
                yield -(-area // (widest * tall)) * job.kinds[0].price
            else:
                yield min(-(-area * kind.price // ((kind.wide + job.kerf) * tall)) for kind in job.kinds)


def _cuts(sides: Iterable[int], whole: int) -> list[int]:
    """Return where the counting of sides can change: 0, and every side of at most half the sheet."""
    return [0, *sorted({side for side in sides if 2 * side <= whole})]


def _share(size: tuple[int, int], wide: int, tall: int, wide_cut: int, tall_cut: int) -> int:
    """Return what a piece counts for, lying along or, where it can, across: the smaller."""
    along = _counted(size[0], wide, wide_cut) * _counted(size[1], tall, tall_cut)
    if size[1] > wide or size[0] > tall:
        return along
    return min(along, _counted(size[1], wide, wide_cut) * _counted(size[0], tall, tall_cut))


def _counted(side: int, whole: int, cut: int) -> int:
    """Count a side: nothing below the cut, the whole sheet where less than the cut is left, else as it is."""
    if side < cut:
        return 0
    return whole if whole - side < cut else side


def _by_long_pieces(job: SheetJob) -> int:
    widest = max((kind.wide for kind in job.kinds), default=0)
    long = [
        piece
        for piece in job.pieces
        if 2 * piece.tall + job.kerf > job.tall and (piece.tall > widest or 2 * piece.wide + job.kerf > job.tall)
    ]
    if not long:
        return 0
    boards = tuple(Board(kind.wide, kind.price) for kind in job.kinds)
    wanted = tuple(Wanted(piece.wide) for piece in long)
    return cheapest(CuttingJob(wanted, boards, job.kerf)).bound
