"""The letter to the building office: its questions with this job's own facts, and which steps wait for which answer."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from guide.book.conditions import holds
from guide.checks.energy import nominal
from guide.layout.parts import Kind
from guide.lengths import Length, retold, with_unit
from guide.order.facts import room_facts
from guide.order.plan import Step
from guide.reference.letter import load_letter
from guide.sheets.plan import Plan
from guide.sheets.ticket import LOCKED
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
    asked = [each for each in load_letter().question if holds(each.when, facts.__getitem__)]
    return tuple(
        Asked(
            number,
            each.about,
            retold(each.ask, plan.tape),
            _capital(retold(each.here, plan.tape).format_map(said)),
            each.before,
        )
        for number, each in enumerate(asked, 1)
    )


def asked_before(letter: Iterable[Asked], step: Step) -> list[str]:
    """Name the questions that a step waits for, each with its number in the letter."""
    family = step.id.partition("@")[0].partition(":")[0]
    return [f"{each.number} ({each.about})" for each in letter if family in each.before]


def _planned(plan: Plan) -> dict[str, str]:
    """Return what the letter can say of the job, by the names of guide.reference.letter."""
    basement, given = plan.survey.basement, {each.path: each.value for each in plan.said}
    behind = [WallView(plan, wall) for wall in plan.layout.round_room]
    rim, bare = plan.code.rim_foam, basement.strip
    return {
        "permit": given.get("basement.permit", _said("not_asked")),
        "code": _said("code_yours" if plan.code.office else "code", code=plan.code.name),
        "anchors": _said("pins" if basement.anchors == "pins" else "screws"),
        "openings": "; ".join(
            _said("openings", wall=wall.letter, opening=opening.kind)
            for wall in plan.layout.walls
            for opening in wall.wall.openings
        )
        or _said("no_openings"),
        "reach": _said("to_concrete" if basement.block_reach == "concrete" else "to_foam"),
        "blocks": "; ".join(map(_blocks, behind)),
        "spacing": plan.code.blocks_along.said,
        "cited": plan.code.blocks_along.cited,
        "caps": "; ".join(map(_cap, behind)),
        "foam": _said("foam", foam=basement.foam, thick=_size(plan, basement.foam_thickness)),
        "yours": nominal(basement).said,
        "drywall": basement.drywall,
        "rim": _said("rim", most=rim.said, cited=rim.cited),
        "strip": _said("strip", high=_size(plan, bare)) if bare else _said("no_strip"),
        "boxes": "; ".join(_boxes(plan)) or _said("no_boxes"),
    }


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def _size(plan: Plan, length: Length) -> str:
    return LOCKED if plan.guessed(length) else with_unit(length, plan.tape)


def _said(key: str, **values: str) -> str:
    return load_letter().words[key].format(**values)


def _blocks(view: WallView) -> str:
    at = ", ".join(view.mark(part.box.x0, part.place_rests) for part in view.wall.of(Kind.FIREBLOCK))
    return _said("blocks" if at else "no_blocks", wall=view.wall.letter, places=at)


def _cap(view: WallView) -> str:
    wall = view.wall
    where = _said("on_concrete" if wall.cap_case == 1 else "under_joists")
    key = "no_cap" if not wall.of(Kind.CAP) else "cap_ledge" if wall.of(Kind.LEDGE) else "cap"
    return _said(key, wall=wall.letter, wide=view.cap_wide, where=where)


def _boxes(plan: Plan) -> Iterator[str]:
    for wall in plan.layout.walls:
        old = sum(box.kind == "existing" for box in wall.wall.boxes)
        if wall.wall.boxes:
            yield _said("boxes", wall=wall.letter, new=str(len(wall.wall.boxes) - old), old=str(old))
