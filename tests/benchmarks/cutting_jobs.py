"""Seeded cutting jobs for the benchmark: basements, random mixes, and two published classes made anew from their description.

Lengths are sixteenths of an inch and prices are invented cents, except in the published classes, which count boards.
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterable

from guide.buying.cutting.job import Board, CuttingJob, Wanted

FOOT = 12 * 16
EIGHT = 8 * FOOT


def basement(seed: int) -> CuttingJob:
    """Return three to ten walls of uprights that follow a sloping slab, plates, blocks and openings; 60 pieces to 400."""
    chance = random.Random(seed)
    dear = chance.uniform(40, 75)
    feet = [92.625 / 12, 8, 10, 12, 16][chance.randint(0, 1) :]
    boards = [Board(round(each * FOOT), round(dear * each * chance.uniform(0.75, 1.3))) for each in feet]
    lengths: list[int] = []
    while len(lengths) < 60:
        lengths = [length for _ in range(chance.randint(3, 10)) for length in _wall(chance)]
    return _job(lengths[:400], boards, kerf=2)


def _wall(chance: random.Random) -> Iterable[int]:
    long = chance.randint(EIGHT, 28 * FOOT)
    tall, slope = chance.randint(82 * 16, 93 * 16), chance.uniform(-1.5, 1.5)
    studs = long // 256 + 2
    yield from (tall + int(slope * number) for number in range(studs))
    for _ in ("bottom", "top"):
        left = long
        while left:
            take = min(left, chance.choice((8, 8, 10, 12)) * FOOT if left > EIGHT else left)
            if 0 < left - take < 2 * FOOT:
                take = left - 2 * FOOT
            yield take
            left -= take
    if chance.random() < 0.6:
        yield from [232] * (studs - 1)
    if chance.random() < 0.4:
        yield from [chance.randint(2 * FOOT, 5 * FOOT)] * 3
        yield from [chance.randint(128, 480)] * chance.randint(2, 6)


def mix(seed: int) -> CuttingJob:
    """Return 60 to 400 pieces of 8 to 60 lengths, from two to five boards at prices per foot far apart."""
    chance = random.Random(seed)
    feet = sorted(chance.sample((6, 8, 10, 12, 14, 16), chance.randint(2, 5)))
    boards = [Board(each * FOOT, round(chance.uniform(40, 75) * each)) for each in feet]
    longest = round(boards[-1].length * chance.choice((0.4, 0.7, 1)))
    lengths = [chance.randint(160, longest) for _ in range(chance.randint(8, 60))]
    return _job([chance.choice(lengths) for _ in range(chance.randint(60, 400))], boards, kerf=2)


def by_length(job: CuttingJob) -> CuttingJob:
    """Return the same job at a yard whose prices nobody knows: length stands for money."""
    return CuttingJob(job.wanted, tuple(Board(each.length, each.length) for each in job.boards), job.kerf, job.trim)


def uniform(seed: int, pieces: int = 1000) -> CuttingJob:
    """Return a job of the class “uniform”: whole sizes from 20 to 100, boards of 150.

    E. Falkenauer, A hybrid grouping genetic algorithm for bin packing, Journal of Heuristics 2 (1996): from memory, high
    confidence. The instances are not his; they are drawn anew as his description says.
    """
    chance = random.Random(seed)
    return _job([chance.randint(20, 100) for _ in range(pieces)], [Board(150, 1)], kerf=0)


def triplets(seed: int, pieces: int = 999) -> CuttingJob:
    """Return a job of the class “triplets”: every board of 1000 is filled by three pieces of 250 to 500 without a rest.

    The same paper (from memory, high confidence): the first piece from 380 to 490, the second from 250 to half the rest.
    """
    chance = random.Random(seed)
    lengths: list[int] = []
    for _ in range(pieces // 3):
        first = chance.randint(380, 490)
        second = chance.randint(250, (1000 - first) // 2)
        lengths += [first, second, 1000 - first - second]
    return _job(lengths, [Board(1000, 1)], kerf=0)


def shuffled(job: CuttingJob, seed: int) -> CuttingJob:
    """Return the same job with its pieces in another order."""
    wanted = list(job.wanted)
    random.Random(seed).shuffle(wanted)
    return CuttingJob(tuple(wanted), job.boards, job.kerf, job.trim)


def first_fit(job: CuttingJob, boards: tuple[Board, ...]) -> int | None:
    """Return what first-fit decreasing pays when it opens only the longest of some boards; each is then bought as short
    as its pieces allow. None when a piece is longer. Written apart from the package, to be compared with it."""
    longest = max(board.length for board in boards)
    room: list[int] = []
    for length in sorted((each.length for each in job.wanted for _ in range(each.count)), reverse=True):
        if length > longest:
            return None
        at = next((n for n, free in enumerate(room) if free >= length), len(room))
        if at == len(room):
            room.append(longest)
        room[at] -= length + job.kerf
    used = [longest - free - job.kerf for free in room]
    return sum(min(board.price for board in boards if board.length >= each) for each in used)


def _job(lengths: Iterable[int], boards: Iterable[Board], kerf: int) -> CuttingJob:
    return CuttingJob(tuple(Wanted(*each) for each in Counter(lengths).items()), tuple(boards), kerf)
