"""Boxes at the face of the wall, and what prints for whoever does the wiring."""

from __future__ import annotations

from dataclasses import replace

import pytest

from guide.book.questions import load_book
from guide.checks.electrical import box_findings
from guide.interview.jobfile import from_json
from guide.layout.parts import Kind, WallLayout
from guide.lengths import inches
from guide.reference.codes import load_code
from guide.reference.electrical import load_wiring
from guide.sheets.papers import papers
from guide.sheets.plan import make_plan
from tests.jobs import job, laid, outlet, wall


def set_back(by: str) -> WallLayout:
    """Return a wall whose only box was fixed so far behind the face of the drywall."""
    built = laid(wall("196 in", boxes=[outlet("60 in")]))
    moved = [
        replace(p, box=replace(p.box, y1=p.box.y1 - inches(by))) if p.kind is Kind.OUTLET else p for p in built.parts
    ]
    return replace(built, parts=tuple(moved))


@pytest.mark.parametrize(
    ("by", "keys"), [("1/2", ["box_set_back"]), ("5/16", ["box_set_back"]), ("1/4", []), ("0", [])]
)
def test_a_box_a_quarter_behind_the_drywall_is_told(by: str, keys: list[str]) -> None:
    """NEC 314.20: 1/4 in at most behind gypsum; a box flush with the stud is 1/2 back and HOLDs the wiring."""
    assert [found.key for found in box_findings(set_back(by), load_code())] == keys


@pytest.mark.parametrize(
    ("edition", "use", "there", "not_there"),
    [
        ("2017", "living", "stays unfinished have ground-fault", "Every outlet down here"),
        ("2020", "living", "Every outlet down here", "stays unfinished have"),
        ("2023", "sleeping", "arc-fault", "besides those for appliances"),
        ("2023", "storage", "besides those for appliances", "arc-fault"),
    ],
)
def test_the_rules_printed_are_those_of_the_edition_and_the_room(
    edition: str, use: str, there: str, not_there: str
) -> None:
    """GFCI for the whole basement came with the 2020 edition; AFCI is for rooms people live in."""
    said = " ".join(said for said, _, _ in load_wiring().rules(edition, use))

    assert there in said
    assert not_there not in said
    assert all(edition in cited for _, cited, _ in load_wiring().rules(edition, use))


def test_a_canadian_sheet_prints_no_us_wiring_rules() -> None:
    """No figure of Canada's electrical code is at hand, so none is printed in its place."""
    book = load_book()
    trees = (job([wall("196 in")], code=code) for code in ("us 2021", "canada 2020"))
    us, canada = (papers(make_plan(book, from_json(tree, book)))["job-sheet.md"] for tree in trees)

    assert "For whoever does the wiring" in us
    assert "For whoever does the wiring" not in canada
