"""Sizes as a carpenter reads them off, for tests that compare whole walls with a sheet worked by hand."""

from __future__ import annotations

from collections.abc import Iterable

from guide.layout.parts import Kind, Part, WallLayout
from guide.lengths import Length, exact_inches


def size(length: Length) -> str:
    """Return a size in inches, exactly."""
    return exact_inches(length)


def cuts(parts: Iterable[Part]) -> list[str]:
    """Return what each part is cut to."""
    return [size(part.cut) for part in parts]


def marks(wall: WallLayout, *kinds: Kind) -> list[str]:
    """Return where parts of these kinds are marked: their near edges, running from the left end of the plates."""
    return [size(wall.mark_of(part.box.x0)) for part in wall.of(*kinds)]


def spans(parts: Iterable[Part]) -> list[tuple[str, str]]:
    """Return from where to where along the concrete each part reaches."""
    return [(size(part.box.x0), size(part.box.x1)) for part in parts]


def said(wall: WallLayout) -> list[str]:
    """Return the names of what the engine remarked on."""
    return [remark.saying.key.removeprefix("remark.") for remark in wall.remarks]


def decided(wall: WallLayout, subject: str) -> str:
    """Return the name of what was decided on a subject, such as `pipe1.way`."""
    (key,) = [d.saying.key for d in wall.decisions if d.id == f"{wall.letter}.{subject}"]
    return key.removeprefix("decision.")
