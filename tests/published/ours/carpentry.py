"""What wallbrief comes to about studs, nails, blocks and sizes, from whole walls as laid out."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import cast

from guide.buying.lines import packs_for
from guide.checks.check import check
from guide.interview.written import Json
from guide.layout.drywall import sheets_in
from guide.layout.engine import lay_out
from guide.layout.parts import Kind, WallLayout
from guide.lengths import ZERO, Length, exact_inches, inches
from guide.reference.codes import load_code
from guide.reference.figures import load_figures
from tests.jobs import Tree, alongside, job, laid, layout_of, level, lying, new_door, ring, survey_of, wall, window

OPEN: Tree = {"left": "open end", "right": "open end"}


def open_wall(feet: float, sheets: str = "lying") -> WallLayout:
    """Return a wall between two open ends with nothing in it; it may be longer than a job takes."""
    survey = survey_of(job([wall("12 ft", **OPEN)], sheets=sheets))
    (only,) = survey.walls
    longer = replace(survey, walls=(replace(only, length=inches(f"{feet} ft")),))
    (layout,) = lay_out(longer, load_code(), load_figures()).walls
    return layout


def studs(feet: float) -> float:
    """Return how many studs stand in a wall that long."""
    return len(open_wall(feet).of(Kind.STUD))


def corner_studs() -> float:
    """Return how many studs the four corners of a room take besides the one each wall ends with."""
    room = layout_of(ring([wall(n, right_first="you choose") for n in ("20 ft", "15 ft", "20 ft", "15 ft")]))
    near = inches("5")
    at_corners = 0
    for each in room.walls:
        at_corners += sum(
            p.box.x1 <= each.plate_start + near or p.box.x0 >= each.plate_end - near
            for p in each.of(Kind.STUD, Kind.PACK)
        )
    return at_corners - len(room.walls)


def stud_mark(number: int, panel: str) -> float:
    """Return the near edge of a stud from the left end of the plate; `panel` is up already on the crossing wall, or `none`."""
    if panel == "none":
        layout = open_wall(12)
    else:
        room = layout_of(
            ring([wall(n, right_first="you choose") for n in ("20 ft", "15 ft", "20 ft", "15 ft")], drywall=panel)
        )
        layout = room.walls[1]
    return float(layout.mark_of(layout.of(Kind.STUD)[number].box.x0).inch)


def sheet_edge(number: int) -> float:
    """Return where an upright joint of drywall that stands falls in a wall of 12 ft, in inches."""
    return float(laid(wall("12 ft", **OPEN), sheets="standing").sheet_edges[number].inch)


def blocks_between(feet: float, code: str = "us 2021") -> float:
    """Return how many upright fireblocks stand between the two at the ends of a closed wall, by a code."""
    survey = survey_of(job([wall(f"{feet} ft", right_first="this wall")], code=code))
    return len(lay_out(survey, load_code(code), load_figures()).walls[0].of(Kind.FIREBLOCK)) - 2


def fireblock(material: str, code: str) -> str:
    """Return whether what the blocks are cut from is found fault with by a code."""
    return _found("block_material", job([wall("196 in")], block_material=material), code)


def well(wide: str, out: str) -> str:
    """Return the same of the well outside a window that somebody climbs out of."""
    window_there = window("40 in", "40 in", "40 in", "40 in") | {"well_wide": wide, "well_out": out}
    return _found("well_small", job([wall("196 in", openings=[window_there])], use="sleeping"))


def nails(kind: str, fastener: str, count: int) -> float:
    """Return how many of a fastener hold so many parts of a kind, from a wall that has at least as many."""
    layout = laid(wall("208 in", **OPEN, openings=_door())) if kind == "trimmer" else laid(wall("208 in", **OPEN))
    if kind == "joist block":
        layout = laid(wall(**alongside()))
    parts = layout.of(Kind(kind))[:count]
    assert len(parts) == count
    return sum(held.count for part in parts for held in part.fastenings if held.fastener == fastener)


def _door() -> list[Json]:
    return [new_door("80 in")]


def stud_cut(height: str) -> float:
    """Return the length of a stud under level joists so high, in inches."""
    under = _inches(inches(height) - inches("1 1/2"))
    return float(laid(wall(**level(height, under))).of(Kind.STUD)[0].cut.inch)


def face_off(foam: str, string: str, drywall: str) -> float:
    """Return how far the face of the drywall stands from the concrete, in inches."""
    return float(laid(wall(string=string), foam_thickness=foam, drywall=drywall).offsets.drywall.inch)


def door_hole(leaf: str, which: str) -> float:
    """Return the framed hole of a new door with no floor finish: `wide` or `high`, in inches."""
    layout = laid(wall("144 in", **OPEN, openings=[new_door("50 in", leaf)]), floor_finish="0 in")
    left, right = layout.of(Kind.TRIMMER)
    head = layout.of(Kind.HEADER)[0].box.z0.at(layout.wall, inches("66"))
    return float((right.box.x0 - left.box.x1).inch if which == "wide" else head.inch)


def plywood_thick(kind: str) -> float:
    """Return the thickness that a cap or a fireblock takes, in inches."""
    part = laid(wall(), block_reach="concrete").of(Kind(kind))[0]
    thick = part.box.z1.off - part.box.z0.off if part.kind is Kind.CAP else part.box.x1 - part.box.x0
    return float(thick.inch)


def stud_size(which: str) -> float:
    """Return a stud's `thickness` or `depth` in inches."""
    box = laid(wall()).of(Kind.STUD)[0].box
    return float((box.x1 - box.x0 if which == "thickness" else box.y1 - box.y0).inch)


def way_of_pipe(deep: str) -> str:
    """Return how a pipe along the wall that would need a notch so deep is passed: `notch` or `shift`."""
    back, clear = inches("2 3/8"), load_figures().notch_clear
    out = _inches(back + inches(deep) - clear)
    layout = laid(wall(pipes=[lying("60 in", "84 in", low="40 in", wide="1 in", out=out)]))
    return next(d.saying.key for d in layout.decisions if d.id == "A.pipe1.way").removeprefix("decision.pipe_")


def treated(kind: str) -> str:
    """Return what a plate is cut from."""
    return laid(wall()).of(Kind(kind))[0].material.value


def drywall_sheets(feet: float) -> float:
    """Return how many sheets of drywall stand before a wall so long."""
    return len(sheets_in(open_wall(feet, "standing").of(Kind.DRYWALL), load_figures().sheet_long))


def with_spare(count: int, spare: int, pack: int) -> float:
    """Return how many packs of so many are bought for a count and so many percent over."""
    return packs_for(count, pack, spare)


def flue(kind: str, off: str) -> str:
    """Return whether a flue 6 in thick is found too near that stands so far before the studs of a plain wall."""
    out = _inches(laid(wall("196 in")).offsets.face + inches(off) + inches("6"))
    pipe = {
        "run": "standing",
        "carries": "flue",
        "flue": kind,
        "at": "80 in",
        "wide": "6 in",
        "out": out,
        "reach": "no",
    }
    return _found("flue_close", job([wall("196 in", pipes=[cast(Json, pipe)])]))


def radon() -> float:
    """Return the radon in the air from which a house is to be mended, pCi/L."""
    return float(load_code().radon.value)


def screws(drywall: str) -> float:
    """Return how many screws hold a sheet of drywall 4 ft wide and 8 ft tall that stands before four studs."""
    layout = laid(wall("144 in", **OPEN, **level("98 in", "96 1/2 in")), sheets="standing", drywall=drywall)
    whole = [sheet for sheet in layout.of(Kind.DRYWALL) if sheet.wide == inches("48")]
    return whole[0].fastenings[0].count


def finding(key: str, **answers: str) -> str:
    """Return whether a finding comes of a plain wall with these answers of the basement: `found` or `nothing found`."""
    return _found(key, job([wall("196 in")], **answers))


def headroom(height: str, floor: str) -> str:
    """Return the same of the headroom under joists so high over the slab, with a floor so thick."""
    under = _inches(inches(height) - inches("1 1/2"))
    tree = job([wall(**level(height, under))], floor_finish=floor)
    return "found" if "found" in (_found("headroom", tree), _found("headroom_floor", tree)) else "nothing found"


def wide_opening(width: str) -> str:
    """Return the same of the header over a framed hole so wide; its liner is added to what is measured."""
    return _found("header_wide", job([wall("20 ft", openings=[window("40 in", _lined(width))])]))


def escape(wide: str, high: str, sill: str, floor: str, well: str = "0 in") -> str:
    """Return the same of a room to sleep in with a window whose finished opening, sill over the slab and well are these."""
    finish = inches("1/2")
    opening = window("40 in", _lined(wide, finish), _lined(high, finish), _inches(inches(sill) - _lining() - finish))
    opening |= {"well_wide": well, "well_out": well}
    return _found("sleeping", job([wall("196 in", openings=[opening])], use="sleeping", floor_finish=floor))


def slab_edge(middle: str) -> str:
    """Return the same of fasteners in the middle of a plate so far from the edge of the slab."""
    foam = inches(middle) - load_figures().stud_deep // 2 - load_figures().glue_bed
    return _found("slab_edge", job([wall("196 in", string="1 1/2 in")], foam_thickness=_inches(foam)))


def _lined(size: str, more: Length = ZERO) -> str:
    """Return the hole in the concrete for a framed hole so large, `more` on every side."""
    return _inches(inches(size) + (_lining() + more) * 2)


def _lining() -> Length:
    figures = load_figures()
    return figures.window_buck + figures.window_return_foam


def _inches(length: Length) -> str:
    return f"{exact_inches(length)} in"


def _found(key: str, tree: Tree, code: str = "us 2021") -> str:
    found = {each.key for each in check(layout_of(tree), load_code(code))}
    return "found" if key in found else "nothing found"


OURS: dict[str, Callable[..., float | str]] = {
    each.__name__: each
    for each in (
        studs, corner_studs, stud_mark, sheet_edge, blocks_between, nails, stud_cut, face_off, door_hole, plywood_thick,
        stud_size, way_of_pipe, treated, finding, headroom, wide_opening, escape, slab_edge,
        screws, fireblock, well, drywall_sheets, with_spare, radon, flue,
    )
}  # fmt: skip
