"""The house stands as its contracts say, seen from a running interpreter."""

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
BELOW_THE_APP = [
    "guide.lengths",
    "guide.book.questions",
    "guide.interview.jobfile",
    "guide.survey.build",
    "guide.layout.engine",
    "guide.checks.check",
    "guide.buying.purchase",
    "guide.order.plan",
    "guide.drawing.text",
    "guide.sheets.write",
    "guide.session",
    "guide.plain",
    "guide.cli",
]


OPENED = """
from pathlib import Path
from guide.book.questions import load_book
from guide.session import Session
from guide.tui.talk import Talk
Talk._look = lambda self: self.app.exit()  # the question is on the screen
session = Session.opened(load_book(), Path("walkthroughs/first-wall/job.json"))
guide.tui.app.make_app(session.book, session, Path()).run(headless=True)
"""
"""The app opened on a job until its question stands."""


def _loaded(module: str, then: str = "") -> set[str]:
    code = f"import sys, {module}\n{then}\nprint(*sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, check=True, capture_output=True, text=True)
    return set(done.stdout.split())


@pytest.mark.parametrize("module", BELOW_THE_APP)
def test_nothing_below_the_app_loads_the_terminal_library(module: str) -> None:
    """A fresh interpreter that imports a room has neither textual nor rich: commands stay fast, tests need no screen."""
    loaded = _loaded(module)

    assert module in loaded
    assert not {"textual", "rich"} & loaded


def test_the_talk_starts_without_the_libraries_that_only_papers_need() -> None:
    """Opening the conversation does not pay for units or templates until a reply or a paper needs them."""
    loaded = _loaded("guide.session")

    assert "pint" not in loaded


def test_the_first_question_stands_before_anything_is_loaded_that_works_a_wall_out() -> None:
    """A job is opened and its question worded without survey, layout, checks, prices or drawings: they come behind the talk."""
    loaded = _loaded("guide.tui.app", OPENED)

    assert "guide.session" in loaded
    rooms = ("survey", "layout", "checks", "order", "buying", "drawing")
    assert not [name for name in loaded for room in rooms if name.startswith(f"guide.{room}.")]
    assert not {"guide.interview.understand", "guide.reference.prices"} & loaded


def test_no_file_is_too_long_to_be_read_in_one_sitting() -> None:
    """Code files stay under 450 lines."""
    long = {
        p.name: n
        for p in (ROOT / "guide").rglob("*.py")
        if (n := len(p.read_text(encoding="utf-8").splitlines())) > 450
    }

    assert long == {}


def test_no_code_evaluates_text() -> None:
    """Conditions and templates are data: nothing in the package calls eval or exec."""
    found = [p.name for p in (ROOT / "guide").rglob("*.py") if "eval(" in p.read_text(encoding="utf-8")]

    assert found == []
