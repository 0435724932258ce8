"""Numbers said in words, turned into the figures that the reader of lengths takes; nothing else in a text is touched.

It owns one promise: a text whose words are not one clear number is handed on as it came, to be asked back.
"""

from __future__ import annotations

import re

_ONES = dict(
    zip("zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen "
        "eighteen nineteen".split(), range(20), strict=True)
)  # fmt: skip
_TENS = dict(zip("twenty thirty forty fifty sixty seventy eighty ninety".split(), range(20, 100, 10), strict=True))
_PARTS = (
    (r"thirty[- ]?seconds?", 32), (r"sixty[- ]?fourths?", 64), (r"sixteenths?", 16), (r"eighths?", 8),
    (r"quarters?|fourths?", 4), (r"half|halves", 2),
)  # fmt: skip
"""Parts of an inch in words; the long ones first, for “thirty seconds” begins with a number."""

_PART = "§"
_UNIT = r"(?:inch(?:es)?|foot|feet|ft|yards?|met(?:re|er)s?|(?:centi|milli)met(?:re|er)s?)"
_UNDER_HUNDRED = rf"(?:(?:{'|'.join(_TENS)})(?:[ -](?:{'|'.join(list(_ONES)[1:10])}))?|{'|'.join(reversed(_ONES))})"
_CARDINAL = re.compile(
    rf"\b(?:(?P<hundreds>{'|'.join(list(_ONES)[1:10])}|a)[ -]hundred(?:(?: and)? (?P<rest>{_UNDER_HUNDRED}))?|(?P<small>{_UNDER_HUNDRED}))\b"
)
_FRACTION = re.compile(rf"(?:(?P<top>\d+)(?: |-)|\ban? )?(?P<a>\ba )?{_PART}(?P<bottom>\d+){_PART}")
_PART_OF_A_UNIT = re.compile(rf"(\d+/\d+) (?:of )?an? (?={_UNIT}\b)")
_ONE_OF_A_UNIT = re.compile(rf"\ban? (?={_UNIT}\b)")
_UNIT_AND_PART = re.compile(r"\b(?:(\d+) )?(inch(?:es)?|in)\.? and (\d+/\d+)(?: inch(?:es)?)?$")
_POINT = re.compile(r"(\d+) point (\d+)")


def in_figures(text: str) -> str:
    """Return a lower-case text with its number words in figures: `two and a half inches` becomes `2 1/2 inches`.

    Fractions are those of a tape, down to sixty-fourths; whole numbers go to 999. Anything else is left as it is.

    >>> in_figures("ninety-two and five eighths"), in_figures("an inch and a quarter"), in_figures("four foot six")
    ('92 5/8', '1 1/4 inch', '4 foot 6')
    """
    if not re.search(r"[a-z]{3}|\ban? ", text):
        return text
    plain = text
    for words, bottom in _PARTS:
        plain = re.sub(rf"\b(?:{words})\b", f"{_PART}{bottom}{_PART}", plain)
    plain = _CARDINAL.sub(lambda found: str(_cardinal(found)), plain)
    plain = _FRACTION.sub(_fraction, plain)
    if _PART in plain:
        return text
    plain = _PART_OF_A_UNIT.sub(r"\1 ", plain)
    plain = re.sub(r"\ba foot and (?:a )?1/2$", "1 1/2 foot", plain)
    plain = _ONE_OF_A_UNIT.sub("1 ", plain)
    plain = _UNIT_AND_PART.sub(lambda found: f"{found[1] or 1} {found[3]} {found[2]}", plain)
    plain = re.sub(r"(?<![\d/.])(\d+) and (?=\d+/\d+)", r"\1 ", plain)
    return _POINT.sub(r"\1.\2", plain)


def _cardinal(found: re.Match[str]) -> int:
    if found["small"]:
        return _under_hundred(found["small"])
    return 100 * _ONES.get(found["hundreds"], 1) + (_under_hundred(found["rest"]) if found["rest"] else 0)


def _under_hundred(words: str) -> int:
    return sum(_ONES.get(word, _TENS.get(word, 0)) for word in re.split("[ -]", words))


def _fraction(found: re.Match[str]) -> str:
    """Return a fraction in figures; one that is not less than a whole is left marked, so that the text is handed back."""
    top, bottom = int(found["top"] or 1), int(found["bottom"])
    return f"{top}/{bottom}" if top < bottom else found[0]
