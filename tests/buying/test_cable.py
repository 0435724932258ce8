"""Cable along its real way: holes at one height, up or down to each box, over doors, round corners; worked by hand."""

from __future__ import annotations

from guide.book.questions import load_book
from guide.buying.cable import cable_run
from guide.buying.takeoff import takeoff
from guide.interview.jobfile import from_json
from guide.interview.written import Json
from guide.layout.parts import Kind, Layout
from guide.lengths import ZERO, Length, in_inches, inches
from guide.sheets.papers import papers
from guide.sheets.plan import make_plan
from tests.jobs import job, layout_of, new_door, outlet, ring, wall, window

OPEN: dict[str, Json] = {"left": "open end", "right": "open end"}
ENDS = inches("20") * 2
"""Two boxes at 16 under holes at 24, with 12 in each: 8 + 12 at each end (common practice)."""


def run(*boxes: Json, **answers: Json) -> Length:
    """Return the cable of one wall between open ends."""
    return cable_run(layout_of(job([wall("240 in", **OPEN, boxes=list(boxes), **answers)])))


def places(layout: Layout, letter: str) -> list[Length]:
    """Return the centres of a wall's boxes, from the left."""
    return sorted(part.centre for part in layout.by_letter[letter].of(Kind.OUTLET))


def test_from_box_to_box_with_the_way_up_and_what_hangs_in_each() -> None:
    """Boxes beside their studs: their distance and 40; three boxes are two ways; one box alone takes none."""
    layout = layout_of(job([wall("240 in", **OPEN, boxes=[outlet("40 in"), outlet("100 in"), outlet("180 in")])]))
    left, middle, right = places(layout, "A")
    assert cable_run(layout) == right - left + ENDS * 2
    assert run(outlet("40 in"), outlet("100 in")) == middle - left + ENDS
    assert run(outlet("40 in")) == ZERO


def test_old_boxes_and_lights_are_not_on_the_run() -> None:
    """Neither has cable of this run to it."""
    two = run(outlet("40 in"), outlet("180 in"))
    assert run(outlet("40 in"), {**outlet("100 in"), "holds": "junction"}, outlet("180 in")) == two
    assert run(outlet("40 in"), outlet("100 in", kind="existing"), outlet("180 in")) == two


def test_a_door_between_is_climbed_over_and_a_high_window_passed_under() -> None:
    """Leaf 80, 2 1/2 over it, 1/2 of floor: the header ends 1 1/2 over 83, at 84 1/2: twice 60 1/2 more than without."""
    plain = run(outlet("40 in"), outlet("180 in"))
    assert run(outlet("40 in"), outlet("180 in"), openings=[new_door("90 in")]) - plain == inches("60 1/2") * 2
    assert run(outlet("40 in"), outlet("180 in"), openings=[window("90 in", sill="48 in")]) == plain
    assert run(outlet("40 in"), outlet("180 in"), openings=[new_door("200 in")]) == plain


def test_it_runs_round_a_corner_along_the_middle_of_both_walls() -> None:
    """B 2 3/8 and half a stud: 4 1/8 off both walls; from x on the first to x' on the second it is L - x + x' - 8 1/4."""
    trees = [wall("120 in", boxes=[outlet("80 in")]), wall("120 in", boxes=[outlet("60 in")])]
    layout = layout_of(job(trees))
    (one,), (other,) = places(layout, "A"), places(layout, "B")
    assert cable_run(layout) == inches("120") - one + other - inches("8 1/4") + ENDS


def test_round_a_closed_room_the_longest_way_is_left_out() -> None:
    """Two boxes on neighbouring walls of a square room: the short way, whichever wall the room is told from."""
    boxed: dict[str, Json] = {"boxes": [outlet("60 in")]}
    walls = [wall("120 in", right_first="you choose", **(boxed if n in (0, 3) else {})) for n in range(4)]
    layout = layout_of(ring(walls))
    (one,), (last,) = places(layout, "A"), places(layout, "D")
    assert cable_run(layout) == inches("120") - last + one - inches("8 1/4") + ENDS


def test_it_is_bought_and_told_to_whoever_does_the_wiring() -> None:
    """The feet of the list are those of the sheet, rounded up; without boxes neither says a word of it."""
    tree = job([wall("240 in", **OPEN, boxes=[outlet("40 in"), outlet("180 in")])])
    layout = layout_of(tree)
    need = next(each for each in takeoff(layout) if each.id == "cable")
    assert need.quantity == -(-cable_run(layout).ticks // inches("12").ticks)
    sheet = papers(make_plan(load_book(), from_json(tree, load_book())))["job-sheet.md"]
    assert "Cable from new box to new box along these walls" in " ".join(sheet.split())
    assert not [each for each in takeoff(layout_of(job([wall("240 in")]))) if each.id == "cable"]
    assert in_inches(ENDS) == "40"
