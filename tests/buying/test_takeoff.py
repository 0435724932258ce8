"""The takeoff equals the parts: every quantity counted a second way, on the faces of the parts and on the printed pages."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from itertools import pairwise
from math import ceil

from hypothesis import given, settings
from hypothesis import strategies as st

from guide.book.questions import load_book
from guide.buying.lines import lines_of
from guide.buying.seams import batts_of, runs_of
from guide.buying.takeoff import takeoff
from guide.layout.parts import FULL_HEIGHT, Kind, Layout, Part, WallLayout
from guide.lengths import ZERO, Length, inches
from guide.reference.figures import load_figures
from guide.reference.stock import FasteningRule, load_fasteners, load_stock
from guide.sheets.plan import make_plan
from tests.jobs import Tree, laid, layout_of, new_door, wall
from tests.properties.rooms import parted_rooms, rooms, single_walls
from tests.properties.seen import joists
from tests.walkthroughs import worked

FIGURES = load_figures()
any_job = given(tree=st.one_of(single_walls(), rooms(), parted_rooms()))


def count_by_rule(layout: Layout) -> Counter[str]:
    """Count fasteners from the rules of the data and the boxes of the parts, not from what the parts carry."""
    counts: Counter[str] = Counter()
    for each in layout.walls:
        for rule in load_fasteners().rule:
            if rule.anchors not in (None, layout.survey.basement.anchors):
                continue
            for part in each.parts:
                if part.kind.value == rule.kind or (rule.kind == "end stud of a butt wall" and butts(each, part)):
                    counts[rule.fastener] += of_one(each, part, rule)
    return counts


def butts(each: WallLayout, part: Part) -> bool:
    """Say whether a stud closes an end at which this wall butts."""
    at = {True: (each.plate_start, each.left), False: (each.plate_end, each.right)}
    return part.kind is Kind.STUD and any(
        end.through is False and x == (part.box.x0 if left else part.box.x1) for left, (x, end) in at.items()
    )


def overhead(each: WallLayout) -> list[Fraction]:
    """Return where joists or blocks are over the wall's own concrete, in inches from its left corner.

    A partition right under a joist is nailed to it evenly, every 16 in or closer.
    """
    if each.wall.is_partition and each.wall.parallel_gap == ZERO:
        room = (each.plate - FIGURES.stud_thick).inch
        bays = max(1, ceil(room / FIGURES.stud_spacing.inch))
        return [(each.plate_start + FIGURES.stud_thick // 2).inch + room * n / bays for n in range(bays + 1)]
    if each.wall.joists == "alongside":
        return [(b.box.x0.inch + b.box.x1.inch) / 2 for b in each.of(Kind.JOIST_BLOCK)]
    every = [((x0 + x1) // 2).inch for x0, x1 in joists(each.wall)]
    return [x for x in every if x < each.wall.length.inch]


def behind(each: WallLayout, sheet: Part) -> int:
    """Return how many uprights a sheet of drywall lies on, two short ones over each other as one."""
    uprights = each.of(*FULL_HEIGHT, Kind.TRIMMER, Kind.CRIPPLE)
    low, high = sheet.box.x0.ticks, sheet.box.x1.ticks
    return len({p.box.x0 for p in uprights if max(low, p.box.x0.ticks) < min(high, p.box.x1.ticks)})


def of_one(each: WallLayout, part: Part, rule: FasteningRule) -> int:
    """Return how many of a rule's fasteners hold one part."""
    if rule.how == "each":
        return rule.count
    if rule.how in ("along", "over_uprights"):
        places = 1
        while rule.spacing_length * (places - 1) < part.cut:
            places += 1
        return places * rule.count * (1 if rule.how == "along" else behind(each, part))
    if rule.how == "per_support":
        half = FIGURES.joist_thick // 2
        return rule.count * sum((part.box.x0 - half).inch <= x <= (part.box.x1 + half).inch for x in overhead(each))
    (held,) = (fastening for fastening in part.fastenings if fastening.fastener == rule.fastener)
    assert all(b - a <= rule.spacing_length for a, b in pairwise(held.at))
    return len(held.at)


@settings(max_examples=40)
@any_job
def test_fasteners_are_what_the_rules_give_every_part(tree: Tree) -> None:
    """Counted a second way: rule by rule over the boxes of all parts, joists from the survey."""
    layout = layout_of(tree)
    counted = {need.id: need.quantity for need in takeoff(layout) if need.id in load_fasteners().fastener}

    assert counted == dict(+count_by_rule(layout))


def by_the_grid(each: WallLayout) -> dict[str, Fraction]:
    """Walk a grid over the face of the foam and add up the lines where what is on their two sides differs.

    Returns inches of upright and level joint, floor gap, and rims: edges that meet neither foam, nor the floor, nor the
    top, nor an end of the wall, nor a fireblock that goes to the concrete.
    """
    foam = each.of(Kind.FOAM)
    blocks = [b.box for b in each.of(Kind.FIREBLOCK) if foam and b.box.y0 < foam[0].box.y1]
    found = dict.fromkeys(("upright", "level", "floor", "rims", "over"), Fraction(0))
    xs = sorted({x.ticks for part in foam for x in (part.box.x0, part.box.x1)})
    zs = sorted({z.off.ticks for part in foam for z in (part.box.z0, part.box.z1)})

    def at(x: int, z: int) -> str | None:
        if not (0 <= x < len(xs) - 1 and 0 <= z < len(zs) - 1):
            return None
        return next(
            (
                part.id
                for part in foam
                if part.box.x0.ticks <= xs[x] < part.box.x1.ticks
                and part.box.z0.off.ticks <= zs[z] < part.box.z1.off.ticks
            ),
            None,
        )

    for z, (low, high) in enumerate(pairwise(zs)):
        for x in range(len(xs)):
            left, right, tall = at(x - 1, z), at(x, z), Length(high - low).inch
            if left and right and left != right:
                found["upright"] += tall
            elif left != right and 0 < x < len(xs) - 1:
                edge = Length(xs[x])
                if not any((b.x1 if right else b.x0) == edge for b in blocks):
                    found["rims"] += tall
    for x, (start, end) in enumerate(pairwise(xs)):
        for z in range(len(zs)):
            under, over, wide = at(x, z - 1), at(x, z), Length(end - start).inch
            if under and over and under != over:
                found["level"] += wide
            elif over and not under:
                found["floor" if Length(zs[z]) <= FIGURES.foam_floor_gap else "rims"] += wide
            elif under and not over:
                found["over"] += wide
    return found


@settings(max_examples=40)
@any_job
def test_gaps_seams_and_gasket_are_what_a_walk_over_the_face_of_the_foam_finds(tree: Tree) -> None:
    """Counted a second way: a grid laid over the foam, line by line, in fractions of an inch, so nothing is rounded."""
    layout = layout_of(tree)
    thick = layout.survey.basement.foam_thickness
    for each in layout.walls:
        runs, grid = runs_of(each, thick), by_the_grid(each)
        foam = each.of(Kind.FOAM)
        left = sum((p.cut.inch for p in foam if p.box.x0 == min(q.box.x0 for q in foam)), Fraction(0))
        right = sum((p.cut.inch for p in foam if p.box.x1 == max(q.box.x1 for q in foam)), Fraction(0))
        seams = (grid["upright"] + grid["level"] + (left + right) / 2) * FIGURES.foam_seam.inch * thick.inch
        rims = (grid["rims"] + grid["over"]) * FIGURES.foam_cut_gap.inch * FIGURES.can_deep.inch
        over = sum(((2 * (p.wide or p.cut) + 2 * p.cut).inch for p in each.of(Kind.RIM)), Fraction(0))
        over *= FIGURES.rim_gap.inch * FIGURES.can_deep.inch
        for board in each.of(Kind.BUCK):  # half an inch all along it, as deep as it lies in the concrete
            over += board.cut.inch * Fraction(1, 2) * max(Fraction(0), (min(ZERO, board.box.y1) - board.box.y0).inch)
        floor = grid["floor"] * FIGURES.foam_floor_gap.inch * FIGURES.can_deep.inch
        corners = (left if each.left.what != "open end" and not each.wall.left_joined else 0) + (
            right if each.right.what != "open end" else 0
        )

        assert abs(runs["can_foam"].to("inch**3").magnitude - (seams + rims + floor + over)) < Fraction(1, 100)
        assert runs["seam_tape"].to("inch").magnitude == grid["upright"] + grid["level"] + corners
        plates = sum(((p.box.x1 - p.box.x0).inch for p in each.of(Kind.BOTTOM_PLATE)), Fraction(0))
        assert abs(runs["gasket"].to("inch").magnitude - plates) <= len(each.of(Kind.BOTTOM_PLATE)) / Fraction(16)


@settings(max_examples=40)
@any_job
def test_what_is_bought_covers_the_need_and_one_pack_less_would_not(tree: Tree) -> None:
    """Whole packs: the need with its spare fits, and one pack fewer would not hold it."""
    stock, book = load_stock().item, load_fasteners().fastener
    needs = takeoff(layout_of(tree))
    for need, line in zip(needs, lines_of(needs), strict=True):
        sold = book.get(need.id)
        holds, spare, over = (
            (sold.per_unit, sold.spare, 0)
            if sold
            else (stock[need.id].holds, stock[need.id].spare, stock[need.id].over)
        )
        wanted = Fraction(need.quantity * (100 + spare), 100)
        assert (line.buy - over) * holds >= wanted > (line.buy - over - 1) * holds
        assert line.spare == line.buy * holds - need.quantity


def test_gaps_are_counted_in_cubic_inches_and_feet() -> None:
    """The worked wall by hand.

    Floor joint 191 3/4 x 1/2 x 1 = 95.9. Over the foam 191 3/4 x 1/4 x 1 = 47.9. Four pieces 89 1/4, 89 3/8, 89 5/8
    and 89 7/8 tall: three seams as tall as the lower piece, 268 1/4, and half of both ends, 89 9/16, times 1/8 x 2:
    89.5. Over the concrete eleven bays with a piece 14 by 8 3/4, one 14 3/4 and one 2 3/4 long: 570 1/2 round them, times
    1/4 x 1: 142.6; and 0.2 where the tops of the foam step. Together 376.1, rounded up. Tape: 268 1/4 + 89 1/4 + 89 7/8 = 447 3/8 in, 37.3 ft. Gasket: 187 3/4 in, 15.6.
    """
    layout = make_plan(load_book(), worked("first-wall")).layout
    needs = {need.id: need.quantity for need in takeoff(layout)}

    assert [part.cut for part in layout.by_letter["A"].of(Kind.FOAM)] == [
        inches(size) for size in ("89 1/4", "89 3/8", "89 5/8", "89 7/8")
    ]
    assert (needs["can_foam"], needs["seam_tape"], needs["gasket"]) == (377, 38, 16)


def test_a_bead_runs_an_inch_in_from_the_edge_and_down_the_middle() -> None:
    """A full sheet by hand: 46 + 46 across, 94 three times up: 374 in, 31.2 ft, and a 28 oz tube is 38 ft of it."""
    plain = laid(
        wall("96 1/8 in", height=["100 in at left", "100 in at right"], concrete=["98 in at left", "98 in at right"])
    )
    full = [part for part in plain.of(Kind.FOAM) if part.cut == inches("96") and part.wide == inches("48")]

    assert full
    whole = runs_of(plain, inches("2"))["adhesive"].to("inch").magnitude
    rest = [part for part in plain.of(Kind.FOAM) if part not in full]
    by_hand = 374 * len(full) + sum(
        (2 * max((p.box.x1 - p.box.x0).inch - 2, Fraction(0)) + 3 * max(p.cut.inch - 2, Fraction(0)) for p in rest),
        Fraction(0),
    )
    assert whole == by_hand


def test_batts_fill_the_bays_and_leave_the_doorway_open() -> None:
    """As many batts as clear bays between the studs of a plain wall; a doorway takes some of them out."""
    plain = laid(wall("12 ft"))
    uprights = sorted(plain.of(*FULL_HEIGHT), key=lambda p: p.box.x0)
    bays = [b.box.x0 - a.box.x1 for a, b in pairwise([u for u in uprights if u.kind is not Kind.PACK])]
    with_door = laid(wall("12 ft", openings=[new_door("50 in")]))

    assert batts_of(plain) == sum(bay >= FIGURES.bay_stuff for bay in bays)
    assert batts_of(with_door) < batts_of(plain)


def test_a_tall_bay_takes_two_batts() -> None:
    """A precut batt is 93 in: studs of 97 in take two each, and studs of 88 7/8 in one."""
    tall = laid(
        wall("8 ft", height=["100 1/4 in at left", "100 1/4 in at right"], concrete=["98 in at left", "98 in at right"])
    )
    low = laid(wall("8 ft"))

    assert batts_of(tall) == 2 * batts_of(low)
