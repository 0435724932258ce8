"""The walk before the inspector comes: one line for each place along a wall, from the left, with what to look for there."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from guide.layout.parts import Kind, Part
from guide.lengths import Length
from guide.order.facts import SIDES, Side, end_at, end_stud, hidden_blocks, pack_at
from guide.reference.sayings import SayingValue, say, saying
from guide.sheets.view import WallView
from guide.survey.room import thing_name


@dataclass(frozen=True, slots=True)
class Look:
    """One place to look at."""

    at: str
    """Its left edge and, where it has one, its right edge, from the left end of the plates; empty for the whole wall."""
    what: str


@dataclass(frozen=True, slots=True)
class _Spot:
    x: Length
    to: Length | None
    rests: frozenset[str]
    what: str


def walk_of(view: WallView) -> list[Look]:
    """Return every place to look at on a wall, from the left, and last what holds for the whole of it."""
    spots = [*_ends(view), *_wood(view), *_pipes(view), *_boxes(view), *_openings(view)]
    ordered = sorted(spots, key=lambda spot: (spot.x, spot.what))
    return [Look(_where(view, spot), spot.what) for spot in ordered] + [Look("", what) for what in _whole(view)]


def _where(view: WallView, spot: _Spot) -> str:
    left = view.mark(spot.x, spot.rests)
    return left if spot.to is None else f"{left} to {view.mark(spot.to, spot.rests)}"


def _said(view: WallView, key: str, **values: SayingValue) -> str:
    return say(saying(key, **values), view.plan.tape, view.plan.guessed)


def _at(part: Part, what: str) -> _Spot:
    return _Spot(part.box.x0, part.box.x1, part.place_rests, what)


def _ends(view: WallView) -> Iterator[_Spot]:
    for side in SIDES:
        stud, pack = end_stud(view.wall, side), pack_at(view.wall, side)
        if stud is not None:
            yield _at(stud, _said(view, "look.end", stud=stud.mark, side=side, to=_nailed_to(view, side)))
        if pack is not None:
            marks = ", ".join(block.mark for block in hidden_blocks(view.wall, side))
            behind = saying("look.pack_block", marks=marks) if marks else saying("look.pack_hollow")
            yield _at(pack, _said(view, "look.pack", mark=pack.mark, side=side, behind=behind))


def _nailed_to(view: WallView, side: Side) -> SayingValue:
    end = end_at(view.wall, side)
    inside = end.what == "inside corner" and end.through is False and end.neighbour is not None
    return saying("look.end_pack", wall=end.neighbour or "") if inside else ""


def _wood(view: WallView) -> Iterator[_Spot]:
    wall = view.wall
    top = {1: "cap", 2: "top plate", 3: "ledge"}[wall.cap_case]
    mates = {mate.box.x0 for mate in wall.of(Kind.UPPER_BLOCK)}
    for block in wall.of(Kind.FIREBLOCK):
        stud = view.stud_beside(block)
        beside = stud.mark if stud else "its stud"
        reach = "concrete" if view.plan.survey.basement.block_reach == "concrete" else "foam"
        if wall.wall.concrete.steps:
            top = "ledge" if block.box.x0 in mates else "top plate"
        yield _at(block, _said(view, "look.block", mark=block.mark, stud=beside, top=top, reach=reach))
    for mate in wall.of(Kind.UPPER_BLOCK):
        yield _at(mate, _said(view, "look.mate", mark=mate.mark))
    for lap in wall.of(Kind.CAP_LAP):
        yield _at(lap, _said(view, "look.cap_joint", mark=lap.mark))
    for lap in wall.of(Kind.LEDGE_LAP):
        yield _at(lap, _said(view, "look.ledge_joint", mark=lap.mark))
    for left, right in pairwise(wall.of(Kind.TOP_PLATE)):
        if left.box.x1 == right.box.x0:
            said = _said(view, "look.plate_joint", left=left.mark, right=right.mark)
            yield _Spot(right.box.x0, None, right.place_rests, said)
    for plate in wall.of(Kind.BOTTOM_PLATE):
        at = [x for held in plate.fastenings[:1] for x in held.at]
        if at:
            first, last = (view.mark(x, plate.place_rests) for x in (at[0], at[-1]))
            yield _at(plate, _said(view, "look.anchors", mark=plate.mark, first=first, last=last))


def _pipes(view: WallView) -> Iterator[_Spot]:
    for pipe in view.wall.wall.pipes:
        what, rests = thing_name(pipe.place), pipe.rests
        if pipe.run == "standing":
            said = _said(view, "look.pipe", what=what, carries=pipe.carries)
        else:
            low, high = pipe.heights
            said = _said(view, "look.lying", what=what, carries=pipe.carries, low=low, high=high)
        yield _Spot(pipe.left_edge, pipe.right_edge, rests, said)
        if pipe.reach == "yes" and pipe.reach_height is not None:
            said = _said(view, "look.reach", what=what, height=pipe.reach_height)
            yield _Spot(pipe.left_edge, pipe.right_edge, rests, said)


def _boxes(view: WallView) -> Iterator[_Spot]:
    for box in view.wall.of(Kind.OUTLET):
        middle = box.box.z0.off + (box.box.z1.off - box.box.z0.off) // 2
        yield _at(box, _said(view, "look.box", mark=box.mark, height=view.size(middle)))


def _openings(view: WallView) -> Iterator[_Spot]:
    keys = {"window": "look.window", "kept free": "look.free", "beam or duct": "look.hangs"}
    for opening in view.wall.wall.openings:
        said = _said(view, keys.get(opening.kind, "look.door"), what=thing_name(opening.place))
        yield _Spot(opening.left, opening.right, opening.rests, said)


def _whole(view: WallView) -> Iterator[str]:
    wall = view.wall
    blocks = wall.of(Kind.JOIST_BLOCK)
    if blocks:
        first, last = (view.mark(block.box.x0, block.place_rests) for block in (blocks[0], blocks[-1]))
        yield _said(view, "look.joist_blocks", count=len(blocks), first=first, last=last)
    if wall.of(Kind.RIM):
        yield _said(view, "look.rim", count=len(wall.of(Kind.RIM)))
    if wall.wall.is_partition:
        return
    yield _said(view, "look.foam", count=len(wall.of(Kind.FOAM)))
    if wall.of(Kind.CAP):
        where = saying("look.cap_on_concrete" if wall.cap_case == 1 else "look.cap_under_joists")
        yield _said(view, "look.cap", where=where)
    else:
        yield _said(view, "look.no_cap")
    if wall.of(Kind.LEDGE):
        yield _said(view, "look.ledge")
