"""The shopping list and the sheets for programs: the models that plan.json and shopping.json share."""

from __future__ import annotations

from typing import Any

from pydantic import BaseModel, ConfigDict, Field

from guide.buying.bill import bill_of, cost_of
from guide.buying.lines import Line
from guide.buying.sheets.plan import SheetGoods
from guide.lengths import in_inches
from guide.sheets.cuts import lies_turned
from guide.sheets.plan import Plan
from guide.sheets.shopping import trip_of

SHOPPING_FORMAT = 1


class JsonModel(BaseModel):
    """Base of everything written for programs: a key more or less is an error."""

    model_config = ConfigDict(frozen=True, extra="forbid")


class LineJson(JsonModel):
    """One line of the shopping list."""

    ware: str = Field(description="what it is, as price files name it")
    aisle: str
    name: str
    buy: int
    unit: str
    need: str
    spare: int = Field(description="how much is over, in `spare_of`")
    spare_of: str
    have: int = Field(description="how many are at home and came off: fasteners singly, everything else by the unit")
    carry: str = Field(description="`carried`: it fits; `yard`: the yard cuts it first; `delivered`")
    back: int = Field(description="whole units that stay unopened and can go back, if everything goes as counted")
    culls: bool = Field(description="bought only because some sticks are too crooked to cut; in no claim")
    trip: str = Field(description="when it is bought: `first`, `second`, `inspected`, or `unmeasured`: not yet")
    waits_for: list[str] = Field(description="the answers nobody has measured that it rests on, by path")
    cents_each: int | None = Field(description="the price of one unit in whole cents; null when it is not known")
    cents: int | None = Field(description="what the line costs in whole cents; null when its price is not known")


class BillJson(JsonModel):
    """What the list costs, as far as prices are known."""

    sign: str
    about: str = Field(description="where the prices come from")
    cents: int = Field(description="whole cents of everything that has a price")
    unpriced: list[str] = Field(description="what has no price, by ware")


class ShoppingJson(JsonModel):
    """The shopping list alone."""

    format: int
    note: str
    stopped: bool
    purchase: list[LineJson]
    bill: BillJson


class SheetJson(JsonModel):
    """One sheet: its strips ripped from end to end, and what is cut from each, the longest first."""

    item: str
    own: bool = Field(description="an offcut that is at home; else it is bought, or cut out of a piece")
    out_of: str = Field(description="the mark of the piece it is cut out of for an opening; else empty")
    wide: str
    tall: str
    strips: list[list[str]] = Field(description="the marks of the pieces, strip by strip")
    turned: list[str] = Field(description="the marks of those that lie across the sheet")


class SheetsJson(JsonModel):
    """The sheets of one material."""

    sheets: list[SheetJson]
    too_large: list[str] = Field(description="the marks of pieces that no sheet on the list is large enough for")
    in_cents: bool = Field(description="whether `total` and `least` are money, or numbers of sheets")
    total: int
    least: int = Field(
        description="no layout of any kind takes less for the pieces no offcut gives: checked in whole numbers"
    )


def shopping_to_json(plan: Plan) -> dict[str, Any]:
    """Return the shopping list alone as plain JSON values, as plan.json has it."""
    model = ShoppingJson(
        format=SHOPPING_FORMAT, note=plan.note, stopped=plan.stopped, purchase=purchase_json(plan), bill=bill_json(plan)
    )
    return model.model_dump()


def purchase_json(plan: Plan) -> list[LineJson]:
    """Return the lines of the list; none while a STOP stands."""
    return [] if plan.stopped else [_line(plan, line) for line in plan.purchase.lines]


def bill_json(plan: Plan) -> BillJson:
    """Return what the list costs."""
    bill = bill_of([] if plan.stopped else plan.purchase.lines, plan.prices)
    return BillJson(sign=plan.prices.sign, about=plan.prices.about, cents=bill.cents, unpriced=list(bill.unpriced))


def _line(plan: Plan, line: Line) -> LineJson:
    given = {name: getattr(line, name) for name in LineJson.model_fields if hasattr(line, name)}
    return LineJson(
        **given,
        trip=trip_of(plan, line),
        waits_for=list(plan.survey.unsure(line.rests)),
        cents_each=plan.prices.of(line.ware),
        cents=cost_of(line, plan.prices),
    )


def sheets_json(plan: Plan, goods: SheetGoods) -> SheetsJson:
    """Return the sheets of one material and how they are cut."""
    return SheetsJson(
        sheets=[
            SheetJson(
                item=goods.item,
                own=sheet in goods.offcuts and not sheet.out_of,
                out_of=sheet.out_of,
                wide=in_inches(sheet.wide),
                tall=in_inches(sheet.tall),
                strips=[[part.mark for part in strip.parts] for strip in sheet.strips],
                turned=[part.mark for part in sheet.parts if lies_turned(plan, part)],
            )
            for sheet in (*goods.offcuts, *goods.sheets)
        ],
        too_large=[part.mark for part in goods.too_large],
        in_cents=goods.priced,
        total=goods.total,
        least=goods.least,
    )
