"""Times and waits: every step has hours of the trade, they grow with the wall, and what must pass after it stands as data."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import ValidationError

from guide.order.plan import order_of_work
from guide.reference.data import read_toml
from guide.reference.steps import StepBook, load_steps
from tests.jobs import job, layout_of, wall
from tests.order.jobs_in_order import by_id, steps_of

FIRST_CUT, LAST_CHECK = "mark_plates@A", "self_check@A"


def _minutes(name: str, *, two: bool = False) -> int:
    """Return the minutes on wall A from its plates to its check, and of the concrete before."""
    steps = [
        step for step in steps_of(name) if step.wall == "A" and step.id not in ("photo_record@A", "drywall_ready@A")
    ]
    return sum(step.two if two else step.alone for step in steps)


def test_a_plain_wall_takes_one_person_what_carpenters_count_for_a_first_wall() -> None:
    """A plain 16 ft wall alone, first time: 10 to 14 hours from plates to check (trade habit); 12 ft is three quarters."""
    steps = [step for step in steps_of("one plain wall") if step.wall == "A"]
    ids = [step.id for step in steps]
    framing = steps[ids.index(FIRST_CUT) : ids.index(LAST_CHECK) + 1]
    assert 10 * 60 * 3 // 4 <= sum(step.alone for step in framing) <= 14 * 60


def test_two_are_never_slower_than_one_and_faster_on_a_whole_wall() -> None:
    assert all(step.two <= step.alone for step in steps_of("ring of all sorts"))
    assert _minutes("one plain wall", two=True) * 3 < _minutes("one plain wall") * 2 + 60


@pytest.mark.parametrize(("plain", "more"), [("one plain wall", "window, doors"), ("one plain wall", "pipes"),
                                             ("one plain wall", "joists alongside")])  # fmt: skip
def test_openings_boxes_and_parallel_joists_take_more_time(plain: str, more: str) -> None:
    assert _minutes(more) > _minutes(plain)


def test_a_box_round_a_pipe_takes_three_hours_and_each_opening_an_hour_and_a_quarter() -> None:
    """Three hours for a chase, 75 min to 1.5 h for an opening (trade habit)."""
    assert by_id(steps_of("pipes"))["chases@A"].alone == 180
    assert by_id(steps_of("window, doors"))["openings@A"].alone == 3 * 75


def test_glued_foam_waits_a_day_and_patched_concrete_too() -> None:
    """24 h: what tubes usually say, and what a patch wants before it is covered (common practice)."""
    steps = by_id(steps_of("one plain wall"))
    for name in ("foam@A", "patch_wall@A"):
        assert [(wait.what, wait.hours) for wait in steps[name].wait] == [("cure", 24)]


def test_the_wait_for_hard_rains_is_there_until_two_were_seen() -> None:
    """A wall that was wet stands through two hard rains first; how long that takes nobody knows."""
    dry = by_id(steps_of("one plain wall"))["dry_proof"]
    seen = by_id(steps_of("sleeping, standing sheets"))["dry_proof"]  # mended, two rains seen
    waiting = by_id(order_of_work(layout_of(job([wall()], water="mended", rains="1"))))["dry_proof"]
    assert [[w.what for w in step.wait] for step in (dry, seen, waiting)] == [["test"], ["test"], ["test", "rain"]]
    assert waiting.wait[-1].hours is None


def test_every_inspection_waits_for_the_persons_own_days() -> None:
    waits = [wait for text in load_steps().step for wait in text.wait if wait.what == "inspection"]
    assert len(waits) >= 3
    assert {wait.hours for wait in waits} == {None}


def test_glue_never_meets_loud_and_every_pin_step_lifts_its_own_caution() -> None:
    """Glue ends an evening and loud work begins it, so one step cannot be both; pins are shot by two (common practice)."""
    tags = {text.id: set(text.tags) for text in load_steps().step}
    assert not [name for name, each in tags.items() if {"glue", "loud"} <= each]
    assert [name for name, each in tags.items() if "pins" in each] == ["bottom_plate:pins"]
    assert tags["bottom_plate:pins"] >= {"loud", "two"}
    assert all("fumes" in each for each in tags.values() if "glue" in each)


def test_a_step_that_warns_of_fumes_sparks_or_pins_has_the_tag_that_keeps_them_apart() -> None:
    """The tag is what the evenings go by; a caution without it would let can foam and pins share an evening."""
    for text in load_steps().step:
        if {"can_foam", "foam_glue"} & set(text.cautions):
            assert "fumes" in text.tags, text.id
        assert ("sparks" in text.cautions) == ("sparks" in text.tags), text.id
        assert ("pin_tool" in text.cautions) == ("pins" in text.tags), text.id


def test_times_say_where_they_come_from() -> None:
    assert load_steps().hours_from == "trade habit"


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"time": {"alone": 10, "two": 20}}, "two take 20 minutes where one takes 10"),
        ({"time": {"alone": 0, "two": 0}}, "greater than 0"),
        ({"time": {"alone": 10, "two": 10, "per": "mile"}}, "per"),
        ({"tags": ["dull"]}, "tags"),
        ({"waits": ""}, "dry_proof has a wait and says nothing of it"),
    ],
)
def test_a_time_that_does_not_fit_is_an_error_that_says_why(changes: dict[str, Any], said: str) -> None:
    data = read_toml("steps.toml")
    data["step"][0].update(changes)
    with pytest.raises(ValidationError, match=said):
        StepBook.model_validate(data)
