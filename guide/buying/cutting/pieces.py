"""The job as the finder works on it: pieces of one length together, the longest first, in the coarsest whole unit.

The order in which a job lists its pieces and boards is forgotten here, and so cannot change what is found.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from math import gcd

from guide.buying.cutting.job import CuttingJob

Pattern = tuple[int, ...]
"""How many pieces of each length are cut from one board."""


@dataclass(frozen=True, slots=True)
class Pieces:
    """A job by lengths. `weights` and `rooms` count one saw cut with every piece, the last of which may run off."""

    lengths: tuple[int, ...]
    counts: tuple[int, ...]
    weights: tuple[int, ...]
    rooms: tuple[int, ...]
    prices: tuple[int, ...]
    most: tuple[int, ...]
    """How many boards of each kind could be used: as many as there are, or one for each piece."""
    kinds: tuple[int, ...]
    """The place of each board in the job's own list; boards stand here the shortest first, then the cheapest."""
    step: int
    """Prices differ by this or a multiple of it, and are counted in it."""

    def weight(self, pattern: Pattern) -> int:
        """Return the room that a pattern takes."""
        return sum(count * weight for count, weight in zip(pattern, self.weights, strict=True))

    def price(self, boards: tuple[int, ...]) -> int:
        """Return what so many boards of each kind cost, in steps."""
        return sum(count * price for count, price in zip(boards, self.prices, strict=True))


def pieces_of(job: CuttingJob) -> Pieces:
    """Return a job by lengths."""
    counts: Counter[int] = Counter()
    for wanted in job.wanted:
        counts[wanted.length] += wanted.count
    lengths = tuple(sorted((length for length in counts if counts[length]), reverse=True))
    unit = gcd(*(length + job.kerf for length in lengths)) or 1
    step = gcd(*(board.price for board in job.boards)) or 1
    total = sum(counts.values())
    kinds = sorted(range(len(job.boards)), key=lambda n: (job.boards[n].length, job.boards[n].price, n))
    boards = [job.boards[n] for n in kinds]
    return Pieces(
        lengths=lengths,
        counts=tuple(counts[length] for length in lengths),
        weights=tuple((length + job.kerf) // unit for length in lengths),
        rooms=tuple(max(0, board.length - job.trim + job.kerf) // unit for board in boards),
        prices=tuple(board.price // step for board in boards),
        most=tuple(total if board.most is None else min(total, board.most) for board in boards),
        kinds=tuple(kinds),
        step=step,
    )
