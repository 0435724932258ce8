"""The yard's saw: every long stick becomes parts that fit the car and still hold its pieces."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from guide.book.questions import load_book
from guide.buying.sticks import Stick
from guide.buying.yard_saw import YardCut, yard_cuts
from guide.interview.jobfile import from_json
from guide.lengths import SIXTEENTH, ZERO, Length, greatest, inches
from guide.sheets.papers import papers
from guide.sheets.plan import make_plan
from tests.jobs import alongside, job, laid, wall

PART = laid(wall("9 ft")).parts[0]
KERF, CAR = inches("1/8"), inches("96")


def stick(long: str, *cuts: Length, trim: Length = ZERO) -> Stick:
    """Return a stick with pieces of these lengths, the longest first."""
    parts = tuple(replace(PART, cut=cut) for cut in sorted(cuts, reverse=True))
    rest = inches(long) - trim - sum((cut + KERF for cut in cuts), start=ZERO)
    return Stick(inches(long), parts, greatest(ZERO, rest), at_home=False)


def pieces_fit(of: Stick, cut: YardCut, trim: Length) -> bool:
    """Say whether the pieces, in their order, fill the parts one after the other, none of them longer than the car."""
    ends = [ZERO - KERF, *cut.at, of.length]
    rooms = [b - a - KERF for a, b in pairwise(ends)]
    if max(rooms) > CAR:
        return False
    left: Sequence[Length] = [part.cut for part in of.parts]
    for number, room in enumerate(rooms):
        used = trim - KERF if number == 0 else ZERO - KERF
        while left and used + KERF + left[0] <= room:
            used, left = used + KERF + left[0], left[1:]
    return not left


def test_sticks_alike_are_cut_at_one_place() -> None:
    """By hand, kerf 1/8: 89 1/2 and two blocks of 14 1/2 leave 1 1/8, so 89 1/2 to 90 5/8 will do; 89 1/4 goes with it.

    A stick of 62 and 50 in is cut at a place of its own, from 62 to 69 3/4, and so is one that gives a single piece.
    """
    blocks = (inches("14 1/2"), inches("14 1/2"))
    tens = [stick("120", inches(tall), *blocks) for tall in ("89 1/2", "89 1/4", "89 1/2")]
    both = stick("120", inches("62"), inches("50"))

    assert yard_cuts(tens, ZERO, KERF, CAR) == (YardCut(3, (inches("90 1/2"),)),)
    assert yard_cuts([both], ZERO, KERF, CAR) == (YardCut(1, (inches("69 3/4"),)),)
    assert yard_cuts([stick("120", inches("90"))], ZERO, KERF, CAR) == (YardCut(1, (CAR,)),)


@given(
    st.sampled_from(["120", "144", "192"]),
    st.lists(st.integers(160, 1528), min_size=1, max_size=6),
    st.sampled_from([ZERO, inches("1/2")]),
)
def test_every_part_fits_the_car_and_holds_its_pieces(long: str, sixteenths: list[int], trim: Length) -> None:
    """Whatever stands on a stick that is too long for the car, each piece is still there to be cut at home."""
    cuts: list[Length] = []
    for each in sixteenths:
        if sum((cut + KERF for cut in cuts), start=SIXTEENTH * each + trim) <= inches(long):
            cuts.append(SIXTEENTH * each)
    one = stick(long, *cuts, trim=trim)

    (cut,) = yard_cuts([one], trim, KERF, CAR)
    assert pieces_fit(one, cut, trim)


def test_the_list_says_where_the_yard_cuts_what_it_cuts() -> None:
    """A ten for a car that holds 8 ft: on the list, with its place; a rack that takes it whole says nothing of it."""
    walls = [wall("16 ft", **alongside())]
    car, rack = (
        papers(
            make_plan(
                load_book(), from_json(job(walls, longest_stick="10", shopping="own", transport=way), load_book())
            )
        )
        for way in ("car", "rack")
    )

    assert "2x4, kiln dried, 10 ft: 5 at 90" in " ".join(car["shopping.md"].split())
    assert "yard's saw, sticks" not in " ".join(rack["shopping.md"].split())
