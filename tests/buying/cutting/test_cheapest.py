"""The cheapest purchase: right on jobs small enough to try everything, the same in any order, honest about the rest."""

from __future__ import annotations

import random

import pytest
from hypothesis import given, settings

from guide.buying.cutting.cheapest import cheapest
from guide.buying.cutting.checker import fault_in_plan
from guide.buying.cutting.job import Board, CuttingJob, Wanted
from guide.buying.cutting.solver import Solver
from tests.buying.cutting.small import small_jobs, tried_out

EIGHTS_AND_TWELVES = (Board(96 * 16, 400), Board(144 * 16, 590))


def house(seed: int) -> CuttingJob:
    """Return an invented basement in sixteenths: uprights that follow the slab, plates, blocks."""
    chance = random.Random(seed)
    wanted = []
    for wall in range(4):
        tall, studs = chance.randint(1400, 1460), chance.randint(8, 16)
        wanted += [Wanted(tall + stud // 2, 1, f"{wall}.{stud}") for stud in range(studs)]
        wanted += [Wanted(chance.randint(400, 1536), 1, f"{wall}.plate{n}") for n in range(4)]
        wanted += [Wanted(232, 1, f"{wall}.block{n}") for n in range(chance.randint(0, 10))]
    boards = (Board(1482, 371), Board(1536, 389), Board(1920, 517), Board(2304, 603), Board(3072, 871))
    return CuttingJob(tuple(wanted), boards, kerf=2)


@settings(max_examples=200, deadline=None)
@given(small_jobs())
def test_small_jobs_agree_with_trying_everything(job: CuttingJob) -> None:
    """The price is the least there is, every such job is proven, and the plan is one that can be cut."""
    cutting = cheapest(job)

    assert fault_in_plan(job, cutting.filled, cutting.price) == ""
    assert cutting.price == tried_out(job)
    assert cutting.proven


@settings(max_examples=100, deadline=None)
@given(small_jobs(limited=True))
def test_small_jobs_with_few_boards_of_a_kind_agree_with_trying_everything(job: CuttingJob) -> None:
    """Boards that run out are not exceeded; the price is the least there is, and no plan is found only where there is none."""
    least = tried_out(job)
    if least is None:
        with pytest.raises(ValueError, match="too few"):
            cheapest(job)
        return
    cutting = cheapest(job)
    assert fault_in_plan(job, cutting.filled, cutting.price) == ""
    assert cutting.bound == least == cutting.price


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_the_order_of_pieces_and_boards_changes_nothing(seed: int) -> None:
    """The same job again, its pieces and its boards shuffled, gives the same plan to the last mark."""
    job = house(seed)
    first = cheapest(job)
    wanted, boards = list(job.wanted), list(job.boards)
    random.Random(seed).shuffle(wanted)
    random.Random(seed + 1).shuffle(boards)
    again = cheapest(CuttingJob(tuple(wanted), tuple(boards), job.kerf))

    assert cheapest(job) == first
    assert again.price == first.price
    assert [(boards[each.board], each.pieces) for each in again.filled] == [
        (job.boards[each.board], each.pieces) for each in first.filled
    ]


@pytest.mark.parametrize("seed", [1, 2, 3, 4])
def test_a_basement_is_proven_cheapest(seed: int) -> None:
    """Sixty to a hundred pieces from five lengths: the bound meets the price."""
    cutting = cheapest(house(seed))

    assert cutting.proven
    assert cutting.bound == cutting.price


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_boards_filled_by_three_pieces_without_a_rest_are_found(seed: int) -> None:
    """Twenty boards of 1000, each cut into three at random: the pieces go back on twenty, which their sum alone proves."""
    chance = random.Random(seed)
    lengths = []
    for _ in range(20):
        first = chance.randint(380, 490)
        second = chance.randint(250, (1000 - first) // 2)
        lengths += [first, second, 1000 - first - second]
    cutting = cheapest(CuttingJob(tuple(Wanted(length) for length in lengths), (Board(1000, 1),)))

    assert cutting.price == 20
    assert cutting.proven


@pytest.mark.parametrize("seed", [1, 2])
def test_a_solver_without_an_answer_leaves_a_plan_and_an_honest_bound(
    seed: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Every limit reached at once: the plan is whole, the bound holds, and it is no higher than the proven price."""
    right = cheapest(house(seed))
    monkeypatch.setattr("guide.buying.cutting.solver.Solver.optimal", lambda self: False)
    lame = cheapest(house(seed))

    assert fault_in_plan(house(seed), lame.filled, lame.price) == ""
    assert 0 < lame.bound <= right.price <= lame.price


def test_the_solver_runs_on_one_thread_and_no_clock_stops_it() -> None:
    """Limits count steps: a busy machine gives the plan that an idle one gives."""
    solver = Solver()
    options = {
        name: solver.getOptionValue(name)[1] for name in ("threads", "random_seed", "mip_max_nodes", "time_limit")
    }

    assert options == {"threads": 1, "random_seed": 0, "mip_max_nodes": 50, "time_limit": float("inf")}


def test_the_last_saw_cut_may_run_off_the_board() -> None:
    """Worked by hand: two pieces of 47 15/16 in and one cut of 1/8 are 96 in, one eight; a sixteenth more is two.

    A piece as long as its board needs no cut at all.
    """
    one_eight = (Board(96 * 16, 400),)
    fits = CuttingJob((Wanted(47 * 16 + 15, 2),), one_eight, kerf=2)
    over = CuttingJob((Wanted(47 * 16 + 15, 1), Wanted(48 * 16, 1)), one_eight, kerf=2)

    assert cheapest(fits).price == 400
    assert cheapest(over).price == 800
    assert cheapest(CuttingJob((Wanted(96 * 16, 3),), one_eight, kerf=2)).price == 1200


def test_the_trim_is_lost_once_a_board() -> None:
    """Worked by hand: half an inch off each board leaves 95 1/2, which two pieces of 47 3/4 and no cut fill."""
    boards = (Board(96 * 16, 400),)

    assert cheapest(CuttingJob((Wanted(764, 2),), boards, trim=8)).price == 400
    assert cheapest(CuttingJob((Wanted(764, 2),), boards, trim=9)).price == 800


def test_a_longer_board_is_bought_only_where_it_saves_money() -> None:
    """Worked by hand: three pieces of 4 ft from a twelve at 5.90, or from two eights at 8.00; six eights hold twelve."""
    three = CuttingJob((Wanted(48 * 16, 3),), EIGHTS_AND_TWELVES)
    dear = CuttingJob((Wanted(48 * 16, 3),), (Board(96 * 16, 290), Board(144 * 16, 590)))

    assert cheapest(three).price == 590
    assert cheapest(dear).price == 580


def test_what_is_at_hand_costs_nothing_and_is_used_first() -> None:
    """Worked by hand: of four pieces of 30 in two come from a 64 in offcut that is free, two from one eight."""
    job = CuttingJob((Wanted(480, 4),), (Board(64 * 16, 0, most=1), Board(96 * 16, 400)), kerf=2)
    cutting = cheapest(job)

    assert cutting.price == 400
    assert cutting.proven


def test_nothing_to_cut_costs_nothing() -> None:
    """An empty list is a purchase of no boards."""
    cutting = cheapest(CuttingJob((), EIGHTS_AND_TWELVES))

    assert (cutting.filled, cutting.price, cutting.proven) == ((), 0, True)


@pytest.mark.parametrize(
    ("wanted", "board", "said"),
    [
        (Wanted(1537), Board(1536, 400), "no board gives more than 1536"),
        (Wanted(0), Board(1536, 400), "a length starts at 1"),
        (Wanted(100), Board(1536, 0), "a price starts at 1"),
        (Wanted(100), Board(1536, -5), "a price starts at 1"),
        (Wanted(100), Board(1536, 400, most=-1), "both start above 0"),
    ],
)
def test_what_cannot_be_meant_is_one_sentence(wanted: Wanted, board: Board, said: str) -> None:
    """A piece longer than every board, a price of nothing, a count below 0: said at once, with what would be right."""
    with pytest.raises(ValueError, match=said):
        CuttingJob((wanted,), (board,))
