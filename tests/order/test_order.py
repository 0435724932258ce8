"""The order of work keeps what a basement wall asks for: nothing before what it needs, nothing closed before what it hides."""

from __future__ import annotations

from itertools import product
from typing import Any

import pytest

from guide.layout.parts import Kind
from guide.order.facts import OPPOSITE, SIDES, end_at, pack_at
from guide.order.plan import OrderError, order_of_work, ordered
from guide.reference.steps import StepBook
from tests.jobs import job, layout_of, level, ring, wall
from tests.order.jobs_in_order import (
    FRAMING,
    JOBS,
    OPEN,
    TALL_CONCRETE,
    all_wait,
    by_id,
    family,
    ids,
    layout,
    steps_of,
    walls_of,
)

every_job = pytest.mark.parametrize("name", JOBS)


@every_job
def test_steps_are_numbered_from_one_and_each_comes_after_everything_it_needs(name: str) -> None:
    steps = steps_of(name)
    place = {step.id: step.number for step in steps}
    assert [step.number for step in steps] == list(range(1, len(steps) + 1))
    assert len(place) == len(steps)
    assert all(place[need] < step.number for step in steps for need in step.needs)


@every_job
def test_foam_is_up_before_any_wood_stands_in_front_of_it(name: str) -> None:
    steps = steps_of(name)
    for wall_ in walls_of(name):
        front = ids(steps, *FRAMING, "cap", "top_plate", letter=wall_.letter)
        assert all_wait(steps, front, {f"foam@{wall_.letter}"})


@every_job
def test_foam_and_plate_go_in_the_order_that_the_layout_found(name: str) -> None:
    steps = steps_of(name)
    for wall_ in walls_of(name):
        foam, plate = ids(steps, "foam", letter=wall_.letter), ids(steps, "bottom_plate", letter=wall_.letter)
        assert len(foam) == len(plate) == 1
        assert all_wait(steps, plate, foam) if wall_.foam_first else all_wait(steps, foam, plate)


def test_both_orders_of_foam_and_plate_and_both_cap_cases_are_among_the_jobs() -> None:
    """The promises here would prove little on jobs that are all alike."""
    walls = [wall_ for name in JOBS for wall_ in walls_of(name)]
    assert {wall_.foam_first for wall_ in walls} == {True, False}
    assert {wall_.cap_case for wall_ in walls} == {1, 2}


@every_job
def test_rim_bays_and_joist_blocks_of_every_wall_are_done_before_the_first_cap(name: str) -> None:
    steps = steps_of(name)
    assert all_wait(steps, ids(steps, "cap"), ids(steps, "rim_bays", "joist_blocks"))


@every_job
def test_studs_stand_between_plates_that_are_up_under_a_cap_that_is_closed(name: str) -> None:
    steps = steps_of(name)
    for letter in (wall_.letter for wall_ in walls_of(name)):
        assert all_wait(steps, {f"top_plate@{letter}"}, {f"cap@{letter}"})
        plates = ids(steps, "bottom_plate", "top_plate", letter=letter)
        ends = ids(steps, "end_stud", "corner_pack", letter=letter)
        assert all_wait(steps, ends, plates)
        assert all_wait(steps, {f"studs@{letter}"}, ends)


@every_job
def test_a_corner_fireblock_is_fixed_between_its_end_stud_and_the_pack_that_hides_it(name: str) -> None:
    steps = steps_of(name)
    for key in (step.id for step in steps if step.id.startswith("fireblocks:corner@")):
        place = key.partition("@")[2]
        assert all_wait(steps, {key}, {f"end_stud@{place}"})
        assert all_wait(steps, {f"corner_pack@{place}"}, {key})


def test_a_through_end_with_a_pack_has_a_corner_fireblock_to_fix() -> None:
    """In a plain wall, through on its left, the first fireblock stands behind the pack."""
    found = by_id(steps_of("one plain wall"))
    assert "fireblocks:corner@A.left" in found
    assert "fireblocks:corner@A.right" not in found


@every_job
def test_every_upright_fireblock_is_fixed_by_exactly_one_step(name: str) -> None:
    steps = by_id(steps_of(name))
    for wall_ in walls_of(name):
        said = [
            line
            for key, step in steps.items()
            if step.wall == wall_.letter and key.startswith(("fireblocks:corner", "fireblocks:rest", "studs"))
            for line in step.text
        ]
        words = " ".join(said).replace(",", " ").split()
        for block in wall_.of(Kind.FIREBLOCK):
            assert words.count(block.mark) == 1


@every_job
def test_fireblocks_that_go_through_the_foam_are_set_before_the_foam_that_butts_them(name: str) -> None:
    steps, through = steps_of(name), layout(name).survey.basement.block_reach == "concrete"
    for wall_ in walls_of(name):
        assert (f"fireblocks:foam@{wall_.letter}" in by_id(steps)) is through
        if through:
            assert all_wait(steps, {f"foam@{wall_.letter}"}, {f"fireblocks:foam@{wall_.letter}"})


@every_job
def test_at_a_corner_the_through_wall_has_its_pack_before_the_butt_wall_stands_its_end_stud(name: str) -> None:
    steps, plan = steps_of(name), layout(name)
    for wall_, side in product(plan.walls, SIDES):
        end = end_at(wall_, side)
        other = plan.by_letter.get(end.neighbour or "")
        if other is not None and end.through is False and pack_at(other, OPPOSITE[side]):
            pack = f"corner_pack@{other.letter}.{OPPOSITE[side]}"
            assert all_wait(steps, {f"end_stud@{wall_.letter}.{side}"}, {pack})


@every_job
def test_the_foam_that_passes_behind_a_through_wall_is_up_before_that_walls_cap_and_end(name: str) -> None:
    steps, plan = steps_of(name), layout(name)
    for wall_, side in product(plan.walls, SIDES):
        end = end_at(wall_, side)
        if end.through and end.neighbour in plan.by_letter:
            later = {f"cap@{wall_.letter}", f"end_stud@{wall_.letter}.{side}"}
            assert all_wait(steps, later, {f"foam@{end.neighbour}"})


def test_a_through_walls_plate_waits_for_foam_that_could_not_be_lifted_in_over_it() -> None:
    """Two walls, the first through at their corner; the second's concrete is too tall for foam over a plate."""
    tall = order_of_work(layout_of(job([wall(right_first="this wall"), wall(None, **TALL_CONCRETE)])))
    assert all_wait(tall, {"bottom_plate:screws@A"}, {"foam@B"})
    assert any("the other wall's foam goes up first" in line for line in by_id(tall)["bottom_plate:screws@A"].text)
    low = order_of_work(layout_of(job([wall(right_first="this wall"), wall()])))
    assert not all_wait(low, {"bottom_plate:screws@A"}, {"foam@B"})


@every_job
def test_a_wall_is_checked_when_everything_on_it_stands(name: str) -> None:
    steps = steps_of(name)
    for letter in (wall_.letter for wall_ in walls_of(name)):
        built = ids(steps, *FRAMING, "fireblocks", "cap", "bottom_plate", "access_frames", letter=letter)
        assert all_wait(steps, {f"self_check@{letter}"}, built)


@every_job
def test_nothing_is_wired_before_the_framing_nor_covered_before_its_inspection(name: str) -> None:
    steps = steps_of(name)
    trades = {"electrical_rough", "pipes_rough"}
    assert all_wait(steps, trades, ids(steps, *FRAMING, "fireblocks", "self_check"))
    assert all_wait(steps, {"seal_holes"}, trades)
    assert all_wait(steps, {"framing_inspection"}, {"seal_holes"})
    assert all_wait(steps, ids(steps, "batts", "photo_record", "drywall_ready"), {"framing_inspection"})


@every_job
def test_the_gate_is_settled_before_anything_is_fastened_to_the_concrete(name: str) -> None:
    steps = steps_of(name)
    gate = ids(steps, "dry_proof", "structure_look", "radon_test", "old_house", "insect_look", "office_call")
    assert all_wait(steps, ids(steps, "foam", "bottom_plate", "fireblocks"), gate)
    assert all_wait(steps, ids(steps, "bottom_plate"), {"slab_secrets"})
    for letter in (wall_.letter for wall_ in walls_of(name)):
        assert all_wait(steps, {f"foam@{letter}"}, {f"strip_wall@{letter}", f"patch_wall@{letter}"})


@every_job
def test_every_line_of_the_room_is_snapped_before_the_first_plate_is_marked(name: str) -> None:
    steps = steps_of(name)
    assert all_wait(steps, ids(steps, "mark_plates"), ids(steps, "snap_lines", "tape_again"))


@every_job
def test_every_wall_is_photographed_and_ready_at_the_end(name: str) -> None:
    steps = steps_of(name)
    for letter in (wall_.letter for wall_ in walls_of(name)):
        assert all_wait(
            steps, {f"photo_record@{letter}"}, {f"self_check@{letter}"} | ids(steps, "batts", letter=letter)
        )
        assert all_wait(steps, {f"drywall_ready@{letter}"}, {f"photo_record@{letter}"})
    assert family(steps[-1]) == "drywall_ready"


def test_walls_that_share_no_corner_are_built_one_after_the_other_as_walked() -> None:
    steps = order_of_work(layout_of(job([wall(None, **OPEN), wall(None, **OPEN), wall(None, **OPEN)])))
    built = [step.wall for step in steps if step.wall and family(step) in ("foam", "cap", *FRAMING, "self_check")]
    assert built == sorted(built, key=str)


def test_a_ring_with_any_corners_and_any_foam_order_has_a_sound_order() -> None:
    """Corners given out in every way, foam first on every set of walls: no two walls may wait for each other."""
    corners = list(product(("this wall", "other wall"), repeat=4))
    tall = [(False,) * 4, (True,) * 4, (True, False, True, False), (False, True, True, False)]
    for firsts, talls in product(corners, tall):
        walls = [
            wall(None, right_first=first, **(TALL_CONCRETE if high else level("92 in", "90 1/2 in")))
            for first, high in zip(firsts, talls, strict=True)
        ]
        steps = order_of_work(layout_of(ring(walls)))
        place = {step.id: step.number for step in steps}
        assert all(place[need] < step.number for step in steps for need in step.needs)


def test_a_wall_whose_neighbour_cannot_be_laid_out_is_still_ordered() -> None:
    """The second wall's concrete reads higher than its joists, so that it is left out of the layout."""
    steps = order_of_work(layout_of(job([wall(right_first="other wall"), wall(None, **level("92 in", "93 in"))])))
    assert {step.wall for step in steps} == {None, "A"}
    assert "end_stud@A.right" in by_id(steps)


def test_without_a_wall_only_the_work_for_the_room_is_there() -> None:
    tree = job([])
    del tree["walls"]
    steps = order_of_work(layout_of(tree))
    assert steps
    assert {step.wall for step in steps} == {None}


def test_the_same_job_gives_the_same_order_twice() -> None:
    again = order_of_work(layout_of(JOBS["ring of all sorts"]))
    assert steps_of("ring of all sorts") == again


def test_a_step_comes_only_where_it_applies() -> None:
    """What a wall does not have is not worked on: joist blocks, openings, boxes round pipes, batts, exits."""
    plain = {family(step) for step in steps_of("one plain wall")}
    assert not plain & {"joist_blocks", "openings", "chases", "framed_door", "access_frames", "batts"}
    assert ids(steps_of("joists alongside"), "joist_blocks")
    assert ids(steps_of("window, doors"), "openings")
    assert ids(steps_of("window, doors"), "framed_door")
    assert ids(steps_of("pipes"), "chases")
    assert ids(steps_of("pipes"), "access_frames")
    assert ids(steps_of("boxes, batts"), "batts")
    assert not ids(steps_of("storage"), "headroom_exit")


def _book(**needs: list[Any]) -> StepBook:
    """Return a book of wall steps with these needs and nothing else to say."""
    about = {
        "scope": "wall",
        "phase": "walls",
        "title": "",
        "text": [""],
        "why": "",
        "looks": "",
        "source": "",
        "time": {"alone": 5, "two": 5},
    }
    steps = [{"id": name, **about, "needs": before} for name, before in needs.items()]
    usual = {"crew": "alone", "days": "sat", "hours": 1, "loud_hours": 1, "inspection_days": 1, "source": ""}
    return StepBook.model_validate(
        {"locked": "", "none": "", "pin_length": "2 1/2", "hours_from": "", "usual_evenings": usual, "step": steps}
    )


def test_steps_that_wait_for_each_other_are_an_error_that_names_them() -> None:
    plan = layout_of(job([wall()]))
    with pytest.raises(OrderError, match=r"wait for each other: b@A needs c@A needs b@A$"):
        ordered(plan, _book(a=["b"], b=["c"], c=["b"]))
    assert [step.id for step in ordered(plan, _book(a=["b"], b=["c"], c=[]))] == ["c@A", "b@A", "a@A"]


def test_walls_that_wait_for_each_other_round_a_corner_are_an_error_too() -> None:
    plan = layout_of(job([wall(), wall()]))
    with pytest.raises(OrderError, match="a@A needs a@B needs a@A"):
        ordered(plan, _book(a=[{"step": "a", "where": "neighbour"}]))


def test_a_need_of_a_family_means_every_step_of_it_that_applies() -> None:
    plan = layout_of(job([wall()]))
    book = _book(**{"last": ["x"], "x:one": [], "x:two": []})
    assert by_id(ordered(plan, book))["last@A"].needs == ("x:one@A", "x:two@A")
