"""Heat through a wall, from its own parts."""

from __future__ import annotations

import pytest

from guide.book.questions import load_book
from guide.checks.heat import Assembly, Path, assembly_of, averaged, isothermal_planes, parallel_path
from guide.interview.jobfile import from_json
from guide.interview.written import Json
from guide.layout.parts import Kind
from guide.lengths import inches
from guide.reference.data import DataError
from guide.reference.materials import Materials, load_materials, material_table, metres, us_r
from guide.sheets.plan import make_plan
from guide.sheets.warmth import warmth_of
from tests.jobs import Tree, job, layout_of, level, new_door, standing, wall, window

OPEN: Tree = {"left": "open end", "right": "open end"}
WALLS: dict[str, tuple[Tree, dict[str, str]]] = {
    "plain": (wall("20 ft"), {}),
    "batts": (wall("20 ft"), {"batts": "yes"}),
    "blocks through the foam": (wall("31 ft"), {"batts": "yes", "block_reach": "concrete"}),
    "openings": (wall("20 ft", openings=[window("60 in"), new_door("140 in")]), {"batts": "yes"}),
    "a door to the plate": (wall("20 ft", openings=[new_door("60 in", height="87 in")]), {}),
    "cap under the joists": (wall("20 ft", **level("92 in", "85 in")), {"batts": "yes"}),
    "a pipe": (wall("20 ft", pipes=[standing("80 in")]), {"foam": "polyiso", "drywall": "5/8"}),
}


def assembly(name: str) -> Assembly:
    """Return the assembly of one of the walls."""
    tree, basement = WALLS[name]
    layout = layout_of(job([tree], **basement))
    return assembly_of(layout.walls[0], layout.survey.basement)


@pytest.mark.parametrize("name", WALLS)
def test_the_paths_make_up_the_whole_wall_and_the_two_methods_bound_it(name: str) -> None:
    """Shares add up to 1, wood is a fraction, and parallel paths are never below isothermal planes."""
    found = assembly(name)

    assert sum(path.share for path in found.paths) == pytest.approx(1)
    assert all(path.share > 0 for path in found.paths)
    assert 0.1 < found.wood < 0.4
    assert found.planes <= found.parallel
    assert found.parallel <= max(sum(path.layers) for path in found.paths)


def test_the_framing_fraction_is_wood_in_the_elevation_over_the_wall() -> None:
    """Worked by hand: 8 ft between open ends under joists at 92, seven studs of 88 7/8, two plates, a fireblock at each end.

    Blocks of 3/4 stand from the plate, 1 5/8, to the top of the concrete, 90 1/2. 7 x 1.5 x 88.875 + 2 x 1.5 x 96 +
    2 x 0.75 x 88.875 = 1354.5 of 96 x 92 = 8832.
    """
    layout = layout_of(job([wall("96 in", **OPEN)]))
    (only,) = layout.walls

    assert (len(only.of(Kind.STUD)), len(only.of(Kind.FIREBLOCK))) == (7, 2)
    assert assembly_of(only, layout.survey.basement).wood == pytest.approx(1354.5 / 8832, abs=1e-4)


def test_an_opening_is_no_part_of_the_wall() -> None:
    """A window takes its framed hole out of the wall's area, so the same wood is a larger share of what is left.

    A hole of 40 by 30 less its lining, in 12 ft under joists at 92: less to divide by, and more wood about the hole.
    """
    hole: list[Json] = [window("50 in", "40 in", "30 in")]
    plain, holed = layout_of(job([wall("144 in", **OPEN)])), layout_of(job([wall("144 in", **OPEN, openings=hole)]))
    without, with_it = (assembly_of(each.walls[0], each.survey.basement) for each in (plain, holed))

    assert with_it.wood > without.wood + 0.03


def test_a_wall_taped_in_millimetres_holds_back_the_same() -> None:
    """The same wall in US and in SI sizes agrees to the rounding of the tape: a sixteenth in 12 ft is far below 1 %."""
    us = layout_of(job([wall("144 in", **OPEN)], batts="yes"))
    si_wall = wall(
        "3658 mm", **OPEN, height=["2337 mm at left", "2337 mm at right"],
        concrete=["2299 mm at left", "2299 mm at right"], string="32 mm", first_joist="387 mm", shelf="64 mm",
    )  # fmt: skip
    si = layout_of(job([si_wall], batts="yes", tape="millimetres", foam_thickness="51 mm", floor_finish="13 mm"))
    one, other = (assembly_of(each.walls[0], each.survey.basement) for each in (us, si))

    assert other.parallel == pytest.approx(one.parallel, rel=0.005)
    assert other.wood == pytest.approx(one.wood, rel=0.01)


def test_more_foam_holds_back_more_by_what_the_foam_is_worth_in_the_bay() -> None:
    """Through the bay an inch of extruded foam is R-5, whatever else stands there (ASTM C578: from memory, high)."""
    layout = layout_of(job([wall("144 in", **OPEN)], batts="yes"))
    two = assembly_of(layout.walls[0], layout.survey.basement)
    three = assembly_of(layout.walls[0], layout.survey.basement, inches("3"))

    assert us_r(sum(three.bay.layers) - sum(two.bay.layers)) == pytest.approx(5)
    assert three.parallel > two.parallel


def test_wood_that_goes_through_the_foam_costs_heat() -> None:
    """Fireblocks that reach the concrete leave no foam on their path: the wall holds back less."""
    held = [
        assembly_of(layout.walls[0], layout.survey.basement).parallel
        for layout in (layout_of(job([wall("31 ft")], block_reach=reach)) for reach in ("foam", "concrete"))
    ]

    assert held[1] < held[0]


def test_areas_side_by_side_and_layers_one_after_the_other() -> None:
    """Half the area at 1 and half at 3 hold back 1.5 together: 1 / (0.5 / 1 + 0.5 / 3)."""
    assert averaged([(0.5, 1.0), (0.5, 3.0)]) == pytest.approx(1.5)
    paths = (Path(0.5, (1.0, 1.0)), Path(0.5, (1.0, 3.0)))
    assert parallel_path(paths) == pytest.approx(1 / (0.5 / 2 + 0.5 / 4))
    assert isothermal_planes(paths) == pytest.approx(2.5)


def test_us_resistances_and_inches_become_si_once() -> None:
    """1 m²K/W is R 5.678 (ASHRAE and the SI brochure: from memory, high confidence); an inch is 25.4 mm by definition."""
    assert us_r(1) == pytest.approx(5.678263, abs=1e-5)
    assert metres(1) == pytest.approx(0.0254)


def test_every_material_says_what_it_is_and_where_it_comes_from(monkeypatch: pytest.MonkeyPatch) -> None:
    """No value without its source; one that the code does not know is an error that names it."""
    table = material_table()
    assert all(each.what.strip() and each.source.strip() and each.si > 0 for each in table.values())
    more = {**table, "straw": table["batt"]}
    monkeypatch.setattr("guide.reference.materials.material_table", lambda: more)
    load_materials.cache_clear()
    with pytest.raises(DataError, match="straw"):
        load_materials()
    monkeypatch.undo()
    load_materials.cache_clear()
    assert isinstance(load_materials(), Materials)


def test_the_page_says_about_when_nobody_measured_the_foam() -> None:
    """R and U rest on the foam's thickness: guessed, they are printed as “about”; measured, they are not."""
    book = load_book()
    thicknesses: tuple[Json, ...] = ("2 in", {"value": "2 in", "known": "eyeballed"})
    plans = [make_plan(book, from_json(job([wall("144 in")], foam_thickness=each), book)) for each in thicknesses]
    sure, guessed = (warmth_of(plan, plan.layout.walls[0]) for plan in plans)

    assert sure.rows[1][:2] == ("extruded foam", "10.0")
    assert guessed.rows[1][:2] == ("extruded foam", "about 10.0")
    assert not sure.us_u.startswith("about")
    assert guessed.us_u.startswith("about")
