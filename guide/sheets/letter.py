"""The letter to the building office: its questions with this job's own facts, and which steps wait for which answer."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from guide.book.conditions import holds
from guide.checks.energy import nominal
from guide.layout.parts import Kind
from guide.order.facts import room_facts
from guide.order.plan import Step
from guide.reference.letter import load_letter
from guide.sheets.plan import Plan
from guide.sheets.view import WallView


@dataclass(frozen=True, slots=True)
class Asked:
    """One question of the letter."""

    number: int
    about: str
    ask: str
    here: str
    before: tuple[str, ...]


def letter_of(plan: Plan) -> tuple[Asked, ...]:
    """Return the questions of this job, numbered as asked."""
    facts, said = room_facts(plan.layout), _planned(plan)
    asked = [each for each in load_letter() if holds(each.when, facts.__getitem__)]
    return tuple(
        Asked(number, each.about, each.ask, _capital(each.here.format_map(said)), each.before)
        for number, each in enumerate(asked, 1)
    )


def asked_before(letter: Iterable[Asked], step: Step) -> list[str]:
    """Name the questions that a step waits for, each with its number in the letter."""
    family = step.id.partition("@")[0].partition(":")[0]
    return [f"{each.number} ({each.about})" for each in letter if family in each.before]


def _planned(plan: Plan) -> dict[str, str]:
    """Return what the letter can say of the job, by the names of guide.reference.letter."""
    basement, said = plan.survey.basement, {each.path: each.value for each in plan.said}
    views = [WallView(plan, wall) for wall in plan.layout.walls]
    thick = views[0].size(basement.foam_thickness) if views else ""
    return {
        "permit": said.get("basement.permit", "not asked for yet"),
        "code": f"{plan.code.name}; nothing yet of yours" if not plan.code.office else f"{plan.code.name}, and yours",
        "anchors": "powder-driven pins" if basement.anchors == "pins" else "concrete screws",
        "openings": _openings(plan),
        "reach": "concrete" if basement.block_reach == "concrete" else "the face of the foam",
        "blocks": "; ".join(_blocks(view) for view in views),
        "spacing": plan.code.blocks_along.said,
        "cited": plan.code.blocks_along.cited,
        "caps": "; ".join(_cap(view) for view in views),
        "foam": f"{basement.foam} foam board, {thick} thick in all, glued to the concrete",
        "yours": nominal(basement).said,
        "drywall": basement.drywall,
        "rim": f"up to {plan.code.rim_foam.said}: {plan.code.rim_foam.cited}",
        "strip": f"A bare strip {views[0].size(basement.strip)} high stays"
        if views and basement.strip
        else "None stays bare",
        "boxes": "; ".join(_boxes(plan)) or "No box is planned in these walls",
    }


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def _openings(plan: Plan) -> str:
    found = [f"wall {wall.letter}, {opening.kind}" for wall in plan.layout.walls for opening in wall.wall.openings]
    return "; ".join(found) or "none"


def _blocks(view: WallView) -> str:
    at = ", ".join(view.mark(part.box.x0, part.place_rests) for part in view.wall.of(Kind.FIREBLOCK))
    return f"wall {view.wall.letter} at {at or 'no place'}"


def _cap(view: WallView) -> str:
    if not view.wall.of(Kind.CAP):
        return f"wall {view.wall.letter}: the sill itself closes the gap"
    where = "lying on the concrete" if view.wall.cap_case == 1 else "under the joists, over the top plate"
    ledge = ", and a ledge of the same plywood on the concrete" if view.wall.of(Kind.LEDGE) else ""
    return f"wall {view.wall.letter}: strips {view.cap_wide} wide, {where}{ledge}"


def _boxes(plan: Plan) -> Iterator[str]:
    for wall in plan.layout.walls:
        old = sum(box.kind == "existing" for box in wall.wall.boxes)
        new = len(wall.wall.boxes) - old
        if wall.wall.boxes:
            yield f"wall {wall.letter}: {new} new, {old} old to come forward"
