"""Markdown that reads well raw and rendered: escaped text, padded tables, folded paragraphs."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterable, Sequence

COLUMNS = 78
"""No line of a paper is wider than this, tables apart."""

_SPECIAL = re.compile(r"([\\`*_{}\[\]<>#|~&!])")
_LIST_START = re.compile(r"^(\s*)((?:[-+*]|\d{1,9}[.)])\s+(?:\[ \]\s+)?)?")
_LOOKS_LIKE_A_BLOCK = re.compile(r"^(\s*)(\d{1,9})([.)])(\s|$)|^(\s*)([-+*#>=]+)(\s|$)")


def text(value: object) -> str:
    """Return text that a person typed, or that comes from data, so that no character of it is taken for Markdown."""
    return _SPECIAL.sub(r"\\\1", " ".join(str(value).split()))


def cell(value: object) -> str:
    """Return text for a table: like `text`, with nothing that could end a cell."""
    return text(value) or " "


def table(headers: Sequence[str], rows: Iterable[Sequence[object]]) -> str:
    """Return a table whose columns line up when it is read raw. A column with nothing in any row is left out.

    A column headed `Done` stays empty, to be ticked. Raises ValueError when a row is not as long as the headings.
    """
    cells = [[cell(value) for value, _ in zip(row, headers, strict=True)] for row in rows]
    used = [n for n, name in enumerate(headers) if name == "Done" or any(row[n].strip() for row in cells)]
    head = [cell(headers[n]) for n in used]
    body = [[row[n] for n in used] for row in cells]
    wide = [max(len(row[column]) for row in [head, *body]) for column in range(len(head))]
    lines = [head, ["-" * width for width in wide], *body]
    return "\n".join("| " + " | ".join(v.ljust(w) for v, w in zip(line, wide, strict=True)) + " |" for line in lines)


def fold(markdown: str) -> str:
    """Fold paragraphs and list items to the page width; tables, headings and code blocks stay as they are.

    A word that would begin a line and look like a list or a heading there is escaped.
    """
    lines: list[str] = []
    in_code = False
    for line in markdown.splitlines():
        if line.lstrip().startswith("```"):
            in_code = not in_code
        if not in_code and not line.strip():
            lines += [""] if lines and lines[-1] else []  # one blank line parts blocks; those of a drawing are its own
        elif in_code or len(line) <= COLUMNS or line.lstrip().startswith(("|", "#", "```")):
            lines.append(line.rstrip())
        else:
            lines += _folded(line.rstrip())
    return "\n".join(lines).strip() + "\n"


def _folded(line: str) -> list[str]:
    start = _LIST_START.match(line)
    assert start is not None
    quote = "> " if line.startswith("> ") else ""
    indent = quote or " " * len(start.group(0))
    body = line.removeprefix(quote) if quote else line[len(start.group(0)) :]
    first = quote or start.group(0)
    folded = textwrap.wrap(
        body, COLUMNS - len(indent), break_long_words=False, break_on_hyphens=False, drop_whitespace=True
    )
    rest = [indent + _LOOKS_LIKE_A_BLOCK.sub(_escaped, each) for each in folded[1:]]
    return [first + (folded[0] if folded else ""), *rest]


def _escaped(found: re.Match[str]) -> str:
    if found[2]:
        return f"{found[1]}{found[2]}\\{found[3]}{found[4]}"
    return f"{found[5]}\\{found[6]}{found[7]}"
