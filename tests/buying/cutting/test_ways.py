"""As few different ways of cutting as there can be: right on jobs small enough to try everything, never claimed wrongly."""

from __future__ import annotations

from collections import Counter

from hypothesis import given, settings

from guide.buying.cutting.filling import quick_plan
from guide.buying.cutting.job import Board, CuttingJob, Wanted
from guide.buying.cutting.packing import Plan
from guide.buying.cutting.pieces import Pattern, Pieces, pieces_of
from guide.buying.cutting.ways import fewest_ways
from tests.buying.cutting.small import small_jobs
from tests.buying.cutting.test_cheapest import house


def tried_out(pieces: Pieces, boards: list[int]) -> int:
    """Return the fewest ways by putting pieces on one board after the other, whatever fits, without any shortcut."""

    def held(left: Pattern, room: int, row: int = 0) -> list[Pattern]:
        if row == len(left):
            return [()]
        return [
            (take, *others)
            for take in range(min(left[row], room // pieces.weights[row]) + 1)
            for others in held(left, room - take * pieces.weights[row], row + 1)
        ]

    def ways(left: Pattern, at: int, used: frozenset[tuple[int, Pattern]]) -> int:
        if not any(left):
            return len(used)
        if at == len(boards):
            return 99
        kind = boards[at]
        return min(
            ways(
                tuple(a - b for a, b in zip(left, pattern, strict=True)),
                at + 1,
                used | ({(kind, pattern)} if any(pattern) else set()),
            )
            for pattern in held(left, pieces.rooms[kind])
        )

    return ways(pieces.counts, 0, frozenset())


@settings(max_examples=60, deadline=None)
@given(small_jobs())
def test_the_boards_stay_and_no_plan_takes_fewer_ways_than_is_said(job: CuttingJob) -> None:
    """The same boards hold the same pieces, in no more ways than before; as small a job is tried out to the end."""
    pieces = pieces_of(job)
    plan = quick_plan(pieces)
    assert plan is not None
    after, least = fewest_ways(pieces, plan)

    assert not Counter(kind for kind, _ in after) - Counter(kind for kind, _ in plan)
    assert tuple(map(sum, zip(*(pattern for _, pattern in after), strict=True))) == pieces.counts
    assert all(pieces.weight(pattern) <= pieces.rooms[kind] for kind, pattern in after)
    if len(plan) <= 5:
        assert least == tried_out(pieces, [kind for kind, _ in plan]) == len(set(after))


def test_three_ways_become_one() -> None:
    """By hand, boards of 100: four pieces of 60 and four of 30 go two by two on four boards alike, whatever came first."""
    pieces = pieces_of(CuttingJob((Wanted(60, 4), Wanted(30, 4)), (Board(100, 1),)))
    plan: Plan = [(0, (1, 1)), (0, (1, 1)), (0, (1, 0)), (0, (1, 1)), (0, (0, 1))]

    after, least = fewest_ways(pieces, plan)
    assert (set(after), least) == ({(0, (1, 1))}, 1)


def test_where_there_is_too_much_to_try_the_bound_still_holds() -> None:
    """A basement: the plan stays, and at least as many ways are needed as there are lengths no two of which share a board."""
    pieces = pieces_of(house(3))
    plan = quick_plan(pieces)
    assert plan is not None
    after, least = fewest_ways(pieces, plan)

    assert 0 < least < len(set(plan))
    assert after == plan
