"""The judge of a cutting plan: whole numbers only, no solver, and nothing taken over from the finder.

It owns the word “proven”. A board of capacity C (its length less the trim, plus one saw cut that may run off its end)
holds pieces that weigh their length plus a saw cut each. Give each piece any worth of 0 or more: if no board of a
length can hold pieces worth more than its `hold`, then any purchase that holds all pieces has

    sum of hold * boards  >=  worth of all pieces

which is one need. The cases of a proof split the purchases, and in each case the needs and the price, weighted and
added up, leave no purchase below the bound.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from math import gcd

import numpy as np

from guide.buying.cutting.job import CuttingJob, Filled, Leaf, Proof, Split

_LARGEST = 2**60
"""No sum in the knapsack may reach this: it is done in 64-bit whole numbers."""

_Box = tuple[tuple[int, int], ...]
"""Fewest and most boards of each length."""


def fault_in_plan(job: CuttingJob, filled: Sequence[Filled], price: int) -> str:
    """Return the first thing wrong with a plan in one sentence, or an empty text.

    Right means: every board is on offer and holds its pieces with a saw cut after each, the pieces are exactly those
    asked for, and the prices add up to `price`.
    """
    for number, each in enumerate(filled, 1):
        if not 0 <= each.board < len(job.boards):
            return f"board {number} is not on the list."
        room = job.boards[each.board].length - job.trim + job.kerf
        used = sum(length + job.kerf for length, _ in each.pieces)
        if used > room:
            return f"the pieces of board {number} take {used} and it has {room}."
        if each.rest != max(0, room - used - job.kerf):
            return f"board {number} has {room - used - job.kerf} left over, not {each.rest}."
    asked: Counter[tuple[int, str]] = Counter()
    for wanted in job.wanted:
        asked[wanted.length, wanted.mark] += wanted.count
    cut = Counter(piece for each in filled for piece in each.pieces)
    for piece in sorted(set(asked) | set(cut)):
        if asked[piece] != cut[piece]:
            return f"{asked[piece]} of piece {piece[1]}, {piece[0]} long, are asked for and {cut[piece]} are cut."
    for kind, count in sorted(Counter(each.board for each in filled).items()):
        most = job.boards[kind].most
        if most is not None and count > most:
            return f"{count} boards {job.boards[kind].length} long are used and there are {most}."
    cost = sum(job.boards[each.board].price for each in filled)
    return "" if cost == price else f"the boards cost {cost}, not {price}."


def holds(job: CuttingJob, proof: Proof) -> bool:
    """Say whether a proof shows that no purchase which holds every piece costs less than its bound.

    False is “not shown”, not “untrue”. Anything malformed is not shown.
    """
    counts: Counter[int] = Counter()
    for wanted in job.wanted:
        counts[wanted.length] += wanted.count
    lengths = sorted((length for length in counts if counts[length]), reverse=True)
    if proof.bound <= 0 or not lengths:
        return proof.bound <= 0
    needs = []
    for row in proof.worths:
        if len(row) != len(lengths) or any(worth < 0 for worth in row):
            return False
        total = sum(worth * counts[length] for worth, length in zip(row, lengths, strict=True))
        if total >= _LARGEST:
            return False
        needs.append((_most_worth(job, lengths, [counts[length] for length in lengths], row), total))
    return _cases_close(job, proof, needs)


def _most_worth(job: CuttingJob, lengths: Sequence[int], counts: Sequence[int], worths: Sequence[int]) -> list[int]:
    """Return for each board the most that pieces on one of it can be worth: a bounded knapsack, solved exactly.

    best[c] is the most that fits into c. A count is taken apart into bundles of 1, 2, 4, … and what is left, from
    which every number up to the count can be put together.
    """
    unit = gcd(*(length + job.kerf for length in lengths))
    rooms = [max(0, board.length - job.trim + job.kerf) // unit for board in job.boards]
    widest = max(rooms)
    best = np.zeros(widest + 1, dtype=np.int64)
    for length, count, worth in zip(lengths, counts, worths, strict=True):
        weight = (length + job.kerf) // unit
        left, bundle = min(count, widest // weight), 1
        while left > 0 and worth:
            bundle = min(bundle, left)
            wide = bundle * weight
            with_it = best[: widest + 1 - wide] + np.int64(bundle * worth)
            best[wide:] = np.maximum(best[wide:], with_it)
            left -= bundle
            bundle *= 2
    return [int(best[room]) for room in rooms]


def _cases_close(job: CuttingJob, proof: Proof, needs: Sequence[tuple[list[int], int]]) -> bool:
    """Walk the case split: the two halves of a split share nothing and leave nothing out, so the leaves cover it all.

    The first box holds every purchase cheaper than the bound: no more boards than there are, than the price allows, or
    than there are pieces, since a board that nothing is cut from can be left in the shop.
    """
    pieces = sum(wanted.count for wanted in job.wanted)
    start = []
    for board in job.boards:
        most = pieces if board.most is None else min(pieces, board.most)
        start.append((0, min(most, (proof.bound - 1) // board.price) if board.price else most))
    waiting: list[_Box] = [tuple(start)]
    for case in proof.cases:
        if not waiting:
            return False
        box = waiting.pop()
        if isinstance(case, Leaf):
            if not _closes(job, box, case, needs, proof.bound):
                return False
        elif isinstance(case, Split) and 0 <= case.board < len(box):
            low, high = box[case.board]
            waiting.append((*box[: case.board], (max(low, case.at + 1), high), *box[case.board + 1 :]))
            waiting.append((*box[: case.board], (low, min(high, case.at)), *box[case.board + 1 :]))
        else:
            return False
    return not waiting


def _closes(job: CuttingJob, box: _Box, leaf: Leaf, needs: Sequence[tuple[list[int], int]], bound: int) -> bool:
    """Say whether every purchase in the box that meets the needs costs the bound or more.

    With weights of 0 or more: price * cost >= sum of weight * (needed - held) + price * cost, and the right side is
    smallest at a corner of the box. It must be over price * cost for the dearest purchase in the box under the bound: all
    of them cost what the boards with a fixed count cost, and some multiple of a step over that.
    """
    if any(low > high for low, high in box):
        return True
    if leaf.price < 0 or any(weight < 0 or not 0 <= row < len(needs) for row, weight in leaf.needs):
        return False
    rest = [leaf.price * board.price for board in job.boards]
    floor = 0
    for row, weight in leaf.needs:
        hold, total = needs[row]
        floor += weight * total
        rest = [each - weight * held for each, held in zip(rest, hold, strict=True)]
    floor += sum(min(each * low, each * high) for each, (low, high) in zip(rest, box, strict=True))
    fixed = sum(board.price * low for board, (low, high) in zip(job.boards, box, strict=True) if low == high)
    step = gcd(*(board.price for board, (low, high) in zip(job.boards, box, strict=True) if low < high))
    dearest = fixed + (bound - 1 - fixed) // step * step if step else min(fixed, bound - 1)
    return floor > leaf.price * dearest
