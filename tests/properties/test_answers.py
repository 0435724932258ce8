"""Every number says which answers it rests on: change one reading, and all that moves had named it before.

This is what locks a cut or a mark while an answer is a guess, so a part that moves for an answer it does not name would
be printed as certain when it is not.
"""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from guide.interview.jobfile import JobFileError
from tests.jobs import Tree, layout_of
from tests.properties.answers import changed, readings, unrested
from tests.properties.rooms import single_walls

STEPS = st.sampled_from((1, -1, 4, -16, 16))
"""In sixteenths of an inch: a slip of the eye, and a slip of an inch."""


@settings(max_examples=40)
@given(tree=single_walls(), by=STEPS)
def test_whatever_moves_a_part_is_among_the_answers_it_rests_on(tree: Tree, by: int) -> None:
    """Each reading of a wall is changed in turn; places and sizes of all parts are compared with before."""
    before = layout_of(tree).walls
    for answer, way in readings(tree):
        try:
            after = layout_of(changed(tree, way, by)).walls
        except JobFileError:
            continue  # the changed reading is out of its question's range
        for old, new in zip(before, after, strict=False):
            assert not list(unrested(old, new, answer))


@settings(max_examples=60)
@given(tree=single_walls(plain=True), by=STEPS)
def test_a_plain_wall_names_all_its_answers_too(tree: Tree, by: int) -> None:
    """Without things on it a wall's parts rest on its own readings alone."""
    before = layout_of(tree).walls
    for answer, way in readings(tree):
        try:
            after = layout_of(changed(tree, way, by)).walls
        except JobFileError:
            continue
        for old, new in zip(before, after, strict=False):
            assert not list(unrested(old, new, answer))
            assert all(rest.startswith(("A.", "basement.")) for part in new.parts for rest in part.size_rests)
