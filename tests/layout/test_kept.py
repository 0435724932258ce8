"""What is kept between the layouts of one job: a layout from it is the layout itself, down to what each size rests on."""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable
from dataclasses import fields
from itertools import count
from typing import cast

import pytest

from guide.layout import engine
from guide.layout.engine import BUILT_BY, lay_out
from guide.layout.kept import Kept, exactly, forget, once
from guide.layout.offsets import Standing
from guide.layout.parts import Layout
from guide.layout.site import Site
from guide.lengths import inches
from guide.lint.sources import source_texts
from guide.reference.codes import load_code
from guide.reference.figures import load_figures
from guide.survey.model import Basement
from tests.jobs import Tree, job, layout_of, new_door, ring, standing, survey_of, wall

UNREAD: Tree = {key: answer for key, answer in wall().items() if key != "concrete"}
AFTER_ANOTHER: tuple[tuple[str, list[Tree]], ...] = (
    ("the same", [job([wall()]), job([wall()])]),
    ("a size of one wall", [ring([wall()] * 4), ring([wall(), wall(shelf="3 in"), wall(), wall()])]),
    ("a wall's length, at its corners", [ring([wall()] * 4), ring([wall("150 in"), wall(), wall("150 in"), wall()])]),
    ("a neighbour's bulge", [ring([wall()] * 4), ring([wall(), wall(string="1 in"), wall(), wall()])]),
    ("the house", [job([wall()]), job([wall()], foam_thickness="3 in")]),
    ("a thing on it", [job([wall()]), job([wall(openings=[new_door("40 in")], pipes=[standing("100 in")])])]),
    (
        "no size, but where it was read",
        [
            job([wall(height=["92 in at left", "92 in at right"])]),
            job([wall(height=["92 in at 0 in", "92 in at right"])]),
        ],
    ),
    (
        "no size, but whether it was read at all",
        [job([UNREAD]), job([wall(concrete=["90 1/2 in at left", "90 1/2 in at right"])])],
    ),
)


def rests_of(layout: Layout) -> list[tuple[str, frozenset[str], frozenset[str]]]:
    """Return what the size and the place of every piece rest on."""
    return [(part.id, part.size_rests, part.place_rests) for part in layout.parts.values()]


@pytest.mark.parametrize("trees", [trees for _, trees in AFTER_ANOTHER], ids=[name for name, _ in AFTER_ANOTHER])
def test_a_layout_from_what_was_kept_is_the_layout_itself(trees: list[Tree]) -> None:
    """Whatever the answers were before, there and back: the very same parts, and the same rests, as without anything kept."""
    kept: Kept = {}
    for tree in (*trees, trees[0]):
        again = lay_out(survey_of(tree), load_code(), load_figures(), kept)
        fresh = layout_of(tree)

        assert again == fresh
        assert rests_of(again) == rests_of(fresh)


def test_only_the_walls_that_an_answer_is_about_are_laid_out_again(monkeypatch: pytest.MonkeyPatch) -> None:
    """Of four walls a first joist changes one, a shelf those at its corners as well, radon none, foam all."""
    framed: list[str] = []
    frame = engine._frame

    def watched(site: Site, standing: Standing) -> object:
        framed.append(site.letter)
        return frame(site, standing)

    monkeypatch.setattr(engine, "_frame", watched)
    kept: Kept = {}
    walls = [wall(), wall(), wall(), wall()]
    for changed, tree in (
        ("ABCD", ring(walls)),
        ("B", ring([walls[0], wall(first_joist="14 in"), *walls[2:]])),
        ("BC", ring([walls[0], wall(shelf="3 in"), *walls[2:]])),
        ("", ring([walls[0], wall(shelf="3 in"), *walls[2:]], radon="high")),
        ("ABCD", ring(walls, foam_thickness="3 in")),
    ):
        framed.clear()
        lay_out(survey_of(tree), load_code(), load_figures(), kept)
        assert "".join(framed) == changed


def test_what_the_layout_goes_by_in_the_basement_is_named_in_one_place() -> None:
    """Every answer of the basement that a module of the layout reads stands in BUILT_BY, or a layout would be kept too long."""
    sources = {path: text for path, text in source_texts().items() if path.startswith("guide/layout/")}
    read = {name for text in sources.values() for name in re.findall(r"\bbasement\.(\w+)", text)}
    worked_out = {name: each.fget for name, each in vars(Basement).items() if isinstance(each, property)}
    for name in read & set(worked_out):  # what a value is worked out from stands behind it
        read |= set(re.findall(r"\bself\.(\w+)", inspect.getsource(cast(Callable[..., object], worked_out[name]))))
    names = {field.name for field in fields(Basement)}

    assert read & names == set(BUILT_BY)


def test_what_is_kept_is_worked_out_once_and_only_the_last_used_stay() -> None:
    """The second time the work is not done; without a mapping it always is. What was used longest ago is forgotten first."""
    counter = count(1)
    kept: Kept = {}

    assert [once(mapping, "key", lambda: next(counter)) for mapping in (kept, kept, None)] == [1, 1, 2]
    once(kept, "other", lambda: 3)
    once(kept, "key", lambda: 4)
    forget(kept, but=1)
    assert kept == {"key": 1}


def test_sizes_are_the_same_only_where_they_rest_on_the_same() -> None:
    """Two readings of 92 in are equal sizes, and no reason to take the one for the other."""
    left, right = inches("92").on("A.height@left"), inches("92").on("A.height@right")

    assert left == right
    assert exactly((left,)) != exactly((right,))
