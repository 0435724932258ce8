"""What no calendar could beat: the hours of the work, the longest chain of work and waits, and the two together.

All leave out rules that only make a calendar longer (glue, pins, what fits an evening), and the chain lets any number of
hands work side by side; so none can come out later than the best calendar there is. Together: what no chain lets begin
before a day has to fit the evenings from that day on, and its loud part only the hours of them that may be loud.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from guide.order.crew import DAY, Crew
from guide.order.plan import Step


@dataclass(frozen=True, slots=True)
class Bound:
    """The earliest end of a job that any calendar of this crew could have."""

    minutes: int
    """All the work, done by as many as there are."""
    evenings: int
    """How many evenings the hours alone fill."""
    hours_day: int
    """The day of the last of them; days are counted from 0."""
    late_day: int
    """The day of the last evening that is filled by what cannot begin before some day, or by what is loud of it."""
    chain_day: int
    """The day on which the longest chain of work and waits ends."""

    @property
    def day(self) -> int:
        """The day before which no calendar ends."""
        return max(self.hours_day, self.late_day, self.chain_day)


def bound_of(steps: tuple[Step, ...], crew: Crew) -> Bound:
    """Return the bound of a job: every step done once, each by as many as can be there for it."""
    starts, chain = _by_chain(steps, crew)
    evenings, day = _by_hours(steps, crew, crew.minutes)
    least = sum(crew.time_of(step, two=crew.people != "alone") for step in steps)
    return Bound(least, evenings, day, _late(steps, crew, starts), chain)


def _late(steps: tuple[Step, ...], crew: Crew, starts: Mapping[str, int]) -> int:
    """Return the day of the last evening, over every day before which some of the work cannot begin."""
    last = 0
    for first in sorted(set(starts.values())):
        later = tuple(step for step in steps if starts[step.id] >= first)
        loud = tuple(step for step in later if "loud" in step.tags)
        for work, minutes in ((later, crew.minutes), (loud, min(crew.loud, crew.minutes))):
            last = max(last, _by_hours(work, crew, minutes, first)[1])
    return last


def _by_hours(steps: tuple[Step, ...], crew: Crew, minutes: int, first: int = 0) -> tuple[int, int]:
    """Return the fewest evenings of so many minutes, from day `first` on, that the work fits in, and the day of the last.

    There is no other rule; without work it is no evening, and day 0.
    """
    alone_there, two_there, before = 0, 0, 0
    fastest = sum(crew.time_of(step, two=crew.people != "alone") for step in steps)
    from_then = ((day, two) for day, two in crew.evenings() if day >= first)
    for number, (day, two) in enumerate(from_then):
        if number * minutes >= fastest and _fits(steps, crew, alone_there * minutes, two_there * minutes):
            return number, before
        before = day
        if two:
            two_there += 1
        else:
            alone_there += 1
    raise AssertionError("evenings never end")


def _fits(steps: tuple[Step, ...], crew: Crew, alone: int, two: int) -> bool:
    """Say whether the work fits: as two on so many minutes whatever gains most by it, the rest alone."""
    gains = sorted(steps, key=lambda s: Fraction(crew.time_of(s, two=False), crew.time_of(s, two=True)), reverse=True)
    must = [step for step in gains if "two" in step.tags and crew.people == "helper"]
    room = Fraction(two - sum(crew.time_of(step, two=True) for step in must))
    if room < 0:
        return False
    left = Fraction(0)
    for step in gains:
        if step in must:
            continue
        as_two, by_one = crew.time_of(step, two=True), crew.time_of(step, two=False)
        share = min(Fraction(1), room / as_two)
        room -= share * as_two
        left += (1 - share) * by_one
    return left <= alone


def _by_chain(steps: tuple[Step, ...], crew: Crew) -> tuple[dict[str, int], int]:
    """Return the day on which each step begins, and on which the last ends, when each begins as soon as it may."""
    ends: dict[str, int] = {}
    starts: dict[str, int] = {}
    waits = {step.id: crew.wait_of(step) for step in steps}
    for step in steps:
        earliest = max((ends[need] + waits[need] for need in step.needs), default=0)
        starts[step.id] = earliest // DAY
        ends[step.id] = _worked(step, crew, earliest)
    return starts, max(ends.values(), default=0) // DAY


def _worked(step: Step, crew: Crew, earliest: int) -> int:
    """Return the minute at which a step ends that is worked on in every evening from `earliest` on."""
    left = Fraction(1)
    for day, two in crew.evenings():
        begins = max(earliest, day * DAY)
        room = day * DAY + crew.minutes - begins
        if room <= 0 or (crew.people == "helper" and "two" in step.tags and not two):
            continue
        time = crew.time_of(step, two=two)
        if left * time <= room:
            return int(begins + left * time)
        left -= Fraction(room, time)
    raise AssertionError("evenings never end")
