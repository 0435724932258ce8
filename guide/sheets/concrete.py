"""The concrete of a crooked wall, place by place: what to find there, and what to do before the foam."""

from __future__ import annotations

from guide.layout.crooked import Place, places_of
from guide.lengths import ZERO
from guide.reference.figures import Figures, load_figures
from guide.reference.sayings import Saying, say, saying
from guide.sheets.view import WallView


def concrete_rows(view: WallView) -> list[tuple[str, ...]]:
    """Return, from the left: place from the corner, reading, back line to concrete, free behind the studs, what to do."""
    figures, tape = load_figures(), view.plan.tape
    return [
        (
            view.bare(place.x),
            view.bare(place.string),
            view.bare(place.line),
            view.bare(place.free, toward="down"),
            say(_what_to_do(place, figures), tape),
        )
        for place in places_of(view.wall.wall, view.wall.offsets, figures)
    ]


def metal_rows(view: WallView) -> list[tuple[str, ...]]:
    """Return the metal that sticks out of the concrete, from the left: place from the corner, how far out, what to do."""
    wall, tape = view.wall.wall, view.plan.tape
    told = ((wall.metal_off, "concrete.metal_off"), (wall.metal_stays, "concrete.metal_stays"))
    found = [(x, out, key) for metal, key in told if metal is not None for x, out in metal.points]
    return [
        ("", view.bare(x), view.bare(out), say(saying(key), tape))
        for x, out, key in sorted(found, key=lambda each: each[0])
    ]


def _what_to_do(place: Place, figures: Figures) -> Saying:
    if place.out > figures.glue_most:
        return saying("concrete.hump", out=place.out)
    if place.out < -figures.glue_most:
        return saying("concrete.scraps", deep=-place.out)
    if place.out < ZERO:
        return saying("concrete.dabs", bed=figures.glue_bed - place.out)
    return saying("concrete.even", bed=figures.glue_bed)
