"""The app, driven as a person drives it: keys, mouse, paste, at a small and at a usual screen."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Footer, Input, OptionList, Static

from guide.book.questions import load_book
from guide.interview.jobfile import Job, load
from guide.reference.sketches import load_sketches
from guide.session import Session
from guide.tui.app import Wallbrief, make_app
from guide.tui.panels import Conversation
from guide.tui.papers import Papers
from guide.tui.start import Start
from guide.tui.talk import Talk
from guide.tui.wall import WallPane
from tests.walkthroughs import ROOT, files_of

SIZES = [(80, 24), (120, 40)]
WORKED = ROOT / "first-wall" / "job.json"


def session_of(path: Path | None = None, *, without: str = "") -> Session:
    """Return a session on the worked wall, some answers taken out."""
    answers = {p: a for p, a in load(WORKED, load_book()).answers.items() if not without or not p.startswith(without)}
    return Session(load_book(), Job(answers), path)


async def settled(pilot: Pilot[None]) -> None:
    """Wait until the job is looked over and the wall drawn."""
    await pilot.pause()
    while isinstance(talk := pilot.app.screen, Talk) and talk._looking is not None:
        await pilot.app.workers.wait_for_complete()
        await pilot.pause()


async def say(pilot: Pilot[None], text: str) -> None:
    """Type a reply into the answer box, send it, and wait for all that comes of it."""
    box = pilot.app.screen.query_one("#reply", Input)
    box.value = text
    await pilot.press("enter")
    await settled(pilot)


def said(app: Wallbrief) -> str:
    """Return everything in the conversation as text."""
    return "\n".join(str(line.render()) for line in app.screen.query_one(Conversation).query(Static))


def drawn(app: Wallbrief) -> str:
    """Return the wall as the pane draws it."""
    return str(app.screen.query_one(WallPane).query_one("#drawing", Static).render())


async def test_a_whole_wall_is_answered_and_its_papers_written(tmp_path: Path) -> None:
    """The replies of the worked talk, typed into the app, give the papers that the worked job gives."""
    session = Session(load_book(), Job(note=load(WORKED, load_book()).note), tmp_path / "job.json")
    app = make_app(load_book(), session, tmp_path)
    async with app.run_test(size=(120, 40)) as pilot:
        for reply in (ROOT / "first-wall" / "replies.txt").read_text(encoding="utf-8").splitlines():
            await say(pilot, reply)
        assert session.current is None
        await pilot.press("f5")
        await pilot.pause()
        assert isinstance(app.screen, Papers)
        await pilot.press("w")
        await app.workers.wait_for_complete()
    written = tmp_path / "wallbrief-papers" / "job"
    for path, text in files_of("first-wall").items():
        if path.startswith("papers/"):
            assert (written / path.removeprefix("papers/")).read_text(encoding="utf-8") == text


@pytest.mark.parametrize("size", SIZES)
async def test_choices_are_picked_by_key_and_by_mouse(size: tuple[int, int]) -> None:
    """A click on a choice answers, and so does the cursor; then the answer box has the focus again."""
    session = Session(load_book(), Job())
    app = make_app(load_book(), session, Path())
    async with app.run_test(size=size) as pilot:
        await pilot.click("#choices", offset=(4, 0))
        await pilot.pause()
        assert session.answers["basement.tape"].value == "inches"
        assert app.focused is app.screen.query_one("#reply")
        app.screen.query_one("#choices", OptionList).focus()
        await pilot.press("down", "enter")
        await pilot.pause()
        assert session.answers["basement.use"].value == "sleeping"


async def test_on_a_small_screen_talk_and_wall_take_turns() -> None:
    """At 80 by 24 the wall is hidden until F4, then the talk is; a second F4 and Escape bring the talk back."""
    app = make_app(load_book(), session_of(without="A.other"), Path())
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        talk, wall = app.screen.query_one("#talk"), app.screen.query_one("#wall")
        assert (talk.display, wall.display) == (True, False)
        await pilot.press("f4")
        await settled(pilot)
        assert (talk.display, wall.display) == (False, True)
        assert "stud" in drawn(app)
        await pilot.press("escape")
        await pilot.pause()
        assert (talk.display, wall.display) == (True, False)
        assert app.focused is app.screen.query_one("#reply")


async def test_on_a_wide_screen_the_wall_grows_beside_the_talk() -> None:
    """Nothing is drawn before the length; each answer after it redraws the wall."""
    session = session_of(without="A.")
    app = make_app(load_book(), session, Path())
    async with app.run_test(size=(120, 40)) as pilot:
        await settled(pilot)
        assert "as soon as it has a length" in drawn(app)
        await say(pilot, "196 at floor")
        await say(pilot, "inside corner")
        before = drawn(app)
        assert "Wall A" in before
        await say(pilot, "open end")
        assert drawn(app) != before


async def test_why_back_and_a_change_that_touches_others() -> None:
    """“why” explains, F2 goes back, and a changed length says first which answers it puts in doubt."""
    session = session_of()
    app = make_app(load_book(), session, Path())
    async with app.run_test(size=(120, 40)) as pilot:
        session.change("A.length")
        await pilot.press("f2")
        await pilot.pause()
        assert session.current is not None
        assert session.current.path == "basement.walls"
        session.change("A.length")
        await say(pilot, "why")
        assert "plates" in said(app)
        await say(pilot, "200 at floor")
        assert "slab to joists" in said(app)
        assert (
            str(session.layout.by_letter["A"].wall.length)
            == "<196 in on ['A.length@chest', 'A.length@floor', 'A.length@joists']>"
        )
        await say(pilot, "yes")
        assert session.answers["A.height"].confirm
        assert session.current.path == "A.height"
        await say(pilot, "keep")
        assert not session.answers["A.height"].confirm


async def test_a_sketch_is_shown_whole_and_leaves_its_question_in_sight() -> None:
    """“how” on the smallest screen, and on the narrowest with the wall beside the talk: no line is broken, none of the question gone."""
    sketches = {
        f"A.{ref.partition('.')[2]}": each for each in load_sketches() for ref in each.of if ref.startswith("wall.")
    }
    session = session_of()
    app = make_app(load_book(), session, Path())
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        screen = app.screen
        assert isinstance(screen, Talk)
        for path in sorted(sketches.keys() & session.answers.keys()):
            await pilot.resize_terminal(*((100, 24) if path == "A.string" else (80, 24)))
            screen._change(path)
            await say(pilot, "how")
            talk = app.screen.query_one(Conversation)
            shown = [line for line in talk.query(Static) if talk.region.contains_region(line.region)]
            heights = {str(line.render()): line.size.height for line in shown}
            assert heights.get(sketches[path].text) == len(sketches[path].text.splitlines()), path
            assert session.question_lines()[0] in heights, path


async def test_nothing_the_person_types_is_markup_or_reaches_the_terminal_raw() -> None:
    """Square brackets and escapes are text: no exception, no markup, no control character in what is shown or kept."""
    session = session_of(without="A.other")
    app = make_app(load_book(), session, Path())
    async with app.run_test(size=(80, 24)) as pilot:
        await say(pilot, "[bold red]meter[/] at 9 ft \x1b[31m [/nonsense]")
        assert "[bold red]meter[/]" in said(app)
        assert "\x1b" not in said(app)
        assert session.answers["A.other"].value == "[bold red]meter[/] at 9 ft [31m [/nonsense]"


@pytest.mark.parametrize("size", [(80, 24), (120, 40), (60, 20)])
async def test_every_key_is_shown_whole(size: tuple[int, int]) -> None:
    """The footer shows every key that works, none of them cut off."""
    app = make_app(load_book(), session_of(), Path())
    async with app.run_test(size=size) as pilot:
        while not app.screen.query_one(Footer).query("FooterKey"):
            await pilot.pause()
        await pilot.pause()
        keys = [key for key in app.screen.query_one(Footer).query("FooterKey") if key.display and key.region.width]
        assert {"Help", "Back", "Change", "Wall", "Papers", "More", "Quit"} <= {str(key.description) for key in keys}  # type: ignore[attr-defined]
        assert max(key.region.right for key in keys) <= size[0]


async def test_the_start_screen_opens_a_job_of_the_folder_and_refuses_a_bad_one(tmp_path: Path) -> None:
    """Jobs of the folder are offered; one that cannot be read gives its one sentence and the screen stays."""
    (tmp_path / "bad.json").write_text("{", encoding="utf-8")
    (tmp_path / "good.json").write_text(WORKED.read_text(encoding="utf-8"), encoding="utf-8")
    app = make_app(load_book(), None, tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, Start)
        assert "not JSON" in str(app.screen.query_one("#trouble", Static).render())
        await pilot.press("down", "enter")
        await pilot.pause()
        assert isinstance(app.screen, Talk)
        assert app.session is not None
        assert app.session.path == tmp_path / "good.json"


async def test_a_new_job_is_kept_from_its_first_answer_on(tmp_path: Path) -> None:
    """A name typed on the start screen opens the talk, and the first answer is on the disk at once."""
    app = make_app(load_book(), None, tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        app.screen.query_one("#name", Input).focus()
        await pilot.press("enter")
        await pilot.pause()
        await say(pilot, "inches")
    kept = json.loads((tmp_path / "my-basement.json").read_text(encoding="utf-8"))
    assert kept["basement"]["tape"] == "inches"


async def test_a_folder_that_cannot_be_written_is_said_and_loses_nothing(tmp_path: Path) -> None:
    """When the job file cannot be written the talk says so in one line and keeps the answer."""
    session = session_of(tmp_path / "gone" / "job.json", without="A.other")
    app = make_app(load_book(), session, tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await say(pilot, "none")
        assert "could not write" in said(app)
        assert session.answers["A.other"].value == "none"
