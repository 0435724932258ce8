"""The evenings: waits pass between them, glue ends them, pins and fumes never meet, loud work is early, helpers are used."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from itertools import pairwise

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from guide.order.crew import DAY, Crew, crew_of
from guide.order.evenings import PIECE, WHOLE, Calendar, Evening, Task, calendar_of
from guide.order.plan import Step, order_of_work
from tests.jobs import Tree, framed_door, job, layout_of, ring, wall, window
from tests.order.crews import CREWS, crews, own
from tests.order.jobs_in_order import JOBS, by_id, steps_of
from tests.properties.rooms import rooms


def planned(tree: Tree) -> Calendar:
    """Return the calendar of a job, by the crew that its answers name."""
    layout = layout_of(tree)
    steps = order_of_work(layout)
    return calendar_of(steps, crew_of(layout.survey.basement, steps))


@cache
def calendar(name: str, crew: str) -> Calendar:
    tree = JOBS[name]
    basement = tree["basement"]
    assert isinstance(basement, dict)
    return planned({**tree, "basement": {**basement, **own(crew)}})


def broken(steps: tuple[Step, ...], found: Calendar) -> Iterator[str]:
    """Yield every rule that a calendar breaks, one sentence each."""
    yield from _undone(steps, found)
    yield from _too_early(steps, found)
    for evening in found.evenings:
        yield from _in_one_evening(evening, found.crew)


def _undone(steps: tuple[Step, ...], found: Calendar) -> Iterator[str]:
    shares = dict.fromkeys((step.id for step in steps), 0.0)
    for evening in found.evenings:
        for task in evening.tasks:
            shares[task.step.id] += task.minutes / found.crew.time_of(task.step, two=evening.two)
    for name, share in shares.items():
        if not 0.999 < share < 1.6:  # minutes are rounded up, once for each piece
            yield f"{name} is done {share} times"
    days = [evening.day for evening in found.evenings]
    if any(one >= other for one, other in pairwise(days)):
        yield "evenings run backwards"
    if any(day % 7 not in {(d - found.crew.weekdays[0]) % 7 for d in found.crew.weekdays} for day in days):
        yield "an evening falls on another day"


def _too_early(steps: tuple[Step, ...], found: Calendar) -> Iterator[str]:
    begins: dict[str, int] = {}
    ends: dict[str, int] = {}
    for evening in found.evenings:
        for task in evening.tasks:
            begins.setdefault(task.step.id, evening.day * DAY + task.begins)
            ends[task.step.id] = evening.day * DAY + task.begins + task.minutes
    for step in steps:
        for need in step.needs:
            needed = next(each for each in steps if each.id == need)
            if begins[step.id] < ends[need] + found.crew.wait_of(needed):
                yield f"{step.id} begins before {need} is done and has waited"


def _in_one_evening(evening: Evening, crew: Crew) -> Iterator[str]:
    at = f"evening {evening.number}"
    tasks, tags = evening.tasks, evening.tags
    if [task.begins for task in tasks] != [sum(t.minutes for t in tasks[:n]) for n in range(len(tasks))]:
        yield f"{at}: gap or overlap"
    if evening.minutes > crew.minutes or not tasks:
        yield f"{at}: {evening.minutes} minutes"
    if "fumes" in tags and tags & {"pins", "sparks"}:
        yield f"{at}: fumes with pins or sparks"
    glued = [n for n, task in enumerate(tasks) if "glue" in task.step.tags]
    if glued and glued != list(range(glued[0], len(tasks))):
        yield f"{at}: something after the glue"
    for task in tasks:
        if "loud" in task.step.tags and task.begins + task.minutes > crew.loud:
            yield f"{at}: {task.step.id} is loud too late"
        if crew.people == "helper" and "two" in task.step.tags and not evening.two:
            yield f"{at}: {task.step.id} without the helper"
        if (task.more or task.begun) and crew.time_of(task.step, two=True) <= PIECE:
            yield f"{at}: {task.step.id} is split"


@pytest.mark.parametrize("crew", CREWS)
@pytest.mark.parametrize(
    "name", ["one plain wall", "blocks to the concrete", "window, doors", "pins", "ring of all sorts"]
)
def test_a_calendar_keeps_every_rule_of_the_evenings(name: str, crew: str) -> None:
    steps = steps_of(name)
    assert list(broken(steps, calendar(name, crew))) == []


@settings(max_examples=40, suppress_health_check=[HealthCheck.too_slow])
@given(tree=rooms(), crew=crews())
def test_any_job_and_any_crew_give_a_calendar_that_keeps_every_rule(tree: Tree, crew: Crew) -> None:
    """Random rooms, crews of every kind, any pace: every step is done, nothing shares an evening that must not."""
    steps = order_of_work(layout_of(tree))
    assert list(broken(steps, calendar_of(steps, crew))) == []


@settings(max_examples=40, suppress_health_check=[HealthCheck.too_slow])
@given(name=st.sampled_from(sorted(JOBS)), crew=crews())
def test_no_calendar_ends_before_its_bound(name: str, crew: Crew) -> None:
    """The bound leaves rules out, so it can only be earlier; it is never below the hours nor below a single wait."""
    found = calendar_of(steps_of(name), crew)
    assert found.bound.day <= found.last_day
    assert found.bound.evenings <= len(found.evenings)
    assert found.bound.chain_day >= 14  # the permit alone takes two weeks (trade habit)


def test_what_has_to_wait_and_be_quiet_in_time_raises_the_bound_over_hours_and_chain() -> None:
    """Four walls, two hours of three loud, a permit of two weeks: neither the hours nor the chain alone see both."""
    found = calendar("ring of all sorts", "every day, quiet after an hour").bound
    assert found.day == found.late_day > max(found.hours_day, found.chain_day)


def test_loud_work_comes_before_quiet_work_wherever_it_could() -> None:
    """A loud step after a quiet one had to wait for something that was done, or rested, that same evening."""
    found = calendar("ring of all sorts", "a helper on Saturday")
    done: dict[str, int] = {}
    for evening in found.evenings:
        for first, second in pairwise(evening.tasks):
            if "loud" in second.step.tags and "loud" not in first.step.tags:
                assert _could_not_begin(second, first, evening, done, found.crew)
            done |= {t.step.id: evening.day * DAY + t.begins + t.minutes for t in (first, second) if not t.more}
        done |= {t.step.id: evening.day * DAY + t.begins + t.minutes for t in evening.tasks if not t.more}


def _could_not_begin(task: Task, before: Task, evening: Evening, done: dict[str, int], crew: Crew) -> bool:
    now = evening.day * DAY + before.begins
    tonight = {each.step.id for each in evening.tasks}
    late = [need for need in task.step.needs if need in tonight or done.get(need, now) + DAY > now]
    return bool(late) or task.begins + task.minutes > crew.loud - WHOLE


def test_waits_cost_no_evening_when_the_days_are_apart() -> None:
    """With two days between evenings the 24 h of the glue are over by the next one."""
    found = calendar("one plain wall", "usual")
    at = {task.step.id: evening.number for evening in found.evenings for task in evening.tasks}
    assert at["cap@A"] == at["foam@A"] + 1


def test_glue_that_dries_24_h_keeps_the_next_evening_free_of_what_pushes_on_it() -> None:
    """On neighbouring days the glue of nine o'clock is not dry at six; something else is done until it is."""
    found = calendar("one plain wall", "every day, quiet after an hour")
    when = {task.step.id: evening.day * DAY + task.begins for evening in found.evenings for task in evening.tasks}
    end = max(
        evening.day * DAY + task.begins + task.minutes
        for evening in found.evenings
        for task in evening.tasks
        if task.step.id == "foam@A"
    )
    assert when["cap@A"] >= end + DAY


def test_two_lift_what_two_lift_better_on_the_helpers_day() -> None:
    """The top plates, the joist blocks and the standing door wait for Saturday; days are counted from Tuesday."""
    found = calendar("ring of all sorts", "a helper on Saturday")
    lifted = [(e, t) for e in found.evenings for t in e.tasks if "two" in t.step.tags]
    assert {task.step.id.partition("@")[0] for _, task in lifted} >= {"top_plate", "joist_blocks", "framed_door"}
    assert {evening.day % 7 for evening, _ in lifted} == {4}
    assert all(evening.two for evening, _ in lifted)


def test_pins_and_can_foam_never_share_an_evening_though_both_could_be_done() -> None:
    found = calendar("pins", "two on whole Saturdays")
    pinned = [evening for evening in found.evenings if "pins" in evening.tags]
    assert pinned
    assert all("fumes" not in evening.tags for evening in pinned)


def test_more_people_and_more_hours_never_make_the_job_longer() -> None:
    alone = planned(job([wall()], evenings="own", crew="alone"))
    two = planned(job([wall()], evenings="own", crew="two"))
    long = planned(job([wall()], evenings="own", evening_hours="6", loud_hours="6"))
    assert two.last_day <= alone.last_day
    assert len(two.evenings) < len(alone.evenings)
    assert len(long.evenings) < len(alone.evenings)


def test_the_hours_of_the_first_wall_take_the_place_of_the_trades() -> None:
    """A first wall that took twice its hours makes the framing of every wall twice as long, and nothing else."""
    tree = ring([wall()] * 4)
    usual = planned(tree)
    first = sum(
        usual.crew.time_of(s, two=False) for s in order_of_work(layout_of(tree)) if s.wall == "A" and s.phase == "walls"
    )
    hours = -(-2 * first // 60)
    slow = planned(ring([wall()] * 4, evenings="own", first_wall_hours=str(hours)))
    steps = by_id(order_of_work(layout_of(tree)))
    assert 2 <= slow.crew.pace <= 2.1
    assert slow.crew.time_of(steps["studs@B"], two=False) == -(-steps["studs@B"].alone * slow.crew.pace // 1)
    assert slow.crew.time_of(steps["strip_wall@B"], two=False) == steps["strip_wall@B"].alone
    assert slow.last_day > usual.last_day


def test_a_wait_that_nobody_knows_the_length_of_is_named_and_counted_as_none() -> None:
    """Two hard rains, or a scan of the slab, come when they come."""
    wet = planned(job([wall()], water="mended", rains="1"))
    assert [step.id for step in wet.open_waits] == ["dry_proof"]
    unknown = planned(job([wall()], slab="something"))
    assert [step.id for step in unknown.open_waits] == ["bottom_plate:hold@A"]
    assert planned(job([wall()])).open_waits == ()


def test_an_evening_of_the_helper_that_is_none_of_the_persons_own_is_added() -> None:
    found = planned(job([wall()], evenings="own", crew="helper", days="tue thu", helper_day="sat"))
    assert found.crew.weekdays == (1, 3, 5)
    assert found.crew.helper_days == (5,)


def test_with_a_date_the_first_evening_falls_on_the_first_working_day_from_it() -> None:
    """2 March 2027 is a Tuesday; begun on a Friday, the first Tuesday comes four days later (calendar, worked by hand)."""
    friday = planned(job([wall()], evenings="own", start="2027-03-05"))
    assert [evening.day for evening in friday.evenings[:2]] == [4, 6]


def test_an_old_job_that_says_nothing_of_evenings_is_planned_for_the_usual_ones() -> None:
    tree = job([wall(openings=[window("60 in"), framed_door("100 in", width="30 in")])])
    basement = tree["basement"]
    assert isinstance(basement, dict)
    crew = planned({**tree, "basement": {k: v for k, v in basement.items() if k != "evenings"}}).crew
    assert (crew.people, crew.weekdays, crew.minutes, crew.loud, crew.inspection_days) == ("alone", (1, 3), 180, 180, 3)


def test_the_same_job_gives_the_same_calendar_twice() -> None:
    assert planned(JOBS["ring"]) == planned(JOBS["ring"])


def test_a_job_without_walls_has_the_evenings_of_the_room_alone() -> None:
    tree = job([])
    del tree["walls"]
    assert {task.step.wall for evening in planned(tree).evenings for task in evening.tasks} == {None}
