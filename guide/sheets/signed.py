"""Signing a warning off: which findings a person means, what is kept of their words, and whether those words still stand."""

from __future__ import annotations

from collections.abc import Sequence

from guide.checks.findings import Finding
from guide.interview.replies import LONGEST_TEXT, clean
from guide.interview.signed import SignOff
from guide.reference.findings import Severity
from guide.sheets.spoken import say_of_talk
from guide.survey.model import Survey


def words_for(finding: Finding, signed: Sequence[SignOff], survey: Survey) -> str:
    """Return the words in which a WARN was signed off as it reads now; empty while it is not, and for anything else."""
    if finding.severity is not Severity.WARN:
        return ""
    like = _sign_off(finding, survey, "")
    same = [each for each in signed if (each.finding, each.wall) == (like.finding, like.wall)]
    return next((each.because for each in reversed(same) if each.says in ("", like.says)), "")


def sign_off(
    findings: Sequence[Finding],
    last: Sequence[Finding],
    signed: Sequence[SignOff],
    survey: Survey,
    name: str,
    because: str,
) -> tuple[str, tuple[SignOff, ...] | None]:
    """Return what is said to a person who signs off the findings of a name, and all sign-offs from then on.

    Without a name the one raised `last` is meant. The sign-offs are None where nothing is signed; nothing is said where
    words that are no name stand in its place.
    """
    if not name:
        names = list(dict.fromkeys(each.name for each in last if each.severity is Severity.WARN))
        if len(names) != 1:
            return say_of_talk("sign_which", names=", ".join(names) or "A.old_boxes"), None
        name = names[0]
    meant = [each for each in findings if each.name.lower() == name.lower()]
    if not meant:
        return ("" if " " in name else say_of_talk("sign_no_such", name=name)), None
    if meant[0].severity is not Severity.WARN:
        return say_of_talk("sign_not", name=meant[0].name, severity=meant[0].severity.value), None
    if not because:
        return say_of_talk("sign_why", name=meant[0].name), None
    if len(because) > LONGEST_TEXT:
        return say_of_talk("too_long", most=str(LONGEST_TEXT)), None
    new = tuple(dict.fromkeys(_sign_off(each, survey, because) for each in meant))
    anew = {(each.finding, each.wall, each.says) for each in new}
    kept = tuple(each for each in signed if (each.finding, each.wall, each.says) not in anew)
    return say_of_talk("signed", name=meant[0].name, because=because), (*kept, *new)


def _sign_off(finding: Finding, survey: Survey, because: str) -> SignOff:
    """Return the sign-off of a finding; its sentence is kept in inches whatever the tape, nothing in it guessed."""
    wall = survey.by_letter[finding.wall].name if finding.wall is not None else ""
    return SignOff(finding.key, clean(wall), clean(finding.sentence("inches", lambda _: False)), because)
