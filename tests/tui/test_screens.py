"""Where everything stands at the three sizes: a plan of the screen for each, read and kept here, and a drawing that fits in its pane."""

from __future__ import annotations

from itertools import combinations
from pathlib import Path

import pytest
from textual.widgets import Static

from guide.book.questions import load_book
from guide.tui.app import make_app
from guide.tui.wall import WallPane
from tests.tui.test_talk import drawn, session_of, settled

# A question of four choices, talk and wall side by side where there is room: column, row, wide, high. Read on the screen.
PLANS = {
    (80, 24): "strip 0 0 80 1, conversation 0 1 80 15, choices 0 16 80 4, reply 0 20 80 3",
    (120, 40): "strip 0 0 120 1, conversation 0 1 60 31, choices 0 32 60 4, reply 0 36 60 3, wall 60 1 60 38",
    (200, 60): "strip 0 0 200 1, conversation 0 1 100 51, choices 0 52 100 4, reply 0 56 100 3, wall 100 1 100 58",
}


@pytest.mark.parametrize("size", PLANS)
async def test_everything_has_its_place_and_the_whole_drawing_fits_across_its_pane(size: tuple[int, int]) -> None:
    """The plan of the screen is the one that was read; nothing lies over anything, and no line of the drawing is cut off."""
    app = make_app(load_book(), session_of(without="A.left"), Path())
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        places = {
            name: app.screen.query_one(f"#{name}").region
            for name in ("strip", "conversation", "choices", "reply", "wall")
            if app.screen.query_one(f"#{name}").region.area
        }
        assert ", ".join(f"{name} {r.x} {r.y} {r.width} {r.height}" for name, r in places.items()) == PLANS[size]
        assert not any(one.overlaps(other) for one, other in combinations(places.values(), 2))
        if "wall" not in places:
            await pilot.press("f4")
        await settled(pilot)
        pane = app.screen.query_one(WallPane)
        shown = pane.query_one("#drawing", Static).region
        assert shown.x >= pane.scrollable_content_region.x
        assert max(map(len, drawn(app).splitlines())) <= pane.scrollable_content_region.width
