"""The README's main picture is drawn by a command, small, and fetches nothing."""

from __future__ import annotations

import re

from guide.book.questions import load_book
from tests.picture import PICTURE, STOP_AT


def test_the_picture_in_the_readme_shows_the_worked_talk_and_fetches_nothing() -> None:
    """The SVG is under 120 kB, names no address but that of its own format, and shows the question it is stopped at."""
    svg = PICTURE.read_text(encoding="utf-8")
    words = re.sub(r"<[^>]*>|&#160;|\s+", " ", svg)
    short = load_book().by_ref[f"wall.{STOP_AT.partition('.')[2]}"].ask.partition("{")[0].strip()

    assert f"](walkthroughs/{PICTURE.name})" in (PICTURE.parent.parent / "README.md").read_text(encoding="utf-8")
    assert len(svg) < 120_000
    assert set(re.findall(r"https?://[^\"' ]+", svg)) == {"http://www.w3.org/2000/svg"}
    assert short in " ".join(words.split())
