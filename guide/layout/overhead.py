"""What is above the wall: joists that run into it, or blocks between joists that run alongside."""

from __future__ import annotations

from fractions import Fraction

from guide.layout.parts import Box, Kind, Material, Part, under_joists
from guide.layout.site import Site
from guide.lengths import ZERO, Length, from_inches
from guide.reference.sayings import saying


def supports_of(site: Site) -> list[Length]:
    """Return the centres, along the wall, of what the top plate can be nailed to: joists, or blocks between them."""
    if site.wall.joists == "alongside":
        return [(block.box.x0 + block.box.x1) // 2 for block in blocks_of(site)]
    wall, figures = site.wall, site.figures
    spacing = Fraction(wall.joist_spacing or "16")
    rests = frozenset({wall.ref("joists"), wall.ref("joist_spacing")})
    first = (wall.first_joist or ZERO) + figures.joist_thick // 2
    found, number = [], 0
    while (at := first + from_inches(spacing * number)) < wall.length:  # from the first each time: 19.2 must not drift
        found.append(at.with_rests(rests))
        number += 1
    return found


def blocks_of(site: Site) -> list[Part]:
    """Return the blocks between the rim and the first joist alongside: at both ends of the plates, and evenly between."""
    figures, wall = site.figures, site.wall
    gap = wall.parallel_gap
    if wall.joists != "alongside" or gap is None:
        return []
    thick = figures.stud_thick
    first, last = site.start, site.end - thick
    bays = -(-(last - first).ticks // figures.block_spacing.ticks)
    cut = gap.down_to(figures.cut_step)
    y0 = (
        -wall.shelf
    )  # they reach from the rim, over the sill, to the joist; only what stands over the wall matters here
    rests = frozenset({wall.ref("joists")})
    parts = []
    for number in range(bays + 1):
        x0 = first + Length((last - first).ticks * number // bays, first.rests | last.rests)
        box = Box(x0, x0 + thick, y0, y0 + cut, under_joists(ZERO), under_joists(-figures.stud_deep))
        why = saying("part.joist_block", gap=gap)
        parts.append(Part(Kind.JOIST_BLOCK, site.letter, Material.STUD, box, cut, why, placed_by=rests))
    return parts
