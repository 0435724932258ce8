"""The texts of findings: how bad each is, what it costs, the cheapest fix, which step it holds, and which paper says so."""

from __future__ import annotations

from enum import StrEnum
from functools import lru_cache

from guide.reference.data import Data, read_data


class Severity(StrEnum):
    """How bad a finding is."""

    STOP = "STOP"
    """Nothing is cut and nothing is bought until it is settled."""
    HOLD = "HOLD"
    """The step it names waits."""
    WARN = "WARN"
    """Look at it and decide."""
    NOTE = "NOTE"
    """Good to know."""


class FindingText(Data):
    """One kind of finding."""

    severity: Severity
    short: str
    """What is wrong in a few words, so that a finding with its name and place is one line of a screen."""
    say: str
    """What is wrong, with values in braces."""
    costs: str
    """Why it costs."""
    fix: str
    """The cheapest fix, and who does it."""
    holds: str = ""
    """The id of the step that waits, for a HOLD."""
    source: str = ""
    """Where it comes from; empty where a figure of the code says it."""
    figure: str = ""
    """The name of that figure: standard, section and edition are then those of the job."""


class _Findings(Data):
    finding: dict[str, FindingText]


@lru_cache(maxsize=1)
def load_findings() -> dict[str, FindingText]:
    """Return the texts of every finding by its key."""
    return read_data("findings.toml", _Findings).finding
