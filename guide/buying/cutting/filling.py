"""Filling one board: the pattern worth most, and quick plans that fill one board after the other."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from guide.buying.cutting.pieces import Pattern, Pieces


def best_patterns(pieces: Pieces, counts: Sequence[int], worths: Sequence[int]) -> list[tuple[int, Pattern]]:
    """Return for each kind of board the most that pieces on it can be worth, and a pattern that is.

    No pattern holds more of a piece than `counts`. Worths are whole numbers of 0 or more whose sum over all pieces
    stays under 2**60. Every row of the table is kept, so that the pattern can be read back from it.
    """
    widest = max(pieces.rooms)
    bundles = []
    for index, (weight, count, worth) in enumerate(zip(pieces.weights, counts, worths, strict=True)):
        left, size = min(count, widest // weight) if worth > 0 else 0, 1
        while left:
            size = min(size, left)
            bundles.append((index, size, size * weight, size * worth))
            left, size = left - size, size * 2
    table = np.zeros((len(bundles) + 1, widest + 1), dtype=np.int64)
    for row, (_, _, weight, worth) in enumerate(bundles):
        old, new = table[row], table[row + 1]
        new[:weight] = old[:weight]
        np.add(old[:-weight], worth, out=new[weight:])
        np.maximum(new[weight:], old[weight:], out=new[weight:])
    return [(int(table[-1, room]), _read_back(table, bundles, room, len(pieces.counts))) for room in pieces.rooms]


def _read_back(table: np.ndarray, bundles: list[tuple[int, int, int, int]], room: int, kinds: int) -> Pattern:
    pattern, row = [0] * kinds, len(bundles)
    while (grown := np.flatnonzero(table[1 : row + 1, room] != table[:row, room])).size:
        row = int(grown[-1])
        index, size, weight, _ = bundles[row]
        pattern[index] += size
        room -= weight
    return tuple(pattern)


def longest_first(pieces: Pieces, counts: Sequence[int], room: int) -> Pattern:
    """Return the pattern that always takes the longest piece that still fits."""
    pattern = []
    for weight, count in zip(pieces.weights, counts, strict=True):
        take = min(count, room // weight)
        pattern.append(take)
        room -= take * weight
    return tuple(pattern)


def patterns_with_little_over(
    weights: Sequence[int], counts: Sequence[int], room: int, over: int, most: int
) -> list[Pattern] | None:
    """Return every pattern that leaves at most `over` of a board's room, or None when there are more than `most`.

    `sums[i]` has a bit for each weight that pieces from the i-th length on can have, so that no way is tried in vain.
    """
    sums = [1] * (len(weights) + 1)
    for index in range(len(weights) - 1, -1, -1):
        for count in range(counts[index] + 1):
            sums[index] |= sums[index + 1] << (count * weights[index])
    found: list[Pattern] = []
    waiting: list[tuple[Pattern, int]] = [((), room)]
    while waiting:
        begun, left = waiting.pop()
        if len(begun) == len(weights):
            found.append(begun)
            if len(found) > most:
                return None
            continue
        weight = weights[len(begun)]
        for count in range(min(counts[len(begun)], left // weight) + 1):
            rest = left - count * weight
            low = max(0, rest - over)
            if (sums[len(begun) + 1] >> low) & ((1 << (rest - low + 1)) - 1):
                waiting.append(((*begun, count), rest))
    return found


def quick_plan(pieces: Pieces) -> list[tuple[int, Pattern]] | None:
    """Return the cheapest of a few first-fit plans, longest piece first, each board then as cheap as holds its pieces.

    None when the boards at hand run out first.
    """
    plans = [plan for kind in range(len(pieces.rooms)) if (plan := _first_fit(pieces, kind)) is not None]
    return min(plans, key=lambda plan: sum(pieces.prices[kind] for kind, _ in plan), default=None)


def _first_fit(pieces: Pieces, usual: int) -> list[tuple[int, Pattern]] | None:
    """Fill boards of the usual kind, or where the longest piece left needs it of a longer one."""
    left, free = list(pieces.counts), list(pieces.most)
    plan = []
    while any(left):
        longest = next(weight for weight, count in zip(pieces.weights, left, strict=True) if count)
        at = next((k for k in (usual, *range(len(free))) if free[k] and pieces.rooms[k] >= longest), None)
        if at is None:
            return None
        pattern = longest_first(pieces, left, pieces.rooms[at])
        used = pieces.weight(pattern)
        holding = [k for k, room in enumerate(pieces.rooms) if room >= used and free[k]]
        kind = min(holding, key=lambda k: (pieces.prices[k], k))
        free[kind] -= 1
        left = [a - b for a, b in zip(left, pattern, strict=True)]
        plan.append((kind, pattern))
    return plan
