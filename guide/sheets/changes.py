"""What a wall has now that it had not before the last answer, and what it has no more: for the drawing and in words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable
from dataclasses import dataclass

from guide.layout.parts import Kind, Part, WallLayout
from guide.sheets.spoken import say_of_talk


@dataclass(frozen=True, slots=True)
class Changes:
    """What the last answer changed of a wall."""

    names: frozenset[str] = frozenset()
    """Ids of the pieces that are new, or cut or placed otherwise."""
    said: str = ""
    """The same in one line; empty when nothing changed."""


def changes(before: WallLayout | None, after: WallLayout | None) -> Changes:
    """Return what changed of a wall; nothing while it is drawn for the first time, since all of it is new then."""
    if before is None or after is None:
        return Changes()
    had = Counter(_built(part) for part in before.parts)
    other = [part for part in after.parts if not had[_built(part)]]
    gone = Counter(part.kind for part in before.parts) - Counter(part.kind for part in after.parts)
    if not other and not gone:
        return Changes()
    counts = Counter(part.kind for part in other)
    said = [_counted(kind, counts[kind], len(after.of(kind))) for kind in Kind if counts[kind]]
    said += [say_of_talk("pieces_gone", count=str(gone[kind]), kind=kind.value) for kind in Kind if gone[kind]]
    return Changes(frozenset(part.id for part in other), say_of_talk("changed", pieces=", ".join(said)))


def _built(part: Part) -> Hashable:
    """Return what is built: a piece that only has another number or another reason is the same piece."""
    return part.kind, part.material, part.box, part.cut, part.wide, part.notches


def _counted(kind: Kind, count: int, of: int) -> str:
    return say_of_talk("pieces_changed", count=str(count), of=str(of), kind=kind.value)
