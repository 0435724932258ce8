"""Row by row, what a reader of the codes would check before the first cut, and what holds it: no row is left without."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from guide.lengths import inches
from guide.reference.figures import figure_table, load_figures
from guide.reference.steps import load_cautions
from tests.checks.test_forty import SHOWN
from tests.published.against import families

HERE = Path(__file__).parent
ROWS: list[dict[str, Any]] = tomllib.loads((HERE / "rows.toml").read_text(encoding="utf-8"))["row"]
VALUES = {value.id for family in families() for value in family.value}
HOLDS = {"findings", "values", "caution", "figure", "test", "away"}


@pytest.mark.parametrize("row", ROWS, ids=[row["what"] for row in ROWS])
def test_a_row_is_held_by_what_it_names(row: dict[str, Any]) -> None:
    """A finding with its pair of cases, a published value, a caution with the words, a figure, a test by name; else the reason it cannot come up."""
    assert HOLDS & set(row)
    assert set(row) <= {"what", "words", *HOLDS}
    assert set(row.get("findings", ())) <= SHOWN
    assert set(row.get("values", ())) <= VALUES
    if "caution" in row:
        assert row["words"] in load_cautions()[row["caution"]].text
    if "figure" in row:
        assert row["figure"] in figure_table()
    if "test" in row:
        assert f"def {row['words']}" in (HERE.parent.parent / row["test"]).read_text(encoding="utf-8")


def test_few_rows_cannot_come_up() -> None:
    """Over fifty rows, each told once; four are of things that no answer and no part can bring about."""
    assert len({row["what"] for row in ROWS}) == len(ROWS) > 50
    assert sum("away" in row for row in ROWS) == 4


def test_no_pipe_in_a_notch_comes_near_the_face_of_its_stud() -> None:
    """Over 1 1/2 in, what the older editions of P2603.2.1 ask (seen in local texts), stays before it in the deepest notch of either stud."""
    figures = load_figures()
    for size in (figures, figures.for_stud("2x3")):
        assert size.stud_deep - (size.notch_most - size.notch_clear) > inches("1 1/2")
