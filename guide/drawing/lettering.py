"""Words on a drawing in ink: how much room they take, and that no two of them stand on each other.

No typeface is sent along, so widths are those of a wide one: what fits here fits in any usual sans serif. All sizes are
hundredths of a drawing's unit, counted to the right and downward.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate
from typing import Literal
from xml.sax.saxutils import escape

TITLE, WORDS, SMALL = 1500, 1150, 1000
"""Sizes of letters: the title, the words and sizes of the drawing, what explains them."""
FACE = "Helvetica, Arial, 'Liberation Sans', 'DejaVu Sans', sans-serif"

Anchor = Literal["start", "middle", "end"]

_NARROW = frozenset(" .,:;|!'()[]/ijlftI-")
_WIDE = frozenset("mwMW@%&—…")


def printable(text: str) -> str:
    """Return text as one line in which every character can be drawn and may stand in XML."""
    return " ".join("".join(char if char.isprintable() else " " for char in unicodedata.normalize("NFC", text)).split())


def wide(text: str, size: int) -> int:
    """Return how wide a text is at most, in letters of a size."""
    return sum(_part(char) for char in text) * size // 100


def _part(char: str) -> int:
    """Return the width of a character in hundredths of the size of its letters."""
    if not char.isascii():
        return 105
    if char in _NARROW:
        return 42
    return 100 if char in _WIDE else 72 if char.isupper() else 64


def folded(text: str, size: int, room: int) -> list[str]:
    """Return a text in lines that fit into so much room, parted between words, a word too long for a line within it."""
    lines = [""]
    for word in text.split():
        joined = f"{lines[-1]} {word}".strip()
        if wide(joined, size) <= room:
            lines[-1] = joined
            continue
        lines.append("")
        for char in word:
            if wide(lines[-1] + char, size) > room:
                lines.append("")
            lines[-1] += char
    return [line for line in lines if line]


@dataclass(frozen=True, slots=True)
class Box:
    """The room that something takes up."""

    left: int
    top: int
    right: int
    bottom: int

    def meets(self, other: Box) -> bool:
        """Say whether two boxes share anything."""
        return (
            self.left < other.right and other.left < self.right and self.top < other.bottom and other.top < self.bottom
        )

    def within(self, other: Box) -> bool:
        """Say whether it lies wholly in another."""
        return (
            other.left <= self.left
            and self.right <= other.right
            and other.top <= self.top
            and self.bottom <= other.bottom
        )


@dataclass(frozen=True, slots=True)
class Word:
    """Words at a place: `y` is the middle of their height, or with `upright` of their length, which reads upward."""

    text: str
    x: int
    y: int
    size: int = WORDS
    anchor: Anchor = "middle"
    upright: bool = False
    heavy: bool = False

    @property
    def box(self) -> Box:
        """The room they take up."""
        long, tall = wide(self.text, self.size), self.size * 6 // 10
        before, after = {"start": (0, long), "middle": (long // 2, long - long // 2), "end": (long, 0)}[self.anchor]
        if self.upright:
            return Box(self.x - tall, self.y - after, self.x + tall, self.y + before)
        return Box(self.x - before, self.y - tall, self.x + after, self.y + tall)

    def drawn(self) -> str:
        """Return them as an SVG element."""
        x, y = self.x, self.y + self.size * 35 // 100
        turn = ""
        if self.upright:
            x, y = self.x + self.size * 35 // 100, self.y
            turn = f' transform="rotate(-90 {number(x)} {number(y)})"'
        bold = ' font-weight="bold"' if self.heavy else ""
        return (
            f'<text x="{number(x)}" y="{number(y)}" font-size="{number(self.size)}" text-anchor="{self.anchor}"'
            f"{bold}{turn}>{escape(self.text)}</text>"
        )


def number(hundredths: int) -> str:
    """Write hundredths of a unit as a number: `12.5`, `-0.05`, `7`."""
    sign, whole = ("-", -hundredths) if hundredths < 0 else ("", hundredths)
    return f"{sign}{whole // 100}.{whole % 100:02}".rstrip("0").rstrip(".")


def spread(wanted: Sequence[int], sizes: Sequence[int], low: int, high: int) -> list[int]:
    """Return where things must be centred along a line so that none meets the next, each as near its place as can be.

    `wanted` rises; the things stay in order between `low` and `high`. Where there is no room for all of them only the
    first are placed.
    """
    room = [long <= high - low for long in accumulate(sizes)]
    wanted, sizes = wanted[: sum(room)], sizes[: sum(room)]
    groups: list[tuple[int, int, int]] = []
    """Of things that touch: the sum of the starts they want of their group, how many they are, how long together."""
    for centre, size in zip(wanted, sizes, strict=True):
        starts, count, long = centre - size // 2, 1, size
        while groups:
            before, number_before, long_before = groups[-1]
            if _start(groups[-1], low, high) + long_before <= _start((starts, count, long), low, high):
                break
            groups.pop()
            starts, count, long = before + starts - count * long_before, number_before + count, long_before + long
        groups.append((starts, count, long))
    return list(_centres(groups, sizes, low, high))


def _start(group: tuple[int, int, int], low: int, high: int) -> int:
    starts, count, long = group
    return min(max(starts // count, low), high - long)


def _centres(groups: Sequence[tuple[int, int, int]], sizes: Sequence[int], low: int, high: int) -> Iterator[int]:
    rest = iter(sizes)
    for group in groups:
        at = _start(group, low, high)
        for _ in range(group[1]):
            size = next(rest)
            yield at + size // 2
            at += size
