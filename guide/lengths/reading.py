"""Reading one length as people write it on a scrap of wood; what is not one clear length is asked back, never guessed."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import Literal

from guide.lengths.size import DENOMINATORS, FOOT, INCH, MM, ZERO, Length, decimal, from_inches, from_mm
from guide.lengths.spelled import in_figures

SHY = INCH // 32
"""What “shy” takes off and “strong” adds: a thirty-second of an inch. Common practice among carpenters, no source."""

SHY_MM = MM // 2
"""The same on a metric tape: half a millimetre, the middle between two marks. Common practice, no source."""

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
_AND_FRACTION = re.compile(r"(?<=\d) ?(?:and|&|\+) ?(?P<frac>\d+ ?/ ?\d+)")

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

    Takes feet and inches in every usual spelling, in figures or in words, inches with fractions down to 64ths or
    decimals, metres, centimetres and millimetres, yards and decimetres, typographic quotes and fraction characters, “about” before and “shy” or
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
    plain = in_figures(plain[:-1].rstrip() if plain.endswith(".") else plain)
    return _AND_FRACTION.sub(r" \g<frac>", plain)


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
            f"“{shown}” has {decimal(rest)} inches beside the feet, which is a foot or more; write the feet in full, or inches alone."
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


@lru_cache(maxsize=512)
def inches(text: str) -> Length:
    """Return a figure written in data or code, such as `2 3/8` or `16 ft`: read strictly, bare numbers are inches.

    Raises ValueError with the reader's own sentence.
    """
    reading = read_length(text, bare="in")
    if reading.about:
        raise ValueError(f"“{text}” is a figure in data; write it without “about”.")
    return reading.length
