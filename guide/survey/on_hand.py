"""What is at home already: the person's list read against the names of what is sold, so that it comes off what is bought.

Rules only, no guessing: what names nothing on the list, or a stick without its length, is said and comes off nothing.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping

from guide.book.talk import load_talk
from guide.lengths import ZERO, Length, Unreadable, exact_inches, inches
from guide.reference.figures import load_figures
from guide.reference.stock import Fastener, StockItem, load_fasteners, load_stock

NOTHING = ("", "none", "no", "nothing", "nothing yet")
MOST = 9999

OFFCUT = "offcut"
"""A part of a sheet or a stick, named by its material and its size: `foam offcut 30 x 60`, `2x4 offcut 57`."""

_LITTLE = frozenset({"of", "the", "some", "whole", "unopened", "new", "about", "sheet", "stick"})


def read_on_hand(text: str) -> tuple[Mapping[str, int], tuple[str, ...]]:
    """Return how many of each ware are at home, and what could not be read.

    Fasteners count singly, whether the person said screws or boxes; everything else by the unit it is sold in.
    """
    found: Counter[str] = Counter()
    unread = []
    if load_talk().folded(text) not in NOTHING:
        for chunk in re.split(r"[,;\n]|\band\b", text):
            if chunk.strip(" ."):
                ware = _ware(chunk)
                if ware is None:
                    unread.append(" ".join(chunk.split()))
                else:
                    found[ware[0]] += ware[1]
    return found, tuple(unread)


def said_as(ware: str, count: int) -> str:
    """Return how so many of a ware are said, for `read_on_hand` to read back: fasteners singly."""
    key, _, size = ware.partition(" ")
    sold = load_fasteners().fastener.get(key) or load_stock().item[key]
    return f"{count} {sold.words[0]} {size}".rstrip()


def offcuts_of(on_hand: Mapping[str, int], key: str) -> tuple[tuple[Length, Length], ...]:
    """Return width and length of every offcut of a sheet material among what is at home, the largest first."""
    found = []
    for ware, count in on_hand.items():
        if ware.startswith(f"{key} {OFFCUT} "):
            wide, _, tall = ware.removeprefix(f"{key} {OFFCUT} ").partition(" x ")
            found += [(inches(wide), inches(tall))] * count
    return tuple(sorted(found, key=lambda size: (-size[0].ticks * size[1].ticks, size)))


def stick_offcuts_of(on_hand: Mapping[str, int], key: str) -> dict[Length, int]:
    """Return how many offcuts of a stick are among what is at home, by their length."""
    head = f"{key} {OFFCUT} "
    return {inches(ware.removeprefix(head)): count for ware, count in on_hand.items() if ware.startswith(head)}


def _stick_offcut(words: str) -> str | None:
    """Return the ware that an offcut of a stick is kept under, or None."""
    said = re.fullmatch(
        rf"(?P<before>[a-z0-9 ]*?) ?\b{OFFCUT}\b ?(?P<long>[\d /.]+?) ?(?P<unit>in|ft)?",
        words,
    )
    keys = [key for key, item in load_stock().item.items() if item.lengths and said and said["before"] in item.words]
    if said is None or len(keys) != 1:
        return None
    try:
        long = inches(f"{said['long']} {said['unit'] or 'in'}")
    except Unreadable:
        return None
    longest = inches(load_stock().item[keys[0]].lengths[-1])
    return f"{keys[0]} {OFFCUT} {exact_inches(long)}" if ZERO < long <= longest else None


def _offcut(words: str) -> str | None:
    """Return the ware that an offcut of a sheet is kept under, its width across the grain first, or None."""
    said = re.fullmatch(
        rf"(?P<before>[a-z ]*?) ?\b{OFFCUT}\b ?(?P<behind>[a-z ]*?) ?(?P<wide>[\d /.]+) ?x ?(?P<tall>[\d /.]+)(?: in)?",
        words,
    )
    if said is None:
        return None
    named = f"{said['before']} {said['behind']}".strip()
    keys = [key for key, item in load_stock().item.items() if item.sheets and named in item.words]
    try:
        sizes = inches(said["wide"]), inches(said["tall"])
    except Unreadable:
        return None
    if len(keys) != 1 or not all(ZERO < size <= load_figures().sheet_long for size in sizes):
        return None
    return f"{keys[0]} {OFFCUT} {exact_inches(sizes[0])} x {exact_inches(sizes[1])}"


def _ware(chunk: str) -> tuple[str, int] | None:
    """Return what one entry of the list names, and how many."""
    first, _, rest = load_talk().folded(chunk).partition(" ")
    count = int(first) if first.isdecimal() and len(first) <= len(str(MOST)) else load_talk().counts.get(first)
    words = _plain(rest if count is not None else f"{first} {rest}")
    if count == 0 or (count is None and first[:1].isdecimal() and first not in words):
        return None
    if (offcut := _offcut(words) or _stick_offcut(words)) is not None:
        return offcut, 1 if count is None else count
    named = {(key, size): scale for key, size, scale in _named(words)}
    if len(named) != 1:
        return None
    ((key, size), scale), *_ = named.items()
    return f"{key} {size}".strip(), (1 if count is None else count) * scale


def _named(words: str) -> Iterator[tuple[str, str, int]]:
    """Yield everything on sale that these words name: its key, its size, and how many are meant by one."""
    for key, fastener in load_fasteners().fastener.items():
        if words in fastener.words:
            yield key, "", 1
        elif _boxed(words, fastener) in fastener.words:
            yield key, "", fastener.per_unit
    for key, item in load_stock().item.items():
        if not item.sizes:
            if words in item.words:
                yield key, "", 1
        else:
            yield from ((key, size, 1) for size in _sizes(words, item))


def _sizes(words: str, item: StockItem) -> Iterator[str]:
    """Yield the size that is said before or behind the name; the longest name that fits is the one meant."""
    for name in sorted(item.words, key=lambda name: (-len(name), name)):
        for label in (words.removeprefix(f"{name} "), words.removesuffix(f" {name}")):
            size = item.size_named(label) if label != words else None
            if size is not None:
                yield size
                return


def _boxed(words: str, fastener: Fastener) -> str:
    """Return what is in the box, for words that begin with the unit a fastener is sold in."""
    unit = _plain(fastener.unit.split()[0])
    first, _, rest = words.partition(" ")
    return rest if first in (unit, "box" if unit != "lb" else "pound") else ""


def _plain(words: str) -> str:
    """Return words as the names are written: small, in the singular, without what says nothing."""
    return " ".join(_singular(word) for word in words.split() if word not in _LITTLE)


def _singular(word: str) -> str:
    if word.endswith(("sses", "xes", "ches", "shes")):
        return word[:-2]
    return word[:-1] if len(word) > 2 and word.endswith("s") and not word.endswith("ss") else word
