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


def _loaded(module: str) -> set[str]:
    code = f"import sys, {module}; print(*sys.modules)"
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
