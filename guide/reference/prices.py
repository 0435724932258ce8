"""Prices: the person's own, out of a file they write at the yard, in whole cents.

The file is TOML. `about` says where and when, `sign` is the money's sign, and under `price` stands what one unit costs;
a thing sold in several sizes has a table of them::

    about = "the yard by the river, in May"
    sign = "$"

    [price]
    adhesive = 8.98

    [price.stud_2x4]
    "92 5/8 in" = 3.49
    "8 ft" = 3.29

A price that is not in the file is not known, and its place on the list stays blank. Everything else that is not right is
one sentence: where, what was read, what would be right. Money is read as decimals, never as a float.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from difflib import get_close_matches
from functools import lru_cache
from importlib.resources import files
from os.path import expanduser
from pathlib import Path
from typing import Any

from guide.book.talk import load_talk
from guide.reference.data import DataError
from guide.reference.stock import load_fasteners, load_stock, wares

LARGEST = 200_000
"""Bytes; a price file is a page or two."""

MOST_CENTS = 10_000_000
"""A single thing that costs more is a slip of the decimal point."""

LONGEST_SIGN, LONGEST_ABOUT = 4, 200


class PriceFileError(DataError):
    """A price file that cannot be used; the message is one sentence with the place in the file."""


@dataclass(frozen=True)
class Prices:
    """What one unit of each ware costs, where that is known."""

    cents: Mapping[str, int] = field(default_factory=dict)
    """Whole cents by the name of the ware, more than 0."""
    sign: str = "$"
    about: str = ""
    """Where the prices come from, in the person's own words."""

    def of(self, ware: str) -> int | None:
        """Return the price of one unit in cents, or None when it is not known."""
        return self.cents.get(ware)

    def money(self, cents: int) -> str:
        """Print an amount of money: `$1,234.50`."""
        return f"{self.sign}{cents // 100:,}.{cents % 100:02}"


NO_PRICES = Prices()


@lru_cache(maxsize=1)
def invented_prices() -> Prices:
    """Return the prices that ship for the worked jobs: invented ones, and they say so. Raises PriceFileError."""
    return prices_from((files("prompts_data") / "prices" / "invented.toml").read_text(encoding="utf-8"))


def read_prices(path: Path) -> Prices:
    """Read a price file. Raises PriceFileError with one sentence naming the file, OSError when it cannot be opened."""
    raw = path.read_bytes()
    if len(raw) > LARGEST:
        raise PriceFileError(f"{path}: this is {len(raw):,} bytes; a price file is never over {LARGEST:,}.")
    try:
        return prices_from(raw.decode("utf-8-sig"))
    except UnicodeDecodeError as error:
        raise PriceFileError(f"{path}: byte {error.start} is not UTF-8 text; a price file is TOML text.") from error
    except PriceFileError as error:
        raise PriceFileError(f"{path}: {error}") from error


def prices_beside(said: str, folder: Path) -> Prices:
    """Read the price file that a person named; a name without a folder is looked for in `folder`, where the job is.

    None named is none known. Raises PriceFileError with one sentence for whatever else cannot be read.
    """
    if load_talk().folded(said) in ("", "none", "no", "nothing"):
        return NO_PRICES
    path = folder / expanduser(said.strip(" \"'“”"))
    try:
        if path.is_file():
            return read_prices(path)
    except OSError as error:
        raise PriceFileError(f"{path}: the price file cannot be read ({error.strerror or error}).") from error
    raise PriceFileError(
        f"{path}: I read this as the name of your price file, and there is no such file; "
        "say the name of one beside the job file, such as prices.toml, or none."
    )


def prices_from(text: str) -> Prices:
    """Read prices from TOML text. Raises PriceFileError with one sentence naming the place."""
    try:
        tree = tomllib.loads(text, parse_float=Decimal)
    except tomllib.TOMLDecodeError as error:
        raise PriceFileError(f"this is not TOML ({error}); a price is a line like: adhesive = 8.98.") from error
    except RecursionError as error:
        raise PriceFileError("this is nested far deeper than any price file.") from error
    for key in tree:
        if key not in ("about", "sign", "price"):
            raise PriceFileError(f"“{_short(key)}” is nothing I know here; a price stands under [price].")
    table = tree.get("price", {})
    if not isinstance(table, dict):
        raise PriceFileError(f"price: I read {_quoted(table)}; it is a table, so write [price] on a line of its own.")
    cents = dict(price for key, value in table.items() for price in _prices_of(key, value))
    return Prices(cents, _text(tree, "sign", LONGEST_SIGN, "$"), _text(tree, "about", LONGEST_ABOUT, ""))


def _prices_of(key: str, value: Any) -> Iterator[tuple[str, int]]:
    """Yield the ware, or the wares of every size, that an entry gives a price for."""
    items = load_stock().item
    if key not in items and key not in load_fasteners().fastener:
        names = [*items, *load_fasteners().fastener]
        near = get_close_matches(key, names, 1)
        hint = f"did you mean {near[0]}?" if near else "wallbrief prices prints every name."
        raise PriceFileError(f"price.{_short(key)}: nothing on the list has that name; {hint}")
    sizes = items[key].sizes if key in items else ()
    if not sizes:
        yield key, _cents(value, f"price.{key}")
    elif not isinstance(value, dict):
        raise PriceFileError(
            f"price.{key}: it is sold in several sizes; write [price.{key}] and under it a line like: "
            f'"{sizes[0]}" = 4.98.'
        )
    else:
        found: dict[str, int] = {}
        for label, price in value.items():
            size = items[key].size_named(label)
            if size is None:
                raise PriceFileError(f"price.{key}: “{_short(label)}” is no size I list; I know {', '.join(sizes)}.")
            if size in found:
                raise PriceFileError(f"price.{key}: {size} stands there twice; keep one of them.")
            found[size] = _cents(price, f"price.{key}.“{_short(label)}”")
        yield from ((f"{key} {size}", price) for size, price in found.items())


def _cents(value: Any, where: str) -> int:
    """Return a price in whole cents."""
    right = "a price is more than 0 with two decimals at most, such as 8.98"
    if isinstance(value, bool) or not isinstance(value, int | Decimal):
        raise PriceFileError(f"{where}: I read {_quoted(value)}; {right}, without quotes or a sign.")
    cents = Decimal(value) * 100 if Decimal(value).is_finite() else Decimal(0)
    if cents <= 0:
        raise PriceFileError(f"{where}: I read {value}; {right}. Leave the line out while you do not know it.")
    if cents != int(cents):
        raise PriceFileError(f"{where}: I read {value}; {right}.")
    if cents > MOST_CENTS:
        raise PriceFileError(f"{where}: I read {value}; that is more than any one thing on the list costs.")
    return int(cents)


def _text(tree: Mapping[str, Any], key: str, longest: int, usual: str) -> str:
    value = tree.get(key, usual)
    if not isinstance(value, str) or len(value) > longest or not value.isprintable():
        raise PriceFileError(f"{key}: I read {_quoted(value)}; it is a text of {longest} characters at most.")
    return value


def _quoted(value: Any) -> str:
    return f"“{_short(str(value))}”"


def _short(text: str) -> str:
    shown = "".join(char if char.isprintable() else " " for char in text)
    return shown if len(shown) <= 40 else f"{shown[:39]}…"


def blank_prices(names: Iterable[str]) -> str:
    """Return a price file of these wares to be filled in: a line for each, with a mark before it to take away."""
    said, stock = wares(), load_stock().item
    plain, sized = [], []
    for ware in names:
        key, _, size = ware.partition(" ")
        if not size:
            plain += [f"# {said[ware]}", f"# {ware} ="]
        else:
            head = f"[price.{key}]"
            sized += ([] if head in sized else ["", head, f"# {stock[key].name} ({stock[key].unit})"]) + [
                f'# "{size}" ='
            ]
    return "\n".join([*_BLANK, *plain, *sized]) + "\n"


_BLANK = (
    "# Prices for wallbrief. Write the price of one unit behind its = sign, such as 8.98, and take away the # before",
    "# that line. Leave the others as they are: their place on the list stays blank.",
    'about = ""',
    'sign = "$"',
    "",
    "[price]",
)
