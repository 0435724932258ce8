"""plan.json: the whole plan for programs. The models here are its format, and `wallbrief schema plan` prints their schema."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta
from typing import Any, Literal

from pydantic import Field

from guide.buying.sticks import Lumber
from guide.checks.findings import Finding
from guide.layout.parts import Part, WallLayout
from guide.lengths import Length, in_inches, with_unit
from guide.order.evenings import Evening
from guide.order.facts import SIDES
from guide.order.plan import Step
from guide.reference.sayings import say
from guide.sheets.cuts import goods_of
from guide.sheets.plan import Plan
from guide.sheets.shopping_json import (
    BillJson,
    JsonModel,
    LineJson,
    SheetsJson,
    bill_json,
    purchase_json,
    sheets_json,
)

PLAN_FORMAT = 1


class PartJson(JsonModel):
    """One part."""

    id: str
    mark: str = Field(description="what is pencilled on the piece")
    kind: str
    material: str
    box: dict[str, float] = Field(
        description="x0 x1 y0 y1 z0 z1 in inches: x from the left concrete corner, y from the concrete, z from the slab at the middle of the part; where an end slants, left_slant or right_slant is how much further in it lies at y1 than at y0, and x0 or x1 its long point"
    )
    cut: str = Field(description="length to cut, in the job's unit; `locked` when it rests on anything not measured")
    wide: str | None = Field(description="width to cut, where it is not the stock's own")
    locked: bool
    rests_on: list[str] = Field(description="the answers its size rests on, by path")
    placed_by: list[str] = Field(description="the answers its place rests on, by path")
    notches: int
    why: str


class DecisionJson(JsonModel):
    """One choice of the engine."""

    id: str
    what: str
    beat: list[str]


class WallJson(JsonModel):
    """One wall."""

    letter: str
    name: str
    back: str = Field(description="B, concrete to the back of the studs")
    face: str = Field(description="F, concrete to the room face of the studs")
    drywall: str = Field(description="D, concrete to the face of the drywall")
    plate: str
    cap_case: int
    order: str = Field(description="`plate first` or `foam first`")
    parts: list[PartJson]
    decisions: list[DecisionJson]


class FindingJson(JsonModel):
    """One finding."""

    id: str
    severity: str
    wall: str | None
    at: str | None = Field(description="where along the wall, from the left end of the plates")
    short: str = Field(description="what in a few words")
    what: str
    costs: str
    fix: str
    holds: str = Field(description="the step that waits for it; empty when none does")
    source: str
    signed_off: str = Field(
        description="for a WARN, why the person goes on, in their own words; empty while they have not said"
    )


class StickJson(JsonModel):
    """One stick and the parts cut from it."""

    length: str
    parts: list[str]
    rest: str


class LumberJson(JsonModel):
    """One kind of lumber, and how sure it is that none cheaper would do."""

    item: str
    lengths: list[str] = Field(description="the lengths that were on offer, in inches")
    kerf: str
    trim: str = Field(description="sawn off one end of every stick first; nothing is off an offcut at home")
    counted_in: Literal["cents", "inches"] = Field(
        description="inches of length stand for money while prices are missing"
    )
    paid: str = Field(description="all sticks to buy together, those bought for crooked ones not counted")
    at_least: str = Field(description="no choice of these lengths that holds the pieces comes to less")
    ways: int = Field(description="different ways in which sticks are cut")
    ways_at_least: int = Field(description="no plan on the very same sticks takes fewer")
    proven: bool = Field(description="`paid` is `at_least`: checked in whole numbers, without trusting a solver")


class WaitJson(JsonModel):
    """What has to pass after a step."""

    what: str
    hours: int | None = Field(description="none for an inspection, or when nobody knows how long")


class StepJson(JsonModel):
    """One step of the work."""

    id: str
    wall: str | None
    title: str
    needs: list[str]
    minutes_alone: int = Field(description="by trade habit")
    minutes_two: int
    tags: list[str] = Field(description="loud, glue, fumes, sparks, pins, two")
    waits: list[WaitJson]


class TaskJson(JsonModel):
    """One step, or a piece of one, on its evening."""

    step: str
    begins: int = Field(description="minutes from the start of the evening")
    minutes: int
    more: bool = Field(description="the step goes on another evening")


class EveningJson(JsonModel):
    """One evening of work."""

    day: int = Field(description="days since the first day")
    date: str | None = Field(description="none while there is no first day")
    people: int
    tasks: list[TaskJson]


class PlanJson(JsonModel):
    """The whole plan."""

    format: int
    note: str
    stopped: bool
    code: str
    walls: list[WallJson]
    findings: list[FindingJson]
    purchase: list[LineJson]
    bill: BillJson
    sticks: list[StickJson]
    lumber: list[LumberJson]
    sheet_goods: list[SheetsJson]
    steps: list[StepJson]
    evenings: list[EveningJson]
    earliest_day: int = Field(description="no calendar of the same people and hours ends before this day")


def plan_schema() -> dict[str, Any]:
    """Return the JSON Schema of plan.json."""
    return PlanJson.model_json_schema()


def plan_to_json(plan: Plan) -> dict[str, Any]:
    """Return a plan as plain JSON values. A STOP leaves out the purchase and the sticks; locked sizes are not printed."""
    model = PlanJson(
        format=PLAN_FORMAT,
        note=plan.note,
        stopped=plan.stopped,
        code=plan.code.name,
        walls=[_wall(plan, wall) for wall in plan.layout.walls],
        findings=_findings(plan, plan.findings),
        purchase=purchase_json(plan),
        bill=bill_json(plan),
        sticks=[]
        if plan.stopped
        else [
            StickJson(length=in_inches(s.length), parts=[p.mark for p in s.parts], rest=_size(plan, s.rest))
            for s in plan.purchase.sticks
        ],
        lumber=[] if plan.stopped else [_lumber(lumber) for lumber in plan.purchase.lumber],
        sheet_goods=[] if plan.stopped else [sheets_json(plan, goods) for goods in goods_of(plan)],
        steps=[_step(step) for step in plan.steps],
        evenings=[] if plan.stopped else [_evening(plan, evening) for evening in plan.calendar.evenings],
        earliest_day=plan.calendar.bound.day,
    )
    return model.model_dump()


def findings_to_json(plan: Plan, wanted: Sequence[Finding]) -> dict[str, Any]:
    """Return findings of a plan as plain JSON values, with their ids; whether a STOP stands in it, and by which code."""
    found = [finding.model_dump() for finding in _findings(plan, wanted)]
    return {"stopped": plan.stopped, "code": plan.code.name, "office": plan.code.office, "findings": found}


def _findings(plan: Plan, wanted: Sequence[Finding]) -> list[FindingJson]:
    return [
        FindingJson(
            id=f.id,
            severity=f.severity.value,
            wall=f.wall,
            at=with_unit(f.at, plan.tape) if f.at is not None else None,
            short=f.text.short,
            what=f.sentence(plan.tape, plan.guessed),
            costs=f.costs(plan.tape),
            fix=f.fix(plan.tape),
            holds=f.text.holds,
            source=f.source(plan.code),
            signed_off=plan.signed_off(f),
        )
        for f in wanted
    ]


def _wall(plan: Plan, wall: WallLayout) -> WallJson:
    offsets, tape = wall.offsets, plan.tape
    return WallJson(
        letter=wall.letter,
        name=wall.wall.name,
        back=_size(plan, offsets.back),
        face=_size(plan, offsets.face),
        drywall=_size(plan, offsets.drywall),
        plate=_size(plan, wall.plate),
        cap_case=wall.cap_case,
        order="foam first" if wall.foam_first else "plate first",
        parts=[_part(plan, wall, part) for part in wall.parts],
        decisions=[
            DecisionJson(
                id=d.id, what=say(d.saying, tape, plan.guessed), beat=[say(b, tape, plan.guessed) for b in d.beat]
            )
            for d in wall.decisions
        ],
    )


def _lumber(lumber: Lumber) -> LumberJson:
    paid, least = (str(n) if lumber.priced else in_inches(Length(n)) for n in (lumber.paid, lumber.least))
    return LumberJson(
        item=lumber.item,
        lengths=[in_inches(length) for length in lumber.lengths],
        kerf=in_inches(lumber.kerf),
        trim=in_inches(lumber.trim),
        counted_in="cents" if lumber.priced else "inches",
        paid=paid,
        at_least=least,
        ways=lumber.ways,
        ways_at_least=lumber.ways_least,
        proven=lumber.proven,
    )


def _part(plan: Plan, wall: WallLayout, part: Part) -> PartJson:
    box = part.box
    z0, z1 = box.z0.at(wall.wall, part.centre), box.z1.at(wall.wall, part.centre)
    edges = {"x0": box.x0, "x1": box.x1, "y0": box.y0, "y1": box.y1, "z0": z0, "z1": z1}
    edges |= {f"{side}_slant": slant for side, slant in zip(SIDES, part.slants, strict=True) if slant.ticks}
    locked = plan.stopped or bool(plan.survey.unsure(part.size_rests))
    return PartJson(
        id=part.id,
        mark=part.mark,
        kind=part.kind.value,
        material=part.material.value,
        box={name: round(float(edge.inch), 5) for name, edge in edges.items()},
        cut="locked" if locked else with_unit(part.cut, plan.tape, toward="down"),
        wide=None if part.wide is None else "locked" if locked else with_unit(part.wide, plan.tape, toward="down"),
        locked=locked,
        rests_on=sorted(part.size_rests),
        placed_by=sorted(part.place_rests),
        notches=len(part.notches),
        why=say(part.why, plan.tape, plan.guessed),
    )


def _step(step: Step) -> StepJson:
    return StepJson(
        id=step.id,
        wall=step.wall,
        title=step.title,
        needs=list(step.needs),
        minutes_alone=step.alone,
        minutes_two=step.two,
        tags=list(step.tags),
        waits=[WaitJson(what=wait.what, hours=wait.hours) for wait in step.wait],
    )


def _evening(plan: Plan, evening: Evening) -> EveningJson:
    start = plan.calendar.crew.start
    return EveningJson(
        day=evening.day,
        date=(start + timedelta(days=evening.day)).isoformat() if start else None,
        people=2 if evening.two else 1,
        tasks=[TaskJson(step=t.step.id, begins=t.begins, minutes=t.minutes, more=t.more) for t in evening.tasks],
    )


def _size(plan: Plan, length: Length) -> str:
    return "locked" if plan.guessed(length) else with_unit(length, plan.tape)
