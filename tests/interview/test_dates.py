"""A day is taken only when it can be one day: as 2027-03-02, or with the month as a word."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from guide.interview.dates import read_date


@pytest.mark.parametrize(
    "typed",
    [
        "2027-03-02",
        "2027-3-2",
        " 2 March 2027 ",
        "2nd of march 2027",
        "2. March 2027",
        "March 2, 2027",
        "mar 2 2027",
        "Mar. 2nd, 2027",
    ],
)
def test_one_day_is_read_however_it_is_written(typed: str) -> None:
    assert read_date(typed) == "2027-03-02"


@pytest.mark.parametrize(
    "typed",
    [
        "3/2/2027",
        "02.03.2027",
        "2027-02-29",
        "31 June 2027",
        "2027-13-01",
        "tomorrow",
        "2 Ma 2027",
        "2 maybe 2027",
        "1027-03-02",
        "",
        "2027",
    ],
)
def test_what_is_no_day_or_could_be_two_is_not_taken(typed: str) -> None:
    assert read_date(typed) is None


@given(day=st.dates(date(2000, 1, 1), date(2199, 12, 31)))
def test_every_day_comes_back_as_it_went_in(day: date) -> None:
    assert read_date(str(day)) == str(day)
