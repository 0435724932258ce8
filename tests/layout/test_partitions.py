"""A partition that meets the wall, worked by hand: plates start at 2 3/8, the studs' layout at 5 7/8, so centres at 21 7/8 + 16 k."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from guide.layout.parts import Kind
from guide.layout.receptacles import wall_spaces
from guide.lengths import inches
from guide.reference.codes import load_code
from tests.jobs import Tree, job, laid, layout_of, new_door, outlet, partition, wall
from tests.layout.sizes import decided, marks, said, size, spans
from tests.properties import drywall_law, foam_law, laws
from tests.properties.rooms import basements, sizes, tape, walls


def test_a_stud_stands_under_each_face_and_the_drywall_stops_on_half_of_it() -> None:
    """Faces at 80 and 83 1/2: studs from 79 1/4 and 82 3/4, less 2 3/8 on the plate. Sheets end at 80, start at 83 1/2."""
    met = laid(wall("196 in", openings=[partition("80 in")]))

    assert {"76 7/8", "80 3/8"} <= set(marks(met, Kind.STUD))
    assert decided(met, "opening1.posts") == "partition"
    edges = spans(met.of(Kind.DRYWALL))
    assert {"80"} <= {end for _, end in edges}
    assert {"83 1/2"} <= {start for start, _ in edges}
    assert not [each for each in met.of(Kind.DRYWALL) if each.box.x0 < inches("83 1/2") and inches("80") < each.box.x1]
    assert said(met) == []


def test_foam_plates_and_cap_run_on_behind_a_partition() -> None:
    plain, met = laid(wall("196 in")), laid(wall("196 in", openings=[partition("80 in")]))

    for kind in (Kind.FOAM, Kind.BOTTOM_PLATE, Kind.TOP_PLATE, Kind.CAP):
        assert spans(met.of(kind)) == spans(plain.of(kind))


def test_a_stud_of_the_wall_that_bears_both_takes_the_place_of_one_of_its_own() -> None:
    """A door from 60: the hole starts at 59, trimmer and king at 57 1/2 and 56. A left face at 56 3/4 is on the king's middle."""
    met = laid(wall("196 in", openings=[partition("53 1/4 in"), new_door("60 in")]))

    assert [size(part.box.x0) for part in met.of(Kind.KING)][:1] == ["56"]
    assert "52 1/2" in [size(part.box.x0) for part in met.of(Kind.STUD)]
    assert "56" not in [size(part.box.x0) for part in met.of(Kind.STUD)]
    assert said(met) == []


def test_where_a_door_takes_the_room_it_is_said_and_no_stud_stands_in_its_way() -> None:
    """The right face at 57 1/2 would have its stud from 56 3/4 to 58 1/4, in king and trimmer."""
    met = laid(wall("196 in", openings=[partition("54 in"), new_door("60 in")]))

    assert "partition_post" in said(met)


def test_a_partition_in_an_opening_contradicts_it() -> None:
    problems = layout_of(job([wall("196 in", openings=[new_door("60 in"), partition("70 in")])])).survey.problems

    assert [each.saying.key for each in problems] == ["problem.overlap"]


def test_a_partition_ends_a_wall_space_and_no_outlet_is_put_behind_it() -> None:
    """Every point of a wall space has an outlet within 6 ft along the floor: a partition parts the floor line. NEC 210.52."""
    tree = wall("196 in", openings=[partition("80 in")], boxes=[outlet("81 in")])
    layout = layout_of(job([tree]))

    assert len(wall_spaces(layout, load_code())) == 2
    boxes = layout.walls[0].of(Kind.OUTLET)
    assert boxes
    assert not [part for part in boxes if part.box.x0 < inches("83 1/2") and inches("80") < part.box.x1]


@st.composite
def parted(draw: st.DrawFn) -> Tree:
    """Draw a wall without things on it that one or two partitions meet anywhere."""
    tree: Tree = draw(walls(plain=True))
    length = draw(sizes(100, 300))
    first = draw(st.integers(0, length // 2 - 160))
    second = draw(st.integers(length // 2, length - 160))
    tree |= {
        "length": [f"{tape(length)} at floor"],
        "openings": [partition(tape(first)), partition(tape(second), "5 1/2 in")],
    }
    heights: Tree = {
        "height": ["92 in at left", "92 in at right"],
        "concrete": ["90 1/2 in at left", "90 1/2 in at right"],
    }
    return job([{**tree, **heights}], **draw(basements()))


@settings(max_examples=12)
@given(tree=parted())
def test_a_wall_that_partitions_meet_keeps_the_laws_of_one_alone(tree: Tree) -> None:
    layout = layout_of(tree)
    each = (
        laws.clashes, laws.strays, laws.hanging, laws.untiled, laws.open_ways, laws.miscounted, foam_law.bare_concrete,
        drywall_law.bare_framing, drywall_law.loose_sheets,
    )  # fmt: skip
    assert not [said for law in each for w in layout.walls for said in law(w, layout.survey.basement)]
