"""One open job: what is asked now, what a reply does, and the file it is kept in after every answer.

The app, the plain talk, the command line and the tests all talk to a `Session`; none of them holds an answer itself.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from guide.book.questions import Book
from guide.book.talk import load_talk
from guide.interview.answers import Answer, tape_of
from guide.interview.asking import Asked, Effect, applying, asked_at, next_question, previous_question, with_answers
from guide.interview.commands import Order, order_said
from guide.interview.history import History, changed_paths
from guide.interview.jobfile import Job, load
from guide.interview.replies import Sorry, clean
from guide.interview.values import doubt_about
from guide.open_job import PRICE_FILE, OpenJob
from guide.reference.glossary import look_up
from guide.sheets.carried import carried_out
from guide.sheets.look import Stand, look_over
from guide.sheets.said import read_back
from guide.sheets.shown import COLUMNS, letter_of, picture_lines
from guide.sheets.spoken import (
    answers_lines,
    effect_lines,
    help_lines,
    meaning_line,
    names_of,
    question_lines,
    say_of_talk,
    second_reading,
    told,
)
from guide.sheets.standing import standing_lines

if TYPE_CHECKING:
    from guide.interview.understand import Wish
    from guide.reference.office import Office
    from guide.survey.model import Problem


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


class Session(OpenJob):
    """The talk about one open job. `columns` is how wide a drawing in it may be; whoever shows the talk sets it."""

    def __init__(
        self, book: Book, job: Job, path: Path | None = None, office: Office | None = None, *, ascii_only: bool = False
    ) -> None:
        super().__init__(book, job, path, office, ascii_only=ascii_only)
        self._jumped: str | None = None
        self._pending: _Pending | None = None
        self._offered: tuple[Asked, Answer] | None = None
        self._answered: Asked | None = None
        self._later: frozenset[str] = frozenset()
        self._first: str | None = None
        self._history = History()
        self.columns = COLUMNS

    @classmethod
    def opened(cls, book: Book, path: Path, office: Office | None = None, *, ascii_only: bool = False) -> Session:
        """Open a job file. Raises JobFileError with one sentence; a file that does not exist is a new job."""
        return cls(book, load(path, book) if path.exists() else Job(), path, office, ascii_only=ascii_only)

    # ------------------------------------------------------------------------------------------- what stands

    @property
    def current(self) -> Asked | None:
        """The question asked now: one the person went back to, else the next; None when nothing is left to ask."""
        if self._jumped is not None:
            return next((a for a in applying(self.book, self.answers) if a.path == self._jumped), None) or self._next()
        return self._next()

    @property
    def worked_reply(self) -> str | None:
        """What a worked talk says to the current question; None in a talk that is no rehearsal."""
        return None

    def _next(self) -> Asked | None:
        return next_question(self.book, self.answers, self._later, self._first)

    # ------------------------------------------------------------------------------------------- how it is said

    def question_lines(self) -> tuple[str, ...]:
        """Return what to say to ask the current question: the question, its choices, an old answer to keep or change."""
        asked = self.current
        return (say_of_talk("all_done"),) if asked is None else question_lines(self.answers, asked)

    def help_lines(self) -> tuple[str, ...]:
        """Return why the current question is asked, how to measure, and what else can be said."""
        return help_lines(self.answers, self.current)

    # ------------------------------------------------------------------------------------------- what happens

    def reply(self, text: str) -> Turn:
        """Take a reply, and tell as well what a stored answer brings to light."""
        turn = self.take(text)
        look = self.look() if self._since is not None else None
        lines = self.take_in(look, look_over(look)) if look is not None else None
        return Turn((*turn.lines, *(lines or ())), turn.stored)

    def take(self, text: str) -> Turn:
        """Take a reply to the current question: store an answer, grant a wish, or say in one sentence what is wrong.

        What an answer brings to light is not looked for here; that is what `look` is for.
        """
        from guide.interview.understand import Correction, Several, Wish, hear  # not before the first reply

        if self._pending is not None:
            return self._answer_pending(text)
        offered, self._offered = self._offered, None
        if offered is not None and load_talk().wish(clean(text)) in ("yes", "keep"):
            return self._take(offered)
        order = order_said(self.answers, text)
        if order is not None and order.command == "sign" and (turn := self._sign_off(order, text)):
            return turn
        if order is not None and order.command not in ("piece", "sign"):
            return self.carry_out(order)
        if order is not None and (lines := self._told_of(order.words, text)):
            return Turn(lines)
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

    def carry_out(self, order: Order) -> Turn:
        """Do what a command asks: with walls, with the place in the talk, or show how things stand."""
        if order.command == "standing":
            return Turn(standing_lines(self.book, self.answers, self.layout))
        if order.command == "findings":
            return Turn(self.findings_lines())
        if order.command in ("draw", "section", "floor"):
            letter, ascii_only = letter_of(order.wall, self._here), self.ascii_only
            return Turn(picture_lines(self.layout, order.command, letter, self.columns, ascii_only=ascii_only))
        carried = carried_out(self.book, self.answers, order)
        if carried.answers is not None:
            self._history = self._history.after(self.job)
            self._change_to(carried.answers)
        self._jumped, self._answered, self._offered, self._pending = carried.path, None, None, None
        self._first = carried.wall if carried.wall or carried.answers is not None else self._first
        moved = carried.answers is not None or carried.path is not None or carried.wall is not None
        return Turn((*carried.lines, *(self._saved() if carried.answers is not None else ())), stored=moved)

    def _sign_off(self, order: Order, typed: str) -> Turn | None:
        """Sign a warning off in the person's own words; None when the reply names no finding and is to be heard as a reply."""
        from guide.sheets.pointed import as_typed
        from guide.sheets.signed import sign_off

        because, last = as_typed(order.words, typed), self._raised_last
        said, signed = sign_off(self.plan.findings, last, self.job.signed, self.survey, order.finding, because)
        if signed is not None:
            self._history = self._history.after(self.job)
            self._go_on_with(replace(self.job, signed=signed))
        return Turn((said, *(self._saved() if signed is not None else ())), stored=signed is not None) if said else None

    def _told_of(self, words: str, typed: str) -> tuple[str, ...]:
        """Tell of the finding or the piece that is asked about; nothing when a word of the trade is meant, or none."""
        if "." in words and (lines := self.finding_lines(words)):
            return lines
        from guide.sheets.pointed import as_typed, pieces_meant

        names = () if look_up(words) else pieces_meant(self.layout, as_typed(words, typed), self._here)
        return self.piece_lines(names) if names else ()

    @property
    def _here(self) -> str:
        """The letter of the wall that is asked about; empty while it is none."""
        return self.current.place.partition(".")[0] if self.current is not None else ""

    def change(self, path: str) -> Turn:
        """Go to an answer given earlier, to change it. Nothing changes until the new answer is given."""
        asked = asked_at(self.book, path)
        if asked is None or (path not in self.answers and not asked.question.on_request):
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
        return self._move(self._history.undone(self.job), "undone", "nothing_to_undo")

    def redo(self) -> Turn:
        """Do again what was taken back last."""
        return self._move(self._history.redone(self.job), "redone", "nothing_to_redo")

    def _move(self, moved: tuple[Job, History] | None, key: str, nothing: str) -> Turn:
        if moved is None:
            return Turn((say_of_talk(nothing),))
        job, self._history = moved
        names = names_of(self.book, self.answers, changed_paths(self.answers, job.answers)) or say_of_talk("your_word")
        self._before, self._since = Stand(self.answers, self._layout), None
        self._go_on_with(job)
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
        return Turn((*(self.why_lines() if wish.wanted == "why" else ()), *told(self.answers, asked, wish)))

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
        from guide.interview.corrections import said_again
        from guide.interview.meanings import asked_back

        wanted = load_talk().wish(clean(text))
        if wanted == "back":
            return self.back()
        if wanted in ("undo", "redo"):
            return self.undo() if wanted == "undo" else self.redo()
        if wanted == "why" and (lines := self.why_lines()):
            return Turn(lines)
        if (back := asked_back(None, clean(text))) is not None:
            return Turn((meaning_line(self.answers, back[1]),))
        again = said_again(clean(text))
        if again and self._answered is not None:
            self._jumped = self._answered.path
            return self.take(again)
        return Turn((say_of_talk("all_done"), say_of_talk("commands")))

    def _take(self, *given: _Given) -> Turn:
        """Store answers, unless they change one on which others hang: then say what would happen, and wait."""
        for asked, answer in given:
            if asked.path == PRICE_FILE and (trouble := self.price_trouble(str(answer.value or ""))):
                return Turn((trouble,))
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
        again = [line for asked, answer in given for line in second_reading(self.answers, asked, answer)]
        self._history = self._history.after(self.job)
        self._change_to(new)
        self._since = self._since or self._before
        lines = list(answers_lines(self.book, self.answers, given))
        lines += again if self._jumped is not None else ()
        fresh = [problem for problem in self._problems() if problem not in before]
        if fresh:
            self._doubt_all(fresh)
            lines += [self._said(problem) for problem in fresh]
            lines.append(say_of_talk("which_is_wrong"))
        self._jumped = None
        of_a_wall = "." not in given[0][0].place  # “no, 5” speaks of how many, not of what the last one holds
        self._answered = given[0 if of_a_wall else -1][0]
        return Turn((*lines, *self._saved()), stored=True)

    def _doubt_all(self, problems: list[Problem]) -> None:
        """Put every answer of a contradiction in doubt, so that it is asked again."""
        paths = [path for problem in problems for path in problem.paths if path in self.answers]
        self._set({**self.answers, **{path: self.answers[path].doubted() for path in paths}})
