"""The cheapest purchase for a list of pieces: found with a linear program, proven only by the checker's word."""

from __future__ import annotations

from guide.buying.cutting.checker import fault_in_plan, holds
from guide.buying.cutting.columns import Columns
from guide.buying.cutting.filling import quick_plan
from guide.buying.cutting.job import Cutting, CuttingJob, Filled, Proof
from guide.buying.cutting.packing import Plan, pack
from guide.buying.cutting.pieces import Pieces, pieces_of
from guide.buying.cutting.purchases import Boards, Purchases
from guide.buying.cutting.tidy import tidy
from guide.buying.cutting.ways import fewest_ways

_HARD, _THOROUGH = 16, 4
"""Purchases at one price, at most, that wait for another at that price; and how many of them are then packed thoroughly."""

_ROUNDS = 60
"""Purchases looked at before the best plan so far is taken, with the bound as far as it came."""


def cheapest(job: CuttingJob) -> Cutting:
    """Return the cheapest purchase found, with its plan and what is proven of it.

    The same pieces in any order give the same answer. Raises ValueError when no plan is found at all, which can only
    be where every board that is long enough is limited in number.
    """
    pieces = pieces_of(job)
    if not pieces.counts:
        return Cutting((), 0, 0, Proof(0, (), ()), 0, 0)
    plan, proof = _search(pieces)
    plan, least = fewest_ways(pieces, plan)
    plan = tidy(pieces, plan)
    filled = _marked(job, pieces, plan)
    price = sum(job.boards[each.board].price for each in filled)
    fault = fault_in_plan(job, filled, price)
    if fault:
        raise AssertionError(fault)
    shown = proof.bound if holds(job, proof) else 0
    return Cutting(filled, price, shown, proof, len(set(plan)), least)


def _price(pieces: Pieces, plan: Plan) -> int:
    return sum(pieces.prices[kind] for kind, _ in plan)


def _search(pieces: Pieces) -> tuple[Plan, Proof]:
    best = quick_plan(pieces)
    under = _price(pieces, best) if best is not None else pieces.price(pieces.most) + 1
    columns = Columns(pieces, best or ())
    purchases = Purchases(pieces, under, lambda low, high: columns.cheapest(low, high, max(pieces.prices)).worths)
    purchases.add(
        pieces.weights, purchases.need(pieces.weights)
    )  # wood in is at least wood out, whatever a solver says
    hard: list[Boards] = []  # without a quick plan; another purchase at the same price may be easier
    for _ in range(_ROUNDS):
        boards = purchases.next(under)
        if hard and (boards is None or len(hard) == _HARD or pieces.price(boards) > pieces.price(hard[0])):
            plans = (pack(pieces, columns, each, thorough=True) for each in hard[:_THOROUGH])
            plan = next((plan for plan in plans if plan is not None), None)
            hard = []
            if plan is not None:
                best, under = plan, _price(pieces, plan)
                continue
        if boards is None:
            break
        answer = columns.shortage(pieces.counts, boards)
        if answer.objective > 1e-6:
            held, total = need = purchases.need(answer.worths)
            if sum(h * n for h, n in zip(held, boards, strict=True)) < total:
                purchases.add(answer.worths, need)
                continue
        plan = pack(pieces, columns, boards, thorough=False)
        if plan is None:
            purchases.leave_open(boards)
            hard.append(boards)
        else:
            best, under = plan, _price(pieces, plan)
    if best is None:
        raise ValueError("the boards on the list are too few for these pieces.")
    return best, Proof(min(under, purchases.bound) * pieces.step, tuple(purchases.worths), purchases.cases())


def _marked(job: CuttingJob, pieces: Pieces, plan: Plan) -> tuple[Filled, ...]:
    """Give each piece of the plan its mark: longest boards and longest pieces first, marks of one length in order."""
    marks: dict[int, list[str]] = {length: [] for length in pieces.lengths}
    for wanted in sorted(job.wanted, key=lambda each: each.mark, reverse=True):
        marks.setdefault(wanted.length, []).extend([wanted.mark] * wanted.count)
    filled = []
    for kind, pattern in sorted(plan, key=lambda each: (-each[0], [-count for count in each[1]])):
        cut = [length for length, count in zip(pieces.lengths, pattern, strict=True) for _ in range(count)]
        board = job.boards[pieces.kinds[kind]]
        rest = board.length - job.trim - sum(length + job.kerf for length in cut)
        filled.append(Filled(pieces.kinds[kind], tuple((length, marks[length].pop()) for length in cut), max(0, rest)))
    return tuple(filled)
