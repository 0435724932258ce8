"""The shopping list as it is printed: by trip and aisle, each line with its price or a blank to write it in.

A line that counts pieces nobody has measured goes on no trip: it waits, and says for which reading.
"""

from __future__ import annotations

import csv
import io
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from guide.buying.bill import Bill, bill_of, cost_of
from guide.buying.carrying import way_of
from guide.buying.lines import Line, units_of
from guide.buying.yard_saw import yard_cuts
from guide.lengths import SIXTEENTH, ZERO, inches, show, with_unit
from guide.reference.figures import load_figures
from guide.reference.findings import Severity
from guide.reference.sayings import say, saying
from guide.reference.stock import AISLES, Fastener, StockItem, load_fasteners, load_stock, stick_size
from guide.sheets.plan import Plan
from guide.sheets.ticket import amount
from guide.survey.on_hand import OFFCUT, read_on_hand, said_as

TRIPS = ("first", "second", "inspected", "unmeasured")
"""Every trip, in order: the stages of the stock, and what waits for the tape."""

BLANK = "_____"


@dataclass(frozen=True, slots=True)
class Row:
    """One line as it is printed."""

    line: Line
    paid: str
    """Price and cost, or a blank to write them in."""
    over: str
    """What is over, and what of it can go back unopened; empty when nothing is."""
    waits: tuple[str, ...]
    """The readings it waits for, by name."""


@dataclass(frozen=True, slots=True)
class Trip:
    """What is bought in one go."""

    id: str
    title: str
    aisles: tuple[tuple[str, tuple[Row, ...]], ...]
    """Rows by aisle, in walking order."""
    bill: Bill


def trip_of(plan: Plan, line: Line) -> str:
    """Return the trip a line belongs to."""
    return "unmeasured" if plan.survey.unsure(line.rests) else line.stage


def trips_of(plan: Plan) -> tuple[Trip, ...]:
    """Return every trip that buys something; none while a STOP stands."""
    lines = [] if plan.stopped else [line for line in plan.purchase.lines if line.buy]
    trips = []
    for trip in TRIPS:
        held = [line for line in lines if trip_of(plan, line) == trip]
        if held:
            rows = [_row(plan, line) for line in held]
            aisles = [(aisle, tuple(row for row in rows if row.line.aisle == aisle)) for aisle in AISLES]
            title = say(saying(f"trip.{trip}"))
            trips.append(Trip(trip, title, tuple(each for each in aisles if each[1]), bill_of(held, plan.prices)))
    return tuple(trips)


def _row(plan: Plan, line: Line) -> Row:
    waits = tuple(plan.survey.names.get(rest, rest) for rest in plan.survey.unsure(line.rests))
    each, cost = plan.prices.of(line.ware), cost_of(line, plan.prices)
    paid = BLANK if each is None or cost is None else f"{plan.prices.money(each)} each, {plan.prices.money(cost)}"
    return Row(line, paid, _over(line), waits)


def _over(line: Line) -> str:
    if not line.spare:
        return ""
    unit = {"foot": " ft", "inch**3": " cu in"}.get(line.spare_of, "")
    over = f"{line.spare}{unit} over"
    if not line.back:
        return over
    return f"{over}, may go back" if line.back == line.spare else f"{over}, {line.back} unopened may go back"


def at_home(plan: Plan) -> list[str]:
    """Return what is at home already and comes off the list, in words; offcuts among it where a piece is cut from them."""
    lines = [line for line in plan.purchase.lines if line.have]
    fasteners = load_fasteners().fastener
    whole = [f"{line.have} {'x' if line.ware in fasteners else line.unit}: {line.name}" for line in lines]
    items = load_stock().item
    whole += [
        f"offcut {show(length, plan.tape)}, {count} x: {items[each.item].name}"
        for each in plan.purchase.lumber
        for length, count in sorted(Counter(stick.length for stick in each.sticks).items())
        if stick_size(length) not in items[each.item].sizes
    ]
    return whole + [
        f"offcut {show(cut.wide, plan.tape)} by {show(cut.tall, plan.tape)}: {items[each.item].name}"
        for each in plan.purchase.sheet_goods
        for cut in each.offcuts
        if not cut.out_of
    ]


def keeping_said(plan: Plan) -> list[str]:
    """Return one sentence for each kind of lumber at home: what keeping it costs beside taking it back and buying anew."""
    return [
        say(
            saying(
                "keep.costs" if kept.keeping > kept.anew else "keep.best",
                name=load_stock().item[kept.item].name,
                count=kept.count,
                keeping=amount(plan, kept.keeping, priced=kept.priced),
                anew=amount(plan, kept.anew, priced=kept.priced),
                more=amount(plan, abs(kept.keeping - kept.anew), priced=kept.priced),
            )
        )
        for kept in plan.purchase.kept
    ]


def once_bought(plan: Plan) -> str:
    """Return what to answer once both trips are done, to keep what is bought whatever changes; empty when there is nothing.

    Only what the walls take: what every job takes, and what is bought later, is left out.
    """
    items = load_stock().item
    bought = [
        line
        for line in plan.purchase.lines
        if (line.buy or line.have)
        and trip_of(plan, line) in ("first", "second")
        and not (line.ware in items and items[line.ware].each_job)
    ]
    counts: Counter[str] = Counter()
    for line in bought:
        counts[line.ware] += line.buy * _singly(line.ware) + line.have
    on_hand, _ = read_on_hand(plan.survey.basement.on_hand or "")
    counts |= {ware: count for ware, count in on_hand.items() if f" {OFFCUT} " in ware}
    return ", ".join(said_as(ware, count) for ware, count in counts.items())


def _singly(ware: str) -> int:
    fastener = load_fasteners().fastener.get(ware)
    return fastener.per_unit if fastener else 1


def held_lines(plan: Plan) -> list[str]:
    """Return what a HOLD may still change, in words: the things that the step it holds takes, and what is to be settled."""
    sold: dict[str, StockItem | Fastener] = {**load_stock().item, **load_fasteners().fastener}
    said = []
    for finding in plan.findings:
        if finding.severity is not Severity.HOLD:
            continue
        lines = [
            each
            for each in plan.purchase.lines
            if each.buy and finding.text.holds in sold[each.ware.split(" ")[0]].steps
        ]
        if lines:
            where = f"wall {finding.wall}: " if finding.wall else ""
            what = where + finding.sentence(plan.tape, plan.guessed)
            said.append(
                say(saying("trip.held", names="; ".join(dict.fromkeys(line.name for line in lines)), what=what))
            )
    return said


def way_lines(plan: Plan) -> list[str]:
    """Return what does not simply go along: what the yard cuts first and what it has to bring, in words."""
    basement = plan.survey.basement
    way = way_of(basement)
    said = []
    for carry in ("yard", "delivered"):
        bought: Counter[str] = Counter()
        for line in plan.purchase.lines:
            bought[line.ware] += line.buy * (line.carry == carry)
        sold = load_stock().item
        names = [
            f"{bought[line.ware]} {units_of(sold[line.ware.split()[0]], bought[line.ware])} of {line.name}"
            for line in plan.purchase.lines
            if bought[line.ware] and not line.culls
        ]
        if names:
            said.append(say(saying(f"way.{carry}", names="; ".join(names), way=way.say)))
    carried = any(line.buy and line.carry == "carried" for line in plan.purchase.lines)
    longest, widest = (with_unit(inches(size), plan.tape) for size in (way.longest, way.widest))
    fits = saying("way.fits", way=way.say, longest=longest, widest=widest)
    return [*said, *([say(fits)] if carried and inches(way.longest) > ZERO else [])]


def yard_cuts_said(plan: Plan) -> list[str]:
    """Return, for the yard's saw, where the sticks that it has to cut are cut, a sentence for each length."""
    basement, kerf, longest = plan.survey.basement, load_figures().kerf, inches(way_of(plan.survey.basement).longest)
    said = []
    for line in plan.purchase.lines:
        key, _, size = line.ware.partition(" ")
        if line.buy and line.carry == "yard" and not line.culls and load_stock().item[key].lengths:
            sticks = [
                stick
                for lumber in plan.purchase.lumber
                for stick in lumber.sticks
                if lumber.item == key and stick_size(stick.length) == size and not stick.at_home
                if not plan.survey.unsure(frozenset().union(*(part.size_rests for part in stick.parts)))
            ]
            cuts = yard_cuts(sticks, basement.end_trim, kerf, longest)
            places = (" and ".join(show(at, plan.tape, SIXTEENTH, "down") for at in cut.at) for cut in cuts)
            marks = ", ".join(f"{cut.count} at {place}" for cut, place in zip(cuts, places, strict=True))
            said += [say(saying("way.cut", name=line.name, cuts=marks))] if cuts else []
    return said


def bill_lines(plan: Plan, trips: Iterable[Trip]) -> list[tuple[str, str]]:
    """Return a row for each trip and one for all: what it costs as far as prices are known, and how many lines have none."""
    lines = [line for line in plan.purchase.lines if line.buy]
    rows = [(trip.title, trip.bill) for trip in trips] + [(say(saying("trip.together")), bill_of(lines, plan.prices))]
    return [(title, _sum(plan, bill)) for title, bill in rows]


def _sum(plan: Plan, bill: Bill) -> str:
    if not bill.priced:
        return "no price yet"
    known = plan.prices.money(bill.cents)
    return known if not bill.unpriced else f"{known} and {len(bill.unpriced)} without a price"


CSV_HEAD = (
    "trip",
    "aisle",
    "buy",
    "unit",
    "name",
    "need",
    "over",
    "at home",
    "how home",
    "price each",
    "cost",
    "waits for",
    "ware",
)


def shopping_csv(plan: Plan) -> str:
    """Return the list for a spreadsheet: a header, and one line for each thing; money with two decimals, or empty."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(CSV_HEAD)
    for trip in trips_of(plan):
        for aisle, rows in trip.aisles:
            for row in rows:
                line = row.line
                money = (_decimal(plan.prices.of(line.ware)), _decimal(cost_of(line, plan.prices)))
                said = (
                    trip.title,
                    aisle,
                    line.buy,
                    line.unit,
                    line.name,
                    line.need,
                    row.over,
                    line.have or "",
                    line.carry,
                )
                writer.writerow((*said, *money, "; ".join(row.waits), line.ware))
    return out.getvalue()


def _decimal(cents: int | None) -> str:
    return "" if cents is None else f"{cents // 100}.{cents % 100:02}"
