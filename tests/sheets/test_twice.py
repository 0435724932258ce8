"""Measure twice: the readings that decide most are named, and what hangs on them is said."""

from __future__ import annotations

from collections.abc import Callable

from hypothesis import given, settings

from guide.book.questions import load_book
from guide.interview.answers import Answers, Certainty
from guide.interview.asking import asked_at
from guide.interview.jobfile import from_json
from guide.layout.parts import Layout
from guide.lengths import inches
from guide.reference.findings import Severity
from guide.sheets.papers import papers
from guide.sheets.plan import make_plan
from guide.sheets.twice import Doubtful, again_lines, doubts, moved, slip_of, tape_again
from tests.jobs import Tree, job, layout_of, level, new_door, wall, window
from tests.properties.rooms import single_walls

BOOK = load_book()


def answers_of(tree: Tree) -> Answers:
    """Return the answers of a job."""
    return from_json(tree, BOOK).answers


def doubtful(tree: Tree) -> dict[str, Doubtful]:
    """Return every reading of a job with what hangs on it, by its id."""
    return {each.rest: each for each in doubts(BOOK, answers_of(tree))}


def rests_of(layout: Layout) -> frozenset[str]:
    """Return every answer that anything of a layout rests on."""
    return frozenset().union(*(part.size_rests | part.place_rests for part in layout.parts.values()))


HEADROOM: Callable[[str], Tree] = lambda high: job([wall(**level(high, "83 1/2 in"))])  # noqa: E731


def test_a_reading_that_would_bring_a_finding_is_the_first_to_tape_again() -> None:
    """Joists at 85 leave exactly 84 of headroom; a sixteenth less and the finding comes."""
    again = tape_again(BOOK, answers_of(HEADROOM("85 in")))

    assert again[0].rest in ("A.height@left", "A.height@right")
    assert (Severity.HOLD, "headroom_floor", True) in [(c.severity, c.what, c.comes) for c in again[0].found]


def test_the_same_reading_far_from_the_edge_brings_none() -> None:
    """With an inch to spare no sixteenth matters to the headroom."""
    assert "headroom_floor" not in {c.what for each in doubtful(HEADROOM("86 in")).values() for c in each.found}


def test_a_finding_that_would_go_is_named_too() -> None:
    """A sixteenth under the edge the finding is there, and might not be."""
    changes = [c for each in doubtful(HEADROOM("84 15/16 in")).values() for c in each.found]

    assert {change.comes for change in changes if change.what == "headroom_floor"} == {False}


def test_a_contradiction_that_a_slip_would_make_counts_as_a_stop() -> None:
    """A window that ends a sixteenth before the joists would reach over them."""
    tree = job([wall("144 in", openings=[window("40 in", "32 in", "24 in", "68 in")])])
    changes = doubtful(tree)["A.opening1.sill"].found

    assert (changes[0].severity, changes[0].comes) == (Severity.STOP, True)


def test_a_length_that_is_not_the_smallest_of_three_decides_nothing() -> None:
    """The shortest tape counts; the others may be an eighth off without a piece changing."""
    found = doubtful(job([{**wall(), "length": ["144 in at floor", "144 1/2 in at chest", "144 3/4 in at joists"]}]))

    assert found["A.length@floor"].matters
    assert not found["A.length@chest"].matters
    assert not found["A.length@joists"].matters


def test_a_height_moves_the_studs_near_it_by_its_slip_at_most() -> None:
    """The left height of a wall of 12 ft is worth a sixteenth to a cut."""
    found = doubtful(job([wall()]))["A.height@left"]

    assert found.slip == inches("1/16")
    assert found.cuts > 3
    assert inches("1/16") <= found.by <= inches("1/8")


def test_a_stud_that_just_fits_a_precut_stick_makes_its_height_a_purchase() -> None:
    """Studs are the height less 3 1/8: under 95 13/16 they are 92 11/16, a sixteenth over the precut length.

    Precut studs are 92 5/8 (Journal of Light Construction, seen).
    """
    found = doubtful(job([wall(**level("95 13/16 in", "94 1/4 in"))]))["A.height@left"]

    assert any("92 5/8" in name for name in found.bought)


def test_slips_grow_with_the_reading_and_with_how_it_was_read() -> None:
    """A taped size is good to a sixteenth, a long one to an eighth, an eyeballed one to an inch: common practice."""
    assert slip_of(inches("95 15/16"), Certainty.MEASURED) == inches("1/16")
    assert slip_of(inches("96"), Certainty.MEASURED) == inches("1/8")
    assert slip_of(inches("2"), Certainty.EYEBALLED) == inches("1")


def test_what_nobody_measured_is_not_on_the_list() -> None:
    """A guess is asked for anyway, and is no reading to tape again."""
    tree = job([wall(string={"value": "1 1/4 in", "known": "assumed"})])

    assert "A.string" not in doubtful(tree)
    assert "A.lean" in doubtful(tree)


def test_five_at_most_are_named_the_worst_first_and_the_list_is_the_same_every_time() -> None:
    """A person tapes five readings again, not fifty."""
    tree = job([wall("12 ft"), wall("8 ft")])
    first, second = (tape_again(BOOK, answers_of(tree)) for _ in range(2))

    assert first == second
    assert 0 < len(first) <= 5
    assert [each.rank for each in first] == sorted(each.rank for each in first)


@settings(max_examples=5)
@given(tree=single_walls())
def test_what_a_reading_changes_had_named_it_among_its_rests(tree: Tree) -> None:
    """The slips agree with the rests: a reading that changes a cut is one that a part rests on; so no lock is missing."""
    rests = rests_of(layout_of(tree))

    for each in doubts(BOOK, answers_of(tree)):
        if each.cuts or each.other:
            assert each.rest in rests, each


def test_the_lines_say_reading_slip_and_what_would_change() -> None:
    """On the screen: the number, the reading by name, how far off, and each change in a sentence."""
    lines = again_lines(tape_again(BOOK, answers_of(HEADROOM("85 in"))), "inches")

    assert lines[1].startswith("1  Wall A: slab to joists at ")
    assert "If it is off by 1/16 in:" in lines[1]
    assert any("WARN, wall A" in line for line in lines)
    assert again_lines((), "inches") == [
        "No reading is so near an edge that being off by a little changes a cut, a purchase or a finding."
    ]


def test_the_sheet_names_them_when_they_were_worked_out_and_says_how_when_not() -> None:
    """The papers of the command have the list with a line to write on; those made in passing name the command."""
    tree = job([wall(openings=[new_door("50 in")])])
    made = make_plan(BOOK, from_json(tree, BOOK))
    again = tape_again(BOOK, answers_of(tree))
    with_list, without = papers(made, again)["job-sheet.md"], papers(made)["job-sheet.md"]

    assert "Tape these again before the first cut" in with_list
    assert with_list.count("now I read") == len(again)
    assert "wallbrief twice" in without


def test_a_slip_out_of_the_range_of_its_question_is_not_tried() -> None:
    """Foam of half an inch is the thinnest that is taken: thinner is no answer, thicker is one."""
    answers, slip = answers_of(job([wall()], foam_thickness="1/2 in")), inches("1/16")
    asked = asked_at(BOOK, "basement.foam_thickness")
    assert asked is not None
    thicker = moved(asked.question, answers[asked.path], None, slip)

    assert moved(asked.question, answers[asked.path], None, -slip) is None
    assert thicker is not None
    assert thicker.value == inches("9/16")
