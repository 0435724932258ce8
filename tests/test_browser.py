"""The printed pages in a real browser without a screen: counted, nothing cut off, every drawing there and readable.

Needs Chromium (`apt-get install chromium`); without it these tests are skipped.
"""

from __future__ import annotations

import json
import re
import shutil
import subprocess
from functools import lru_cache
from html import unescape
from pathlib import Path

import pytest
from pypdf import PageObject, PdfReader

from tests.test_printed import pages_of, plan_of

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
pytestmark = pytest.mark.skipif(
    CHROMIUM is None, reason="there is no Chromium on this machine to print the pages with; apt-get install chromium"
)
QUIET = (
    "--headless --no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking "
    "--disable-component-update --disable-sync --hide-scrollbars"
).split()
PAPER = {"letter": (612, 792), "A4": (595, 842)}
"""Width and height in points of 1/72 in: 8 1/2 by 11 in, and 210 by 297 mm (ISO 216)."""
EDGE = 36
"""Half an inch, which common printers cannot print on more than."""
MEASURE = """
<script>
const wide = document.documentElement.clientWidth, said = [];
for (const e of document.querySelectorAll('h1,h2,h3,p,li,th,td,pre,figure,blockquote'))
  if (e.getBoundingClientRect().right > wide || e.scrollWidth > e.clientWidth + 1 && e.clientWidth)
    said.push('too wide: ' + e.textContent.slice(0, 60));
for (const svg of document.querySelectorAll('svg')) {
  const room = svg.getBoundingClientRect(), words = [...svg.querySelectorAll('text')];
  const boxes = words.map(word => word.getBoundingClientRect());
  boxes.forEach((box, i) => {
    if (box.left < room.left || box.right > room.right || box.top < room.top || box.bottom > room.bottom)
      said.push('off the drawing: ' + words[i].textContent);
    for (let j = 0; j < i; j++) {
      const other = boxes[j], x = Math.min(box.right, other.right) - Math.max(box.left, other.left);
      const y = Math.min(box.bottom, other.bottom) - Math.max(box.top, other.top);
      if (x > 1 && y > box.height / 4 && y > box.width / 4)
        said.push('on each other: ' + words[i].textContent + ' and ' + words[j].textContent);
    }
  });
}
document.body.innerHTML = '<output>' + JSON.stringify([document.querySelectorAll('svg').length, said])
  .replace(/&/g, '&amp;').replace(/</g, '&lt;') + '</output>';
</script>
"""


def run(folder: Path, *options: str) -> str:
    assert CHROMIUM is not None
    command = [CHROMIUM, *QUIET, f"--user-data-dir={folder / 'profile'}", *options]
    return subprocess.run(command, check=True, capture_output=True, text=True, timeout=120).stdout


@lru_cache(maxsize=8)
def page_texts(folder: Path, job: str, page: str, paper: str) -> tuple[tuple[str, ...], PdfReader]:
    """Print a page on paper and return the words of each sheet."""
    html = pages_of(job)[page].replace("</style>", f"@page {{ size: {paper} }}</style>")
    (folder / page).write_text(html, encoding="utf-8")
    pdf = folder / f"{page}.{paper}.pdf"
    run(folder, "--no-pdf-header-footer", f"--print-to-pdf={pdf}", (folder / page).as_uri())
    reader = PdfReader(pdf)
    return tuple(sheet.extract_text() for sheet in reader.pages), reader


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("printed")


def squeezed(text: str) -> str:
    return re.sub(r"\s", "", text)


def places(sheet: PageObject) -> list[tuple[float, float, str]]:
    """Return where every piece of text begins, from the lower left corner of the sheet."""
    found: list[tuple[float, float, str]] = []

    def visit(text: str, cm: list[float], tm: list[float], *_: object) -> None:
        if text.strip():
            x = tm[4] * cm[0] + tm[5] * cm[2] + cm[4]
            y = tm[4] * cm[1] + tm[5] * cm[3] + cm[5]
            found.append((x, y, text))

    sheet.extract_text(visitor_text=visit)
    return found


@pytest.mark.parametrize(
    ("job", "page", "paper"),
    [
        ("first-wall", "job-sheet.html", "letter"),
        ("four-walls", "wall-A.html", "letter"),
        ("four-walls", "wall-A.html", "A4"),
        ("four-walls", "office.html", "letter"),
        ("four-walls", "walk.html", "A4"),
        ("four-walls", "record.html", "letter"),
    ],
)
def test_on_either_paper_every_sheet_is_counted_and_everything_stands_within_its_edges(
    folder: Path, job: str, page: str, paper: str
) -> None:
    (folder / job).mkdir(exist_ok=True)
    texts, reader = page_texts(folder / job, job, page, paper)
    wide, tall = PAPER[paper]
    assert 3 <= len(texts) <= 40
    for number, (text, sheet) in enumerate(zip(texts, reader.pages, strict=True), 1):
        assert (round(sheet.mediabox.width), round(sheet.mediabox.height)) == (wide, tall)
        assert f"{number} of {len(texts)}" in text
        assert page.removesuffix(".html") in text
        # the closing line may fall on a sheet of its own: a list in two columns cannot hold it back
        assert len(squeezed(text)) > 120 or number == len(texts), f"sheet {number} is nearly empty"
        for x, y, words in places(sheet):
            assert EDGE - 1 <= x <= wide - EDGE, words
            assert 18 <= y <= tall - EDGE, words


@pytest.mark.parametrize("paper", PAPER)
def test_the_helpers_page_is_one_sheet_of_paper_printed_on_both_sides(folder: Path, paper: str) -> None:
    """In front tonight's work and the numbers; on the back the drawing, how to call out, when to stop, how to leave."""
    (folder / "four-walls").mkdir(exist_ok=True)
    texts, _ = page_texts(folder / "four-walls", "four-walls", "helper-B.html", paper)
    assert len(texts) == 2
    assert "Today" in texts[0]
    assert "Studs (14)" in texts[0]
    assert "seen from the room" in texts[1]
    assert "Hand-off" in texts[1]


@pytest.mark.parametrize("job", ["first-wall", "four-walls"])
def test_the_briefing_is_one_sheet(folder: Path, job: str) -> None:
    (folder / job).mkdir(exist_ok=True)
    texts, _ = page_texts(folder / job, job, "brief.html", "letter")
    assert len(texts) == 1
    assert "Before we leave" in texts[0]


@pytest.mark.parametrize("paper", PAPER)
def test_drawings_are_whole_on_one_sheet_and_what_goes_to_the_saw_begins_one(folder: Path, paper: str) -> None:
    """A drawing's title, its last dimension and its legend stand on the same sheet; the cut list opens its own."""
    (folder / "four-walls").mkdir(exist_ok=True)
    texts, _ = page_texts(folder / "four-walls", "four-walls", "wall-A.html", paper)
    elevation = [text for text in texts if "), seen from the room" in text]
    section = [text for text in texts if "cut through at stud" in text]
    assert len(elevation) == len(section) == 1
    assert "concrete, corner to corner" in elevation[0]
    assert "foam behind the studs" in elevation[0]
    assert "drywall: 6 3/8" in section[0]
    assert "gasket" in section[0]
    for heading in ("The wall", "Marks on the plates", "Cut list", "Foam", "Order of operations"):
        opening = re.compile(rf"\d+ of \d+wall-A\s*{heading}")  # the foot of a sheet is read before its words
        assert len([text for text in texts if opening.match(text)]) == 1, heading


@pytest.mark.parametrize("paper", PAPER)
def test_every_mark_and_every_cut_reaches_the_paper(folder: Path, paper: str) -> None:
    """Each stud's mark stands on the sheets in the table of marks and in the cut list, each piece of foam in its own."""
    (folder / "four-walls").mkdir(exist_ok=True)
    texts, _ = page_texts(folder / "four-walls", "four-walls", "wall-A.html", paper)
    everything = " ".join(texts)
    for part in plan_of("four-walls").layout.by_letter["A"].parts:
        # pieces over the concrete that are cut alike share a row, named by the first and the last
        least = {
            "stud": 2,
            "king stud": 2,
            "corner pack stud": 2,
            "fireblock": 2,
            "foam": 1,
            "cap strip": 1,
            "rim foam": 0,
        }
        assert len(re.findall(rf"\b{part.mark}\b", everything)) >= least.get(part.kind.value, 1), part.mark


@pytest.mark.parametrize(
    ("job", "page", "drawings"), [("four-walls", "job-sheet.html", 21), ("first-wall", "wall-A.html", 5)]
)
def test_at_the_width_of_the_narrower_paper_nothing_is_cut_off_and_no_words_stand_on_others(
    tmp_path: Path, job: str, page: str, drawings: int
) -> None:
    """Measured by the browser itself, with the typeface that it takes: 7.27 in of A4 at 96 to the inch."""
    html = re.sub(r"<meta http-equiv[^>]*>", "", pages_of(job)[page]).replace("@media screen", "@media none")
    (tmp_path / page).write_text(html.replace("</body>", f"{MEASURE}</body>"), encoding="utf-8")
    dom = run(tmp_path, "--window-size=698,1000", "--dump-dom", (tmp_path / page).as_uri())
    found = re.search(r"<output>(.*)</output>", dom, re.DOTALL)
    assert found
    count, said = json.loads(unescape(found[1]))
    assert count == drawings
    assert said == []


def test_the_page_as_it_is_runs_no_script(tmp_path: Path) -> None:
    """Even one that was put into it: the page forbids it to the browser."""
    html = pages_of("first-wall")["wall-A.html"]
    (tmp_path / "a.html").write_text(html.replace("</body>", f"{MEASURE}</body>"), encoding="utf-8")
    assert "<output>" not in run(tmp_path, "--dump-dom", (tmp_path / "a.html").as_uri()).replace("'<output>'", "")
