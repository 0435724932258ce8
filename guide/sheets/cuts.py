"""How sheets are cut, as it is printed: strip by strip, and what can be said of the number of sheets."""

from __future__ import annotations

from guide.buying.sheets.plan import CutSheet, SheetGoods, Strip
from guide.layout.parts import Part
from guide.lengths import SIXTEENTH, Length, show
from guide.reference.figures import load_figures
from guide.reference.sayings import Saying, say, saying
from guide.reference.stock import load_stock, sheet_size
from guide.sheets.plan import Plan

LOCKED = "locked"


def goods_of(plan: Plan) -> tuple[SheetGoods, ...]:
    """Return the sheets of every material that the job takes."""
    return tuple(goods for goods in plan.purchase.sheet_goods if goods.sheets or goods.offcuts or goods.too_large)


def sheet_rows(plan: Plan, goods: SheetGoods) -> list[tuple[str, ...]]:
    """Return a row for each strip: tick box, sheet, width to rip to, what is cut from it, what is left of both."""
    rows: list[tuple[str, ...]] = []
    for number, sheet in enumerate((*goods.offcuts, *goods.sheets), 1 - len(goods.offcuts)):
        for place, strip in enumerate(sheet.strips):
            name = _name(plan, number, sheet) if place == 0 else ""
            beside = _rest(plan, sheet.rest, [p.across or sheet.wide for p in sheet.parts]) if place == 0 else ""
            cuts = ", ".join(_piece(plan, sheet, strip, part) for part in strip.parts)
            rows.append(
                (
                    "",
                    name,
                    _rip(plan, sheet, strip),
                    cuts,
                    _rest(plan, strip.rest, [p.along for p in strip.parts]),
                    beside,
                )
            )
    return rows


def _piece(plan: Plan, sheet: CutSheet, strip: Strip, part: Part) -> str:
    """Print a piece of a strip; one that is turned says so, one that is narrower than its strip what to trim it to."""
    wide = part.across or sheet.wide
    trim = f" trimmed to {_shown(plan, wide, part.size_rests)} wide" if wide < strip.wide else ""
    turned = " turned" if lies_turned(plan, part) else ""
    return f"{part.mark} {_shown(plan, part.along, part.size_rests)}{turned}{trim}"


def lies_turned(plan: Plan, part: Part) -> bool:
    """Say whether a piece lies on its sheet across the way it is named by."""
    return part.lies != plan.layout.parts[part.id].lies


def _name(plan: Plan, number: int, sheet: CutSheet) -> str:
    """Name a sheet by its number and size, an offcut by its size and where it is from."""
    if number > 0:
        return f"{number}: {sheet_size(sheet.wide, sheet.tall)}"
    if sheet.out_of:
        return f"cut out of {sheet.out_of}"
    return f"your offcut {show(sheet.wide, plan.tape)} by {show(sheet.tall, plan.tape)}"


def _rip(plan: Plan, sheet: CutSheet, strip: Strip) -> str:
    if strip.wide == sheet.wide:
        return "whole"
    side = ", off a tapered side" if strip.edge else ""
    return _shown(plan, strip.wide, frozenset().union(*(p.size_rests for p in strip.parts))) + side


def _shown(plan: Plan, length: Length, rests: frozenset[str] = frozenset()) -> str:
    unsure = plan.survey.unsure(length.rests | rests)
    return LOCKED if unsure else show(length, plan.tape, SIXTEENTH, "down")


def _rest(plan: Plan, rest: Length, cuts: list[Length]) -> str:
    return _shown(plan, rest, frozenset().union(*(cut.rests for cut in cuts)))


def goods_said(plan: Plan, goods: SheetGoods) -> list[str]:
    """Return what can be said of the sheets: how sure it is that they are the fewest, and what fits on none."""
    tape, name = plan.tape, load_stock().item[goods.item].name
    said: list[Saying] = []
    money = plan.prices.money
    shown = (money(goods.total), money(goods.least)) if goods.priced else (str(goods.total), str(goods.least))
    if goods.sheets:
        key = "price" if goods.priced else "count"
        said.append(
            saying(f"sheets.{key}_{'proven' if goods.proven else 'found'}", name=name, total=shown[0], least=shown[1])
        )
    for key, cut_out in (("offcuts", False), ("cut_outs", True)):
        pieces = sum(len(sheet.parts) for sheet in goods.offcuts if bool(sheet.out_of) == cut_out)
        if pieces:
            said.append(saying(f"sheets.{key}", name=name, count=pieces))
    turned = sum(lies_turned(plan, part) for sheet in (*goods.offcuts, *goods.sheets) for part in sheet.parts)
    if turned:
        said.append(saying("sheets.turned", count=turned))
    for part in goods.too_large:
        said.append(saying("sheets.too_large", mark=part.mark, name=name, long=part.along))
    return [say(each, tape, plan.guessed) for each in said]


def yard_rips(plan: Plan) -> list[str]:
    """Return, for the yard's panel saw, how many strips of which width come from each sheet that it rips."""
    if not any(
        line.carry == "yard" and line.ware.startswith(plan.purchase.plywood.item) for line in plan.purchase.lines
    ):
        return []
    said = []
    for number, sheet in enumerate(plan.purchase.plywood.sheets, 1):
        widths: dict[str, int] = {}
        for strip in sheet.strips:
            width = _rip(plan, sheet, strip)
            widths[width] = widths.get(width, 0) + 1
        strips = ", ".join(f"{count} x {width}" for width, count in widths.items())
        said.append(say(saying("sheets.yard", number=number, strips=strips, kerf=load_figures().cap_kerf), plan.tape))
    return said
