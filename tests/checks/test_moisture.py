"""Dew behind batts, and heat through the walls in a year."""

from __future__ import annotations

from dataclasses import replace

import psychrolib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from guide.book.questions import load_book
from guide.checks.losses import below_grade_u, price_of, saving_of, yearly_heat
from guide.checks.moisture import degrees, dew_point, face_temperature, foam_face, foam_that_would_do
from guide.interview.jobfile import from_json
from guide.layout.parts import Layout
from guide.lengths import exact_inches, inches
from guide.reference.climates import load_climates
from guide.reference.fuels import load_fuels
from guide.reference.materials import load_materials
from guide.sheets.papers import papers
from guide.sheets.plan import make_plan
from guide.sheets.warmth import warmth_of
from tests.jobs import Tree, job, layout_of, level, wall

ZONES = [climate.zone for climate in load_climates().climate]


def laid_out(zone: str | None, humidity: str = "40", thick: str = "2 in", batts: str = "yes") -> Layout:
    """Return the layout of a plain wall in a climate zone."""
    known: Tree = {"zone": zone or {"value": None, "known": "unknown"}}
    return layout_of(job([wall("20 ft")], humidity=humidity, foam_thickness=thick, batts=batts, **known))


@given(st.floats(min_value=10, max_value=32), st.floats(min_value=0.3, max_value=1))
def test_dew_points_agree_with_a_library_of_moist_air(celsius: float, humidity: float) -> None:
    """psychrolib (ASHRAE 2017) and Magnus differ by less than 0.1 K wherever the dew point is over freezing."""
    psychrolib.SetUnitSystem(psychrolib.SI)
    theirs = psychrolib.GetTDewPointFromRelHum(celsius, humidity)

    if theirs > 0.01:
        assert dew_point(celsius, humidity) == pytest.approx(theirs, abs=0.1)


def test_saturated_air_is_at_its_dew_point_and_drier_air_is_over_it() -> None:
    """At 100 % the dew point is the temperature itself; it falls with the humidity."""
    points = [dew_point(21.1, share) for share in (1.0, 0.8, 0.6, 0.4, 0.2)]

    assert points[0] == pytest.approx(21.1)
    assert points == sorted(points, reverse=True)


def test_temperature_falls_through_a_wall_in_step_with_resistance() -> None:
    """Nothing outside of it: the outdoor temperature; all of it outside: the room's; half of it: the middle."""
    assert [face_temperature(-10, 20, outer, 4) for outer in (0, 2, 4)] == [-10, 5, 20]


@pytest.mark.parametrize("zone", ZONES)
def test_every_invented_year_is_one_of_its_zone(zone: str) -> None:
    """The degree days of the months lie in the zone's range, which starts where the colder neighbour's ends."""
    climates = load_climates()
    climate = climates.of(zone)
    assert climate is not None
    low, high = climate.degree_days

    assert len(climate.months) == 12
    assert climate.months.index(min(climate.months)) == 0
    assert low <= climates.degree_days(climate) * 1.8 <= high


def test_foam_that_would_do_keeps_every_month_dry_and_half_an_inch_less_does_not() -> None:
    """The thickness named in the finding is the thinnest that stays dry, not merely one that does."""
    layout = laid_out("zone 6")
    (only,), basement = layout.walls, layout.survey.basement
    need = foam_that_would_do(only, basement)
    assert need is not None
    enough, less = foam_face(only, basement, need), foam_face(only, basement, need - inches("1/2"))

    assert enough is not None
    assert less is not None
    assert (enough.wet, less.wet > 0) == (0, True)


@pytest.mark.parametrize("humidity", ["30", "40", "50"])
def test_colder_places_and_damper_air_never_need_less_foam(humidity: str) -> None:
    """From zone to colder zone the foam needed never falls; None is more than any thickness."""
    needs = []
    for zone in ("zone 3", "zone 4", "zone 5", "zone 6", "zone 7", "zone 8"):
        layout = laid_out(zone, humidity)
        need = foam_that_would_do(layout.walls[0], layout.survey.basement)
        needs.append(need.inch if need is not None else 99)

    assert needs == sorted(needs)
    assert needs[0] < needs[-1]


def test_an_empty_bay_keeps_the_face_of_the_foam_warmer_than_batts_do() -> None:
    """The batt is what keeps the room's warmth from the foam."""
    layout = laid_out("zone 6")
    (only,), basement = layout.walls, layout.survey.basement
    filled, empty = foam_face(only, basement), foam_face(only, replace(basement, batts="no"))

    assert filled is not None
    assert empty is not None
    assert empty.coldest > filled.coldest + 5


def test_nothing_is_said_of_dew_or_savings_while_nobody_knows_the_zone() -> None:
    """No zone, no year: nothing is made up."""
    layout = laid_out(None)

    assert foam_face(layout.walls[0], layout.survey.basement) is None
    assert saving_of(layout.walls[0], layout.survey.basement) is None


def test_temperatures_are_printed_in_the_unit_that_goes_with_the_tape() -> None:
    """21.1 °C is 70 °F, and minus 40 is the same in both."""
    assert (degrees(21.1, "inches"), degrees(21.1, "millimetres")) == ("70 °F", "21 °C")
    assert (degrees(-40, "inches"), degrees(-40, "millimetres")) == ("-40 °F", "-40 °C")


def test_a_wall_saves_more_in_a_colder_zone_and_with_more_foam_and_never_more_than_goes_out() -> None:
    """What is saved lies between nothing and the loss of the bare concrete, and grows with cold and with foam."""
    found = []
    for zone, thick in (("zone 1", "2 in"), ("zone 4", "2 in"), ("zone 6", "2 in"), ("zone 6", "4 in")):
        layout = laid_out(zone, thick=thick, batts="no")
        saving = saving_of(layout.walls[0], layout.survey.basement)
        assert saving is not None
        assert 0 <= saving.saved <= saving.bare
        found.append(saving.saved)

    assert found[0] == 0
    assert found == sorted(found)
    assert found[1] < found[2] < found[3]


def test_a_taller_wall_loses_more() -> None:
    """Concrete of 60 in loses less than concrete of 90 1/2 over the same length."""
    low = layout_of(job([wall("20 ft", **level("61 1/2 in", "60 in"))], zone="zone 5"))
    high = layout_of(job([wall("20 ft")], zone="zone 5"))
    losses = []
    for layout in (low, high):
        saving = saving_of(layout.walls[0], layout.survey.basement)
        assert saving is not None
        losses.append(saving.bare)

    assert losses[0] < losses[1]


def test_the_average_over_two_stretches_is_the_average_of_both() -> None:
    """Below the ground: what goes out from 0 to 2 m is what goes out from 0 to 1 and from 1 to 2."""
    whole, upper, lower = (below_grade_u(top, bottom, 1.0) for top, bottom in ((0, 2), (0, 1), (1, 2)))

    assert whole == pytest.approx((upper + lower) / 2)
    assert upper > lower
    assert upper < 1 / (load_materials().below_grade_bare + 1.0)


def test_a_watt_per_kelvin_over_a_thousand_degree_days_is_24_kwh() -> None:
    """1 W/K x 1000 K d x 24 h/d = 24 kWh."""
    assert yearly_heat(1, 1000) == 24


def test_heat_costs_what_the_person_pays_for_the_fuel_that_brings_it() -> None:
    """Worked by hand: a therm is 29.307 kWh and 85 % of it reaches the rooms, 24.911; at 135 cents that is $1.35.

    Electric heat is all of it, a heat pump two and a half times: common practice.
    """
    plain = laid_out("zone 6").survey.basement
    paid = {"gas": 24.911, "electric": 1.0, "heat pump": 2.5}

    for fuel, kwh in paid.items():
        assert price_of(kwh, replace(plain, heat=fuel, heat_price=135)) == pytest.approx(1.35, abs=1e-4)


def test_without_a_price_or_a_fuel_there_is_no_money() -> None:
    """Heat alone is printed: nothing is made up."""
    plain = laid_out("zone 6").survey.basement

    assert price_of(100, replace(plain, heat="gas", heat_price=None)) is None
    assert price_of(100, replace(plain, heat="leave it out", heat_price=None)) is None


def test_every_fuel_is_a_choice_and_says_what_its_unit_holds() -> None:
    """What can be answered can be reckoned with, but for leaving it out."""
    choices = {choice.id for choice in load_book().by_ref["basement.heat"].choices}

    assert set(load_fuels()) == choices - {"leave it out"}
    assert all(fuel.kwh > 0 and fuel.source for fuel in load_fuels().values())


def test_the_page_prints_the_saving_in_money_at_the_price_and_its_unit() -> None:
    """Two figures, as for the heat: what is known of soil carries no more."""
    tree = job([wall("20 ft")], zone="zone 6", heat="gas", heat_price=135)
    plan = make_plan(load_book(), from_json(tree, load_book()))
    saving = saving_of(plan.layout.walls[0], plan.survey.basement)
    assert saving is not None
    dollars = saving.saved / 24.911 * 1.35

    assert warmth_of(plan, plan.layout.walls[0]).saved.endswith(f"${float(f'{dollars:.2g}'):.0f} at 135 cents a therm")
    assert "cents" not in warmth_of(plan, plan.layout.walls[0]).bare


@pytest.mark.parametrize(("humidity", "foam"), [("40", "2 in"), ("40", "3 in"), ("30", "2 in")])
def test_the_page_shows_the_foams_face_in_every_month_and_the_foam_that_keeps_it_dry(humidity: str, foam: str) -> None:
    """Twelve months in °F, “wet” under those below the dew point and under no other; the thickness named is the thinnest dry one."""
    book = load_book()
    tree = job([wall("144 in")], zone="zone 6", batts="yes", humidity=humidity, foam_thickness=foam)
    plan = make_plan(book, from_json(tree, book))
    only = plan.layout.walls[0]
    face, shown = foam_face(only, plan.survey.basement), warmth_of(plan, only)
    assert face is not None

    (name, *months), (_, *wet) = shown.year
    assert name == "face, °F"
    assert [f"{month} °F" for month in months] == [degrees(mean, "inches") for mean in face.months]
    assert [each == "wet" for each in wet] == [mean < face.dew for mean in face.months]
    need = foam_that_would_do(only, plan.survey.basement)
    assert need is not None
    assert f"foam {exact_inches(need)} in thick" in shown.dry
    thinner = foam_face(only, plan.survey.basement, need - inches("1/2"))
    enough = foam_face(only, plan.survey.basement, need)
    assert thinner is not None
    assert enough is not None
    assert thinner.wet > enough.wet == 0
    page = papers(plan)["wall-A.md"]
    assert "| Jan | Feb |" in page
    assert shown.dry in " ".join(page.split())


def test_before_batts_are_added_the_page_says_how_thick_the_foam_has_to_be() -> None:
    """Without batts it is weighed at 50 %, the damp side, and is what batts would need; without a zone nothing is said."""
    book = load_book()
    plain, batted = (job([wall("144 in")], zone="zone 5", batts=batts, humidity="50") for batts in ("no", "yes"))
    plan, other = (make_plan(book, from_json(tree, book)) for tree in (plain, batted))
    need = foam_that_would_do(other.layout.walls[0], other.survey.basement)
    assert need is not None
    said = warmth_of(plan, plan.layout.walls[0]).dry
    assert said.startswith("Before you add batts")
    assert f"at 50 %, foam {exact_inches(need)} in thick" in said
    bare = replace(plan.survey.basement, zone=None)
    unknown = replace(plan, survey=replace(plan.survey, basement=bare))
    assert warmth_of(unknown, plan.layout.walls[0]).dry == ""
