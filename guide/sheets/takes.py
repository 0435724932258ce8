"""What one wall alone takes of glue, foam, tape and sealant, so that its page says how many to carry to it."""

from __future__ import annotations

from guide.buying.lines import packs_for, units_of
from guide.buying.takeoff import takeoff
from guide.layout.parts import Layout
from guide.reference.stock import load_stock
from guide.sheets.ticket import LOCKED
from guide.sheets.view import WallView


def takes(view: WallView, *wares: str) -> list[str]:
    """Return one line for each of these wares: how many a wall takes, without the spare and what is at home."""
    survey, stock = view.plan.survey, load_stock()
    return [
        f"{stock.item[need.id].name}: {LOCKED if survey.unsure(need.rests) else _count(need.id, need.quantity, need.holds)}"
        for need in takeoff(Layout(survey, (view.wall,), view.plan.code))
        if need.id in wares
    ]


def _count(ware: str, quantity: int, holds: int) -> str:
    count = packs_for(quantity, holds, 0)
    return f"{count} {units_of(load_stock().item[ware], count)}"
