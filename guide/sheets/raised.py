"""Findings raised in the talk: each once, when everything it hangs on has been said, the worst first."""

from __future__ import annotations

from collections.abc import Iterable, Set
from dataclasses import dataclass

from guide.checks.findings import Finding
from guide.lengths import Tape, with_unit
from guide.reference.codes import CodeProfile
from guide.reference.findings import Severity
from guide.reference.sayings import Guessed
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
    """Return what is said of what was raised: a line for each of the worst, and how to hear more."""
    lines = [finding_line(each, tape, guessed) for each in raised.last[:MOST]]
    more = len(raised.last) - MOST
    if lines:
        lines.append(say_of_talk("raised_more", count=str(more)) if more > 0 else say_of_talk("raised_why"))
    return tuple(lines)


def finding_line(finding: Finding, tape: Tape, guessed: Guessed) -> str:
    """Return a finding in one line of a screen: how bad, its name, where, and what in a few words."""
    return _line(finding, "raised_at", finding.text.short, tape, guessed)


def whole_lines(findings: Iterable[Finding], tape: Tape, guessed: Guessed, code: CodeProfile) -> tuple[str, ...]:
    """Tell the whole of findings: what, why it costs, the cheapest fix, and where it comes from."""
    return tuple(
        line
        for each in findings
        for line in (
            _line(each, "raised_whole_at", each.sentence(tape, guessed), tape, guessed),
            say_of_talk("raised_costs", costs=each.text.costs),
            say_of_talk("raised_fix", fix=each.text.fix),
            say_of_talk("raised_source", source=each.source(code)),
        )
    )


def _line(finding: Finding, place: str, what: str, tape: Tape, guessed: Guessed) -> str:
    """Return one line of a finding. A place that nobody measured is about there."""
    where = ""
    if finding.at is not None:
        about = "about " if guessed(finding.at) else ""
        where = say_of_talk(place, at=f"{about}{with_unit(finding.at, tape)}")
    return say_of_talk("raised", severity=finding.severity.value, name=finding.name, where=where, what=what)
