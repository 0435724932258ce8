"""The job on the desk: its answers, what they give, and the file it is kept in after every change.

It owns one promise: what is asked of it (survey, layout, plan) belongs to the answers of now, worked out once.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from guide.book.questions import Book
from guide.interview.answers import Answer, Answers, Certainty, tape_of
from guide.interview.asking import expected
from guide.interview.jobfile import Job, save
from guide.reference.sayings import say
from guide.sheets.look import Look, Seen, Stand, lay_out_again
from guide.sheets.said import Said, place_title, said_so_far
from guide.sheets.spoken import say_of_talk
from guide.sheets.standing import standing_line, standing_of

if TYPE_CHECKING:  # the first question need not wait for what the rest is worked out with
    from guide.checks.findings import Finding
    from guide.layout.kept import Kept
    from guide.layout.parts import Layout
    from guide.reference.office import Office
    from guide.reference.prices import Prices
    from guide.sheets.actions import Action
    from guide.sheets.changes import Changes
    from guide.sheets.plan import Plan
    from guide.sheets.raised import Raised
    from guide.sheets.twice import Doubtful
    from guide.survey.model import Problem, Survey

PRICE_FILE = "basement.price_file"
"""The answer that names a file: it is stored only if the file can be read."""


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
        self._prices: Prices | None = None
        self._again: tuple[Doubtful, ...] | None = None
        self._before: Stand | None = None
        self._since: Stand | None = None
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
        from guide.survey.build import survey_from

        if self._survey is None:
            self._survey = survey_from(self.book, self.answers)
        return self._survey

    @property
    def layout(self) -> Layout:
        """The layout of the answers so far."""
        if self._layout is None:
            self._layout = lay_out_again(self.survey, self.office, self._kept)
        return self._layout

    # ------------------------------------------------------------------------------------------- looked over

    def look(self, *, drawn: bool = False) -> Look | None:
        """Return what is to be looked over now, to be done at once or beside the talk; None when all of it is known.

        `drawn` is for a talk beside which the walls are seen.
        """
        now, before = Stand(self.answers, self._layout), self._before
        known = now.layout is not None and (before is None or before.layout is not None)
        if self._raised is not None and self._since is None and (known or not drawn):
            return None
        kept = dict(self._kept)
        return Look(self.book, self.office, self._job, now, before, self._since, self._raised, drawn, kept)

    def take_in(self, look: Look, seen: Seen) -> tuple[str, ...] | None:
        """Take in what came of a look, and return what is to be said of it; None when the job is another by now."""
        if look.job is not self._job:
            return None
        self._layout, self._before, self._kept = seen.now.layout or self._layout, seen.before, look.kept
        if look.since is not self._since:  # another look has told of it
            return ()
        self._raised, self._since = seen.raised, None
        return seen.lines

    def changes(self, letter: str) -> Changes:
        """What the last change of the answers made of a wall."""
        from guide.sheets.changes import Changes, changes
        from guide.survey.build import survey_from

        if self._before is None:
            return Changes()
        answers, layout = self._before.answers, self._before.layout
        layout = layout or lay_out_again(survey_from(self.book, answers), self.office, self._kept)
        self._before = Stand(answers, layout)
        return changes(layout.by_letter.get(letter), self.layout.by_letter.get(letter))

    @property
    def said(self) -> tuple[Said, ...]:
        """The answers so far as understood, in the order asked."""
        return said_so_far(self.book, self.answers)

    @property
    def plan(self) -> Plan:
        """The whole plan of the answers so far, with the prices that stand in the person's file now."""
        from guide.reference.prices import NO_PRICES
        from guide.sheets.plan import make_plan

        self.price_trouble()
        prices = self._prices or NO_PRICES
        if self._plan is None:
            self._plan = make_plan(self.book, self._job, self.layout, prices, self.office)
        elif self._plan.prices != prices:
            self._plan = replace(self._plan, prices=prices)
        return self._plan

    def price_trouble(self, name: str | None = None) -> str:
        """Read the price file of this name, else the one named in the answers; one sentence when it cannot be used.

        Then the prices that were read last stay.
        """
        from guide.reference.prices import PriceFileError, prices_beside

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

    @property
    def contradicted(self) -> bool:
        """Whether answers contradict each other; unknown, so not said, before anybody has looked at the job."""
        return self._raised is not None and bool(self._problems())

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
        from guide.sheets.piece import told_of_pieces

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

        return whole_lines(self._raised_last, self.plan) if self._raised_last else ()

    @property
    def _raised_last(self) -> tuple[Finding, ...]:
        """What the last answer brought to light; nothing while that has not been looked for yet."""
        return self._raised.last if self._raised is not None and self._since is None else ()

    def signable(self) -> tuple[Action, ...]:
        """Return the beginning of what signs off each warning that is not signed off yet, the one raised last first."""
        from guide.sheets.raised import signable

        return signable(self.plan, self._raised_last)

    def decides(self, name: str) -> tuple[Action, ...]:
        """Return what the person can say to decide otherwise what was decided of a piece, or of a thing on a wall."""
        from guide.sheets.piece import decides

        return decides(self.book, self.answers, self.layout, name)

    def _change_to(self, answers: dict[str, Answer]) -> None:
        """Go on with other answers, and keep what was there before them to tell what they changed."""
        self._before = Stand(self.answers, self._layout)
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
