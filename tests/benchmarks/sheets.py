"""The sheets benchmark: `python -m tests.benchmarks.sheets [jobs]`, 100 seeded basements unless said otherwise.

It prints how often no layout of any kind could do better, how often the search found less than the rules of thumb, what
a plain first fit takes on the same jobs, and how long a job takes. Times are processor time, since the machine may be
shared. A claim is wrong when any layout tried takes less than the bound.
"""

from __future__ import annotations

import statistics
import sys
import time
from collections.abc import Mapping
from dataclasses import dataclass
from random import Random

from guide.buying.sheets.plan import SheetGoods, sheets_from
from guide.interview.written import Json
from guide.layout.drywall import tapered
from guide.layout.packing import sheets_for
from guide.layout.parts import Kind, Layout, Material
from guide.lengths import ZERO, Length, exact_inches, inches
from guide.reference.figures import load_figures
from tests.jobs import Tree, job, layout_of, wall, window

FIRST_SEED = 20_000
"""Seeds from here on were not looked at while the search was written."""

WIDE = inches("48")
TWO_PRICES = {WIDE: 3300, inches("24"): 1750}


@dataclass(frozen=True)
class Run:
    """One material of one job, and what came of it."""

    goods: SheetGoods
    plain: int | None
    """Sheets that a first fit takes; None where money is counted, and of drywall, whose edges it knows nothing of."""
    seconds: float


def sixteenths(number: int) -> str:
    """Return a size as it is written: `92 3/16 in`."""
    return f"{exact_inches(inches('1/16') * number)} in"


def basement(seed: int) -> Layout:
    """Return a basement of three to nine walls on a sloping slab, three to a run, some with a window."""
    random = Random(seed)
    walls: list[Tree] = []
    for number in range(random.randint(3, 9)):
        long = random.randint(84, 300)
        left, right = random.randint(1400, 1536), random.randint(1400, 1536)
        openings: list[Json] = (
            [window(f"{random.randint(30, long - 64)} in")] if long > 110 and random.random() < 0.5 else []
        )
        walls.append(
            wall(
                sixteenths(long * 16 + random.randint(0, 15)),
                height=[f"{sixteenths(left)} at left", f"{sixteenths(right)} at right"],
                concrete=[f"{sixteenths(left - 26)} at left", f"{sixteenths(right - 25)} at right"],
                shelf=sixteenths(random.randint(24, 80)),
                string=sixteenths(random.randint(12, 24)),
                right="open end" if number % 3 == 2 else "inside corner",
                openings=openings,
            )
        )
    return layout_of(job(walls, block_reach=random.choice(("foam", "concrete"))))


def run(layout: Layout, material: Material, prices: Mapping[Length, int]) -> Run:
    """Cut one material of a job."""
    figures = load_figures()
    parts = [part for part in layout.parts.values() if part.material is material]
    kerf = figures.cap_kerf if material is Material.PLYWOOD else ZERO
    edges = frozenset().union(*(tapered(each.of(Kind.DRYWALL)) for each in layout.walls))
    start = time.process_time()
    goods = sheets_from(
        material.value,
        parts,
        wide=WIDE,
        tall=figures.sheet_long,
        kerf=kerf,
        prices=prices,
        edges=edges,
        turns=material is Material.FOAM,
    )
    seconds = time.process_time() - start
    fitting = [layout.parts[part.id] for sheet in goods.sheets for part in sheet.parts]
    sizes = [(part.across or WIDE, part.along) for part in fitting]
    plain = len(sheets_for(sizes, wide=WIDE, tall=figures.sheet_long, kerf=kerf))
    return Run(goods, None if goods.priced or material is Material.DRYWALL else plain, seconds)


def report(what: str, runs: list[Run]) -> None:
    """Print one material."""
    times = sorted(each.seconds for each in runs)
    proven = sum(each.goods.proven for each in runs)
    counted = [each for each in runs if each.plain is not None]
    gaps = [100 * (each.goods.total / each.goods.least - 1) for each in runs if not each.goods.proven]
    wrong = sum(min(each.goods.total, each.plain or each.goods.total) < each.goods.least for each in runs)
    print(
        f"{what}: {len(runs)} jobs, no layout of any kind does better in {proven} ({100 * proven / len(runs):.0f} %), "
        f"wrong claims {wrong}"
    )
    if gaps:
        print(f"  the others are above the bound by a median of {statistics.median(gaps):.1f} %")
    if counted:
        fewer = sum((each.plain or 0) > each.goods.total for each in counted)
        saved = sum((each.plain or 0) - each.goods.total for each in counted)
        print(f"  a plain first fit takes more in {fewer} of them, {saved} sheets in all")
    print(f"  processor time: median {statistics.median(times):.3f} s, p95 {times[int(0.95 * len(times))]:.3f} s, most {times[-1]:.3f} s")  # fmt: skip


def main() -> int:
    """Run it and print it."""
    jobs = int(sys.argv[1]) if len(sys.argv) > 1 else 100
    layouts = [basement(seed) for seed in range(FIRST_SEED, FIRST_SEED + jobs)]
    report("foam, one size", [run(layout, Material.FOAM, {}) for layout in layouts])
    report("plywood, one size", [run(layout, Material.PLYWOOD, {}) for layout in layouts])
    report("drywall, one size", [run(layout, Material.DRYWALL, {}) for layout in layouts])
    report("foam, two sizes with prices", [run(layout, Material.FOAM, TWO_PRICES) for layout in layouts])
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
