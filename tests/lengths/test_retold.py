"""Sizes in our own sentences, retold for a metric tape."""

from __future__ import annotations

import re
import tomllib
from importlib.resources import files

import pytest

from guide.book.questions import load_book
from guide.lengths import retold
from guide.reference.steps import load_steps


@pytest.mark.parametrize(
    ("told", "metric"),
    [
        ("Measure every 4 ft.", "Measure every 1219 mm."),
        ("straight within 1/8 in.", "straight within 3 mm."),
        ("a 1 1/2 in block at each end", "a 38 mm block at each end"),
        ("under a beam, 6 ft 4 in is enough", "under a beam, 1930 mm is enough"),
        ("a space 30 by 36 in", "a space 762 by 914 mm"),
        ("a seam 6 to 16 in out", "a seam 152 to 406 mm out"),
        ("5.7 sq ft clear", "0.53 m² clear"),
        ("a can makes 50 ft of bead", "a can makes 15.2 m of bead"),
        ("bows half an inch", "bows 13 mm"),
        ("leave 1/4 in all round", "leave 6 mm all round"),
    ],
)
def test_inches_and_feet_become_millimetres(told: str, metric: str) -> None:
    """25.4 mm to the inch, exactly (yard and pound agreement of 1959); worked by hand."""
    assert retold(told, "millimetres") == metric
    assert retold(told, "inches") == told


@pytest.mark.parametrize(
    "kept",
    [
        "a 4 by 8 ft sheet",
        "10 2x4 8 ft",
        "an 8 ft stick",
        "2 in the corner",
        "put 3 in each bay",
        "R-10 in",
        "16d nails",
        "falls 1/4 in each foot",
    ],
)
def test_goods_and_counts_stay_as_they_are(kept: str) -> None:
    assert retold(kept, "millimetres") == kept


def test_no_step_and_no_question_asks_a_metric_tape_for_inches() -> None:
    """What is left are names of goods, and slopes, which no tape reads."""
    texts = [word for step in load_steps().step for word in step.words]
    texts += [
        said for q in load_book().questions for said in (q.ask, q.why, q.how, *q.of_partition.values(), q.unknown.say)
    ]
    left = {found for text in texts for found in re.findall(r"\d (?:in|ft)\b.{0,7}", retold(text, "millimetres"))}
    goods = re.compile(r"\d ft (?:sheet|stick|piece)|\d ft, (?:foam|2x4)|2 ft\.|8 in studs|4 in each f")
    assert left
    assert {each for each in left if not goods.match(each)} == set()


def test_a_sentence_keeps_its_braces() -> None:
    """Sizes are retold before the engine's own values are filled in."""
    sayings = tomllib.loads((files("prompts_data") / "sayings.toml").read_text(encoding="utf-8"))
    for text in (text for group in sayings.values() for text in group.values()):
        assert re.findall(r"{.*?}", retold(text, "millimetres")) == re.findall(r"{.*?}", text)


def test_the_marks_of_a_square_corner_keep_their_proportion_on_a_metric_tape() -> None:
    """3, 4 and 5 (a right triangle) in inches are told as 1524, 2032 and 2540 mm: all of them or none."""
    across = load_book().by_ref["wall.across"]
    told = " ".join(retold(text, "millimetres") for text in (across.ask, across.why, across.how))
    assert {int(size) for size in re.findall(r"\d+", told)} == {1524, 2032, 2540}
