"""Patterns as columns of a linear program, new ones found by pricing: fractions of boards, and what a piece is worth.

Rows are the pieces of each length (at least as many as wanted) and the boards of each kind (patterns cut from it are at
most the boards bought). Columns are the boards bought, the pieces that stay short, and the patterns known so far.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import highspy
import numpy as np

from guide.buying.cutting.filling import best_patterns
from guide.buying.cutting.pieces import Pattern, Pieces
from guide.buying.cutting.solver import Solver

SCALE = 1_000_000
"""What a worth of 1 step of price, or of 1 unit of weight, is written as in whole numbers."""

_ROUNDS = 400
"""Times that new patterns are asked for before a program is left as it is; house jobs take 20 to 80."""

_NOTHING = 1e-7

_GROWING = (("simplex_strategy", 4), ("presolve", "off"))
"""A program that only gains columns keeps a feasible plan from one round to the next: the primal simplex goes on from it."""


@dataclass(frozen=True)
class Fractions:
    """What the linear program answers."""

    objective: float
    worths: tuple[int, ...]
    """What one more piece of each length would add, in millionths."""
    used: dict[int, float]
    """How often each pattern is used, by its number; those not used are left out."""


class Columns:
    """The linear program of one job; it keeps every pattern it has found."""

    def __init__(self, pieces: Pieces, start: Sequence[tuple[int, Pattern]]) -> None:
        self._pieces = pieces
        self._rows, self._kinds = len(pieces.counts), len(pieces.rooms)
        self.patterns: list[tuple[int, Pattern]] = []
        self._known: set[tuple[int, Pattern]] = set()
        self._table = np.empty((0, self._rows), dtype=np.int64)
        self._solver = solver = Solver()
        for option, value in _GROWING:
            solver.setOptionValue(option, value)
        for count in pieces.counts:
            solver.addRow(count, highspy.kHighsInf, 0, [], [])
        for _ in range(self._kinds):
            solver.addRow(-highspy.kHighsInf, 0, 0, [], [])
        for kind in range(self._kinds):
            solver.addCol(0, 0, 0, 1, [self._rows + kind], [-1.0])
        for row in range(self._rows):
            solver.addCol(0, 0, 0, 1, [row], [1.0])
        for kind, pattern in start:
            self._add(kind, pattern)

    def cheapest(self, low: Sequence[int], high: Sequence[int], dear: int) -> Fractions:
        """Return the cheapest purchase between so few and so many boards of each kind, in fractions of boards.

        Where so many boards cannot hold the pieces, what stays short costs `dear` for a unit of weight.
        """
        pieces = self._pieces
        self._wanted(pieces.counts, dear)
        self._fitting(pieces.counts)
        self._boards(pieces.prices, low, high)
        return self._improve(pieces.counts)

    def shortage(self, counts: Sequence[int], boards: Sequence[int], *, fresh: bool = True) -> Fractions:
        """Return how much of these pieces, by weight, so many boards of each kind cannot hold, in fractions of boards.

        `fresh` asks for new patterns until none helps, or nothing stays short.
        """
        self._wanted(counts, 1)
        self._fitting(counts)
        self._boards([0] * self._kinds, boards, boards)
        return self._improve(counts, enough=0.0) if fresh else self._solve()

    def _wanted(self, counts: Sequence[int], cost: int) -> None:
        for row, count in enumerate(counts):
            self._solver.changeRowBounds(row, count, highspy.kHighsInf)
        columns = np.arange(self._kinds, self._kinds + self._rows, dtype=np.int32)
        self._solver.changeColsBounds(self._rows, columns, np.zeros(self._rows), np.array(counts, dtype=float))
        self._solver.changeColsCost(self._rows, columns, cost * np.array(self._pieces.weights, dtype=float))

    def table(self) -> np.ndarray:
        """Return the patterns known, one in a row."""
        fresh = [pattern for _, pattern in self.patterns[len(self._table) :]]
        if fresh:
            self._table = np.vstack([self._table, np.array(fresh)])
        return self._table

    def _fitting(self, counts: Sequence[int]) -> None:
        """Leave out the patterns that hold more of a piece than is wanted."""
        most = np.where(np.all(self.table() <= np.array(counts), axis=1), highspy.kHighsInf, 0.0)
        first, total = self._kinds + self._rows, len(self.patterns)
        columns = np.arange(first, first + total, dtype=np.int32)
        self._solver.changeColsBounds(total, columns, np.zeros(total), most)

    def _boards(self, prices: Sequence[int], low: Sequence[int], high: Sequence[int]) -> None:
        columns = np.arange(self._kinds, dtype=np.int32)
        self._solver.changeColsBounds(self._kinds, columns, np.array(low, dtype=float), np.array(high, dtype=float))
        self._solver.changeColsCost(self._kinds, columns, np.array(prices, dtype=float))

    def _improve(self, counts: Sequence[int], enough: float = -1.0) -> Fractions:
        """Solve, add the best pattern for each kind of board, and so on until none is worth more than its board."""
        for _ in range(_ROUNDS):
            answer, boards = self._solved()
            if answer.objective <= enough + _NOTHING:
                break
            added = False
            for kind, (worth, pattern) in enumerate(best_patterns(self._pieces, counts, answer.worths)):
                if worth > boards[kind] * SCALE * (1 + 1e-9) + self._rows:
                    added |= self._add(kind, pattern)
            if not added:
                break
        return answer

    def _solve(self) -> Fractions:
        return self._solved()[0]

    def _solved(self) -> tuple[Fractions, list[float]]:
        """Return the answer, and what one more board of each kind would save. Without one nothing is worth anything."""
        if not self._solver.optimal():
            return Fractions(float("inf"), (0,) * self._rows, {}), [0.0] * self._kinds
        solution = self._solver.getSolution()
        duals = np.maximum(np.array(solution.row_dual), 0.0)
        values = np.array(solution.col_value)[self._kinds + self._rows :]
        worths = tuple(int(worth) for worth in np.rint(duals[: self._rows] * SCALE))
        used = {int(n): float(values[n]) for n in np.flatnonzero(values > _NOTHING)}
        saved = [-float(dual) for dual in np.minimum(np.array(solution.row_dual)[self._rows :], 0.0)]
        return Fractions(self._solver.getObjectiveValue(), worths, used), saved

    def _add(self, kind: int, pattern: Pattern) -> bool:
        if (kind, pattern) in self._known or not any(pattern):
            return False
        self._known.add((kind, pattern))
        self.patterns.append((kind, pattern))
        rows = [row for row, count in enumerate(pattern) if count]
        entries = [float(pattern[row]) for row in rows] + [1.0]
        self._solver.addCol(0, 0, highspy.kHighsInf, len(entries), [*rows, self._rows + kind], entries)
        return True
