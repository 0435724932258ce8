"""The lengths of lumber that the person's yard has, out of all those that are sold.

Rules only, no guessing: what is no length on the list is said, and nothing is left out for it.
"""

from __future__ import annotations

import re

from guide.book.talk import load_talk
from guide.lengths import Length, inches
from guide.reference.stock import StockItem, load_stock

_ALL = ("", "all", "all of them", "the usual ones")


def read_yard(text: str) -> tuple[frozenset[str], tuple[str, ...]]:
    """Return the sizes of sticks that are named, and what names none; bare numbers are feet where no length is so short.

    None named is all of them.
    """
    if load_talk().folded(text) in _ALL:
        return frozenset(), ()
    found, unread = set(), []
    for chunk in (" ".join(each.split()) for each in re.split(r"[,;\n]|\band\b", text)):
        item = load_stock().item["stud_2x4"]
        chunk = re.sub(r"^2x[34] ?", "", chunk)
        size = item.size_named(chunk) or item.size_named(f"{chunk} ft")
        if size is not None:
            found.add(size)
        elif chunk.strip(" ."):
            unread.append(chunk)
    return frozenset(found), tuple(unread)


def yard_lengths(item: StockItem, text: str) -> list[Length]:
    """Return the lengths of a kind of lumber that the yard has, rising; all there are where it was said to have none."""
    named, _ = read_yard(text)
    lengths = {size: inches(length) for size, length in zip(item.sizes, item.lengths, strict=True)}
    return [length for size, length in lengths.items() if size in named] or list(lengths.values())
