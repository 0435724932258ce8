"""Code profiles: what a model code asks, as figures that carry standard, edition, section and how sure we are of them.

wallbrief never says that something passes: it prints the figure beside the person's own and leaves the decision to the
building office. A profile is put together from the country's figures, the editions in force, and the words of the
person's own office, which win over both.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from pydantic import ValidationError, field_validator

from guide.lengths import Length, Tape, inches
from guide.reference.data import Data, DataError, read_toml

US, CANADA = "us", "canada"
CODES = ("us 2018", "us 2021", "us 2024", "canada 2020")
"""Every country with its editions, as the answer about the code names them."""
DEFAULT_CODE, DEFAULT_ELECTRICAL = "us 2021", "2023"
"""What is printed while nobody knows the editions: the residential code most offices have, the strictest electrical one."""
CODE_OF_TAPE: dict[Tape, str] = {"inches": DEFAULT_CODE, "millimetres": "canada 2020"}
"""What is printed until the office is asked about: who reads a metric tape on this continent builds in Canada."""


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
    also: tuple[tuple[str, str], ...] = ()
    """The section that asks the same in other editions: (edition, section)."""
    exceptions: str = ""

    @field_validator("also", mode="before")
    @classmethod
    def _pairs(cls, table: object) -> object:
        """Take the table of the data as pairs, which a profile can be told apart by."""
        return tuple(table.items()) if isinstance(table, dict) else table

    @property
    def length(self) -> Length:
        """The value as a length; only for figures in inches, feet, millimetres or metres."""
        return inches(f"{self.value} {self.unit}")

    @property
    def cited(self) -> str:
        """Standard, edition and section in one line."""
        return f"{self.standard} {self.edition}, {self.section}"

    @property
    def said(self) -> str:
        """The value with its unit."""
        return f"{self.value} {self.unit}"

    def in_edition(self, edition: str) -> CodeFigure:
        """Return the figure as another edition has it; where none is recorded it stays what it is, and says so itself."""
        sections = dict(self.also)
        if edition not in sections:
            return self
        seen = f"{self.edition} edition: {self.seen}; this edition from memory, medium confidence"
        return self.model_copy(update={"edition": edition, "section": sections[edition], "seen": seen})


class CodeProfile(Data):
    """The figures that the layout and the checks use."""

    name: str
    note: str
    office: str = ""
    """Whose own words win over the model code; empty where there are none."""
    office_figures: tuple[str, ...] = ()
    """The figures that are the office's own."""
    fireblock_spacing: CodeFigure | None = None
    """Along the wall, in the US; a Canadian profile has `fire_block_along` instead."""
    fire_block_along: CodeFigure | None = None
    fire_block_up: CodeFigure | None = None
    fireblock_plywood: CodeFigure
    fireblock_materials: CodeFigure
    """Its value names answers to the question about what caps and fireblocks are cut from."""
    header_span: CodeFigure
    header_above: CodeFigure
    notch_share: CodeFigure
    pin_edge: CodeFigure
    pin_depth_share: CodeFigure
    habitable_height: CodeFigure
    beam_height: CodeFigure
    egress_area: CodeFigure
    egress_height: CodeFigure
    egress_width: CodeFigure
    egress_sill: CodeFigure
    egress_area_below: CodeFigure
    well_area: CodeFigure
    well_side: CodeFigure
    riser_change: CodeFigure
    stud_tall: CodeFigure
    stud_small_apart: CodeFigure
    stud_small_tall: CodeFigure
    hole_share: CodeFigure
    hole_edge: CodeFigure
    thermal_barrier: CodeFigure
    box_setback: CodeFigure
    receptacle_reach: CodeFigure
    wall_space: CodeFigure
    receptacle_high: CodeFigure
    switch_high: CodeFigure
    cable_setback: CodeFigure
    panel_wide: CodeFigure
    panel_deep: CodeFigure
    panel_high: CodeFigure
    combustion_air: CodeFigure
    cleanout_clear: CodeFigure
    flue_single: CodeFigure
    flue_double: CodeFigure
    rim_foam: CodeFigure
    rim_flame: CodeFigure
    foam_flame: CodeFigure
    foam_smoke: CodeFigure
    radon: CodeFigure

    @property
    def blocks_along(self) -> CodeFigure:
        """How far apart upright blocks may stand along a wall, by the country's own rule."""
        figure = self.fireblock_spacing or self.fire_block_along
        assert figure is not None, "load_code gives every profile one of the two"
        return figure

    @property
    def figures(self) -> dict[str, CodeFigure]:
        """Every figure the profile has, by name."""
        return {name: value for name, value in self if isinstance(value, CodeFigure)}


@lru_cache(maxsize=16)
def load_code(code: str = DEFAULT_CODE, electrical: str = DEFAULT_ELECTRICAL) -> CodeProfile:
    """Return the profile of a country and its editions: `us 2018`, `us 2021`, `us 2024` or `canada 2020`.

    Raises DataError when the data is not right.
    """
    country, _, residential = code.partition(" ")
    tables = read_toml(f"codes/{US}.toml")
    if country == CANADA:
        del tables["fireblock_spacing"]
        tables |= read_toml(f"codes/{CANADA}.toml")
    profile = _profile(tables, country)
    if country == CANADA:
        return profile
    editions = {"IRC": residential, "NEC": electrical}
    moved = {
        name: figure.in_edition(editions[figure.standard])
        for name, figure in profile.figures.items()
        if figure.standard in editions
    }
    name = f"{profile.name}: residential {residential}, electrical {electrical}"
    return profile.model_copy(update={**moved, "name": name})


def _profile(tables: dict[str, Any], country: str) -> CodeProfile:
    try:
        return CodeProfile.model_validate(tables)
    except ValidationError as error:
        raise DataError(f"prompts_data/codes/{country}.toml: {error}") from error
