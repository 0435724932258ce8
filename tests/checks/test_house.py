"""What is settled about the house before the first cut: each answer that stops, holds or warns, and the nearest that does not."""

from __future__ import annotations

import pytest

from guide.checks.check import check, stopped
from guide.checks.findings import Finding
from guide.interview.written import Json
from guide.layout.parts import Kind
from guide.lengths import inches
from guide.reference.codes import load_code
from guide.reference.findings import Severity
from guide.reference.steps import load_steps
from tests.jobs import Tree, job, laid, layout_of, wall

STOP, HOLD, WARN, NOTE = Severity

OPEN: Tree = {"flames": "open", "burner_input": 100}
"""A furnace of 100,000 Btu/h that takes its air from the room: 5000 cu ft by the fuel gas code's 50 for each 1000."""

PAIRS: dict[str, tuple[Severity, Tree, Tree]] = {
    "suspects": (STOP, {"suspects": "untested"}, {"suspects": "tested"}),
    "suspects_unknown": (HOLD, {"suspects": None}, {"suspects": "none"}),
    "soil": (STOP, {"soil": "heaves"}, {"soil": "no"}),
    "soil_unknown": (HOLD, {"soil": None}, {"soil": "no"}),
    "cracks_judged": (WARN, {"cracks": "judged"}, {"cracks": "none"}),
    "permit_waits": (HOLD, {"permit": "asked for"}, {"permit": "in hand"}),
    "permit_none": (WARN, {"permit": "nobody asks"}, {"permit": "not needed"}),
    "office_words": (NOTE, {"office_words": "blocks to the foam"}, {"office_words": "none"}),
    "radon_high": (HOLD, {"radon": "high"}, {"radon": "mended"}),
    "radon_untested": (WARN, {"radon": "untested"}, {"radon": "low"}),
    "flames_open": (HOLD, {**OPEN, "burner_room": 5000}, {"flames": "settled"}),
    "air_unknown": (HOLD, OPEN, {**OPEN, "burner_room": 5000}),
    "air_short": (HOLD, {**OPEN, "burner_room": 4999}, {**OPEN, "burner_room": 5000}),
    "rim_unsound": (HOLD, {"rim": "unsound"}, {"rim": "wool"}),
    "rim_unknown": (HOLD, {"rim": None}, {"rim": "bare"}),
    # IRC 2018 R316.5.11: 3 1/4 in at most may stay bare in the joist bays
    "rim_foam_thick": (WARN, {"foam_thickness": "3 5/16 in"}, {"foam_thickness": "3 1/4 in"}),
    # IRC R316.3 (from memory, high confidence): 75 and 450; R316.5.11 (seen): 25 where it stays bare
    "foam_label": (HOLD, {"foam_label": "more"}, {"foam_label": "75 450"}),
    "rim_foam_label": (WARN, {"foam_label": "75 450"}, {"foam_label": "25 450"}),
    # IRC 2018 R316.5.11 (seen): 0.5 to 2.0 lb/cu ft
    "rim_foam_heavy": (WARN, {"foam_weight": "heavy"}, {"foam_weight": "light"}),
    # IRC R302.11.1 (the list seen in the matching IBC text): panels from 23/32 in, wool from 16 in of height
    "block_material": (HOLD, {"block_material": "thinner panel"}, {"block_material": "23/32 panel"}),
    # a floor of 1/2 leaves 7/16 and 3/8 of them; IRC R311.7.5.1 (from memory, high confidence): 3/8
    "riser": (WARN, {"riser": "15/16 in"}, {"riser": "7/8 in"}),
    "sheets_stuck": (WARN, {"shopping": "own", "way_in": "half"}, {"shopping": "own", "way_in": "whole"}),
    "inspection_unknown": (NOTE, {"evenings": "own"}, {"evenings": "own", "inspection_days": 3}),
    "insects_tubes": (STOP, {"insects": "tubes"}, {"insects": "no"}),
    "insects_unknown": (HOLD, {"insects": None}, {"insects": "no"}),
    "insects_strip": (NOTE, {"insects": "strip", "strip": "3 in"}, {"insects": "no"}),
}


def findings(answers: Tree) -> dict[str, Finding]:
    """Return what is found in a plain job with these answers about the basement; None leaves one unanswered."""
    tree = job([wall("196 in")], **answers)
    tree["basement"] = {key: value for key, value in _object(tree["basement"]).items() if value is not None}
    return {finding.key: finding for finding in check(layout_of(tree), load_code())}


def _object(value: Json) -> Tree:
    assert isinstance(value, dict)
    return value


@pytest.mark.parametrize("key", PAIRS)
def test_it_fires_as_it_should_and_its_nearest_neighbour_does_not(key: str) -> None:
    """The finding is there with its severity in the first job, and not in the second."""
    severity, fires, quiet = PAIRS[key]
    found = findings(fires)

    assert found[key].severity is severity
    assert key not in findings(quiet)
    assert stopped(tuple(found.values())) == (severity is STOP)


@pytest.mark.parametrize("key", [key for key in PAIRS if PAIRS[key][0] is HOLD])
def test_a_hold_locks_a_step_that_is_there(key: str) -> None:
    """Each HOLD names a step of the order of work."""
    assert load_steps().named(findings(PAIRS[key][1])[key].text.holds)


def test_what_was_wet_and_what_was_mended_is_read_out_with_the_stop() -> None:
    """The place is named, so that somebody looks at it again."""
    said = findings({"water": "wet", "wet_place": "foot of the north wall"})["water_wet"]

    assert "foot of the north wall" in said.sentence("inches", lambda length: False)


def test_air_for_a_burner_is_reckoned_as_the_fuel_gas_code_does() -> None:
    """100,000 Btu/h in a room 20 by 20 by 8 ft: 3200 cu ft against 5000 (IFGC 304.5: 50 cu ft for each 1000 Btu/h)."""
    said = findings({**OPEN, "burner_room": 20 * 20 * 8})["air_short"].sentence("inches", lambda length: False)

    assert "3200" in said
    assert "5000" in said


def test_a_bare_strip_for_the_pest_firm_shortens_the_foam_by_just_that() -> None:
    """Concrete 90 1/2 high: foam from 1/2 over the slab, 90 tall, or 87 under a strip of 3 in."""
    plain = laid(wall("196 in"))
    strip = laid(wall("196 in"), insects="strip", strip="3 in")

    assert {part.cut for part in plain.of(Kind.FOAM)} == {inches("90")}
    assert {part.cut for part in strip.of(Kind.FOAM)} == {inches("87")}
    assert all("basement.strip" in part.size_rests for part in strip.of(Kind.FOAM))


@pytest.mark.parametrize(("material", "us", "canada"), [
    ("23/32 panel", True, True), ("12.5 mm panel", False, True), ("thinner panel", False, False), ("single board", False, False),
    ("foam", False, False), ("glass wool 16", True, False), ("glass wool", False, False),
])  # fmt: skip
def test_each_country_has_its_own_list_of_what_counts_as_a_fireblock(material: str, us: bool, canada: bool) -> None:
    """IRC R302.11.1 and .1.2 (the list seen in the matching IBC text, 16 in in a forum); NBC 2020 9.10.16.3 (seen)."""
    layout = layout_of(job([wall("196 in")], block_material=material))
    for code, fine in (("us 2021", us), ("canada 2020", canada)):
        assert ("block_material" not in {each.key for each in check(layout, load_code(code))}) == fine, code
