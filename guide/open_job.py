"""The job on the desk: its answers, what they give, and the file it is kept in after every change.

It owns one promise: what is asked of it (survey, layout, plan) belongs to the answers of now, worked out once.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from guide.book.questions import Book
from guide.interview.answers import Answer, Answers, Certainty
from guide.interview.asking import expected
from guide.interview.history import changed_paths
from guide.interview.jobfile import Job, save
from guide.interview.understand import tape_of
from guide.lengths import Length
from guide.reference.figures import load_figures
from guide.reference.office import Office
from guide.reference.prices import NO_PRICES, PriceFileError, prices_beside
from guide.reference.sayings import say
from guide.sheets.said import Said, place_title, said_so_far
from guide.sheets.spoken import say_of_talk
from guide.sheets.standing import standing_line, standing_of
from guide.survey.build import code_of, survey_from
from guide.survey.model import Problem, Survey

if TYPE_CHECKING:
    from guide.checks.findings import Finding
    from guide.layout.kept import Kept
    from guide.layout.parts import Layout
    from guide.sheets.actions import Action
    from guide.sheets.changes import Changes
    from guide.sheets.plan import Plan
    from guide.sheets.raised import Raised
    from guide.sheets.twice import Doubtful

PRICE_FILE = "basement.price_file"
"""The answer that names a file: it is stored only if the file can be read."""

KEPT_PER_WALL = 8
"""Things a layout works out of a wall, twice: those of now and those before the last answer."""


class OpenJob:
    """One open job. `path` is where it is kept; None keeps it in memory only.

    `ascii_only` is for a terminal that has no characters but ASCII: so it is drawn then.
    """

    def __init__(
        self, book: Book, job: Job, path: Path | None = None, office: Office | None = None, *, ascii_only: bool = False
    ) -> None:
        self.book = book
        self.ascii_only = ascii_only
        self.office = office
        self.path = path
        self._job = job
        self._survey: Survey | None = None
        self._layout: Layout | None = None
        self._plan: Plan | None = None
        self._prices = NO_PRICES
        self._again: tuple[Doubtful, ...] | None = None
        self._was: tuple[Answers, Layout | None] | None = None
        self._raised: Raised | None = None
        self._kept: Kept = {}

    @property
    def job(self) -> Job:
        """The job as it is now."""
        return self._job

    @property
    def answers(self) -> Answers:
        """The answers as they are now."""
        return self._job.answers

    @property
    def survey(self) -> Survey:
        """What the answers so far say of the basement."""
        if self._survey is None:
            self._survey = survey_from(self.book, self.answers)
        return self._survey

    @property
    def layout(self) -> Layout:
        """The layout of the answers so far."""
        if self._layout is None:
            self._layout = self._laid_out(self.survey)
        return self._layout

    def _laid_out(self, survey: Survey) -> Layout:
        from guide.layout.engine import lay_out  # the first question need not wait for it
        from guide.layout.kept import forget

        layout = lay_out(survey, code_of(survey, self.office), load_figures(), self._kept)
        forget(self._kept, KEPT_PER_WALL * len(survey.walls))
        return layout

    def changes(self, letter: str) -> Changes:
        """What the last change of the answers made of a wall."""
        from guide.sheets.changes import Changes, changes  # nor for this

        if self._was is None:
            return Changes()
        answers, layout = self._was
        layout = layout or self._laid_out(survey_from(self.book, answers))
        self._was = answers, layout
        return changes(layout.by_letter.get(letter), self.layout.by_letter.get(letter))

    @property
    def said(self) -> tuple[Said, ...]:
        """The answers so far as understood, in the order asked."""
        return said_so_far(self.book, self.answers)

    @property
    def plan(self) -> Plan:
        """The whole plan of the answers so far, with the prices that stand in the person's file now."""
        from guide.sheets.plan import make_plan  # the first question need not wait for checks, lists and steps

        self.price_trouble()
        if self._plan is None:
            self._plan = make_plan(self.book, self._job, self.layout, self._prices, self.office)
        elif self._plan.prices != self._prices:
            self._plan = replace(self._plan, prices=self._prices)
        return self._plan

    def price_trouble(self, name: str | None = None) -> str:
        """Read the price file of this name, else the one named in the answers; one sentence when it cannot be used.

        Then the prices that were read last stay.
        """
        try:
            said = self.survey.basement.price_file or "" if name is None else name
            self._prices = prices_beside(said, self.path.parent if self.path is not None else Path())
        except PriceFileError as error:
            return str(error)
        return ""

    @property
    def again(self) -> tuple[Doubtful, ...] | None:
        """The readings to tape again before the first cut; None until somebody has worked them out for these answers."""
        return self._again

    def keep_again(self, answers: Answers, again: tuple[Doubtful, ...]) -> None:
        """Keep what was worked out of answers beside the talk, unless they are others by now."""
        if answers == self.answers:
            self._again = again

    def first_look(self) -> Callable[[], object]:
        """Return the work of looking the job over as the first answer will: done beside the talk, that one has not to wait."""
        return partial(self._found, self.survey, self._layout)

    def counts(self) -> tuple[int, int, int]:
        """Return how many questions that apply are answered and in no doubt, how many apply, and how many are guessed."""
        asked = [self.answers.get(each.path) for each in expected(self.book, self.answers)]
        given = [answer for answer in asked if answer is not None]
        done = sum(not answer.confirm for answer in given)
        guessed = sum(answer.known is not Certainty.MEASURED for answer in given)
        return done, len(asked), guessed

    def _problems(self) -> tuple[Problem, ...]:
        return self.survey.problems

    def problem_lines(self) -> tuple[str, ...]:
        """Return the contradictions that stand in the answers, each in one sentence."""
        return tuple(self._said(problem) for problem in self._problems())

    def trouble_lines(self) -> tuple[str, ...]:
        """Return the contradictions, and what is wrong with the price file, each in one sentence."""
        trouble = self.price_trouble()
        return (*self.problem_lines(), *((trouble,) if trouble else ()))

    def _said(self, problem: Problem) -> str:
        return say(problem.saying, tape_of(self.answers))

    def heading(self, place: str) -> str:
        """Return a place in words."""
        return place_title(self.answers, place)

    def standing(self, letter: str | None) -> str:
        """Return how far a wall can be trusted, in one line; the basement without one."""
        return standing_line(self.answers, standing_of(self.book, self.answers, self.layout, letter or ""))

    def piece_lines(self, names: tuple[str, ...]) -> tuple[str, ...]:
        """Tell of the one piece, or thing on a wall, of this name; of several only which they are."""
        from guide.sheets.piece import told_of_pieces  # checks and lists are loaded when somebody points at a piece

        return told_of_pieces(self.book, self.answers, self.plan, names)

    def piece_line(self, name: str) -> str:
        """Return a piece, or a thing on a wall, in one line."""
        from guide.sheets.piece import piece_line

        return piece_line(self.plan, name)

    def findings_lines(self) -> tuple[str, ...]:
        """Return everything found so far, a line for each, the worst first."""
        from guide.sheets.raised import one_line_each

        return tuple(one_line_each(self.plan)) or (say_of_talk("no_findings"),)

    def finding_lines(self, name: str) -> tuple[str, ...]:
        """Tell the whole of the findings of that name, `A.edge_missed` in any capitals; nothing when there is none."""
        from guide.sheets.raised import whole_lines

        named = [each for each in self.plan.findings if each.name.lower() == name.lower()]
        return whole_lines(named, self.plan)

    def why_lines(self) -> tuple[str, ...]:
        """Tell the whole of what the last answer brought to light; nothing when it brought nothing."""
        from guide.sheets.raised import whole_lines

        return whole_lines(self._raised.last, self.plan) if self._raised is not None and self._raised.last else ()

    def _done(self, answers: Answers) -> frozenset[str]:
        """Return the letters of the walls about which nothing is left to ask."""
        open_now = {a.path for a in expected(self.book, answers) if a.path not in answers or answers[a.path].confirm}
        letters = {path.partition(".")[0] for path in answers} - {"basement"}
        return frozenset(letters - {path.partition(".")[0] for path in open_now})

    def _raise_findings(self, *, at_end: bool) -> tuple[str, ...]:
        """Return what the last change of the answers brought to light, each thing once; what stood before it is no news.

        The walls are laid out for it only where the change was about one that is done, or made it so.
        """
        from guide.sheets.raised import Raised, raised_after, raised_lines

        assert self._was is not None
        if self._raised is None:
            old, layout = self._was
            survey = survey_from(self.book, old)
            stood = self._found(survey, layout or (self._laid_out(survey) if self._done(old) else None))
            self._raised = Raised(frozenset(each.name for each in stood))
        done, was_done = self._done(self.answers), self._done(self._was[0])
        touched = {path.partition(".")[0] for path in changed_paths(self._was[0], self.answers)}
        laid_out = bool(done) and (at_end or done != was_done or bool(touched & done))
        found = self._found(self.survey, self.layout if laid_out else None)
        looked_at = {"basement", *(self.layout.by_letter if laid_out else ())}
        self._raised = raised_after(self._raised, found, done, looked_at, at_end=at_end)
        lines = raised_lines(self._raised, tape_of(self.answers), self._guessed)
        closed = at_end and any(a.path not in self._was[0] for a in expected(self.book, self._was[0]))
        fresh = done - was_done if laid_out else frozenset[str]()
        return (*lines, *self._choices_told(fresh, closed=closed))

    def _choices_told(self, fresh: frozenset[str], *, closed: bool) -> Iterator[str]:
        """Yield what is left to choose on the walls just done, and at all corners once the last of them is."""
        from guide.layout.roles import roles_of
        from guide.sheets.roles import role_lines
        from guide.sheets.ways import way_lines

        for letter in self.layout.by_letter if fresh else ():
            if letter in fresh:
                yield from way_lines(self.book, self.layout, letter, self._guessed)
        if closed:
            yield from role_lines(self.book, roles_of(self.layout, load_figures()))

    def _guessed(self, length: Length) -> bool:
        return bool(self.survey.unsure(length.rests))

    def _found(self, survey: Survey, layout: Layout | None) -> tuple[Finding, ...]:
        from guide.checks.check import basement_findings, check

        code = code_of(survey, self.office)
        return basement_findings(survey, code) if layout is None else check(layout, code)

    def decides(self, name: str) -> tuple[Action, ...]:
        """Return what the person can say to decide otherwise what was decided of a piece, or of a thing on a wall."""
        from guide.sheets.piece import decides

        return decides(self.book, self.answers, self.layout, name)

    def _change_to(self, answers: dict[str, Answer]) -> None:
        """Go on with other answers, and keep what was there before them to tell what they changed."""
        self._was = self.answers, self._layout
        self._set(answers)

    def _set(self, answers: dict[str, Answer]) -> None:
        self._go_on_with(replace(self._job, answers=answers))

    def _go_on_with(self, job: Job) -> None:
        self._job = job
        self._survey = self._layout = self._plan = self._again = None

    def _saved(self) -> tuple[str, ...]:
        """Write the job file; when that fails say so, and keep everything in memory."""
        if self.path is None:
            return ()
        try:
            save(self.path, self.book, self._job)
        except OSError as error:
            return (say_of_talk("not_saved", path=str(self.path), why=error.strerror or str(error)),)
        return ()
