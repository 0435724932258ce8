"""The letter to the building office, and the walk before its inspector comes."""

import re

import pytest
from pydantic import ValidationError

from guide.book.conditions import tests_in as every_test
from guide.book.questions import load_book
from guide.interview.jobfile import from_json
from guide.layout.parts import Kind
from guide.order.facts import FACTS
from guide.reference.letter import PLACEHOLDERS, Ask, load_letter
from guide.sheets.letter import letter_of
from guide.sheets.papers import papers
from guide.sheets.plan import Plan, make_plan
from guide.sheets.view import WallView
from guide.sheets.walk import walk_of
from guide.worked import WORKED_JOBS
from tests.jobs import Tree, alongside, framed_door, job, outlet, standing, wall
from tests.walkthroughs import worked


def _planned(tree: Tree) -> Plan:
    return make_plan(load_book(), from_json(tree, load_book()))


def _pages(tree: Tree) -> dict[str, str]:
    return {name: " ".join(text.split()) for name, text in papers(_planned(tree)).items()}


def test_every_question_of_the_letter_tests_facts_there_are_and_every_name_is_filled() -> None:
    """The data hangs together: conditions over known facts, and each name in braces is used by some question."""
    letter = load_letter().question

    assert {test.of for each in letter for test in every_test(each.when)} <= set(FACTS)
    assert {name for each in letter for name in re.findall(r"{(\w+)}", each.here)} == PLACEHOLDERS


@pytest.mark.parametrize(("here", "before"), [("{nothing}", ("foam",)), ("as drawn", ("nothing",)), ("as drawn", ())])
def test_a_question_that_names_what_is_not_there_is_refused(here: str, before: tuple[str, ...]) -> None:
    """A name nothing fills, a step there is none of, or a question that nothing waits for."""
    with pytest.raises(ValidationError):
        Ask(about="x", ask="x?", here=here, before=before)


def test_the_letter_says_what_this_job_plans() -> None:
    """The blocks by wall and running inch, how far they reach, the cap's width: from the parts, not from the model code."""
    tree = job([wall()], block_reach="concrete")
    view = WallView(plan := _planned(tree), plan.layout.walls[0])
    letter = _pages(tree)["office.md"]

    places = ", ".join(view.mark(part.box.x0) for part in view.wall.of(Kind.FIREBLOCK))
    assert (
        f"from stud to concrete, from the bottom plate to the cap, places from the left end of the plates: wall A at {places}."
        in letter
    )
    assert "from stud to the face of the foam" in _pages(job([wall()]))["office.md"]
    assert f"wall A: strips {view.cap_wide} wide, lying on the concrete".lower() in letter.lower()


def test_what_only_some_jobs_ask_is_asked_there_alone() -> None:
    """Batts bring the question of facing, a bedroom that of its way out; a plain job is asked neither."""
    plain = [each.about for each in letter_of(_planned(job([wall()])))]
    asleep = [each.about for each in letter_of(_planned(job([wall()], use="sleeping", batts="yes")))]

    assert set(asleep) - set(plain) == {"facing and plastic on batts", "the way out of a room where somebody sleeps"}


def test_a_wall_page_names_the_question_at_the_step_that_waits_for_it() -> None:
    """Whoever holds only the wall's page learns there what the office must say first, by number and by subject."""
    page = _pages(job([wall()]))["wall-A.md"]
    numbers = {each.about: each.number for each in letter_of(_planned(job([wall()])))}
    cap = page.partition("Close the top with the cap")[2].partition("###")[0]

    assert (
        f"**The building office first:** question {numbers['the cap at the top of the concrete']} (the cap at the top"
        in cap
    )
    assert "The building office first" not in page.partition("Stand the studs")[2].partition("###")[0]


def test_the_job_sheet_sends_to_the_letter_and_does_not_repeat_it() -> None:
    pages = _pages(job([wall()]))

    assert "office.md" in pages["job-sheet.md"]
    assert "Do you accept a strip of 23/32 in plywood" not in pages["job-sheet.md"]


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_the_walk_passes_every_block_corner_joint_pipe_and_box_of_every_wall(name: str) -> None:
    """Every fireblock, pack, end stud, cap lap, box and bottom plate by its mark, at the inch of the marks table."""
    plan = make_plan(load_book(), worked(name))
    for laid in plan.layout.walls:
        view = WallView(plan, laid)
        looks = walk_of(view)
        for part in laid.of(Kind.FIREBLOCK, Kind.PACK, Kind.CAP_LAP, Kind.OUTLET, Kind.BOTTOM_PLATE):
            at = f"{view.mark(part.box.x0)} to {view.mark(part.box.x1)}"
            assert any(look.at == at and re.search(rf"\b{part.mark}\b", look.what) for look in looks), part.mark
        for pipe in laid.wall.pipes:
            assert any(f"ipe {pipe.place[-1]}, {pipe.carries}" in look.what for look in looks)


def test_the_walk_goes_from_the_left_and_asks_for_what_stands_there() -> None:
    """A drain, a box and a door, each once, in the order they come; the blocks of joists alongside last."""
    tree = job(
        [
            wall(
                "200 in",
                pipes=[standing("60 in")],
                boxes=[outlet("30 in")],
                openings=[framed_door("120 in")],
                **alongside(),
            )
        ]
    )
    plan = _planned(tree)
    said = [look.what for look in walk_of(WallView(plan, plan.layout.walls[0]))]
    order = [
        next(n for n, what in enumerate(said) if word in what)
        for word in ("electrical box", "Pipe 1", "Opening 1, door", "blocks between the joists")
    ]

    assert order == sorted(order)


def test_an_open_hold_stands_on_the_walk() -> None:
    """A cleanout without a panel is a HOLD: it is named among what must be settled, else nothing is."""
    held = wall(pipes=[{**standing("60 in"), "reach": "yes", "reach_height": "20 in"}])

    assert "- [ ] wall A: Pipe 1 has something a hand must reach" in _pages(job([held]))["walk.md"]
    assert "none stood when this was printed" in _pages(job([wall()]))["walk.md"]


def test_what_nobody_measured_is_locked_on_letter_and_walk_and_a_stop_holds_both_back() -> None:
    """No place is printed that rests on a guess; with a STOP there is no walk."""
    guessed = _pages(job([wall(string="about 1 1/4 in")]))
    assert "wall A at locked" in guessed["office.md"]
    assert "**locked to locked**" in guessed["walk.md"]

    stopped = _pages(job([wall()], water="wet"))
    assert "A STOP stands" in stopped["office.md"]
    assert "Held back by a STOP" in stopped["walk.md"]
    assert "upright fireblock beside" not in stopped["walk.md"]
