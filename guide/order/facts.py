"""The facts that steps are chosen by: a closed list, worked out from the survey and the layout, never asked again.

Every condition in `prompts_data/steps.toml` tests one of the names in `FACTS`. A reading that nobody took is no fact:
what a wrong guess could hurt (what is in the slab, how thick it is, how near its edge) counts as not known.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Literal

from guide.book.conditions import Fact
from guide.layout.ends import End
from guide.layout.parts import FULL_HEIGHT, Kind, Layout, Part, WallLayout, overlap
from guide.lengths import ZERO, Length, exact_inches, greatest, least
from guide.reference.figures import load_figures
from guide.reference.steps import load_steps

Facts = Mapping[str, Fact]
Side = Literal["left", "right"]

SIDES: tuple[Side, ...] = ("left", "right")
UPRIGHTS = (*FULL_HEIGHT, Kind.TRIMMER, Kind.CRIPPLE, Kind.CHASE_POST)
"""Parts that stand beside a bay and close it to a hand."""

OPPOSITE: dict[Side, Side] = {"left": "right", "right": "left"}

_YES_NO = ("yes", "no")

FACTS: dict[str, tuple[str | int, ...] | None] = {
    "basement.use": ("living", "sleeping", "storage"),
    "basement.water": ("dry", "mended", "wet"),
    "basement.rains": None,
    "basement.slab": ("nothing", "something"),
    "basement.anchors": ("screws", "pins"),
    "basement.slab_thickness": None,
    "basement.pin_depth": ("kept", "too deep"),
    "basement.batts": _YES_NO,
    "basement.rim": ("bare", "wool", "sealed", "unsound", "unknown"),
    "basement.new_boxes": None,
    "basement.old_boxes": None,
    "basement.reach": _YES_NO,
    "wall.stands": ("concrete", "partition"),
    "wall.meets": None,
    "wall.sheets": ("lying", "standing"),
    "wall.joists": ("into", "alongside"),
    "wall.joists_read": None,
    "wall.joist_blocks": None,
    "wall.rim_pieces": None,
    "wall.bucks": None,
    "wall.lined_by_hand": None,
    "wall.extensions": None,
    "wall.cap_case": (0, 1, 2, 3),
    "wall.foam_first": _YES_NO,
    "wall.runs_through": _YES_NO,
    "wall.starts_past": _YES_NO,
    "wall.open_ends": None,
    "wall.partitions": None,
    "wall.cut_ends": _YES_NO,
    "wall.mitred_ends": _YES_NO,
    "wall.waits_for_foam": _YES_NO,
    "wall.fireblocks_through_foam": _YES_NO,
    "wall.open_fireblocks": None,
    "wall.tight_fireblocks": None,
    "wall.pin_edge": ("kept", "near", "unknown"),
    "wall.backing": None,
    "wall.soffits": None,
    "wall.openings": None,
    "wall.doors": None,
    "wall.kept_free": None,
    "wall.hanging": None,
    "wall.has_window": _YES_NO,
    "wall.has_new_door": _YES_NO,
    "wall.has_framed_door": _YES_NO,
    "wall.outside_door": _YES_NO,
    "wall.pipes": None,
    "wall.standing_pipes": None,
    "wall.pipes_in_line": None,
    "wall.boxed_pipes": None,
    "wall.long_boxes": None,
    "wall.notched_studs": None,
    "wall.reach": _YES_NO,
    "end.role": ("through", "butt", "mitred", "none"),
    "end.what": ("inside corner", "outside corner", "framed wall", "open end"),
    "end.neighbour": _YES_NO,
    "end.neighbour_foam_first": _YES_NO,
    "end.stud": _YES_NO,
    "end.pack": _YES_NO,
    "end.pack_hides_block": _YES_NO,
}
"""Every fact by its name, with the values it can have; None is a count, or a size that is known or not."""


def room_facts(layout: Layout) -> dict[str, Fact]:
    """Return the facts about the whole basement."""
    survey, basement = layout.survey, layout.survey.basement
    boxes = [box for wall in layout.walls for box in wall.wall.boxes]
    thick = basement.slab_thickness
    if thick is not None and survey.unsure(thick.rests):
        thick = None
    looked = basement.slab == "nothing" and not survey.unsure({"basement.slab"})
    return {
        "basement.use": basement.use,
        "basement.water": basement.water,
        "basement.rains": basement.rains,
        "basement.slab": "nothing" if looked else "something",
        "basement.anchors": basement.anchors,
        "basement.slab_thickness": exact_inches(thick) if thick is not None else None,
        "basement.pin_depth": _pin_depth(layout, thick) if thick is not None else None,
        "basement.batts": basement.batts,
        "basement.rim": basement.rim or "unknown",
        "basement.new_boxes": sum(box.kind == "new" for box in boxes),
        "basement.old_boxes": sum(box.kind == "existing" for box in boxes),
        "basement.reach": _yes(any(_reach(wall) for wall in layout.walls)),
    }


def wall_facts(layout: Layout, wall: WallLayout) -> dict[str, Fact]:
    """Return the facts about one wall. Cap case 0: the sill itself closes the gap, and there is no strip; a partition has none."""
    ends = [end_facts(layout, wall, side) for side in SIDES]
    openings = [opening.kind for opening in wall.wall.openings]
    standing = [pipe for pipe in wall.wall.pipes if pipe.run == "standing" and pipe.at is not None]
    return {
        "wall.stands": "partition" if wall.wall.is_partition else "concrete",
        "wall.meets": sum(end["end.what"] == "framed wall" and end["end.neighbour"] == "yes" for end in ends),
        "wall.sheets": wall.sheets,
        "wall.joists": wall.wall.joists,
        "wall.joists_read": len(wall.wall.joists_read),
        "wall.joist_blocks": len(wall.of(Kind.JOIST_BLOCK)),
        "wall.rim_pieces": len(wall.of(Kind.RIM)),
        "wall.bucks": len(wall.of(Kind.BUCK)),
        "wall.extensions": len(wall.of(Kind.EXTENSION)),
        "wall.lined_by_hand": sum(remark.saying.key == "remark.lining_by_hand" for remark in wall.remarks),
        "wall.cap_case": None if wall.wall.is_partition else wall.cap_case if wall.of(Kind.CAP) else 0,
        "wall.foam_first": _yes(wall.foam_first),
        "wall.runs_through": _yes(any(_through(end) for end in ends)),
        "wall.starts_past": _yes(wall.plate_start < ZERO),
        "wall.partitions": len(wall.wall.partitions),
        "wall.open_ends": sum(end.what == "open end" for end in (wall.left, wall.right)),
        "wall.cut_ends": _yes(any(end.slant.ticks and not end.mitred for end in (wall.left, wall.right))),
        "wall.mitred_ends": _yes(wall.left.mitred or wall.right.mitred),
        "wall.waits_for_foam": _yes(any(_through(end) and end["end.neighbour_foam_first"] == "yes" for end in ends)),
        "wall.fireblocks_through_foam": _yes(
            layout.survey.basement.block_reach == "concrete" and bool(wall.of(Kind.FIREBLOCK))
        ),
        "wall.open_fireblocks": len(open_blocks(wall)),
        "wall.tight_fireblocks": len(tight_blocks(wall)),
        "wall.pin_edge": _pin_edge(layout, wall),
        "wall.soffits": sum(fixture.what == "soffit" for fixture in wall.wall.fixtures),
        "wall.backing": len(wall.of(Kind.BACKING)),
        "wall.openings": len(openings),
        "wall.doors": sum(kind in ("new door", "framed door") for kind in openings),
        "wall.hanging": openings.count("beam or duct"),
        "wall.kept_free": openings.count("kept free"),
        "wall.has_window": _yes("window" in openings),
        "wall.has_new_door": _yes("new door" in openings),
        "wall.has_framed_door": _yes("framed door" in openings),
        "wall.outside_door": _yes(any(opening.outside == "yes" for opening in wall.wall.openings)),
        "wall.pipes": len(wall.wall.pipes),
        "wall.standing_pipes": len(standing),
        "wall.pipes_in_line": sum(_parts_the_plate(wall, pipe.at) for pipe in standing if pipe.at is not None),
        "wall.boxed_pipes": len(wall.chases),
        "wall.long_boxes": sum(part.why.key == "part.chase_lid" for part in wall.of(Kind.CHASE_RUNG)),
        "wall.notched_studs": sum(bool(part.notches) for part in wall.of(*FULL_HEIGHT, Kind.TRIMMER, Kind.CRIPPLE)),
        "wall.reach": _yes(_reach(wall)),
    }


def end_facts(layout: Layout, wall: WallLayout, side: Side) -> dict[str, Fact]:
    """Return the facts about one end of a wall."""
    end = end_at(wall, side)
    neighbour = layout.by_letter.get(end.neighbour or "")
    return {
        "end.role": "mitred" if end.mitred else {True: "through", False: "butt", None: "none"}[end.through],
        "end.what": end.what,
        "end.neighbour": _yes(neighbour is not None),
        "end.neighbour_foam_first": _yes(neighbour is not None and neighbour.foam_first),
        "end.stud": _yes(end_stud(wall, side) is not None),
        "end.pack": _yes(pack_at(wall, side) is not None),
        "end.pack_hides_block": _yes(bool(hidden_blocks(wall, side))),
    }


def end_at(wall: WallLayout, side: Side) -> End:
    """Return one end of a wall's framing."""
    return wall.left if side == "left" else wall.right


def end_stud(wall: WallLayout, side: Side) -> Part | None:
    """Return the stud that closes one end of the wall; an opening there leaves it out."""
    return next(
        (s for s in wall.of(Kind.STUD) if s.why.key == "part.end_stud" and ("side", side) in s.why.values), None
    )


def pack_at(wall: WallLayout, side: Side) -> Part | None:
    """Return the flat stud of the corner pack at one end, or None where there is none."""
    figures, end = load_figures(), end_at(wall, side)
    off = end.nose(figures.stud_thick, figures.stud_deep) if end.mitred else abs(end.slant) + figures.stud_thick
    if side == "left":
        return next((pack for pack in wall.of(Kind.PACK) if pack.box.x0 == wall.plate_start + off), None)
    return next((pack for pack in wall.of(Kind.PACK) if pack.box.x1 == wall.plate_end - off), None)


def hidden_blocks(wall: WallLayout, side: Side) -> tuple[Part, ...]:
    """Return the upright fireblocks that the corner pack of one end stands in front of."""
    pack = pack_at(wall, side)
    if pack is None:
        return ()
    blocks = wall.of(Kind.FIREBLOCK)
    return tuple(block for block in blocks if overlap(block.box.x0, block.box.x1, pack.box.x0, pack.box.x1))


def tight_blocks(wall: WallLayout) -> tuple[Part, ...]:
    """Return the upright fireblocks whose bay is too narrow for a hand and a driver once all studs stand."""
    return tuple(block for block in _in_bays(wall) if _bay_of(wall, block) < load_figures().hand_room)


def open_blocks(wall: WallLayout) -> tuple[Part, ...]:
    """Return the upright fireblocks that can still be reached when the corner packs and all studs stand."""
    return tuple(block for block in _in_bays(wall) if _bay_of(wall, block) >= load_figures().hand_room)


def _in_bays(wall: WallLayout) -> tuple[Part, ...]:
    hidden = [block for side in SIDES for block in hidden_blocks(wall, side)]
    return tuple(block for block in wall.of(Kind.FIREBLOCK) if block not in hidden)


def _bay_of(wall: WallLayout, block: Part) -> Length:
    """Return how much of its bay a block leaves free: from its bare face to the next upright, or to the plate's end."""
    uprights = wall.of(*UPRIGHTS)
    left = greatest(wall.plate_start, *(part.box.x1 for part in uprights if part.box.x1 <= block.box.x0))
    right = least(wall.plate_end, *(part.box.x0 for part in uprights if part.box.x0 >= block.box.x1))
    return greatest(block.box.x0 - left, right - block.box.x1)


def plate_middle(wall: WallLayout) -> Length:
    """Return how far from the concrete the plate's fasteners stand."""
    return wall.offsets.back + wall.offsets.deep // 2


def _pin_depth(layout: Layout, slab: Length) -> str:
    """Say whether what the plate leaves of a pin goes no deeper than the share of the slab that the code allows."""
    figures = load_figures()
    deep = load_steps().pin - figures.stud_thick - figures.gasket
    return "kept" if deep.inch <= slab.inch * Fraction(layout.code.pin_depth_share.value) else "too deep"


def _pin_edge(layout: Layout, wall: WallLayout) -> str:
    if wall.wall.is_partition:  # the slab goes on under it on both sides
        return "kept"
    middle = plate_middle(wall)
    if layout.survey.unsure(middle.rests):
        return "unknown"
    return "kept" if middle >= layout.code.pin_edge.length else "near"


def _parts_the_plate(wall: WallLayout, at: Length) -> bool:
    """Say whether an upright pipe stands in the line of the studs: the top plate stops on both sides of it."""
    if not wall.plate_start < at < wall.plate_end:
        return False
    return not any(plate.box.x0 <= at <= plate.box.x1 for plate in wall.of(Kind.TOP_PLATE))


def _through(end: Facts) -> bool:
    """Say whether this wall runs through at an end where it meets another wall of the job."""
    return end["end.role"] == "through" and end["end.neighbour"] == "yes"


def _reach(wall: WallLayout) -> bool:
    return any(pipe.reach == "yes" for pipe in wall.wall.pipes)


def _yes(it: bool) -> str:
    return "yes" if it else "no"
