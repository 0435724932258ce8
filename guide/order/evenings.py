"""The evenings: what is done on which, so that waits pass between them and nothing shares an evening that must not.

    glue is the last thing of an evening            waits run on while nobody works
    can foam and glue never meet pins or sparks      loud work comes first, and ends when it has to be quiet
    what two lift better waits for the helper's day   a long step is split, a short one is not

The work is laid out evening by evening, by two rules of what comes first; the calendar that ends earlier is taken. It is
no proof that nothing shorter exists, so the bound that no calendar could beat is worked out beside it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from math import ceil

from guide.order.bound import Bound, bound_of
from guide.order.crew import DAY, Crew
from guide.order.plan import Step

WHOLE, PIECE = 60, 30
"""A step that takes no longer than the first is not split, and no piece of a longer one is shorter than the second;
minutes. Common practice."""

APART = frozenset({"fumes"}), frozenset({"pins", "sparks"})
"""Tags that never share an evening: what burns in the air, and what could set it on fire."""


@dataclass(frozen=True, slots=True)
class Task:
    """A step, or a piece of a long one, on its evening."""

    step: Step
    begins: int
    """Minutes from the start of the evening."""
    minutes: int
    more: bool
    """The step goes on another evening."""
    begun: bool
    """A piece of it was done on an evening before."""


@dataclass(frozen=True, slots=True)
class Evening:
    """One evening of work."""

    number: int
    day: int
    """Days since the first."""
    two: bool
    """Two work."""
    tasks: tuple[Task, ...]

    @property
    def minutes(self) -> int:
        """How long the work of the evening takes."""
        return sum(task.minutes for task in self.tasks)

    @property
    def tags(self) -> frozenset[str]:
        """Everything that holds of one of its steps."""
        return frozenset(tag for task in self.tasks for tag in task.step.tags)


@dataclass(frozen=True, slots=True)
class Calendar:
    """Every evening of a job, and what no calendar of this crew could beat."""

    crew: Crew
    evenings: tuple[Evening, ...]
    bound: Bound

    @property
    def last_day(self) -> int:
        """The day of the last evening; 0 when there is none."""
        return self.evenings[-1].day if self.evenings else 0

    @property
    def open_waits(self) -> tuple[Step, ...]:
        """The steps after which something has to pass that nobody knows the length of: it is not in the days."""
        steps = (task.step for evening in self.evenings for task in evening.tasks if not task.more)
        return tuple(s for s in steps if any(w.hours is None and w.what != "inspection" for w in s.wait))


def calendar_of(steps: tuple[Step, ...], crew: Crew) -> Calendar:
    """Return the calendar of a job. Pure. Every step is done once; the one that ends earlier of two ways is taken."""
    tails = _tails(steps, crew)
    ranks: tuple[Callable[[Step], int], ...] = (lambda step: step.number, lambda step: -tails[step.id])
    found = [_evenings(steps, crew, rank) for rank in ranks]
    best = min(found, key=lambda evenings: (evenings[-1].day if evenings else 0, len(evenings)))
    return Calendar(crew, best, bound_of(steps, crew))


@dataclass
class _Work:
    """What is done so far, and of what is begun how much is left."""

    crew: Crew
    steps: tuple[Step, ...]
    rank: Callable[[Step], int]
    left: dict[str, Fraction] = field(default_factory=dict)
    free_at: dict[str, int] = field(default_factory=dict)
    """When what needs a finished step may begin: minutes from the start of day 0."""

    def need(self, step: Step, *, two: bool) -> int:
        """Return the minutes that are left of a step."""
        return ceil(self.left.get(step.id, Fraction(1)) * self.crew.time_of(step, two=two))

    def waiting(self, now: int) -> list[Step]:
        """Return the steps that are not done and may be worked on at this minute."""
        return [
            step
            for step in self.steps
            if step.id not in self.free_at and all(self.free_at.get(need, now + 1) <= now for need in step.needs)
        ]


def _evenings(steps: tuple[Step, ...], crew: Crew, rank: Callable[[Step], int]) -> tuple[Evening, ...]:
    work, found = _Work(crew, steps, rank), list[Evening]()
    days = crew.evenings()
    while len(work.free_at) < len(steps):
        day, two = next(days)
        tasks = _one_evening(work, day, two=two)
        if tasks:
            found.append(Evening(len(found) + 1, day, two, tasks))
    return tuple(found)


def _one_evening(work: _Work, day: int, *, two: bool) -> tuple[Task, ...]:
    """Do what can be done on one evening, and return it in order."""
    crew, tasks, now = work.crew, list[Task](), 0
    while True:
        can = [step for step in work.waiting(day * DAY + now) if _may(step, tasks, crew, two=two)]
        can.sort(key=lambda step: ("loud" not in step.tags, not (two and "two" in step.tags), work.rank(step)))
        sizes = {step.id: _piece(step, work, now, crew.minutes, two=two) for step in can}
        glue = next((step for step in can if "glue" in step.tags and sizes[step.id]), None)
        if glue is not None:  # whatever else there is time for comes before it
            end = crew.minutes - sizes[glue.id]
            others = [step for step in can if "glue" not in step.tags and not _apart(glue.tags, step.tags)]
            before = {step.id: _piece(step, work, now, end, two=two) for step in others}
            chosen: Step | None = next((step for step in others if before[step.id]), glue)
            sizes |= before
        else:
            chosen = next((step for step in can if sizes[step.id]), None)
        if chosen is None:
            return tuple(tasks)
        tasks.append(_do(work, chosen, now, sizes[chosen.id], two=two))
        now += sizes[chosen.id]
        if tasks[-1].more is False:
            work.free_at[chosen.id] = day * DAY + now + crew.wait_of(chosen)


def _may(step: Step, tasks: list[Task], crew: Crew, *, two: bool) -> bool:
    """Say whether a step may share this evening with what is done already, and with who is there."""
    if crew.people == "helper" and "two" in step.tags and not two:
        return False
    if any("glue" in task.step.tags for task in tasks) and "glue" not in step.tags:
        return False
    if any(task.step.id == step.id for task in tasks):
        return False
    return not any(_apart(task.step.tags, step.tags) for task in tasks)


def _apart(one: Iterable[str], other: Iterable[str]) -> bool:
    first, second = APART
    return bool((first & set(one) and second & set(other)) or (second & set(one) and first & set(other)))


def _piece(step: Step, work: _Work, now: int, end: int, *, two: bool) -> int:
    """Return how much of a step is done from now until `end`, in minutes; 0 when it had better wait."""
    room = (min(end, work.crew.loud) if "loud" in step.tags else end) - now
    need = work.need(step, two=two)
    if need <= room:
        return need
    if need <= WHOLE or room < PIECE:
        return 0
    return min(room, need - PIECE)


def _do(work: _Work, step: Step, now: int, minutes: int, *, two: bool) -> Task:
    begun = step.id in work.left
    share = Fraction(minutes, work.crew.time_of(step, two=two))
    left = work.left.get(step.id, Fraction(1)) - share
    work.left[step.id] = max(left, Fraction(0))
    return Task(step, now, minutes, more=left > 0, begun=begun)


def _tails(steps: tuple[Step, ...], crew: Crew) -> Mapping[str, int]:
    """Return for every step the longest chain of work and waits from its beginning to the end of the job, in minutes.

    The chain counts an evening's minutes as they are and waits as they pass, so that waits weigh more.
    """
    tails: dict[str, int] = {}
    after: dict[str, list[str]] = {step.id: [] for step in steps}
    for step in reversed(steps):
        own = crew.time_of(step, two=crew.people == "two") + crew.wait_of(step)
        tails[step.id] = own + max((tails[each] for each in after[step.id]), default=0)
        for need in step.needs:
            after[need].append(step.id)
    return tails
