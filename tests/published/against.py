"""Published values beside what wallbrief makes of the same inputs.

Each file of `values/` is one family of sources. A value says what it is, who prints it and where, how far off ours may
be and why, and which function of `ours/` comes to it through the real engine; nothing is compared with itself.
“memory” means that the paper was not open when the value was written down; how sure we are stands beside it.
"""

from __future__ import annotations

import tomllib
from collections.abc import Callable
from functools import lru_cache
from pathlib import Path
from typing import Literal

from pydantic import BaseModel, ConfigDict

from tests.published.ours import carpentry, cutting, electrical, energy, geometry, heat, losses, moisture

FOLDER = Path(__file__).parent / "values"
TABLE = Path(__file__).parent / "docs" / "table.md"

Known = Literal["seen", "memory, high confidence", "memory, medium confidence"]
Given = str | float | int | list[float] | list[list[float]]

OURS: dict[str, Callable[..., float | str]] = {
    **carpentry.OURS,
    **cutting.OURS,
    **electrical.OURS,
    **energy.OURS,
    **geometry.OURS,
    **heat.OURS,
    **losses.OURS,
    **moisture.OURS,
}
"""What wallbrief comes to, by the name that the values use."""


class _Data(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid")


class Source(_Data):
    """A paper: its title and edition, and whether it was open when its values were written down."""

    title: str
    known: Known = "seen"


class Value(_Data):
    """One published value."""

    id: str
    what: str
    source: str
    """A name of the file's sources."""
    place: str
    """Page, table or section."""
    theirs: float | tuple[float, float] | str
    """A number, the two ends of a range, or a word."""
    unit: str = ""
    ours: str
    """A name of `OURS`."""
    given: dict[str, Given] = {}
    tolerance: float = 0
    because: str
    """Why ours may be off by so much."""


class Family(_Data):
    """One file: values of one kind and their sources."""

    family: str
    source: dict[str, Source]
    value: tuple[Value, ...]


def result_of(value: Value) -> float | str:
    """Return what wallbrief comes to."""
    return OURS[value.ours](**value.given)


def agrees(value: Value, ours: float | str) -> bool:
    """Say whether ours is theirs within the tolerance; a range is widened by it, a word has to be the same."""
    if isinstance(value.theirs, str) or isinstance(ours, str):
        return value.theirs == ours
    low, high = value.theirs if isinstance(value.theirs, tuple) else (value.theirs, value.theirs)
    slip = 1e-9 * max(1.0, abs(high))
    return low - value.tolerance - slip <= ours <= high + value.tolerance + slip


@lru_cache(maxsize=1)
def families() -> tuple[Family, ...]:
    """Return every family in the order of its file name."""
    return tuple(
        Family.model_validate(tomllib.loads(path.read_text("utf-8"))) for path in sorted(FOLDER.glob("*.toml"))
    )


def table() -> str:
    """Return every value as a Markdown table: what, where from, theirs, ours, tolerance and why."""
    count = sum(len(family.value) for family in families())
    lines = [
        "# Published values and ours",
        "",
        f"{count} values, written by `python -m tests.published`. “memory” stands where the paper was not open when the",
        "value was written down. Ours is what the engine comes to from the same inputs.",
    ]
    for family in families():
        lines += [
            "",
            f"## {family.family}",
            "",
            "| what | where from | theirs | ours | within | why |",
            "|---|---|---|---|---|---|",
        ]
        lines += [_row(family, value) for value in family.value]
    return "\n".join(lines) + "\n"


def _row(family: Family, value: Value) -> str:
    source = family.source[value.source]
    known = "" if source.known == "seen" else f" ({source.known})"
    theirs = " to ".join(map(_shown, value.theirs)) if isinstance(value.theirs, tuple) else _shown(value.theirs)
    cells = (
        value.what,
        f"{source.title}, {value.place}{known}",
        f"{theirs} {value.unit}".strip(),
        _shown(result_of(value)),
        _shown(value.tolerance),
        value.because,
    )
    return "| " + " | ".join(cells) + " |"


def _shown(value: float | str) -> str:
    if isinstance(value, str):
        return value
    return f"{value:.5g}" if abs(value) < 100_000 else f"{value:.4f}"
