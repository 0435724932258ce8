"""What is over the wall: joists read one by one. Worked by hand."""

from __future__ import annotations

from guide.checks.check import check
from guide.layout.overhead import joists_over
from guide.layout.parts import Kind, WallLayout
from guide.reference.codes import load_code
from guide.reference.figures import load_figures
from tests.jobs import job, laid, layout_of, uneven, wall
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
