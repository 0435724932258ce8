"""Warnings signed off: the words in which a person says why they go on all the same, as the job file keeps them.

What a STOP or a HOLD names is settled and not signed off; a job file that tries it is refused.
"""

from __future__ import annotations

from dataclasses import dataclass
from difflib import get_close_matches

from guide.interview.replies import LONGEST_TEXT, Sorry, clean
from guide.interview.written import Json, quoted
from guide.reference.findings import Severity, load_findings

LONGEST_SAYS = 10 * LONGEST_TEXT
"""Characters of a finding's own sentence."""


@dataclass(frozen=True, slots=True)
class SignOff:
    """One warning signed off."""

    finding: str
    """Its kind: a key of `prompts_data/findings.toml`."""
    wall: str
    """The name of its wall, which stays when walls change places; empty for the whole basement."""
    says: str
    """What it said when it was signed: other numbers are to be signed anew. Empty, in a file typed by hand, for whatever it says."""
    because: str
    """Why the person goes on, in their own words."""


def written_sign_off(each: SignOff) -> dict[str, Json]:
    """Return a sign-off as it stands in a job file."""
    about = {"finding": each.finding, "wall": each.wall, "says": each.says, "because": each.because}
    return {key: value for key, value in about.items() if value}


def read_sign_off(data: dict[str, Json]) -> SignOff:
    """Read a sign-off back. Raises Sorry with one sentence naming what was read and what would be right."""
    if odd := sorted(set(data) - {"finding", "wall", "says", "because"}):
        raise Sorry(f"unknown key {quoted(odd[0])}; a sign-off has finding, wall, says and because")
    for key, longest in (
        ("finding", LONGEST_TEXT),
        ("wall", LONGEST_TEXT),
        ("says", LONGEST_SAYS),
        ("because", LONGEST_TEXT),
    ):
        value = data.get(key, "")
        if not isinstance(value, str) or len(value) > longest:
            raise Sorry(f"{key} is {quoted(value)}; it is a text of {longest} characters at most")
    kind, wall, says, because = (clean(str(data.get(key, ""))) for key in ("finding", "wall", "says", "because"))
    text = load_findings().get(kind)
    if text is None:
        near = get_close_matches(kind, load_findings(), n=1)
        raise Sorry(
            f"{quoted(kind)} is no finding; {'did you mean “' + near[0] + '”?' if near else 'such as old_boxes'}"
        )
    if text.severity is not Severity.WARN:
        raise Sorry(f"{quoted(kind)} is a {text.severity}; only a WARN can be signed off")
    if not because:
        raise Sorry(f"because is missing for {quoted(kind)}; it says in your own words why you go on")
    return SignOff(kind, wall, says, because)
