"""Sheets against trying everything: small jobs solved a second way, and what the checker and the bound must refuse."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from guide.buying.sheets.bound import least_price
from guide.buying.sheets.job import Kind, Piece, Plan, Rip, Sheet, SheetJob, fault, price_of
from guide.buying.sheets.quick import quick_plan
from guide.buying.sheets.search import cheaper_plan


def partitions(items: Sequence[int]) -> Iterator[list[list[int]]]:
    """Yield every way to part items into groups."""
    if not items:
        yield []
        return
    first, rest = items[0], items[1:]
    for parted in partitions(rest):
        yield [[first], *parted]
        for n in range(len(parted)):
            yield [*parted[:n], [first, *parted[n]], *parted[n + 1 :]]


def by_trying_every_turn(job: SheetJob) -> int:
    """Return the least price of all ripped and cross-cut layouts, every piece that may be turned tried both ways."""
    ways = [job.ways(n) for n in range(len(job.pieces))]
    return min(by_trying_everything(replace(job, pieces=tuple(job.lying[n] for n in way))) for way in product(*ways))


def by_trying_everything(job: SheetJob) -> int:
    """Return the least price of all ripped and cross-cut layouts: every parting into strips, every parting of strips.

    Strips with a piece that keeps an edge of the sheet are two on a sheet at most, for its two sides.
    """
    best = 10**9
    for strips in partitions(range(len(job.pieces))):
        if any(sum(job.pieces[n].tall + job.kerf for n in strip) > job.tall + job.kerf for strip in strips):
            continue
        wide = [max(job.pieces[n].wide for n in strip) for strip in strips]
        edge = [any(job.pieces[n].edge for n in strip) for strip in strips]
        for sheets in partitions(range(len(strips))):
            if any(sum(edge[s] for s in sheet) > 2 for sheet in sheets):
                continue
            used = [sum(wide[s] + job.kerf for s in sheet) - job.kerf for sheet in sheets]
            prices = [min((k.price for k in job.kinds if u <= k.wide), default=10**9) for u in used]
            best = min(best, sum(prices))
    return best


def found(job: SheetJob) -> Plan:
    """Return the layout that the finder ends with."""
    plan = quick_plan(job)
    while (better := cheaper_plan(job, plan)) is not None:
        plan = better
    return plan


@st.composite
def small_jobs(draw: st.DrawFn) -> SheetJob:
    """Up to six pieces, a saw cut or none, one size of sheet or two."""
    narrow, wide, tall = draw(st.integers(8, 14)), 20, draw(st.sampled_from((12, 20, 30)))
    kinds = draw(
        st.sampled_from(((Kind(wide, 10),), (Kind(narrow, 6), Kind(wide, 10)), (Kind(narrow, 5), Kind(wide, 10))))
    )
    piece = st.builds(Piece, st.integers(1, wide), st.integers(1, tall))
    return SheetJob(tuple(draw(st.lists(piece, min_size=1, max_size=6))), kinds, tall, draw(st.integers(0, 2)))


@settings(max_examples=150)
@given(job=small_jobs())
def test_small_jobs_end_at_what_trying_everything_finds(job: SheetJob) -> None:
    """The search leaves out no layout, and the bound is never above the truth."""
    plan, truth = found(job), by_trying_everything(job)

    assert fault(job, plan) == ""
    assert price_of(job, plan) == truth
    assert least_price(job) <= truth


@settings(max_examples=150)
@given(job=small_jobs(), edges=st.lists(st.booleans(), min_size=6, max_size=6))
def test_with_edges_to_keep_nothing_is_cut_wrong_and_the_bound_holds(job: SheetJob, edges: list[bool]) -> None:
    """The search may leave out layouts here; what it ends with can be cut, and lies between the bound and no less than the truth."""
    kept = tuple(replace(piece, edge=edge) for piece, edge in zip(job.pieces, edges, strict=False))
    edged = replace(job, pieces=kept)
    plan, truth = found(edged), by_trying_everything(edged)

    assert fault(edged, plan) == ""
    assert least_price(edged) <= truth <= price_of(edged, plan)


@settings(max_examples=60)
@given(job=small_jobs(), turns=st.lists(st.booleans(), min_size=6, max_size=6))
def test_pieces_that_may_be_turned_are_where_that_is_cheaper(job: SheetJob, turns: list[bool]) -> None:
    """Both ways of each tried beside every parting: the search leaves out no turn, and turns nothing it may not."""
    small = tuple(replace(piece, turns=turn) for piece, turn in zip(job.pieces[:5], turns, strict=False))
    free = replace(job, pieces=small)
    plan = found(free)

    assert fault(free, plan) == ""
    assert least_price(free) <= by_trying_every_turn(free) == price_of(free, plan)


def test_the_checker_refuses_a_turn_that_is_not_allowed() -> None:
    """The piece of number n turned has number n plus how many there are."""
    job = SheetJob((Piece(2, 5), Piece(3, 4, turns=True)), (Kind(10, 1),), 10, 0)

    assert fault(job, (Sheet(0, (Rip(4, (3,)), Rip(2, (0,)))),)) == ""
    assert "turned that may not be" in fault(job, (Sheet(0, (Rip(5, (2,)), Rip(3, (1,)))),))


def anyhow(job: SheetJob) -> int:
    """Return the fewest sheets of one size over every layout on a small grid, turned pieces and all, without a saw cut."""
    (kind,) = job.kinds
    pieces = sorted(job.pieces, key=lambda p: -p.wide * p.tall)

    def place(number: int, sheets: list[set[tuple[int, int]]], most: int) -> bool:
        if number == len(pieces):
            return True
        for wide, tall in {(pieces[number].wide, pieces[number].tall), (pieces[number].tall, pieces[number].wide)}:
            for n in range(min(len(sheets) + 1, most)):
                free = sheets[n] if n < len(sheets) else {(x, z) for x in range(kind.wide) for z in range(job.tall)}
                for x in range(kind.wide - wide + 1):
                    for z in range(job.tall - tall + 1):
                        taken = {(x + i, z + j) for i in range(wide) for j in range(tall)}
                        if taken <= free and place(number + 1, [*sheets[:n], free - taken, *sheets[n + 1 :]], most):
                            return True
        return False

    return next(most for most in range(1, len(pieces) + 1) if place(0, [], most))


@settings(max_examples=80)
@given(pieces=st.lists(st.builds(Piece, st.integers(1, 4), st.integers(1, 5)), min_size=1, max_size=4))
def test_the_bound_is_below_every_layout_even_with_pieces_turned(pieces: list[Piece]) -> None:
    """Every place and both ways of every piece tried on a grid of 4 by 5: no layout takes fewer than the bound says."""
    job = SheetJob(tuple(pieces), (Kind(4, 1),), 5, 0)

    assert least_price(job) <= anyhow(job) <= price_of(job, found(job))


def test_the_same_pieces_in_any_order_make_the_same_sheets() -> None:
    """Sizes, not places in the list, decide; so the plan is the same to the letter."""
    pieces = tuple(Piece(w, t) for w, t in ((7, 9), (5, 9), (5, 5), (3, 4), (9, 12), (7, 9), (2, 11)))
    job = SheetJob(tuple(sorted(pieces, key=lambda p: (-p.wide, -p.tall))), (Kind(20, 10),), 12, 1)

    assert found(job) == found(job)
    assert price_of(job, found(job)) == by_trying_everything(job)


GOOD = SheetJob((Piece(4, 5), Piece(4, 4), Piece(3, 10)), (Kind(8, 1),), 10, 1)
CUT = (Sheet(0, (Rip(4, (0, 1)), Rip(3, (2,)))),)


@pytest.mark.parametrize(
    ("plan", "said"),
    [
        ((Sheet(0, (Rip(4, (0, 1)),)),), "not at all"),
        ((Sheet(0, (Rip(4, (0, 1)), Rip(3, (2, 2)))),), "twice"),
        ((Sheet(0, (Rip(4, (0, 1)), Rip(2, (2,)))),), "wider than its strip"),
        ((Sheet(0, (Rip(5, (0, 1)), Rip(3, (2,)))),), "wider than the sheet"),
    ],
)
def test_the_checker_refuses_what_cannot_be_cut(plan: Plan, said: str) -> None:
    """Each slip is named; the layout beside it, with its saw cuts just fitting, is accepted."""
    assert fault(GOOD, CUT) == ""
    assert said in fault(GOOD, plan)


def test_the_checker_refuses_a_third_strip_that_keeps_an_edge() -> None:
    """Three strips of 2 fit in 8; a sheet has two long edges."""
    edged = SheetJob((Piece(2, 5, edge=True),) * 3, (Kind(8, 1),), 10, 0)
    plan = (Sheet(0, tuple(Rip(2, (n,)) for n in range(3))),)

    assert "keep an edge" in fault(edged, plan)
    assert fault(replace(edged, pieces=(*edged.pieces[:2], Piece(2, 5))), plan) == ""


def test_the_saw_cut_counts() -> None:
    """Two pieces of five fill ten without a saw cut, and not with one."""
    tight = SheetJob((Piece(4, 5), Piece(4, 5)), (Kind(4, 1),), 10, 0)
    plan = (Sheet(0, (Rip(4, (0, 1)),)),)

    assert fault(tight, plan) == ""
    assert "longer than the sheet" in fault(replace(tight, kerf=1), plan)
    assert price_of(tight, found(tight)) == 1
    assert price_of(replace(tight, kerf=1), found(replace(tight, kerf=1))) == 2
