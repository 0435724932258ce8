"""Reading a day: only what can mean one day is taken, for 3/2 is March to one person and February to another."""

from __future__ import annotations

import re
from datetime import date

_ISO = re.compile(r"(\d{4})-(\d{1,2})-(\d{1,2})")
_DAY_FIRST = re.compile(r"(\d{1,2})(?:st|nd|rd|th)?\.? (?:of )?([a-z]{3,9})\.?,? (\d{4})")
_MONTH_FIRST = re.compile(r"([a-z]{3,9})\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4})")
_WORDS = re.compile(
    r"(?:(?:starting|beginning|from|on) )?(?:on )?(?P<day>(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*\.?,? )?(?:the )?"
)
_MONTHS = "january february march april may june july august september october november december".split()

_WEEKDAYS = "monday tuesday wednesday thursday friday saturday sunday".split()

YEARS = range(2000, 2200)
"""Years that a basement could be begun in."""


def read_date(typed: str) -> str | None:
    """Return a day as `2027-03-02`: so written, or with its month in words; None when it is no day, or could be two.

    A day of the week before it has to be its own.
    """
    said = typed.strip().lower()
    words = _WORDS.match(said)
    assert words is not None
    plain = said[words.end() :].removesuffix(" on")
    if found := _ISO.fullmatch(plain):
        year, month, day = (int(part) for part in found.groups())
    elif found := _DAY_FIRST.fullmatch(plain):
        year, month, day = int(found[3]), _month(found[2]), int(found[1])
    elif found := _MONTH_FIRST.fullmatch(plain):
        year, month, day = int(found[3]), _month(found[1]), int(found[2])
    else:
        return None
    try:
        read = date(year, month, day)
    except ValueError:
        return None
    weekday = (words["day"] or "").strip(" .,")
    return read.isoformat() if year in YEARS and _WEEKDAYS[read.weekday()].startswith(weekday) else None


def _month(word: str) -> int:
    """Return the number of a month by its name or the beginning of it; 0 for any other word."""
    return next((number for number, name in enumerate(_MONTHS, 1) if name.startswith(word)), 0)
