"""What the page of one wall has to say to somebody who holds nothing else."""

import re

import pytest

from guide.book.questions import load_book
from guide.interview.jobfile import from_json
from guide.layout.parts import Kind
from guide.lengths import in_inches, inches
from guide.sheets.drywall import outside_lines
from guide.sheets.papers import papers
from guide.sheets.plan import Plan, make_plan
from guide.sheets.view import WallView
from guide.worked import WORKED_JOBS
from tests.jobs import Tree, job, partition, partition_wall, wall
from tests.walkthroughs import worked


def _rows(page: str, mark: str) -> list[list[str]]:
    """The rows of a page's tables that begin with a box to tick and this mark."""
    return [[cell.strip() for cell in row.split("|")[2:-1]] for row in re.findall(rf"^\|  +\| {mark} .*$", page, re.M)]


def _planned(name: str) -> Plan:
    return make_plan(load_book(), worked(name))


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_a_box_hangs_beside_the_stud_whose_left_edge_the_marks_give(name: str) -> None:
    """The reason names the stud by the edge that is marked on the plates, not by its middle."""
    plan = _planned(name)
    for laid in plan.layout.walls:
        studs = {in_inches(laid.mark_of(part.box.x0)) for part in laid.of(Kind.STUD, Kind.KING, Kind.CRIPPLE)}
        for decision in laid.decisions:
            if decision.saying.key in ("decision.box_beside", "decision.box_moved_old"):
                beside = dict(decision.saying.values)["beside"]
                assert in_inches(beside) in studs, decision  # type: ignore[arg-type]


def test_foam_cap_and_drywall_have_both_edges() -> None:
    """Nobody has to add a width to a left edge; checked on the first wall's pieces, worked by hand in its story's sizes."""
    page = papers(_planned("first-wall"))["wall-A.md"]

    assert _rows(page, "Af3")[0][:4] == ["Af3", "98 1/8", "146 1/8", "48"]
    assert _rows(page, "Acap2")[0][:4] == ["Acap2", "93 1/2", "169 5/8", "4 7/8"]
    assert _rows(page, "AD3")[0][:4] == ["AD3", "51 1/2", "147 1/2", "96"]


def test_a_mitred_end_is_told_to_the_saw() -> None:
    """A bay of 45 degrees: half of it off square, the slant in both edges of its mark, and which edge is the short one."""
    first = wall("120 in", right="inside corner", right_first="you choose", across="129 9/16 in")
    book, tree = load_book(), job([first, wall("96 in")], square="across the corners")
    page = papers(make_plan(book, from_json(tree, book)))["wall-A.md"]

    assert re.search(r"Plates, long point to long point +\| 116 5/8 in", page)
    assert re.search(r"Right end of the plates is sawn off square by +\| 22 1/2 degrees", page)
    assert re.search(r"Its room edge is the shorter one, by +\| 1 7/16 in", page)
    assert re.search(r"\| 115 3/16 +\| 116 5/8 +\| 1 7/16 +\| / +\| both", page)
    assert "right end at a slant, its edge toward the room 1 7/16 in shorter" in page


def test_the_page_says_how_many_tubes_its_wall_takes() -> None:
    """Worked by hand: four pieces 48 by 89 1/2 or so, 1 in from the edge all round and down the middle, 38 ft a tube."""
    pieces = [("48", "89 1/4"), ("48", "89 3/8"), ("48", "89 5/8"), ("47 3/4", "89 7/8")]
    bead = sum(2 * (inches(wide).inch - 2) + 3 * (inches(tall).inch - 2) for wide, tall in pieces) / 12
    assert 3 * 38 < bead <= 4 * 38

    page = papers(_planned("first-wall"))["wall-A.md"]
    assert "- foam board adhesive, solvent free, 28 oz: 4 tubes" in page
    assert re.search(r"- fireblock sealant, 10 oz: \d+ tubes", page)


def test_a_count_that_rests_on_a_guess_is_locked() -> None:
    """An eyeballed foam edge is no number of tubes."""
    guessed = job([wall(concrete=["about 90 1/2 in at left", "90 1/2 in at right"])])
    page = papers(make_plan(load_book(), from_json(guessed, load_book())))["wall-A.md"]

    assert "- foam board adhesive, solvent free, 28 oz: locked" in page


def test_places_that_nobody_read_are_locked_once_in_a_row() -> None:
    """Where the joists are a guess, pieces of rim foam cut alike have one row and one word for where they go."""
    guessed = job([wall(first_joist="about 15 1/4 in")])
    page = papers(make_plan(load_book(), from_json(guessed, load_book())))["wall-A.md"]
    (row,) = _rows(page, r"Ar2 to Ar\d+")

    assert row[3] == "locked"


def test_a_partitions_page_speaks_of_no_foam_and_no_concrete_corner_and_lists_both_sides_of_drywall() -> None:
    """From 120 less F of wall A, 5 7/8, the far side's first edge is the plates' other end. A row a side has its own list."""
    walls = [wall("196 in", openings=[partition("80 in")]), partition_wall("120 in")]
    page = papers(make_plan(load_book(), from_json(job(walls), load_book())))["wall-B.md"]
    before = page.partition("## Words")[0]

    assert before.count("On the far side") == 1
    for words in ("## Foam", "## Fireblocks", "concrete corner", "## How much heat", "| locked"):
        assert words not in before
    assert {"0", "114 1/8"} <= {cell for row in _rows(before, r"BD\d+") for cell in row}


def test_round_an_outside_corner_the_page_says_whose_sheets_go_first_and_how_far_the_others_run_past() -> None:
    """Through ends flush; butt covers 3 1/2 of the other's framing and 1/2 of its sheet, whichever wall is longer. Mitred at
    45 degrees of turn, 56 11/16 across marks at 60 and 80, neither laps: a bead of 135."""
    round_it: Tree = {"right": "outside corner", "right_first": "this wall"}
    walls = [
        wall("96 in", across="100 in", **round_it),
        wall("144 in", across="56 11/16 in", **round_it),
        wall("96 in"),
    ]
    plan = make_plan(load_book(), from_json(job(walls, square="across the corners"), load_book()))
    a, b, c = ([" ".join(line.split()) for line in outside_lines(WallView(plan, laid))] for laid in plan.layout.walls)

    assert [line.partition(": ")[2].partition(" and ")[0] for line in a] == ["these sheets hang first"]
    assert "hang these after those of wall A. They run 4 in past" in b[0]
    assert all("an outside corner of 135 degrees" in line for line in (b[1], c[0]))
