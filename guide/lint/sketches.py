"""The proof of the sketches: each belongs to a question that has no other, and is small enough to stand beside it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from guide.book.questions import Book
from guide.reference.sketches import TALLEST, WIDEST, Sketch


def lint_sketches(sketches: Sequence[Sketch], book: Book) -> Iterator[str]:
    """Yield the sketches of no question or of one that has another, and those that are too large or not plain ASCII."""
    refs = [ref for sketch in sketches for ref in sketch.of]
    for ref in sorted(set(refs)):
        if ref not in book.by_ref:
            yield f"sketches.toml: {ref} is no question."
        if refs.count(ref) > 1:
            yield f"sketches.toml: {ref} has {refs.count(ref)} sketches."
    for number, sketch in enumerate(sketches, 1):
        name = f"sketches.toml: sketch {number} ({', '.join(sketch.of) or 'of no question'})"
        lines = sketch.text.splitlines()
        if not sketch.of:
            yield f"{name} goes with nothing that is asked."
        if len(lines) > TALLEST or max(map(len, lines), default=0) > WIDEST:
            yield f"{name} is larger than {WIDEST} columns by {TALLEST} lines."
        if not sketch.text.isascii() or not sketch.text.replace("\n", " ").isprintable() or not sketch.text.strip():
            yield f"{name} is empty, or has more in it than plain ASCII."
