"""The papers: valid Markdown, no line too wide, nothing a person typed can break them, nothing unmeasured is a cut."""

import json
import re

import pytest
from markdown_it import MarkdownIt

from guide.book.questions import load_book
from guide.interview.jobfile import Job, from_json
from guide.sheets.markdown import COLUMNS, fold
from guide.sheets.papers import papers
from guide.sheets.plan import make_plan
from guide.worked import WORKED_JOBS
from tests.jobs import l_room
from tests.walkthroughs import ROOT, worked

NASTY = "| `x` # <b>*_[a](b)_*</b> \x1b[31m ~~ ![i](j) \u202e ```"

DRAWN = {"record.md": {"table_open"}, "office.md": {"fence"}}
"""What a paper of its own must hold besides headings, lists and quotes."""


def _tree(name: str) -> dict[str, object]:
    tree = json.loads((ROOT / name / "job.json").read_text(encoding="utf-8"))
    assert isinstance(tree, dict)
    return tree


def _papers(tree: dict[str, object]) -> dict[str, str]:
    return papers(make_plan(load_book(), from_json(tree, load_book())))  # type: ignore[arg-type]


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_papers_read_well_raw_and_rendered(name: str) -> None:
    """An independent CommonMark parser sees the headings, tables and code blocks; no line but a table's is too wide."""
    for paper, text in papers(make_plan(load_book(), worked(name))).items():
        tokens = MarkdownIt("commonmark").enable("table").parse(text)
        kinds = {token.type for token in tokens}
        drawn = {"table_open", "fence"} if paper.startswith(("wall-", "job-sheet")) else DRAWN.get(paper, set())
        assert {"heading_open", "bullet_list_open", "blockquote_open"} | drawn <= kinds, paper
        assert not any(token.type == "html_block" for token in tokens), paper
        wide = [line for line in text.splitlines() if len(line) > COLUMNS and not line.startswith(("|", "#"))]
        assert wide == [], paper
        assert all(line == line.rstrip() for line in text.splitlines()), paper


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_every_paper_ends_with_the_same_word_of_caution(name: str) -> None:
    """Local code and licensed trades decide; that line closes every page, and no page says that anything passes."""
    for text in papers(make_plan(load_book(), worked(name))).values():
        ending = " ".join(line.removeprefix("> ") for line in text.rstrip().splitlines()[-2:])
        assert ending == "Planning aid. Local code and licensed trades decide. Measure again before you cut."
        assert not re.search(
            r"\b(passes code|passes inspection|complies|code compliant|meets code)\b", text, re.IGNORECASE
        )


def test_nothing_a_person_typed_can_break_a_page() -> None:
    """Markdown, HTML and control characters in names and remarks come out as text: the same blocks, no raw HTML."""
    tree = _tree("first-wall")
    plain = _papers(tree)
    walls = tree["walls"]
    assert isinstance(walls, list)
    nasty = {**tree, "note": NASTY, "walls": [{**walls[0], "name": NASTY[:30], "other": NASTY}]}
    parser = MarkdownIt("commonmark").enable("table")
    for paper, text in _papers(nasty).items():
        assert "\x1b" not in text
        assert "\u202e" not in text
        tokens = parser.parse(text)
        headings = [t for t in tokens if t.type == "heading_open"]
        assert len(headings) == len([t for t in parser.parse(plain[paper]) if t.type == "heading_open"])
        assert not any(t.type == "html_block" for t in tokens)
        assert not any(c.type in ("html_inline", "link_open", "image") for t in tokens for c in t.children or [])


def test_what_nobody_measured_is_locked_and_never_a_cut() -> None:
    """With an eyeballed length every stud's place and the plates are locked; measured, none of them is."""
    tree = _tree("first-wall")
    walls = tree["walls"]
    assert isinstance(walls, list)
    guessed = _papers({**tree, "walls": [{**walls[0], "height": ["about 91 1/4 in at left", "92 1/8 in at right"]}]})
    page = guessed["wall-A.md"]

    assert re.search(r"\| A1 +\| locked", page)
    assert "wall A: slab to joists at left" in page
    assert "H locked" in page  # on the drawing as well
    assert not re.search(r"\| locked|: locked|H locked", _papers(tree)["wall-A.md"])


def test_a_stop_prints_no_cut_and_no_shopping_list() -> None:
    """A wet wall: the findings and the drawing are there, the cuts, marks and purchases are not."""
    tree = _tree("first-wall")
    basement = tree["basement"]
    assert isinstance(basement, dict)
    stopped = _papers({**tree, "basement": {**basement, "water": "wet"}})

    for text in stopped.values():
        assert "STOP" in text
        assert "88 15/16" not in text
        assert "pre-cut" not in text


def test_a_job_that_has_hardly_begun_still_prints() -> None:
    """One wall with a length and nothing else gives papers, all of it locked."""
    pages = _papers({"format": 1, "walls": [{"length": "12 ft"}]})

    assert "locked" in pages["wall-A.md"]
    assert make_plan(load_book(), Job()).layout.walls == ()


def test_round_an_outside_corner_the_page_says_past_and_prints_no_minus() -> None:
    """Whoever marks the plates reads no size below zero; foam and cap say what one means."""
    wall = papers(make_plan(load_book(), from_json(l_room(), load_book())))["wall-D.md"]

    for label, size in (
        ("Left end of the plates past the left concrete corner", "2 3/8 in"),
        ("First drywall sheet starts (left) past the left end of the plates by", "4 in"),
    ):
        assert re.search(rf"^\| {re.escape(label)} +\| {size} +\|$", wall, re.MULTILINE)
    assert "the left one 2 3/8 in past the left" in wall
    assert "back edge of the end stud of wall C" in " ".join(wall.split())
    assert not re.search(r"(?<![\d/\w-])-\d", wall)
    assert "corner pack of wall C" not in wall


def test_blank_rows_of_a_drawing_stay_and_those_between_blocks_are_one() -> None:
    """A room drawn from above keeps its rows, or it would look shallower than it is."""
    assert fold("a\n\n\n\nb\n\n```text\nx\n\n\n\ny\n```\n\n\n") == "a\n\nb\n\n```text\nx\n\n\n\ny\n```\n"
