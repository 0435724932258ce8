"""The proof of the figures: the data and the code name the same ones, and each says where it comes from."""

from __future__ import annotations

from collections.abc import Mapping, Set

from guide.lengths import Unreadable, inches
from guide.reference.codes import CodeFigure, CodeProfile
from guide.reference.figures import Figure


def lint_figures(table: Mapping[str, Figure], named: Set[str], looked_at: Set[str]) -> list[str]:
    """Return the figures that the code or the data lacks, that nothing uses, that are no length, or without a source.

    `named` are those the code knows, `looked_at` the names that any code looks up.
    """
    found = [f"figures.toml: {name} is a figure that the code does not know." for name in sorted(set(table) - named)]
    found += [f"figures.toml: {name} is known to the code, but nothing uses it." for name in sorted(named - looked_at)]
    found += [f"figures.toml: {name}, which the code uses, is missing." for name in sorted(named - set(table))]
    for name, figure in table.items():
        try:
            inches(figure.value)
        except Unreadable as error:
            found.append(f"figures.toml: {name} is no length ({str(error).rstrip('.')}).")
        found += [
            f"figures.toml: {name} has no {key}." for key in ("what", "source") if not getattr(figure, key).strip()
        ]
    return found


def lint_code(profile: CodeProfile) -> list[str]:
    """Return the figures of a code profile that lack what they are or where they stand."""
    figures = {name: value for name, value in profile if isinstance(value, CodeFigure)}
    needed = ("value", "unit", "what", "standard", "edition", "section", "seen")
    return [
        f"code profile {profile.name}: {name} has no {key}."
        for name, figure in figures.items()
        for key in needed
        if not getattr(figure, key).strip()
    ]
