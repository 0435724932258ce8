"""Sizes that stand in our own sentences, retold for the tape in the reader's hand.

The data is written in inches and feet. On a metric tape `every 4 ft` would have to be worked out in the head, in the
basement; here it is worked out once. What a person typed, a choice to be picked by its name and the names of goods never
come through here: a shop that sells an 8 ft stick calls it that in both countries.
"""

from __future__ import annotations

import re
from fractions import Fraction
from functools import lru_cache

from guide.lengths.size import TICKS_PER_INCH, TICKS_PER_MM, Tape

MM_PER_INCH = Fraction(TICKS_PER_INCH, TICKS_PER_MM)

_NUMBER = r"(?:\d+ \d+/\d+|\d+/\d+|\d+\.\d+|\d+)"
_SIZE = re.compile(
    rf"(?<![\w/.,x-])(?P<stick>\d+x\d+ )?(?P<first>{_NUMBER})(?: (?P<joint>by|to|or) (?P<second>{_NUMBER}))? "
    rf"(?P<unit>in|ft)(?: (?P<inches>{_NUMBER}) in)?(?![\w/-])(?! (?:(?:a|each|every|it|one|the|this|sticks?|studs?)\b|\d))"
)
"""A number with a unit that stands alone; `2 in the` is a count and a preposition, and `2x4 8 ft`, `4 by 8 ft` and
`an 8 ft stick` are what a shop sells."""
_AREA = re.compile(rf"(?<![\w/.,x-])({_NUMBER}) sq ft\b")
_SPELLED = {"half an inch": "1/2 in", "a quarter inch": "1/4 in"}
_LONG = 20
"""Feet from which a run is told in metres: nobody measures those off with a tape."""


@lru_cache(maxsize=4096)
def retold(text: str, tape: Tape) -> str:
    """Return a sentence of our own with its inches and feet in whole millimetres; as it stands on an inch tape.

    Runs of 20 ft and more are told in metres, areas in square metres, each rounded to the nearest.
    """
    if tape == "inches":
        return text
    for said, size in _SPELLED.items():
        text = text.replace(said, size)
    return _AREA.sub(_area, _SIZE.sub(_size, text))


def _size(found: re.Match[str]) -> str:
    if found["stick"] or (found["joint"] == "by" and found["unit"] == "ft"):
        return found[0]
    inches = 12 if found["unit"] == "ft" else 1
    numbers = [_read(number) * inches for number in (found["first"], found["second"]) if number]
    if found["inches"]:
        numbers[-1] += _read(found["inches"])
    if inches == 12 and numbers[-1] >= _LONG * 12:
        shown, unit = [f"{float(number * MM_PER_INCH / 1000):.1f}" for number in numbers], "m"
    else:
        shown, unit = [str(round(number * MM_PER_INCH)) for number in numbers], "mm"
    return " ".join([shown[0], *([found["joint"], shown[1]] if found["second"] else []), unit])


def _area(found: re.Match[str]) -> str:
    return f"{float(_read(found[1]) * 144 * MM_PER_INCH**2 / 1_000_000):.2f} m²"


def _read(number: str) -> Fraction:
    return sum((Fraction(part) for part in number.split()), Fraction(0))
