"""Everything a person does with an open job, at the three sizes: a table of flows, each begun and ended in the answer box.

One run of the app on a copy of the worked room carries all of them, one after the other; what fails names its flow.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from pathlib import Path

import pytest
from textual import events
from textual.pilot import Pilot
from textual.widgets import Input, OptionList, Static

from guide.book.questions import load_book
from guide.interview.asking import Asked
from guide.interview.jobfile import Job, load
from guide.interview.walls import wall_names
from guide.session import Session
from guide.tui.app import Wallbrief, make_app
from guide.tui.asides import Aside, Picker
from guide.tui.panels import Conversation, Strip
from guide.tui.start import Start
from guide.tui.talk import Talk
from tests.interview.hearing import PLACES
from tests.tui.test_talk import said, say
from tests.walkthroughs import worked

SIZES = [(80, 24), (120, 40), (200, 60)]


def session_on(pilot: Pilot[None]) -> Session:
    """Return the session that is open."""
    app = pilot.app
    assert isinstance(app, Wallbrief)
    assert app.session is not None
    return app.session


def walls(pilot: Pilot[None]) -> list[str]:
    """Return what the walls are called, in their order."""
    return list(wall_names(session_on(pilot).answers))


async def pick(pilot: Pilot[None], key: str, part: str) -> None:
    """Open a list by its key, type part of what is wanted, and take the one left."""
    await pilot.press(key)
    await pilot.pause()
    assert isinstance(pilot.app.screen, Picker)
    pilot.app.screen.query_one(Input).value = part
    await pilot.pause()
    await pilot.press("enter")
    await pilot.pause()


async def an_answer_is_found_and_given_anew(pilot: Pilot[None]) -> None:
    await pick(pilot, "f3", "laundry bare shelf")
    assert session_on(pilot).current.path == "D.shelf"  # type: ignore[union-attr]
    await say(pilot, "3")
    assert session_on(pilot).layout.by_letter["D"].wall.shelf.inch == 3


async def an_answer_is_corrected(pilot: Pilot[None]) -> None:
    await say(pilot, "no, 2 3/4")
    assert str(session_on(pilot).layout.by_letter["D"].wall.shelf.inch) == "11/4"


async def answers_are_undone_and_redone(pilot: Pilot[None]) -> None:
    for key, inch in (("ctrl+z", "3"), ("ctrl+y", "11/4"), ("ctrl+z", "3")):
        await pilot.press(key)
        await pilot.pause()
        assert str(session_on(pilot).layout.by_letter["D"].wall.shelf.inch) == inch


async def what_is_pasted_is_one_reply(pilot: Pilot[None]) -> None:
    box = pilot.app.screen.query_one("#reply", Input)
    box.post_message(events.Paste("find laundry shelf\nand more"))
    await pilot.pause()
    assert box.value == "find laundry shelf"
    await pilot.press("enter")
    await pilot.pause()
    await say(pilot, "2 1/2")
    assert str(session_on(pilot).layout.by_letter["D"].wall.shelf.inch) == "5/2"


async def the_screen_changes_its_size_within_a_word(pilot: Pilot[None]) -> None:
    size = pilot.app.size
    await pilot.press(*"fi")
    for other in (*SIZES, (50, 15), size):
        await pilot.resize_terminal(*other)
    await pilot.press(*"nd ")
    box = pilot.app.screen.query_one("#reply", Input)
    assert box.value == "find "
    box.clear()


async def a_piece_is_pointed_at_and_told(pilot: Pilot[None]) -> None:
    await pilot.press("f4", "d", "right", "right", "enter")
    await pilot.pause()
    assert isinstance(pilot.app.screen, Aside)
    assert any("rests on" in str(line.render()) for line in pilot.app.screen.query(Static))
    await pilot.press("escape")


async def a_decision_is_overruled(pilot: Pilot[None]) -> None:
    zero = session_on(pilot).layout.by_letter["D"].zero_side
    await pilot.press("f4", "d", "right", "right", "right", "enter")
    await pilot.pause()
    decides = pilot.app.screen.query_one("#do", OptionList)
    at = decides.get_option_index("change where the stud layout starts of wall D")
    await pilot.press(str(at + 1))
    await pilot.pause()
    await say(pilot, "right" if zero == "left" else "left")
    assert session_on(pilot).layout.by_letter["D"].zero_side != zero


async def any_wall_is_gone_to(pilot: Pilot[None]) -> None:
    await say(pilot, "go to wall B")
    assert session_on(pilot).current.path.startswith("B.")  # type: ignore[union-attr]
    await say(pilot, "keep")


async def the_palette_copies_a_wall(pilot: Pilot[None]) -> None:
    await pick(pilot, "f6", "copy wall a")
    assert len(walls(pilot)) == 5
    await say(pilot, "undo")
    assert len(walls(pilot)) == 4


async def walls_are_mirrored_moved_put_in_and_taken_out(pilot: Pilot[None]) -> None:
    before = walls(pilot)
    a, b, c, d = before
    for typed, after in (
        ("mirror wall B", before),
        ("move wall C before wall B", [a, c, b, d]),
        ("insert a wall after wall A", [a, "", b, c, d]),
        ("delete wall D", [a, b, c]),
    ):
        await say(pilot, typed)
        names = walls(pilot)
        assert len(names) == len(after), typed
        assert all(name == wanted for name, wanted in zip(names, after, strict=True) if wanted), typed
        assert session_on(pilot).layout.walls, typed
        await say(pilot, "undo")
        assert walls(pilot) == before, typed


async def a_drawing_in_the_talk_is_unbroken_and_what_was_said_is_read_again(pilot: Pilot[None]) -> None:
    talk = pilot.app.screen.query_one(Conversation)
    for typed in ("draw wall A", "section", "floor plan"):
        before = set(talk.children)
        await say(pilot, typed)
        drawn = [line for line in talk.query(".said") if line not in before]
        assert max(line.region.height for line in drawn) == 1, typed
    bottom = talk.scroll_y
    await pilot.press("pageup")
    await pilot.pause()
    assert talk.scroll_y < bottom
    await say(pilot, "status")
    assert talk.scroll_y == talk.max_scroll_y


async def a_warning_is_signed_off(pilot: Pilot[None]) -> None:
    await say(pilot, "sign off A.old_boxes because the electrician comes on Tuesday")
    assert [each.because for each in session_on(pilot).job.signed] == ["the electrician comes on Tuesday"]
    assert "Signed off: A.old_boxes" in said(pilot.app)  # type: ignore[arg-type]


async def help_is_read_and_left(pilot: Pilot[None]) -> None:
    await pilot.press("f1")
    await pilot.pause()
    assert isinstance(pilot.app.screen, Aside)
    await pilot.press("f1")


FLOWS: tuple[Callable[[Pilot[None]], Awaitable[None]], ...] = (
    an_answer_is_found_and_given_anew,
    an_answer_is_corrected,
    answers_are_undone_and_redone,
    what_is_pasted_is_one_reply,
    the_screen_changes_its_size_within_a_word,
    a_piece_is_pointed_at_and_told,
    a_decision_is_overruled,
    any_wall_is_gone_to,
    the_palette_copies_a_wall,
    walls_are_mirrored_moved_put_in_and_taken_out,
    a_drawing_in_the_talk_is_unbroken_and_what_was_said_is_read_again,
    a_warning_is_signed_off,
    help_is_read_and_left,
)


@pytest.mark.parametrize("size", SIZES)
async def test_every_flow_goes_at_every_size(size: tuple[int, int], tmp_path: Path) -> None:
    """From the start screen a copy of the worked room is practised on; each flow does its work, and Escape leads home."""

    app = make_app(load_book(), None, tmp_path)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert isinstance(app.screen, Start)
        jobs = app.screen.query_one("#jobs", OptionList)
        await pilot.press(*["down"] * jobs.get_option_index("worked:four-walls"), "enter")
        await pilot.pause()
        for flow in FLOWS:
            await flow(pilot)
            await pilot.press("escape")
            await pilot.pause()
            assert isinstance(app.screen, Talk), flow.__name__
            assert app.focused is app.screen.query_one("#reply"), flow.__name__
            assert app.screen.query_one("#talk").display, flow.__name__
            assert session_on(pilot).current is None, flow.__name__
            newest = app.screen.query_one(Conversation).query(Static).last()
            assert app.screen.query_one(Conversation).region.contains_region(newest.region), flow.__name__
    session = session_on(pilot)
    assert session.path is not None
    assert load(session.path, load_book()) == session.job


class _AskedNow(Session):
    """A session that asks what it is told to ask."""

    now: Asked | None = None

    @property
    def current(self) -> Asked | None:
        return self.now


async def test_every_question_can_be_read_whole_on_the_smallest_screen() -> None:
    """At 80 by 24 nothing of any question is out of sight or cut off: what it is about, its text, its choices, an example."""
    answers = worked("four-walls").answers
    session = _AskedNow(load_book(), Job(answers))
    app = make_app(load_book(), session, Path())
    async with app.run_test(size=(80, 24)) as pilot:
        screen = app.screen
        assert isinstance(screen, Talk)
        talk, choices = screen.query_one(Conversation), screen.query_one("#choices", OptionList)
        for question in load_book().by_ref.values():
            session.now = Asked(PLACES[question.scope], question)
            talk.remove_children()
            screen._ask()
            await pilot.pause()
            assert all(talk.region.contains_region(line.region) for line in talk.children), question.ref
            assert not choices.display or choices.max_scroll_y == 0, question.ref
            assert not choices.display or choices.option_count == len(question.choices), question.ref


async def test_what_stands_over_the_talk_is_never_cut_off(tmp_path: Path) -> None:
    """A long name of the job, guesses, and how far the writing is: at 80 by 24 all of it is on the screen."""
    name = "the-whole-basement-of-the-old-house-by-the-river.json"
    answers = worked("four-walls").answers
    app = make_app(load_book(), Session(load_book(), Job(answers), tmp_path / name), tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        screen = app.screen
        assert isinstance(screen, Talk)
        screen.tell("Writing your papers: 10 of 20 readings tried", finished=False)
        await pilot.pause()
        strip = screen.query_one(Strip)
        rows = screen._compositor.render_strips()[strip.region.y : strip.region.bottom]
        shown = " ".join("".join(row.text for row in rows).split())
        assert shown.endswith(f"kept in {name}")
        assert "10 of 20 readings tried" in shown
