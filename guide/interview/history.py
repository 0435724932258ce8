"""Undo and redo: the answers as they were before each change, as a value. It forgets nothing before the job is closed."""

from __future__ import annotations

from dataclasses import dataclass

from guide.interview.answers import Answers


@dataclass(frozen=True, slots=True)
class History:
    """What stood before the answers of now, and what was taken back, the nearest last."""

    past: tuple[Answers, ...] = ()
    future: tuple[Answers, ...] = ()

    def after(self, old: Answers) -> History:
        """Return the history once a change has replaced `old`; what was taken back before it cannot come again."""
        return History((*self.past, old))

    def undone(self, now: Answers) -> tuple[Answers, History] | None:
        """Return the answers before the last change, and the history from there; None when there was no change."""
        if not self.past:
            return None
        return self.past[-1], History(self.past[:-1], (*self.future, now))

    def redone(self, now: Answers) -> tuple[Answers, History] | None:
        """Return the answers that were taken back last, and the history from there; None when none were."""
        if not self.future:
            return None
        return self.future[-1], History((*self.past, now), self.future[:-1])


def changed_paths(old: Answers, new: Answers) -> tuple[str, ...]:
    """Return the paths whose answers differ, those of the old answers first."""
    return tuple(path for path in {**old, **new} if old.get(path) != new.get(path))
