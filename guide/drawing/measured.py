"""Chains of dimensions in ink: under a drawing and beside it, their sizes apart from each other.

A size that does not fit between its two places stands beside them, with a thin line that says where it belongs.
"""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise

from guide.drawing.hatches import FINE
from guide.drawing.lettering import SMALL, WORDS, Word, folded, number, printable, spread, wide
from guide.drawing.shapes import Chain
from guide.lengths import Length

DEEP = 2_600
"""Room that a chain of one size beside a drawing takes up."""
CLEAR = 350
"""From one size to the next, and from a size to its line."""
TICK = 350
"""Half the stroke across a line where a place is."""
LEAD = 900
"""Over how much height the thin lines lead away from their places."""
CAPTION = 1_300
"""Room for the words under a chain."""

Said = Callable[[Length, bool], str]
"""How a size is printed; True for one that is the only one of its chain."""


def stroke(path: str, weight: int = FINE) -> str:
    """Return a thin line along a path."""
    return f'<path d="{path}" fill="none" stroke="#000" stroke-width="{number(weight)}"/>'


def under(
    words: list[Word], chain: Chain, y: int, across: Callable[[Length], int], room: tuple[int, int], said: Said
) -> tuple[list[str], int]:
    """Add a chain's sizes to the words and return its lines, and where the next chain may begin."""
    drawn, y = (_running if chain.running else _between)(words, chain, y, across, room, said)
    return drawn, caption(words, chain.says, across(chain.places[0]), y, room)


def caption(words: list[Word], text: str, x: int, y: int, room: tuple[int, int]) -> int:
    """Add what explains a line under it, from x on where there is room for it, and return where the next row may begin."""
    for line in folded(printable(text), SMALL, room[1] - room[0]):
        words.append(Word(line, max(room[0], min(x, room[1] - wide(line, SMALL))), y + SMALL // 2, SMALL, "start"))
        y += CAPTION
    return y


def _between(
    words: list[Word], chain: Chain, y: int, across: Callable[[Length], int], room: tuple[int, int], said: Said
) -> tuple[list[str], int]:
    """One size between each two places, over their line."""
    at = [across(place) for place in chain.places]
    line = y + WORDS + LEAD
    sizes = _sizes(chain, said)
    wanted = [(left + right) // 2 for left, right in pairwise(at)]
    centres = spread(wanted, [wide(size, WORDS) + CLEAR for size in sizes], *room)
    drawn = [ticked([(x, line) for x in at])]
    for middle, size, centre in zip(wanted, sizes, centres, strict=False):
        near = abs(centre - middle) <= CLEAR
        words.append(Word(size, centre, line - CLEAR - WORDS // 2 if near else y + WORDS // 2))
        if not near:
            drawn.append(stroke(f"M{number(middle)} {number(line)}L{number(centre)} {number(y + WORDS + 100)}"))
    return drawn, line + TICK * 2


def _running(
    words: list[Word], chain: Chain, y: int, across: Callable[[Length], int], room: tuple[int, int], said: Said
) -> tuple[list[str], int]:
    """Every size from the first place, upright under its own; where there is no room for all, the last ones are left out."""
    places, line = chain.places, y + TICK
    drawn = [ticked([(across(place), line) for place in places])]
    centres = spread([across(place) for place in places], [WORDS + CLEAR // 2] * len(places), *room)
    sizes = [said(place - places[0], False) for place in places]
    longest = max(wide(size, WORDS) for size in sizes)
    for place, size, centre in zip(places, sizes, centres, strict=False):
        x, head = across(place), line + LEAD
        drawn.append(stroke(f"M{number(x)} {number(line)}L{number(centre)} {number(head)}"))
        words.append(Word(size, centre, head + CLEAR // 2, anchor="end", upright=True))
    return drawn, line + LEAD + longest + CLEAR * 2


def deep(chain: Chain, said: Said) -> int:
    """Return how much room a chain at a side takes up across."""
    if len(chain.places) == 2:
        return DEEP
    return CLEAR * 3 + LEAD + max(wide(size, WORDS) for size in _sizes(chain, said)) + SMALL


def beside(words: list[Word], chain: Chain, x: int, up: Callable[[Length], int], said: Said, top: int) -> list[str]:
    """Add the sizes of an upright chain to the words and return its lines; `x` is its edge nearest to the drawing.

    One size stands along its line, after its words, in the fullest wording that stands on the chain's foot without
    reaching over the picture's `top`; several stand level beside it, and the words outside of them:
    all of them, or where that is too long no more than what stands before the colon.
    """
    out = 1 if chain.edge == "right" else -1
    at = [up(place) for place in chain.places]
    sizes = _sizes(chain, said)
    if len(sizes) == 1:
        line = x + DEEP - CLEAR if out > 0 else x - CLEAR
        short = said(chain.places[1] - chain.places[0], False)
        wordings = (f"{printable(chain.says)} {sizes[0]}", f"{printable(chain.says)} {short}", short)
        text = next((each for each in wordings if wide(each, WORDS) <= max(at) - top), short)
        words.append(Word(text, line - CLEAR - WORDS // 2, _over_foot(text, WORDS, at), upright=True))
        return [ticked([(line, y) for y in at])]
    line = x + CLEAR * out
    drawn = [ticked([(line, y) for y in at])]
    wanted = [(low + high) // 2 for low, high in pairwise(at)]
    centres = spread(wanted[::-1], [WORDS * 4 // 3] * len(sizes), min(at) - 8 * WORDS, max(at))[::-1]
    beyond = line + (LEAD + CLEAR) * out
    for middle, size, centre in zip(wanted, sizes, centres, strict=False):
        drawn.append(stroke(f"M{number(line)} {number(middle)}L{number(beyond - CLEAR * out)} {number(centre)}"))
        words.append(Word(size, beyond, centre, anchor="start" if out > 0 else "end"))
    farthest = beyond + (max(wide(size, WORDS) for size in sizes) + SMALL) * out
    named = printable(chain.says)
    says = next((each for each in (named, named.partition(":")[0]) if wide(each, SMALL) <= max(at) - top), "")
    words.append(Word(says, farthest, _over_foot(says, SMALL, at), SMALL, upright=True))
    return drawn


def _over_foot(text: str, size: int, at: list[int]) -> int:
    """Return the middle of a chain; of one shorter than its words, so far up that they do not reach under its foot."""
    return min((at[0] + at[-1]) // 2, max(at) - wide(text, size) // 2)


def _sizes(chain: Chain, said: Said) -> list[str]:
    """Return the sizes of a chain, each from one place to the next."""
    return [said(high - low, len(chain.places) == 2) for low, high in pairwise(chain.places)]


def ticked(places: list[tuple[int, int]]) -> str:
    """Return a line from the first place to the last with a slanting stroke at each."""
    (x0, y0), (x1, y1) = places[0], places[-1]
    strokes = "".join(
        f"M{number(x - TICK)} {number(y + TICK)}L{number(x + TICK)} {number(y - TICK)}" for x, y in places
    )
    return stroke(f"M{number(x0)} {number(y0)}L{number(x1)} {number(y1)}{strokes}")
