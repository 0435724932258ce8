"""Reading a day: only what can mean one day is taken, for 3/2 is March to one person and February to another."""

from __future__ import annotations

import re
from datetime import date

_ISO = re.compile(r"(\d{4})-(\d{1,2})-(\d{1,2})")
_DAY_FIRST = re.compile(r"(\d{1,2})(?:st|nd|rd|th)?\.? (?:of )?([a-z]{3,9})\.?,? (\d{4})")
_MONTH_FIRST = re.compile(r"([a-z]{3,9})\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4})")
_MONTHS = "january february march april may june july august september october november december".split()

YEARS = range(2000, 2200)
"""Years that a basement could be begun in."""


def read_date(typed: str) -> str | None:
    """Return a day as `2027-03-02`: so written, or with its month in words; None when it is no day, or could be two."""
    plain = typed.strip().lower()
    if found := _ISO.fullmatch(plain):
        year, month, day = (int(part) for part in found.groups())
    elif found := _DAY_FIRST.fullmatch(plain):
        year, month, day = int(found[3]), _month(found[2]), int(found[1])
    elif found := _MONTH_FIRST.fullmatch(plain):
        year, month, day = int(found[3]), _month(found[1]), int(found[2])
    else:
        return None
    try:
        return date(year, month, day).isoformat() if year in YEARS else None
    except ValueError:
        return None


def _month(word: str) -> int:
    """Return the number of a month by its name or the beginning of it; 0 for any other word."""
    return next((number for number, name in enumerate(_MONTHS, 1) if name.startswith(word)), 0)
