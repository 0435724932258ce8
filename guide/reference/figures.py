"""Figures of practice: sizes and distances that the layout works with, each with where it comes from.

The figures stand in `prompts_data/figures.toml`; this module only gives them their type. A figure that is missing there,
or that nothing here names, is an error.
"""

from __future__ import annotations

from dataclasses import dataclass, fields, replace
from functools import lru_cache

from guide.lengths import Length, inches
from guide.reference.data import Data, DataError, read_toml


class Figure(Data):
    """One figure as it stands in data."""

    value: str
    what: str
    source: str
    """Standard with edition and section and how sure we are of it, or “common practice”."""


@dataclass(frozen=True, slots=True)
class Figures:
    """Lengths that practice or a product standard gives; what each is stands beside it in the data."""

    stud_thick: Length
    stud_deep: Length
    stud_deep_2x3: Length
    stud_spacing: Length
    plywood: Length
    gasket: Length
    sill: Length
    glue_bed: Length
    height_bend: Length
    glue_most: Length
    swing_most: Length
    plane_move_most: Length
    back_step: Length
    cut_step: Length
    foam_step: Length
    string_block: Length
    slip_tape: Length
    slip_long: Length
    slip_long_from: Length
    slip_eye: Length
    grade_below: Length
    foam_sold_step: Length
    foam_sold_most: Length
    foam_floor_gap: Length
    foam_cut_gap: Length
    foam_seam: Length
    can_deep: Length
    bead_in: Length
    batt_long: Length
    foam_least_piece: Length
    foam_slot_spare: Length
    plate_least_piece: Length
    plate_joint_apart: Length
    joist_thick: Length
    joist_apart: Length
    rim_back: Length
    rim_gap: Length
    rim_piece: Length
    edge_bearing_least: Length
    bay_pack: Length
    bay_stuff: Length
    cap_overlap: Length
    cap_kerf: Length
    cap_lap: Length
    cap_under_foam: Length
    knee_wall: Length
    ledge_from: Length
    sheet_long: Length
    ceiling: Length
    drywall_floor_gap: Length
    drywall_step: Length
    drywall_spare: Length
    block_lap: Length
    block_spacing: Length
    hand_room: Length
    door_wider: Length
    door_taller: Length
    frame_play: Length
    jamb_twist: Length
    window_buck: Length
    window_return_foam: Length
    board_2x6: Length
    board_2x8: Length
    board_2x12: Length
    board_1x: Length
    board_1x6: Length
    head_is_plate: Length
    cripple_least: Length
    header_doubles: Length
    pipe_behind: Length
    pipe_in_bay: Length
    pipe_side: Length
    panel_least: Length
    column_clear: Length
    pit_clear: Length
    overhead_longest: Length
    anchor_off_stud: Length
    chase_wider: Length
    chase_clear: Length
    chase_corner: Length
    chase_rung: Length
    notch_most: Length
    notch_most_2x3: Length
    notch_clear: Length
    drain_fall: Length
    box_wide: Length
    box_tall: Length
    box_deep: Length
    box_height: Length
    switch_height: Length
    cable_height: Length
    cable_free: Length
    box_clear: Length
    anchor_end: Length
    kerf: Length
    offcut_kept: Length
    square_one: Length
    square_other: Length
    across_error: Length
    closing_most: Length
    square_over: Length
    square_shows: Length
    corner_square: Length
    corner_cut: Length

    def for_stud(self, stud: str) -> Figures:
        """Return the figures for studs of this size, `2x4` or `2x3`; what is shallower for it rests on that answer."""
        if stud != "2x3":
            return self
        return replace(self, stud_deep=self.stud_deep_2x3.on("basement.stud"), notch_most=self.notch_most_2x3)


@lru_cache(maxsize=1)
def load_figures() -> Figures:
    """Return the figures that ship with wallbrief. Raises DataError when data and code do not name the same ones."""
    table = figure_table()
    named = {field.name for field in fields(Figures)}
    if odd := named.symmetric_difference(table):
        raise DataError(f"prompts_data/figures.toml: {', '.join(sorted(odd))} is in the data or in the code only")
    return Figures(**{name: inches(figure.value) for name, figure in table.items()})


def figure_table() -> dict[str, Figure]:
    """Return every figure with its source, by name."""
    return {name: Figure.model_validate(entry) for name, entry in read_toml("figures.toml").items()}
