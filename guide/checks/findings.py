"""What a finding is."""

from __future__ import annotations

from dataclasses import dataclass

from guide.lengths import Length, Tape, retold
from guide.reference.codes import CodeFigure, CodeProfile
from guide.reference.findings import FindingText, Severity, load_findings
from guide.reference.sayings import Guessed, Saying, SayingValue, say, say_text


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing found: which kind, where, and the values its text prints."""

    key: str
    """Its kind: a key of `prompts_data/findings.toml`."""
    wall: str | None
    """The wall's letter; None for the whole basement."""
    at: Length | None
    """Where along the wall, running from the left end of the plates; None for the whole wall."""
    values: tuple[tuple[str, SayingValue], ...] = ()
    said: Saying | None = None
    """For a remark of the layout engine: what it said; it is printed in place of the text's own sentence."""

    @property
    def id(self) -> str:
        """A name that stays the same as long as the finding does: `A.edge_missed`, with its place when it has one."""
        place = f"@{self.at.ticks}" if self.at is not None else ""
        return f"{self.name}{place}"

    @property
    def name(self) -> str:
        """What a person calls it by: its kind with its wall, `A.edge_missed`; several places of one wall share it."""
        return f"{self.wall or 'basement'}.{self.key}"

    @property
    def text(self) -> FindingText:
        """The text of its kind."""
        return load_findings()[self.key]

    @property
    def severity(self) -> Severity:
        """How bad it is."""
        return self.text.severity

    def sentence(self, tape: Tape, guessed: Guessed) -> str:
        """Say what was found, in one sentence."""
        if self.said is not None:
            return say(self.said, tape, guessed)
        return say_text(self.text.say, self.values, tape, guessed)

    def costs(self, tape: Tape) -> str:
        """Say why it matters."""
        return retold(self.text.costs, tape)

    def fix(self, tape: Tape) -> str:
        """Say what mends it at the least cost."""
        return retold(self.text.fix, tape)

    def source(self, code: CodeProfile) -> str:
        """Say where it comes from, in the edition of the job's code."""
        if not self.text.figure:
            named = "{" in self.text.source
            return say_text(self.text.source, self.values) if named else self.text.source
        figure: CodeFigure = getattr(code, self.text.figure)
        return f"{figure.cited} ({figure.seen}); your building office decides"


def finding(key: str, wall: str | None = None, at: Length | None = None, **values: SayingValue) -> Finding:
    """Return a finding with the values its text prints."""
    return Finding(key, wall, at, tuple(values.items()))
