"""The app on the worked job's copy without its last answer: it starts, draws the question and leaves.

The wall is worked out, drawn and looked over right after the question; that is where this leaves.
"""

from pathlib import Path

from guide.book.questions import load_book
from guide.interview.jobfile import Job, load
from guide.session import Session
from guide.tui.app import make_app
from guide.tui.talk import Talk

ROOT = Path(__file__).parent.parent.parent


def main() -> None:
    """Open, draw, leave."""
    book = load_book()
    answers = load(ROOT / "walkthroughs" / "first-wall" / "job.json", book).answers
    session = Session(book, Job({path: a for path, a in answers.items() if path != "A.other"}))
    Talk._look = lambda self: self.app.exit()  # type: ignore[method-assign]
    make_app(book, session, Path.cwd()).run(headless=True)


if __name__ == "__main__":
    main()
