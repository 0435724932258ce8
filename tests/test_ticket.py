"""The cut ticket: every piece on its stick, and a claim about the lumber that is never stronger than its proof."""

from __future__ import annotations

import re

import pytest

from guide.book.questions import load_book
from guide.interview.jobfile import from_json
from guide.interview.written import Json
from guide.lengths import inches
from guide.reference.prices import NO_PRICES, Prices, invented_prices
from guide.sheets.plan import Plan, make_plan
from guide.sheets.ticket import lumber_said, stick_rows
from tests.jobs import job, wall
from tests.walkthroughs import worked


def plan_of(prices: Prices = NO_PRICES, **basement: Json) -> Plan:
    """Return the plan of one plain wall of 16 ft."""
    return make_plan(load_book(), from_json(job([wall("16 ft")], **basement), load_book()), prices=prices)


def test_without_prices_length_stands_for_money_and_the_claim_says_so() -> None:
    """Pieces, feet, the lengths on offer, the saw cut: the scope of the claim stands in it."""
    plain, treated = lumber_said(plan_of())

    assert "proven in whole numbers" in plain
    assert "(92 5/8 in, 8 ft)" in plain
    assert "1/8 in lost at each saw cut" in plain
    assert "Prices are missing, so length stands for money" in plain
    assert treated.startswith("2x4, pressure treated: the sticks to buy for 2 pieces come to 16'-0\"")


def test_with_prices_the_claim_is_in_money() -> None:
    """The invented prices: what the sticks come to is their sum, without the spare."""
    plan = plan_of(invented_prices())
    lumber = plan.purchase.lumber[0]

    assert f"come to {plan.prices.money(lumber.paid)}." in lumber_said(plan)[0]
    assert "length stands for money" not in lumber_said(plan)[0]


def test_without_a_proof_the_paper_says_how_much_could_be_saved_at_most(monkeypatch: pytest.MonkeyPatch) -> None:
    """Every limit of the solver reached: price, sure bound and difference are said, and nothing is called proven."""
    monkeypatch.setattr("guide.buying.cutting.solver.Solver.optimal", lambda self: False)
    plan = plan_of(invented_prices(), longest_stick="16", block_reach="concrete")
    lumber, said = plan.purchase.lumber[0], lumber_said(plan)[0]

    assert not lumber.proven
    assert "proven" not in said
    for cents in (lumber.paid, lumber.least, lumber.paid - lumber.least):
        assert plan.prices.money(cents) in said


def test_everything_at_home_is_said_and_nothing_is_claimed() -> None:
    """Twenty eights in the garage hold the plain pieces; the treated ones are still bought."""
    plan = plan_of(shopping="own", on_hand="20 2x4 8 ft")

    assert "what is at home already holds all" in lumber_said(plan)[0]
    assert all(("from home" in row[1]) == ("treated" not in row[1]) for row in stick_rows(plan))


def test_every_piece_stands_on_the_ticket_or_is_one_upright_of_a_stick() -> None:
    """Marks on the rows and the uprights counted in the first rows are all the wood there is."""
    plan = plan_of()
    rows = stick_rows(plan)
    singles = sum(int(row[1].split(" x ")[0]) for row in rows if " x " in row[1])
    marks = [mark for row in rows if " x " not in row[1] for mark in re.findall(r"\bA[A-Z]*\d+\b", row[2])]

    assert singles + len(marks) == sum(len(stick.parts) for stick in plan.purchase.sticks)
    assert len(set(marks)) == len(marks)


def test_a_stick_is_named_as_the_list_buys_it_on_either_tape() -> None:
    """The yard sells 8 ft and 92 5/8 in in both countries; what is cut from them is in the person's own unit."""
    for tape in ("inches", "millimetres"):
        plan = make_plan(load_book(), from_json(job([wall("16 ft")], tape=tape), load_book()))
        names = [row[1].partition(": ")[2] or row[1] for row in stick_rows(plan)]

        assert {name.removeprefix("14 x ") for name in names} == {"2x4 92 5/8 in", "treated 8 ft"}


def test_a_piece_that_rests_on_a_guess_is_locked_on_the_ticket() -> None:
    """A plate's length hangs on the wall's: with that guessed no size of it stands there, nor what is left over."""
    tree = job([{**wall(), "length": ["about 16 ft at floor"]}])
    rows = [row for row in stick_rows(make_plan(load_book(), from_json(tree, load_book()))) if "ATP" in row[2]]

    assert rows
    assert all(row[2].count("locked") == row[2].count("ATP") and row[3] == "locked" for row in rows)


def test_fewest_ways_are_claimed_only_where_it_is_so() -> None:
    """By hand, one level wall: its uprights are alike, its three pieces of top plate are not; of a basement a bound is said."""
    one, four = (lumber_said(plan)[0] for plan in (plan_of(), make_plan(load_book(), worked("four-walls"))))

    assert "cut in 4 different ways; no plan on these sticks takes fewer" in one
    found = re.search(r"cut in (\d+) different ways, the fewest found; none takes fewer than (\d+)", four)
    assert found
    assert int(found[1]) > int(found[2])


def test_an_offcut_that_makes_a_block_is_kept() -> None:
    """14 1/2 in or more says so, less does not; this wall has both."""
    plan = plan_of()
    left = {stick.parts[0].mark: stick.rest >= inches("14 1/2") for stick in plan.purchase.sticks}
    kept = {row[2].split()[0]: "keep" in row[3] for row in stick_rows(plan) if " x " not in row[1]}

    assert {True, False} == set(kept.values())
    assert kept == {mark: left[mark] for mark in kept}
