"""Small drawings that go with a question's “how”: where the tape is held, in text that any terminal and any page can show.

It owns one promise: every sketch is narrow and low enough to be read beside its question on the smallest screen
(`wallbrief book lint` proves it).
"""

from __future__ import annotations

from functools import lru_cache

from guide.reference.data import Data, read_data

WIDEST, TALLEST = 44, 9
"""Columns of the talk beside a wall on a screen of 100, and lines that leave a question in sight on one of 24."""


class Sketch(Data):
    """One drawing, and the questions (`scope.id`) that it goes with."""

    of: tuple[str, ...]
    lines: str

    @property
    def text(self) -> str:
        """The drawing, its lines parted by line ends, without one at the end."""
        return self.lines.rstrip("\n")


class _Sketches(Data):
    sketch: tuple[Sketch, ...]


@lru_cache(maxsize=1)
def load_sketches() -> tuple[Sketch, ...]:
    """Return every sketch. Raises DataError when the data is not right."""
    return read_data("sketches.toml", _Sketches).sketch


def sketch_of(ref: str) -> str:
    """Return the sketch of a question, given as `scope.id`; empty where it has none."""
    return next((sketch.text for sketch in load_sketches() if ref in sketch.of), "")
