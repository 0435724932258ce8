"""What is to be cut, from what, and what came out: plain values in whole units, shared by the finder and the checker.

A unit of length may be anything, as long as it is the same throughout a job; prices are whole cents, or whatever else
is to be kept small. A saw cut is lost after every piece; the last one may run off the end of the board.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Wanted:
    """So many pieces of one length. `mark` tells the piece from others of its length; it weighs nothing."""

    length: int
    count: int = 1
    mark: str = ""


@dataclass(frozen=True, slots=True)
class Board:
    """One length of stock. `most` is how many there are; None is as many as are wanted."""

    length: int
    price: int
    most: int | None = None


@dataclass(frozen=True, slots=True)
class CuttingJob:
    """A list of pieces and the boards on offer. Raises ValueError in one sentence for what cannot be meant."""

    wanted: tuple[Wanted, ...]
    boards: tuple[Board, ...]
    kerf: int = 0
    """Lost after each piece."""
    trim: int = 0
    """Lost once at the end of each board."""

    def __post_init__(self) -> None:
        if self.kerf < 0 or self.trim < 0:
            raise ValueError(f"a saw cut of {self.kerf} and a trim of {self.trim} were given; neither can be below 0.")
        for each in self.wanted:
            if each.length < 1 or each.count < 0:
                raise ValueError(f"{each.count} pieces {each.length} long were asked for; a length starts at 1.")
        for board in self.boards:
            if board.price < 0 or (board.price == 0 and board.most is None):
                raise ValueError(f"a board {board.length} long costs {board.price}; a price starts at 1.")
            if board.length < 1 or (board.most or 0) < 0:
                raise ValueError(f"a board is {board.length} long and there are {board.most}; both start above 0.")
        longest = max((board.length for board in self.boards), default=0) - self.trim
        for each in self.wanted:
            if each.count and each.length > longest:
                raise ValueError(f"a piece is {each.length} long and no board gives more than {longest}.")


@dataclass(frozen=True, slots=True)
class Filled:
    """One board and the pieces cut from it, the longest first."""

    board: int
    """Its place in the job's list of boards."""
    pieces: tuple[tuple[int, str], ...]
    """Length and mark of each."""
    rest: int
    """What is left after the last saw cut, never below 0."""


@dataclass(frozen=True, slots=True)
class Split:
    """The purchases with `at` boards of one length at most, and after them those with more."""

    board: int
    at: int


@dataclass(frozen=True, slots=True)
class Leaf:
    """Whole-number weights under which the price and the needs together rule a box of purchases out."""

    price: int
    """Weight of the price; 0 where the box cannot hold the pieces at any price."""
    needs: tuple[tuple[int, int], ...]
    """Number of a row of worths, and its weight."""


@dataclass(frozen=True, slots=True)
class Proof:
    """Why no purchase costs less than `bound`: worths of the pieces, and a case split on how many boards are bought.

    In each row of `worths` stands one whole number for each different length of the job, the longest first.
    The cases are a tree in reading order: a Split is followed by the tree of its first half, then of its second.
    """

    bound: int
    worths: tuple[tuple[int, ...], ...]
    cases: tuple[Split | Leaf, ...]


@dataclass(frozen=True, slots=True)
class Cutting:
    """A purchase with its cutting plan."""

    filled: tuple[Filled, ...]
    price: int
    bound: int
    """No purchase costs less: checked in whole numbers."""
    proof: Proof
    ways: int
    """Different ways in which boards are cut: kinds of board with the lengths cut from them."""
    ways_least: int
    """No plan on the very same boards takes fewer."""

    @property
    def proven(self) -> bool:
        """No cheaper purchase holds these pieces."""
        return self.bound == self.price
