"""The worked jobs: what their papers and their talk are now, and the command that writes them anew.

`python -m tests.walkthroughs` says which files differ; with `--rewrite` it writes them. Read the difference first.
"""

from __future__ import annotations

import io
import sys
from pathlib import Path

from guide.book.questions import load_book
from guide.interview.jobfile import Job, load
from guide.plain import talk
from guide.session import Session
from guide.sheets import write
from guide.sheets.plan import make_plan
from guide.sheets.twice import tape_again
from guide.worked import WORKED_JOBS
from tests.stranger import asked_of, questions_of, written_out

ROOT = Path(__file__).parent.parent / "walkthroughs"


def replayed(name: str) -> tuple[Session, str]:
    """Return the session that a worked job's replies give, and the talk as it ran."""
    session = Session(load_book(), Job(note=worked(name).note))
    out = io.StringIO()
    talk(session, io.StringIO((ROOT / name / "replies.txt").read_text(encoding="utf-8")), out)
    return session, out.getvalue()


def worked(name: str) -> Job:
    """Return a worked job as its file holds it."""
    return load(ROOT / name / "job.json", load_book())


def files_of(name: str) -> dict[str, str]:
    """Return every file that a worked job gives, by its path inside the job's folder."""
    plan = make_plan(load_book(), worked(name))
    again = tape_again(load_book(), worked(name).answers)
    found = {f"papers/{paper}": text for paper, text in write.files_of(plan, again).items()}
    found["talk.txt"] = replayed(name)[1]
    found["questions.md"] = written_out(questions_of(ROOT / name), asked_of(plan))
    return found


def main() -> int:
    """Compare, or write, every file of every worked job."""
    rewrite, differs = "--rewrite" in sys.argv, 0
    for name in WORKED_JOBS:
        for path, text in files_of(name).items():
            target = ROOT / name / path
            if target.exists() and target.read_bytes() == text.encode():
                continue
            differs += 1
            print(f"{'wrote' if rewrite else 'differs:'} {target.relative_to(ROOT.parent)}")
            if rewrite:
                target.parent.mkdir(parents=True, exist_ok=True)
                target.write_text(text, encoding="utf-8", newline="")
    return 0 if rewrite or not differs else 1


if __name__ == "__main__":
    raise SystemExit(main())
