"""What is over the wall: joists read one by one, and beams. Worked by hand."""

from __future__ import annotations

from guide.checks.check import check
from guide.layout.overhead import joists_over
from guide.layout.parts import Kind, WallLayout, overlap
from guide.lengths import inches
from guide.reference.codes import load_code
from guide.reference.figures import load_figures
from tests.jobs import fixture, hanging, job, laid, layout_of, uneven, wall
from tests.layout.sizes import size, spans

DRIFTING = ("14 1/2 in", "30 3/4 in", "47 1/4 in doubled", "63 3/4 in", "80 in", "96 1/2 in", "113 in")


def over(layout: WallLayout) -> list[tuple[str, str]]:
    """Return both sides of each joist over a wall."""
    return [(size(x0), size(x1)) for x0, x1 in joists_over(layout.wall, load_figures())]


def test_joists_that_were_read_are_the_joists_a_doubled_one_twice_as_thick() -> None:
    assert over(laid(wall("120 in", **uneven(*DRIFTING)))) == [
        ("14 1/2", "16"), ("30 3/4", "32 1/4"), ("47 1/4", "50 1/4"), ("63 3/4", "65 1/4"), ("80", "81 1/2"), ("96 1/2", "98"),
        ("113", "114 1/2"),
    ]  # fmt: skip


def test_beyond_the_last_one_read_they_go_on_as_far_apart_as_they_usually_are() -> None:
    """16 1/4, 16 1/2 and 16 1/2 apart: 16 1/2, from 63 3/4 on."""
    assert over(laid(wall("110 in", **uneven(*DRIFTING[:4]))))[4:] == [("80 1/4", "81 3/4"), ("96 3/4", "98 1/4")]


def test_a_joint_of_the_top_plate_falls_under_the_middle_of_a_joist_that_was_read() -> None:
    """The bottom plate, from 2 3/8 on, is joined at 98 3/8; the last joist 24 short of that is the one read at 63 3/4."""
    plates = laid(wall("144 in", **uneven(*DRIFTING, "129 1/2 in"))).of(Kind.TOP_PLATE)

    assert spans(plates) == [("2 3/8", "64 1/2"), ("64 1/2", "138 1/8")]


def test_foam_in_the_bays_follows_the_joists_that_were_read() -> None:
    """From 16 to 30 3/4 less a quarter on both sides; right of the doubled one from 50 1/2 on."""
    pieces = [(size(p.box.x0), size(p.along)) for p in laid(wall("72 in", **uneven(*DRIFTING[:4]))).of(Kind.RIM)]

    assert pieces == [("1/4", "14"), ("16 1/4", "14 1/4"), ("32 1/2", "14 1/2"), ("50 1/2", "13"), ("65 1/2", "6 1/4")]


def test_a_plate_that_is_joined_under_joists_nobody_read_is_locked() -> None:
    """Read up to the right end the same plate is measured."""
    for edges, known in ((DRIFTING[:4], False), ((*DRIFTING, "129 1/2 in"), True)):
        layout = layout_of(job([wall("144 in", **uneven(*edges))]))
        (unsure,) = {layout.survey.unsure(p.size_rests) for p in layout.walls[0].of(Kind.TOP_PLATE)}
        assert (unsure == ()) is known
        assert ("joists_unread" in {f.key for f in check(layout, load_code())}) is not known


BEAM = laid(wall("196 in", openings=[hanging("100 in")]))
"""A beam 6 wide and 9 1/4 deep, wood half an inch clear of it: a hole from 99 1/2 to 106 1/2, 9 3/4 under the joists."""


def test_at_the_end_of_a_beam_the_top_plate_stops_and_the_bottom_plate_does_not() -> None:
    """Plates from 2 3/8 to 190 1/8."""
    top, bottom = BEAM.of(Kind.TOP_PLATE), BEAM.of(Kind.BOTTOM_PLATE)

    assert [size(p.box.x1) for p in top if p.box.x1 < inches("103")][-1:] == ["99 1/2"]
    assert [size(p.box.x0) for p in top if p.box.x0 > inches("103")][:1] == ["106 1/2"]
    assert not any(p.box.x1 in (inches("99 1/2"), inches("106 1/2")) for p in bottom)


def test_under_a_beam_a_flat_piece_lies_between_two_king_studs() -> None:
    """Kings at 98 and 106 1/2; the piece 7 long, its upper face 9 3/4 under the joists; a short stud of the layout under it."""
    (flat,) = BEAM.of(Kind.SILL)

    assert spans(BEAM.of(Kind.KING)) == [("98", "99 1/2"), ("106 1/2", "108")]
    assert (size(flat.box.x0), size(flat.cut), size(flat.box.z1.off)) == ("99 1/2", "7", "-9 3/4")
    assert spans(BEAM.of(Kind.CRIPPLE)) == [("101 1/8", "102 5/8")]


def test_cap_and_foam_stay_as_clear_of_a_beam_as_wood_and_go_on_beside_and_below_it() -> None:
    """Foam under it from 1/2 to 92 less 9 3/4 over the slab, down to an eighth."""
    caps = [p for p in BEAM.of(Kind.CAP) if overlap(p.box.x0, p.box.x1, inches("90"), inches("116"))]
    (below,) = (p for p in BEAM.of(Kind.FOAM) if p.box.x0 <= inches("103") < p.box.x1)

    assert (size(caps[0].box.x1), size(caps[-1].box.x0)) == ("99 1/2", "106 1/2")
    assert (size(below.box.x0), size(below.box.x1), size(below.cut)) == ("99 1/2", "106 1/2", "81 3/4")


def test_drywall_is_cut_out_round_a_beam_up_to_the_ceiling() -> None:
    cuts = {n for sheet in BEAM.of(Kind.DRYWALL) for n in sheet.notches}

    assert {(size(n.z0.off), size(n.z1.off)) for n in cuts} == {("-9 3/4", "-1/2")}


def test_headroom_is_judged_under_a_beam_that_ends_in_a_wall() -> None:
    """92 in less half an inch of drywall under it; model code, IRC 2021 R305.1: 76 in under a beam."""
    for drop, low in (("15 1/2 in", False), ("15 9/16 in", True)):
        layout = layout_of(job([wall("196 in", openings=[hanging("100 in", drop=drop)])]))
        assert ("headroom_beam" in {f.key for f in check(layout, load_code()) if f.wall == "A"}) is low


def test_a_soffit_gets_blocks_for_its_ledger_in_every_bay_that_it_crosses() -> None:
    """From 20 to 60, its ledger's screws at 80: the bays from 7 3/8 to 69 1/8, each block 3 1/2 high about that height."""
    along = laid(wall("196 in", fixtures=[fixture("20 in", "60 in", "80 in", "soffit")]))

    assert {size(p.box.z0.off) for p in along.of(Kind.BACKING)} == {"78 1/4"}
    assert spans(along.of(Kind.BACKING)) == [
        ("7 3/8", "21 1/8"),
        ("22 5/8", "37 1/8"),
        ("38 5/8", "53 1/8"),
        ("54 5/8", "69 1/8"),
    ]
