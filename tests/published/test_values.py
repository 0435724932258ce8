"""Every published value against ours, and the table of all of them."""

from __future__ import annotations

from collections import Counter

import pytest

from tests.published.against import OURS, TABLE, Family, Value, agrees, families, result_of, table

EVERY = [(family, value) for family in families() for value in family.value]


@pytest.mark.parametrize(("family", "value"), EVERY, ids=[value.id for _, value in EVERY])
def test_ours_agrees_with_what_is_published(family: Family, value: Value) -> None:
    """From the inputs of the source wallbrief comes to the printed value, within a tolerance that is argued for."""
    ours = result_of(value)

    assert agrees(value, ours), f"{value.what}: {family.source[value.source].title} has {value.theirs}, ours is {ours}"


@pytest.mark.parametrize(("family", "value"), EVERY, ids=[value.id for _, value in EVERY])
def test_every_value_says_where_it_stands_and_why_ours_may_differ(family: Family, value: Value) -> None:
    """No value is without its paper and its place, no tolerance without its reason."""
    assert family.source[value.source].title.strip()
    assert value.what.strip()
    assert value.place.strip()
    assert value.because.strip()


def test_every_value_and_every_way_to_ours_is_used_once() -> None:
    """Names are not shared, and there is no way of reckoning that nothing published is held against."""
    assert set(Counter(value.id for _, value in EVERY).values()) == {1}
    assert {value.ours for _, value in EVERY} == set(OURS)


def test_a_value_off_by_more_than_its_tolerance_does_not_agree() -> None:
    """The comparison itself can fail: at the edge of the tolerance it agrees, past it no more; words must be the same."""
    number = EVERY[0][1].model_copy(update={"theirs": 5.0, "tolerance": 0.25})
    assert agrees(number, 5.25)
    assert not agrees(number, 5.26)
    ranged = number.model_copy(update={"theirs": (4.0, 5.0)})
    assert agrees(ranged, 3.75)
    assert not agrees(ranged, 3.74)
    word = number.model_copy(update={"theirs": "found"})
    assert not agrees(word, "nothing found")
    assert not agrees(word, 5.0)


def test_the_table_of_published_values_is_current() -> None:
    """What stands in the docs folder is what the values and the engine say now; `python -m tests.published` writes it."""
    assert TABLE.read_text(encoding="utf-8") == table()
