"""Printing lengths: rounded once, to a stated step, in a stated direction; and written or said so that none is lost."""

from __future__ import annotations

from fractions import Fraction

from guide.lengths.size import (
    DENOMINATORS,
    MM,
    SIXTEENTH,
    SIXTY_FOURTH,
    TICKS_PER_INCH,
    TICKS_PER_MM,
    ZERO,
    Length,
    Tape,
    Toward,
    decimal,
    exact_inches,
    mixed,
)


def in_inches(length: Length, step: Length = SIXTEENTH, toward: Toward = "nearest") -> str:
    """Print inches and fractions without a unit, rounded once to `step`: `187 3/4`, `-1/2`, `0`."""
    return mixed(length.to(step, toward).inch)


def in_mm(length: Length, toward: Toward = "nearest") -> str:
    """Print whole millimetres without a unit."""
    return str(length.to(MM, toward).ticks // TICKS_PER_MM)


def in_feet(length: Length, step: Length = SIXTEENTH, toward: Toward = "nearest") -> str:
    """Print feet and inches, as read along a tape: `15'-7 3/4"`; under a foot, inches alone: `7 3/4"`."""
    value = length.to(step, toward).inch
    sign, value = ("-", -value) if value < 0 else ("", value)
    feet, rest = divmod(value, 12)
    return f"{sign}{feet}'-{mixed(rest)}\"" if feet else f'{sign}{mixed(rest)}"'


def show(length: Length, tape: Tape = "inches", step: Length = SIXTEENTH, toward: Toward = "nearest") -> str:
    """Print a size as the person's tape shows it, without a unit: inches with fractions to `step`, or whole millimetres."""
    return in_inches(length, step, toward) if tape == "inches" else in_mm(length, toward)


def with_unit(length: Length, tape: Tape = "inches", step: Length = SIXTEENTH, toward: Toward = "nearest") -> str:
    """Print a size as the person's tape shows it, with its unit: `187 3/4 in` or `4769 mm`."""
    return f"{show(length, tape, step, toward)} {'in' if tape == 'inches' else 'mm'}"


def as_run(length: Length, tape: Tape = "inches") -> str:
    """Print a run that nobody measures off: `31 ft`, the started foot in full; or `9.4 m`, rounded up to a tenth."""
    if tape == "inches":
        return f"{-(-length.ticks // (12 * TICKS_PER_INCH))} ft"
    tenths = -(-length.ticks // (100 * TICKS_PER_MM))
    return f"{tenths // 10}.{tenths % 10} m"


def with_area(square_inches: Fraction, tape: Tape = "inches") -> str:
    """Print an area to a tenth: `43.5 sq ft`, or `4.0 m²` on a metric tape. Takes square inches."""
    return (
        f"{float(square_inches / 144):.1f} sq ft" if tape == "inches" else f"{float(square_inches) * 0.00064516:.1f} m²"
    )


def as_written(length: Length, tape: Tape = "inches") -> str:
    """Print for a file, with a unit, so that reading it back gives the same length to the tick."""
    if tape == "millimetres" and length.ticks % TICKS_PER_MM == 0:
        return f"{length.ticks // TICKS_PER_MM} mm"
    if length.inch.denominator not in (1, *DENOMINATORS) and length.ticks % 32 == 0:
        return f"{decimal(Fraction(length.ticks, TICKS_PER_MM))} mm"
    return f"{exact_inches(length)} in"


_SMALL = (
    "no one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen "
    "seventeen eighteen nineteen"
).split()
_TENS = "_ _ twenty thirty forty fifty sixty seventy eighty ninety".split()
_PARTS = {2: ("half", "halves"), 4: ("quarter", "quarters"), 8: ("eighth", "eighths"), 16: ("sixteenth", "sixteenths"),
          32: ("thirty-second", "thirty-seconds"), 64: ("sixty-fourth", "sixty-fourths")}  # fmt: skip


def count_in_words(number: int) -> str:
    """Say a count in words up to 999 999; zero is “no”, as in “no inches”."""
    if number >= 1000:
        rest = number % 1000
        return f"{count_in_words(number // 1000)} thousand{f' {count_in_words(rest)}' if rest else ''}"
    if number >= 100:
        rest = number % 100
        return f"{_SMALL[number // 100]} hundred{f' and {count_in_words(rest)}' if rest else ''}"
    if number >= 20:
        return _TENS[number // 10] + (f"-{_SMALL[number % 10]}" if number % 10 else "")
    return _SMALL[number]


def in_words(length: Length, tape: Tape = "inches") -> str:
    """Say a size so that a slip of a foot or a digit is heard: “fifteen feet, four and a half inches”.

    Rounds to the nearest sixty-fourth, or to the nearest millimetre for a metric tape.
    """
    size = abs(length).near(MM if tape == "millimetres" else SIXTY_FOURTH)
    below = "minus " if length < ZERO < size else ""
    if tape == "millimetres":
        metres, rest = divmod(size.ticks // TICKS_PER_MM, 1000)
        small = f"{count_in_words(rest)} millimetre{'' if rest == 1 else 's'}"
        if not metres:
            return below + small
        return f"{below}{count_in_words(metres)} metre{'' if metres == 1 else 's'}" + (f", {small}" if rest else "")
    feet, rest_inches = divmod(size.inch, 12)
    said = _inches_in_words(rest_inches)
    if not feet:
        return below + said
    feet_said = f"{count_in_words(int(feet))} {'foot' if feet == 1 else 'feet'}"
    return f"{below}{feet_said}, {said}" if rest_inches else f"{below}{feet_said}"


def _inches_in_words(value: Fraction) -> str:
    whole, rest = divmod(value, 1)
    if not rest:
        return f"{count_in_words(int(whole))} inch{'' if whole == 1 else 'es'}"
    one, many = _PARTS[rest.denominator]
    part = (
        f"{'an' if one[0] == 'e' else 'a'} {one}" if rest.numerator == 1 else f"{count_in_words(rest.numerator)} {many}"
    )
    return (
        f"{count_in_words(int(whole))} and {part} inches"
        if whole
        else f"{part} of an inch"
        if one != "half"
        else "half an inch"
    )
