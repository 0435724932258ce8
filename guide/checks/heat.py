"""How much heat a wall holds back, reckoned from its own parts.

The invariant: the shares of the paths through a wall add up to the whole of it, and the figure by parallel paths is
never below the one by isothermal planes; the truth lies between the two. Everything is in SI, as floats: m²K/W.

    concrete | foam | wood or bay | drywall, still air          one path through a stud, one through the bay beside it
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from guide.layout.parts import Kind, Part, WallLayout
from guide.lengths import ZERO, Length, inches
from guide.reference.figures import load_figures
from guide.reference.materials import Materials, load_materials, metres
from guide.survey.model import Basement
from guide.survey.profile import Profile

Share = tuple[float, float]
"""A share of an area, 0 to 1, and the resistance met there."""

WOOD = (
    Kind.BOTTOM_PLATE, Kind.TOP_PLATE, Kind.STUD, Kind.PACK, Kind.KING, Kind.TRIMMER, Kind.HEADER, Kind.SILL,
    Kind.CRIPPLE, Kind.CAP, Kind.FIREBLOCK, Kind.UPPER_BLOCK,
)  # fmt: skip
"""The wood that heat meets between concrete and room; where a cap lies on the concrete, it is over the wall."""


def averaged(shares: Iterable[Share]) -> float:
    """Return the resistance of areas side by side: 1 / (sum of share / resistance). No resistance may be 0."""
    return 1 / sum(share / resistance for share, resistance in shares)


@dataclass(frozen=True, slots=True)
class Path:
    """One way through a wall: its share of the area, and the resistance of each layer from outside to the room."""

    share: float
    layers: tuple[float, ...]


def parallel_path(paths: Sequence[Path]) -> float:
    """Return the resistance when heat keeps to its own path all the way: an upper bound, right for wood framing."""
    return averaged((path.share, sum(path.layers)) for path in paths)


def isothermal_planes(paths: Sequence[Path]) -> float:
    """Return the resistance when heat spreads along every layer before it enters the next: a lower bound."""
    layers = range(len(paths[0].layers))
    return sum(averaged((path.share, path.layers[n]) for path in paths) for n in layers if paths[0].layers[n])


@dataclass(frozen=True, slots=True)
class Assembly:
    """A wall as heat meets it, from the soil or the outdoor air to the air of the room."""

    paths: tuple[Path, ...]
    """The bay between the studs first."""
    wood: float
    """The framing fraction: wood in the elevation over the area of the wall, openings left out; 0 to 1."""

    @property
    def bay(self) -> Path:
        """The path through the bay, where the foam's room face is coldest."""
        return self.paths[0]

    @property
    def parallel(self) -> float:
        """The resistance by parallel paths."""
        return parallel_path(self.paths)

    @property
    def planes(self) -> float:
        """The resistance by isothermal planes."""
        return isothermal_planes(self.paths)


def assembly_of(wall: WallLayout, basement: Basement, foam: Length | None = None) -> Assembly:
    """Return a wall's assembly below grade: 8 in of concrete, foam, framing, drywall, still air.

    `foam` is a thickness to reckon with in place of the one answered. Layers: concrete, foam, bay, drywall, film.
    """
    materials = load_materials()
    thick = basement.foam_thickness if foam is None else foam
    pieces = tuple(_pieces(wall))
    whole = _wall_area(wall)
    shares = [(area / whole, part) for area, part in pieces]
    wood = sum(share for share, _ in shares)
    paths = [_path(1 - wood, None, wall, basement, thick, materials)]
    paths += [_path(share, part, wall, basement, thick, materials) for share, part in shares]
    return Assembly(tuple(paths), wood)


def _path(
    share: float, part: Part | None, wall: WallLayout, basement: Basement, foam: Length, materials: Materials
) -> Path:
    """Return the path through one piece of wood, or through the bay where there is none."""
    deep = wall.offsets.deep
    foamed = _metres(foam) * materials.foam(basement.foam)
    pressed = deep.ticks / load_figures().stud_deep.ticks  # a batt is as thick as the bay that holds it
    filled = materials.batt * pressed if basement.batts == "yes" else materials.empty_bay
    if part is not None:
        low, high = max(part.box.y0, wall.offsets.back), min(part.box.y1, wall.offsets.face)
        rest = (deep - (high - low)).ticks / deep.ticks
        filled = _metres(high - low) * materials.wood + (rest and filled * (rest if basement.batts == "yes" else 1))
        if part.box.y0 < wall.offsets.foam_face:
            foamed = _metres(foam) * materials.wood
    cover = _metres(inches(basement.drywall)) * materials.gypsum
    return Path(share, (materials.concrete, foamed, filled, cover, materials.inside_film))


def _pieces(wall: WallLayout) -> Iterator[tuple[float, Part]]:
    """Yield the area of every piece of wood as the elevation shows it, in square inches."""
    for part in wall.of(*WOOD):
        if part.kind is Kind.CAP and wall.cap_case == 1:
            continue
        x0, x1 = max(part.box.x0, wall.plate_start), min(part.box.x1, wall.plate_end)
        if x0 < x1:
            tall = part.box.z1.at(wall.wall, part.centre) - part.box.z0.at(wall.wall, part.centre)
            yield _area(x1 - x0, tall), part


def _wall_area(wall: WallLayout) -> float:
    """Return the area between slab and joists over the length of the plates, openings left out, in square inches."""
    whole = area_under(wall.wall.height, wall.plate_start, wall.plate_end)
    return whole - sum(_hole(wall, (opening.left + opening.right) // 2) for opening in wall.wall.openings)


def area_under(heights: Profile, start: Length, end: Length) -> float:
    """Return the area between the slab and a line of heights, in square inches."""
    places = [start, *heights.breaks(start, end), end]
    return sum(_area(x1 - x0, (heights.at(x0) + heights.at(x1)) // 2) for x0, x1 in pairwise(places))


def _hole(wall: WallLayout, middle: Length) -> float:
    """Return the area of a framed hole: between its uprights, from its sill or the floor to its header."""
    uprights = wall.of(Kind.STUD, Kind.KING, Kind.TRIMMER)
    x0 = max((p.box.x1 for p in uprights if p.box.x1 <= middle), default=wall.plate_start)
    x1 = min((p.box.x0 for p in uprights if p.box.x0 >= middle), default=wall.plate_end)
    over = [p.box.z0.at(wall.wall, middle) for p in _at(wall, middle, Kind.HEADER, Kind.TOP_PLATE)]
    under = [p.box.z1.at(wall.wall, middle) for p in _at(wall, middle, Kind.SILL, Kind.BOTTOM_PLATE)]
    return _area(x1 - x0, min(over, default=wall.wall.height.at(middle)) - max(under, default=ZERO))


def _at(wall: WallLayout, x: Length, *kinds: Kind) -> list[Part]:
    return [part for part in wall.of(*kinds) if part.box.x0 <= x <= part.box.x1]


def _area(wide: Length, tall: Length) -> float:
    return float(wide.inch * tall.inch)


def _metres(length: Length) -> float:
    return metres(float(length.inch))
