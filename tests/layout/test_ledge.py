"""Concrete that ends far below the joists, worked by hand: shelf 2 1/2, B 2 3/8, F 5 7/8, joists at 92, concrete at 48."""

from __future__ import annotations

from itertools import pairwise

from guide.layout.parts import Kind
from guide.lengths import inches
from guide.reference.sayings import say
from tests.jobs import job, kept_free, laid, layout_of, level, ring, standing, wall, window
from tests.layout.sizes import cuts, decided, size, spans

LOW = level("92 in", "48 in")
ALONE = laid(wall("196 in", **LOW))
ROOM = layout_of(
    ring([wall(length, right_first="you choose", **LOW) for length in ("240 in", "180 in", "240 in", "180 in")])
).walls


def test_the_ledge_lies_on_the_concrete_from_the_wood_wall_to_the_back_of_the_studs() -> None:
    """From 2 1/2 past the left corner to 196 - 2 3/8; strips of 96, 76 1/8 and, not under 24, 24; 4 7/8 wide."""
    strips = ALONE.of(Kind.LEDGE)

    assert decided(ALONE, "cap") == "cap_3"
    assert spans(strips) == [("-2 1/2", "93 1/2"), ("93 1/2", "169 5/8"), ("169 5/8", "193 5/8")]
    assert cuts(strips) == ["96", "76 1/8", "24"]
    assert {(size(p.box.y0), size(p.box.y1), size(p.box.z0.at(ALONE.wall, p.centre))) for p in strips} == {
        ("-2 1/2", "2 3/8", "48")
    }
    assert len(ALONE.of(Kind.LEDGE_LAP)) == 2


def test_every_upright_fireblock_goes_on_above_the_ledge() -> None:
    """Below: 48 less 1 5/8 of gasket and plate. Above: 92 less 3/4 cap, 1 1/2 plate, 48 and 3/4 of ledge; 6 3/8 wide."""
    assert cuts(ALONE.of(Kind.FIREBLOCK)) == ["46 3/8"] * 3
    assert cuts(ALONE.of(Kind.UPPER_BLOCK)) == ["41"] * 3
    assert {size(part.wide) for part in ALONE.of(Kind.UPPER_BLOCK) if part.wide} == {"6 3/8"}
    assert spans(ALONE.of(Kind.UPPER_BLOCK)) == spans(ALONE.of(Kind.FIREBLOCK))


def test_round_a_room_the_ledge_of_the_through_wall_fills_the_corner() -> None:
    """The through wall's runs on to the other wood wall, 2 1/2 past the corner; the other's begins at its back, 2 3/8."""
    through, butt, *_ = ROOM
    assert (through.right.through, butt.left.through) == (True, False)

    assert size(through.of(Kind.LEDGE)[-1].box.x1 - through.wall.length) == "2 1/2"
    assert size(butt.of(Kind.LEDGE)[0].box.x0) == "2 3/8"


def test_a_pipe_and_an_opening_part_the_ledge() -> None:
    """A pipe of 3 1/2 at 100, a quarter inch clear of it: 98 to 102. A panel from 60 to 90 leaves all of it free."""
    pipe = laid(wall("196 in", **LOW, pipes=[standing("100 in")]))
    panel = laid(wall("196 in", **LOW, openings=[kept_free("60 in")]))

    gaps = [(left[1], right[0]) for left, right in pairwise(spans(pipe.of(Kind.LEDGE)))]
    assert ("98", "102") in gaps
    assert not [p for p in panel.of(Kind.LEDGE) if p.box.x0 < inches("90") and inches("60") < p.box.x1]


def test_a_window_over_the_concrete_parts_only_what_it_meets() -> None:
    """From 50 over the slab it stands clear of the ledge at 48 to 48 3/4; from 40 it does not."""
    over = laid(wall("196 in", **LOW, openings=[window("80 in", sill="50 in")]))
    through = laid(wall("196 in", **LOW, openings=[window("80 in", sill="40 in")]))
    middle = inches("96")

    assert any(p.box.x0 < middle < p.box.x1 for p in over.of(Kind.LEDGE))
    assert not any(p.box.x0 < middle < p.box.x1 for p in through.of(Kind.LEDGE))


def test_a_sill_that_hangs_over_as_far_as_the_studs_leaves_nothing_to_close() -> None:
    hanging = laid(wall("196 in", **LOW, shelf="-3 in"))

    assert not hanging.of(Kind.LEDGE, Kind.UPPER_BLOCK)


def test_it_is_said_that_the_wall_above_is_wood() -> None:
    tape = layout_of(job([wall("196 in", **LOW)])).survey.basement.tape

    assert any("44 in up to the joists" in say(remark.saying, tape) for remark in ALONE.remarks)


def test_an_upper_mate_keeps_clear_of_a_pipe_that_passes_behind_its_lower_half() -> None:
    """A pipe 1 out stands behind the foam's face, where the block may stand; its mate would reach through the pipe."""
    pipe = laid(wall("236 in", **LOW, pipes=[standing("5 1/4 in", out="1 in")]))

    right = inches("5 1/4") + inches("1 3/4")
    assert pipe.of(Kind.UPPER_BLOCK)
    assert all(part.box.x0 >= right for part in pipe.of(Kind.UPPER_BLOCK))
