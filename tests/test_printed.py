"""Papers for the printer: one HTML page each, complete in itself, with everything that its Markdown says."""

from __future__ import annotations

import json
import re
from functools import lru_cache
from html.parser import HTMLParser

import pytest
from markdown_it import MarkdownIt

from guide.book.questions import load_book
from guide.cli import main
from guide.interview.jobfile import from_json
from guide.interview.written import Json
from guide.sheets.papers import papers
from guide.sheets.pictures import pictures
from guide.sheets.plan import Plan, make_plan
from guide.sheets.printed import load_sections, printed, printed_papers
from guide.worked import WORKED_JOBS
from tests.walkthroughs import ROOT, worked

VOID = {"meta", "hr", "br"}
NASTY = "| `x` # <b>*_[a](b)_*</b> \x1b[31m ~~ ![i](j) \u202e ``` <script>alert(1)</script> http://x.y </style> {{ 7 }}"


class Seen(HTMLParser):
    """What is on a page: its tags in order, what never closed, the words outside drawings and styles."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.tags: list[str] = []
        self.attributes: list[tuple[str, str | None]] = []
        self.words = ""
        self.broken: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.attributes += attrs
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.attributes += attrs

    def handle_endtag(self, tag: str) -> None:
        if not self.open or self.open.pop() != tag:
            self.broken.append(tag)

    def handle_data(self, data: str) -> None:
        if not {"svg", "style", "title"} & set(self.open):
            self.words += data


def seen(page: str) -> Seen:
    found = Seen()
    found.feed(page)
    found.close()
    return found


@lru_cache(maxsize=4)
def plan_of(name: str) -> Plan:
    return make_plan(load_book(), worked(name))


@lru_cache(maxsize=4)
def pages_of(name: str) -> dict[str, str]:
    plan = plan_of(name)
    return printed_papers(plan, papers(plan))


def nasty_plan() -> Plan:
    tree = json.loads((ROOT / "first-wall" / "job.json").read_text(encoding="utf-8"))
    walls: list[dict[str, Json]] = [{**tree["walls"][0], "name": NASTY[:30], "other": NASTY}]
    return make_plan(load_book(), from_json({**tree, "note": NASTY, "walls": walls}, load_book()))  # type: ignore[dict-item]


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_every_paper_has_its_page_and_every_drawing_its_file(name: str) -> None:
    plan, pages = plan_of(name), pages_of(name)
    assert {page for page in pages if page.endswith(".html")} == {
        paper.replace(".md", ".html") for paper in papers(plan)
    }
    drawn = {page for page in pages if page.endswith(".svg")}
    assert drawn == {f"{picture.name}.svg" for picture in pictures(plan)}
    assert {f"wall-{wall.letter}-{view}.svg" for wall in plan.layout.walls for view in ("elevation", "section")} < drawn


def test_a_corner_is_drawn_once_and_stands_on_the_pages_of_both_its_walls() -> None:
    """A closed room of four walls has four corners; a wall alone has the two it ends in, the left one first."""
    names = [picture.name for picture in pictures(plan_of("four-walls")) if picture.name.startswith("corner-")]
    assert sorted(names) == ["corner-A-B", "corner-B-C", "corner-C-D", "corner-D-A"]
    page = papers(plan_of("four-walls"))["wall-B.md"]
    assert 0 < page.index("Walls A and B: the inside corner") < page.index("Walls B and C: the inside corner")
    page = papers(plan_of("first-wall"))["wall-A.md"]
    assert 0 < page.index("Wall A, left end: the inside corner") < page.index("Wall A, right end: the inside corner")


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_a_page_is_well_formed_and_complete_in_itself(name: str) -> None:
    """Nothing is loaded and nothing runs: no script, no address, no picture but the drawings in it; no id twice."""
    for page, text in pages_of(name).items():
        found = seen(text)
        assert found.open == [], page
        assert found.broken == [], page
        assert not {"script", "link", "img", "iframe", "object", "a", "base", "form"} & set(found.tags)
        assert not {"src", "href", "xlink:href", "srcset"} & {name for name, _ in found.attributes}
        assert not any(name.startswith("on") for name, _ in found.attributes)
        assert re.findall(r"https?:", text) == ["http:"] * text.count('xmlns="http://www.w3.org/2000/svg"')
        ids = [value for name, value in found.attributes if name == "id"]
        assert len(ids) == len(set(ids))


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_every_drawing_in_text_is_printed_in_ink(name: str) -> None:
    """As many drawings as the Markdown has, none of them left as characters."""
    for paper, markdown in papers(plan_of(name)).items():
        found = seen(pages_of(name)[paper.replace(".md", ".html")])
        assert found.tags.count("svg") == found.tags.count("figure") == markdown.count("```text")
        assert found.tags.count("svg") > 0 or not paper.startswith(("wall-", "job-sheet"))
        assert "pre" not in found.tags


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_a_page_says_all_that_its_markdown_says(name: str) -> None:
    """Every word of every heading, table, list and paragraph, read by the parser with its usual settings, in order."""
    for paper, markdown in papers(plan_of(name)).items():
        tokens = MarkdownIt("commonmark").enable("table").parse(markdown)
        inline = [child for token in tokens for child in token.children or []]
        said = " ".join(child.content for child in inline if child.content).replace("[ ]", "")
        words = seen(pages_of(name)[paper.replace(".md", ".html")]).words
        assert re.findall(r"\w+", words) == re.findall(r"\w+", said), paper


def test_what_a_person_typed_is_printed_as_text() -> None:
    """Markup in names and remarks gives the same tags as a plain job has, and stands there to be read."""
    plan = nasty_plan()
    for page, text in printed_papers(plan, papers(plan)).items():
        if not page.endswith(".html"):
            continue
        found, plain = seen(text), seen(pages_of("first-wall")[page])
        assert found.open == found.broken == []
        for tag in ("script", "b", "img", "a", "style", "section", "h1", "h2", "svg", "code"):
            assert found.tags.count(tag) == plain.tags.count(tag), tag
        assert "<script>alert(1)</script>" in found.words
        assert "\x1b" not in text
        assert "\u202e" not in text


@pytest.mark.parametrize("name", WORKED_JOBS)
def test_there_is_a_box_for_everything_to_be_ticked_off(name: str) -> None:
    for paper, markdown in papers(plan_of(name)).items():
        text = pages_of(name)[paper.replace(".md", ".html")]
        assert text.count('<li class="tick">') == len(re.findall(r"^- \[ \] ", markdown, re.MULTILINE))
        assert text.count('<table class="ticks">') == len(re.findall(r"^\| Done ", markdown, re.MULTILINE))
        assert "[ ]" not in text


def test_every_part_that_is_printed_in_its_own_way_stands_on_some_paper() -> None:
    """A heading in print.toml that no paper has would turn no page; one that was renamed shows up here."""
    headings = {
        re.sub(r"^#+ (\d+ )?", "", line)
        for name in WORKED_JOBS
        for markdown in papers(plan_of(name)).values()
        for line in markdown.splitlines()
        if line.startswith("#")
    }
    assert set(load_sections()) <= headings


def test_the_page_turns_before_each_wall_and_before_what_goes_elsewhere() -> None:
    text = pages_of("four-walls")["job-sheet.html"]
    starts = re.findall(r'<section class="([^"]*)">\n<h([12])>([^<]*)', text)
    turned = [heading for classes, _, heading in starts if "new-page" in classes.split()]
    assert [heading for heading in turned if heading.startswith("Wall")] == [
        wall.wall.title for wall in plan_of("four-walls").layout.walls
    ]
    for heading in ("6 What to buy", "Marks on the plates", "Cut list"):
        assert heading in turned
    assert {heading for classes, _, heading in starts if "big" in classes.split()} >= {
        "Marks on the plates",
        "Cut list",
    }


def test_text_that_is_no_drawing_stays_as_it_stands() -> None:
    page = printed("a", "# A\n\n```text\n<b> a\n  b\n```\n", {})
    assert "<pre>&lt;b&gt; a\n  b</pre>" in page


def test_the_command_writes_the_pages_only_when_asked(tmp_path, capsys) -> None:  # type: ignore[no-untyped-def]
    job = str(ROOT / "first-wall" / "job.json")
    assert main(["plan", job, "--out", str(tmp_path / "plain")]) == 0
    assert {path.suffix for path in (tmp_path / "plain").iterdir()} == {".md", ".json", ".csv"}
    assert main(["plan", job, "--out", str(tmp_path / "print"), "--print"]) == 0
    assert {path.suffix for path in (tmp_path / "print").iterdir()} == {".md", ".json", ".csv", ".html", ".svg"}
    assert "wall-A.html" in capsys.readouterr().out
