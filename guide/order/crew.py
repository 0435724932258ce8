"""Who works, when and how long: the answers about the evenings, or the usual ones while nobody has said otherwise."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction
from typing import Literal, cast

from guide.order.plan import Step
from guide.reference.steps import load_steps
from guide.survey.model import Basement

People = Literal["alone", "helper", "two"]

DAY = 24 * 60
"""Minutes."""

WEEK = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
"""Days of the week as answers name them, Monday first."""


@dataclass(frozen=True, slots=True)
class Crew:
    """Who works, and when. Days are counted from 0, the day of the first evening at the earliest."""

    people: People
    """`helper`: one, and two on the helper's days."""
    weekdays: tuple[int, ...]
    """The days of the week with an evening, 0 for Monday."""
    helper_days: tuple[int, ...]
    """Those on which two work."""
    minutes: int
    """Length of an evening."""
    loud: int
    """For how long, from its start, an evening may be loud."""
    inspection_days: int
    """Days from the call to the visit."""
    start: date | None
    """The first day on which anything is done; without it the evenings are only numbered."""
    pace: Fraction = Fraction(1)
    """The person's own hours on a wall, over those of the trade."""

    def evenings(self) -> Iterator[tuple[int, bool]]:
        """Yield the day of every evening, without end, and whether two work then."""
        first = self.start.weekday() if self.start else self.weekdays[0]
        day = 0
        while True:
            weekday = (first + day) % len(WEEK)
            if weekday in self.weekdays:
                yield day, weekday in self.helper_days
            day += 1

    def time_of(self, step: Step, *, two: bool) -> int:
        """Return the minutes a step takes, at this person's own pace where it is known."""
        minutes = step.two if two else step.alone
        return -(-minutes * self.pace // 1) if step.phase == "walls" else minutes

    def wait_of(self, step: Step) -> int:
        """Return the minutes that have to pass after a step. What nobody knows the length of counts as none."""
        hours = (24 * self.inspection_days if wait.what == "inspection" else wait.hours or 0 for wait in step.wait)
        return 60 * max(hours, default=0)


def crew_of(basement: Basement, steps: Iterable[Step]) -> Crew:
    """Return who works and when, from the answers; `steps` are those of the job, to find the person's own pace."""
    usual = load_steps().usual_evenings
    people = cast(People, basement.crew or usual.crew)
    weekdays = _days(basement.days or usual.days)
    helps = {"alone": (), "two": weekdays, "helper": _days(basement.helper_day or usual.days)}[people]
    crew = Crew(
        people=people,
        weekdays=tuple(sorted({*weekdays, *helps})),
        helper_days=helps,
        minutes=60 * (basement.evening_hours or usual.hours),
        loud=60 * (basement.loud_hours or usual.loud_hours),
        inspection_days=basement.inspection_days or usual.inspection_days,
        start=date.fromisoformat(basement.start) if basement.start else None,
    )
    return crew if not basement.first_wall_hours else _at_own_pace(crew, 60 * basement.first_wall_hours, tuple(steps))


def _at_own_pace(crew: Crew, took: int, steps: tuple[Step, ...]) -> Crew:
    """Return the crew with its own pace: what the first wall took, over what the trade counts for it."""
    built = [step for step in steps if step.phase == "walls" and step.wall]
    first = sum(crew.time_of(step, two=crew.people == "two") for step in built if step.wall == built[0].wall)
    return replace(crew, pace=Fraction(took, first)) if first else crew


def _days(said: str) -> tuple[int, ...]:
    return tuple(WEEK.index(day) for day in said.split())
