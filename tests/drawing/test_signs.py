"""The table of signs."""

from __future__ import annotations

import re

import pytest

from guide.drawing.shapes import Look
from guide.drawing.signs import DOUBLE, JOINT, SEAM_LEVEL, SEAM_UPRIGHT, SIGNS, Sign


def test_every_look_has_a_sign() -> None:
    assert set(SIGNS) == set(Look)


@pytest.mark.parametrize("sign", [*SIGNS.values(), DOUBLE, JOINT, SEAM_UPRIGHT, SEAM_LEVEL])
def test_every_sign_is_one_ascii_character_and_one_that_a_terminal_gives_one_cell(sign: Sign) -> None:
    assert re.fullmatch(r"[\x20-\x7e\u2500-\u259f]", sign.boxed)
    assert re.fullmatch(r"[\x20-\x7e]", sign.ascii)
