"""The wall beside the talk: pieces are pointed at by keys and by mouse, decisions overruled there, and changes marked."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

from textual.widgets import OptionList, Static

from guide.book.questions import load_book
from guide.interview.jobfile import Job
from guide.session import Session
from guide.tui.app import Wallbrief, make_app
from guide.tui.asides import Aside
from guide.tui.talk import Talk
from guide.tui.wall import WallPane
from tests.tui.test_talk import drawn, said, say, session_of, settled
from tests.walkthroughs import worked


def app_on(job: str = "four-walls") -> tuple[Wallbrief, Session]:
    """Return the app on a worked job."""
    session = Session(load_book(), Job(worked(job).answers))
    return make_app(load_book(), session, Path()), session


def line(app: Wallbrief, name: str) -> str:
    """Return a line of the pane."""
    return str(app.screen.query_one(WallPane).query_one(name, Static).render())


async def test_keys_walk_from_piece_to_piece_and_enter_tells_all() -> None:
    """F4 and arrows point at pieces, each named under the drawing; Enter tells all of it, and Escape leads back to the talk."""
    app, session = app_on()
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("f4")
        await settled(pilot)
        assert "Arrows" in line(app, "#piece")
        seen = []
        for _ in range(8):
            await pilot.press("right")
            await pilot.pause()
            seen.append(line(app, "#piece").partition(":")[0])
        assert {"D1", "DF1"} <= set(seen)
        assert all(one != other for one, other in pairwise(seen))
        await pilot.press("left", "enter")
        await pilot.pause()
        assert isinstance(app.screen, Aside)
        told = "\n".join(str(each.render()) for each in app.screen.query(Static))
        assert seen[-2] in told
        assert "Its size rests on" in told or "Its place rests on" in told
        await pilot.press("escape", "escape")
        await pilot.pause()
        assert isinstance(app.screen, Talk)
        assert app.focused is app.screen.query_one("#reply")
        assert session.answers == worked("four-walls").answers


async def test_a_click_points_and_a_second_click_tells() -> None:
    """A click on the drawing names the piece under it; the same click again opens all there is to tell."""
    app, _ = app_on()
    async with app.run_test(size=(120, 40)) as pilot:
        await settled(pilot)
        pane = app.screen.query_one(WallPane)
        assert pane._drawn is not None
        column, row = pane._drawn.cells("D.stud.3")[2]
        await pilot.click("#drawing", offset=(column, row))
        await pilot.pause()
        assert line(app, "#piece").startswith("D3: stud")
        await pilot.click("#drawing", offset=(column, row))
        await pilot.pause()
        assert isinstance(app.screen, Aside)


async def test_a_decision_is_overruled_where_it_is_told() -> None:
    """What is told of a stud offers the question that holds the choice; picking it asks it, and the answer stands in the job."""
    app, session = app_on()
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("f4")
        await settled(pilot)
        app.screen.query_one(WallPane).post_message(WallPane.Pointed("D.stud.3", chosen=True))
        await pilot.pause()
        first = app.screen.query_one("#do", OptionList).get_option_at_index(0)
        assert first.id == "change where the stud layout starts of wall D"
        await pilot.press("1")
        await pilot.pause()
        assert isinstance(app.screen, Talk)
        assert app.screen.query_one("#talk").display
        assert session.current is not None
        assert session.current.path == "D.layout_from"
        zero = session.layout.by_letter["D"].zero_side
        await say(pilot, "right" if zero == "left" else "left")
        assert session.layout.by_letter["D"].zero_side != zero


async def test_what_the_last_answer_changed_is_said_and_starred() -> None:
    """A box round a pipe that was between studs: the pane counts the pieces that are others now, and a star stands under them."""
    app, session = app_on()
    async with app.run_test(size=(120, 40)) as pilot:
        session.change("B.pipe1.way")
        await say(pilot, "box")
        await pilot.press("f4", "b")
        await pilot.pause()
        assert "chase post 2 of 2" in line(app, "#changed")
        stars = next(text for text in drawn(app).splitlines() if text.lstrip().startswith("* "))
        assert stars.count("*") > 1
        await pilot.press("escape")
        session.change("basement.radon")
        await say(pilot, "low")
        await pilot.pause()
        assert not app.screen.query_one("#changed").display
        assert not any(text.lstrip().startswith("* ") for text in drawn(app).splitlines())


async def test_any_wall_is_a_key_away_and_space_goes_round_the_views() -> None:
    """In the pane a letter shows that wall, and space the section, the floor plan and the elevation again."""
    app, _ = app_on()
    async with app.run_test(size=(120, 40)) as pilot:
        await settled(pilot)
        await pilot.press("f4", "a")
        await pilot.pause()
        assert "Wall A (garden wall), seen from the room" in drawn(app)
        await pilot.press("space")
        await pilot.pause()
        assert "cut through" in drawn(app)
        await pilot.press("space")
        await pilot.pause()
        assert "from above" in drawn(app)
        await pilot.press("space")
        await pilot.pause()
        assert "seen from the room" in drawn(app)


async def test_nothing_drawn_can_be_pointed_at_before_there_is_a_wall() -> None:
    """Arrows, Enter and letters in an empty pane do nothing, and the talk goes on."""
    session = session_of(without="A.")
    app = make_app(load_book(), session, Path())
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press("f4", "right", "enter", "a", "space", "escape")
        await pilot.pause()
        assert isinstance(app.screen, Talk)
        await say(pilot, "196 at floor")
        assert "length" in said(app)
