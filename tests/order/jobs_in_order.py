"""The jobs that the order of work is proved on: both cap cases, both ways round plate and foam, corners of every kind."""

from __future__ import annotations

from functools import cache

from guide.layout.parts import Layout, WallLayout
from guide.order.plan import Step, order_of_work
from tests.jobs import (
    Tree,
    alongside,
    framed_door,
    job,
    layout_of,
    level,
    lying,
    new_door,
    outlet,
    ring,
    standing,
    wall,
    window,
)

UNDER_PLATE = level("92 in", "89 in")
"""A double sill: the cap cannot lie on the concrete, it goes over the top plate (case 2)."""

TALL_CONCRETE = level("92 in", "91 in")
"""Foam up to the concrete is too tall to be lifted in over a plate that is down: the foam goes first."""

OPEN: Tree = {"left": "open end", "right": "open end"}
"""Ends that meet nothing."""

JOBS: dict[str, Tree] = {
    "one plain wall": job([wall()]),
    "double sill": job([wall(None, **UNDER_PLATE)]),
    "foam first": job([wall(None, **TALL_CONCRETE)]),
    "foam first, blocks to the concrete": job([wall(None, **TALL_CONCRETE)], block_reach="concrete"),
    "blocks to the concrete": job([wall("20 ft")], block_reach="concrete"),
    "joists alongside": job([wall(None, **alongside())]),
    "open ends": job([wall(None, **OPEN)]),
    "against a framed wall": job([wall(left="framed wall", left_framed="4 3/4 in")]),
    "window, doors": job([wall("26 ft", openings=[window("60 in"), new_door("130 in"), framed_door("220 in")])]),
    "pipes": job([
        wall("20 ft", pipes=[{**standing("60 in"), "reach": "yes", "reach_height": "18 in"}, standing("130 in", wide="6 in", out="7 in"), lying("170 in", "200 in")])
    ]),
    "boxes, batts": job([wall(boxes=[outlet("48 in"), outlet("90 in", kind="existing")])], batts="yes"),
    "ring": ring([wall("196 in"), wall(), wall("196 in"), wall()]),
    "ring, each through on its right": ring([wall(right_first="this wall")] * 4),
    "ring, each through on its left": ring([wall(right_first="other wall")] * 4),
    "ring of all sorts": ring(
        [
            wall("20 ft", right_first="you choose", openings=[window("100 in")], **UNDER_PLATE),
            wall(None, right_first="other wall", pipes=[standing("60 in")], **{**TALL_CONCRETE, **alongside()}),
            wall("20 ft", right_first="this wall", openings=[framed_door("100 in")], **TALL_CONCRETE),
            wall(None, right_first="you choose", boxes=[outlet("48 in")], **alongside()),
        ],
        block_reach="concrete",
        batts="yes",
    ),
    "sleeping, standing sheets": job([wall()], use="sleeping", sheets="standing", water="mended", rains="2"),
    "storage": job([wall()], use="storage"),
    "pins": job([wall()], anchors="pins", slab_thickness="4 in"),
}  # fmt: skip
"""Jobs by what is special about them."""

FRAMING = ("end_stud", "corner_pack", "studs", "openings", "chases", "framed_door", "backing")
"""Families of steps that put wood in front of the foam."""


@cache
def steps_of(name: str) -> tuple[Step, ...]:
    """Return the order of work of one of the jobs."""
    return order_of_work(layout(name))


def family(step: Step) -> str:
    """Return what kind of step it is: its id without its place and without what its family tells apart."""
    return step.id.partition("@")[0].partition(":")[0]


def ids(steps: tuple[Step, ...], *families: str, letter: str | None = None) -> set[str]:
    """Return the ids of the steps of these families, of one wall or of all."""
    return {step.id for step in steps if family(step) in families and letter in (None, step.wall)}


def waits_for(steps: tuple[Step, ...]) -> dict[str, set[str]]:
    """Return, for every step, all that has to be done before it: what it needs, and what that needs in turn.

    A number alone proves little: a step may come later by chance. Whoever shuffles the work may only rely on needs.
    """
    found: dict[str, set[str]] = {}
    for step in steps:
        found[step.id] = set(step.needs).union(*(found[need] for need in step.needs))
    return found


def all_wait(steps: tuple[Step, ...], later: set[str], earlier: set[str]) -> bool:
    """Say whether there is something on both sides, and every one of the later steps has to wait for all the earlier."""
    waits = waits_for(steps)
    return bool(later) and bool(earlier) and all(earlier <= waits[name] for name in later)


def by_id(steps: tuple[Step, ...]) -> dict[str, Step]:
    """Return the steps by their id."""
    return {step.id: step for step in steps}


def walls_of(name: str) -> tuple[WallLayout, ...]:
    """Return the walls of one of the jobs."""
    return layout(name).walls


@cache
def layout(name: str) -> Layout:
    """Return the layout of one of the jobs."""
    return layout_of(JOBS[name])
