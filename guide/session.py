"""One open job: what is asked now, what a reply does, and the file it is kept in after every answer.

The app, the plain talk, the command line and the tests all talk to a `Session`; none of them holds an answer itself.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from guide.book.questions import Book
from guide.book.talk import load_talk
from guide.interview.answers import Answer, Answers, Certainty
from guide.interview.asking import Asked, Effect, applying, asked_at, next_question, previous_question, with_answer
from guide.interview.jobfile import Job, load, save
from guide.interview.replies import Sorry, clean
from guide.interview.understand import Wish, bare_of, doubt_about, hear, tape_of
from guide.interview.values import example_of
from guide.reference.codes import load_code
from guide.reference.figures import load_figures
from guide.reference.sayings import say
from guide.sheets.said import Said, place_title, read_back, said_so_far, thing_title, value_shown, wall_title
from guide.survey.build import survey_from
from guide.survey.model import Problem, Survey

if TYPE_CHECKING:
    from guide.layout.parts import Layout
    from guide.sheets.plan import Plan


@dataclass(frozen=True, slots=True)
class Turn:
    """What a reply led to: lines to say, and whether an answer was stored."""

    lines: tuple[str, ...]
    stored: bool = False


@dataclass(frozen=True, slots=True)
class _Pending:
    """A changed answer that touches others, waiting for the person's yes."""

    asked: Asked
    answer: Answer
    effect: Effect


class Session:
    """One open job. `path` is where it is kept; None keeps it in memory only."""

    def __init__(self, book: Book, job: Job, path: Path | None = None) -> None:
        self.book = book
        self.path = path
        self._job = job
        self._jumped: str | None = None
        self._pending: _Pending | None = None
        self._survey: Survey | None = None
        self._layout: Layout | None = None
        self._plan: Plan | None = None

    @classmethod
    def opened(cls, book: Book, path: Path) -> Session:
        """Open a job file. Raises JobFileError with one sentence; a file that does not exist is a new job."""
        return cls(book, load(path, book) if path.exists() else Job(), path)

    # ------------------------------------------------------------------------------------------- what stands

    @property
    def job(self) -> Job:
        """The job as it is now."""
        return self._job

    @property
    def answers(self) -> Answers:
        """The answers as they are now."""
        return self._job.answers

    @property
    def current(self) -> Asked | None:
        """The question asked now: one the person went back to, else the next; None when nothing is left to ask."""
        if self._jumped is not None:
            return next((a for a in applying(self.book, self.answers) if a.path == self._jumped), None) or self._next()
        return self._next()

    @property
    def survey(self) -> Survey:
        """What the answers so far say of the basement."""
        if self._survey is None:
            self._survey = survey_from(self.book, self.answers)
        return self._survey

    @property
    def layout(self) -> Layout:
        """The layout of the answers so far."""
        from guide.layout.engine import lay_out  # the first question need not wait for it

        if self._layout is None:
            self._layout = lay_out(self.survey, load_code(), load_figures())
        return self._layout

    @property
    def said(self) -> tuple[Said, ...]:
        """The answers so far as understood, in the order asked."""
        return said_so_far(self.book, self.answers)

    @property
    def plan(self) -> Plan:
        """The whole plan of the answers so far."""
        from guide.sheets.plan import make_plan  # the first question need not wait for checks, lists and steps

        if self._plan is None:
            self._plan = make_plan(self.book, self._job, self.layout)
        return self._plan

    def counts(self) -> tuple[int, int, int]:
        """Return how many questions that apply are answered and in no doubt, how many apply, and how many are guessed."""
        asked = [self.answers.get(each.path) for each in applying(self.book, self.answers)]
        given = [answer for answer in asked if answer is not None]
        done = sum(not answer.confirm for answer in given)
        guessed = sum(answer.known is not Certainty.MEASURED for answer in given)
        return done, len(asked), guessed

    def _next(self) -> Asked | None:
        return next_question(self.book, self.answers)

    # ------------------------------------------------------------------------------------------- how it is said

    def words(self, asked: Asked, text: str) -> str:
        """Fill a question's text with the wall and the thing it is asked of."""
        place = asked.place
        letter = place.partition(".")[0]
        names = {"wall": wall_title(self.answers, letter) if place != "basement" else ""}
        if "." in place:
            names["thing"] = thing_title(place)
        return text.format_map(names)

    def heading(self, asked: Asked) -> str:
        """Return where a question belongs, in words."""
        return place_title(self.answers, asked.place)

    def heading_of(self, place: str) -> str:
        """Return a place in words."""
        return place_title(self.answers, place)

    def question_lines(self) -> tuple[str, ...]:
        """Return what to say to ask the current question: the question, its choices, an old answer to keep or change."""
        asked = self.current
        if asked is None:
            return (self._say("all_done"),)
        lines = [self.words(asked, asked.question.ask)]
        lines += [f"  {number}  {choice.say}" for number, choice in enumerate(asked.question.choices, 1)]
        old = self.answers.get(asked.path)
        if old is not None:
            shown = value_shown(asked.question, old.value, tape_of(self.answers))
            lines.append(self._say("in_doubt" if old.confirm else "old_answer", value=shown))
        elif not asked.question.choices:
            key = "usual_is" if asked.question.usual is not None else "like_this"
            lines.append(self._say(key, value=example_of(asked.question, bare_of(self.answers))))
        return tuple(lines)

    def help_lines(self) -> tuple[str, ...]:
        """Return why the current question is asked, how to measure, and what else can be said."""
        asked = self.current
        if asked is None:
            return (self._say("commands"),)
        question = asked.question
        return (
            self._say("why", text=self.words(asked, question.why)),
            self._say("how", text=self.words(asked, question.how)),
            self._say("dont_know", text=question.unknown.say),
            self._say("commands"),
        )

    def _say(self, key: str, **values: str) -> str:
        return load_talk().say[key].format(**values)

    # ------------------------------------------------------------------------------------------- what happens

    def reply(self, text: str) -> Turn:
        """Take a reply to the current question: store an answer, grant a wish, or say in one sentence what is wrong."""
        if self._pending is not None:
            return self._answer_pending(text)
        asked = self.current
        if asked is None:
            return self._after_the_end(text)
        try:
            heard = hear(self.book, self.answers, asked, text)
        except Sorry as sorry:
            return Turn((str(sorry),))
        if isinstance(heard, Wish):
            return self._grant(heard)
        return self._take(asked, heard)

    def change(self, path: str) -> Turn:
        """Go to an answer given earlier, to change it. Nothing changes until the new answer is given."""
        asked = asked_at(self.book, path)
        if asked is None or path not in self.answers:
            return Turn((self._say("no_such_answer", path=clean(path)),))
        self._jumped, self._pending = path, None
        return Turn(())

    def back(self) -> Turn:
        """Go to the question answered before the current one."""
        asked = self.current
        before = previous_question(self.book, self.answers, asked.path if asked else None)
        if before is None:
            return Turn((self._say("at_the_start"),))
        return self.change(before.path)

    def go_on(self) -> Turn:
        """Leave a question the person went back to, its answer unchanged."""
        self._jumped, self._pending = None, None
        return Turn(())

    def _grant(self, wish: Wish) -> Turn:
        if wish.wanted == "back":
            return self.back()
        asked = self.current
        assert asked is not None
        if wish.wanted == "why":
            return Turn((self.words(asked, asked.question.why),))
        if wish.wanted == "how":
            return Turn((self.words(asked, asked.question.how),))
        return Turn(self.help_lines())

    def _after_the_end(self, text: str) -> Turn:
        if load_talk().wish(clean(text)) == "back":
            return self.back()
        return Turn((self._say("all_done"), self._say("commands")))

    def _take(self, asked: Asked, answer: Answer) -> Turn:
        """Store an answer, unless it changes one on which others hang: then say what would happen, and wait."""
        old = self.answers.get(asked.path)
        answer = self._with_doubt(asked, answer, old)
        new, effect = with_answer(self.book, self.answers, asked.path, answer)
        if old is not None and effect.touches:
            self._pending = _Pending(asked, answer, effect)
            return Turn((*self._effect_lines(effect), self._say("go_ahead")))
        return self._store(asked, answer, new)

    def _with_doubt(self, asked: Asked, answer: Answer, old: Answer | None) -> Answer:
        """Mark a suspicious answer; the same answer given again, or kept, is confirmed by that."""
        if doubt_about(asked.question, answer.value) is None:
            return answer
        again = old is not None and old.value == answer.value
        return answer if again else answer.doubted()

    def _answer_pending(self, text: str) -> Turn:
        pending = self._pending
        assert pending is not None
        wanted = load_talk().wish(clean(text))
        if wanted in ("yes", "keep"):
            self._pending = None
            new, _ = with_answer(self.book, self.answers, pending.asked.path, pending.answer)
            return self._store(pending.asked, pending.answer, new)
        if wanted == "no":
            self._pending, self._jumped = None, None
            return Turn((self._say("left_as_it_was"),))
        return Turn((*self._effect_lines(pending.effect), self._say("go_ahead")))

    def _store(self, asked: Asked, answer: Answer, new: dict[str, Answer]) -> Turn:
        before = set(self._problems())
        self._set(new)
        tape = tape_of(self.answers)
        lines = [self._say("understood", name=asked.question.short, value=read_back(asked.question, answer, tape))]
        if answer.value is None or "know" in answer.typed.lower():
            lines.append(asked.question.unknown.say)
        doubt = doubt_about(asked.question, answer.value) if answer.confirm else None
        if doubt is not None:
            lines.append(self._say("doubt", why=self.words(asked, doubt.say)))
        fresh = [problem for problem in self._problems() if problem not in before]
        if fresh:
            self._doubt_all(fresh)
            lines += [self._said(problem) for problem in fresh]
            lines.append(self._say("which_is_wrong"))
        self._jumped = None
        return Turn((*lines, *self._saved()), stored=True)

    def _doubt_all(self, problems: list[Problem]) -> None:
        """Put every answer of a contradiction in doubt, so that it is asked again."""
        paths = [path for problem in problems for path in problem.paths if path in self.answers]
        self._set({**self.answers, **{path: self.answers[path].doubted() for path in paths}})

    def _problems(self) -> tuple[Problem, ...]:
        return self.survey.problems

    def problem_lines(self) -> tuple[str, ...]:
        """Return the contradictions that stand in the answers, each in one sentence."""
        return tuple(self._said(problem) for problem in self._problems())

    def _said(self, problem: Problem) -> str:
        return say(problem.saying, tape_of(self.answers))

    def _effect_lines(self, effect: Effect) -> tuple[str, ...]:
        keys = (("parks", effect.parked), ("brings_back", effect.back), ("puts_in_doubt", effect.confirm))
        return tuple(self._say(key, names=", ".join(map(self._name, paths))) for key, paths in keys if paths)

    def _name(self, path: str) -> str:
        asked = asked_at(self.book, path)
        assert asked is not None
        return asked.question.short if asked.place == "basement" else f"{asked.question.short} ({self.heading(asked)})"

    def _set(self, answers: dict[str, Answer]) -> None:
        self._job = replace(self._job, answers=answers)
        self._survey = self._layout = self._plan = None

    def _saved(self) -> tuple[str, ...]:
        """Write the job file; when that fails say so, and keep everything in memory."""
        if self.path is None:
            return ()
        try:
            save(self.path, self.book, self._job)
        except OSError as error:
            return (self._say("not_saved", path=str(self.path), why=error.strerror or str(error)),)
        return ()
