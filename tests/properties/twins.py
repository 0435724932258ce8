"""The same wall said otherwise: in millimetres, seen from behind in a mirror, or told only in part."""

from __future__ import annotations

import copy
import re
from fractions import Fraction
from typing import cast

from hypothesis import strategies as st

from guide.interview.written import Json
from guide.lengths import inches
from tests.jobs import Tree
from tests.properties.rooms import tape

THINGS = ("openings", "pipes", "boxes", "fixtures")
_INCHES = re.compile(r"(-?)((?:\d+ )?\d+/\d+|\d+) in\b")


def in_millimetres(tree: Tree) -> Tree:
    """Return the job as somebody with a metric tape would write it: every size to the same tick, in millimetres."""
    metric = cast(Tree, _metric(tree))
    cast(Tree, metric["basement"])["tape"] = "millimetres"
    return metric


def _metric(value: Json) -> Json:
    if isinstance(value, dict):
        return {key: _metric(each) for key, each in value.items()}
    if isinstance(value, list):
        return [_metric(each) for each in value]
    return _INCHES.sub(lambda found: _mm(*found.groups()), value) if isinstance(value, str) else value


def _mm(sign: str, size: str) -> str:
    """Sixteenths of an inch are whole ten-thousandths of a millimetre (1.5875 mm), so nothing is lost."""
    value = sum((Fraction(part) for part in size.split()), Fraction(0)) * Fraction(254, 10)
    return f"{sign}{float(value):.4f} mm"


def mirrored(tree: Tree) -> Tree:
    """Return a one-wall job as its mirror image: left and right change places."""
    new = copy.deepcopy(tree)
    (wall,) = cast(list[Tree], new["walls"])
    length = _sixteenths(cast(list[str], wall["length"])[0].removesuffix(" at floor"))
    for one, other in (("left", "right"), ("left_framed", "right_framed")):
        wall[one], wall[other] = wall.get(other, "6 in"), wall.get(one, "6 in")
    through = wall["right_first"] != "other wall"  # of a wall alone, “you choose” lets it run through
    wall["right_first"] = wall["left_first"]
    wall["left_first"] = "this wall" if through else "other wall"
    for key in ("height", "concrete"):
        wall[key] = [_reading_mirrored(reading, length) for reading in cast(list[str], wall[key])]
    if isinstance(wall["string"], list):
        wall["string"] = [_reading_mirrored(reading, length) for reading in cast(list[str], wall["string"])]
    for opening in cast(list[Tree], wall["openings"]):
        wide = (
            opening.get("width")
            or opening.get("leaf_width")
            or opening.get("frame_width")
            or opening.get("free_width")
            or opening.get("over_width")
        )
        opening["left"] = tape(length - _sixteenths(opening["left"]) - _sixteenths(wide))
    for pipe in cast(list[Tree], wall["pipes"]):
        if pipe["run"] == "standing":
            pipe["at"] = tape(length - _sixteenths(pipe["at"]))
        else:
            pipe["from"], pipe["to"] = (tape(length - _sixteenths(pipe[end])) for end in ("to", "from"))
            pipe["low_left"], pipe["low_right"] = pipe["low_right"], pipe["low_left"]
            if isinstance(pipe.get("fittings"), list):
                pipe["fittings"] = [_reading_mirrored(each, length) for each in cast(list[str], pipe["fittings"])]
    wall["boxes"] = wall["fixtures"] = []
    return new


def _reading_mirrored(reading: str, length: int) -> str:
    size, _, at = reading.partition(" at ")
    other = {"left": "right", "right": "left"}.get(at) or tape(length - _sixteenths(at))
    return f"{size} at {other}"


def _sixteenths(size: Json) -> int:
    return inches(cast(str, size)).ticks // 508


@st.composite
def half_told(draw: st.DrawFn, jobs: st.SearchStrategy[Tree]) -> Tree:
    """Draw a job with some answers not given yet; a wall without a length is no wall, so that one stays."""
    tree = copy.deepcopy(draw(jobs))
    places = [cast(Tree, tree["basement"])]
    for wall in cast(list[Tree], tree["walls"]):
        places += [wall, *(item for key in THINGS for item in cast(list[Tree], wall[key]))]
    for place in places:
        for key in sorted(set(place) - {"length", *THINGS}):
            if draw(st.integers(0, 3)) == 0:
                del place[key]
    return tree
