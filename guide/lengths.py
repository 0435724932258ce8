"""Lengths: what a tape says, exactly, and which readings it came from.

This is the only module that knows ticks. A `Length` is a whole number of ticks, 8128 to the inch, which is also 320 to
the millimetre, so sixty-fourths of an inch and whole millimetres are both exact and nothing ever drifts. Beside the
number it carries the ids of the answers it rests on; arithmetic joins them.

Reading (`read_length`) takes what people write on a scrap of wood. Printing (`show`, `in_feet`, `in_words`) rounds
once, to a stated step, in a stated direction.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass, field
from fractions import Fraction
from functools import lru_cache
from typing import Literal

TICKS_PER_INCH = 8128
TICKS_PER_MM = 320

Tape = Literal["inches", "millimetres"]
"""Which side of the tape the person reads; it decides what a bare number means and how sizes are printed."""

Toward = Literal["nearest", "down", "up"]
"""Which way printing or rounding goes when a length falls between two steps."""


@dataclass(frozen=True, order=True, slots=True)
class Length:
    """An exact length, positive or negative, and the answers it rests on.

    Two lengths are equal, and ordered, by their ticks alone: where a number came from does not change its size.

    >>> inches("2 3/8") + inches("3 1/2") == inches("5 7/8")
    True
    """

    ticks: int
    """Whole ticks: 8128 to the inch, 320 to the millimetre."""
    rests: frozenset[str] = field(default=frozenset(), compare=False)
    """Ids of the answers this number was worked out from; empty for a figure that nobody measured."""

    def __add__(self, other: Length) -> Length:
        return Length(self.ticks + other.ticks, self.rests | other.rests)

    def __sub__(self, other: Length) -> Length:
        return Length(self.ticks - other.ticks, self.rests | other.rests)

    def __neg__(self) -> Length:
        return Length(-self.ticks, self.rests)

    def __mul__(self, count: int) -> Length:
        return Length(self.ticks * count, self.rests)

    __rmul__ = __mul__

    def __floordiv__(self, count: int) -> Length:
        """Divide, rounding down to a whole tick: the one place where division rounds."""
        return Length(self.ticks // count, self.rests)

    def __abs__(self) -> Length:
        return Length(abs(self.ticks), self.rests)

    def __repr__(self) -> str:
        mark = f" on {sorted(self.rests)}" if self.rests else ""
        return f"<{exact_inches(self)} in{mark}>"

    def on(self, *ids: str) -> Length:
        """Return the same size, resting on these answers as well."""
        return Length(self.ticks, self.rests.union(ids))

    def with_rests(self, ids: Iterable[str]) -> Length:
        """Return the same size, resting on these answers as well (any iterable of ids)."""
        return Length(self.ticks, self.rests.union(ids))

    def down_to(self, step: Length) -> Length:
        """Round down to a whole number of steps (toward minus infinity)."""
        return Length(self.ticks // step.ticks * step.ticks, self.rests)

    def up_to(self, step: Length) -> Length:
        """Round up to a whole number of steps (toward plus infinity)."""
        return Length(-(-self.ticks // step.ticks) * step.ticks, self.rests)

    def near(self, step: Length) -> Length:
        """Round to the nearest whole number of steps; a tie goes up."""
        return Length((self.ticks + step.ticks // 2) // step.ticks * step.ticks, self.rests)

    def to(self, step: Length, toward: Toward) -> Length:
        """Round to a whole number of steps, `toward` nearest, down or up."""
        return {"nearest": self.near, "down": self.down_to, "up": self.up_to}[toward](step)

    @property
    def inch(self) -> Fraction:
        """The size in inches, exactly."""
        return Fraction(self.ticks, TICKS_PER_INCH)


ZERO = Length(0)
INCH = Length(TICKS_PER_INCH)
FOOT = INCH * 12
MM = Length(TICKS_PER_MM)
EIGHTH = INCH // 8
SIXTEENTH = INCH // 16
SIXTY_FOURTH = INCH // 64


def least(first: Length, *others: Length) -> Length:
    """Return the smallest, resting on everything that was compared."""
    return Length(min(first.ticks, *(o.ticks for o in others)) if others else first.ticks, _joined(first, *others))


def greatest(first: Length, *others: Length) -> Length:
    """Return the largest, resting on everything that was compared."""
    return Length(max(first.ticks, *(o.ticks for o in others)) if others else first.ticks, _joined(first, *others))


def between(low: Length, high: Length, *, part: Length, whole: Length) -> Length:
    """Interpolate on the straight line from `low` to `high`, `part` of the way along `whole`; rounds down to a tick.

    `part` outside 0..`whole` extrapolates. `whole` must not be zero. Rests on all four.
    """
    rise = (high.ticks - low.ticks) * part.ticks // whole.ticks
    return Length(low.ticks + rise, _joined(low, high, part, whole))


def _joined(*lengths: Length) -> frozenset[str]:
    return frozenset[str]().union(*(length.rests for length in lengths))


def from_inches(value: Fraction | int) -> Length:
    """Return that many inches, to the nearest tick."""
    return Length(round(value * TICKS_PER_INCH))


def from_mm(value: Fraction | int) -> Length:
    """Return that many millimetres, to the nearest tick."""
    return Length(round(value * TICKS_PER_MM))


@lru_cache(maxsize=512)
def inches(text: str) -> Length:
    """Return a figure written in data or code, such as `2 3/8` or `16 ft`: read strictly, bare numbers are inches.

    Raises ValueError with the reader's own sentence.
    """
    reading = read_length(text, bare="in")
    if reading.about:
        raise ValueError(f"“{text}” is a figure in data; write it without “about”.")
    return reading.length


# ---------------------------------------------------------------------------------------------------- reading

SHY = INCH // 32
"""What “shy” takes off and “strong” adds: a thirty-second of an inch. Common practice among carpenters, no source."""

SHY_MM = MM // 2
"""The same on a metric tape: half a millimetre, the middle between two marks. Common practice, no source."""

DENOMINATORS = (2, 4, 8, 16, 32, 64)
"""The fractions printed on a tape or a rule."""

_LONGEST_REPLY = 60
_LONGEST = FOOT * 10_000
"""Ten thousand feet: no wall comes near it, and every size up to it can be printed and said."""


class Unreadable(ValueError):  # noqa: N818 - it is an answer to the person, said as it stands
    """A reply that is not one clear length; the message is one sentence with an example, ready to be shown."""


@dataclass(frozen=True, slots=True)
class Reading:
    """A length as understood from a reply."""

    length: Length
    about: bool
    """The person said it was not measured: “about”, “~”, “or so”."""


_SIGNS = str.maketrans(
    {
        "’": "'", "‘": "'", "′": "'", "´": "'", "`": "'", "ʹ": "'", "＇": "'",
        "”": '"', "“": '"', "″": '"', "„": '"', "ʺ": '"', "＂": '"',
        "–": "-", "—": "-", "−": "-", "‐": "-", "‑": "-", "﹣": "-", "－": "-",
        "⁄": "/", "∕": "/", "／": "/", "≈": "~", "～": "~",
    }
)  # fmt: skip

_ABOUT_BEFORE = re.compile(
    r"^(?:just about|about|around|roughly|approximately|approx\.?|circa|ca\.?|maybe|nearly|almost|say|~)\s*"
)
_ABOUT_AFTER = re.compile(r"\s*(?:or so|ish|-ish|give or take|roughly|approx\.?|or thereabouts)$")
_SHY_AFTER = re.compile(
    r"\s*(?:just |slightly |a (?:hair|touch|bit|tad|little) )?(?P<word>shy|scant|light|strong|heavy|full)$"
)
_AND_FRACTION = re.compile(r"(?<=\d) ?(?:and|&|\+) ?(?P<frac>\d+ ?/ ?\d+|a half|a quarter|three quarters)")
_FRACTION_WORDS = {"a half": "1/2", "a quarter": "1/4", "three quarters": "3/4"}

_NUM = r"(?:\d+(?:\.\d+)?|\.\d+)"
_FRAC = r"\d+\s*/\s*\d+"
_INCH = rf"(?:(?P<whole>{_NUM})(?:(?:\s+|\s*-\s*)(?P<frac>{_FRAC}))?|(?P<only>{_FRAC}))"
_FT_WORD = r"(?:ft\.?|feet|foot)"
_FT = rf"(?:'|{_FT_WORD})"
_IN = r"(?:\"|''|ins?\.?|inch(?:es)?)"
_MM = r"(?:mm|millimet(?:re|er)s?)"
_CM = r"(?:cm|centimet(?:re|er)s?)"
_M = r"(?:m|met(?:re|er)s?)"

_FEET_INCHES = re.compile(rf"(?P<feet>{_NUM})\s*{_FT}(?:\s*(?:-|,|and)?\s*{_INCH}\s*(?P<unit>{_IN})?)?")
_FEET_DASH = re.compile(
    rf"(?P<feet>\d+)\s*-\s*(?:(?P<whole>{_NUM})(?:(?:\s+|\s*-\s*)(?P<frac>{_FRAC}))?)\s*(?P<unit>{_IN})?"
)
_FEET_FRACTION = re.compile(rf"{_INCH}\s*(?P<unit>{_FT})")
_INCHES = re.compile(rf"{_INCH}\s*(?P<unit>{_IN})?")
_METRIC = re.compile(rf"(?P<num>{_NUM})\s*(?P<unit>{_MM}|{_CM}|{_M})")
_METRES_AND = re.compile(rf"(?P<m>\d+)\s*{_M}\s*(?:and\s*)?(?P<num>{_NUM})\s*(?P<unit>{_MM}|{_CM})")
_OTHER_UNIT = re.compile(rf"(?P<num>{_NUM})\s*(?P<unit>[a-z]+)")
_TWO_NUMBERS = re.compile(rf"(?P<a>\d+)\s+(?P<b>{_NUM})(?:(?:\s+|-)(?P<frac>{_FRAC}))?")

_YARD = Fraction(36)
_DECIMETRE = Fraction(1000, 254)
_OTHER_UNITS = {
    "yd": _YARD, "yds": _YARD, "yard": _YARD, "yards": _YARD,
    "dm": _DECIMETRE, "decimetre": _DECIMETRE, "decimetres": _DECIMETRE,
    "decimeter": _DECIMETRE, "decimeters": _DECIMETRE,
}  # fmt: skip
"""Units that no tape is marked in but people say, in inches. Any other name is asked back, never guessed."""

_EXAMPLE = {"in": "184 1/2 or 15' 4 1/2\"", "mm": "3770 mm or 3.77 m"}

Bare = Literal["in", "mm"]
"""The unit that a number without a unit is in."""


def read_length(text: str, *, bare: Bare) -> Reading:
    """Read one length as people write it; `bare` is the unit a number without a unit is in.

    Takes feet and inches in every usual spelling, inches with fractions down to 64ths or decimals, metres, centimetres
    and millimetres, yards and decimetres, typographic quotes and fraction characters, “about” before and “shy” or
    “strong” after. A leading minus is read; whether it makes sense is the question's business.
    Raises `Unreadable` with one sentence when the reply is not one clear length, or is longer than ten thousand feet.
    """
    shown = "".join(char for char in " ".join(text.replace("\u00ad", "-").split()) if char.isprintable())
    if len(shown) > _LONGEST_REPLY:
        raise Unreadable(f"That is too long to be one tape reading; I would understand {_EXAMPLE[bare]}.")
    plain, about = _take_about(_plain(shown))
    slack = 0
    if found := _SHY_AFTER.search(plain):
        slack = -1 if found["word"] in ("shy", "scant", "light") else 1
        plain = plain[: found.start()].strip()
    below = False
    if found := re.match(r"^(?:-|minus\s)\s*", plain):
        below, plain = True, plain[found.end() :]
    if not plain:
        raise Unreadable(f"I need a number; I would understand {_EXAMPLE[bare]}.")
    size, shy = _read_plain(_decimal_commas(plain, shown, bare), shown, bare)
    size += shy * slack
    if size < ZERO:
        raise Unreadable(f"“{shown}” would be less than nothing; I would understand {_EXAMPLE[bare]}.")
    if size > _LONGEST:
        raise Unreadable(f"“{shown}” is longer than any wall; I would understand {_EXAMPLE[bare]}.")
    return Reading(-size if below else size, about)


def _plain(text: str) -> str:
    """Fold typographic signs to the ones on a keyboard; a fraction character becomes ` n/d` so that `15½` is not 151/2."""
    out = []
    for char in text:
        folded = unicodedata.normalize("NFKC", char)
        out.append(f" {folded}" if "⁄" in folded and len(folded) > 1 else char)
    plain = " ".join("".join(out).translate(_SIGNS).lower().split())
    plain = plain[:-1].rstrip() if plain.endswith(".") else plain
    return _AND_FRACTION.sub(lambda found: f" {_FRACTION_WORDS.get(found['frac'], found['frac'])}", plain)


def _take_about(plain: str) -> tuple[str, bool]:
    about = False
    while found := _ABOUT_BEFORE.match(plain):
        plain, about = plain[found.end() :].strip(), True
    while found := _ABOUT_AFTER.search(plain):
        plain, about = plain[: found.start()].strip(), True
    return plain, about


def _decimal_commas(plain: str, shown: str, bare: Bare) -> str:
    """Read a comma between digits as a decimal comma where that alone makes sense: one or two metric decimals."""
    if not re.search(r"\d,\d", plain):
        return plain
    if re.search(r"\d,\d{3}(?!\d)", plain):
        raise Unreadable(
            f"The comma in “{shown}” could part thousands or decimals; write it with a point, such as 3.770 m, or without."
        )
    unit = rf"(?:{_MM}|{_CM}|{_M})" if bare == "in" else rf"(?:{_MM}|{_CM}|{_M})?"
    if re.fullmatch(rf"\d+,\d\d?\s*{unit}", plain):
        return plain.replace(",", ".")
    raise Unreadable(
        f"The comma in “{shown}” could part two readings or decimals; write decimals with a point, such as 92.5."
    )


def _read_plain(plain: str, shown: str, bare: Bare) -> tuple[Length, Length]:
    """Return the size, and how much “shy” is in its unit."""
    if found := _FEET_INCHES.fullmatch(plain):
        return _feet_and_inches(found, shown), SHY
    if found := _INCHES.fullmatch(plain):
        return _inches_or_bare(found, shown, bare)
    if found := _FEET_DASH.fullmatch(plain):
        if bare == "mm" and not found["unit"]:
            raise Unreadable(
                f"“{shown}” has a dash, but we are reading millimetres; write feet and inches with their marks, or 3770 mm."
            )
        return _feet_and_inches(found, shown), SHY
    if found := _FEET_FRACTION.fullmatch(plain):
        return _feet_in_parts(found, shown), SHY
    if found := _METRES_AND.fullmatch(plain):
        return _metres_and(found, shown), SHY_MM
    if found := _METRIC.fullmatch(plain):
        return _metric(found["num"], found["unit"]), SHY_MM
    if (found := _TWO_NUMBERS.fullmatch(plain)) and bare == "in" and Fraction(found["b"]) < 12:
        frac = f" {found['frac']}" if found["frac"] else ""
        raise Unreadable(
            f"“{shown}” could be feet and inches or something else; "
            f"write {found['a']}-{found['b']}{frac} or {found['a']}' {found['b']}{frac}\" if it is feet and inches."
        )
    if found := _OTHER_UNIT.fullmatch(plain):
        return _other_unit(found["num"], found["unit"], shown, bare), SHY
    raise Unreadable(f"I cannot read “{shown}” as one length; I would understand {_EXAMPLE[bare]}.")


def _fraction(text: str | None, shown: str) -> Fraction:
    if text is None:
        return Fraction(0)
    top, bottom = (int(part) for part in text.split("/"))
    if bottom not in DENOMINATORS:
        raise Unreadable(
            f"“{shown}” has {top}/{bottom}, which is not a mark on a tape; use halves down to sixty-fourths, such as 5/8."
        )
    if top == 0:
        raise Unreadable(
            f"“{shown}” has {top}/{bottom}, which is nothing; leave it out, or write the fraction you read."
        )
    if top >= bottom:
        raise Unreadable(
            f"“{shown}” has {top}/{bottom}, which is not less than one; put a space before the fraction, such as 15 1/2."
        )
    return Fraction(top, bottom)


def _whole_and_fraction(found: re.Match[str], shown: str) -> Fraction:
    groups = found.groupdict()
    if groups.get("only"):
        return _fraction(groups["only"], shown)
    whole, frac = groups.get("whole"), groups.get("frac")
    if whole and "." in whole and frac:
        raise Unreadable(f"“{shown}” has a decimal and a fraction together; use one of them, such as 4.5 or 4 1/2.")
    return Fraction(whole or 0) + _fraction(frac, shown)


def _feet_and_inches(found: re.Match[str], shown: str) -> Length:
    feet, rest = Fraction(found["feet"]), _whole_and_fraction(found, shown)
    if rest and feet.denominator != 1:
        raise Unreadable(f"“{shown}” has decimal feet and inches together; write 15.5 ft, or 15 ft 6 in.")
    if rest >= 12:
        raise Unreadable(
            f"“{shown}” has {_trim(rest)} inches beside the feet, which is a foot or more; write the feet in full, or inches alone."
        )
    if found.groupdict().get("only") and not found["unit"]:
        raise Unreadable(
            f"“{shown}” could have a part of an inch or of a foot; write {feet}' 0 {found['only']}\" if it is inches."
        )
    return from_inches(feet * 12 + rest)


def _feet_in_parts(found: re.Match[str], shown: str) -> Length:
    value = _whole_and_fraction(found, shown)
    if found["unit"] == "'":
        raise Unreadable(
            f"“{shown}” has a fraction with a foot mark, which may be a slip for inches; write 5 1/2 ft or 5 1/2 in."
        )
    return from_inches(value * 12)


def _inches_or_bare(found: re.Match[str], shown: str, bare: Bare) -> tuple[Length, Length]:
    value = _whole_and_fraction(found, shown)
    if found["unit"] or bare == "in":
        return from_inches(value), SHY
    if found["frac"] or found["only"]:
        raise Unreadable(
            f"“{shown}” has a fraction, but we are reading millimetres; write 184 1/2 in if you mean inches, or 3770 mm."
        )
    return from_mm(value), SHY_MM


def _metric(number: str, unit: str) -> Length:
    scale = 1 if unit.startswith(("mm", "milli")) else 10 if unit.startswith("c") else 1000
    return from_mm(Fraction(number) * scale)


def _metres_and(found: re.Match[str], shown: str) -> Length:
    rest = _metric(found["num"], found["unit"])
    if rest >= MM * 1000:
        raise Unreadable(f"“{shown}” has a metre or more beside the metres; write it in one unit, such as 3770 mm.")
    return MM * (int(found["m"]) * 1000) + rest


def _other_unit(number: str, unit: str, shown: str, bare: Bare) -> Length:
    if unit not in _OTHER_UNITS:
        raise Unreadable(
            f"I do not know “{unit}” in “{shown}” as a unit of length; I would understand {_EXAMPLE[bare]}."
        )
    return from_inches(Fraction(number) * _OTHER_UNITS[unit])


# ---------------------------------------------------------------------------------------------------- printing


def exact_inches(length: Length) -> str:
    """Print inches so that reading them back gives the same length: a fraction where one is exact, else a decimal.

    >>> exact_inches(inches("92 5/8")), exact_inches(from_mm(3))
    ('92 5/8', '0.11811')
    """
    value = length.inch
    return _mixed(value) if value.denominator in (1, *DENOMINATORS) else _trim(value)


def in_inches(length: Length, step: Length = SIXTEENTH, toward: Toward = "nearest") -> str:
    """Print inches and fractions without a unit, rounded once to `step`: `187 3/4`, `-1/2`, `0`."""
    return _mixed(length.to(step, toward).inch)


def in_mm(length: Length, toward: Toward = "nearest") -> str:
    """Print whole millimetres without a unit."""
    return str(length.to(MM, toward).ticks // TICKS_PER_MM)


def in_feet(length: Length, step: Length = SIXTEENTH, toward: Toward = "nearest") -> str:
    """Print feet and inches, as read along a tape: `15'-7 3/4"`; under a foot, inches alone: `7 3/4"`."""
    value = length.to(step, toward).inch
    sign, value = ("-", -value) if value < 0 else ("", value)
    feet, rest = divmod(value, 12)
    return f"{sign}{feet}'-{_mixed(rest)}\"" if feet else f'{sign}{_mixed(rest)}"'


def show(length: Length, tape: Tape = "inches", step: Length = SIXTEENTH, toward: Toward = "nearest") -> str:
    """Print a size as the person's tape shows it, without a unit: inches with fractions to `step`, or whole millimetres."""
    return in_inches(length, step, toward) if tape == "inches" else in_mm(length, toward)


def with_unit(length: Length, tape: Tape = "inches", step: Length = SIXTEENTH, toward: Toward = "nearest") -> str:
    """Print a size as the person's tape shows it, with its unit: `187 3/4 in` or `4769 mm`."""
    return f"{show(length, tape, step, toward)} {'in' if tape == 'inches' else 'mm'}"


def as_written(length: Length, tape: Tape = "inches") -> str:
    """Print for a file, with a unit, so that reading it back gives the same length to the tick."""
    if tape == "millimetres" and length.ticks % TICKS_PER_MM == 0:
        return f"{length.ticks // TICKS_PER_MM} mm"
    if length.inch.denominator not in (1, *DENOMINATORS) and length.ticks % 32 == 0:
        return f"{_trim(Fraction(length.ticks, TICKS_PER_MM))} mm"
    return f"{exact_inches(length)} in"


def _mixed(value: Fraction) -> str:
    sign, value = ("-", -value) if value < 0 else ("", value)
    whole, rest = divmod(value, 1)
    if not rest:
        return f"{sign}{whole}"
    return f"{sign}{f'{whole} ' if whole else ''}{rest.numerator}/{rest.denominator}"


def _trim(value: Fraction) -> str:
    """Print a decimal with five places at most: a tick is over a ten-thousandth of an inch, so none is ever lost."""
    sign, units = ("-" if value < 0 else ""), round(abs(value) * 100_000)
    return f"{sign}{units // 100_000}.{units % 100_000:05}".rstrip("0").rstrip(".")


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
