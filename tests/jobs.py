"""Invented jobs for the tests: a tree with usual answers, changed only where a test says so, and its layout.

    laid(wall("8 ft", pipes=[standing(at="40 in")]))        one wall
    layout_of(job([wall(), wall()], foam_thickness="3 in"))        several

Trees have the form of a job file, so what a test builds is what a person could have typed.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import cast

from guide.book.questions import load_book
from guide.interview.jobfile import from_json
from guide.interview.written import Json
from guide.layout.engine import lay_out
from guide.layout.parts import Layout, WallLayout
from guide.reference.codes import load_code
from guide.reference.figures import load_figures
from guide.survey.build import survey_from
from guide.survey.model import Survey

Tree = dict[str, Json]

BASEMENT: Tree = {
    "tape": "inches", "use": "living", "water": "dry", "cracks": "none", "suspects": "none", "soil": "no",
    "slab": "nothing", "anchors": "screws", "foam": "extruded", "foam_thickness": "2 in", "batts": "no", "zone": "zone 4",
    "heat": "leave it out", "riser": "1/2 in", "foam_sheet": "48", "block_reach": "foam", "sheets": "lying", "drywall": "1/2", "longest_stick": "8",
    "floor_finish": "1/2 in", "permit": "in hand", "office_words": "none", "code": "us 2021", "electrical": "2023",
    "radon": "low", "flames": "none", "rim": "bare", "joist_depth": "9 1/4 in", "insects": "no", "hangs": "no", "energy": "2021", "shopping": "plain",
    "evenings": "standard",
}  # fmt: skip
"""What holds for the basement unless a test says otherwise."""

WALL: Tree = {
    "left": "inside corner", "right": "inside corner",
    "left_first": "this wall", "right_first": "other wall",
    "height": ["92 in at left", "92 in at right"], "concrete": ["90 1/2 in at left", "90 1/2 in at right"],
    "string": "1 1/4 in", "lean": "0 in", "joists": "into", "joist_spacing": "16", "first_joist": "15 1/4 in",
    "shelf": "2 1/2 in", "openings": [], "pipes": [], "boxes": [], "fixtures": [], "other": "none",
}  # fmt: skip
"""A plain level wall between two inside corners: B 2 3/8, F 5 7/8, D 6 3/8; through on the left, butt on the right."""


def wall(length: str | None = None, /, **answers: Json) -> Tree:
    """Return a wall: the plain one, with these answers. `length` is one tape reading, taken at the floor; else 144 in."""
    return {**WALL, "length": [f"{length or '144 in'} at floor"], **answers}


def uneven(*edges: str) -> Tree:
    """Return the answers of a wall into which unevenly spaced joists run, their near edges as a person says them."""
    return {"joist_spacing": "uneven", "joist_edges": ", ".join(edges)}


def alongside(gap: str = "14 1/2 in") -> Tree:
    """Return the answers of a wall that the joists run alongside."""
    return {"joists": "alongside", "parallel_gap": gap}


def level(height: str, concrete: str) -> Tree:
    """Return the height answers of a level slab."""
    return {
        "height": [f"{height} at left", f"{height} at right"],
        "concrete": [f"{concrete} at left", f"{concrete} at right"],
    }


def window(left: str, width: str = "32 in", tall: str = "24 in", sill: str = "48 in", **told: Json) -> Tree:
    """Return a window in the concrete, its frame 5 in behind the face unless told otherwise."""
    lining: Tree = {"depth": "5 in", "tapers": "alike"}
    return {"kind": "window", "left": left, "width": width, "tall": tall, "sill": sill, **lining, **told}


def tapering(upper_left: str, upper_right: str, lower_left: str, lower_right: str) -> Tree:
    """Return how far behind the concrete a window's frame stands at its four corners."""
    return {
        "depth": upper_left, "tapers": "differ", "depth_upper_right": upper_right, "depth_lower_left": lower_left,
        "depth_lower_right": lower_right,
    }  # fmt: skip


def new_door(left: str, width: str = "32 in", height: str = "80 in") -> Tree:
    """Return a new door; `width` and `height` are its leaf."""
    return {
        "kind": "new door", "left": left, "leaf_width": width, "leaf_height": height, "hinge": "left", "outside": "no",
    }  # fmt: skip


def framed_door(left: str, width: str = "34 1/2 in", height: str = "82 in", jamb: str = "5 in") -> Tree:
    """Return a door whose frame stands already."""
    return {
        "kind": "framed door", "left": left, "frame_width": width, "frame_height": height, "jamb": jamb, "twist": "0 in",
        "outside": "no",
    }  # fmt: skip


def kept_free(left: str, width: str = "30 in", floor: str = "72 in") -> Tree:
    """Return a place kept free for an electrical panel."""
    return {"kind": "kept free", "left": left, "free_width": width, "keeps": "panel", "free_floor": floor}


def partition(left: str, width: str = "3 1/2 in") -> Tree:
    """Return a partition that meets the wall; `left` is the left side of its studs."""
    return {"kind": "partition", "left": left, "partition_width": width}


def partition_wall(
    length: str | None = None, /, meets: tuple[str | None, str | None] = ("A", None), **answers: Json
) -> Tree:
    """Return a plain partition, told as a wall: its ends meet walls of these letters, or nothing. Else like `wall`."""
    kept = ("height", "joists", "joist_spacing", "first_joist", "openings", "boxes", "fixtures", "other", "length")
    tree: Tree = {key: value for key, value in wall(length).items() if key in kept}
    for side, letter in zip(("left", "right"), meets, strict=True):
        tree[f"{side}_meets"] = "open end" if letter is None else "wall of this job"
        if letter is not None:
            tree[f"{side}_wall"] = letter
    return {"name": "partition", "stands": "partition", **tree, **answers}


def stands(left: str, what: str, width: str, **told: Json) -> Tree:
    """Return a place kept free for a column, a pit or an appliance."""
    return {"kind": "kept free", "left": left, "free_width": width, "keeps": what, **told}


def hanging(left: str, width: str = "6 in", drop: str = "9 1/4 in", clear: str = "1/2 in") -> Tree:
    """Return the end of a beam that hangs under the joists."""
    return {"kind": "beam or duct", "left": left, "over_width": width, "over_drop": drop, "over_clear": clear}


def standing(at: str, wide: str = "3 1/2 in", out: str = "4 1/2 in") -> Tree:
    """Return an upright pipe with its centre at `at`."""
    return {"run": "standing", "carries": "drain", "at": at, "wide": wide, "out": out, "reach": "no"}


def lying(start: str, end: str, low: str = "40 in", wide: str = "1 in", out: str = "1 1/2 in") -> Tree:
    """Return a level pipe along the wall, a vent."""
    return {
        "run": "lying", "carries": "drain", "from": start, "to": end, "low_left": low, "low_right": low,
        "flows": "none", "wide": wide, "out": out, "hubs": "no", "reach": "no",
    }  # fmt: skip


def outlet(at: str, height: str = "16 in", kind: str = "new") -> Tree:
    """Return an electrical box."""
    return {"kind": kind, "at": at, "height": height}


def fixture(start: str, end: str, low: str = "48 in", what: str = "shelf", high: str | None = None) -> Tree:
    """Return something that will hang on the wall, its lowest screws at `low` and its highest, if it has two rows, at `high`."""
    tree: Tree = {"what": what, "from": start, "to": end, "low": low}
    return tree if high is None else {**tree, "high": high}


def job(walls: Sequence[Tree], **basement: Json) -> Tree:
    """Return a job of these walls, with these answers for the basement."""
    return {"format": 1, "note": "Invented.", "basement": {**BASEMENT, **basement}, "walls": cast(Json, list(walls))}


def ring(walls: Sequence[Tree], **basement: Json) -> Tree:
    """Return a job of four walls that close the room: every end is an inside corner with the next wall."""
    return job(walls, ring="yes", **basement)


def l_room() -> Tree:
    """Return an L-shaped room of six walls; the corner between the third and the fourth is an outside one."""
    lengths = ("216 in", "120 in", "96 in", "72 in", "120 in", "192 in")
    turns = ("inside", "inside", "outside", "inside", "inside", "inside")
    return job(
        [wall(n, right=f"{turn} corner", right_first="you choose") for n, turn in zip(lengths, turns, strict=True)],
        ring="yes",
    )


def survey_of(tree: Tree) -> Survey:
    """Return the survey of a job."""
    book = load_book()
    return survey_from(book, from_json(tree, book).answers)


def layout_of(tree: Tree) -> Layout:
    """Return the layout of a job."""
    return lay_out(survey_of(tree), load_code(), load_figures())


def laid(tree: Tree, **basement: Json) -> WallLayout:
    """Return the layout of a job of this one wall."""
    (only,) = layout_of(job([tree], **basement)).walls
    return only
