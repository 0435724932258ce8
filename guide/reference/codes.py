"""Code profiles: what a model code asks, as figures that carry standard, edition, section and how sure we are of them.

wallbrief never says that something passes: it prints the figure beside the person's own and leaves the decision to the
building office.
"""

from __future__ import annotations

from functools import lru_cache

from guide.lengths import Length, inches
from guide.reference.data import Data, read_data


class CodeFigure(Data):
    """One figure of a code."""

    value: str
    unit: str
    what: str
    standard: str
    edition: str
    section: str
    seen: str
    """`seen`, or `memory` with its confidence."""

    @property
    def length(self) -> Length:
        """The value as a length; only for figures in inches or feet."""
        return inches(f"{self.value} {self.unit}")

    @property
    def cited(self) -> str:
        """Standard, edition and section in one line."""
        return f"{self.standard} {self.edition}, {self.section}"


class CodeProfile(Data):
    """The figures of one model code that the layout and the checks use."""

    name: str
    note: str
    fireblock_spacing: CodeFigure
    fireblock_plywood: CodeFigure
    header_span: CodeFigure
    header_above: CodeFigure
    notch_share: CodeFigure
    pin_edge: CodeFigure
    pin_depth_share: CodeFigure
    habitable_height: CodeFigure
    egress_area: CodeFigure
    egress_height: CodeFigure
    egress_width: CodeFigure
    egress_sill: CodeFigure
    thermal_barrier: CodeFigure
    box_setback: CodeFigure
    combustion_air: CodeFigure
    rim_foam: CodeFigure
    radon: CodeFigure


@lru_cache(maxsize=4)
def load_code(name: str = "us-irc-2021") -> CodeProfile:
    """Return a code profile of `prompts_data/codes`."""
    return read_data(f"codes/{name}.toml", CodeProfile)
