"""The plan: everything that follows from the answers, made in one go."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from guide.book.questions import Book
from guide.buying.purchase import Purchase, buy
from guide.checks.check import check, stopped
from guide.checks.findings import Finding
from guide.interview.jobfile import Job
from guide.interview.signed import SignOff
from guide.layout.engine import lay_out
from guide.layout.parts import Layout, Part
from guide.layout.receptacles import proposed
from guide.layout.roles import Roles, roles_of
from guide.lengths import Length, Tape
from guide.order.crew import crew_of
from guide.order.evenings import Calendar, calendar_of
from guide.order.plan import Step, order_of_work
from guide.reference.codes import CodeProfile
from guide.reference.figures import load_figures
from guide.reference.office import Office
from guide.reference.prices import NO_PRICES, Prices
from guide.sheets.said import Said, said_so_far
from guide.sheets.signed import words_for
from guide.survey.build import code_of, survey_from
from guide.survey.model import Survey


@dataclass(frozen=True)
class Plan:
    """What wallbrief makes of a job."""

    note: str
    said: tuple[Said, ...]
    """The answers as understood."""
    survey: Survey
    layout: Layout
    code: CodeProfile
    findings: tuple[Finding, ...]
    prices: Prices
    steps: tuple[Step, ...]
    signed: tuple[SignOff, ...] = ()
    """The warnings signed off."""

    @cached_property
    def purchase(self) -> Purchase:
        """What to buy and how to cut it; worked out when a paper first asks, since the talk does without."""
        return buy(self.layout, self.prices)

    @cached_property
    def calendar(self) -> Calendar:
        """The work of the job in evenings."""
        return calendar_of(self.steps, crew_of(self.survey.basement, self.steps))

    @cached_property
    def outlets(self) -> tuple[Part, ...]:
        """The fewest outlets that the code asks for besides those given; none is built."""
        return proposed(self.layout, self.code)

    @cached_property
    def roles(self) -> Roles:
        """Who runs through at the corners, and what could be won by other roles."""
        return roles_of(self.layout, load_figures())

    @property
    def stopped(self) -> bool:
        """A STOP stands: no cut and no shopping list is printed."""
        return stopped(self.findings)

    @property
    def tape(self) -> Tape:
        """Which side of the tape the person reads."""
        return self.survey.basement.tape

    def signed_off(self, finding: Finding) -> str:
        """Return the words in which a WARN was signed off as it reads now; empty while it is not."""
        return words_for(finding, self.signed, self.survey)

    def guessed(self, length: Length) -> bool:
        """Say whether a length rests on anything that nobody measured."""
        return bool(self.survey.unsure(length.rests))


def make_plan(
    book: Book, job: Job, layout: Layout | None = None, prices: Prices = NO_PRICES, office: Office | None = None
) -> Plan:
    """Return the whole plan of a job. Pure: the same job and prices give the same plan. `layout` is the job's, if made.

    `office` holds the words of the person's own building office, which win over the model code.
    """
    survey = layout.survey if layout is not None else survey_from(book, job.answers)
    code = code_of(survey, office)
    layout = layout or lay_out(survey, code, load_figures())
    return Plan(
        note=job.note,
        said=said_so_far(book, job.answers),
        survey=layout.survey,
        layout=layout,
        code=code,
        findings=check(layout, code),
        prices=prices,
        steps=order_of_work(layout),
        signed=job.signed,
    )
