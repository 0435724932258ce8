"""A stranger with one wall's page in hand: what is asked of a worked job, the answers, and where on the page they stand.

`walkthroughs/NAME/questions.toml` asks in words. Figures in its answers stand in braces and are worked out here from
plan.json (`{near A7}`), so that they follow the layout; answers in words alone name what makes them true of the plan.
`python -m tests.walkthroughs --rewrite` writes them out in full as questions.md, for a try with the page alone.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable
from dataclasses import dataclass, field
from fractions import Fraction
from operator import attrgetter
from pathlib import Path
from typing import Any

from guide.layout.parts import Part, WallLayout
from guide.lengths import Length, with_unit
from guide.order.plan import Step
from guide.reference.figures import load_figures
from guide.sheets.letter import asked_before, letter_of
from guide.sheets.plan import Plan
from guide.sheets.plan_json import plan_to_json
from tests.pages import blocks, stands

Tree = dict[str, Any]

MM_PER_INCH = Fraction(254, 10)
"""International yard and pound agreement of 1959."""
STUD_THICK = Fraction(3, 2)
"""A 2x4 lies flat when this is its height or its depth (PS 20-20)."""


@dataclass(frozen=True)
class Question:
    """One question that the page of one wall must answer."""

    wall: str
    under: str
    """The heading that the answer stands under; steps without their number."""
    ask: str
    answer: str
    """In words; `{near A7}` is worked out from plan.json."""
    says: tuple[str, ...] = ()
    """Words that stand beside the answer on the page, in the same row, line or paragraph."""
    true: tuple[str, ...] = ()
    """Why an answer without figures is true of the plan; see `CLAIMS`."""


@dataclass(frozen=True)
class Stranger:
    """A plan, and its plan.json, as one wall of it is asked about."""

    plan: Plan
    letter: str
    tree: Tree = field(repr=False)

    @property
    def wall(self) -> Tree:
        """The wall as it stands in plan.json."""
        return next(wall for wall in self.tree["walls"] if wall["letter"] == self.letter)

    @property
    def laid(self) -> WallLayout:
        """The wall as it is laid out, for what plan.json leaves out."""
        return self.plan.layout.by_letter[self.letter]

    def made(self, mark: str) -> Part:
        """The part with this mark, as it is laid out."""
        return next(part for part in self.laid.parts if part.mark == mark)

    def part(self, mark: str) -> Tree:
        """The part with this mark."""
        return next(part for part in self.wall["parts"] if part["mark"] == mark)

    def of(self, kind: str) -> list[Tree]:
        """The parts of a kind, in words such as `cap strip`."""
        found = [part for part in self.wall["parts"] if part["kind"] == kind]
        assert found, f"wall {self.letter} has no {kind}"
        return found

    @property
    def ends(self) -> tuple[Fraction, Fraction]:
        """Where the plates start and end, from the left concrete corner."""
        plates = [part for part in self.wall["parts"] if part["kind"] in ("bottom plate", "top plate")]
        return min(edge(plate, "x0") for plate in plates), max(edge(plate, "x1") for plate in plates)

    def step(self, name: str) -> Step:
        """The step of this id, as `foam`, `corner_pack.left` on this wall, or with its place as `foam@B`."""
        head, _, side = name.partition(".")
        full = name if "@" in name else f"{head}@{self.letter}" + (f".{side}" if side else "")
        return next(step for step in self.plan.steps if step.id in (full, name))

    def before(self, step: Step) -> set[str]:
        """The ids of all steps that must be done before a step."""
        named = {each.id: each for each in self.plan.steps}
        done: set[str] = set()
        todo = list(step.needs)
        while todo:
            if (name := todo.pop()) not in done:
                done.add(name)
                todo += named[name].needs
        return done


def edge(part: Tree, side: str) -> Fraction:
    """One side of a part's box in plan.json."""
    return Fraction(str(part["box"][side]))


def taped(on: Stranger, size: Fraction) -> str:
    """A size in inches as the job's tape shows it, to the nearest sixteenth or millimetre."""
    if on.plan.tape == "millimetres":
        return str((size * MM_PER_INCH + Fraction(1, 2)).__floor__())
    whole, rest = divmod(abs(round(size * 16)), 16)
    part = Fraction(rest, 16)
    said = " ".join([str(whole)] * bool(whole or not rest) + [str(part)] * bool(rest))
    return f"-{said}" if size < 0 and said != "0" else said


def _bare(size: str) -> str:
    return size.removesuffix(" in").removesuffix(" mm")


def _inches(size: str) -> Fraction:
    number = sum((Fraction(each) for each in _bare(size).split()), Fraction(0))
    return number / MM_PER_INCH if size.endswith("mm") else number


def _longest(asked: Stranger, kind: str) -> Tree:
    return max(asked.of(kind), key=lambda part: _inches(part["cut"]))


def _tubes(asked: Stranger) -> int:
    """Glue as the foam step lays it: all round each piece, 1 in from its edge, and down the middle; 38 ft a tube."""
    bead = Fraction(0)
    for piece in asked.of("foam"):
        wide, tall = edge(piece, "x1") - edge(piece, "x0") - 2, edge(piece, "z1") - edge(piece, "z0") - 2
        bead += (2 * max(wide, Fraction(0)) + 3 * max(tall, Fraction(0))) / 12
    return -(-bead.__ceil__() // 38)


def _above(asked: Stranger, upper: str, lower: str) -> Fraction:
    """How far the lower edge of one part is over that of another, where the first one stands: the slab slopes."""
    part, other = asked.made(upper), asked.made(lower)
    high, low = (each.box.z0.at(asked.laid.wall, part.centre) for each in (part, other))
    return high.inch - low.inch


def _clock(minutes: int) -> str:
    hours, rest = divmod(minutes, 60)
    return " ".join([f"{hours} h"] * bool(hours) + [f"{rest} min"] * bool(rest))


def _fastened(asked: Stranger, kind: str, fastener: str) -> int:
    return sum(
        held.count
        for part in asked.laid.parts
        if part.kind.value == kind
        for held in part.fastenings
        if held.fastener == fastener
    )


FIGURES: dict[str, Callable[[Stranger, str], str]] = {
    "near": lambda on, mark: taped(on, edge(on.part(mark), "x0") - on.ends[0]),
    "far": lambda on, mark: taped(on, edge(on.part(mark), "x1") - on.ends[0]),
    "from_right": lambda on, mark: taped(on, on.ends[1] - edge(on.part(mark), "x0")),
    "corner": lambda on, mark: taped(on, edge(on.part(mark), "x0")),
    "corner_end": lambda on, mark: taped(on, edge(on.part(mark), "x1")),
    "out": lambda on, mark: taped(on, edge(on.part(mark), "y1")),
    "cut": lambda on, mark: _bare(on.part(mark)["cut"]),
    "wide": lambda on, mark: _bare(on.part(mark)["wide"]),
    "low": lambda on, mark: taped(on, edge(on.part(mark), "z0")),
    "middle": lambda on, mark: taped(on, (edge(on.part(mark), "z0") + edge(on.part(mark), "z1")) / 2),
    "longest": lambda on, kind: f"{(part := _longest(on, kind))['mark']} | {_bare(part['cut'])}",
    "count": lambda on, kind: str(len(on.of(kind))),
    "back": lambda on, _: _bare(on.wall["back"]),
    "face": lambda on, _: _bare(on.wall["face"]),
    "drywall": lambda on, _: _bare(on.wall["drywall"]),
    "plate": lambda on, _: _bare(on.wall["plate"]),
    "starts": lambda on, _: taped(on, abs(on.ends[0])),
    "ends": lambda on, _: taped(on, abs(Fraction(on.laid.wall.length.inch) - on.ends[1])),
    "between": lambda on, two: taped(on, edge(on.part(two.split()[1]), "x0") - edge(on.part(two.split()[0]), "x1")),
    "above": lambda on, two: taped(on, _above(on, *two.split())),
    "notched": lambda on, mark: taped(on, on.made(mark).notches[0].y1.inch - on.made(mark).box.y0.inch),
    "screw": lambda on, mark: taped(on, on.made(mark).fastenings[0].at[0].inch - on.laid.plate_start.inch),
    "strips": lambda on, mark: str(int(48 // (_inches(on.part(mark)["wide"]) + Fraction(1, 8)))),
    "jamb": lambda on, _: taped(
        on, _inches(on.wall["drywall"]) - next(o.jamb.inch for o in on.laid.wall.openings if o.jamb)
    ),
    "tubes": lambda on, _: str(_tubes(on)),
    "alone": lambda on, step: _clock(on.step(step).alone),
    "two": lambda on, step: _clock(on.step(step).two),
    "cure": lambda on, step: f"{max(wait.hours or 0 for wait in on.step(step).wait)} h",
    "fastened": lambda on, name: str(_fastened(on, *name.split(" with "))),
}
"""What may stand in braces in an answer: the figure's name, then what it is of."""


def _words(question: Question, it: str) -> tuple[str, ...]:
    """The words a claim wants of the plan: those after `with`, or what the question finds on the page."""
    return (it.partition(" with ")[2],) if " with " in it else question.says


def _said(value: object) -> str:
    return with_unit(value) if isinstance(value, Length) else str(value)


CLAIMS: dict[str, Callable[[Stranger, Question, str], bool]] = {
    "after": lambda on, _, it: on.step(it.split()[1]).id in on.before(on.step(it.split()[0])),
    "caution": lambda on, _, it: it.split(maxsplit=1)[1] in [c.name for c in on.step(it.split()[0]).cautions],
    "tag": lambda on, _, it: it.split()[1] in on.step(it.split()[0]).tags,
    "wait": lambda on, _, it: it.split()[1] in [wait.what for wait in on.step(it.split()[0]).wait],
    "line": lambda on, q, it: any(stands(_words(q, it), line) for line in on.step(it.split()[0]).text),
    "why": lambda on, q, it: stands(_words(q, it), on.step(it.split()[0]).why),
    "looks": lambda on, q, it: stands(_words(q, it), on.step(it.split()[0]).looks),
    "house": lambda on, _, it: _said(getattr(on.plan.survey.basement, it.split()[0])) == it.split(maxsplit=1)[1],
    "figure": lambda _, __, it: _said(getattr(load_figures(), it.split()[0])) == it.split(maxsplit=1)[1],
    "code": lambda on, q, it: all(each in q.answer for each in attrgetter("said", "section")(getattr(on.plan.code, it))),
    "wall": lambda on, _, it: str(on.wall[it.split()[0]]) == it.split(maxsplit=1)[1],
    "material": lambda on, _, it: on.part(it.split()[0])["material"] == it.split(maxsplit=1)[1],
    "same": lambda on, _, it: edge(on.part(it.split()[0]), it.split()[2]) == edge(on.part(it.split()[1]), it.split()[3]),
    "differ": lambda on, _, it: len({on.part(mark)["cut"] for mark in it.split()}) > 1,
    "longer": lambda on, _, it: _inches(on.part(it.split()[0])["cut"]) > _inches(on.part(it.split()[1])["cut"]),
    "flat": lambda on, _, it: STUD_THICK in (edge(on.part(it), f"{axis}1") - edge(on.part(it), f"{axis}0") for axis in "yz"),
    "asks": lambda on, _, it: any(it.split(maxsplit=1)[1] in each for each in asked_before(letter_of(on.plan), on.step(it.split()[0]))),
    "laid": lambda on, _, it: it.split(maxsplit=1)[1] in str(attrgetter(it.split()[0])(on.laid)),
    "decided": lambda on, q, it: stands(q.says, next(" ".join([d["what"], *d["beat"]]) for d in on.wall["decisions"] if d["id"] == it)),
    "found": lambda on, _, it: any(f.id.partition("@")[0] == it and f.wall in (None, on.letter) for f in on.plan.findings),
}  # fmt: skip
"""Why an answer is true: the claim's name, then what it is about."""


def questions_of(folder: Path) -> tuple[Question, ...]:
    """The questions of a worked job."""
    tree: Tree = tomllib.loads((folder / "questions.toml").read_text(encoding="utf-8"))
    lists = ("says", "true")
    return tuple(
        Question(**{**each, **{name: tuple(each.get(name, ())) for name in lists}}) for each in tree["question"]
    )


def asked_of(plan: Plan) -> dict[str, Stranger]:
    """What is asked about each wall of a plan, by its letter."""
    tree = plan_to_json(plan)
    return {wall.letter: Stranger(plan, wall.letter, tree) for wall in plan.layout.walls}


def figures_in(question: Question, on: Stranger) -> tuple[str, ...]:
    """The figures in an answer, worked out."""
    return tuple(_figure(on, each) for each in re.findall(r"{([^}]*)}", question.answer))


def _figure(on: Stranger, braced: str) -> str:
    name, _, of = braced.partition(" ")
    return FIGURES[name](on, of)


def answered(question: Question, on: Stranger) -> str:
    """The answer in full."""
    return re.sub(r"{([^}]*)}", lambda found: _figure(on, found[1]), question.answer)


def untrue(question: Question, on: Stranger) -> list[str]:
    """The claims of a question that do not hold of the plan."""
    claims = [claim.partition(" ") for claim in question.true]
    return [name + gap + it for name, gap, it in claims if not CLAIMS[name](on, question, it)]


def held_by(question: Question, on: Stranger, page: str) -> bool:
    """Say whether one row, line or paragraph under the heading holds all the words and figures of the answer."""
    words = (*question.says, *figures_in(question, on))
    return any(stands(words, said) for heading, said in blocks(page) if heading == question.under)


def written_out(questions: tuple[Question, ...], asked: dict[str, Stranger]) -> str:
    """The questions, and after them the answers, as a page of their own."""
    lines = ["# A stranger's questions", "", "Hand over the wall's page and the questions; keep the answers.", ""]
    lines += [f"{n}. Wall {each.wall}: {each.ask}" for n, each in enumerate(questions, 1)]
    lines += ["", "## Answers", ""]
    for n, each in enumerate(questions, 1):
        lines.append(f"{n}. {answered(each, asked[each.wall])} (under “{each.under}”)")
    return "\n".join(lines) + "\n"
