"""The string: the smallest reading, or readings with their places in its stead."""

from __future__ import annotations

import pytest

from guide.interview.answers import Spot
from guide.interview.replies import Sorry
from guide.lengths import inches
from tests.interview.hearing import value


@pytest.mark.parametrize("reply", ["1 1/4", "1 3/8, 1 1/4, 1 5/16", "from 1 1/4 to 1 1/2"])
def test_sizes_without_a_place_are_one_smallest_reading(reply: str) -> None:
    """The short way stays: one size, or the smallest of several."""
    assert value("wall.string", reply) == inches("1 1/4")


@pytest.mark.parametrize("reply", ["at 0: 1 1/2, at 48: 1 3/8, 96: 1 1/4", "1 1/2 at left, 1 3/8 at 4 ft, 1 1/4 at 96"])
def test_readings_with_places_are_kept_place_by_place(reply: str) -> None:
    """Any number of places, and the ends need not be among them."""
    found = value("wall.string", reply)
    assert isinstance(found, tuple)
    read = [(spot.at, spot.size) for spot in found if isinstance(spot, Spot)]
    assert read == [("left", inches("1 1/2")), (inches("48"), inches("1 3/8")), (inches("96"), inches("1 1/4"))]


@pytest.mark.parametrize("reply", ["1 1/2 at left, 1 3/8", "1 1/2 at left, 1 1/4 at left", "5 at 4 ft"])
def test_a_reading_whose_place_is_not_clear_is_asked_back(reply: str) -> None:
    """Nothing is guessed: a size without its place among others, a place twice, a size out of range."""
    with pytest.raises(Sorry):
        value("wall.string", reply)
