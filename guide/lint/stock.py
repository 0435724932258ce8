"""The proof of what is bought: it says what it is for and where its figures come from, and what it names is there."""

from __future__ import annotations

from collections.abc import Iterator

from guide.reference.steps import StepBook
from guide.reference.stock import Fastener, FastenerBook, Stock, StockItem


def lint_stock(stock: Stock, fasteners: FastenerBook, steps: StepBook) -> Iterator[str]:
    """Yield what is missing or wrong in `prompts_data/stock`, one sentence each."""
    sold: dict[str, StockItem | Fastener] = {f"item {key}": item for key, item in stock.item.items()}
    sold |= {f"fastener {key}": fastener for key, fastener in fasteners.fastener.items()}
    names: dict[str, str] = {}
    for where, each in sold.items():
        for name in ("name", "unit", "takes", "source"):
            if not getattr(each, name).strip():
                yield f"stock, {where}: it has no {name}."
        for step in each.steps:
            if not steps.named(step):
                yield f"stock, {where}: it is for “{step}”, which is no step."
        if not each.words:
            yield f"stock, {where}: a person has no word for it."
        for word in each.words:
            if names.setdefault(word, where) != where:
                yield f"stock, {where}: “{word}” is {names[word]} already."
    for key, item in stock.item.items():
        if item.holds < 1 or item.spare < 0:
            yield f"stock, item {key}: it holds {item.holds} and {item.spare} % are spare; that cannot be."
    for rule in fasteners.rule:
        if rule.fastener not in fasteners.fastener:
            yield f"fasteners.toml: a {rule.kind} is held by {rule.fastener}, which is no fastener."
