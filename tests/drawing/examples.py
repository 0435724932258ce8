"""Layouts that the tests of drawings look at."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

import walkthroughs
from guide.book.questions import load_book
from guide.interview.jobfile import load
from guide.layout.engine import lay_out
from guide.layout.parts import Layout, WallLayout
from guide.reference.codes import load_code
from guide.reference.figures import load_figures
from guide.survey.build import survey_from
from tests.jobs import (
    Tree,
    alongside,
    framed_door,
    job,
    layout_of,
    lying,
    new_door,
    outlet,
    ring,
    standing,
    wall,
    window,
)


@lru_cache(maxsize=1)
def first_wall() -> Layout:
    """Return the wall that comes with wallbrief to learn on: 16 ft 4 in, nothing on it."""
    book = load_book()
    path = Path(walkthroughs.__path__[0]) / "first-wall" / "job.json"
    return lay_out(survey_from(book, load(path, book).answers), load_code(), load_figures())


@lru_cache(maxsize=1)
def busy_room() -> Layout:
    """Return a closed room with one of everything on its walls."""
    inside: Tree = {"right": "inside corner", "right_first": "you choose"}
    north = wall(
        "196 in",
        openings=[window("60 in", sill="50 in"), new_door("110 in")],
        pipes=[standing("28 in", out="4 3/4 in")],
        boxes=[outlet("100 in"), outlet("170 in", kind="existing")],
        **inside,
    )
    east = wall("144 in", pipes=[standing("92 in", wide="4 1/2 in", out="9 in")], **inside, **alongside())
    south = wall("196 in", openings=[framed_door("30 in")], pipes=[lying("100 in", "180 in")], **inside)
    west = wall("144 in", **inside, **alongside("11 in"))
    return layout_of(ring([north, east, south, west]))


@lru_cache(maxsize=1)
def bare_room() -> Layout:
    """Return walls of which nothing but the length is known, 40 ft, 16 ft and 3 ft, none of them joined."""
    lengths = ("480 in", "196 in", "36 in")
    return layout_of(
        {"format": 1, "walls": [{"length": [f"{length} at floor"], "right": "open end"} for length in lengths]}
    )


def only(tree: Tree) -> WallLayout:
    """Return the layout of one wall."""
    (found,) = layout_of(job([tree])).walls
    return found
