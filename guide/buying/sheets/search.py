"""A search for a cheaper layout over all ripped and cross-cut ones, with HiGHS. What it finds is counted over before use.

A piece that may be turned stands for two, of which one is cut. One variable says that a piece lies in the strip of another one at least as wide, one that a strip lies on the sheet of
another strip. A piece that keeps an edge of the sheet lies in the strip of another such piece only, which leaves some
layouts out. The search stops after a fixed number of nodes, never after seconds, so that it always ends the same way.
"""

from __future__ import annotations

from collections import defaultdict

from highspy import HighsVarType

from guide.buying.cutting.solver import Solver
from guide.buying.sheets.job import SIDES, Piece, Plan, SheetJob, fault, price_of, sheet_of

NODES = 100
MOST_PIECES = 120
"""Of more pieces the model would be too large to be worth its time; the rule of thumb then stands."""


def cheaper_plan(job: SheetJob, best: Plan) -> Plan | None:
    """Return a layout that costs less than `best`, or None when none was found. None proves nothing."""
    alone = [n for n in range(len(job.pieces)) if _alone(job, n)]
    rest = [n for n in range(len(job.pieces)) if n not in alone]
    if not rest or len(rest) > MOST_PIECES:
        return None
    whole = [sheet_of(job, [[n]]) for n in alone]
    under = price_of(job, best) - price_of(job, tuple(whole)) - 1
    lying = [way for n in rest for way in job.ways(n)]
    strips = _solve(job, sorted(lying, key=lambda n: _first(job.lying[n], n)), under)
    if strips is None:
        return None
    plan = (*whole, *(sheet_of(job, each) for each in strips))
    return plan if not fault(job, plan) and price_of(job, plan) < price_of(job, best) else None


def _alone(job: SheetJob, n: int) -> bool:
    """Say whether nothing else fits on the sheet of a piece, beside it or behind it."""
    mine, widest = job.pieces[n], max(kind.wide for kind in job.kinds)
    others = [job.lying[way] for m in range(len(job.pieces)) if m != n for way in job.ways(m)]
    return len(job.ways(n)) == 1 and all(
        mine.wide + job.kerf + other.wide > widest and mine.tall + job.kerf + other.tall > job.tall for other in others
    )


def _first(piece: Piece, n: int) -> tuple[int, bool, int, int]:
    """Return what pieces are sorted by: one lies in the strip of an earlier one only."""
    return -piece.wide, not piece.edge, -piece.tall, n


def _solve(job: SheetJob, order: list[int], under: int) -> list[list[list[int]]] | None:
    """Return, for each sheet, its strips, each as its pieces; None when nothing of at most `under` was found."""
    pieces, kerf = [job.lying[n] for n in order], job.kerf
    same = [n % len(job.pieces) for n in order]
    solver, count = Solver(), len(order)
    solver.setOptionValue("mip_max_nodes", NODES)
    scale = float(max(job.tall, *(kind.wide for kind in job.kinds)))
    together = [
        (i, j)
        for i in range(count)
        for j in range(i, count)
        if i == j
        or (
            pieces[i].tall + kerf + pieces[j].tall <= job.tall
            and pieces[i].edge >= pieces[j].edge
            and same[i] != same[j]
        )
    ]
    widest = max(kind.wide for kind in job.kinds)
    beside = [
        (s, i)
        for s in range(count)
        for i in range(s, count)
        if s == i or (pieces[s].wide + kerf + pieces[i].wide <= widest and same[s] != same[i])
    ]
    kinds = [(s, k) for s in range(count) for k, kind in enumerate(job.kinds) if pieces[s].wide <= kind.wide]
    y = {pair: n for n, pair in enumerate(together)}
    z = {pair: len(y) + n for n, pair in enumerate(beside)}
    t = {pair: len(y) + len(z) + n for n, pair in enumerate(kinds)}
    columns = range(len(y) + len(z) + len(t))
    for column in columns:
        solver.addVar(0.0, 1.0)
        solver.changeColIntegrality(column, HighsVarType.kInteger)
    for (_, k), column in t.items():
        solver.changeColCost(column, float(job.kinds[k].price))

    def row(low: float, high: float, terms: dict[int, float]) -> None:
        solver.addRow(low, high, len(terms), list(terms), list(terms.values()))

    infinity = float(solver.getInfinity())
    in_strip, on_sheet = defaultdict[int, list[int]](list), defaultdict[int, list[int]](list)
    strip_holds, sheet_holds = defaultdict[int, list[int]](list), defaultdict[int, list[int]](list)
    for i, j in together:
        in_strip[j].append(i)
        strip_holds[i].append(j)
    for s, i in beside:
        on_sheet[i].append(s)
        sheet_holds[s].append(i)
    once = defaultdict[int, dict[int, float]](dict)
    for n in range(count):
        once[same[n]] |= {y[i, n]: 1.0 for i in in_strip[n]}
    for n in range(count):
        if same[n] in once:
            row(1.0, 1.0, once.pop(same[n]))
        length = {y[n, j]: (pieces[j].tall + kerf) / scale for j in strip_holds[n] if j != n}
        row(-infinity, 0.0, {**length, y[n, n]: -(job.tall - pieces[n].tall) / scale})
        row(0.0, 0.0, {**{z[s, n]: 1.0 for s in on_sheet[n]}, y[n, n]: -1.0})
        mine = {k: t[n, k] for k in range(len(job.kinds)) if (n, k) in t}
        row(0.0, 0.0, {**dict.fromkeys(mine.values(), 1.0), z[n, n]: -1.0})
        width = {z[n, i]: (pieces[i].wide + kerf) / scale for i in sheet_holds[n] if i != n}
        room = {column: -(job.kinds[k].wide - pieces[n].wide) / scale for k, column in mine.items()}
        row(-infinity, 0.0, {**width, **room})
        sides = {z[n, i]: 1.0 for i in sheet_holds[n] if pieces[i].edge}
        if len(sides) > SIDES:
            row(-infinity, float(SIDES), sides)
    row(-infinity, float(under), {column: float(job.kinds[k].price) for (_, k), column in t.items()})
    solver.run()
    values = list(solver.getSolution().col_value)
    if len(values) != len(columns) or not any(value > 0.5 for value in values):
        return None
    sheets: dict[int, list[list[int]]] = defaultdict(list)
    for (s, i), column in z.items():
        if values[column] > 0.5:
            sheets[s].append([order[j] for j in strip_holds[i] if values[y[i, j]] > 0.5])
    return list(sheets.values())
