"""The signs of the text drawings: one for each look, chosen so that no two of one drawing can be mistaken.

Beside plain ASCII only box and block characters are used (Unicode 2500 to 259F); a terminal gives each one cell.
"""

from __future__ import annotations

from dataclasses import dataclass

from guide.drawing.shapes import Look


@dataclass(frozen=True, slots=True)
class Sign:
    """How something is drawn in one character cell."""

    boxed: str
    ascii: str
    says: str
    """What it is, for the legend; empty for what needs no word."""
    firm: bool = True
    """It must be seen however small it is, and nothing is written over it."""

    def plain(self, ascii_only: bool) -> str:
        """Return the character."""
        return self.ascii if ascii_only else self.boxed


SIGNS = {
    Look.STUD: Sign("│", "|", "stud"),
    Look.PACK: Sign("▌", "P", "flat corner stud"),
    Look.PLATE: Sign("═", "=", "plate"),
    Look.SPAN: Sign("━", "-", "header, sill"),
    Look.BUCK: Sign("▆", "w", "window buck"),
    Look.CAP: Sign("▄", "^", "cap"),
    Look.FIREBLOCK: Sign("╬", "#", "fireblock"),
    Look.CHASE: Sign("┃", "!", "box round a pipe"),
    Look.PIPE: Sign("▓", "O", "pipe"),
    Look.BACKING: Sign("▂", "b", "backing block"),
    Look.OUTLET: Sign("@", "@", "electrical box"),
    Look.PROPOSED: Sign("o", "o", "outlet proposed, not counted yet"),
    Look.JOIST_END: Sign("█", "M", "joist end"),
    Look.JOIST_SIDE: Sign("─", "_", "joist, from its side", firm=False),
    Look.JOIST_BLOCK: Sign("▞", "N", "block between joists"),
    Look.HOUSE_SILL: Sign("▀", "S", "sill of the house"),
    Look.GAP: Sign("┊", ".", "gap"),
    Look.GASKET: Sign("~", "~", "gasket"),
    Look.FRAMING: Sign("█", "X", "framing"),
    Look.SHEET: Sign(" ", " ", "", firm=False),
    Look.DRYWALL: Sign("▐", "]", "drywall"),
    Look.OPENING: Sign("╱", "/", "opening", firm=False),
    Look.OPENING_CUT: Sign("╱", "/", "opening"),
    Look.LEAF: Sign("╲", "\\", "door leaf", firm=False),
    Look.FOAM: Sign(" ", " ", "", firm=False),
    Look.FOAM_CUT: Sign("░", ":", "foam"),
    Look.CONCRETE: Sign("▒", "%", "concrete", firm=False),
    Look.CONCRETE_CUT: Sign("▒", "%", "concrete"),
    Look.FRAMED_WALL: Sign("▚", "W", "wall that stands already", firm=False),
}
"""Every look has its sign; a test holds this complete."""

DOUBLE = Sign("║", "H", "two or more studs side by side")
JOINT = Sign("┼", "+", "joint of plate or cap")
SEAM_UPRIGHT = Sign("┊", ":", "foam seam")
SEAM_LEVEL = Sign("┈", ".", "foam seam")
SHEET_UPRIGHT = Sign("│", "|", "joint of the drywall")
SHEET_LEVEL = Sign("─", "-", "joint of the drywall")
SEAMS = {Look.FOAM: (SEAM_UPRIGHT, SEAM_LEVEL), Look.SHEET: (SHEET_UPRIGHT, SHEET_LEVEL)}
"""Wide and empty pieces whose edges are shown where two meet, with the signs, upright and level."""

WRITE_OVER = (None, Look.FOAM, Look.SHEET, Look.OPENING, Look.LEAF)
"""What words may stand on: nothing at all, and what is wide and empty."""
UPRIGHT = (Look.STUD, Look.PACK)
"""What is drawn as doubled where several fall into one cell."""
COVERING = (Look.PIPE, Look.CHASE)
"""What may stand in front of a stud and must not hide it."""
JOINTED = {Look.PLATE: JOINT, Look.CAP: JOINT}
"""Pieces whose end joints are shown, with the sign."""
LINE_LEVEL, LINE_UPRIGHT = ("├─┤", "|-|"), ("┬╎┴", "+'+")
"""First end, middle and last end of a line that shows a dimension, left to right and top to bottom."""
RULE = (("─", "┬"), ("-", "+"))
"""A rule between two divisions, and at one."""
