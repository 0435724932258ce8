"""What wallbrief comes to about outlets, boxes and cable, through the engine and the data it prints from."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from guide.checks.electrical import box_findings
from guide.layout.parts import Kind, Layout
from guide.layout.receptacles import Stretch, WallSpace, fewest, reached_from, wall_spaces, without
from guide.lengths import ZERO, Length, inches
from guide.reference.codes import load_code
from guide.reference.electrical import load_wiring
from guide.sheets.wiring import bare_hole, largest_hole
from tests.jobs import Tree, framed_door, job, laid, layout_of, new_door, outlet, wall


def _line(feet: float) -> tuple[WallSpace, list[tuple[int, int]]]:
    space = WallSpace((Stretch("A", ZERO, inches(f"{feet} ft")),))
    return space, [(0, space.wide.ticks)]


def outlets_needed(feet: float) -> float:
    """Return the fewest outlets for a wall space ended on both sides, with a place free at every inch."""
    space, bare = _line(feet)
    places = range(0, space.wide.ticks + 1, inches("1").ticks)
    return len(fewest(space, bare, places, load_code().receptacle_reach.length))


def not_reached(feet: float, outlet_at: float) -> float:
    """Return how many feet of a wall space one outlet does not reach."""
    space, bare = _line(feet)
    at = inches(f"{outlet_at} ft").ticks
    left = without(bare, reached_from(space, [at], load_code().receptacle_reach.length))
    return float(Length(sum(end - start for start, end in left)).inch) / 12


def _open(*openings: Tree) -> Layout:
    return layout_of(job([wall("196 in", left="open end", right="open end", openings=list(openings))]))


def strips_between_doors(wide: float) -> float:
    """Return how many wall spaces the strip between two doors is."""
    doors = new_door("30 in", "30 in"), new_door(f"{60 + wide} in", "30 in")
    spaces = wall_spaces(_open(*doors), load_code())
    return sum(space.stretches[0].start == inches("60") for space in spaces)


def glass_adds(fixed: float) -> float:
    """Return by how many inches the fixed part of a 72 in patio door makes the wall beside it longer."""
    door: Tree = {**framed_door("60 in", "72 in"), "outside": "yes"}
    part: Tree = {**door, "fixed": "left", "fixed_width": f"{fixed} in"}
    plain, glass = (wall_spaces(_open(each), load_code())[0].wide for each in (door, part))
    return float((glass - plain).inch)


def box_needs(gauge: str, cables: int) -> float:
    """Return the cubic inches that a box needs."""
    return float(load_wiring().fill.needs(gauge, cables))


def plate(deep: str, hole: str) -> str:
    """Say whether a hole in the middle of a stud needs a steel plate."""
    return "plate" if inches(hole) > bare_hole(inches(deep), load_code()) else "none"


def bored(deep: str, hole: str) -> str:
    """Say whether a hole may be bored in the middle of a stud that carries nothing."""
    return "fits" if inches(hole) <= largest_hole(inches(deep), load_code()) else "too large"


def ground_fault(edition: str) -> str:
    """Say which outlets of a finished basement room an edition wants protected."""
    said = [said for said, _, _ in load_wiring().rules(edition, "living") if "GFCI" in said]
    return "all" if said[0].startswith("Every outlet") else "unfinished"


def box_back(by: str) -> str:
    """Say whether a box that far behind the drywall is found."""
    built = laid(wall("196 in", boxes=[outlet("60 in")]))
    back = [
        replace(p, box=replace(p.box, y1=p.box.y1 - inches(by))) if p.kind is Kind.OUTLET else p for p in built.parts
    ]
    return "found" if list(box_findings(replace(built, parts=tuple(back)), load_code())) else "none"


def switch_at(height: str) -> str:
    """Say whether a switch at that height is found."""
    built = laid(wall("196 in", boxes=[{**outlet("60 in", height), "holds": "switch"}]))
    return "found" if list(box_findings(built, load_code())) else "none"


OURS: dict[str, Callable[..., float | str]] = {
    "outlets_needed": outlets_needed,
    "not_reached": not_reached,
    "strips_between_doors": strips_between_doors,
    "glass_adds": glass_adds,
    "box_needs": box_needs,
    "plate": plate,
    "bored": bored,
    "ground_fault": ground_fault,
    "box_back": box_back,
    "switch_at": switch_at,
}
