"""Measure twice: which readings, if they are off by as much as such a reading may be, change a cut, a purchase or a finding.

Every measured size is moved both ways by what a tape, or an eye, may be off, and the job is laid out, checked and counted
again. The readings are ranked by what hangs on them: findings first, the worst of them first; then what is bought; then
how many cuts. It takes a layout for every reading, so it is worked out for papers and when somebody asks, never in the talk.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from guide.book.questions import Book, Question
from guide.buying.lines import lines_of
from guide.buying.purchase import LUMBER, lumber_of
from guide.buying.takeoff import takeoff
from guide.checks.check import check
from guide.interview.answers import Answer, Answers, Certainty, Spot, Value
from guide.interview.asking import applying
from guide.layout.engine import lay_out
from guide.layout.kept import Kept
from guide.layout.packing import sheets_for
from guide.layout.parts import Layout, Material, Part
from guide.lengths import Length, Tape, exact_inches, inches
from guide.reference.figures import load_figures
from guide.reference.findings import Severity
from guide.reference.sayings import say, saying
from guide.reference.stock import load_stock
from guide.survey.build import code_of, survey_from
from guide.survey.model import Survey

HOW_MANY = 5
"""How many readings are named: more than a few are not taped again."""

Cut = tuple[Length, Length | None]
"""The length of a piece, and its width where it is not the stock's own."""


@dataclass(frozen=True, slots=True)
class Change:
    """A finding, or a contradiction, that comes or goes."""

    severity: Severity
    wall: str
    """Its letter; empty for the whole basement."""
    what: str
    """Its kind; of a contradiction the answers it names."""
    comes: bool
    said: str
    """It in one sentence."""


@dataclass(frozen=True, slots=True)
class Doubtful:
    """One reading, and what changes when it is off by its slip, either way."""

    rest: str
    """The id that lengths rest on: `A.height@left`."""
    name: str
    size: Length
    slip: Length
    cuts: int
    """How many pieces are cut otherwise."""
    by: Length
    """By how much at most."""
    other: int
    """How many pieces come or go."""
    bought: tuple[str, ...]
    """What is bought in another number."""
    found: tuple[Change, ...]
    """Findings that come or go, the worst first."""

    @property
    def matters(self) -> bool:
        """Something changes."""
        return bool(self.cuts or self.other or self.bought or self.found)

    @property
    def rank(self) -> tuple[int, int, int, int]:
        """The smaller one is taped again first."""
        order = list(Severity)
        worst = min((order.index(change.severity) for change in self.found), default=len(order))
        return worst, -len(self.bought), -self.cuts - self.other, -self.by.ticks

    def lines(self, tape: Tape) -> tuple[str, ...]:
        """Say what changes, one sentence each."""
        said = []
        if self.cuts:
            said.append(say(saying("twice.cuts", count=self.cuts, by=Length(self.by.ticks)), tape))
        if self.other:
            said.append(say(saying("twice.pieces", count=self.other), tape))
        if self.bought:
            said.append(say(saying("twice.bought", names="; ".join(self.bought)), tape))
        for changes in _alike(self.found):
            first, *others = changes
            key = "twice.comes" if first.comes else "twice.goes"
            place = f"wall {first.wall}" if first.wall else "basement"
            if others:
                place += f" (and {', '.join(change.wall for change in others)})"
            said.append(say(saying(key, severity=first.severity.value, place=place, said=first.said), tape))
        return tuple(said)


def _alike(changes: tuple[Change, ...]) -> Iterator[list[Change]]:
    """Put together what comes, or goes, on several walls."""
    kinds = dict.fromkeys((change.severity, change.what, change.comes) for change in changes)
    for kind in kinds:
        yield [change for change in changes if (change.severity, change.what, change.comes) == kind]


@dataclass(frozen=True)
class _Outcome:
    """What comes of the answers, as far as it is compared."""

    survey: Survey
    cuts: dict[str, Cut]
    bought: Counter[str]
    found: dict[tuple[Severity, str, str], str]


def tape_again(
    book: Book, answers: Answers, how_many: int = HOW_MANY, tell: Callable[[int, int], None] = lambda done, of: None
) -> tuple[Doubtful, ...]:
    """Return the readings to tape again, the most important first; those that change nothing are left out.

    The same answers give the same list. Readings that nobody measured are not on it: they are asked for anyway.
    `tell` hears after each reading how many are tried, of how many; what it raises ends the work.
    """
    whole = sum(1 for _ in _readings(book, answers))
    doubtful = []
    for tried, each in enumerate(doubts(book, answers), 1):
        doubtful += [each] if each.matters else []
        tell(tried, whole)
    return tuple(sorted(doubtful, key=lambda each: each.rank)[:how_many])


def again_lines(again: tuple[Doubtful, ...], tape: Tape) -> list[str]:
    """Return the readings to tape again as they are said on the screen, each followed by what hangs on it."""
    if not again:
        return [say(saying("twice.nothing"), tape)]
    lines = [say(saying("twice.heading"), tape)]
    for number, each in enumerate(again, 1):
        read = say(saying("twice.reading", name=each.name, size=each.size, slip=each.slip), tape)
        lines += [f"{number}  {read}", *(f"   {line}" for line in each.lines(tape))]
    return lines


def doubts(book: Book, answers: Answers) -> Iterator[Doubtful]:
    """Yield every measured reading with what changes when it is off."""
    kept: Kept = {}
    survey = survey_from(book, answers)
    before = _outcome(survey, kept)
    for question, path, rest, spot, size in _readings(book, answers):
        slip = slip_of(size, answers[path].known)
        tried = [moved(question, answers[path], spot, off) for off in (slip, -slip)]
        surveys = [survey_from(book, {**answers, path: answer}) for answer in tried if answer is not None]
        others = [_outcome(other, kept) for other in surveys if not _same(other, survey)]
        yield _compared(rest, before, others, size, slip)


def slip_of(size: Length, known: Certainty) -> Length:
    """Return how far a reading may be off: an eyeballed one most, a long one more than a short one."""
    figures = load_figures()
    if known is Certainty.EYEBALLED:
        return figures.slip_eye
    return figures.slip_long if size >= figures.slip_long_from else figures.slip_tape


def _readings(book: Book, answers: Answers) -> Iterator[tuple[Question, str, str, int | None, Length]]:
    """Yield question, path, id, number among several and size of every reading that was taped or eyeballed."""
    for asked in applying(book, answers):
        answer = answers.get(asked.path)
        if answer is None or answer.known in (Certainty.ASSUMED, Certainty.UNKNOWN) or answer.confirm:
            continue
        if isinstance(answer.value, Length):
            yield asked.question, asked.path, asked.path, None, answer.value
        else:
            for number, spot in enumerate(_spots(answer.value)):
                at = exact_inches(spot.at) if isinstance(spot.at, Length) else spot.at
                yield asked.question, asked.path, f"{asked.path}@{at}", number, spot.size


def _spots(value: Value) -> tuple[Spot, ...]:
    return tuple(spot for spot in value if isinstance(spot, Spot)) if isinstance(value, tuple) else ()


def moved(question: Question, answer: Answer, number: int | None, off: Length) -> Answer | None:
    """Return an answer with its size, or the reading of that number, moved; None when its question takes no such size."""
    low, high = question.range_of_lengths()
    if isinstance(answer.value, Length):
        size = answer.value + off
        new = replace(answer, value=size)
    else:
        spots = list(_spots(answer.value))
        assert number is not None
        size = spots[number].size + off
        spots[number] = replace(spots[number], size=size)
        new = replace(answer, value=tuple(spots))
    return new if (low is None or size >= low) and (high is None or size <= high) else None


def _same(one: Survey, other: Survey) -> bool:
    """Say whether nothing that is built differs: only the smallest of several lengths counts, for one."""
    return one.walls == other.walls and one.basement == other.basement


def _outcome(survey: Survey, kept: Kept) -> _Outcome:
    code = code_of(survey)
    layout = lay_out(survey, code, load_figures(), kept)
    tape = survey.basement.tape
    found = {(f.severity, f.wall or "", f.key): f.sentence(tape, _exactly) for f in check(layout, code)}
    found |= {(Severity.STOP, p.wall, ", ".join(p.paths)): say(p.saying, tape) for p in layout.survey.problems}
    cuts = {part.id: (part.cut, part.wide) for part in layout.parts.values()}
    return _Outcome(layout.survey, cuts, _bought(layout), found)


def _exactly(length: Length) -> bool:
    """Sizes of a finding that only might come are printed without “about”."""
    return False


def _bought(layout: Layout) -> Counter[str]:
    """Count what is bought by name. Lumber is counted by the shortest stick that holds each piece on its own."""
    parts = list(layout.parts.values())
    stock, figures = load_stock().item, load_figures()
    counts = Counter({line.name: line.buy for line in lines_of(takeoff(layout))})
    foam = _sheets(parts, Material.FOAM, inches(layout.survey.basement.foam_sheet), Length(0))
    plywood = _sheets(parts, Material.PLYWOOD, figures.sheet_long // 2, figures.cap_kerf)
    counts.update({stock["foam"].name: foam, stock["plywood"].name: plywood})
    for item in lumber_of(layout):
        lengths = sorted(inches(each) for each in stock[item].lengths)
        sticks = (_shortest(part, lengths) for part in parts if part.material is LUMBER[item])
        counts.update(f"{stock[item].name}, {exact_inches(stick)} in" for stick in sticks)
    return counts


def _sheets(parts: list[Part], material: Material, wide: Length, kerf: Length) -> int:
    """Return how many sheets a quick packing takes: enough to see whether a reading changes what is bought."""
    sizes = [(part.wide or wide, part.cut) for part in parts if part.material is material]
    return len(sheets_for(sizes, wide=wide, tall=load_figures().sheet_long, kerf=kerf))


def _shortest(part: Part, lengths: list[Length]) -> Length:
    return next((length for length in lengths if length >= part.cut), part.cut)


def _compared(rest: str, before: _Outcome, others: list[_Outcome], size: Length, slip: Length) -> Doubtful:
    cuts: dict[str, Length] = {}
    pieces: set[str] = set()
    bought: set[str] = set()
    found: set[Change] = set()
    for other in others:
        pieces |= before.cuts.keys() ^ other.cuts.keys()
        for name in before.cuts.keys() & other.cuts.keys():
            if before.cuts[name] != other.cuts[name]:
                by = _apart(before.cuts[name], other.cuts[name])
                cuts[name] = max(cuts.get(name, by), by)
        bought |= {name for name in before.bought | other.bought if before.bought[name] != other.bought[name]}
        for key in before.found.keys() ^ other.found.keys():
            found.add(Change(*key, comes=key in other.found, said=(other.found | before.found)[key]))
    order = list(Severity)
    return Doubtful(
        rest=rest,
        name=before.survey.names[rest],
        size=size,
        slip=slip,
        cuts=len(cuts),
        by=max(cuts.values(), default=Length(0)),
        other=len(pieces),
        bought=tuple(sorted(bought)),
        found=tuple(sorted(found, key=lambda each: (order.index(each.severity), each.wall, each.what))),
    )


def _apart(before: Cut, after: Cut) -> Length:
    wide = abs((after[1] or Length(0)) - (before[1] or Length(0)))
    return max(abs(after[0] - before[0]), wide)
