"""The evenings as their paper prints them: when, what in which order, what must not happen, what has to rest afterwards."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta

from guide.order.crew import DAY, WEEK
from guide.order.evenings import Evening, Task
from guide.order.plan import Step
from guide.order.times import in_hours
from guide.reference.briefing import Word, load_briefing, said_on
from guide.sheets.plan import Plan


@dataclass(frozen=True, slots=True)
class Do:
    """One thing to do on an evening."""

    begins: str
    """From the start of the evening: `0:00`, `1:30`."""
    title: str
    """The step with its wall."""
    takes: str
    who: str
    where: str
    """Where the step stands: paper and number."""
    step: Step
    begun: bool
    more: bool


@dataclass(frozen=True, slots=True)
class Tonight:
    """One evening."""

    number: int
    when: str
    hours: str
    two: bool
    dos: tuple[Do, ...]
    tags: frozenset[str]
    tools: tuple[str, ...]
    cautions: tuple[str, ...]
    """Their names; the words stand with the steps."""
    rests: tuple[tuple[str, str, str], ...]
    """What has to pass after steps that end tonight: which step, what, and the day it is over; no day when nobody knows."""
    quiet_from: str
    """From when on it is quiet; empty when the whole evening may be loud."""

    @property
    def ends(self) -> tuple[str, ...]:
        """The steps that are done when the evening is over."""
        return tuple(do.title for do in self.dos if not do.more)

    @property
    def safe(self) -> tuple[Word, ...]:
        """What is said of safety before anybody picks up a tool."""
        return said_on(load_briefing().safe, self.tags)

    @property
    def stop(self) -> tuple[Word, ...]:
        """What ends the work."""
        return said_on(load_briefing().stop, self.tags)


def tonight(plan: Plan, evening: Evening) -> Tonight:
    """Return one evening of a plan as it is printed."""
    crew = plan.calendar.crew
    steps = [task.step for task in evening.tasks]
    loud_to_the_end = crew.loud >= crew.minutes
    return Tonight(
        number=evening.number,
        when=when(plan, evening.day),
        hours=in_hours(evening.minutes),
        two=evening.two,
        dos=tuple(_do(plan, task, two=evening.two) for task in evening.tasks),
        tags=evening.tags,
        tools=tuple(dict.fromkeys(tool for step in steps for tool in step.tools)),
        cautions=tuple(dict.fromkeys(caution.name for step in steps for caution in step.cautions)),
        rests=tuple(_rest(plan, evening, task) for task in evening.tasks if task.step.waits and not task.more),
        quiet_from="" if loud_to_the_end else _clock(crew.loud),
    )


def next_evening(plan: Plan, letter: str | None, since: int = 1, *, helper: bool = False) -> Tonight | None:
    """Return the evening on which a wall, or without a letter anything, is worked on next; None when nothing is left.

    `since` is the number of the first evening that still lies ahead; `helper` asks for the first of them on which two work,
    where there is one.
    """
    every = plan.calendar.evenings[since - 1 :]
    here = [each for each in every if letter is None or any(task.step.wall == letter for task in each.tasks)]
    evening = next((each for each in here if each.two or not helper), here[0] if here else None)
    return tonight(plan, evening) if evening else None


def when(plan: Plan, day: int) -> str:
    """Return a day as it is printed: its date where the first day has one, else its week, with the day of the week."""
    crew = plan.calendar.crew
    if crew.start is not None:
        date = crew.start + timedelta(days=day)
        return f"{WEEK[date.weekday()].capitalize()} {date.isoformat()}"
    weeks, weekday = divmod(day + crew.weekdays[0], len(WEEK))
    return f"week {weeks + 1}, {WEEK[weekday].capitalize()}"


def _who(step: Step, *, two: bool) -> str:
    who = load_briefing().who
    if not two:
        return who.alone
    return who.lift if "two" in step.tags else who.share if step.two < step.alone else who.one


def _do(plan: Plan, task: Task, *, two: bool) -> Do:
    return Do(
        begins=_clock(task.begins),
        title=_title(task.step),
        takes=in_hours(task.minutes),
        who=_who(task.step, two=two),
        where=_where(plan, task.step),
        step=task.step,
        begun=task.begun,
        more=task.more,
    )


def _rest(plan: Plan, evening: Evening, task: Task) -> tuple[str, str, str]:
    minutes = plan.calendar.crew.wait_of(task.step)
    over = evening.day * DAY + task.begins + task.minutes + minutes
    return _title(task.step), task.step.waits, when(plan, over // DAY) if minutes else ""


def _title(step: Step) -> str:
    return f"Wall {step.wall}: {step.title}" if step.wall else step.title


def _where(plan: Plan, step: Step) -> str:
    """Name the paper a step stands on, and its number there."""
    page = [each.id for each in plan.steps if each.wall == step.wall]
    paper = f"wall-{step.wall}.md" if step.wall else "job-sheet.md"
    return f"{paper}, step {page.index(step.id) + 1}"


def _clock(minutes: int) -> str:
    return f"{minutes // 60}:{minutes % 60:02}"
