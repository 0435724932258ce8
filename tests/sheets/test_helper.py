"""The helper's page: the next evening of a wall, its numbers from the plan, what stops the work, what stays to rest."""

from __future__ import annotations

import re

import pytest

from guide.book.questions import load_book
from guide.interview.jobfile import from_json
from guide.reference.briefing import load_briefing, said_on
from guide.sheets.papers import papers
from guide.sheets.plan import Plan, make_plan
from guide.sheets.tonight import next_evening
from guide.worked import WORKED_JOBS
from tests.jobs import Tree, job, wall
from tests.order.crews import own
from tests.walkthroughs import worked


def plan_of(tree: Tree) -> Plan:
    return make_plan(load_book(), from_json(tree, load_book()))


def page_of(plan: Plan, letter: str = "A") -> str:
    return " ".join(papers(plan)[f"helper-{letter}.md"].split())


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_every_wall_has_a_page_with_the_seven_parts_in_their_order(name: str) -> None:
    plan = make_plan(load_book(), worked(name))
    for laid in plan.layout.walls:
        heads = re.findall(r"^## (.+)$", papers(plan)[f"helper-{laid.letter}.md"], re.MULTILINE)
        assert heads == ["Safe", "Today", "Numbers", "Sketch", "Call out", "Stop if", "Hand-off"]


def test_the_numbers_are_those_of_the_worked_wall() -> None:
    """B, the plates and the bucket of studs from the shortest to the longest: the worked wall, by hand."""
    page = papers(make_plan(load_book(), worked("first-wall")))["helper-A.md"]
    for name, size in (
        ("B, concrete to the back of the studs", "2 3/8 in"),
        ("Plates, end to end", "187 3/4 in"),
        ("Studs (14)", "88 1/8 in to 88 15/16 in"),
        ("Cap, wide (3)", "4 7/8 in"),
    ):
        assert re.search(rf"^\| {re.escape(name)} +\| {size} +\|$", page, re.MULTILINE), name


def test_it_is_the_helpers_first_evening_on_the_wall_and_everything_done_then_stands_on_it() -> None:
    """A helper comes on Saturdays: the page is for the first Saturday on which the wall is worked on, as planned."""
    plan = plan_of(job([wall(), wall()], **own("a helper on Saturday")))
    for letter in ("A", "B"):
        evening = next(
            each for each in plan.calendar.evenings if each.two and any(task.step.wall == letter for task in each.tasks)
        )
        page = page_of(plan, letter)
        assert f"evening {evening.number}," in page
        assert page.count("two people.**") == 1
        for task in evening.tasks:
            assert task.step.title in page


def test_who_works_alone_gets_the_first_evening_on_the_wall() -> None:
    plan = plan_of(job([wall()]))
    tonight = next_evening(plan, "A")
    first = next(each for each in plan.calendar.evenings if any(task.step.wall == "A" for task in each.tasks))
    assert tonight is not None
    assert tonight.number == first.number
    assert next_evening(plan, "B") is None


def test_flames_and_pins_are_named_on_the_evenings_that_have_them_and_on_no_other() -> None:
    """Each line that is for one kind of work is said on that work alone; the others always."""
    book = load_briefing()
    always = {word.say for word in said_on(book.safe, frozenset())}
    on_pins = {word.say for word in said_on(book.safe, {"pins"})}
    assert always < on_pins
    assert on_pins - always == {word.say for word in book.safe if word.on == "pins"}
    assert {word.on for word in book.safe} >= {None, "fumes", "pins", "sparks", "loud"}


def test_what_nobody_measured_is_locked_on_the_page_and_stops_the_work() -> None:
    guessed = page_of(plan_of(job([wall(height=["about 92 in at left", "92 in at right"])])))
    assert re.search(r"\| Studs \(\d+\) +\| locked +\|", guessed)
    assert "a number reads **locked**" in guessed
    assert "locked" not in page_of(plan_of(job([wall()])))


def test_a_stop_starts_nobody() -> None:
    page = page_of(plan_of(job([wall()], water="wet")))
    assert "A STOP stands" in page
    assert "## Today" not in page
    assert "0:00" not in page


def test_what_has_to_rest_says_until_which_day() -> None:
    """24 h for a patch, begun on one evening of the calendar, are over on the evening of the next day (steps.toml)."""
    plan = make_plan(load_book(), worked("four-walls"))
    tonight = next_evening(plan, "B", helper=True)
    assert tonight is not None
    over = {title: day for title, _, day in tonight.rests}
    assert tonight.when == "Sat 2027-04-10"
    assert over["Wall C: Patch and brush the concrete"] == "Sun 2027-04-11"
