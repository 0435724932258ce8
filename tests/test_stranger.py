"""A stranger who holds nothing but one wall's page can answer what building it takes."""

import pytest

from guide.book.questions import load_book
from guide.sheets.papers import papers
from guide.sheets.plan import make_plan
from guide.worked import WORKED_JOBS
from tests.stranger import answered, asked_of, figures_in, held_by, questions_of, untrue
from tests.walkthroughs import ROOT, worked

LEAST = 40
"""Questions for each worked job."""


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_every_answer_is_true_of_the_plan_and_stands_on_the_page_of_its_wall(name: str) -> None:
    """What plan.json says is what the wall's page says, in one row, line or paragraph under the heading named."""
    plan = make_plan(load_book(), worked(name))
    pages, asked = papers(plan), asked_of(plan)
    for question in questions_of(ROOT / name):
        on = asked[question.wall]
        assert figures_in(question, on) or question.true, f"nothing makes this true: {question.ask}"
        assert untrue(question, on) == [], question.ask
        assert held_by(question, on, pages[f"wall-{question.wall}.md"]), (
            f"{question.ask} {answered(question, on)}: not under “{question.under}” with {question.says}"
        )


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_there_are_forty_questions_and_no_two_ask_the_same(name: str) -> None:
    """At least forty for each job, every wall is asked about, and no kind of figure or claim makes up a fifth of them."""
    questions = questions_of(ROOT / name)
    kinds = [(each.answer.partition("{")[2].partition(" ")[0], *each.true) for each in questions]

    assert len({each.ask for each in questions}) == len(questions) >= LEAST
    assert {each.wall for each in questions} == {
        wall.letter for wall in make_plan(load_book(), worked(name)).layout.walls
    }
    assert max(kinds.count(kind) for kind in kinds) * 5 <= len(questions)


def test_a_wrong_answer_is_not_found_on_the_page() -> None:
    """A figure off by a sixteenth, or one that stands under another heading, is no answer."""
    plan = make_plan(load_book(), worked("first-wall"))
    page, on = papers(plan)["wall-A.md"], asked_of(plan)["A"]
    edge = next(each for each in questions_of(ROOT / "first-wall") if "{near A7}" in each.answer)

    assert held_by(edge, on, page)
    assert not held_by(edge, on, page.replace("98 3/4", "98 13/16"))
    assert not held_by(edge, on, page.replace("## Marks on the plates", "## Elsewhere"))
