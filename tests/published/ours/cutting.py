"""What the cutting room comes to on published cutting jobs. The values file hands numbers over as floats; all are whole."""

from __future__ import annotations

from collections.abc import Callable

from guide.buying.cutting.cheapest import cheapest
from guide.buying.cutting.job import Board, CuttingJob, Wanted


def _wanted(pieces: list[list[float]]) -> tuple[Wanted, ...]:
    return tuple(Wanted(int(length), int(count)) for length, count in pieces)


def _boards(lengths: list[float]) -> tuple[Board, ...]:
    return tuple(Board(int(length), int(length)) for length in lengths)


def fewest_boards(board: float, pieces: list[list[float]]) -> float | str:
    """Return the fewest boards of one length, or a word when no proof was found."""
    cutting = cheapest(CuttingJob(_wanted(pieces), (Board(int(board), 1),)))
    return cutting.price if cutting.proven else "not proven"


def length_to_buy(boards: list[float], pieces: list[list[float]]) -> float | str:
    """Return the length that the shortest lumber in all is bought in, or a word when it is mixed or not proven."""
    cutting = cheapest(CuttingJob(_wanted(pieces), _boards(boards)))
    bought = {boards[each.board] for each in cutting.filled}
    return bought.pop() if cutting.proven and len(bought) == 1 else "not proven"


def waste(boards: list[float], pieces: list[list[float]]) -> float:
    """Return what is left of the shortest lumber in all once the pieces are cut, saw cuts not counted."""
    cutting = cheapest(CuttingJob(_wanted(pieces), _boards(boards)))
    return cutting.price - sum(length * count for length, count in pieces)


OURS: dict[str, Callable[..., float | str]] = {
    "fewest_boards": fewest_boards,
    "length_to_buy": length_to_buy,
    "waste": waste,
}
