"""Looking a job over after its answers changed: the walls laid out again, and what the change brings to light.

It owns one promise: it goes from frozen values, and a mapping of its own, to frozen values. So it may be done at once, or
beside the talk, where it is dropped when another answer makes it stale.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from guide.book.questions import Book
from guide.interview.answers import Answers, tape_of
from guide.interview.asking import expected, next_question
from guide.interview.history import changed_paths
from guide.interview.jobfile import Job
from guide.lengths import Length
from guide.reference.sayings import Guessed

if TYPE_CHECKING:  # the first question need not wait for what lays out, checks and tells
    from guide.checks.findings import Finding
    from guide.layout.kept import Kept
    from guide.layout.parts import Layout
    from guide.reference.office import Office
    from guide.sheets.raised import Raised
    from guide.survey.model import Survey

KEPT_PER_WALL = 8
"""Things a layout works out of a wall, twice: those of now and those before the last answer."""

Tell = Callable[[str], object]
"""Hears the letter of a wall before it is laid out again; what it raises ends the work."""


@dataclass(frozen=True, slots=True)
class Stand:
    """Answers, and their layout where it is known."""

    answers: Answers
    layout: Layout | None = None


@dataclass(frozen=True, slots=True)
class Look:
    """What is to be looked over."""

    book: Book
    office: Office | None
    job: Job
    now: Stand
    before: Stand | None
    """As it was before the last change; None while nothing has changed."""
    since: Stand | None
    """As it was when findings were raised last; None while no answer has been given since."""
    raised: Raised | None
    """What has been raised so far; None before the first look."""
    drawn: bool
    """Somebody sees the walls, so they are laid out whether a finding asks for it or not."""
    kept: Kept
    """What is kept between layouts: nobody else has this mapping."""


@dataclass(frozen=True, slots=True)
class Seen:
    """What came of a look."""

    now: Stand
    before: Stand | None
    raised: Raised
    lines: tuple[str, ...]
    """What is to be said of it."""


def look_over(look: Look, tell: Tell = lambda letter: None) -> Seen:
    """Look a job over. Findings are raised once each; what stood before the first answer is no news.

    Unless somebody sees the walls, they are laid out only where the change was about one that is done, or made it so.
    """
    from guide.sheets.raised import Raised

    now, before, raised, lines = look.now, look.before, look.raised, tuple[str, ...]()
    if raised is None:
        first = look.since or now
        stood = _found(
            look, first.answers, _layout(look, first, tell) if done_walls(look.book, first.answers) else None
        )
        raised = Raised(frozenset(each.name for each in stood))
    if look.since is not None:
        now, raised, lines = _raise(look, look.since.answers, raised, tell)
    if look.drawn:
        now = Stand(now.answers, _layout(look, now, tell))
        before = Stand(before.answers, _layout(look, before, tell)) if before is not None else None
    return Seen(now, before, raised, lines)


def lay_out_again(survey: Survey, office: Office | None, kept: Kept, tell: Tell = lambda letter: None) -> Layout:
    """Return the layout of a survey; what is unchanged is taken from what was kept, and what is new is kept."""
    from guide.layout.engine import lay_out
    from guide.layout.kept import forget
    from guide.reference.figures import load_figures
    from guide.survey.build import code_of

    layout = lay_out(survey, code_of(survey, office), load_figures(), kept, tell)
    forget(kept, KEPT_PER_WALL * len(survey.walls))
    return layout


def done_walls(book: Book, answers: Answers) -> frozenset[str]:
    """Return the letters of the walls about which nothing is left to ask."""
    open_now = {a.path for a in expected(book, answers) if a.path not in answers or answers[a.path].confirm}
    letters = {path.partition(".")[0] for path in answers} - {"basement"}
    return frozenset(letters - {path.partition(".")[0] for path in open_now})


def _layout(look: Look, stand: Stand, tell: Tell) -> Layout:
    from guide.survey.build import survey_from

    if stand.layout is not None:
        return stand.layout
    return lay_out_again(survey_from(look.book, stand.answers), look.office, look.kept, tell)


def _found(look: Look, answers: Answers, layout: Layout | None) -> tuple[Finding, ...]:
    from guide.checks.check import basement_findings, check
    from guide.survey.build import code_of, survey_from

    survey = layout.survey if layout is not None else survey_from(look.book, answers)
    code = code_of(survey, look.office)
    return basement_findings(survey, code) if layout is None else check(layout, code)


def _raise(look: Look, old: Answers, before: Raised, tell: Tell) -> tuple[Stand, Raised, tuple[str, ...]]:
    """Return what the job stands at, all that is raised of it, and what is said of what was not raised before."""
    from guide.sheets.raised import raised_after, raised_lines
    from guide.survey.build import survey_from

    answers, at_end = look.now.answers, next_question(look.book, look.now.answers) is None
    done, was_done = done_walls(look.book, answers), done_walls(look.book, old)
    touched = {path.partition(".")[0] for path in changed_paths(old, answers)}
    wanted = bool(done) and (at_end or done != was_done or bool(touched & done))
    layout = _layout(look, look.now, tell) if wanted else None
    looked_at = {"basement", *(layout.by_letter if layout is not None else ())}
    raised = raised_after(before, _found(look, answers, layout), done, looked_at, at_end=at_end)
    survey = survey_from(look.book, answers)

    def guessed(length: Length) -> bool:
        return bool(survey.unsure(length.rests))

    lines = [*raised_lines(raised, tape_of(answers), guessed)]
    if layout is not None:
        closed = at_end and any(asked.path not in old for asked in expected(look.book, old))
        lines += _choices_told(look.book, layout, done - was_done, guessed, closed=closed)
    return Stand(answers, layout or look.now.layout), raised, tuple(lines)


def _choices_told(
    book: Book, layout: Layout, fresh: frozenset[str], guessed: Guessed, *, closed: bool
) -> Iterator[str]:
    """Yield what is left to choose on the walls just done, and at all corners once the last of them is."""
    from guide.layout.roles import roles_of
    from guide.reference.figures import load_figures
    from guide.sheets.roles import role_lines
    from guide.sheets.ways import way_lines

    for letter in layout.by_letter if fresh else ():
        if letter in fresh:
            yield from way_lines(book, layout, letter, guessed)
    if closed:
        yield from role_lines(book, roles_of(layout, load_figures()))
