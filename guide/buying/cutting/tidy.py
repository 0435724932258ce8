"""A plan that is kinder to cut, on the very same boards: offcuts that are of use in place of crumbs.

Pieces are moved from board to board, or two change places, as long as the offcuts grow more unequal, so that what is left
comes together on few boards, and the plan does not take more different patterns for it.
"""

from __future__ import annotations

from collections import Counter

import numpy as np

from guide.buying.cutting.packing import Plan
from guide.buying.cutting.pieces import Pieces

_MOST_CHANGES = 300
"""Changes after which a plan is tidy enough; a basement takes some dozens."""

_CHOICES = 40
"""Changes looked at each time, the best first; when none of them is allowed, the plan stays as it is."""


def tidy(pieces: Pieces, plan: Plan) -> Plan:
    """Return the plan with its pieces moved; each kind of board is used as often as before, each piece is still cut."""
    boards = [(kind, np.array(pattern)) for kind, pattern in sorted(plan)]
    for _ in range(_MOST_CHANGES):
        changed = _one_change(pieces, boards)
        if not changed:
            break
    return [(kind, tuple(pattern.tolist())) for kind, pattern in boards]


def _one_change(pieces: Pieces, boards: list[tuple[int, np.ndarray]]) -> bool:
    """Make the best change there is, in place, and say whether there was one.

    A row for each length on each board, and one of no length, with which a piece changes places when it just moves.
    """
    weights = np.array([*pieces.weights, 0])
    held = [np.append(np.flatnonzero(pattern), len(weights) - 1) for _, pattern in boards]
    board = np.repeat(np.arange(len(boards)), [len(each) for each in held])
    length = np.concatenate(held)
    rests = np.array([pieces.rooms[kind] - int(pattern @ weights[:-1]) for kind, pattern in boards])
    grow = weights[length][:, None] - weights[length][None, :]
    rest = rests[board]
    gain = grow * (rest[:, None] - rest[None, :] + grow)
    gain[(grow <= 0) | (grow > rest[None, :]) | (board[:, None] == board[None, :])] = 0
    known = Counter((kind, tuple(pattern.tolist())) for kind, pattern in boards)
    best = np.flatnonzero(gain > 0)
    if len(best) > _CHOICES:
        least = -np.partition(-gain.flat[best], _CHOICES - 1)[_CHOICES - 1]
        best = best[gain.flat[best] >= least]
    best = best[np.argsort(-gain.flat[best], kind="stable")][:_CHOICES]
    for giver, taker in zip(*np.unravel_index(best, gain.shape), strict=True):
        one, other = boards[board[giver]], boards[board[taker]]
        given, taken = one[1].copy(), other[1].copy()
        for row, sign in ((length[giver], 1), (length[taker], -1)):
            if row < len(given):
                given[row] -= sign
                taken[row] += sign
        old = [(kind, tuple(pattern.tolist())) for kind, pattern in (one, other)]
        new = [(one[0], tuple(given.tolist())), (other[0], tuple(taken.tolist()))]
        after = known.copy()
        after.subtract(old)
        after.update(new)
        if len(+after) <= len(known):
            boards[board[giver]], boards[board[taker]] = (one[0], given), (other[0], taken)
            return True
    return False
