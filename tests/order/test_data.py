"""The data behind the steps hangs together, and what does not is found."""

from __future__ import annotations

import re
from typing import Any

import pytest
from pydantic import ValidationError

from guide.layout.parts import Layout
from guide.order.facts import FACTS, SIDES, end_facts, room_facts, wall_facts
from guide.order.proof import lint_steps
from guide.order.words import end_values, room_values, wall_values
from guide.reference.data import read_toml
from guide.reference.findings import load_findings
from guide.reference.steps import PLACEHOLDERS, StepBook, load_cautions, load_steps
from tests.order.jobs_in_order import JOBS, layout


def _changed(position: int = 0, **changes: Any) -> dict[str, Any]:
    """Return the shipped steps with one of them changed."""
    data = read_toml("steps.toml")
    data["step"][position].update(changes)
    return data


def _at(name: str) -> int:
    return [step.id for step in load_steps().step].index(name)


def test_the_shipped_steps_have_no_finding() -> None:
    assert lint_steps(load_steps()) == []


def test_every_caution_is_used_and_every_caution_named_is_there() -> None:
    assert {name for step in load_steps().step for name in step.cautions} == set(load_cautions())


def test_every_placeholder_of_the_closed_list_is_printed_by_some_step() -> None:
    assert {name for step in load_steps().step for name in step.placeholders} == set(PLACEHOLDERS)


@pytest.mark.parametrize("name", JOBS)
def test_every_placeholder_and_every_fact_has_a_value_on_every_job(name: str) -> None:
    plan = layout(name)
    room, said = room_facts(plan), room_values(plan)
    for wall in plan.walls:
        for side in SIDES:
            facts = {**room, **wall_facts(plan, wall), **end_facts(plan, wall, side)}
            assert facts.keys() == FACTS.keys()
            assert {**said, **wall_values(plan, wall), **end_values(wall, side)}.keys() == PLACEHOLDERS.keys()
            for fact, value in facts.items():
                allowed = FACTS[fact]
                assert allowed is None or value is None or value in allowed


def test_every_step_and_every_caution_says_where_it_comes_from() -> None:
    for step in load_steps().step:
        assert step.source.strip(), step.id
    for name, caution in load_cautions().items():
        assert caution.source.strip(), name


def test_every_step_that_a_finding_holds_is_there() -> None:
    book = load_steps()
    held = {finding.holds for finding in load_findings().values() if finding.holds}
    assert held
    assert not [name for name in sorted(held) if not book.named(name)]


def test_the_misfire_hold_is_thirty_seconds() -> None:
    """WAC 296-807-15040 (seen) says at least 30 s; a text that says less would be dangerous."""
    assert re.findall(r"(\d+) s\b", load_cautions()["pin_misfire"].text) == ["30", "30"]


def test_a_tool_louder_than_85_dba_never_comes_without_its_caution() -> None:
    """NIOSH's limit over a day; hammer drill, grinder and nail gun are over it, and pins have a caution of their own."""
    loud = {step.id for step in load_steps().step if re.search("hammer drill|grinder|nail gun", " ".join(step.tools))}

    assert loud == {step.id for step in load_steps().step if "noise" in step.cautions}
    assert {"bottom_plate:screws", "strip_wall", "studs"} <= loud


def test_the_tool_that_shoots_carries_every_caution_about_pins() -> None:
    step = load_steps().step[_at("bottom_plate:pins")]
    assert {"pin_tool", "pin_people", "pin_place", "pin_misfire"} <= set(step.cautions)


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"needs": ["paint"]}, "dry_proof needs paint, which is no step"),
        ({"needs": [{"step": "foam", "where": "neighbour"}]}, "of a neighbour, which a room does not have"),
        ({"title": "Build {house}"}, r"prints \{house\}, which is no placeholder"),
        ({"text": ["Mark {back}."]}, r"prints \{back\}, which a room does not have"),
        ({"id": "foam"}, "step foam stands there twice"),
        ({"hours": 3}, "hours"),
    ],
)
def test_a_step_that_does_not_fit_is_an_error_that_says_why(changes: dict[str, Any], said: str) -> None:
    with pytest.raises(ValidationError, match=said):
        StepBook.model_validate(_changed(**changes))


@pytest.mark.parametrize(
    ("when", "said"),
    [
        ({"of": "basement.colour", "is": "red"}, "basement.colour is no fact"),
        ({"of": "wall.joists", "is": "into"}, "wall.joists cannot be seen from a room"),
        ({"of": "basement.use", "is": "garage"}, "tests basement.use for “garage”, which it never is"),
        ({"of": "basement.use", "at_least": 1}, "counts basement.use, which is no count"),
        ({"of": "basement.new_boxes", "is": 1}, "compares basement.new_boxes, which is a count or a size"),
    ],
)
def test_a_condition_that_can_never_be_tested_or_never_be_true_is_found(when: dict[str, Any], said: str) -> None:
    found = lint_steps(StepBook.model_validate(_changed(when=when)))
    assert [finding for finding in found if said in finding and "dry_proof" in finding]


def test_a_fact_that_no_step_tests_is_found() -> None:
    data = _changed()
    data["step"] = [step for step in data["step"] if step["id"] in ("dry_proof", "radon_test")]
    data["step"][0].pop("needs", None)
    assert "fact wall.joists: no step tests it." in lint_steps(StepBook.model_validate(data))


# ------------------------------------------------------------------------------------------------ facts


def _facts(name: str) -> dict[str, object]:
    plan: Layout = layout(name)
    wall = plan.walls[0]
    return {**room_facts(plan), **wall_facts(plan, wall)}


def test_facts_tell_what_stands_on_a_wall() -> None:
    """One pipe fits a bay, one is too thick for it and gets a box, one lies along; the plates stop at the first two."""
    pipes = _facts("pipes")
    assert (pipes["wall.pipes"], pipes["wall.standing_pipes"]) == (3, 2)
    assert (pipes["wall.pipes_in_line"], pipes["wall.boxed_pipes"]) == (2, 1)
    doors = _facts("window, doors")
    assert (doors["wall.openings"], doors["wall.doors"]) == (3, 2)
    assert [doors[f"wall.has_{kind}"] for kind in ("window", "new_door", "framed_door")] == ["yes"] * 3
    boxes = _facts("boxes, batts")
    assert (boxes["basement.new_boxes"], boxes["basement.old_boxes"], boxes["basement.batts"]) == (1, 1, "yes")


def test_facts_tell_how_the_top_and_the_foam_are_built() -> None:
    assert [_facts(name)["wall.cap_case"] for name in ("one plain wall", "double sill")] == [1, 2]
    assert [_facts(name)["wall.foam_first"] for name in ("one plain wall", "foam first")] == ["no", "yes"]
    reach = [_facts(name)["wall.fireblocks_through_foam"] for name in ("one plain wall", "blocks to the concrete")]
    assert reach == ["no", "yes"]
    assert _facts("one plain wall")["wall.joist_blocks"] == 0
    blocks = _facts("joists alongside")["wall.joist_blocks"]
    assert isinstance(blocks, int)
    assert blocks >= 2


def test_facts_tell_the_ends_apart() -> None:
    plan = layout("one plain wall")
    left, right = (end_facts(plan, plan.walls[0], side) for side in SIDES)
    assert (left["end.role"], left["end.pack"], left["end.neighbour"]) == ("through", "yes", "no")
    assert (right["end.role"], right["end.pack"], right["end.pack_hides_block"]) == ("butt", "no", "no")
    open_end = end_facts(layout("open ends"), layout("open ends").walls[0], "left")
    assert (open_end["end.role"], open_end["end.what"]) == ("none", "open end")
