"""Every mistake that first-timers make, with the finding that catches it: none is left without one, and each has its pair.

The list is the trade's own, numbered as it is told: 1 to 14 are what inspectors and water find, 15 to 40 what first-timers
tell each other afterwards. What a finding cannot say, because the engine never lets it come to that, is caught by the order
of work; those are looked at here.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from guide.order.plan import order_of_work
from guide.reference.findings import Severity, load_findings
from tests.checks import test_audit, test_house, test_pairs
from tests.jobs import job, layout_of, wall

STOP, HOLD, WARN, NOTE = Severity
LEAST = {
    **dict.fromkeys((1, 2, 3, 4, 9, 10), STOP),
    **dict.fromkeys((5, 6, 7, 8, 11, 12, 13, 14, 19, 37, 38), HOLD),
    **dict.fromkeys((30, 32), NOTE),
}
"""How bad each is at least in its worst case; every other is a WARN."""

MISTAKES: dict[int, tuple[str, tuple[str, ...]]] = {
    1: ("covers a wet wall", ("water_wet", "water_rains", "water_unknown")),
    2: ("crack that runs sideways, or a bow", ("cracks", "cracks_unknown", "bow")),
    3: ("disturbs what an old house hides", ("suspects", "suspects_unknown")),
    4: ("pins into a tube, a tendon or a drain", ("slab_pins", "slab_drill")),
    5: ("no cap, or its joints without backing", ("cap_open", "cap_unbacked")),
    6: ("upright fireblocks too far apart", ("fireblock_far", "fireblock_end")),
    7: ("cap does not reach, or misses the plate", ("cap_short", "cap_misses")),
    8: ("hole over a knee wall", ("knee_wall",)),
    9: ("sleeping room without a way out", ("sleeping", "sleeping_ask")),
    10: ("headroom", ("headroom", "headroom_floor", "headroom_beam", "headroom_beam_floor")),
    11: ("space before a panel", ("panel_narrow", "panel_shallow", "panel_pipe")),
    12: ("buried cleanout, valve or junction", ("reach",)),
    13: ("air for a burner", ("air_short", "air_unknown")),
    14: ("foam left bare", ("foam_bare", "rim_foam_thick")),
    15: ("untreated plate on concrete", ("untreated",)),
    16: ("wrong nails in treated wood", ("bright_nails",)),
    17: ("fastener too near an edge", ("slab_edge",)),
    18: ("length of the pins", ("pin_too_deep", "pin_slab_unknown")),
    19: ("end of a plate without fastener", ("plate_end_loose",)),
    20: ("studs all one length", ("studs_alike",)),
    21: ("foam will not go behind the plate", ("foam_stuck",)),
    22: ("hump ignored", ("hump_ignored",)),
    23: ("framing follows a bowed wall", ("plate_bent",)),
    24: ("out of square", ("out_of_square",)),
    25: ("room does not close", ("closing",)),
    26: ("drywall edges without wood", ("edge_missed",)),
    27: ("first stud marked wrong", ("stud_off",)),
    28: ("no backing in a corner", ("corner_bare", "pack_dropped")),
    30: ("joints of the plates over each other", ("top_joint",)),
    31: ("no blocks between joists alongside", ("blocks_apart", "blocks_short")),
    32: ("sliver of foam, impossible bay", ("foam_sliver", "bay_pack", "bay_stuff")),
    33: ("pipe meets a stud", ("pipe_in_stud",)),
    34: ("notch too deep", ("notch_deep",)),
    35: ("cold water behind foam", ("cold_water",)),
    36: ("outlets", ("outlet_reach", "box_no_room", "behind_leaf")),
    37: ("old outlet buried", ("old_box_buried",)),
    38: ("door off the plane of the wall", ("door_pull_in", "door_proud", "door_twisted")),
    39: ("forgot what will hang", ("backing_missing",)),
}
ELSEWHERE = {
    29: "corner_roles",  # tests/checks/test_audit.py: two walls never take the same part at a corner
    40: "the order of work",
}
"""Caught, and shown, by a case that takes two walls, or the whole order."""

SHOWN = {*test_pairs.PAIRS, *test_audit.CASES, *test_house.PAIRS}
"""Findings with a case that fires and its nearest neighbour that does not."""


SHOWN_APART = {
    "box_set_back": "tests/checks/test_electrical.py",
    "corner_roles": "tests/checks/test_audit.py",
    "joints_stacked": "tests/checks/test_audit.py",
    "thermal_barrier": "tests/checks/test_codes.py",
}
"""Findings whose two cases take more than two jobs, and where they stand."""


def test_every_finding_there_is_has_a_case_that_fires_and_one_that_does_not() -> None:
    """Not only those of the forty: all of them, each shown once."""
    assert set(load_findings()) == SHOWN | set(SHOWN_APART)
    assert not SHOWN & set(SHOWN_APART)
    for key, path in SHOWN_APART.items():
        text = (Path(__file__).parents[2] / path).read_text(encoding="utf-8")
        assert text.count(key) >= 2, key


def test_all_forty_are_there() -> None:
    """One to forty, each once."""
    assert sorted([*MISTAKES, *ELSEWHERE]) == list(range(1, 41))


@pytest.mark.parametrize("number", MISTAKES)
def test_each_mistake_has_findings_and_each_finding_its_pair(number: int) -> None:
    """A finding without a case that fires is a claim."""
    _, keys = MISTAKES[number]

    assert set(keys) <= set(load_findings())
    assert set(keys) <= SHOWN


@pytest.mark.parametrize("number", MISTAKES)
def test_each_is_as_bad_as_it_is_told(number: int) -> None:
    """STOP where nothing may be cut, HOLD where a step waits, else a WARN; a NOTE where the page itself says the remedy."""
    order = list(Severity)
    worst = min((load_findings()[key].severity for key in MISTAKES[number][1]), key=order.index)

    assert order.index(worst) <= order.index(LEAST.get(number, WARN))


ORDER = [
    ("rim_bays", "foam@A"), ("foam@A", "studs@A"), ("framing_inspection", "batts@A"), ("batts@A", "photo_record"),
    ("photo_record", "drywall_ready"),
]  # fmt: skip


@pytest.mark.parametrize(("first", "then"), ORDER)
def test_mistake_forty_cannot_happen(first: str, then: str) -> None:
    """Rim, then foam, then studs; batts only after the framing inspection; photographs before the drywall."""
    ids = [step.id for step in order_of_work(layout_of(job([wall("196 in")], batts="yes")))]
    at = {
        wanted: [n for n, each in enumerate(ids) if each.partition("@")[0] == wanted.partition("@")[0]]
        for wanted in (first, then)
    }

    assert at[first]
    assert at[then]
    assert max(at[first]) < min(at[then])
