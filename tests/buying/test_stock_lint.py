"""The proof of the stock: each slip is found, and the stock that ships has none."""

from __future__ import annotations

from typing import Any

import pytest

from guide.lint.stock import lint_stock
from guide.reference.steps import load_steps
from guide.reference.stock import FastenerBook, Stock, load_fasteners, load_stock

SLIPS: dict[str, tuple[dict[str, Any], str]] = {
    "no source": ({"source": " "}, "item adhesive: it has no source"),
    "no use": ({"takes": ""}, "item adhesive: it has no takes"),
    "a step that is not there": ({"steps": ("foaming",)}, "“foaming”, which is no step"),
    "no word": ({"words": ()}, "item adhesive: a person has no word"),
    "a word of another thing": ({"words": ("gasket",)}, "“gasket” is item adhesive already"),
    "an empty tube": ({"holds": 0}, "holds 0"),
}


@pytest.mark.parametrize("slip", SLIPS)
def test_a_slip_in_the_stock_is_found(slip: str) -> None:
    """One sentence that names the thing."""
    change, said = SLIPS[slip]
    items = {**load_stock().item, "adhesive": load_stock().item["adhesive"].model_copy(update=change)}

    assert any(said in found for found in lint_stock(Stock(item=items), load_fasteners(), load_steps()))


def test_a_rule_with_a_fastener_nobody_sells_is_found() -> None:
    """What holds a part has to be on the list."""
    book = load_fasteners()
    rule = book.rule[0].model_copy(update={"fastener": "rivet"})
    found = list(lint_stock(load_stock(), FastenerBook(fastener=book.fastener, rule=(rule,)), load_steps()))

    assert any("rivet, which is no fastener" in said for said in found)


def test_the_stock_that_ships_is_sound() -> None:
    """Nothing found."""
    assert list(lint_stock(load_stock(), load_fasteners(), load_steps())) == []
