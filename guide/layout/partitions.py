"""Partitions that meet the wall: a stud under each of their faces, so that they and the drywall beside them have wood.

Half of each stud is for the partition's own end stud, the other half for the sheet that stops at the partition.
"""

from __future__ import annotations

from collections.abc import Sequence

from guide.layout.openings import Stretch
from guide.layout.parts import FULL_HEIGHT, Decision, Kind, Part, Remark, overlap
from guide.layout.site import Site
from guide.reference.sayings import saying


def posts_of(site: Site, standing: Sequence[Part], barred: Sequence[Stretch]) -> tuple[list[Part], list[Remark]]:
    """Return the studs under the faces of every partition, centred on each face.

    One that stands there already will do. Where an opening, a pipe or another upright is in the way there is none, and a
    remark says so.
    """
    figures, (start, end) = site.figures, site.stands
    parts: list[Part] = []
    remarks: list[Remark] = []
    for partition in site.wall.partitions:
        for side, face in (("left", partition.left), ("right", partition.right)):
            x0, x1 = face - figures.stud_thick // 2, face + figures.stud_thick // 2
            taken = [part.box for part in (*standing, *parts)]
            bearing = figures.edge_bearing_least
            full = (part.box for part in standing if part.kind in FULL_HEIGHT)
            if any(box.x0 + bearing <= face <= box.x1 - bearing for box in full):
                continue
            free = not any(overlap(x0, x1, *each) for each in barred)
            if free and start <= x0 and x1 <= end and not any(overlap(x0, x1, box.x0, box.x1) for box in taken):
                parts.append(site.upright(Kind.STUD, x0, saying("part.partition_stud", side=side)))
            else:
                remarks.append(Remark(saying("remark.partition_post", side=side, at=face - site.start), face))
    return parts, remarks


def meeting_decisions(site: Site) -> tuple[Decision, ...]:
    """Return what each end of a partition does; none for a wall against concrete."""
    found = []
    for side, end in (("left", site.left), ("right", site.right)) if site.wall.is_partition else ():
        other = site.wall.met(side)
        said = saying("decision.partition_free", side=side)
        if other is not None:
            to = saying("part.to_concrete" if end.clear.ticks else "part.to_studs")
            said = saying("decision.partition_end", side=side, other=other, to=to, clear=end.clear)
        found.append(Decision(f"{site.letter}.end_{side}", site.letter, said))
    return tuple(found)


def partition_decisions(site: Site) -> tuple[Decision, ...]:
    """Return how each partition meets the wall."""
    return tuple(
        Decision(
            f"{each.place}.posts",
            site.letter,
            saying("decision.partition", left=each.left - site.start, right=each.right - site.start),
            (saying("alternative.partition"),),
        )
        for each in site.wall.partitions
    )
