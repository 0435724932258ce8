"""What holds of the order of work of any job: no loop, nothing before what it needs, nothing closed before what it hides."""

from __future__ import annotations

from collections.abc import Iterator

from hypothesis import given, settings
from hypothesis import strategies as st

from guide.layout.parts import Datum, Kind, Layout, Level, Part, WallLayout, overlap
from guide.lengths import Length
from guide.order.facts import SIDES, end_stud, hidden_blocks, open_blocks, pack_at, tight_blocks
from guide.order.plan import Step, order_of_work
from guide.reference.figures import load_figures
from tests.jobs import Tree, layout_of
from tests.order.jobs_in_order import waits_for
from tests.properties.rooms import parted_rooms, rooms, single_walls

any_job = given(tree=st.one_of(single_walls(), rooms(), parted_rooms()))

BUILT_IN = {
    Kind.BOTTOM_PLATE: "bottom_plate", Kind.TOP_PLATE: "top_plate", Kind.STUD: "studs", Kind.KING: "openings",
    Kind.TRIMMER: "openings", Kind.HEADER: "openings", Kind.SILL: "openings", Kind.CRIPPLE: "openings",
    Kind.FOAM: "foam", Kind.CAP: "cap", Kind.CAP_LAP: "cap", Kind.LEDGE: "cap", Kind.LEDGE_LAP: "cap", Kind.JOIST_BLOCK: "joist_blocks",
    Kind.CHASE_POST: "chases", Kind.CHASE_RUNG: "chases", Kind.OUTLET: "electrical_rough",
    Kind.BACKING: "backing", Kind.DRYWALL: "drywall_ready",
}  # fmt: skip
"""The step that puts each kind of part in place; end studs, packs and fireblocks are told apart below."""


def built_by(layout: WallLayout, part: Part, steps: dict[str, Step]) -> str:
    """Return the id of the step that puts a part in place."""
    letter = layout.letter
    if part.kind is Kind.UPPER_BLOCK:  # it goes in with the block under it
        part = next(b for b in layout.of(Kind.FIREBLOCK) if b.box.x0 == part.box.x0)
    for side in SIDES:
        at = f"{letter}.{side}"
        if part is end_stud(layout, side):
            return f"end_stud@{at}"
        if part is pack_at(layout, side):
            return f"corner_pack@{at}"
        if part in hidden_blocks(layout, side):
            return f"fireblocks:corner@{at}"
    if part.kind is Kind.FIREBLOCK:
        return f"studs@{letter}" if part in tight_blocks(layout) else f"fireblocks:rest@{letter}"
    family = BUILT_IN.get(part.kind, "studs")
    found = [name for name in steps if name.partition("@")[0].partition(":")[0] == family]
    return next(name for name in found if name.partition("@")[2] in (letter, ""))


def _z(layout: WallLayout, level: Level, x: Length) -> Length:
    return level.at(layout.wall, x)


def hides(layout: WallLayout, front: Part, behind: Part) -> bool:
    """Say whether one part stands between a hand in the room and another part, as seen straight on.

    The sheets on the far side of a partition are hung from there, before its studs.
    """
    a, b = front.box, behind.box
    if behind.kind is Kind.DRYWALL or a.y0 < b.y1 or not overlap(a.x0, a.x1, b.x0, b.x1):
        return False
    x = (max(a.x0, b.x0) + min(a.x1, b.x1)) // 2
    return overlap(_z(layout, a.z0, x), _z(layout, a.z1, x), _z(layout, b.z0, x), _z(layout, b.z1, x))


def closed_too_early(layout: Layout, steps: tuple[Step, ...]) -> Iterator[str]:
    """Yield every part that is put in place before something behind it."""
    named, before = {step.id: step for step in steps}, waits_for(steps)
    for wall in layout.walls:
        for front in wall.parts:
            for behind in wall.parts:
                if not hides(wall, front, behind) or {front.kind, behind.kind} <= {Kind.FOAM}:
                    continue
                if front.kind is Kind.BOTTOM_PLATE and not wall.foam_first:
                    continue  # the foam is let down behind the plate from above: that is what the slot test is for
                one, other = built_by(wall, front, named), built_by(wall, behind, named)
                if one != other and other not in before[one]:
                    yield f"{front.id} ({one}) closes {behind.id} ({other})"


@settings(max_examples=60)
@any_job
def test_steps_wait_in_no_circle_and_come_after_all_they_need(tree: Tree) -> None:
    """A circle would be an error; a need that is not there, or comes later, would be work on something not built yet."""
    steps = order_of_work(layout_of(tree))
    place = {step.id: step.number for step in steps}
    assert [step.number for step in steps] == list(range(1, len(steps) + 1))
    assert all(place[need] < step.number for step in steps for need in step.needs)


@settings(max_examples=60)
@any_job
def test_nothing_is_closed_before_what_it_hides(tree: Tree) -> None:
    """Seen straight on, whatever stands in front of a part goes in by a step that waits for that part's own step."""
    layout = layout_of(tree)
    assert not list(closed_too_early(layout, order_of_work(layout)))


@settings(max_examples=60)
@any_job
def test_no_fireblock_is_left_for_later_in_a_bay_that_a_hand_cannot_enter(tree: Tree) -> None:
    """Each block is fixed while its bay is open: behind a pack, in a narrow bay with the studs, the rest afterwards."""
    layout = layout_of(tree)
    steps = {step.id: " ".join(step.text).replace(",", " ").split() for step in order_of_work(layout)}
    for wall in layout.walls:
        groups = [hidden_blocks(wall, side) for side in SIDES] + [tight_blocks(wall), open_blocks(wall)]
        marks = sorted(block.mark for group in groups for block in group)
        assert marks == sorted(block.mark for block in wall.of(Kind.FIREBLOCK))
        for block in tight_blocks(wall):
            assert block.mark in steps[f"studs@{wall.letter}"]
        for block in open_blocks(wall):
            assert block.mark in steps[f"fireblocks:rest@{wall.letter}"]
            beside = [p.box for p in wall.of(Kind.STUD, Kind.KING, Kind.TRIMMER) if p.box.z0.datum is Datum.SLAB]
            if any(box.x1 == block.box.x0 for box in beside):
                free = [box.x0 - block.box.x1 for box in beside if box.x0 >= block.box.x1]
            else:
                free = [block.box.x0 - box.x1 for box in beside if box.x1 <= block.box.x0]
            assert all(gap >= load_figures().hand_room for gap in free)
