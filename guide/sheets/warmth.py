"""What a page says of heat: what each layer holds back, the whole wall with its wood, dew, and what is saved in a year."""

from __future__ import annotations

from dataclasses import dataclass, replace

from guide.checks.energy import asked_for, in_canada, nominal
from guide.checks.heat import Assembly, assembly_of
from guide.checks.losses import price_of, saving_of
from guide.checks.moisture import FoamFace, degrees, foam_face, foam_that_would_do
from guide.layout.parts import WallLayout
from guide.reference.climates import load_climates
from guide.reference.energy import load_effective, load_energy
from guide.reference.figures import load_figures
from guide.reference.fuels import load_fuels
from guide.reference.materials import us_r
from guide.reference.sayings import say, saying
from guide.reference.units import units
from guide.sheets.plan import Plan
from guide.survey.model import Basement

DAMP = "50"
"""Percent of humidity that batts are weighed with while nobody was asked: the damp side, as the question takes it."""


@dataclass(frozen=True, slots=True)
class Warmth:
    """One wall's figures, printed."""

    rows: tuple[tuple[str, str, str], ...]
    """What it is, R and RSI."""
    wood: str
    """The share of the wall's area that is wood, in percent."""
    us_u: str
    si_u: str
    row: str
    """What the energy code asks in the zone; empty while the zone is not known."""
    yours: str
    """What the wall has, as that row counts it."""
    cited: str
    face: str
    """The foam's room face in the coldest month; empty unless batts stand before it and zone and humidity are known."""
    dew: str
    """The dew point of the room, beside it."""
    year: tuple[tuple[str, ...], ...]
    """That face in every month, and the months in which the air of the room wets it, as rows of a table."""
    dry: str
    """How thick foam would have to be for batts to stay dry in every month, in words; empty while the zone is not known."""
    bare: str
    """What goes out through the bare concrete in a year; empty while the zone is not known."""
    built: str
    saved: str


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
    face = foam_face(wall, basement) if basement.batts == "yes" else None
    saving = saving_of(wall, basement)
    return Warmth(
        rows=tuple((name, f"{about}{_r(us_r(held))}", f"{about}{held:.2f}") for name, held in rows),
        wood=f"{assembly.wood * 100:.0f}",
        us_u=f"{about}{1 / us_r(assembly.parallel):.3f}",
        si_u=f"{about}{1 / assembly.parallel:.2f}",
        row=asked_for(basement),
        yours=f"RSI {about}{assembly.planes:.2f}" if in_canada(basement) else nominal(basement).said,
        cited=(load_effective() if in_canada(basement) else load_energy(basement.energy)).cited,
        face=degrees(face.coldest, basement.tape) if face else "",
        dew=degrees(face.dew, basement.tape) if face else "",
        year=_year(face, basement) if face else (),
        dry=_dry(wall, basement) if load_climates().of(basement.zone) else "",
        bare=_heat(saving.bare) if saving else "",
        built=_heat(saving.built) if saving else "",
        saved=_saved(saving.saved, basement) if saving else "",
    )


def _year(face: FoamFace, basement: Basement) -> tuple[tuple[str, ...], ...]:
    shown = [degrees(mean, basement.tape).split() for mean in face.months]
    wet = ["wet" if mean < face.dew else "" for mean in face.months]
    return (f"face, {shown[0][1]}", *(number for number, _ in shown)), ("", *wet)


def _dry(wall: WallLayout, basement: Basement) -> str:
    batted = replace(basement, batts="yes", humidity=basement.humidity or DAMP)
    need = foam_that_would_do(wall, batted)
    key = f"batts.{'dry' if need is not None else 'never'}_{'now' if basement.batts == 'yes' else 'later'}"
    said = saying(key, need=need or load_figures().foam_sold_most, humidity=batted.humidity or DAMP)
    return say(said, basement.tape)


def saved_by_all(plan: Plan) -> str:
    """Return what every wall together saves in a year; empty while the zone is not known or no wall is laid out."""
    found = [saving_of(wall, plan.survey.basement) for wall in plan.layout.round_room]
    savings = [saving.saved for saving in found if saving is not None]
    return _saved(sum(savings), plan.survey.basement) if savings else ""


def climate_source() -> str:
    """Return where the years of the climate zones come from."""
    return load_climates().source


def fuel_source(basement: Basement) -> str:
    """Return where the heat in a unit of fuel comes from; empty where no fuel was named."""
    fuel = load_fuels().get(basement.heat or "")
    return fuel.source if fuel is not None and basement.heat_price is not None else ""


def _whole(assembly: Assembly) -> tuple[tuple[str, float], ...]:
    return (
        ("between two studs, all layers", sum(assembly.bay.layers)),
        ("the wall with its wood, parallel paths", assembly.parallel),
        ("the wall with its wood, isothermal planes", assembly.planes),
    )


def _r(value: float) -> str:
    return f"{value:.1f}" if value >= 1 else f"{value:.2f}"


def _saved(kwh: float, basement: Basement) -> str:
    """Print heat, and what it costs where the person has given a price."""
    price = price_of(kwh, basement)
    fuel = load_fuels().get(basement.heat or "")
    if price is None or fuel is None:
        return _heat(kwh)
    return f"{_heat(kwh)}, ${_two_figures(price)} at {basement.heat_price} cents a {fuel.unit}"


def _heat(kwh: float) -> str:
    """Print heat to two figures, in the units of electric and gas bills: what is known of soil carries no more."""
    heat = units().Quantity(kwh, "kWh")
    shown = [f"{_two_figures(float(heat.to(unit).magnitude))} {name}" for unit, name in _BILLS]
    return f"{shown[0]} ({', '.join(shown[1:])})"


def _two_figures(value: float) -> str:
    rounded = float(f"{value:.2g}")
    return f"{rounded:,.0f}" if rounded >= 10 else f"{rounded:.1f}"


_BILLS = (("kWh", "kWh"), ("US_therm", "therms"), ("GJ", "GJ"))
