"""The gate: answers that stop or hold the job whatever the layout says."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from guide.checks.findings import Finding, finding
from guide.lengths import ZERO, Length, greatest, inches, least
from guide.reference.codes import CodeFigure, CodeProfile
from guide.reference.figures import load_figures
from guide.survey.model import Basement, Survey
from guide.survey.room import thing_name
from guide.survey.things import Opening

RAINS_NEEDED = 2
"""Hard rains a mended wall has to stand dry through. Common practice."""


def gate(survey: Survey, code: CodeProfile) -> Iterator[Finding]:
    """Yield what the answers about the basement stop or hold."""
    basement = survey.basement
    if basement.water == "wet":
        yield finding("water_wet", where=_said(basement.wet_place))
    elif basement.water == "mended" and (basement.rains or 0) < RAINS_NEEDED:
        where = _said(basement.wet_place)
        yield finding("water_rains", rains=basement.rains or 0, needed=RAINS_NEEDED, where=where)
    elif basement.water is None:
        yield finding("water_unknown")
    if basement.cracks == "some":
        yield finding("cracks")
    elif basement.cracks == "judged":
        yield finding("cracks_judged")
    elif basement.cracks is None:
        yield finding("cracks_unknown")
    yield from _humps(survey)
    yield from _slab(basement, code)
    yield from _sleeping(survey, code)
    yield from _headroom(survey, code)
    if basement.evenings == "own" and not survey.given({"basement.inspection_days"}):
        yield finding("inspection_unknown", days=basement.inspection_days or 0)


def _said(words: str | None) -> str:
    """Return free words of the person as they are printed; nothing where there are none."""
    return f" You wrote: {words}." if words and words.strip().lower() not in ("none", "no") else ""


def _humps(survey: Survey) -> Iterator[Finding]:
    for wall in survey.walls:
        hump = load_figures().string_block - wall.smallest_string
        if survey.unsure(wall.smallest_string.rests | wall.lean.rests):
            continue
        if hump > inches("1") or wall.lean > inches("1"):
            yield finding("bow", wall.letter, hump=greatest(hump, wall.lean))


def _slab(basement: Basement, code: CodeProfile) -> Iterator[Finding]:
    pins = basement.anchors == "pins"
    if basement.slab != "nothing":
        yield finding("slab_pins" if pins else "slab_drill")
    if not pins:
        return
    figures = load_figures()
    deep = inches(PIN_LENGTH) - figures.stud_thick - figures.gasket
    if basement.slab_thickness is None:
        yield finding("pin_slab_unknown")
    elif deep.inch > basement.slab_thickness.inch * Fraction(code.pin_depth_share.value):
        yield finding("pin_too_deep", deep=deep, slab=basement.slab_thickness, cited=code.pin_depth_share.cited)


PIN_LENGTH = "2 1/2"
"""The pin that the fastener data lists; what the plate and the gasket leave of it goes into the slab."""


def _sleeping(survey: Survey, code: CodeProfile) -> Iterator[Finding]:
    """Somebody sleeps here, and no window of the walls surveyed is large enough, finished, to climb out of."""
    if survey.basement.use != "sleeping":
        return
    windows = [o for wall in survey.walls for o in wall.openings if o.kind == "window"]
    yield from _wells(survey, code)
    if any(_is_way_out(survey.basement, window, code) for window in windows):
        yield finding("sleeping_ask", cited=code.egress_area.cited)
    else:
        yield finding(
            "sleeping",
            area=code.egress_area.value,
            high=code.egress_height.length,
            wide=code.egress_width.length,
            sill=code.egress_sill.length,
            cited=code.egress_area.cited,
        )


def _wells(survey: Survey, code: CodeProfile) -> Iterator[Finding]:
    """The well outside a window of a sleeping room has room to climb out, where there is one and it was measured."""
    area, side = code.well_area, code.well_side
    for wall in survey.walls:
        for window in wall.openings:
            wide, out = window.well_wide, window.well_out
            if not wide or not out or wide == ZERO:
                continue
            if least(wide, out) < side.length or wide.inch * out.inch / 144 < Fraction(area.value):
                yield finding(
                    "well_small",
                    wall.letter,
                    what=thing_name(window.place),
                    wide=wide,
                    out=out,
                    side=side.length,
                    area=area.value,
                    cited=area.cited,
                )


def _is_way_out(basement: Basement, window: Opening, code: CodeProfile) -> bool:
    figures = load_figures()
    if window.width is None or window.tall is None or window.sill is None:
        return False
    lining = (figures.window_buck + figures.window_return_foam + inches(basement.drywall)) * 2
    wide, tall = window.width - lining, window.tall - lining
    area = wide.inch * tall.inch / 144
    needs = code.egress_area_below if window.well_wide is not None and window.well_wide > ZERO else code.egress_area
    sill = window.sill + lining // 2 - basement.floor_finish
    return (
        area >= Fraction(needs.value)
        and tall >= code.egress_height.length
        and wide >= code.egress_width.length
        and sill <= code.egress_sill.length
    )


def _headroom(survey: Survey, code: CodeProfile) -> Iterator[Finding]:
    """Too low under the ceiling, or under what hangs from it: with any floor at all, or only with the one chosen."""
    basement, ceiling = survey.basement, load_figures().ceiling
    if basement.use == "storage":
        return
    for wall in survey.walls:
        lowest = min((value for _, value in wall.height.points), default=None)
        if lowest is not None and not survey.unsure(lowest.rests):
            yield from _too_low("headroom", wall.letter, lowest - ceiling, basement, code.habitable_height)
        for each in (o for o in wall.openings if o.hangs and o.over_drop and not survey.unsure(o.over_drop.rests)):
            under = wall.height.least_over(each.left, each.right) - (each.over_drop or ZERO)
            if not survey.unsure(under.rests):
                yield from _too_low("headroom_beam", wall.letter, under - ceiling, basement, code.beam_height)
    if basement.hangs == "yes" and basement.hangs_at is None:
        yield finding("headroom_beam_unknown")
    elif basement.hangs_at is not None and not survey.unsure(basement.hangs_at.rests):
        yield from _too_low("headroom_beam", None, basement.hangs_at - ceiling, basement, code.beam_height)


def _too_low(key: str, wall: str | None, bare: Length, basement: Basement, least: CodeFigure) -> Iterator[Finding]:
    left, room = bare - basement.floor_finish, bare - least.length
    if room < ZERO:
        yield finding(key, wall, left=bare, least=least.length, cited=least.cited)
    elif left < least.length:
        yield finding(f"{key}_floor", wall, left=left, least=least.length, cited=least.cited, floor=room)
