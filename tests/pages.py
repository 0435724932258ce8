"""Reading a paper as a person does: every row, line and paragraph under its heading, as plain text."""

from __future__ import annotations

import re
from collections.abc import Iterator

from markdown_it import MarkdownIt
from markdown_it.token import Token


def stands(words: tuple[str, ...], said: str) -> bool:
    """Say whether all these words are said, a figure as a whole: 18 3/4 is not in 118 3/4, nor 96 in 96 1/8."""
    return bool(words) and all(re.search(_whole(each), said, re.IGNORECASE) for each in words)


def _whole(words: str) -> str:
    before = r"(?<!\d )" if re.match(r"\d+/", words) else ""
    after = r"(?! \d+/)" if words[-1].isdigit() else ""
    return rf"(?<![\w/]){before}{re.escape(words)}(?![\w/]){after}"


def blocks(page: str) -> Iterator[tuple[str, str]]:
    """Yield every row, list item, paragraph and line of a drawing, with the heading it stands under, as plain text."""
    heading, row = "", ""
    tokens = MarkdownIt("commonmark").enable("table").parse(page)
    for before, token in zip([tokens[0], *tokens], tokens, strict=False):
        if token.type == "inline" and before.type == "heading_open":
            heading = re.sub(r"^\d+ ", "", _text(token))
        elif token.type == "inline" and before.type in ("td_open", "th_open"):
            row += f"{_text(token)} | "
        elif token.type == "inline":
            yield heading, _text(token)
        elif token.type == "tr_close":
            yield heading, row
            row = ""
        elif token.type == "fence":
            yield from ((heading, line) for line in token.content.splitlines())


def _text(token: Token) -> str:
    return "".join(" " if child.type == "softbreak" else child.content for child in token.children or [])
