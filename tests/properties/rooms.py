"""Random basements: readings that a tape could give, at legal places, and often at awkward ones.

Things on a wall are set down from the left with a gap drawn for each, so that they never overlap, yet stand in corners
and near each other as often as apart. Every size is a whole number of sixteenths of an inch.
"""

from __future__ import annotations

from fractions import Fraction
from typing import cast

from hypothesis import strategies as st

from guide.interview.answers import wall_letter
from guide.interview.written import Json
from tests.jobs import (
    Tree,
    alongside,
    fixture,
    framed_door,
    hanging,
    job,
    kept_free,
    lying,
    new_door,
    outlet,
    partition,
    partition_wall,
    standing,
    stands,
    tapering,
    uneven,
    wall,
    window,
)


def tape(sixteenths: int) -> str:
    """Return so many sixteenths of an inch as they are written."""
    value = Fraction(sixteenths, 16)
    whole, rest = divmod(abs(value), 1)
    text = f"{whole} {rest}" if rest and whole else str(rest or whole)
    return f"{'-' if sixteenths < 0 else ''}{text} in"


def sizes(least: int, most: int, step: int = 1) -> st.SearchStrategy[int]:
    """Draw a size between two whole inches, in sixteenths, a multiple of `step` sixteenths."""
    return st.integers(least * 16 // step, most * 16 // step).map(lambda n: n * step)


LENGTHS = st.one_of(sizes(24, 60), sizes(96, 240), sizes(120, 400))
UNDER = st.sampled_from((24, 24, 24, 26, 28, 48, 12, 8, 0, 96, 640))
"""How far the concrete ends under the joists: usually one sill, now and then a wood wall."""
ENDS = ("inside corner", "inside corner", "outside corner", "framed wall", "open end")
GAPS = st.one_of(sizes(0, 8), sizes(8, 60), sizes(30, 120))


@st.composite
def openings(draw: st.DrawFn, at: int, room: int, height: int) -> tuple[Tree, int]:
    """Draw an opening at a place, and return it with its width."""
    kind = draw(st.integers(0, 4))
    if kind == 4:
        wide = draw(sizes(2, 24))
        return hanging(tape(at), tape(wide), tape(draw(sizes(1, 24))), tape(draw(sizes(1, 6)))), wide
    wide = min(draw(sizes(8, 72) if kind == 0 else sizes(18, 48)), max(room, 18 * 16))
    tall = min(height, draw(sizes(60, 96)))
    if kind == 0:
        tall = draw(sizes(6, 40))
        sill = min(draw(sizes(0, 60)), height - tall)
        depths = [tape(draw(sizes(0, 12))) for _ in range(4 if draw(st.booleans()) else 1)]
        told = tapering(*depths) if len(depths) == 4 else {"depth": depths[0]}
        return window(tape(at), tape(wide), tape(tall), tape(sill), **told), wide
    if kind == 1:
        return new_door(tape(at), tape(min(wide, 48 * 16)), tape(tall)), wide
    if kind == 2:
        column = stands(tape(at), "column", tape(wide), thing_wide="4 in")
        return (kept_free(tape(at), tape(wide)) if draw(st.booleans()) else column), wide
    door = framed_door(tape(at), tape(wide), tape(tall), tape(draw(sizes(0, 9))))
    return {**door, "outside": "no" if wide % 2 else "yes"}, wide


@st.composite
def stacks(draw: st.DrawFn, at: int) -> tuple[Tree, int]:
    """Draw an upright pipe with its left edge at a place, and return it with its width."""
    wide = max(4, 2 * draw(sizes(0, 4) if draw(st.integers(0, 3)) else sizes(4, 10)))
    return standing(tape(at + wide // 2), tape(wide), tape(draw(sizes(1, 9)))), wide


@st.composite
def things(draw: st.DrawFn, length: int, height: int) -> tuple[list[Tree], list[Tree]]:
    """Draw up to four openings and upright pipes from the left as long as there is room, and perhaps a lying pipe."""
    found: tuple[list[Tree], list[Tree]] = ([], [])
    at = draw(GAPS)
    for _ in range(draw(st.integers(0, 4))):
        which = draw(st.integers(0, 1))
        thing, wide = draw(stacks(at) if which else openings(at, length - at, height))
        if at + wide > length:
            break
        found[which].append(thing)
        at += wide + draw(GAPS)
    if draw(st.integers(0, 4)) == 0:
        start = draw(sizes(0, 20))
        end = min(length, start + draw(sizes(2, 120)))
        wide = draw(sizes(1, 3))
        low, out = draw(sizes(2, 60)), wide + draw(sizes(0, 3))
        pipe = lying(tape(start), tape(end), tape(low), tape(wide), tape(out))
        pipe["low_right"] = tape(max(0, low - draw(sizes(-2, 4))))
        pipe["along"] = draw(st.sampled_from(("you choose", "box", "notches")))
        if draw(st.booleans()):
            places = sorted(draw(st.sets(sizes(1, max(2, length // 16)), min_size=1, max_size=3)))
            fittings: list[Json] = [f"{tape(draw(sizes(1, 8)))} at {tape(at)}" for at in places]
            pipe |= {"hubs": "yes", "bare": tape(max(4, out - draw(sizes(0, 2)))), "fittings": fittings}
        found[1].append(pipe)
    return found


@st.composite
def boxes(draw: st.DrawFn, length: int) -> list[Tree]:
    """Draw up to three electrical boxes anywhere."""
    return [
        outlet(
            tape(draw(st.integers(0, length))), tape(draw(sizes(2, 60))), ("new", "existing")[draw(st.integers(0, 1))]
        )
        for _ in range(draw(st.integers(0, 3)))
    ]


@st.composite
def fixtures(draw: st.DrawFn, length: int) -> list[Tree]:
    """Draw up to two things that will hang anywhere, before openings and pipes too."""
    found = []
    for _ in range(draw(st.integers(0, 2)) if draw(st.booleans()) else 0):
        start = draw(st.integers(0, length - 16))
        end, low = draw(st.integers(start + 1, length)), draw(sizes(2, 90))
        what = ("screen", "cabinets", "shelf", "rail", "curtain rod", "soffit")[draw(st.integers(0, 5))]
        high = tape(low + draw(sizes(0, 30))) if what in ("screen", "cabinets") else None
        found.append(fixture(tape(start), tape(end), tape(low), what, high))
    return found


@st.composite
def profiles(
    draw: st.DrawFn, length: int, left: int | None = None, right: int | None = None, under: int | None = None
) -> tuple[Tree, int]:
    """Draw readings of joists and concrete, and return them with the lowest joist; what is given is kept."""
    usual = draw(sizes(84, 98)) if draw(st.integers(0, 4)) else draw(sizes(62, 110))
    swing = sizes(-1, 1) if draw(st.integers(0, 5)) else sizes(-12, 12)
    under = draw(UNDER) if under is None else under
    points: list[tuple[str, int]] = [("left", left if left is not None else max(60 * 16, usual + draw(swing)))]
    if draw(st.booleans()) and length > 40 * 16:
        points.append((tape(draw(st.integers(16, length - 16))), max(60 * 16, usual + draw(swing))))
    points.append(("right", right if right is not None else max(60 * 16, usual + draw(swing))))
    answers: Tree = {
        "height": [f"{tape(h)} at {at}" for at, h in points],
        "concrete": [f"{tape(max(24 * 16, h - under))} at {at}" for at, h in points],
    }
    return answers, min(h for _, h in points)


@st.composite
def uneven_joists(draw: st.DrawFn, length: int) -> Tree:
    """Draw joists that drift, are doubled or missing, read up to somewhere along a wall."""
    at = draw(sizes(0, 20))
    edges = [tape(at)]
    for _ in range(draw(st.sampled_from((0, 3, 40)))):
        edges[-1] += " doubled" if draw(st.integers(0, 5)) == 0 else ""
        at += draw(sizes(12, 18)) * draw(st.sampled_from((1, 1, 1, 1, 2)))
        if at > length:
            break
        edges.append(tape(at))
    return uneven(*edges)


@st.composite
def walls(
    draw: st.DrawFn,
    *,
    plain: bool = False,
    corners: tuple[int | None, int | None] = (None, None),
    under: int | None = None,
) -> Tree:
    """Draw one wall; `plain` leaves it without things, `corners` are joist heights at its ends."""
    length = draw(LENGTHS)
    heights, low = draw(profiles(length, *corners, under))
    answers: Tree = dict(heights)
    for side in ("left", "right"):
        what = draw(st.sampled_from(ENDS))
        answers[side] = cast(Json, what)
        if what == "framed wall":
            answers[f"{side}_framed"] = tape(draw(sizes(0, 12)))
    answers["left_first"] = ("this wall", "other wall")[draw(st.integers(0, 1))]
    answers["right_first"] = ("this wall", "other wall", "you choose")[draw(st.integers(0, 2))]
    answers["cap"] = ("you choose", "you choose", "on the concrete", "under the joists")[draw(st.integers(0, 3))]
    answers["string"] = tape(draw(sizes(0, 2, 2)))
    if draw(st.booleans()):
        places = ("left", tape(length // 3), tape(length // 2), "right")
        answers["string"] = [f"{tape(draw(sizes(0, 2, 2)))} at {at}" for at in places]
    answers["lean"] = tape(draw(st.sampled_from((0, 0, 2, 8))))
    answers["shelf"] = tape(draw(st.sampled_from((40, 40, 72, 0, 8, -16))))
    if draw(st.booleans()):
        answers |= alongside(tape(draw(st.sampled_from((232, 232, 64, 16, 0)))))
    elif draw(st.integers(0, 3)) == 0:
        answers |= draw(uneven_joists(length))
    else:
        answers["joist_spacing"] = ("16", "12", "19.2", "24")[draw(st.integers(0, 3))]
        answers["first_joist"] = tape(draw(sizes(0, 20)))
    if not plain:
        holes, pipes = draw(things(length, low))
        answers["openings"], answers["pipes"] = cast(Json, holes), cast(Json, pipes)
        answers["boxes"] = cast(Json, draw(boxes(length)))
        answers["fixtures"] = cast(Json, draw(fixtures(length)))
    return wall(tape(length), **answers)


@st.composite
def basements(draw: st.DrawFn) -> Tree:
    """Draw the answers for the whole basement."""
    return {
        "foam_thickness": tape(draw(st.sampled_from((32, 16, 24, 48, 96, 8)))),
        "foam_sheet": ("48", "24")[draw(st.integers(0, 1))],
        "block_reach": ("foam", "concrete")[draw(st.integers(0, 1))],
        "sheets": ("lying", "standing", "you choose")[draw(st.integers(0, 2))],
        "stud": draw(st.sampled_from(("2x4", "2x4", "2x4", "2x3"))),
        "drywall": ("1/2", "5/8")[draw(st.integers(0, 1))],
        "longest_stick": ("8", "10", "12", "16")[draw(st.integers(0, 3))],
        "floor_finish": tape(draw(sizes(0, 2))),
    }


@st.composite
def single_walls(draw: st.DrawFn, *, plain: bool = False) -> Tree:
    """Draw a job of one wall."""
    return job([draw(walls(plain=plain))], **draw(basements()))


_IN, _OUT = "inside corner", "outside corner"
TURNS = (
    (_IN, _IN), (_OUT, _IN), (_IN, _OUT, _IN), (_OUT, _OUT, _IN), (_IN, _IN, _OUT, _IN),
    (_IN, _IN, _IN, _IN), (_IN, _IN, _IN, _IN), (_IN, _OUT, _IN, _IN, _IN, _IN), (_IN, _IN, _IN, _IN, _IN, _OUT),
)  # fmt: skip
"""Corners at the right end of each wall; that of the last wall counts only where they close the room."""


@st.composite
def rooms(draw: st.DrawFn) -> Tree:
    """Draw a job of two to six walls joined by corners of both kinds, open or closed; corners have one height.

    Four inside corners close a room, and so do five with one outside corner among them.
    """
    turns = draw(st.sampled_from(TURNS))
    count = len(turns)
    heights = [draw(sizes(86, 98)) for _ in range(count + 1)]
    closed = turns.count("inside corner") - turns.count("outside corner") == 4
    if closed:
        heights[-1] = heights[0]
    under = draw(UNDER) if draw(st.integers(0, 3)) else None
    each: list[Tree] = []
    for number in range(count):
        tree: Tree = draw(walls(corners=(heights[number], heights[number + 1]), under=under))
        if number < count - 1 or closed:
            tree["right"] = turns[number]
        into: Tree = {"joists": "into", "joist_spacing": "16", "first_joist": "15 1/4 in"}
        tree |= into if number % 2 else alongside()
        each.append(tree)
    basement: Tree = draw(basements())
    if closed:
        basement["ring"] = "yes" if turns[-1] == "inside corner" else "outside"
    return job(each, **basement)


@st.composite
def parted_rooms(draw: st.DrawFn) -> Tree:
    """Draw a room and a partition from one of its walls, with a door and boxes anywhere, to nothing or to another wall.

    The walls mostly tell it among their openings, where there is room for that or where there is none.
    """
    room: Tree = draw(rooms())
    others = cast(list[Tree], room["walls"])
    length = draw(sizes(30, 240))
    drawn: Tree = draw(walls(plain=True))
    meets: list[str | None] = []
    for _ in range(2):
        number = draw(st.integers(0, len(others)))
        meets.append(wall_letter(number) if number < len(others) else None)
        if number < len(others) and draw(st.integers(0, 3)):
            there = cast(list[Json], others[number]["openings"])
            others[number] = {**others[number], "openings": [*there, partition(tape(draw(sizes(0, 200))))]}
    overhead = ("joists", "parallel_gap", "joist_spacing", "first_joist", "joist_edges")
    told = {
        key: value for key, value in partition_wall(tape(length), (meets[0], meets[1])).items() if key not in overhead
    }
    told |= {key: drawn[key] for key in overhead if key in drawn}
    told["height"] = [f"{tape(draw(sizes(84, 98)))} at {at}" for at in ("left", "right")]
    if draw(st.booleans()):
        told["openings"] = [new_door(tape(draw(sizes(0, 100))))]
    told["boxes"] = cast(Json, draw(boxes(length)))
    told["fixtures"] = cast(Json, draw(fixtures(length)))
    return {**room, "walls": cast(Json, [*others, told])}
