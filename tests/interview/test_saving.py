"""Saving: whatever stops it, wherever, the file is a whole job, the one before or the one after."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any

import pytest

import guide
from guide.interview.jobfile import load, save
from tests.interview.people import BOOK
from tests.interview.saving import job_of

OLD, NEW = job_of("old"), job_of("new")


class Stopped(BaseException):
    """Something nobody expects: the machine running out of anything, a key pressed in the middle."""


def failing(real: Callable[..., Any], at: int, error: BaseException) -> Callable[..., Any]:
    """Return a call that fails at its `at`-th time (from 0)."""
    count = 0

    def call(*args: Any, **named: Any) -> Any:
        nonlocal count
        count += 1
        if count == at + 1:
            raise error
        return real(*args, **named)

    return call


def alone(path: Path) -> bool:
    """Say whether nothing but the job is in its folder."""
    return list(path.parent.iterdir()) == [path]


@pytest.mark.parametrize("error", [OSError(28, "No space left on device"), Stopped(), KeyboardInterrupt()], ids=repr)
@pytest.mark.parametrize(("name", "at"), [("fdopen", 0), ("fsync", 0), ("chmod", 0), ("replace", 0)])
def test_a_save_that_fails_leaves_the_job_before_it_and_no_other_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str, at: int, error: BaseException
) -> None:
    path = tmp_path / "job.json"
    save(path, BOOK, OLD)
    monkeypatch.setattr(os, name, failing(getattr(os, name), at, error))
    with pytest.raises(type(error)):
        save(path, BOOK, NEW)
    assert load(path, BOOK) == OLD
    assert alone(path)


def test_a_folder_that_cannot_be_synced_is_no_failure_for_the_file_is_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "job.json"
    save(path, BOOK, OLD)
    monkeypatch.setattr(os, "fsync", failing(os.fsync, 1, OSError(22, "Invalid argument")))
    save(path, BOOK, NEW)
    assert load(path, BOOK) == NEW
    assert alone(path)


def test_the_file_is_synced_before_it_takes_the_place_of_the_old_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    calls: list[str] = []

    def noted(name: str) -> Callable[..., Any]:
        real = getattr(os, name)

        def call(*args: Any) -> Any:
            calls.append(name)
            return real(*args)

        return call

    for name in ("fsync", "replace"):
        monkeypatch.setattr(os, name, noted(name))
    save(tmp_path / "job.json", BOOK, NEW)
    assert calls == ["fsync", "replace", "fsync"]


def test_a_folder_that_is_not_there_or_cannot_be_written_is_an_error_that_says_so(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError):
        save(tmp_path / "no such folder" / "job.json", BOOK, NEW)
    (tmp_path / "file").write_text("x")
    with pytest.raises(OSError, match="Not a directory"):
        save(tmp_path / "file" / "job.json", BOOK, NEW)


def test_a_link_stays_a_link_and_what_it_points_to_is_saved(tmp_path: Path) -> None:
    real, link = tmp_path / "real" / "job.json", tmp_path / "job.json"
    real.parent.mkdir()
    save(real, BOOK, OLD)
    link.symlink_to(real)
    save(link, BOOK, NEW)
    assert link.is_symlink()
    assert load(real, BOOK) == NEW


def test_the_file_keeps_who_may_read_it(tmp_path: Path) -> None:
    path = tmp_path / "job.json"
    save(path, BOOK, OLD)
    path.chmod(0o640)
    save(path, BOOK, NEW)
    assert path.stat().st_mode & 0o777 == 0o640


# -------------------------------------------------------------------------------------------- killed for real


@contextmanager
def saver(path: Path, *more: str) -> Iterator[Callable[[], str]]:
    """Run the saving program beside the test, give its next line on demand, and kill it at the end."""
    root = Path(guide.__file__).parents[1]
    command = [sys.executable, "-m", "tests.interview.saving", str(path), *more]
    with subprocess.Popen(command, cwd=root, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as program:
        assert program.stdout is not None
        assert program.stdin is not None
        try:
            yield lambda: program.stdout.readline().strip()  # type: ignore[union-attr]
        finally:
            program.kill()
            program.wait()
            with suppress(OSError):
                program.stdin.close()
            program.stdout.close()


@pytest.mark.parametrize(
    ("step", "name", "left"), [(0, "fsync", OLD), (1, "chmod", OLD), (2, "replace", OLD), (3, "fsync", NEW)]
)
def test_a_program_killed_at_any_step_leaves_a_whole_job(tmp_path: Path, step: int, name: str, left: object) -> None:
    path = tmp_path / "job.json"
    with saver(path, str(step)) as line:
        assert line() == "saved"
        assert line() == f"before {name}"
    assert load(path, BOOK) == left
    assert list(tmp_path.glob("*.json")) == [path], "what was being written is not taken for a job"
    save(path, BOOK, NEW)
    assert load(path, BOOK) == NEW


@pytest.mark.parametrize("saves", [1, 2, 5, 9])
def test_a_program_killed_anywhere_in_a_run_of_saves_leaves_a_whole_job(tmp_path: Path, saves: int) -> None:
    path = tmp_path / "job.json"
    with saver(path) as line:
        assert line() == "saved"
        for number in range(1, saves + 1):
            assert line() == str(number)
    assert load(path, BOOK) in (OLD, NEW)
    assert list(tmp_path.glob("*.json")) == [path]
