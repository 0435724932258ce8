"""The README's main picture: the worked talk of a wall, played in the app, as an SVG. `python -m tests.picture` draws it anew."""

from __future__ import annotations

import asyncio
import re
from pathlib import Path

from guide.book.questions import load_book
from guide.rehearsal import Rehearsal
from guide.tui.app import make_app
from tests.tui.test_talk import settled

PICTURE = Path(__file__).parent.parent / "walkthroughs" / "talk.svg"
SIZE = (132, 40)
STOP_AT = "A.boxes"
"""The question at which the picture is taken: the wall is drawn, and the talk goes on."""


async def picture() -> str:
    """Play the worked talk of the crooked wall up to a question, and return the screen as SVG."""
    session = Rehearsal(load_book(), "crooked-wall")
    app = make_app(load_book(), session, Path())
    async with app.run_test(size=SIZE) as pilot:
        while session.current is not None and session.current.path != STOP_AT and session.worked_reply:
            await pilot.press("enter")
        await settled(pilot)
        return _plain(app.export_screenshot(title="wallbrief"))


def _plain(svg: str) -> str:
    """Return the SVG without what a viewer would fetch, and without who drew it: any font of equal widths will do."""
    return re.sub(r"@font-face \{.*?\}\s*", "", re.sub(r"<!--.*?-->\s*", "", svg), flags=re.DOTALL)


if __name__ == "__main__":
    PICTURE.write_text(asyncio.run(picture()), encoding="utf-8")
    print(f"drew {PICTURE.name}, {PICTURE.stat().st_size // 1024} kB")
