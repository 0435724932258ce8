"""What wallbrief comes to about dew, in the units of the source."""

from __future__ import annotations

from collections.abc import Callable

from guide.checks.moisture import dew_point, face_temperature, foam_that_would_do
from tests.jobs import job, layout_of, wall


def dew_c(celsius: float, percent: float) -> float:
    """Return the dew point in °C."""
    return dew_point(celsius, percent / 100)


def dew_f(fahrenheit: float, percent: float) -> float:
    """Return the dew point in °F."""
    return _f(dew_c(_c(fahrenheit), percent))


def humidity_of(fahrenheit: float, dew: float) -> float:
    """Return the relative humidity in percent whose dew point is this one, found by halving."""
    low, high = 0.001, 1.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if _f(dew_point(_c(fahrenheit), middle)) < dew else (low, middle)
    return low * 100


def humidity_from_pressures(vapour: float, saturated: float, fahrenheit: float) -> float:
    """Return the dew point in °F of air whose vapour pressure is known; `saturated` is that of its temperature."""
    return dew_f(fahrenheit, vapour / saturated * 100)


def face_f(outside: float, inside: float, outer: float, whole: float) -> float:
    """Return the temperature in °F where `outer` of the `whole` R lies outside."""
    return _f(face_temperature(_c(outside), _c(inside), outer, whole))


def foam_for(zone: str, humidity: str) -> float:
    """Return the R of the extruded foam that keeps its room face dry behind batts in a zone."""
    layout = layout_of(job([wall("20 ft")], zone=zone, humidity=humidity, batts="yes"))
    need = foam_that_would_do(layout.walls[0], layout.survey.basement)
    assert need is not None
    return float(need.inch * 5)


def _c(fahrenheit: float) -> float:
    return (fahrenheit - 32) / 1.8


def _f(celsius: float) -> float:
    return celsius * 1.8 + 32


OURS: dict[str, Callable[..., float | str]] = {
    each.__name__: each for each in (dew_c, dew_f, humidity_of, humidity_from_pressures, face_f, foam_for)
}
