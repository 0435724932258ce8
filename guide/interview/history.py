"""Undo and redo: the job as it was before each change, as a value. It forgets nothing before the job is closed."""

from __future__ import annotations

from dataclasses import dataclass

from guide.interview.answers import Answers
from guide.interview.jobfile import Job


@dataclass(frozen=True, slots=True)
class History:
    """What stood before the job of now, and what was taken back, the nearest last."""

    past: tuple[Job, ...] = ()
    future: tuple[Job, ...] = ()

    def after(self, old: Job) -> History:
        """Return the history once a change has replaced `old`; what was taken back before it cannot come again."""
        return History((*self.past, old))

    def undone(self, now: Job) -> tuple[Job, History] | None:
        """Return the job before the last change, and the history from there; None when there was no change."""
        if not self.past:
            return None
        return self.past[-1], History(self.past[:-1], (*self.future, now))

    def redone(self, now: Job) -> tuple[Job, History] | None:
        """Return the job that was taken back last, and the history from there; None when none were."""
        if not self.future:
            return None
        return self.future[-1], History((*self.past, now), self.future[:-1])


def changed_paths(old: Answers, new: Answers) -> tuple[str, ...]:
    """Return the paths whose answers differ, those of the old answers first."""
    return tuple(path for path in {**old, **new} if old.get(path) != new.get(path))
