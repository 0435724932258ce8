"""Joists that were read one by one: whether any was left out, and from where on nobody has read them.

It owns one promise: a joist that nobody taped is never under a joint of the plate without being said.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from guide.checks.findings import Finding, finding
from guide.layout.overhead import joists_over
from guide.layout.parts import WallLayout
from guide.lengths import ZERO
from guide.reference.figures import load_figures
from guide.survey.joists import apart_of

TOO_WIDE = Fraction(3, 2)
"""Of the usual distance: from here on a bay may hide a joist that was left out. Common practice."""


def joist_findings(wall: WallLayout) -> Iterator[Finding]:
    """Yield each bay half as wide again as the others or more, and where the joists that were read end."""
    read, figures = wall.wall.joists_read, load_figures()
    if not read:
        return
    apart = apart_of(read)
    edges = [ZERO, *(joist.edge for joist in read)]
    for left, right in pairwise(edges):
        if (right - left).inch > apart.inch * TOO_WIDE:
            yield finding("joist_missing", wall.letter, wall.mark_of(left), left=left, right=right, apart=apart)
    beyond = [x0 for x0, _ in joists_over(wall.wall, figures) if x0 > read[-1].edge]
    if beyond:
        last = read[-1].edge
        yield finding("joists_unread", wall.letter, wall.mark_of(last), last=last, count=len(beyond), apart=apart)
