"""The cutting benchmark: `python -m tests.benchmarks.cutting [jobs]`, 500 seeded jobs unless said otherwise.

It prints how many purchases are certified, how many claims are wrong, whether a proof that asks one cent more is
refused, how long a job takes, and what simpler ways of buying pay on the same jobs. Times are processor time, since the
machine may be shared. A claim counts as wrong when any plan, from any of the ways tried, is cheaper than its bound.
"""

from __future__ import annotations

import statistics
import sys
import time
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace

from guide.buying.cutting.cheapest import cheapest
from guide.buying.cutting.checker import fault_in_plan, holds
from guide.buying.cutting.job import Cutting, CuttingJob
from tests.benchmarks.cutting_jobs import basement, by_length, first_fit, mix, shuffled, triplets, uniform

FIRST_SEED = 10_000
"""Seeds from here on were not looked at while the search was written."""


@dataclass(frozen=True)
class Run:
    """One job and what came of it."""

    job: CuttingJob
    cutting: Cutting
    seconds: float
    check: float
    longest: int | None
    """First fit, longest board only, then as short as its pieces allow."""
    single: int | None
    """First fit on the best single length."""
    same: bool
    """The job again with its pieces shuffled gave the same plan."""

    @property
    def wrong(self) -> bool:
        """Something claimed is not so."""
        others = [price for price in (self.longest, self.single) if price is not None]
        return bool(fault_in_plan(self.job, self.cutting.filled, self.cutting.price)) or any(
            price < self.cutting.bound for price in (*others, self.cutting.price)
        )

    @property
    def refused(self) -> bool:
        """The checker does not let the same proof stand for one cent more."""
        proof = self.cutting.proof
        return not holds(self.job, replace(proof, bound=proof.bound + 1))


def run(job: CuttingJob, seed: int) -> Run:
    """Cut a job, check it, shuffle it and cut it again."""
    start = time.process_time()
    cutting = cheapest(job)
    done = time.process_time()
    holds(job, cutting.proof)
    checked = time.process_time()
    singles = [price for board in job.boards if (price := first_fit(job, (board,))) is not None]
    return Run(
        job,
        cutting,
        done - start,
        checked - done,
        first_fit(job, job.boards),
        min(singles, default=None),
        cheapest(shuffled(job, seed)) == cutting,
    )


def report(what: str, runs: list[Run]) -> None:
    """Print one family of jobs."""
    times = sorted(each.seconds for each in runs)
    checks = sum(each.check for each in runs) / sum(times)
    certified = sum(each.cutting.proven for each in runs)
    gaps = [each.cutting.price / each.cutting.bound - 1 for each in runs if not each.cutting.proven]
    print(
        f"{what}: {len(runs)} jobs, certified {certified} ({100 * certified / len(runs):.1f} %), "
        f"wrong claims {sum(each.wrong for each in runs)}, one cent more refused {sum(each.refused for each in runs)}, "
        f"same plan when shuffled {sum(each.same for each in runs)}",
        flush=True,
    )
    if gaps:
        print(f"  not certified: the bound is {100 * max(gaps):.3f} % under the price at most")
    print(
        f"  processor time: median {statistics.median(times):.3f} s, p95 {times[int(0.95 * len(times))]:.3f} s, "
        f"most {times[-1]:.3f} s; checking takes {100 * checks:.1f} % of it"
    )
    _against("first fit, longest first, boards cut short", runs, lambda each: each.longest)
    _against("first fit on the best single length", runs, lambda each: each.single)


def _against(what: str, runs: Iterable[Run], price: Callable[[Run], int | None]) -> None:
    over = [100 * (paid / each.cutting.price - 1) for each in runs if (paid := price(each)) is not None]
    if over:
        print(f"  {what} pays more: median {statistics.median(over):.1f} %, most {max(over):.1f} % ({len(over)} jobs)")


def main() -> int:
    """Run it and print it."""
    jobs = int(sys.argv[1]) if len(sys.argv) > 1 else 500
    half = jobs // 2
    report("basements", [run(basement(seed), seed) for seed in range(FIRST_SEED, FIRST_SEED + half)])
    report("mixes", [run(mix(seed), seed) for seed in range(FIRST_SEED, FIRST_SEED + jobs - half)])
    free = [by_length(basement(seed)) for seed in range(FIRST_SEED, FIRST_SEED + max(1, jobs // 5))]
    report("basements without prices", [run(job, seed) for seed, job in enumerate(free)])
    few = max(1, jobs // 50)
    report("uniform, 1000 pieces", [run(uniform(seed), seed) for seed in range(FIRST_SEED, FIRST_SEED + few)])
    report("triplets, 999 pieces", [run(triplets(seed), seed) for seed in range(FIRST_SEED, FIRST_SEED + few)])
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
