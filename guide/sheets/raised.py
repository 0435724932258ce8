"""Findings raised in the talk: each once, when everything it hangs on has been said, the worst first."""

from __future__ import annotations

from collections.abc import Iterable, Set
from dataclasses import dataclass

from guide.checks.findings import Finding
from guide.lengths import Tape, with_unit
from guide.reference.findings import Severity
from guide.reference.sayings import Guessed
from guide.sheets.actions import Action
from guide.sheets.plan import Plan
from guide.sheets.spoken import say_of_talk

MOST = 2
"""Findings said at once; more would not be read."""


@dataclass(frozen=True, slots=True)
class Raised:
    """What has been raised so far."""

    told: frozenset[str]
    """Kinds of finding, each with its wall, that were told or stood when the job was opened."""
    seen: frozenset[str] = frozenset()
    """Those there were after the answer before."""
    last: tuple[Finding, ...] = ()
    """What was raised by the last answer."""


def raised_after(
    before: Raised, findings: Iterable[Finding], done: Set[str], looked_at: Set[str], *, at_end: bool
) -> Raised:
    """Return what is raised after an answer. `looked_at` are the walls, and `basement`, whose findings these are.

    A wall's findings are raised once the wall is `done`. One of the basement waits for one answer more, which may be the
    one that settles it, unless nothing is left to ask. Notes are for the papers.
    """
    gone = {each for each in before.told if each.partition(".")[0] in looked_at}
    serious = [each for each in findings if each.severity is not Severity.NOTE]
    seen = frozenset(each.name for each in serious)
    ripe = tuple(
        each
        for each in serious
        if each.name not in before.told
        and (each.wall in done if each.wall is not None else at_end or each.name in before.seen)
    )
    told = (before.told - gone) | (before.told & seen) | {each.name for each in ripe}
    return Raised(told, seen, ripe)


def raised_lines(raised: Raised, tape: Tape, guessed: Guessed) -> tuple[str, ...]:
    """Return what is said of what was raised: a line for each of the worst, how to hear more, and how to sign it off."""
    lines = [finding_line(each, tape, guessed) for each in raised.last[:MOST]]
    more = len(raised.last) - MOST
    if lines:
        lines.append(say_of_talk("raised_more", count=str(more)) if more > 0 else say_of_talk("raised_why"))
    if warned := [each for each in raised.last[:MOST] if each.severity is Severity.WARN]:
        lines.append(say_of_talk("raised_sign", name=warned[0].name))
    return tuple(lines)


def finding_line(finding: Finding, tape: Tape, guessed: Guessed, *, signed: bool = False) -> str:
    """Return a finding in one line of a screen: how bad, its name, where or that it is signed off, and what in a few words."""
    where = say_of_talk("signed_at") if signed else _place(finding, "raised_at", tape, guessed)
    return _line(finding, where, finding.text.short)


def one_line_each(plan: Plan) -> list[str]:
    """Return one line of a screen for each finding of a plan, the worst first."""
    return [finding_line(each, plan.tape, plan.guessed, signed=bool(plan.signed_off(each))) for each in plan.findings]


def signable(plan: Plan, last: Iterable[Finding] = ()) -> tuple[Action, ...]:
    """Return each WARN that is not signed off, once by its name: the words that sign it off but for the reason, and the finding.

    What was raised `last` comes first.
    """
    unsigned = [each for each in plan.findings if each.severity is Severity.WARN and not plan.signed_off(each)]
    fresh = {each.name for each in last}
    found = {each.name: each for each in sorted(unsigned, key=lambda each: each.name not in fresh)}
    lines = ((name, finding_line(each, plan.tape, plan.guessed)) for name, each in found.items())
    return tuple(Action(say_of_talk("sign_begin", name=name), line) for name, line in lines)


def whole_lines(findings: Iterable[Finding], plan: Plan) -> tuple[str, ...]:
    """Tell the whole of findings of a plan: what, why it costs, the cheapest fix, where it comes from, who signed it off."""
    tape, guessed = plan.tape, plan.guessed
    lines: list[str] = []
    for each in findings:
        lines += (
            _line(each, _place(each, "raised_whole_at", tape, guessed), each.sentence(tape, guessed)),
            say_of_talk("raised_costs", costs=each.costs(tape)),
            say_of_talk("raised_fix", fix=each.fix(tape)),
            say_of_talk("raised_source", source=each.source(plan.code)),
        )
        if because := plan.signed_off(each):
            lines.append(say_of_talk("raised_signed", because=because))
        elif each.severity is Severity.WARN:
            lines.append(say_of_talk("raised_unsigned", name=each.name))
    return tuple(lines)


def _line(finding: Finding, where: str, what: str) -> str:
    return say_of_talk("raised", severity=finding.severity.value, name=finding.name, where=where, what=what)


def _place(finding: Finding, key: str, tape: Tape, guessed: Guessed) -> str:
    """Say where along its wall a finding is, if anywhere. A place that nobody measured is about there."""
    if finding.at is None:
        return ""
    about = "about " if guessed(finding.at) else ""
    return say_of_talk(key, at=f"{about}{with_unit(finding.at, tape)}")
