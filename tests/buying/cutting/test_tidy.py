"""Tidying a plan: the same boards, the same pieces, offcuts that are of use, and no more different patterns."""

from __future__ import annotations

from collections import Counter

from hypothesis import given, settings

from guide.buying.cutting.filling import quick_plan
from guide.buying.cutting.job import Board, CuttingJob, Wanted
from guide.buying.cutting.packing import Plan
from guide.buying.cutting.pieces import Pieces, pieces_of
from guide.buying.cutting.tidy import tidy
from tests.buying.cutting.small import small_jobs
from tests.buying.cutting.test_cheapest import house


def rests(pieces: Pieces, plan: Plan) -> list[int]:
    """Return what is left of each board, the longest first."""
    return sorted((pieces.rooms[kind] - pieces.weight(pattern) for kind, pattern in plan), reverse=True)


def cut(pieces: Pieces, plan: Plan) -> tuple[int, ...]:
    """Return how many pieces of each length a plan cuts."""
    return tuple(sum(pattern[row] for _, pattern in plan) for row in range(len(pieces.lengths)))


@settings(max_examples=100, deadline=None)
@given(small_jobs())
def test_boards_and_pieces_stay_what_they_were(job: CuttingJob) -> None:
    """Whatever is moved, as many boards of each kind hold the same pieces, none too full, in no more patterns."""
    pieces = pieces_of(job)
    plan = quick_plan(pieces)
    assert plan is not None
    after = tidy(pieces, plan)

    assert Counter(kind for kind, _ in after) == Counter(kind for kind, _ in plan)
    assert cut(pieces, after) == cut(pieces, plan) == pieces.counts
    assert min(rests(pieces, after)) >= 0
    assert len(set(after)) <= len(set(plan))
    assert sum(rest**2 for rest in rests(pieces, after)) >= sum(rest**2 for rest in rests(pieces, plan))


def test_two_crumbs_become_one_offcut() -> None:
    """Worked by hand, boards of 100: 60 + 20 and 50 + 40 leave 20 and 10; 60 + 40 fills one, and 50 + 20 leaves 30.

    All lengths are tens, so the room is counted in tens.
    """
    pieces = pieces_of(CuttingJob((Wanted(60), Wanted(50), Wanted(40), Wanted(20)), (Board(100, 1),)))
    plan: Plan = [(0, (1, 0, 0, 1)), (0, (0, 1, 1, 0))]

    assert rests(pieces, plan) == [2, 1]
    assert rests(pieces, tidy(pieces, plan)) == [3, 0]


def test_a_tidy_plan_stays_as_it_is() -> None:
    """Tidying twice is tidying once."""
    pieces = pieces_of(house(1))
    plan = quick_plan(pieces)
    assert plan is not None

    once = tidy(pieces, plan)
    assert tidy(pieces, once) == once
