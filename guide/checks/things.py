"""What stands at the wall and keeps its own distance: a column, a pit, an appliance in a place kept free; and what hangs over it.

It owns one promise: a place kept free that is too narrow for what stands in it holds the lines on the slab.
"""

from __future__ import annotations

from collections.abc import Iterator

from guide.checks.findings import Finding, finding
from guide.layout.parts import WallLayout
from guide.lengths import ZERO, Length
from guide.reference.figures import load_figures
from guide.survey.room import thing_name
from guide.survey.things import Opening


def thing_findings(wall: WallLayout) -> Iterator[Finding]:
    """Yield of each column, pit and appliance whether its place is wide enough, and what each, or a beam, asks of who works there."""
    for opening in wall.wall.openings:
        if opening.hangs:
            yield finding(
                "thing_hangs",
                wall.letter,
                wall.mark_of(opening.left),
                what=thing_name(opening.place),
                drop=opening.over_drop or ZERO,
                clear=opening.over_clear or ZERO,
            )
        if opening.keeps not in ("column", "pit", "appliance") or opening.free_width is None:
            continue
        at, what = wall.mark_of(opening.left), thing_name(opening.place)
        wide, clear = opening.thing_wide, _clear(opening)
        if wide is None or clear is None:
            yield finding("thing_unmeasured", wall.letter, at, what=what)
        elif opening.free_width < (least := wide + clear * 2):
            yield finding(
                "thing_crowded",
                wall.letter,
                at,
                what=what,
                have=opening.free_width,
                wide=wide,
                clear=clear,
                least=least,
            )
        yield finding(f"thing_{opening.keeps}", wall.letter, at, what=what)


def soffit_findings(wall: WallLayout) -> Iterator[Finding]:
    """Yield of each soffit that the hidden space in it is to be closed off from the one in the wall."""
    for fixture in (each for each in wall.wall.fixtures if each.what == "soffit"):
        at, what = wall.mark_of(fixture.start), thing_name(fixture.place)
        yield finding("soffit", wall.letter, at, what=what, start=fixture.start, end=fixture.end)


def _clear(opening: Opening) -> Length | None:
    """Return how far wood stays away on each side; None for an appliance whose label nobody has read."""
    figures = load_figures()
    return {"column": figures.column_clear, "pit": figures.pit_clear}.get(opening.keeps or "", opening.thing_clear)
