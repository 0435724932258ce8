"""How few different ways of cutting the boards of a purchase can do with: tried out where that is little work.

Whole numbers only, no solver. It owns the words “no fewer”: a bound that always holds, raised by every number of ways that
was tried out to the end in vain.
"""

from __future__ import annotations

from collections import Counter

from guide.buying.cutting.filling import patterns_with_little_over
from guide.buying.cutting.packing import Plan
from guide.buying.cutting.pieces import Pattern, Pieces

_MOST_PATTERNS = 60
"""Patterns of a kind of board, at most, among which a choice is tried out."""

_MOST_TRIED = 400
"""Choices of a pattern and of how often it is cut, at most, before the trying is given up."""


class _GivenUp(Exception):  # noqa: N818 - no error: the job is not small
    """There is more to try than is worth it."""


def fewest_ways(pieces: Pieces, plan: Plan) -> tuple[Plan, int]:
    """Return a plan on the very same boards in fewer ways where one is found, and how many ways any plan takes at least."""
    boards = Counter(kind for kind, _ in plan)
    free = tuple(boards[kind] for kind in range(len(pieces.rooms)))
    least = _least(pieces, pieces.counts, free)
    search = _Search(pieces)
    for ways in range(least, len(set(plan))):
        try:
            found = search.plan(pieces.counts, free, ways)
        except _GivenUp:
            return plan, ways
        if found is not None:
            return found, ways
    return plan, len(set(plan))


def _least(pieces: Pieces, left: Pattern, free: tuple[int, ...]) -> int:
    """Return how many different lengths there are of which no two fit on one board: each takes a way of its own."""
    widest = max((room for room, count in zip(pieces.rooms, free, strict=True) if count), default=0)
    weights = [weight for weight, count in zip(pieces.weights, left, strict=True) if count]
    alone = [weight for weight in weights if 2 * weight > widest]
    beside = [weight for weight in weights if 2 * weight <= widest and (not alone or weight + alone[-1] > widest)]
    return len(alone) + bool(beside)


class _Search:
    """Tries out plans of so many ways, the pattern of the longest piece left first; what was tried in vain is remembered."""

    def __init__(self, pieces: Pieces) -> None:
        self._pieces = pieces
        self._tried = 0
        self._in_vain: set[tuple[Pattern, tuple[int, ...], int]] = set()

    def plan(self, left: Pattern, free: tuple[int, ...], ways: int) -> Plan | None:
        """Return a plan for what is left on the boards that are free, or None when there is none in so many ways."""
        if not any(left):
            return []
        if _least(self._pieces, left, free) > ways or (left, free, ways) in self._in_vain:
            return None
        longest = next(row for row, count in enumerate(left) if count)
        for kind, pattern, most in self._choices(left, free, longest):
            for times in range(most, 0, -1):
                self._tried += 1
                if self._tried > _MOST_TRIED:
                    raise _GivenUp
                rest = tuple(count - times * cut for count, cut in zip(left, pattern, strict=True))
                still = (*free[:kind], free[kind] - times, *free[kind + 1 :])
                found = self.plan(rest, still, ways - 1)
                if found is not None:
                    return [(kind, pattern)] * times + found
        self._in_vain.add((left, free, ways))
        return None

    def _choices(self, left: Pattern, free: tuple[int, ...], longest: int) -> list[tuple[int, Pattern, int]]:
        """Return the patterns with the longest piece, and how often each could be cut; what is spoilt has to be spare."""
        pieces, found = self._pieces, []
        spare = sum(count * room for count, room in zip(free, pieces.rooms, strict=True)) - pieces.weight(left)
        for kind, room in enumerate(pieces.rooms):
            if not free[kind]:
                continue
            patterns = patterns_with_little_over(pieces.weights, left, room, spare, _MOST_PATTERNS)
            if patterns is None:
                raise _GivenUp
            for pattern in patterns:
                if pattern[longest]:
                    over = room - pieces.weight(pattern)
                    most = min(free[kind], *(have // cut for have, cut in zip(left, pattern, strict=True) if cut))
                    found.append((over, kind, pattern, min(most, spare // over) if over else most))
        return [(kind, pattern, most) for _, kind, pattern, most in sorted(found)]
