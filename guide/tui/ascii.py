"""Every character of the app as one that any terminal has: what is told by lines and blocks is told by ASCII then.

A character takes as many cells as before, so that nothing moves.
"""

from __future__ import annotations

from rich.cells import cell_len
from rich.segment import Segment
from textual.color import Color
from textual.filter import LineFilter

from guide.drawing.words import plain

_SIGNS = {
    "-": "▔▁─━═┈┄", "|": "▊▎▍▋▏▕▌▐│┃║┊", "+": "╭╮╰╯┌┐└┘├┤┬┴┼╋", "#": "█▉▀▄▓▒░▇▆▅▃▂▖▗▘▙▚▛▜▝▞▟", '"': "“”„", "'": "‘’", ".": "…·•",
    ">": "▶▸→", "<": "◀←", "v": "▼↓", "^": "▲↑",
}  # fmt: skip
_ASCII = str.maketrans({char: sign for sign, chars in _SIGNS.items() for char in chars})


class Ascii(LineFilter):
    """Goes over everything that is drawn."""

    def apply(self, segments: list[Segment], background: Color) -> list[Segment]:
        """Return the same line in ASCII."""
        return [Segment(_in_ascii(text), style, control) for text, style, control in segments]


def _in_ascii(text: str) -> str:
    if text.isascii():
        return text
    return "".join(plain(char, True).ljust(cell_len(char), "?")[: cell_len(char)] for char in text.translate(_ASCII))
