"""The calendar file: an independent reader of RFC 5545 finds every evening on its day, whatever a person typed."""

from __future__ import annotations

from datetime import date
from typing import Any

from icalendar import Calendar

from guide.book.questions import load_book
from guide.interview.jobfile import from_json
from guide.interview.written import Json
from guide.sheets.ics import calendar_file
from guide.sheets.plan import Plan, make_plan
from tests.jobs import Tree, job, wall

NASTY = "a; b, c\\n: “ä€𝄞” BEGIN:VEVENT"


def _plan(note: str = "Invented.", walls: list[Tree] | None = None, **basement: Json) -> Plan:
    own: dict[str, Json] = {"evenings": "own", "start": "2027-03-02", **basement}
    return make_plan(load_book(), from_json({**job(walls or [wall()], **own), "note": note}, load_book()))


def _events(text: str) -> list[Any]:
    """Return the events that the independent reader finds."""
    return list(Calendar.from_ical(text).walk("VEVENT"))


def test_every_evening_is_an_all_day_event_on_its_day() -> None:
    """2 March 2027 is a Tuesday; Tuesdays and Thursdays follow (calendar, worked by hand)."""
    plan = _plan()
    events = _events(calendar_file(plan))

    assert len(events) == len(plan.calendar.evenings)
    days = [event["DTSTART"].dt for event in events]
    assert days[:2] == [date(2027, 3, 2), date(2027, 3, 4)]
    assert {day.weekday() for day in days} == {1, 3}
    assert all((event["DTEND"].dt - event["DTSTART"].dt).days == 1 for event in events)
    glued = next(str(e["DESCRIPTION"]) for e in events if "Glue up the foam" in str(e["DESCRIPTION"]))
    assert glued.startswith("Flames out tonight")


def test_lines_end_in_crlf_and_no_line_is_longer_than_75_octets() -> None:
    """RFC 5545, section 3.1; folding never splits a character."""
    text = calendar_file(_plan(walls=[wall(name="küche " * 5)]))
    lines = text.encode().split(b"\r\n")

    assert lines[-1] == b""
    assert b"\n" not in b"".join(lines)
    assert max(map(len, lines)) <= 75
    assert any(line.startswith(b" ") for line in lines)
    assert all(line.decode() is not None for line in lines)


def test_the_same_job_gives_the_same_file_and_each_evening_its_own_name() -> None:
    """No clock: DTSTAMP is the first day. Another job has other names, so that both can stand in one phone."""
    one, again, other = (calendar_file(_plan(note)) for note in ("Invented.", "Invented.", "Another, invented."))
    names = [[str(e["UID"]) for e in _events(text)] for text in (one, other)]

    assert one == again
    assert len(set(names[0])) == len(names[0])
    assert not set(names[0]) & set(names[1])
    assert {e["DTSTAMP"].dt.date() for e in _events(one)} == {date(2027, 3, 2)}


def test_nothing_a_person_typed_breaks_the_file() -> None:
    """Semicolons, commas, backslashes and line breaks of a name or a note come out as text."""
    plain, nasty = _plan(), _plan(NASTY, [wall(name=NASTY[:30], other=NASTY)])
    events = _events(calendar_file(nasty))

    assert len(events) == len(plain.calendar.evenings)
    assert [str(e["DESCRIPTION"]).count("\n") for e in events] == [
        str(e["DESCRIPTION"]).count("\n") for e in _events(calendar_file(plain))
    ]


def test_without_a_first_day_or_with_a_stop_there_is_no_file() -> None:
    assert calendar_file(make_plan(load_book(), from_json(job([wall()]), load_book()))) == ""
    assert calendar_file(_plan(water="wet")) == ""
