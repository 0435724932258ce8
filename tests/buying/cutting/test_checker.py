"""The checker: it refuses every plan and every proof that is not right, and it stands alone."""

from __future__ import annotations

import subprocess
import sys
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from guide.buying.cutting.cheapest import cheapest
from guide.buying.cutting.checker import fault_in_plan, holds
from guide.buying.cutting.job import Board, Cutting, CuttingJob, Filled, Leaf, Proof, Split, Wanted
from tests.buying.cutting.small import small_jobs, tried_out
from tests.buying.cutting.test_cheapest import house

JOB = CuttingJob((Wanted(30, 4, "a"), Wanted(20, 3, "b")), (Board(64, 7), Board(90, 10)), kerf=1)


def plan() -> Cutting:
    """Return the cheapest purchase of the job above."""
    return cheapest(JOB)


def test_the_right_plan_has_no_fault() -> None:
    """What the finder gives passes: pieces, boards and price agree, and the proof holds."""
    cutting = plan()

    assert fault_in_plan(JOB, cutting.filled, cutting.price) == ""
    assert holds(JOB, cutting.proof)


def faulty() -> dict[str, tuple[tuple[Filled, ...], int, str]]:
    """Return plans spoiled in one place each, and what has to be said about them."""
    cutting = plan()
    first, *others = cutting.filled
    over = Filled(first.board, (*first.pieces, (30, "a"), (30, "a")), 0)
    return {
        "a piece missing": ((replace(first, pieces=first.pieces[1:]), *others), cutting.price, "left over"),
        "a board missing": (tuple(others), cutting.price, "are asked for"),
        "a board too full": ((over, *others), cutting.price, "take"),
        "another mark": (
            (replace(first, pieces=((first.pieces[0][0], "z"), *first.pieces[1:])), *others),
            cutting.price,
            "are asked for",
        ),
        "no such board": ((replace(first, board=2), *others), cutting.price, "not on the list"),
        "one cent less": (cutting.filled, cutting.price - 1, "not"),
        "more rest than there is": ((replace(first, rest=first.rest + 1), *others), cutting.price, "left over"),
    }


@pytest.mark.parametrize("name", faulty())
def test_a_plan_with_one_thing_wrong_is_refused(name: str) -> None:
    """Each fault is found and said."""
    filled, price, said = faulty()[name]

    assert said in fault_in_plan(JOB, filled, price)


def test_more_boards_than_there_are_is_a_fault() -> None:
    """Two free offcuts are used where there is one."""
    job = CuttingJob((Wanted(30, 2),), (Board(40, 0, most=1), Board(64, 7)), kerf=1)
    filled = (Filled(0, ((30, ""),), 9), Filled(0, ((30, ""),), 9))

    assert "there are 1" in fault_in_plan(job, filled, 0)


def spoiled(proof: Proof) -> dict[str, Proof]:
    """Return proofs that lack something."""
    return {
        "a cent more": replace(proof, bound=proof.bound + 1),
        "no cases": replace(proof, cases=()),
        "the last case missing": replace(proof, cases=proof.cases[:-1]),
        "a case too many": replace(proof, cases=(*proof.cases, Leaf(1, ()))),
        "no worths": replace(proof, worths=()),
        "worths below 0": replace(proof, worths=tuple(tuple(-worth for worth in row) for row in proof.worths)),
        "a row too short": replace(proof, worths=tuple(row[:-1] for row in proof.worths)),
        "weights below 0": replace(
            proof,
            cases=tuple(
                Leaf(case.price, tuple((row, -weight) for row, weight in case.needs))
                if isinstance(case, Leaf)
                else case
                for case in proof.cases
            ),
        ),
        "price below 0": replace(proof, cases=(Leaf(-1, ()),)),
        "no such row": replace(proof, cases=(Leaf(1, ((len(proof.worths), 1),)),)),
        "no such board": replace(proof, cases=(Split(9, 0), *proof.cases, *proof.cases)),
        "only a claim": replace(proof, cases=(Leaf(1, ()),)),
    }


@pytest.mark.parametrize("seed", [1, 2])
@pytest.mark.parametrize("name", spoiled(Proof(1, (), ())))
def test_a_spoiled_proof_is_refused(name: str, seed: int) -> None:
    """A basement's proof holds; the same proof with one thing changed does not."""
    job = house(seed)
    proof = cheapest(job).proof

    assert holds(job, proof)
    assert not holds(job, spoiled(proof)[name])


@settings(max_examples=300, deadline=None)
@given(small_jobs(), st.data())
def test_whatever_the_checker_lets_pass_is_true(job: CuttingJob, data: st.DataObject) -> None:
    """Proofs made up at random: those that hold never claim more than the least price found by trying everything."""
    lengths = len({each.length for each in job.wanted if each.count})
    weights = st.integers(0, 30)
    rows = data.draw(st.lists(st.tuples(*[weights] * lengths), min_size=1, max_size=3))
    leaf = st.builds(Leaf, weights, st.lists(st.tuples(st.integers(0, len(rows) - 1), weights)).map(tuple))
    split = st.builds(Split, st.integers(0, len(job.boards) - 1), st.integers(-1, 5))
    cases = data.draw(
        st.one_of(
            leaf.map(lambda a: (a,)),
            st.tuples(split, leaf, leaf),
            st.tuples(split, leaf, split, leaf, leaf),
        )
    )
    proof = Proof(data.draw(st.integers(1, 150)), tuple(rows), cases)

    least = tried_out(job)
    assert least is not None
    assert not holds(job, proof) or proof.bound <= least


def test_the_checker_knows_neither_the_finder_nor_a_solver() -> None:
    """A fresh interpreter that loads the checker loads the plain values beside it, and nothing else of the package."""
    code = (
        "import sys, guide.buying.cutting.checker as _\n"
        "print(*sorted(m for m in sys.modules if m.startswith(('guide.', 'highspy'))))"
    )
    out = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout

    assert out.split() == [
        "guide.buying",
        "guide.buying.cutting",
        "guide.buying.cutting.checker",
        "guide.buying.cutting.job",
    ]
