"""Benchmarks: how long a person waits, against doing nothing but the unavoidable. Ratios are printed; nothing asserts.

Each figure is the median of several runs. Whole processes are timed from outside; re-planning inside one process.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

HERE = Path(__file__).parent
ROOT = HERE.parent.parent
RUNS = 9


def main() -> int:
    """Run every benchmark and print one line for each."""
    _start()
    _answer()
    _plan()
    _replan()
    return 0


def _start() -> None:
    from guide.book.questions import load_book
    from guide.interview.jobfile import Job, load, save

    with tempfile.TemporaryDirectory() as folder:
        answers = load(ROOT / "walkthroughs" / "first-wall" / "job.json", load_book()).answers
        job = Path(folder) / "job.json"
        save(job, load_book(), Job({path: each for path, each in answers.items() if path != "A.other"}))
        ours = [sys.executable, str(HERE / "first_question.py"), str(job)]
        bare = [sys.executable, str(HERE / "bare_app.py")]
        _pair("first question drawn / bare app with the same widgets (aim: 1.3 or less)", ours, bare)


def _answer() -> None:
    from tests.benchmarks.answering import SIZES, bare, ours

    echo = statistics.median(bare())
    thick = ("5/8", "1/2") * 4
    for walls, about, path, replies in (
        (1, "one of 1 finished walls", "A.shelf", SIZES),
        (16, "one of 16 finished walls", "C.shelf", SIZES),
        (16, "the basement round 16 finished walls", "basement.drywall", thick),
    ):
        asked, shown = ours(walls, path, replies)
        over = (statistics.median(asked) - echo) * 1000
        print(
            f"an answer about {about}: next question {_ms(asked)} ms, {over:.0f} over an app that only echoes (aim: 30 or "
            f"less); wall drawn {_ms(shown)} ms"
        )


def _plan() -> None:
    with tempfile.TemporaryDirectory() as folder:
        job = str(ROOT / "walkthroughs" / "four-walls" / "job.json")
        ours = [sys.executable, "-m", "guide.cli", "plan", job, "--out", folder]
        bare = [sys.executable, "-c", "import pydantic, jinja2, pint; pint.UnitRegistry()"]
        _pair("plan on the four-wall job / importing its libraries", ours, bare)


def _pair(what: str, ours: list[str], bare: list[str]) -> None:
    """Time two commands in turn, so that a machine that slows down slows both."""
    ratios, first, second = [], [], []
    for run in range(RUNS + 1):
        a, b = _process(ours), _process(bare)
        if run:  # the first of each warms the caches
            first.append(a)
            second.append(b)
            ratios.append(a / b)
    print(f"{what}: {statistics.median(ratios):.2f}  ({_ms(first)} / {_ms(second)} ms, medians of {RUNS})")


def _process(command: list[str]) -> float:
    start = time.perf_counter()
    subprocess.run(command, cwd=ROOT, check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - start


def _replan() -> None:
    from tests.benchmarks.walls import replan

    times = {walls: _median(lambda walls=walls: replan(walls)) for walls in (4, 16, 64)}  # type: ignore[misc]
    for walls, each in times.items():
        share = each / times[4] / (walls / 4)
        print(
            f"re-plan after one answer, {walls} walls: {each * 1000:.0f} ms, per wall {share:.2f} of the four-wall job (aim: 1 or less)"
        )


def _median(run: Callable[[], float]) -> float:
    run()
    return statistics.median(run() for _ in range(RUNS))


def _ms(times: list[float]) -> str:
    return f"{statistics.median(times) * 1000:.0f}"


if __name__ == "__main__":
    raise SystemExit(main())
