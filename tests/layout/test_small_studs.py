"""A wall of 2x3: an inch less to the finished face, plates and packs as deep as the studs, and what the codes say of it."""

from __future__ import annotations

from guide.book.questions import load_book
from guide.buying.purchase import buy
from guide.interview.jobfile import from_json
from guide.layout.parts import FULL_HEIGHT, Kind, Material
from guide.lengths import in_inches, inches
from guide.reference.codes import load_code
from guide.sheets.papers import papers
from guide.sheets.plan import make_plan
from guide.sheets.wiring import largest_hole
from tests.jobs import job, laid, layout_of, outlet, wall

SMALL = laid(wall("196 in", boxes=[outlet("60 in")]), stud="2x3")
PLAIN = laid(wall("196 in", boxes=[outlet("60 in")]))


def test_the_room_face_and_the_drywall_come_an_inch_nearer_and_the_back_stays() -> None:
    """B 2 3/8 as ever; F = B + 2 1/2 = 4 7/8; D = F + 1/2 = 5 3/8 (2x3: PS 20-20, from memory, high confidence; worked by hand)."""
    offsets = SMALL.offsets
    assert [in_inches(each) for each in (offsets.back, offsets.face, offsets.drywall)] == ["2 3/8", "4 7/8", "5 3/8"]


def test_every_piece_of_framing_is_as_deep_as_its_stick_and_cut_from_it() -> None:
    """Studs, plates and packs lie between B and F; nothing is cut from 2x4, and the bottom plate is treated."""
    for part in SMALL.of(*FULL_HEIGHT, Kind.BOTTOM_PLATE, Kind.TOP_PLATE):
        deep = inches("1 1/2") if part.kind is Kind.PACK else inches("2 1/2")
        assert part.box.y1 - part.box.y0 == deep, part.mark
        assert part.box.y1 == SMALL.offsets.face
    assert not {Material.STUD, Material.TREATED} & {part.material for part in SMALL.parts}
    assert {part.material for part in SMALL.of(Kind.BOTTOM_PLATE)} == {Material.SMALL_TREATED}
    assert [p.box.x1 - p.box.x0 for p in SMALL.of(Kind.PACK)] == [inches("2 1/2")] * len(PLAIN.of(Kind.PACK))


def test_studs_stand_where_they_stood_where_no_corner_moves_them() -> None:
    """Between open ends the depth of a stud moves nothing along the wall."""
    ends = {"left": "open end", "right": "open end"}
    small, plain = (laid(wall("196 in", **ends), stud=stud).of(Kind.STUD) for stud in ("2x3", "2x4"))
    assert [stud.box.x0 for stud in small] == [stud.box.x0 for stud in plain]


def test_a_box_still_stands_clear_of_the_foam() -> None:
    """A one-gang box of 2 7/8 behind D 5 3/8 starts at 2 1/2, an eighth before the back of the studs."""
    (box,) = SMALL.of(Kind.OUTLET)
    assert in_inches(box.box.y0) == "2 1/2"
    assert box.box.y0 > SMALL.offsets.back


def test_2x3_are_bought_and_named_and_every_hole_takes_a_plate() -> None:
    """The list, the cut ticket and the page say 2x3 where they said 2x4; the wiring rule leaves no hole without a plate."""
    tree = job([wall("196 in", boxes=[outlet("60 in")])], stud="2x3")
    names = [line.name for line in buy(layout_of(tree)).lines]
    assert any(name.startswith("2x3, kiln dried") for name in names)
    assert any(name.startswith("2x3, pressure treated") for name in names)
    assert not any("2x4" in name for name in names)
    pages = papers(make_plan(load_book(), from_json(tree, load_book())))
    sheet = " ".join(pages["job-sheet.md"].split())
    assert "Every hole for cable in a 2x3 needs a plate" in sheet
    assert "2x3, 1 1/2 by 2 1/2 in; measure yours" in sheet
    assert "2x4 8" not in sheet


def test_the_largest_hole_is_a_share_of_the_depth_or_what_the_edges_leave() -> None:
    """IRC 2018 R602.6 (seen): 60 %, and 5/8 in to the edge: the share of a 2x4, the edges of a 2x3, taken down to a tick."""
    code = load_code()
    four, three = (largest_hole(inches(deep), code) for deep in ("3 1/2", "2 1/2"))
    assert inches("2.1").ticks - 1 <= four.ticks <= inches("2.1").ticks
    assert in_inches(three) == "1 1/4"
