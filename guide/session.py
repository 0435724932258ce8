"""One open job: what is asked now, what a reply does, and the file it is kept in after every answer.

The app, the plain talk, the command line and the tests all talk to a `Session`; none of them holds an answer itself.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from guide.book.questions import Book
from guide.book.talk import load_talk
from guide.interview.answers import Answer, Answers, Certainty
from guide.interview.asking import Asked, Effect, applying, asked_at, next_question, previous_question, with_answers
from guide.interview.corrections import said_again
from guide.interview.history import History, changed_paths
from guide.interview.jobfile import Job, load, save
from guide.interview.replies import Sorry, clean
from guide.interview.understand import Correction, Several, Wish, doubt_about, hear, tape_of
from guide.reference.figures import load_figures
from guide.reference.office import Office
from guide.reference.sayings import say
from guide.sheets.said import Said, place_title, read_back, said_so_far
from guide.sheets.spoken import effect_lines, filled, help_lines, names_of, question_lines, say_of_talk, told
from guide.survey.build import code_of, survey_from
from guide.survey.model import Problem, Survey

if TYPE_CHECKING:
    from guide.layout.parts import Layout
    from guide.sheets.plan import Plan
    from guide.sheets.twice import Doubtful


@dataclass(frozen=True, slots=True)
class Turn:
    """What a reply led to: lines to say, and whether an answer was stored."""

    lines: tuple[str, ...]
    stored: bool = False


_Given = tuple[Asked, Answer]


@dataclass(frozen=True, slots=True)
class _Pending:
    """Changed answers that touch others, waiting for the person's yes."""

    given: tuple[_Given, ...]
    effect: Effect


class Session:
    """One open job. `path` is where it is kept; None keeps it in memory only."""

    def __init__(self, book: Book, job: Job, path: Path | None = None, office: Office | None = None) -> None:
        self.book = book
        self.office = office
        self.path = path
        self._job = job
        self._jumped: str | None = None
        self._pending: _Pending | None = None
        self._offered: tuple[Asked, Answer] | None = None
        self._answered: Asked | None = None
        self._later: frozenset[str] = frozenset()
        self._history = History()
        self._survey: Survey | None = None
        self._layout: Layout | None = None
        self._plan: Plan | None = None
        self._again: tuple[Doubtful, ...] | None = None

    @classmethod
    def opened(cls, book: Book, path: Path, office: Office | None = None) -> Session:
        """Open a job file. Raises JobFileError with one sentence; a file that does not exist is a new job."""
        return cls(book, load(path, book) if path.exists() else Job(), path, office)

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
            self._layout = lay_out(self.survey, code_of(self.survey, self.office), load_figures())
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
            self._plan = make_plan(self.book, self._job, self.layout, office=self.office)
        return self._plan

    @property
    def again(self) -> tuple[Doubtful, ...]:
        """The readings to tape again before the first cut; it takes a layout for each reading, so only papers ask."""
        from guide.sheets.twice import tape_again  # the talk need not wait for it

        if self._again is None:
            self._again = tape_again(self.book, self.answers)
        return self._again

    def counts(self) -> tuple[int, int, int]:
        """Return how many questions that apply are answered and in no doubt, how many apply, and how many are guessed."""
        asked = [self.answers.get(each.path) for each in applying(self.book, self.answers)]
        given = [answer for answer in asked if answer is not None]
        done = sum(not answer.confirm for answer in given)
        guessed = sum(answer.known is not Certainty.MEASURED for answer in given)
        return done, len(asked), guessed

    def _next(self) -> Asked | None:
        return next_question(self.book, self.answers, self._later)

    # ------------------------------------------------------------------------------------------- how it is said

    def heading(self, asked: Asked) -> str:
        """Return where a question belongs, in words."""
        return place_title(self.answers, asked.place)

    def heading_of(self, place: str) -> str:
        """Return a place in words."""
        return place_title(self.answers, place)

    def question_lines(self) -> tuple[str, ...]:
        """Return what to say to ask the current question: the question, its choices, an old answer to keep or change."""
        asked = self.current
        return (say_of_talk("all_done"),) if asked is None else question_lines(self.answers, asked)

    def help_lines(self) -> tuple[str, ...]:
        """Return why the current question is asked, how to measure, and what else can be said."""
        return help_lines(self.answers, self.current)

    # ------------------------------------------------------------------------------------------- what happens

    def reply(self, text: str) -> Turn:
        """Take a reply to the current question: store an answer, grant a wish, or say in one sentence what is wrong."""
        if self._pending is not None:
            return self._answer_pending(text)
        offered, self._offered = self._offered, None
        if offered is not None and load_talk().wish(clean(text)) in ("yes", "keep"):
            return self._take(offered)
        asked = self.current
        if asked is None:
            return self._after_the_end(text)
        try:
            heard = hear(self.book, self.answers, asked, text, self._answered)
        except Sorry as sorry:
            return self._asked_back(asked, sorry, text)
        if isinstance(heard, Wish):
            return self._grant(heard)
        if isinstance(heard, Correction):
            return self._take(*self._given([(heard.path, heard.answer)]))
        if isinstance(heard, Several):
            return self._take(*self._given(heard.answers))
        return self._take((asked, heard))

    def _given(self, answers: Iterable[tuple[str, Answer]]) -> tuple[_Given, ...]:
        found = ((asked_at(self.book, path), answer) for path, answer in answers)
        return tuple((asked, answer) for asked, answer in found if asked is not None)

    def _asked_back(self, asked: Asked, sorry: Sorry, text: str) -> Turn:
        """Say why a reply was not taken, and offer the nearest reading of it where there is one."""
        self._answered = self._answered if sorry.path else None
        if sorry.nearest is None:
            return Turn((str(sorry),))
        meant = asked_at(self.book, sorry.path) if sorry.path else asked
        assert meant is not None
        answer = Answer(*sorry.nearest, clean(text))
        self._offered = (meant, answer)
        if sorry.path:
            return Turn((str(sorry),))
        value = read_back(asked.question, answer, tape_of(self.answers))
        return Turn((str(sorry), say_of_talk("nearest", value=f"{value.rstrip('.')}.")))

    def change(self, path: str) -> Turn:
        """Go to an answer given earlier, to change it. Nothing changes until the new answer is given."""
        asked = asked_at(self.book, path)
        if asked is None or path not in self.answers:
            return Turn((say_of_talk("no_such_answer", path=clean(path)),))
        self._jumped, self._pending = path, None
        return Turn(())

    def back(self) -> Turn:
        """Go to the question answered before the current one."""
        asked = self.current
        before = previous_question(self.book, self.answers, asked.path if asked else None)
        if before is None:
            return Turn((say_of_talk("at_the_start"),))
        return self.change(before.path)

    def go_on(self) -> Turn:
        """Leave a question the person went back to, its answer unchanged."""
        self._jumped, self._pending = None, None
        return Turn(())

    def undo(self) -> Turn:
        """Take the last change of the answers back."""
        return self._move(self._history.undone(self.answers), "undone", "nothing_to_undo")

    def redo(self) -> Turn:
        """Do again what was taken back last."""
        return self._move(self._history.redone(self.answers), "redone", "nothing_to_redo")

    def _move(self, moved: tuple[Answers, History] | None, key: str, nothing: str) -> Turn:
        if moved is None:
            return Turn((say_of_talk(nothing),))
        answers, self._history = moved
        names = names_of(self.book, self.answers, changed_paths(self.answers, answers))
        self._set(dict(answers))
        self._jumped = self._pending = self._offered = self._answered = None
        return Turn((say_of_talk(key, names=names), *self._saved()), stored=True)

    def _grant(self, wish: Wish) -> Turn:
        asked = self.current
        assert asked is not None
        simple = {"back": self.back, "undo": self.undo, "redo": self.redo}
        if wish.wanted in simple:
            return simple[wish.wanted]()
        if wish.wanted == "later":
            return self._leave_for_later(asked)
        return Turn(told(self.answers, asked, wish))

    def _leave_for_later(self, asked: Asked) -> Turn:
        """Ask the other questions first; nothing is stored, so that the question is open still when the job is opened again."""
        self._jumped = None
        self._later |= {asked.path}
        lines = [say_of_talk("left_for_later", name=asked.question.short)]
        open_now = self._next()
        if open_now is not None and open_now.path in self._later:
            lines.append(say_of_talk("later_now", names=names_of(self.book, self.answers, self._left())))
        return Turn(tuple(lines), stored=True)

    def _left(self) -> tuple[str, ...]:
        return tuple(
            a.path for a in applying(self.book, self.answers) if a.path in self._later and a.path not in self.answers
        )

    def _after_the_end(self, text: str) -> Turn:
        wanted = load_talk().wish(clean(text))
        if wanted == "back":
            return self.back()
        if wanted in ("undo", "redo"):
            return self.undo() if wanted == "undo" else self.redo()
        again = said_again(clean(text))
        if again and self._answered is not None:
            self._jumped = self._answered.path
            return self.reply(again)
        return Turn((say_of_talk("all_done"), say_of_talk("commands")))

    def _take(self, *given: _Given) -> Turn:
        """Store answers, unless they change one on which others hang: then say what would happen, and wait."""
        changes = any(asked.path in self.answers for asked, _ in given)
        given = tuple((asked, self._with_doubt(asked, answer)) for asked, answer in given)
        new, effect = with_answers(self.book, self.answers, {asked.path: answer for asked, answer in given})
        if changes and effect.touches:
            self._pending = _Pending(given, effect)
            return Turn((*effect_lines(self.book, self.answers, effect), say_of_talk("go_ahead")))
        return self._store(given, new)

    def _with_doubt(self, asked: Asked, answer: Answer) -> Answer:
        """Mark a suspicious answer; the same answer given again, or kept, is confirmed by that."""
        old = self.answers.get(asked.path)
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
            given = {asked.path: answer for asked, answer in pending.given}
            return self._store(pending.given, with_answers(self.book, self.answers, given)[0])
        if wanted == "no":
            self._pending, self._jumped = None, None
            return Turn((say_of_talk("left_as_it_was"),))
        return Turn((*effect_lines(self.book, self.answers, pending.effect), say_of_talk("go_ahead")))

    def _store(self, given: tuple[_Given, ...], new: dict[str, Answer]) -> Turn:
        before = set(self._problems())
        self._history = self._history.after(self.answers)
        self._set(new)
        lines = [line for asked, answer in given for line in self._read_back(asked, answer, alone=len(given) == 1)]
        fresh = [problem for problem in self._problems() if problem not in before]
        if fresh:
            self._doubt_all(fresh)
            lines += [self._said(problem) for problem in fresh]
            lines.append(say_of_talk("which_is_wrong"))
        self._jumped = None
        self._answered = given[-1][0]
        return Turn((*lines, *self._saved()), stored=True)

    def _read_back(self, asked: Asked, answer: Answer, *, alone: bool) -> Iterator[str]:
        """Yield an answer said back, what not knowing it does, and why it is in doubt; its place where there are several."""
        name = asked.question.short if alone else names_of(self.book, self.answers, (asked.path,))
        yield say_of_talk("understood", name=name, value=read_back(asked.question, answer, tape_of(self.answers)))
        if answer.value is None or "know" in answer.typed.lower():
            yield asked.question.unknown.say
        doubt = doubt_about(asked.question, answer.value) if answer.confirm else None
        if doubt is not None:
            yield say_of_talk("doubt", why=filled(self.answers, asked, doubt.say))

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

    def _set(self, answers: dict[str, Answer]) -> None:
        self._job = replace(self._job, answers=answers)
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
