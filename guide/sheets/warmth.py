"""What a page says of heat: what each layer holds back, and the whole wall with its wood, as the US and Canada write it."""

from __future__ import annotations

from dataclasses import dataclass

from guide.checks.heat import Assembly, assembly_of
from guide.layout.parts import WallLayout
from guide.reference.materials import us_r
from guide.sheets.plan import Plan


@dataclass(frozen=True, slots=True)
class Warmth:
    """One wall's figures, printed."""

    rows: tuple[tuple[str, str, str], ...]
    """What it is, R and RSI."""
    wood: str
    """The share of the wall's area that is wood, in percent."""
    us_u: str
    si_u: str


def warmth_of(plan: Plan, wall: WallLayout) -> Warmth:
    """Return what a wall holds back; a foam thickness that nobody measured gives “about”."""
    basement = plan.survey.basement
    assembly = assembly_of(wall, basement)
    about = "about " if plan.guessed(basement.foam_thickness) else ""
    filled = "batts in the bay" if basement.batts == "yes" else "empty bay"
    names = (
        "concrete, 8 in",
        f"{basement.foam} foam",
        filled,
        f"drywall {basement.drywall} in",
        "still air of the room",
    )
    rows = [*zip(names, assembly.bay.layers, strict=True), *_whole(assembly)]
    return Warmth(
        tuple((name, f"{about}{_r(us_r(held))}", f"{about}{held:.2f}") for name, held in rows),
        f"{assembly.wood * 100:.0f}",
        f"{about}{1 / us_r(assembly.parallel):.3f}",
        f"{about}{1 / assembly.parallel:.2f}",
    )


def _whole(assembly: Assembly) -> tuple[tuple[str, float], ...]:
    return (
        ("between two studs, all layers", sum(assembly.bay.layers)),
        ("the wall with its wood, parallel paths", assembly.parallel),
        ("the wall with its wood, isothermal planes", assembly.planes),
    )


def _r(value: float) -> str:
    return f"{value:.1f}" if value >= 1 else f"{value:.2f}"
