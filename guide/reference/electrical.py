"""Rules for whoever does the wiring, as data: what the model electrical code of an edition asks, and how much a box holds."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache

from guide.reference.data import Data, read_data


class WiringRule(Data):
    """One rule."""

    say: str
    sections: dict[str, str]
    """The section in each edition that has the rule."""
    uses: tuple[str, ...] = ()
    """The uses of the basement it is for; empty for all."""
    seen: str


class BoxFill(Data):
    """How much room wires take in a box."""

    what: str
    """How it is counted, for whoever changes the table."""
    sections: dict[str, str]
    seen: str
    each: dict[str, Fraction]
    """Cubic inches for each wire, by its gauge."""

    def needs(self, gauge: str, cables: int) -> Fraction:
        """Return the cubic inches that a box needs for cables of two wires and a ground, with clamps and one device.

        `cables` is 1 or more. Raises KeyError for a gauge that is not in the table.
        """
        grounds = 1 + Fraction(max(cables - 4, 0), 4)
        clamps, device = 1, 2
        return self.each[gauge] * (cables * 2 + grounds + clamps + device)


class Wiring(Data):
    """Everything in the file."""

    standard: str
    rule: tuple[WiringRule, ...]
    fill: BoxFill

    def rules(self, edition: str, use: str) -> tuple[tuple[str, str, str], ...]:
        """Return the rules of an edition for a use of the basement: what, where it stands, how sure we are."""
        return tuple(
            (rule.say, f"{self.standard} {edition}, {rule.sections[edition]}", rule.seen)
            for rule in self.rule
            if edition in rule.sections and use in (rule.uses or (use,))
        )


@lru_cache(maxsize=1)
def load_wiring() -> Wiring:
    """Return the rules that ship with wallbrief. Raises DataError when the data is not right."""
    return read_data("codes/electrical.toml", Wiring)
