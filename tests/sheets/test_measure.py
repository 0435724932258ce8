"""The cards of what is still to be measured: one for each answer that locks or is in doubt, none when all is measured."""

from __future__ import annotations

import pytest

from guide.book.questions import load_book
from guide.layout.parts import Kind
from guide.reference.sketches import sketch_of
from guide.sheets.measure import cards
from guide.sheets.papers import papers
from guide.sheets.plan import make_plan
from guide.worked import WORKED_JOBS
from tests.jobs import job, wall, window
from tests.sheets.test_helper import plan_of
from tests.walkthroughs import worked


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_nothing_is_printed_when_everything_is_measured(name: str) -> None:
    plan = make_plan(load_book(), worked(name))
    assert cards(plan) == ()
    assert "measure.md" not in papers(plan)


def test_a_guessed_reading_has_its_card_with_the_books_own_words_and_a_blank_for_that_reading_alone() -> None:
    plan = plan_of(job([wall(height=["about 92 in at left", "92 in at right"])]))
    (card,) = cards(plan)
    assert card.name == "Wall A, slab to joists"
    assert card.how == load_book().by_ref["wall.height"].how
    assert card.blanks == ("at left",)
    assert card.unit == "in"
    assert "about 92 in at left" in card.said


def test_everything_that_is_locked_is_named_or_counted_on_a_card() -> None:
    """Every piece whose cut nobody may make stands behind the cards' words: up to eight by name, the others by number."""
    plan = plan_of(job([wall(openings=[{**window("40 in"), "left": "about 40 in"}])]))
    (card,) = cards(plan)
    laid = plan.layout.by_letter["A"]
    locked = [part for part in laid.parts if plan.survey.unsure(part.size_rests)]
    named, _, more = card.cuts.partition(" and ")
    assert named.split(", ") == [part.mark for part in locked[:8]]
    assert more == f"{len([part for part in locked if part.mark]) - 8} more"
    assert any(part.kind is Kind.TRIMMER for part in locked)


def test_what_nobody_answered_has_a_card_too_and_a_choice_is_ticked_where_a_size_is_written() -> None:
    """A job that has hardly begun; the second wall has not even a length."""
    plan = plan_of({"format": 1, "walls": [{"length": "12 ft"}, {}]})
    found = {card.path: card for card in cards(plan)}
    assert found["A.joists"].choices == tuple(choice.say for choice in load_book().by_ref["wall.joists"].choices)
    assert found["A.height"].blanks == ("at left", "at right")
    assert "B.length" in found
    asked = {
        rest.partition("@")[0]
        for rest in plan.survey.unsure(r for p in plan.layout.parts.values() for r in p.size_rests)
    }
    assert asked <= set(found)


def test_an_answer_in_doubt_has_a_card_though_it_locks_nothing() -> None:
    plan = plan_of(job([wall()]))
    assert cards(plan) == ()
    doubted = plan_of(job([wall(string={"value": "1 1/4 in", "confirm": True})]))
    assert [card.path for card in cards(doubted)] == ["A.string"]
    assert "to be confirmed" in cards(doubted)[0].said


def test_on_paper_a_card_is_cut_from_the_next_one_and_the_last_says_what_to_do_with_them() -> None:
    page = papers(plan_of(job([wall(height=["about 92 in at left", "about 92 in at right"], string="about 1 in")])))[
        "measure.md"
    ]
    assert page.count("## Card ") == 2
    assert page.index("## Card 2") < page.index("## When all are read")
    assert page.count(": \\_") == 2, "the height is read at both ends"
    assert page.count("- [ ] \\_") == 1, "one smallest size answers for the string"
    for ref in ("wall.height", "wall.string"):
        assert f"```text\n{sketch_of(ref)}\n```" in page, "where the tape is held is drawn on the card"
