"""Writing: the files of a plan and where they go, and what is said about it on the screen."""

from __future__ import annotations

import json
from collections import Counter
from pathlib import Path

from guide.layout.parts import Kind
from guide.reference.findings import Severity
from guide.reference.sayings import say
from guide.sheets.ics import calendar_file
from guide.sheets.papers import papers
from guide.sheets.plan import Plan
from guide.sheets.plan_json import plan_to_json
from guide.sheets.raised import one_line_each
from guide.sheets.shopping import bill_lines, shopping_csv
from guide.sheets.shopping_json import shopping_to_json
from guide.sheets.twice import Doubtful
from guide.sheets.view import WallView

PAPERS_FOLDER = "wallbrief-papers"
"""Where papers go when nobody says where."""


def usable(plan: Plan) -> str:
    """Return one sentence when nothing can be planned from these answers, or an empty text."""
    if plan.survey.problems:
        return say(plan.survey.problems[0].saying, plan.tape)
    if not plan.survey.walls:
        return 'no wall has a length yet; give one wall at least its length, such as "length": "16 ft 4 in".'
    return ""


def files_of(plan: Plan, again: tuple[Doubtful, ...] | None = None, *, printed: bool = False) -> dict[str, str]:
    """Return every file of a plan by its name: the papers, and the same for spreadsheets and programs.

    `again` are the readings to tape again; `printed` adds each paper as an HTML page and each drawing as SVG.
    """
    written = papers(plan, again)
    files = {
        **written,
        "shopping.csv": shopping_csv(plan),
        "shopping.json": _json(shopping_to_json(plan)),
        "plan.json": _json(plan_to_json(plan)),
    }
    if calendar := calendar_file(plan):
        files["evenings.ics"] = calendar
    if printed:
        from guide.sheets.printed import printed_papers  # reads Markdown, which nothing else here does

        files |= printed_papers(plan, written)
    return files


def _json(tree: object) -> str:
    return json.dumps(tree, indent=1, ensure_ascii=False) + "\n"


def write_papers(
    plan: Plan, folder: Path, again: tuple[Doubtful, ...] | None = None, *, printed: bool = False
) -> tuple[Path, ...]:
    """Write every file of a plan into a folder, making it if need be, and return the paths. Raises OSError."""
    folder.mkdir(parents=True, exist_ok=True)
    files = files_of(plan, again, printed=printed)
    for name, content in files.items():
        (folder / name).write_text(content, encoding="utf-8", newline="")
    return tuple(folder / name for name in files)


def finding_lines(plan: Plan) -> list[str]:
    """Return one line of a screen for each finding, worst first, and a last line that counts them."""
    counts = Counter(f.severity for f in plan.findings)
    said = ", ".join(f"{counts[s]} {s.value}" for s in Severity if counts[s]) or "nothing found"
    lines = one_line_each(plan)
    if open_now := sum(f.severity is Severity.WARN and not plan.signed_off(f) for f in plan.findings):
        lines.append(f"{open_now} WARN to settle, or to sign off in your own words: say so in the talk.")
    return [*lines, f"{said}. Model codes only; your building office decides."]


def summary(plan: Plan, folder: Path, written: tuple[Path, ...]) -> list[str]:
    """Return what a person wants to know after the papers are written, in a few lines."""
    lines = []
    for wall in plan.layout.walls:
        view = WallView(plan, wall)
        studs = len(wall.of(Kind.STUD, Kind.KING))
        behind = (
            f"B {view.size(wall.offsets.back)}, {studs} studs, "
            f"{len(wall.of(Kind.FOAM))} pieces of foam, {len(wall.of(Kind.FIREBLOCK))} fireblocks"
        )
        lines.append(
            f"{wall.wall.title}: plate {view.size(wall.plate)}, {f'{studs} studs' if wall.wall.is_partition else behind}"
            + (f"; {len(view.locked)} readings missing" if view.locked else "")
        )
    lines += finding_lines(plan)
    if not plan.stopped:
        title, paid = bill_lines(plan, ())[-1]
        lines.append(f"Shopping list, {title.lower()}: {paid}.")
    names = ", ".join(path.name for path in written)
    return [*lines, f"Wrote {names} to {folder}."]
