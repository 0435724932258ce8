"""What no calendar could beat: the hours of the work, and the longest chain of work and waits.

Both leave out every rule that only makes a calendar longer (loud, glue, pins, what fits an evening), and the chain lets any
number of hands work side by side; so neither can come out later than the best calendar there is.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from guide.order.crew import Crew
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
    chain_day: int
    """The day on which the longest chain of work and waits ends."""

    @property
    def day(self) -> int:
        """The day before which no calendar ends."""
        return max(self.hours_day, self.chain_day)


def bound_of(steps: tuple[Step, ...], crew: Crew) -> Bound:
    """Return the bound of a job: every step done once, each by as many as can be there for it."""
    evenings, day = _by_hours(steps, crew)
    least = sum(crew.time_of(step, two=crew.people != "alone") for step in steps)
    return Bound(least, evenings, day, _by_chain(steps, crew))


def _by_hours(steps: tuple[Step, ...], crew: Crew) -> tuple[int, int]:
    """Return the fewest evenings that the work fits in, and the day of the last, with no rule but the hours."""
    alone_there, two_there, before = 0, 0, 0
    fastest = sum(crew.time_of(step, two=crew.people != "alone") for step in steps)
    for number, (day, two) in enumerate(crew.evenings()):
        if number * crew.minutes >= fastest and _fits(
            steps, crew, alone_there * crew.minutes, two_there * crew.minutes
        ):
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


def _by_chain(steps: tuple[Step, ...], crew: Crew) -> int:
    """Return the day on which the last step ends when each begins as soon as it may, whatever else is done then."""
    ends: dict[str, int] = {}
    waits = {step.id: crew.wait_of(step) for step in steps}
    for step in steps:
        earliest = max((ends[need] + waits[need] for need in step.needs), default=0)
        ends[step.id] = _worked(step, crew, earliest)
    return max(ends.values(), default=0) // (24 * 60)


def _worked(step: Step, crew: Crew, earliest: int) -> int:
    """Return the minute at which a step ends that is worked on in every evening from `earliest` on."""
    left = Fraction(1)
    for day, two in crew.evenings():
        begins = max(earliest, day * 24 * 60)
        room = day * 24 * 60 + crew.minutes - begins
        if room <= 0 or (crew.people == "helper" and "two" in step.tags and not two):
            continue
        time = crew.time_of(step, two=two)
        if left * time <= room:
            return int(begins + left * time)
        left -= Fraction(room, time)
    raise AssertionError("evenings never end")
