"""The papers as text: what each template is given, and Markdown by file name."""

from __future__ import annotations

import re
from functools import lru_cache

from jinja2 import Environment, PackageLoader, StrictUndefined

from guide.checks.findings import Finding
from guide.layout.parts import Kind
from guide.lengths import ZERO, retold, show, with_unit
from guide.order.plan import Step
from guide.order.times import in_hours
from guide.reference.briefing import load_briefing
from guide.reference.figures import load_figures
from guide.reference.findings import Severity
from guide.reference.glossary import Entry, load_glossary
from guide.reference.steps import load_cautions, load_steps
from guide.sheets.backing import backing_rows
from guide.sheets.concrete import concrete_rows, metal_rows
from guide.sheets.cuts import goods_of, yard_rips
from guide.sheets.drywall import cut_outs, drywall_rows, outside_lines
from guide.sheets.letter import asked_before, letter_of
from guide.sheets.lining import lining_rows
from guide.sheets.markdown import fold, table, text
from guide.sheets.marks import mark_rows
from guide.sheets.measure import cards
from guide.sheets.outlets import needs_outlets, outlet_rows, outlets_given
from guide.sheets.pictures import corners_of, pictures
from guide.sheets.plan import Plan
from guide.sheets.record import foam_behind, plates_left_of_corner, record_rows
from guide.sheets.rim import rim_rows
from guide.sheets.roles import corner_lines
from guide.sheets.room import room_view
from guide.sheets.shopping import (
    at_home,
    bill_lines,
    held_lines,
    keeping_said,
    once_bought,
    trips_of,
    way_lines,
    yard_cuts_said,
)
from guide.sheets.stops import stops
from guide.sheets.takes import takes
from guide.sheets.tonight import next_evening, tonight, when
from guide.sheets.twice import Doubtful
from guide.sheets.view import ROWS, WallView
from guide.sheets.walk import walk_of
from guide.sheets.warmth import climate_source, fuel_source, saved_by_all
from guide.sheets.ways import way_rows, way_typed
from guide.sheets.wiring import cable_said, fill_cited, fill_rows, stud_holes, wiring_rules

ALWAYS_SAID = ("any_work", "who_decides")
"""Cautions that stand before the first step of every page."""


@lru_cache(maxsize=1)
def _templates() -> Environment:
    environment = Environment(
        loader=PackageLoader("prompts_data", "papers"),
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
        extensions=["jinja2.ext.do"],
        autoescape=False,  # Markdown, not HTML: text is escaped by its own filter
    )
    environment.filters["text"] = text
    environment.filters["retold"] = retold
    environment.filters.update(ROWS)
    environment.filters |= {
        "drywall_rows": drywall_rows,
        "cut_outs": cut_outs,
        "outside_lines": outside_lines,
        "takes": takes,
        "walk_of": walk_of,
    }
    environment.filters |= {
        "outlet_rows": outlet_rows,
        "outlets_given": outlets_given,
        "needs_outlets": needs_outlets,
    }
    environment.filters |= {each.__name__: each for each in (record_rows, foam_behind, plates_left_of_corner)}
    environment.filters["hours"] = in_hours
    environment.filters["backing_rows"] = backing_rows
    environment.filters |= {"rim_rows": rim_rows, "lining_rows": lining_rows, "mark_rows": mark_rows}
    environment.filters["concrete_rows"] = concrete_rows
    environment.filters["metal_rows"] = metal_rows
    environment.filters |= {"way_rows": way_rows, "way_typed": way_typed}
    environment.filters["stops"] = stops
    environment.filters["corner_lines"] = corner_lines
    environment.globals["table"] = table
    environment.globals["zero"] = ZERO
    environment.globals["hours_from"] = load_steps().hours_from
    environment.globals["Kind"] = Kind
    environment.globals["saved_by_all"] = saved_by_all
    environment.globals["climate_source"] = climate_source
    environment.globals["figures"] = load_figures()
    environment.globals["fuel_source"] = fuel_source
    return environment


def papers(plan: Plan, again: tuple[Doubtful, ...] | None = None, *, ascii_only: bool = False) -> dict[str, str]:
    """Return every paper by its file name: the whole job sheet, the shopping list, a page for each wall laid out.

    `again` are the readings to tape again; None when nobody worked them out, since that takes a layout for each.
    `ascii_only` draws with nothing but ASCII, for a screen without other characters.
    """
    views = [WallView(plan, wall) for wall in plan.layout.walls]
    drawn = pictures(plan, ascii_only=ascii_only)
    drawings = {picture.name: picture.text for picture in drawn}
    trips = trips_of(plan)
    letter = letter_of(plan)
    shared = {
        **_common(plan),
        "trips": trips,
        "bills": bill_lines(plan, trips),
        "home": at_home(plan),
        "keeping": () if plan.stopped else keeping_said(plan),
        "held_back": held_lines(plan),
        "bought": "" if plan.stopped else once_bought(plan),
        "ways": way_lines(plan),
        "goods_of": () if plan.stopped else goods_of(plan),
        "rips": () if plan.stopped else yard_rips(plan),
        "yard_cuts": () if plan.stopped else yard_cuts_said(plan),
        "place": lambda finding: show(finding.at, plan.tape),
        "size": lambda length: with_unit(length, plan.tape),
        "before": lambda step: _before(plan, step),
        "letter": letter,
        "asks": lambda step: asked_before(letter, step),
        "standing": [load_cautions()[name] for name in ALWAYS_SAID],
    }
    bodies = {
        view.wall.letter: _render(
            "_wall.md.j2",
            **shared,
            view=view,
            drawings=drawings,
            corners=corners_of(drawn, view.wall.letter),
            sources=[],
        )
        for view in views
    }
    everything = "\n".join(bodies.values())
    whole = _render(
        "job-sheet.md.j2",
        **shared,
        views=views,
        bodies=bodies,
        rooms=drawings.get("floor-plan", ""),
        again=again,
        room=room_view(plan),
        wiring=wiring_rules(plan),
        fill=fill_rows(),
        fill_cited=fill_cited(plan),
        holes=stud_holes(plan),
        cable=cable_said(plan),
        switch_height=with_unit(load_figures().switch_height, plan.tape),
        sources=[],
        words=_words(everything),
    )
    pages = {"job-sheet.md": fold(whole), "shopping.md": fold(_render("shopping.md.j2", **shared))}
    for view in views:
        body = bodies[view.wall.letter]
        pages[f"wall-{view.wall.letter}.md"] = fold(
            _render("wall.md.j2", **shared, view=view, body=body, words=_words(body))
        )
        pages[f"helper-{view.wall.letter}.md"] = fold(
            _render(
                "helper.md.j2",
                **shared,
                view=view,
                drawings=drawings,
                tonight=next_evening(plan, view.wall.letter, helper=True),
            )
        )
    pages["office.md"] = fold(
        _render(
            "office.md.j2",
            **shared,
            views=views,
            drawings=drawings,
            rooms=drawings.get("floor-plan", ""),
            visits=_visits(plan),
        )
    )
    pages["walk.md"] = fold(_render("walk.md.j2", **shared, views=views))
    pages["record.md"] = fold(_render("record.md.j2", **shared, views=views))
    pages["evenings.md"] = fold(_render("evenings.md.j2", **shared, **_evenings(plan)))
    pages["brief.md"] = brief(plan)
    if missing := cards(plan):
        pages["measure.md"] = fold(_render("measure.md.j2", plan=plan, cards=missing))
    return pages


def _visits(plan: Plan) -> list[Step]:
    """Return the steps that an inspection follows, each once whatever the walls."""
    visits = [step for step in plan.steps if any(wait.what == "inspection" for wait in step.wait)]
    return list({step.title: step for step in visits}.values())


def brief(plan: Plan, letter: str | None = None, since: int = 1) -> str:
    """Return the briefing for the next evening, or for the next one on a wall: who does what, what to say, what stops it.

    `since` is the number of the first evening that still lies ahead.
    """
    return fold(_render("brief.md.j2", **_common(plan), tonight=next_evening(plan, letter, since)))


def _common(plan: Plan) -> dict[str, object]:
    """Return what every paper of the work may print."""
    return {
        "plan": plan,
        "briefing": load_briefing(),
        "say_finding": lambda finding: finding_said(plan, finding),
        "held": lambda step: [finding for finding in plan.findings if _holds(finding, step)],
    }


def _evenings(plan: Plan) -> dict[str, object]:
    """Return what the paper of the evenings prints besides the plan."""
    calendar = plan.calendar
    return {
        "evenings": [tonight(plan, evening) for evening in calendar.evenings],
        "ends": when(plan, calendar.last_day),
        "earliest": when(plan, calendar.bound.day),
        "hours_end": when(plan, calendar.bound.hours_day),
        "late_end": when(plan, calendar.bound.late_day),
        "chain_end": when(plan, calendar.bound.chain_day),
        "pace": int(calendar.crew.pace * 100),
    }


def _render(template: str, **values: object) -> str:
    return _templates().get_template(template).render(**values)


def _words(body: str) -> list[Entry]:
    """Return the glossary's entries for the words that stand in a text."""
    text = body.casefold()
    return [
        entry
        for entry in load_glossary()
        if any(_stands_in(text, word.casefold()) for word in (entry.word, *entry.also))
    ]


def _stands_in(text: str, word: str) -> bool:
    """Say whether a word, or its plural, stands in a text as a word; most do not at all, which is found out at once."""
    return word in text and re.search(rf"\b{re.escape(word)}s?\b", text) is not None


def _holds(finding: Finding, step: Step) -> bool:
    """Say whether a HOLD names this step: its family, on its wall or in the whole basement."""
    family = step.id.partition("@")[0].partition(":")[0]
    return finding.severity is Severity.HOLD and finding.text.holds == family and finding.wall in (None, step.wall)


def _before(plan: Plan, step: Step) -> list[str]:
    """Name the steps on other walls that this one has to wait for: they stand on another page."""
    if step.wall is None:
        return []
    named = {each.id: each for each in plan.steps}
    others = [named[need] for need in step.needs if named[need].wall not in (None, step.wall)]
    return [f"on wall {other.wall}, {other.title[0].lower()}{other.title[1:]}" for other in others]


def finding_said(plan: Plan, finding: Finding) -> str:
    """Return a finding as a sentence, on the tape of the job."""
    return finding.sentence(plan.tape, plan.guessed)
