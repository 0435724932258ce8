"""From a purchase to a plan: fractions of boards made whole, a few at a time, asking for new patterns as pieces run out."""

from __future__ import annotations

from collections.abc import Sequence

import highspy
import numpy as np

from guide.buying.cutting.columns import Columns
from guide.buying.cutting.pieces import Pattern, Pieces
from guide.buying.cutting.solver import Solver

_TRIES = ((0.7, 30), (1.0, 45), (0.5, 60))
"""From which fraction on a pattern counts as used once, and how many pieces left are put on boards all at once."""

Plan = list[tuple[int, Pattern]]
"""Kind of board and what is cut from it, for each board."""


def pack(pieces: Pieces, columns: Columns, boards: Sequence[int]) -> Plan | None:
    """Return a plan for all pieces on so many boards of each kind, or None when none is found; there may yet be one."""
    tries = (_dive(pieces, columns, boards, nearly, few) for nearly, few in _TRIES)
    return next((plan for plan in tries if plan is not None), None)


def _dive(pieces: Pieces, columns: Columns, boards: Sequence[int], nearly: float, few: int) -> Plan | None:
    """Make the fractions whole, those nearest to it first."""
    left, free = np.array(pieces.counts), list(boards)
    plan: Plan = []
    while left.any():
        answer = columns.shortage(left.tolist(), free)
        if answer.objective > 1e-6:
            return None
        if left.sum() <= few:
            rest = _all_at_once(pieces, columns, left, free)
            if rest is not None:
                return plan + rest
        before = len(plan)
        for number, used in sorted(answer.used.items(), key=lambda each: (-each[1], each[0])):
            kind, pattern = columns.patterns[number]
            cut = np.array(pattern)
            times = int(used + 1 - nearly) or (len(plan) == before)
            for _ in range(times):
                if free[kind] and (cut <= left).all():
                    plan.append((kind, pattern))
                    free[kind] -= 1
                    left = left - cut
        if len(plan) == before:
            return None
    return plan


def _all_at_once(pieces: Pieces, columns: Columns, left: np.ndarray, free: Sequence[int]) -> Plan | None:
    """Choose whole boards from the patterns known, so that nothing stays short."""
    rows = np.flatnonzero(left)
    table = columns.table()[:, rows]
    kinds = np.array([kind for kind, _ in columns.patterns])
    clipped = np.minimum(table, left[rows])
    useful = (clipped.sum(axis=1) > 0) & (np.array(free)[kinds] > 0)
    choices = np.unique(np.column_stack([kinds[useful], clipped[useful]]), axis=0)
    solver = Solver()
    for count in left[rows]:
        solver.addRow(float(count), highspy.kHighsInf, 0, [], [])
    for count in free:
        solver.addRow(-highspy.kHighsInf, count, 0, [], [])
    for row, index in enumerate(rows):
        solver.addCol(pieces.weights[index], 0, float(left[index]), 1, [row], [1.0])
    for kind, *cut in choices.tolist():
        held = [(row, float(count)) for row, count in enumerate(cut) if count]
        entries = [*held, (len(rows) + kind, 1.0)]
        solver.addCol(0, 0, free[kind], len(entries), [row for row, _ in entries], [value for _, value in entries])
    total = len(rows) + len(choices)
    solver.changeColsIntegrality(total, np.arange(total, dtype=np.int32), np.ones(total, dtype=np.uint8))
    if not solver.optimal() or solver.getObjectiveValue() > 0.5:
        return None
    values = list(solver.getSolution().col_value)[len(rows) :]
    plan: Plan = []
    rest = left.copy()
    for (kind, *cut), value in zip(choices.tolist(), values, strict=True):
        for _ in range(round(value)):
            taken = np.zeros_like(rest)
            taken[rows] = np.minimum(cut, rest[rows])
            if taken.any():
                plan.append((kind, tuple(taken.tolist())))
                rest = rest - taken
    return None if rest.any() else plan
