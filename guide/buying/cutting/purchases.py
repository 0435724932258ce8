"""The search over purchases: how many boards of each length, cheapest first, ruling out whole boxes of them.

Only the counts of boards decide the price. Each row of worths of the pieces gives one need that every purchase has to
meet. Boxes are split until none is left that could hold a cheaper purchase; the splits, and the whole-number weights
that close each box, are the proof. The solver only suggests weights: what a box costs at least is worked out here in
whole numbers.
"""

from __future__ import annotations

import heapq
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import gcd

import highspy
import numpy as np

from guide.buying.cutting.filling import best_patterns
from guide.buying.cutting.job import Leaf, Split
from guide.buying.cutting.pieces import Pieces
from guide.buying.cutting.solver import Solver

Boards = tuple[int, ...]
"""How many boards of each kind are bought."""

Need = tuple[tuple[int, ...], int]
"""What a board of each kind can hold at most, and what all boards together have to hold."""

_FINE = 1 << 60
"""Weight of the price in a leaf; the weights of the needs are rounded to whole numbers beside it."""

_NEVER = 1 << 200
"""Bound of a box without any purchase that meets the needs."""

_MOST_ASKED = 100
"""Boxes for which the worths of the pieces are worked out anew; the others make do with the needs already known."""

_MOST_BOXES = 4_000
"""Boxes looked at before the search is given up, and says how far it came."""


_OPEN = Leaf(1, ())
"""The price alone: what closes a box that costs enough at its lowest corner."""


@dataclass
class _Box:
    """A box of purchases, and what is known of it."""

    low: Boards
    high: Boards
    seen: int = -1
    """How many needs were known when its bound was worked out."""
    bound: int = 0
    """No purchase in it costs less, in steps of price."""
    leaf: Leaf = _OPEN
    at: tuple[float, ...] = ()
    """Its cheapest purchase in fractions of boards."""
    asked: bool = False
    """Worths were asked for this very box."""
    halves: tuple[Split, _Box, _Box] | None = None

    @property
    def single(self) -> bool:
        """It holds one purchase."""
        return self.low == self.high


class Purchases:
    """The purchases under a price that meet every need known so far, the cheapest first."""

    def __init__(self, pieces: Pieces, under: int, worths_in: Callable[[Boards, Boards], Sequence[int]]) -> None:
        """Start with every purchase under a price; `worths_in` gives worths that fit the purchases between two."""
        self._pieces, self.worths, self._worths_in = pieces, list[tuple[int, ...]](), worths_in
        self._needs: list[Need] = []
        self._open: list[_Box] = []
        self._given_up: set[Boards] = set()
        high = tuple(
            min(most, (under - 1) // price) if price else most
            for most, price in zip(pieces.most, pieces.prices, strict=True)
        )
        self._solver = Solver()
        for price, most in zip(pieces.prices, high, strict=True):
            self._solver.addCol(price, 0, most, 0, [], [])
        dear = 1000.0 * max(1, under)  # for what is missing, so that there always is an answer
        self._solver.addCol(dear, 0, highspy.kHighsInf, 0, [], [])
        self._root = _Box((0,) * len(high), high)
        self._waiting = [(0, 0, self._root)]
        self._boxes = self._asked = 0

    def need(self, worths: Sequence[int]) -> Need:
        """Return the need that worths of the pieces give."""
        held = tuple(worth for worth, _ in best_patterns(self._pieces, self._pieces.counts, worths))
        return held, sum(worth * count for worth, count in zip(worths, self._pieces.counts, strict=True))

    def add(self, worths: Sequence[int], need: Need) -> None:
        """From now on ask this need too. It is that of the worths, and more than 0."""
        self.worths.append(tuple(worths))
        self._needs.append(need)
        held, total = need
        entries = [each / total for each in held] + [1.0]
        self._solver.addRow(1.0, highspy.kHighsInf, len(entries), list(range(len(entries))), entries)
        for box in self._open:
            self._wait(box)
        self._open = []

    def leave_open(self, boards: Boards) -> None:
        """Go on without a purchase that meets every need but has no plan; it may yet be the cheapest."""
        box = heapq.heappop(self._waiting)[2]
        while not box.single:
            index = next(n for n, (low, high) in enumerate(zip(box.low, box.high, strict=True)) if low < high)
            at = boards[index] - (boards[index] > box.low[index])
            low, high = self._halve(box, index, at)
            box, other = (low, high) if boards[index] <= at else (high, low)
            self._wait(other)
        self._given_up.add(boards)
        self._wait(box)

    def next(self, under: int) -> Boards | None:
        """Return the cheapest purchase that meets every need and costs less than `under`; None when there is none left.

        None too when the search is given up: `bound` tells how far it came.
        """
        while self._waiting and self._waiting[0][0] < under and self._boxes < _MOST_BOXES:
            box = self._waiting[0][2]
            if box.seen < len(self._needs):
                heapq.heappop(self._waiting)
                self._wait(box)
                continue
            boards = self._whole(box)
            if boards is not None and boards not in self._given_up:
                return boards
            heapq.heappop(self._waiting)
            if box.single:
                self._open.append(box)
                continue
            if not box.asked and self._asked < _MOST_ASKED:
                box.asked = True
                self._asked += 1
                worths = self._worths_in(box.low, box.high)
                held, total = need = self.need(worths)
                if sum(h * x for h, x in zip(held, box.at, strict=True)) < total * (1 - 1e-9):
                    self.add(worths, need)
                    self._wait(box)
                    continue
            index = self._kind_to_split(box)
            at = min(max(int(box.at[index]), box.low[index]), box.high[index] - 1)
            for half in self._halve(box, index, at):
                self._wait(half)
        return None

    @property
    def bound(self) -> int:
        """No purchase that meets the needs costs less, in steps of price."""
        return min([*(bound for bound, _, _ in self._waiting), *(box.bound for box in self._open)], default=_NEVER)

    def cases(self) -> tuple[Split | Leaf, ...]:
        """Return the case split in reading order."""
        return tuple(self._reading(self._root))

    def _reading(self, root: _Box) -> Iterator[Split | Leaf]:
        waiting = [root]
        while waiting:
            box = waiting.pop()
            if box.halves is None:
                yield box.leaf
            else:
                split, low, high = box.halves
                yield split
                waiting += [high, low]

    def _kind_to_split(self, box: _Box) -> int:
        """Return the kind of board whose count, once fixed, leaves prices the furthest apart; else the most fractional."""
        wide = [n for n, (low, high) in enumerate(zip(box.low, box.high, strict=True)) if low < high]
        steps = {n: gcd(*(self._pieces.prices[other] for other in wide if other != n)) for n in wide}
        return max(wide, key=lambda n: (steps[n], abs(box.at[n] - round(box.at[n]))))

    def _halve(self, box: _Box, index: int, at: int) -> tuple[_Box, _Box]:
        low = _Box(box.low, (*box.high[:index], at, *box.high[index + 1 :]))
        high = _Box((*box.low[:index], at + 1, *box.low[index + 1 :]), box.high)
        box.halves = Split(self._pieces.kinds[index], at), low, high
        return low, high

    def _wait(self, box: _Box) -> None:
        """Work out what a box costs at least, and put it among those that wait."""
        self._boxes += 1
        box.seen = len(self._needs)
        box.bound, box.leaf = self._bound(box)
        heapq.heappush(self._waiting, (box.bound, self._boxes, box))

    def _bound(self, box: _Box) -> tuple[int, Leaf]:
        for row, (held, total) in enumerate(self._needs):
            if sum(each * most for each, most in zip(held, box.high, strict=True)) < total:
                return _NEVER, Leaf(0, ((row, 1),))
        if box.single:
            box.at = tuple(map(float, box.low))
            return self._pieces.price(box.low), _OPEN
        weights = self._weights(box)
        rest = [_FINE * price for price in self._pieces.prices]
        floor = 0
        for row, weight in weights:
            held, total = self._needs[row]
            floor += weight * total
            rest = [each - weight * holds for each, holds in zip(rest, held, strict=True)]
        floor += sum(min(each * low, each * high) for each, low, high in zip(rest, box.low, box.high, strict=True))
        fixed = sum(price * low for price, low, high in self._prices_in(box) if low == high)
        step = gcd(*(price for price, low, high in self._prices_in(box) if low < high))
        bound = -(-floor // _FINE)
        if step:  # every purchase in the box costs what is fixed, and a multiple of the step over that
            bound = fixed + -(-(bound - fixed) // step) * step
        return bound, Leaf(_FINE, tuple((row, weight * self._pieces.step) for row, weight in weights))

    def _prices_in(self, box: _Box) -> Iterator[tuple[int, int, int]]:
        return zip(self._pieces.prices, box.low, box.high, strict=True)

    def _weights(self, box: _Box) -> list[tuple[int, int]]:
        """Return weights of the needs as the solver would choose them; none when it has no answer."""
        kinds = len(box.low)
        columns = np.arange(kinds, dtype=np.int32)
        self._solver.changeColsBounds(kinds, columns, np.array(box.low, dtype=float), np.array(box.high, dtype=float))
        if not self._solver.optimal():
            box.at = tuple((low + high) / 2 for low, high in zip(box.low, box.high, strict=True))
            return []
        solution = self._solver.getSolution()
        box.at = tuple(solution.col_value[:kinds])
        weights = [
            (row, int(dual / total * _FINE))
            for row, (dual, (_, total)) in enumerate(zip(solution.row_dual, self._needs, strict=True))
        ]
        return [(row, weight) for row, weight in weights if weight > 0]

    def _whole(self, box: _Box) -> Boards | None:
        """Return the purchase at which a box is cheapest, when it is one in whole boards that meets every need."""
        boards = tuple(round(x) for x in box.at)
        inside = all(low <= n <= high for low, n, high in zip(box.low, boards, box.high, strict=True))
        if not inside or self._pieces.price(boards) > box.bound:
            return None
        met = all(sum(h * n for h, n in zip(held, boards, strict=True)) >= total for held, total in self._needs)
        return boards if met else None
