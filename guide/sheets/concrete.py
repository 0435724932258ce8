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


def _what_to_do(place: Place, figures: Figures) -> Saying:
    if place.out > figures.glue_most:
        return saying("concrete.hump", out=place.out)
    if place.out < -figures.glue_most:
        return saying("concrete.scraps", deep=-place.out)
    if place.out < ZERO:
        return saying("concrete.dabs", bed=figures.glue_bed - place.out)
    return saying("concrete.even", bed=figures.glue_bed)
