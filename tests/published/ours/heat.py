"""What wallbrief comes to about heat: layers and whole walls out of the layout, the two methods on printed inputs."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache

from guide.checks.heat import Assembly, Path, assembly_of, isothermal_planes, parallel_path
from guide.interview.written import Json
from guide.reference.materials import us_r
from tests.jobs import Tree, job, layout_of, new_door, wall, window

LAYERS = ("concrete", "foam", "bay", "drywall", "film")
SI_TO_US = us_r(1.0)


@lru_cache(maxsize=64)
def assembly(foam: str = "extruded", thick: str = "2 in", batts: str = "no", drywall: str = "1/2") -> Assembly:
    """Return the assembly of a plain wall of 16 ft, as laid out."""
    return _assembly(wall("16 ft"), foam=foam, foam_thickness=thick, batts=batts, drywall=drywall)


def _assembly(tree: Tree, **basement: str) -> Assembly:
    layout = layout_of(job([tree], **basement))
    return assembly_of(layout.walls[0], layout.survey.basement)


def layer(name: str, **basement: str) -> float:
    """Return the R of one layer of a plain wall, between two studs."""
    return us_r(assembly(**basement).bay.layers[LAYERS.index(name)])


def layer_rsi(name: str, **basement: str) -> float:
    """Return the same in m²K/W."""
    return assembly(**basement).bay.layers[LAYERS.index(name)]


def stud() -> float:
    """Return the R of a stud, from the path through one."""
    return us_r(max(path.layers[2] for path in assembly().paths))


def wall_r(**basement: str) -> float:
    """Return the R of a plain wall by parallel paths."""
    return us_r(assembly(**basement).parallel)


def gain(thick: str) -> float:
    """Return what foam so thick adds to a plain wall with batts, by parallel paths."""
    with_foam = assembly(thick=thick, batts="yes")
    without = tuple(Path(p.share, (p.layers[0], *p.layers[2:])) for p in with_foam.paths)
    return us_r(with_foam.parallel) - us_r(parallel_path(without))


def deeper_stud_wall(thick: str, deep: float, batt: float) -> float:
    """Return the R of the plain wall with studs so many inches deep and batts of that R between them."""
    plain = assembly(thick=thick, batts="yes")
    shares = [(1 - plain.wood, batt / SI_TO_US), (plain.wood, plain_stud() * deep / 3.5)]
    c, f, _, d, s = plain.bay.layers
    return us_r(parallel_path([Path(share, (c, f, held, d, s)) for share, held in shares]))


def plain_stud() -> float:
    """Return the resistance of a stud of 3 1/2 in, m²K/W."""
    return stud() / SI_TO_US


def c_factor(thick: str, block: float) -> float:
    """Return the C-factor of foam so thick on a wall of that R, no air films: 1 / (block + foam)."""
    return 1 / (block + us_r(assembly(thick=thick).bay.layers[1]))


def paths_r(paths: list[list[float]]) -> float:
    """Return the resistance by parallel paths of printed paths: a share in percent, then the layers."""
    return parallel_path(_paths(paths))


def paths_u(paths: list[list[float]]) -> float:
    """Return the same as a transmittance."""
    return 1 / paths_r(paths)


def planes_r(paths: list[list[float]]) -> float:
    """Return the resistance by isothermal planes of printed paths."""
    return isothermal_planes(_paths(paths))


def planes_u(paths: list[list[float]]) -> float:
    """Return the same as a transmittance."""
    return 1 / planes_r(paths)


def mean_u(paths: list[list[float]]) -> float:
    """Return the transmittance by the mean of both methods, as ISO 6946 combines them."""
    return 2 / (paths_r(paths) + planes_r(paths))


def _paths(paths: list[list[float]]) -> tuple[Path, ...]:
    return tuple(Path(share / 100, tuple(layers)) for share, *layers in paths)


def wood_share(openings: str) -> float:
    """Return the framing fraction in percent of a wall of 20 ft: `none`, or `window and door` in it."""
    things: list[Json] = [window("60 in"), new_door("140 in")] if openings == "window and door" else []
    return _assembly(wall("20 ft", openings=things)).wood * 100


OURS: dict[str, Callable[..., float | str]] = {
    each.__name__: each
    for each in (
        layer, layer_rsi, stud, wall_r, gain, deeper_stud_wall, c_factor, paths_r, paths_u, planes_r, planes_u, mean_u,
        wood_share,
    )
}  # fmt: skip
