"""The cut ticket: what is cut from which stick, and what is sure about the lumber that was chosen."""

from __future__ import annotations

from collections import Counter

from guide.buying.sticks import Lumber, Stick
from guide.layout.parts import FULL_HEIGHT
from guide.lengths import SIXTEENTH, ZERO, Length, in_feet, show, with_unit
from guide.reference.figures import load_figures
from guide.reference.sayings import say, saying
from guide.reference.stock import load_stock, stick_size
from guide.sheets.plan import Plan

LOCKED = "locked"


def stick_rows(plan: Plan) -> list[tuple[str, str, str, str]]:
    """Return what is cut from which stick: one row for all that give one upright and nothing else, then one a stick. The first cell is to tick."""
    singles = Counter((stick.length, stick.at_home) for stick in plan.purchase.sticks if _one_upright(stick))
    rows = [
        (
            "",
            f"{count} x {plan.survey.basement.stud} {_stick(plan, length, home)}",
            "one upright each: see the cut lists of the walls",
            "",
        )
        for (length, home), count in sorted(singles.items())
    ]
    others = (stick for stick in plan.purchase.sticks if not _one_upright(stick))
    return rows + [_stick_row(plan, number, stick) for number, stick in enumerate(others, 1)]


def _one_upright(stick: Stick) -> bool:
    return len(stick.parts) == 1 and stick.parts[0].kind in FULL_HEIGHT


def _stick_row(plan: Plan, number: int, stick: Stick) -> tuple[str, str, str, str]:
    cuts = ", ".join(
        f"{part.mark} {LOCKED if plan.survey.unsure(part.size_rests) else show(part.cut, plan.tape, SIXTEENTH, 'down')}"
        for part in stick.parts
    )
    treated = "treated" if "treated" in stick.parts[0].material.value else plan.survey.basement.stud
    kept = ", keep" if stick.rest >= load_figures().offcut_kept else ""
    rest = LOCKED if plan.guessed(stick.rest) else show(stick.rest, plan.tape, SIXTEENTH, "down") + kept
    return "", f"{number}: {treated} {_stick(plan, stick.length, stick.at_home)}", cuts, rest


def _stick(plan: Plan, length: Length, at_home: bool) -> str:
    """Name a stick as it is asked for at the yard, an offcut by its length."""
    sold = any(stick_size(length) in item.sizes for item in load_stock().item.values())
    return (stick_size(length) if sold else with_unit(length, plan.tape)) + (", from home" if at_home else "")


def lumber_said(plan: Plan) -> list[str]:
    """Return one sentence for each kind of lumber: what it was chosen from, and how sure it is that none is less."""
    return [_said(plan, lumber) for lumber in plan.purchase.lumber if lumber.sticks]


def _said(plan: Plan, lumber: Lumber) -> str:
    name, pieces = load_stock().item[lumber.item].name, sum(len(stick.parts) for stick in lumber.sticks)
    if all(stick.at_home for stick in lumber.sticks):
        return say(saying("lumber.all_at_home", name=name, pieces=pieces))
    what = saying(
        "lumber.proven" if lumber.proven else "lumber.open",
        name=name,
        pieces=pieces,
        paid=amount(plan, lumber.paid, priced=lumber.priced),
        least=amount(plan, lumber.least, priced=lumber.priced),
        over=amount(plan, lumber.paid - lumber.least, priced=lumber.priced),
        lengths=", ".join(map(stick_size, lumber.lengths)),
        kerf=lumber.kerf,
    )
    said = [say(what, plan.tape), say(saying("lumber.by_price" if lumber.priced else "lumber.by_length"))]
    if lumber.trim > ZERO:
        said.append(say(saying("lumber.trim", trim=lumber.trim), plan.tape))
    if lumber.ways < len(lumber.sticks):
        key = "lumber.ways_fewest" if lumber.ways == lumber.ways_least else "lumber.ways_found"
        said.append(say(saying(key, ways=lumber.ways, least=lumber.ways_least)))
    if any(stick.at_home for stick in lumber.sticks):
        said.append(say(saying("lumber.at_home")))
    return " ".join(said)


def amount(plan: Plan, number: int, *, priced: bool) -> str:
    """Print what lumber comes to: money, or the length that stands for it."""
    if priced:
        return plan.prices.money(number)
    return in_feet(Length(number)) if plan.tape == "inches" else with_unit(Length(number), plan.tape)
