"""The energy code's row, judged as its notation means."""

from __future__ import annotations

from dataclasses import replace

import pytest

from guide.book.questions import Choice, load_book
from guide.checks.energy import asked_for, effective_row, energy_row, nominal
from guide.interview.written import Json
from guide.reference.energy import load_energy
from tests.jobs import job, layout_of, survey_of, wall


def short(zone: str, thick: str, batts: str = "no", **more: Json) -> bool:
    """Say whether no option of the zone's row is reached."""
    basement = survey_of(job([wall()], zone=zone, foam_thickness=thick, batts=batts, **more)).basement
    return bool(list(energy_row(basement)))


def row_in_words(**answers: Json) -> str:
    """Return what the row of a job's zone asks."""
    return asked_for(survey_of(job([wall()], **answers)).basement)


@pytest.mark.parametrize(
    ("edition", "thick", "falls_short"),
    [
        ("2009", "2 in", False),
        ("2009", "1 1/2 in", True),
        ("2018", "2 in", True),
        ("2018", "3 in", False),
        ("2021", "2 in", True),
    ],
)
def test_the_edition_decides_in_zone_5(edition: str, thick: str, falls_short: bool) -> None:
    """Zone 5 asked for 10/13 in 2009 and 15/19 since 2012 (seen in a laboratory's comparison of editions)."""
    assert short("zone 5", thick, energy=edition) is falls_short
    (found,) = energy_row(survey_of(job([wall()], zone="zone 5", foam_thickness="1/2 in", energy=edition)).basement)
    assert f"IECC {edition}" in str(dict(found.values)["cited"])


def test_a_warm_humid_county_of_zone_3_asks_for_nothing() -> None:
    """Note f of the table: not required in warm-humid counties; elsewhere in zone 3 half an inch falls short."""
    assert short("zone 3", "1/2 in", humid="no")
    assert not short("zone 3", "1/2 in", humid="yes")


@pytest.mark.parametrize(("zone", "thick", "falls_short"), [
    ("zone 4", "2 in", False), ("zone 6", "2 in", True), ("zone 6", "3 in", False), ("zone 8", "3 in", True),
])  # fmt: skip
def test_canada_counts_the_whole_wall(zone: str, thick: str, falls_short: bool) -> None:
    """NBC 2020 9.36.2.8 (memory, medium confidence): RSI 1.99 in zone 4, 2.98 in 5 and 6, 3.97 in 8, wood counted."""
    layout = layout_of(job([wall()], code="canada 2020", zone=zone, foam_thickness=thick))

    assert bool(list(effective_row(layout.walls[0], layout.survey.basement))) is falls_short
    assert not list(energy_row(layout.survey.basement))
    assert "wood and all layers counted" in asked_for(layout.survey.basement)


@pytest.mark.parametrize(
    ("zone", "thick", "batts", "falls_short"),
    [
        ("zone 5", "2 in", "no", True),
        ("zone 5", "3 in", "no", False),
        ("zone 5", "1 in", "yes", False),
        ("zone 5", "1/2 in", "yes", True),
        ("zone 5", "2 in", "yes", False),
        ("zone 4", "2 in", "no", False),
        ("zone 4", "1 in", "no", True),
        ("zone 4", "1/2 in", "yes", False),
        ("zone 3", "1 in", "no", False),
        ("zone 3", "1/2 in", "no", True),
        ("zone 2", "1/2 in", "no", False),
        ("zone 4 marine", "2 in", "no", True),
    ],
)
def test_a_row_is_reached_by_any_one_of_its_options(zone: str, thick: str, batts: str, falls_short: bool) -> None:
    """IECC 2021 R402.1.3 (seen in a laboratory's comparison): zone 5 15ci or 19 or 13&5ci; 4 10ci or 13; 3 5ci or 13; 2 none."""
    assert short(zone, thick, batts) is falls_short


def test_a_canadian_wall_is_not_judged_by_the_us_table() -> None:
    """Half an inch of foam falls short of zone 5's row, and that row is no rule in Canada."""
    assert short("zone 5", "1/2 in")
    assert not short("zone 5", "1/2 in", code="canada 2020")


def test_foam_and_batts_are_not_added_where_the_row_does_not_add_them() -> None:
    """An inch and a half of foam is 7.5 and with R-13 batts 20.5 in all, yet in zone 4 foam alone of 7.5 is not 10."""
    assert short("zone 4", "1 1/2 in")
    assert not short("zone 4", "1 1/2 in", "yes")  # by the 13 in the bays, not by the sum


def test_the_thickness_named_would_reach_a_row_and_half_an_inch_less_would_not() -> None:
    """The finding names the thinnest foam that would do with the same bays."""
    survey = survey_of(job([wall()], zone="zone 5", foam="expanded", foam_thickness="2 in"))
    (found,) = energy_row(survey.basement)
    need = str(dict(found.values)["need"])

    assert need == "<4 in>"  # 15 over 3.8 an inch is 3.95
    assert short("zone 5", "3 1/2 in", foam="expanded")
    assert not short("zone 5", "4 in", foam="expanded")


def test_nothing_is_judged_without_a_zone_or_where_nobody_lives() -> None:
    """The row is for heated basements: storage alone is not judged, and no zone gives no row."""
    assert not short("zone 5", "2 in", use="storage")
    assert asked_for(replace(survey_of(job([wall()])).basement, zone=None)) == ""
    assert row_in_words(zone="zone 1").startswith("Nothing is asked")


@pytest.mark.parametrize("edition", ["2021", "2018", "2009"])
def test_every_zone_has_its_row_once(edition: str) -> None:
    """A zone that can be answered has one row, and no row has a zone that cannot."""
    zones = [zone for row in load_energy(edition).row for zone in row.zones]

    assert sorted(zones) == sorted(choice.id for choice in _zone_choices())


def _zone_choices() -> tuple[Choice, ...]:
    return load_book().by_ref["basement.zone"].choices


def test_the_r_of_the_label_counts_and_not_that_of_the_whole_wall() -> None:
    """Two inches of extruded foam are R-10 in the table, though concrete, drywall and air hold back 2 more."""
    layout = layout_of(job([wall()], batts="yes"))
    has = nominal(layout.survey.basement)

    assert (round(has.continuous, 3), round(has.cavity, 3)) == (10, 13)
    assert has.said == "R-10 continuous (foam) and R-13 in the bays (batts)"
