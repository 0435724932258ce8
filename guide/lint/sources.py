"""What stands in the package's own source: the texts in it, the texts it puts together, the names it looks at."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator, Mapping
from importlib.resources import files
from importlib.resources.abc import Traversable
from string import Formatter


def source_texts() -> dict[str, str]:
    """Return the text of every Python file of the package, by its path in it."""

    def walk(folder: Traversable, at: str) -> Iterator[tuple[str, str]]:
        for entry in sorted(folder.iterdir(), key=lambda each: each.name):
            if entry.is_dir():
                yield from walk(entry, f"{at}{entry.name}/")
            elif entry.name.endswith(".py"):
                yield f"{at}{entry.name}", entry.read_text(encoding="utf-8")

    return dict(walk(files("guide"), "guide/"))


def texts_in(tree: ast.AST) -> set[str]:
    """Return every whole text in the code; the pieces of a text that is put together are none."""
    pieces = {id(part) for node in ast.walk(tree) if isinstance(node, ast.JoinedStr) for part in node.values}
    return {
        node.value
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in pieces
    }


def built_texts(tree: ast.AST) -> set[str]:
    """Return a pattern for every text that is put together: f"part.cap_{case}" gives `part\\.cap_(.+)`."""
    return {
        "".join(
            re.escape(part.value) if isinstance(part, ast.Constant) and isinstance(part.value, str) else "(.+)"
            for part in node.values
        )
        for node in ast.walk(tree)
        if isinstance(node, ast.JoinedStr)
    }


def attributes_in(sources: Mapping[str, str]) -> set[str]:
    """Return every name that the code looks up on something."""
    return {
        node.attr
        for source in sources.values()
        for node in ast.walk(ast.parse(source))
        if isinstance(node, ast.Attribute)
    }


def placeholders(text: str) -> set[str]:
    """Return the names in braces in a text. Raises ValueError when the braces do not match."""
    return {name for _, name, _, _ in Formatter().parse(text) if name is not None}
