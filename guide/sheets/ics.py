"""The evenings as an iCalendar file (RFC 5545), for a phone to read: one all-day event for each evening.

Lines end in CRLF and are folded at 75 octets, never inside a character. Nothing in it comes from a clock: DTSTAMP is the
first day, and a UID is made of the job and the evening's number, so that the same job gives the same file and a new one
takes the place of the old in the phone.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from uuid import NAMESPACE_URL, uuid5

from guide.reference.sayings import say, saying
from guide.sheets.plan import Plan
from guide.sheets.tonight import Tonight, tonight

OCTETS = 75
"""The longest line, its CRLF not counted; RFC 5545, section 3.1."""

WARNINGS = {"fumes": "evening.flames", "pins": "evening.pins", "sparks": "evening.sparks"}
"""What an evening says first, by the tag of its steps: keys of `prompts_data/sayings.toml`."""

_PRODUCT = "-//wallbrief//evenings//EN"


def calendar_file(plan: Plan) -> str:
    """Return the calendar file of a job, or an empty text when it has no first day or a STOP stands."""
    start = plan.calendar.crew.start
    if start is None or plan.stopped:
        return ""
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", f"PRODID:{_PRODUCT}", "CALSCALE:GREGORIAN"]
    for evening in plan.calendar.evenings:
        lines += _event(plan, tonight(plan, evening), start, start + timedelta(days=evening.day))
    return "".join(f"{folded}\r\n" for line in (*lines, "END:VCALENDAR") for folded in _folded(line))


def _event(plan: Plan, it: Tonight, start: date, day: date) -> Iterator[str]:
    yield "BEGIN:VEVENT"
    yield f"UID:{uuid5(NAMESPACE_URL, f'wallbrief:{plan.note}:{_job(plan)}:{it.number}')}"
    yield f"DTSTAMP:{_day(start)}T000000Z"
    yield f"DTSTART;VALUE=DATE:{_day(day)}"
    yield f"DTEND;VALUE=DATE:{_day(day + timedelta(days=1))}"
    yield f"SUMMARY:{_text(say(saying('evening.title', number=it.number, first=it.dos[0].title)))}"
    yield f"DESCRIPTION:{_text(chr(10).join(_said(it)))}"
    yield "TRANSP:OPAQUE"
    yield "END:VEVENT"


def _said(it: Tonight) -> Iterator[str]:
    for tag, warning in WARNINGS.items():
        if tag in it.tags:
            yield say(saying(warning))
    if it.two:
        yield say(saying("evening.two"))
    for do in it.dos:
        yield f"{do.begins} {do.title}, {do.takes} ({do.where})"


def _job(plan: Plan) -> str:
    """Return what tells one job from another: its walls as they are named."""
    return "/".join(wall.wall.title for wall in plan.layout.walls)


def _day(day: date) -> str:
    return day.strftime("%Y%m%d")


def _text(value: str) -> str:
    """Return a text with what has a meaning in iCalendar escaped; RFC 5545, section 3.3.11."""
    escaped = value.replace("\\", "\\\\").replace(";", "\\;").replace(",", "\\,")
    return escaped.replace("\n", "\\n")


def _folded(line: str) -> Iterator[str]:
    """Yield a line in pieces of 75 octets at most; each but the first begins with the space that marks it."""
    piece, size = "", 0
    for char in line:
        octets = len(char.encode())
        if size + octets > OCTETS:
            yield piece
            piece, size = " ", 1
        piece, size = piece + char, size + octets
    yield piece
