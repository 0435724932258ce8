"""From a purchase to a plan: fractions of boards made whole, a few at a time, asking for new patterns as pieces run out."""

from __future__ import annotations

from collections.abc import Sequence

import highspy
import numpy as np

from guide.buying.cutting.columns import Columns
from guide.buying.cutting.filling import patterns_with_little_over
from guide.buying.cutting.pieces import Pattern, Pieces
from guide.buying.cutting.solver import Solver

_MOST_FITS = 800
"""Patterns of a kind of board, at most, among which whole boards are chosen all at once."""

_QUICK = ((0.7, 20),)
_THOROUGH = ((0.7, 90), (1.0, 60), (0.5, 60))
"""From which fraction on a pattern counts as used once, and how many pieces left are put on boards all at once."""

_FEW_LENGTHS = 30
"""With so many different lengths or fewer, all pieces at once are tried too."""

Plan = list[tuple[int, Pattern]]
"""Kind of board and what is cut from it, for each board."""


def pack(pieces: Pieces, columns: Columns, boards: Sequence[int], *, thorough: bool) -> Plan | None:
    """Return a plan for all pieces on so many boards of each kind, or None when none is found; there may yet be one.

    Thorough is slow, and tries what quick did not.
    """
    last = ((1.0, sum(pieces.counts)),) if len(pieces.counts) <= _FEW_LENGTHS else ()
    tries = (*_THOROUGH, *last) if thorough else _QUICK
    plans = (_dive(pieces, columns, boards, nearly, few) for nearly, few in tries)
    return next((plan for plan in plans if plan is not None), None)


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


def _close_fits(pieces: Pieces, left: np.ndarray, rows: np.ndarray, free: Sequence[int]) -> list[np.ndarray]:
    """Return, where they are few, all patterns of a kind of board that waste no more than all boards together may."""
    weights, counts = [pieces.weights[row] for row in rows], left[rows].tolist()
    over = sum(f * room for f, room in zip(free, pieces.rooms, strict=True))
    over -= sum(weight * count for weight, count in zip(weights, counts, strict=True))
    found = []
    for kind, room in enumerate(pieces.rooms):
        patterns = patterns_with_little_over(weights, counts, room, over, _MOST_FITS) if free[kind] else None
        if patterns:
            found.append(np.column_stack([np.full(len(patterns), kind), np.array(patterns)]))
    return found


def _all_at_once(pieces: Pieces, columns: Columns, left: np.ndarray, free: Sequence[int]) -> Plan | None:
    """Choose whole boards from the patterns known, so that nothing stays short."""
    rows = np.flatnonzero(left)
    table = columns.table()[:, rows]
    kinds = np.array([kind for kind, _ in columns.patterns])
    clipped = np.minimum(table, left[rows])
    useful = (clipped.sum(axis=1) > 0) & (np.array(free)[kinds] > 0)
    choices = np.column_stack([kinds[useful], clipped[useful]])
    choices = np.unique(np.vstack([choices, *_close_fits(pieces, left, rows, free)]), axis=0)
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
