"""What is read from a tape reply, and what is asked back in one sentence."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from guide.lengths import (
    FOOT,
    INCH,
    SHY,
    Bare,
    Unreadable,
    as_written,
    from_mm,
    inches,
    read_length,
)
from tests.lengths.sizes import bares, tape

SPELLINGS = {
    "184 1/2": """
        15-4 1/2 | 15 - 4 1/2 | 15-4-1/2 | 15-4.5 | 15–4 ½ | 15-4½ | 15-4 1/2" | 15-4 1/2 in
        15'4.5" | 15' 4.5" | 15'4.5 | 15'4 1/2" | 15' 4 1/2" | 15' 4 1/2 | 15'-4 1/2" | 15' - 4 1/2" | 15' 4-1/2"
        15'-4-1/2" | 15’ 4½” | 15′ 4½″ | 15´ 4½'' | 15` 4 1/2'' | 15ʹ 4 1⁄2ʺ | 15' 4 ½" | 15', 4 1/2"
        15 ft 4 1/2 | 15 ft 4 1/2 in | 15ft 4 1/2in | 15ft4.5in | 15 ft. 4 1/2 in. | 15 feet 4 1/2 inches
        15 foot 4 1/2 | 15 feet, 4 1/2 inches | 15 feet and 4 1/2 inches | 15 FT 4 1/2 IN | 15 feet 4 and a half
        15 feet 4 and 1/2 inches | 184.5 | 184 1/2 | 184-1/2 | 184½ | 184 ½ | 184 1⁄2 | 184 1 / 2 | 184 2/4 | 184 32/64
        184.50 | 184.5 in | 184 1/2" | 184½″ | 184 1/2 inches | 184 and 1/2 | 184 & 1/2 | 184 + 1/2 | 184 1/2 in.
        184 and a half inches | 184 1/2 ins | 184 1/2. | １８４ 1/2 | 0184 1/2""",
    "92 5/8": """
        92 5/8 | 92-5/8 | 92 5/8 in | 92 5/8" | 92⅝ | 92 ⅝ | 92.625 | 92.625" | 7' 8 5/8" | 7-8 5/8 | 7'8⅝ | 7ft-8 5/8
        7 feet 8 5/8 inches | 92  5/8 | 92 10/16""",
    "144": """
        12 ft | 12' | 12 feet | 12 foot | 12 ft. | 12' 0" | 12-0 | 12 ft 0 in | 144 | 144 in | 144" | 144'' | 4 yd | 4 yards
        12.0 ft""",
    "66": "5 1/2 ft | 5½ feet | 5.5 ft | 5.5' | 5 ft 6 | 5'6 | 5-6 | 5 and a half feet",
    "3/4": '3/4 | ¾ | .75 | 0.75 | 3/4 in | 3/4" | 6/8 | 0 3/4 | 0-3/4',
    "72 3/4": "6' 3/4\" | 6'-3/4\" | 6'3/4'' | 6' 0 3/4 | 6-0 3/4 | 72 and three quarters",
    "0": "0 | 0 in | 0' | 0.0 | 00 | -0",
    "-2": '-2 | - 2 | −2 | ‑2 | –2 | minus 2 | -2 in | -2"',
    "-1/2": "-1/2 | -½ | minus 1/2 | -.5",
}


@pytest.mark.parametrize(
    ("text", "size"),
    [(text.strip(), size) for size, texts in SPELLINGS.items() for text in texts.replace("\n", "|").split("|") if text.strip()],
)  # fmt: skip
def test_a_size_may_be_spelled_in_any_usual_way(text: str, size: str) -> None:
    assert tape(text) == inches(size)
    assert not read_length(text, bare="in").about


METRIC = {
    3770: "3.77 m | 3770 mm | 377 cm | 3,77 m | 3 m 77 cm | 3 m 770 mm | 3 m and 77 cm | 3.770 metres | 377 centimeters | 37.7 dm",
    92: "92 mm | 92mm | 9.2 cm | 9,2 cm | 92 MM | 92 millimetres | 92 millimeters | 0.092 m",
}


@pytest.mark.parametrize("bare", ["in", "mm"])
@pytest.mark.parametrize(
    ("text", "mm"), [(text.strip(), mm) for mm, texts in METRIC.items() for text in texts.split("|")]
)
def test_a_metric_size_with_its_unit_is_read_on_either_side_of_the_tape(text: str, mm: int, bare: Bare) -> None:
    assert tape(text, bare) == from_mm(mm)


@pytest.mark.parametrize(
    ("text", "mm"), [("2337", 2337), ("2337.5", Fraction(4675, 2)), ("12,5", Fraction(25, 2)), ("0", 0), ("-3", -3)]
)
def test_a_bare_number_on_a_metric_tape_is_millimetres(text: str, mm: int) -> None:
    assert tape(text, "mm") == from_mm(mm)


@pytest.mark.parametrize("text", ["15' 4 1/2\"", "15 ft 4 1/2 in", "184 1/2 in", "184½″", '15-4 1/2"', "184.5 in"])
def test_inches_with_their_mark_are_read_on_a_metric_tape_too(text: str) -> None:
    assert tape(text, "mm") == inches("184 1/2")


@pytest.mark.parametrize(
    "text", ["184 1/2", "184½", "92-5/8", "1/2", "15-4 1/2", "3-7", "15-4", "1 200", "3,770", "3m77", "3 m 5"]
)
def test_what_only_an_inch_tape_or_nobody_would_write_is_asked_back_on_a_metric_tape(text: str) -> None:
    assert_asked_back(text, "mm")


@pytest.mark.parametrize(
    "text",
    """about 144 | ~144 | ≈144 | ~ 144 | around 144 | roughly 144 | approx. 144 | approx 144 | ca. 144 | circa 144
    maybe 144 | say 144 | nearly 144 | almost 144 | just about 144 | 144 or so | 144ish | 144-ish | 144 give or take
    144 roughly | 144 approx. | about 12 ft | about 12' or so | About 144"|144 in or thereabouts|~12'""".replace("\n", "|").split("|"),
)  # fmt: skip
def test_about_is_heard_and_the_size_is_not_taken_for_measured(text: str) -> None:
    reading = read_length(text, bare="in")
    assert reading.length == FOOT * 12
    assert reading.about


@pytest.mark.parametrize("word", ["shy", "scant", "light", "a hair shy", "just shy", "slightly shy", "a touch light"])
def test_shy_takes_a_thirty_second_off(word: str) -> None:
    """A thirty-second: common practice among carpenters, no paper stands behind it."""
    assert tape(f"184 1/2 {word}") == inches("184 15/32")
    assert tape(f"15' 4 1/2\" {word}") == inches("184 15/32")
    assert tape(f"-2 {word}") == inches("-1 31/32")


@pytest.mark.parametrize("word", ["strong", "heavy", "full", "a hair strong", "a bit heavy", "a little strong"])
def test_strong_adds_a_thirty_second(word: str) -> None:
    assert tape(f"92 5/8 {word}") == inches("92 21/32")


def test_shy_and_strong_are_half_a_millimetre_on_a_metric_tape() -> None:
    assert tape("2337 shy", "mm") == from_mm(Fraction(4673, 2))
    assert tape("3.77 m strong", "in") == from_mm(Fraction(7541, 2))
    assert tape("92 in shy", "mm") == inches("91 31/32")


def test_shy_and_strong_are_still_measured_and_about_is_heard_beside_them() -> None:
    assert not read_length("92 shy", bare="in").about
    assert read_length("about 92 shy", bare="in").about
    assert read_length("about 92 shy", bare="in").length == FOOT * 8 - INCH * 4 - SHY


def assert_asked_back(text: str, bare: Bare) -> None:
    """The reply gives one sentence with an example, and nothing else."""
    with pytest.raises(Unreadable) as caught:
        read_length(text, bare=bare)
    said = str(caught.value)
    assert said.endswith(".")
    assert "\n" not in said
    assert said.isprintable()
    assert len(said) <= 200
    assert any(char.isdigit() for char in said), "the sentence shows an example"


AMBIGUOUS = """
    15 4 1/2 | 15 4 | 7 8 | 1 200 mm | 1,200 | 3,770 mm | 12,5 | 91,92 | 91 1/4,92 | 12.5' 6" | 4.5 1/2 | 12'6.5 1/2
    151/2 | 1841/2 | 184 11/2 | 5 1/2' | 6' 1/2 | 6 ft 1/2 | 6 feet and 1/2 | 6 feet and a half | 92+ | 92- | 92? | 12x5 | 2x4
    3 m 77 | 3m77 | 1m20 | 10 in 1/2 | 12"6 | 12' 6' | 12" 6" | 91 or 92 | 91-92 | 90 to 92 | just shy of 92 | shy 92
    92 ft 92 | -15--4 | 3 ft 3 mm | 3 m 1500 mm
"""
IMPOSSIBLE = """
    5/3 | 5/12 | 9/8 | 8/8 | 0/8 | 1/0 | 92 0/8 | 1/128 | ⅓ | 12⅕ | 12'13" | 5'60 | 15-12 | 1 shy shy | 0 shy | 1/64 shy
    99999999 | 20000 ft | 4 km | 2 miles | 12 am | 12 pm | 2 hands | 2 kg | 2 s | 12 plus | 1e5 | 0x10 | 12 inchs | 12 f
    abc | none | ? | . | - | / | ' | " | ft | in | mm | about | ~ | shy | minus | 5.. | 1..2 | 1.2.3 | 1/2/3 | 1 2 3 | +2
    12 12 12 12 12 12 12 12 12 12 12 12 12 12 12 12 12 12 12 12 12 12 | 1² | ② | Ⅷ | inf | nan | __import__ | 12 ft mm
"""


@pytest.mark.parametrize(
    "text", ["", " ", "\t\n", *(t.strip() for t in f"{AMBIGUOUS}|{IMPOSSIBLE}".replace("\n", "|").split("|"))]
)
def test_what_is_ambiguous_or_impossible_gets_one_sentence_with_an_example(text: str) -> None:
    assert_asked_back(text, "in")


@given(st.text(max_size=80), bares)
def test_no_reply_of_any_characters_raises_anything_but_unreadable(text: str, bare: Bare) -> None:
    read_or_asked_back(text, bare)


PIECES = """0 1 15 4 184 92 5/8 1/2 11/2 0/0 9/8 . , - – ' " '' ’ ” ½ ⅝ ⅓ ft feet in inch m cm mm yd m. about ~ or so ish shy
    strong minus and a half at x / + \u00ad \u200b \x1b \x00 \n ٣ １""".split(" ")  # fmt: skip


@given(st.lists(st.sampled_from(PIECES), max_size=8).map(" ".join), bares)
def test_no_jumble_of_tape_words_raises_anything_but_unreadable(text: str, bare: Bare) -> None:
    read_or_asked_back(text, bare)


@given(st.lists(st.sampled_from(PIECES), max_size=8).map("".join), bares)
def test_no_jumble_without_spaces_raises_anything_but_unreadable(text: str, bare: Bare) -> None:
    read_or_asked_back(text, bare)


def read_or_asked_back(text: str, bare: Bare) -> None:
    """Whatever is understood survives being written and read again; all else gets its one sentence."""
    try:
        reading = read_length(text, bare=bare)
    except Unreadable:
        assert_asked_back(text, bare)
    else:
        assert tape(as_written(reading.length), bare) == reading.length
        assert reading.length.rests == frozenset()


def test_a_terminal_escape_in_a_reply_never_comes_back_in_the_sentence() -> None:
    with pytest.raises(Unreadable, match=r"“\[31mred”"):
        tape("\x1b[31mred\x07")


def test_a_figure_in_data_is_read_strictly() -> None:
    assert inches("16 ft") == FOOT * 16
    with pytest.raises(ValueError, match="without “about”"):
        inches("about 2")
    with pytest.raises(Unreadable, match="could be feet and inches"):
        inches("15 4")
