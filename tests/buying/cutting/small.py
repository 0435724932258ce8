"""Small cutting jobs, and their cheapest purchase found a second way: by trying everything."""

from __future__ import annotations

from functools import cache

from hypothesis import strategies as st

from guide.buying.cutting.job import Board, CuttingJob, Wanted


def tried_out(job: CuttingJob) -> int | None:
    """Return the least price by trying, for the longest piece left, every board and everything beside it; None for no way.

    Independent of the package: recursion over what is left, no patterns, no worths, no linear program.
    """
    lengths = sorted({each.length for each in job.wanted if each.count}, reverse=True)
    start = tuple(sum(each.count for each in job.wanted if each.length == length) for length in lengths)
    limits = tuple(board.most if board.most is not None else sum(start) for board in job.boards)

    def beside(left: tuple[int, ...], room: int, index: int) -> list[tuple[int, ...]]:
        if index == len(left):
            return [left]
        found = []
        for take in range(left[index] + 1):
            used = take * (lengths[index] + job.kerf)
            if used > room:
                break
            rest = (*left[:index], left[index] - take, *left[index + 1 :])
            found += beside(rest, room - used, index + 1)
        return found

    @cache
    def least(left: tuple[int, ...], free: tuple[int, ...]) -> float:
        if not any(left):
            return 0
        first = next(n for n, count in enumerate(left) if count)
        best = float("inf")
        for kind, board in enumerate(job.boards):
            room = board.length - job.trim + job.kerf - lengths[first] - job.kerf
            if room < 0 or not free[kind]:
                continue
            now = (*free[:kind], free[kind] - 1, *free[kind + 1 :])
            taken = (*left[:first], left[first] - 1, *left[first + 1 :])
            best = min(best, board.price + min(least(rest, now) for rest in beside(taken, room, first)))
        return best

    found = least(start, limits)
    return None if found == float("inf") else int(found)


@st.composite
def small_jobs(draw: st.DrawFn, *, limited: bool = False) -> CuttingJob:
    """Draw a job of at most seven pieces of at most four lengths, from one to three kinds of board."""
    boards = tuple(
        Board(length, draw(st.integers(1, 40)), draw(st.integers(0, 3)) if limited and draw(st.booleans()) else None)
        for length in draw(st.lists(st.integers(8, 30), min_size=1, max_size=3, unique=True))
    )
    kerf, trim = draw(st.integers(0, 2)), draw(st.integers(0, 2))
    longest = max(board.length for board in boards) - trim
    sizes = draw(st.lists(st.integers(1, longest), min_size=1, max_size=4))
    counts = [draw(st.integers(1, 3)) for _ in sizes]
    while sum(counts) > 7:
        counts[counts.index(max(counts))] -= 1
    wanted = tuple(Wanted(size, count, f"p{n}") for n, (size, count) in enumerate(zip(sizes, counts, strict=True)))
    return CuttingJob(wanted, boards, kerf, trim)
