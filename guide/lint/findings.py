"""Findings: every remark of the engine has one, every HOLD names a step that is there, and each says what it must."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from guide.reference.codes import load_code
from guide.reference.findings import FindingText, Severity
from guide.reference.steps import StepBook

ONE_LINE = 46
"""What a finding's key and its few words may take of a screen line of 78, beside severity, wall and place."""


def lint_findings(findings: Mapping[str, FindingText], sayings: Mapping[str, str], steps: StepBook) -> Iterator[str]:
    """Yield what is missing or wrong in `prompts_data/findings.toml`, one sentence each."""
    remarks = sorted(key.removeprefix("remark.") for key in sayings if key.startswith("remark."))
    for key in remarks:
        if key not in findings:
            yield f"findings.toml: the engine's remark “{key}” has no finding."
    for key, text in findings.items():
        if not all(part.strip() for part in (text.short, text.say, text.costs, text.fix, text.source or text.figure)):
            yield f"findings.toml: {key} leaves what it says, costs, mends or comes from empty."
        if len(key) + len(text.short) > ONE_LINE:
            yield f"findings.toml: {key} says in short “{text.short}”, too much for one line of a screen with its name."
        if "{" in text.short:
            yield f"findings.toml: {key} says in short “{text.short}”, and nothing fills in its braces."
        if (text.severity is Severity.HOLD) != bool(text.holds):
            yield f"findings.toml: {key} must name the step it holds if it is a HOLD, and only then."
        if (text.source and text.figure) or (text.figure and not hasattr(load_code(), text.figure)):
            yield f"findings.toml: {key} takes its source from “{text.figure}”, which is no figure of the code, or has two."
        if text.holds and not steps.named(text.holds):
            yield f"findings.toml: {key} holds “{text.holds}”, which is no step."
