"""Price files: whole cents out of what a person writes, and one clear sentence for everything else."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from guide.reference.prices import PriceFileError, blank_prices, invented_prices, prices_from, read_prices
from guide.reference.stock import wares

GOOD = """
about = "the yard by the river"
sign = "€"
[price]
adhesive = 8.98
can_foam = 7
[price.stud_2x4]
"92 5/8" = 3.49
"8 ft" = 3.29
"120 in" = 4.10
[price.foam]
"4x8" = 31.5
"2 by 8 ft" = 16.25
"""


def test_prices_are_whole_cents_by_ware() -> None:
    """Decimals come out exact, whatever a float would make of them; sizes may be written as people write them."""
    prices = prices_from(GOOD)

    assert dict(prices.cents) == {
        "adhesive": 898, "can_foam": 700, "stud_2x4 92 5/8 in": 349, "stud_2x4 8 ft": 329, "stud_2x4 10 ft": 410,
        "foam 4 by 8 ft": 3150, "foam 2 by 8 ft": 1625,
    }  # fmt: skip
    assert (prices.about, prices.money(123_456)) == ("the yard by the river", "€1,234.56")
    assert prices.of("gasket") is None


BAD = {
    "adhesive = 0": ("price.adhesive", "0", "more than 0"),
    "adhesive = -3.20": ("price.adhesive", "-3.20", "more than 0"),
    "adhesive = 8.985": ("price.adhesive", "8.985", "two decimals"),
    'adhesive = "$8.98"': ("price.adhesive", "$8.98", "without quotes"),
    "adhesive = true": ("price.adhesive", "True", "8.98"),
    "adhesive = nan": ("price.adhesive", "NaN", "more than 0"),
    "adhesive = inf": ("price.adhesive", "Infinity", "more than 0"),
    "adhesive = 898000000": ("price.adhesive", "898000000", "more than any one thing"),
    "adhesiv = 8.98": ("price.adhesiv", "adhesive"),
    "sandwich = 8.98": ("price.sandwich", "wallbrief prices"),
    "stud_2x4 = 3.29": ("price.stud_2x4", "several sizes", '"92 5/8 in"'),
    'stud_2x4 = { "9 ft" = 3.29 }': ("price.stud_2x4", "9 ft", "8 ft"),
    'stud_2x4 = { "a long one" = 3.29 }': ("a long one", "92 5/8 in"),
    'stud_2x4 = { "8 ft" = 3.29, "96" = 3.30 }': ("price.stud_2x4", "8 ft", "twice"),
    'foam = { "5x8" = 30 }': ("price.foam", "5x8", "4 by 8 ft"),
    "adhesive = ": ("not TOML", "line 2"),
    "adhesive = 1\nadhesive = 2": ("not TOML", "line 3"),
}


@pytest.mark.parametrize("line", BAD)
def test_a_line_that_is_not_right_is_one_sentence_with_place_and_remedy(line: str) -> None:
    """The entry, what was read, and what would be right; nothing is ever taken for 0."""
    with pytest.raises(PriceFileError) as caught:
        prices_from(f"[price]\n{line}\n")

    said = str(caught.value)
    assert all(each in said for each in BAD[line]), said
    assert "\n" not in said
    assert said.endswith((".", "?"))


@pytest.mark.parametrize(
    ("text", "said"),
    [("pirce = 3", "pirce"), ("price = 3", "[price]"), ("sign = 3", "sign"), ('about = "a\\nb"', "about")],
)
def test_what_stands_outside_the_prices_is_checked_too(text: str, said: str) -> None:
    """A misspelt table is not silently a file without prices."""
    with pytest.raises(PriceFileError, match=said.replace("[", r"\[")):
        prices_from(text)


def test_a_file_that_is_no_text_is_named(tmp_path: Path) -> None:
    """The sentence begins with the file."""
    path = tmp_path / "prices.toml"
    path.write_bytes(b"\xff\xfe\x00")
    with pytest.raises(PriceFileError, match=r"prices\.toml: byte 0 is not UTF-8"):
        read_prices(path)
    path.write_bytes(b"#" * 300_000)
    with pytest.raises(PriceFileError, match="300,000 bytes"):
        read_prices(path)


def test_the_prices_that_ship_are_invented_say_so_and_cover_everything() -> None:
    """Nobody takes them for a shop's: the words about them are printed with every sum."""
    prices = invented_prices()

    assert "invented" in prices.about
    assert set(prices.cents) == set(wares())


def test_the_blank_file_is_toml_and_takes_every_price_once_its_marks_are_gone() -> None:
    """As it is printed it holds no price; with the mark before each line taken away and a price written in, all of them."""
    blank = blank_prices(wares())
    filled = "\n".join(
        line.removeprefix("# ") + " 1.25" if line.startswith("# ") and line.endswith("=") else line
        for line in blank.splitlines()
    )

    assert prices_from(blank).cents == {}
    assert tomllib.loads(blank)
    assert prices_from(filled).cents == dict.fromkeys(wares(), 125)
