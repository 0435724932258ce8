"""The worked jobs that ship with wallbrief, and copies of them to practise on."""

from __future__ import annotations

import shutil
from importlib.resources import files
from pathlib import Path

WORKED_JOBS = ("first-wall", "crooked-wall", "outside-corner", "metric-wall", "four-walls")
"""The last is the one that is practised on when none is named: the whole room."""
PRACTICE_FOLDER = "wallbrief-practice"


def copy_of_worked_job(name: str, folder: Path) -> Path:
    """Copy a worked job into the practice folder, unless a copy stands there already, and return its path.

    Raises OSError when the folder cannot be written.
    """
    target = folder / PRACTICE_FOLDER / f"{name}.json"
    if not target.exists():
        target.parent.mkdir(parents=True, exist_ok=True)
        with files("walkthroughs").joinpath(name, "job.json").open("rb") as read, target.open("wb") as write:
            shutil.copyfileobj(read, write)
    return target
