"""What stands behind each kind of piece: its names, the decisions and the figures it goes by, and who may decide instead.

The layout says of one piece what it is; `prompts_data/pieces.toml` says what holds for its kind.
"""

from __future__ import annotations

from functools import lru_cache

from guide.reference.data import Data, read_data


class KindOfPiece(Data):
    """What stands behind one kind of piece."""

    words: tuple[str, ...]
    """What a person calls it."""
    decided: tuple[str, ...] = ()
    """The last part of the ids of the decisions that made it so."""
    figures: tuple[str, ...] = ()
    """Figures of practice, by their names in `figures.toml`."""
    code: tuple[str, ...] = ()
    """Figures of the code, by their names in its profile."""


class Pieces(Data):
    """`prompts_data/pieces.toml`."""

    kind: dict[str, KindOfPiece]
    overruled: dict[str, tuple[str, ...]]
    """The questions (`scope.id`), of which one at most applies, by which a person decides instead, by the last part of the decision's id."""


@lru_cache(maxsize=1)
def load_pieces() -> Pieces:
    """Return what stands behind each kind. Raises DataError when the data is not right."""
    return read_data("pieces.toml", Pieces)
