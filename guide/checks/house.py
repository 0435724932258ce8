"""What is settled about the house before the first cut: papers, air, poison, wood, insects, labels and the stair.

None of it moves a line of the layout. It says what stops or holds the work, who does the next thing, and what prints.
"""

from __future__ import annotations

from collections.abc import Iterator

from guide.checks.findings import Finding, finding
from guide.reference.codes import CodeProfile
from guide.survey.model import Basement

NO_WORDS = ("none", "no", "nothing", "")


def house_findings(basement: Basement, code: CodeProfile) -> Iterator[Finding]:
    """Yield what the answers about the house stop, hold or warn of."""
    if basement.suspects in (None, "untested"):
        yield finding("suspects" if basement.suspects else "suspects_unknown")
    if basement.soil in (None, "heaves"):
        yield finding("soil" if basement.soil else "soil_unknown")
    yield from _papers(basement)
    if basement.radon == "high":
        yield finding("radon_high", level=f"{code.radon.value} {code.radon.unit}")
    elif basement.radon == "untested":
        yield finding("radon_untested")
    yield from _flames(basement, code)
    yield from _above(basement, code)
    yield from _labels(basement, code)
    yield from _stair(basement, code)


def _papers(basement: Basement) -> Iterator[Finding]:
    if basement.permit in ("asked for", "not asked"):
        yield finding("permit_waits")
    elif basement.permit == "nobody asks":
        yield finding("permit_none")
    if basement.office_words and basement.office_words.strip().lower() not in NO_WORDS:
        yield finding("office_words", words=basement.office_words.rstrip("."))


def _flames(basement: Basement, code: CodeProfile) -> Iterator[Finding]:
    """A flame that takes its air from the room: no can foam beside it, and room enough for it."""
    if basement.flames != "open":
        return
    yield finding("flames_open")
    if basement.burner_input is None or basement.burner_room is None:
        yield finding("air_unknown")
        return
    air = code.combustion_air
    needs = basement.burner_input * int(air.value)
    if basement.burner_room < needs:
        yield finding(
            "air_short",
            input=basement.burner_input,
            room=basement.burner_room,
            share=air.value,
            unit=air.unit,
            needs=needs,
            cited=air.cited,
        )


def _above(basement: Basement, code: CodeProfile) -> Iterator[Finding]:
    """The bays above the concrete, and whoever eats the wood there."""
    if basement.rim in (None, "unsound"):
        yield finding("rim_unsound" if basement.rim else "rim_unknown")
    most = code.rim_foam
    if basement.rim in ("bare", "wool") and basement.foam_thickness > most.length:
        yield finding("rim_foam_thick", thick=basement.foam_thickness, most=most.length, cited=most.cited)
    if basement.insects == "tubes":
        yield finding("insects_tubes")
    elif basement.insects is None:
        yield finding("insects_unknown")
    elif basement.strip is not None:
        yield finding("insects_strip", strip=basement.strip)


def _labels(basement: Basement, code: CodeProfile) -> Iterator[Finding]:
    """What stands on the foam, and what is cut for caps and fireblocks."""
    flame, smoke, rim = code.foam_flame, code.foam_smoke, code.rim_flame
    if basement.foam_label == "more":
        yield finding("foam_label", most=flame.value, most_smoke=smoke.value, cited=flame.cited)
    if basement.rim in ("bare", "wool") and basement.foam_label == "75 450":
        yield finding("rim_foam_label", most=rim.value, cited=rim.cited)
    if basement.rim in ("bare", "wool") and basement.foam_weight == "heavy":
        yield finding("rim_foam_heavy", cited=code.rim_foam.cited)
    accepted = code.fireblock_materials
    if basement.block_material not in accepted.value.split(", "):
        yield finding("block_material", cited=accepted.cited)


def _stair(basement: Basement, code: CodeProfile) -> Iterator[Finding]:
    """The floor makes the bottom riser lower; and whole sheets have to come down past it."""
    most = code.riser_change
    if basement.riser is not None and (apart := abs(basement.riser - basement.floor_finish)) > most.length:
        yield finding("riser", floor=basement.floor_finish, apart=apart, most=most.length, cited=most.cited)
    if basement.way_in == "half":
        yield finding("sheets_stuck")
