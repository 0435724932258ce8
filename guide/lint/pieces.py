"""The proof of what stands behind pieces: every kind is there, and what it names is a decision's, a figure's or a question's."""

from __future__ import annotations

from collections.abc import Mapping, Set

from guide.book.questions import Book
from guide.layout.parts import Kind
from guide.reference.codes import CodeProfile
from guide.reference.pieces import Pieces


def lint_pieces(pieces: Pieces, figures: Set[str], book: Book, sources: Mapping[str, str]) -> list[str]:
    """Return the kinds of piece that are missing or unknown, and the figures, decisions and questions that are not there."""
    kinds = {kind.value for kind in Kind}
    found = [f"pieces.toml: {kind} is a piece that it says nothing of." for kind in sorted(kinds - set(pieces.kind))]
    found += [f"pieces.toml: {kind} is no kind of piece." for kind in sorted(set(pieces.kind) - kinds)]
    for kind, piece in pieces.kind.items():
        found += [
            f"pieces.toml: {kind} names the figure {name}, which is not there."
            for name in piece.figures
            if name not in figures
        ]
        found += [
            f"pieces.toml: {kind} names {name}, which no code has."
            for name in piece.code
            if name not in CodeProfile.model_fields
        ]
        found += [
            f"pieces.toml: {kind} names the decision {name}, which nothing makes."
            for name in piece.decided
            if not _made(name, sources)
        ]
    for subject, refs in pieces.overruled.items():
        found += [
            f"pieces.toml: {subject} is overruled by {ref}, which is no question."
            for ref in refs
            if ref not in book.by_ref
        ]
        if not any(subject in piece.decided for piece in pieces.kind.values()):
            found.append(f"pieces.toml: {subject} is overruled, but no kind of piece names it.")
    words = [word for piece in pieces.kind.values() for word in piece.words]
    return found + [
        f"pieces.toml: {word} is two kinds of piece." for word in sorted({w for w in words if words.count(w) > 1})
    ]


def _made(subject: str, sources: Mapping[str, str]) -> bool:
    """Say whether the layout makes a decision whose id ends so; its last word may be filled in there."""
    ends = (f".{subject}", f".{subject.rpartition('_')[0]}_{{", f".{subject}{{")
    return any(end in text for path, text in sources.items() if "layout" in path for end in ends)
