"""What the list costs: whole cents, nothing guessed, and every trip adds up to the whole."""

from __future__ import annotations

import csv
import io
from decimal import Decimal

from guide.book.questions import load_book
from guide.buying.bill import bill_of, cost_of
from guide.interview.jobfile import from_json
from guide.reference.prices import NO_PRICES, Prices, invented_prices
from guide.sheets.papers import papers
from guide.sheets.plan import Plan, make_plan
from guide.sheets.shopping import held_lines, shopping_csv, trips_of
from tests.jobs import job, wall
from tests.walkthroughs import worked


def plan_of(name: str, prices: Prices = NO_PRICES) -> Plan:
    """Return the plan of a job that ships, with prices."""
    return make_plan(load_book(), worked(name), prices=prices)


def test_trips_and_lines_add_up_to_the_whole_cent() -> None:
    """The sum of the trips, of the lines, and of the spreadsheet's column are one number."""
    plan = plan_of("four-walls", invented_prices())
    whole = bill_of(plan.purchase.lines, plan.prices)
    rows = list(csv.DictReader(io.StringIO(shopping_csv(plan))))

    assert whole.unpriced == ()
    assert sum(trip.bill.cents for trip in trips_of(plan)) == whole.cents > 0
    assert sum(Decimal(row["cost"]) for row in rows) * 100 == whole.cents
    assert len(rows) == len(plan.purchase.lines)
    assert plan.prices.money(whole.cents) in papers(plan)["shopping.md"]


def test_a_thing_without_a_price_is_never_free() -> None:
    """It is left out of the sum, named, and its place on the list stays blank."""
    plan = plan_of("first-wall", Prices({"adhesive": 898}))
    tubes = next(line for line in plan.purchase.lines if line.ware == "adhesive")
    bill = bill_of(plan.purchase.lines, plan.prices)
    page = " ".join(papers(plan)["shopping.md"].split())

    assert cost_of(tubes, plan.prices) == 4 * 898 == bill.cents
    assert set(bill.unpriced) == {line.ware for line in plan.purchase.lines} - {"adhesive"}
    assert f"$35.92 and {len(bill.unpriced)} without a price" in page
    assert "$8.98 each, $35.92" in page
    assert "no price yet" in page  # the second trip
    assert page.count("_____") == len([line for line in plan.purchase.lines if line.buy]) - 1


def test_without_prices_every_place_is_blank_and_nothing_is_added_up() -> None:
    """A column to write into; no sign of money anywhere."""
    plan = plan_of("first-wall")
    page = papers(plan)["shopping.md"]

    assert page.count("_____") == len(plan.purchase.lines)
    assert "$" not in page


def test_what_rests_on_a_reading_not_taken_goes_on_no_trip() -> None:
    """A guessed height: studs and foam wait, and say for which reading; the gasket does not."""
    tree = job([wall("16 ft", height=["about 92 in at left", "92 in at right"])])
    plan = make_plan(load_book(), from_json(tree, load_book()))
    by_trip = {trip.id: {row.line.ware: row for _, rows in trip.aisles for row in rows} for trip in trips_of(plan)}

    assert "stud_2x4 92 5/8 in" in by_trip["unmeasured"]
    assert "gasket" in by_trip["first"]
    assert by_trip["unmeasured"]["stud_2x4 92 5/8 in"].waits == ("wall A: slab to joists at left",)
    assert "waits for* wall A: slab to joists at left" in " ".join(papers(plan)["shopping.md"].split())


def test_batts_and_drywall_are_bought_only_after_the_inspection() -> None:
    """What the inspector says may change them."""
    plan = make_plan(load_book(), from_json(job([wall("16 ft")], batts="yes"), load_book()))
    (late,) = [trip for trip in trips_of(plan) if trip.id == "inspected"]

    assert [row.line.ware for _, rows in late.aisles for row in rows] == ["batt", "drywall_screw", "drywall 4 by 8 ft"]


def test_what_a_hold_may_change_is_named_at_the_head_of_the_list() -> None:
    """Nobody has looked for cracks: the foam waits, and so does what goes on with it; the studs do not."""
    tree = job([wall("16 ft")], cracks={"known": "unknown"})
    plan = make_plan(load_book(), from_json(tree, load_book()))
    held = [said for said in held_lines(plan) if "not before this is settled" in said]
    page = " ".join(papers(plan)["shopping.md"].split())

    assert any("Rigid foam board" in said and "foam board adhesive" in said for said in held)
    assert not any("kiln dried" in said for said in held)
    assert "A HOLD stands" in page
    assert held_lines(plan_of("first-wall")) == []
    assert "A HOLD stands" not in papers(plan_of("first-wall"))["shopping.md"]
