"""Understanding a reply: an answer, a wish, or one sentence saying what would be understood. Rules only, no guessing."""

from __future__ import annotations

import re
from contextlib import suppress
from dataclasses import dataclass, replace

from guide.book.questions import Book, Question
from guide.book.talk import Wanted, load_talk
from guide.interview.answers import Answer, Answers, Certainty, bare_of
from guide.interview.around import Core, core_of
from guide.interview.asking import Asked
from guide.interview.corrections import correction, without_correction
from guide.interview.in_one_breath import in_one_breath
from guide.interview.loosely import guessed, read_loosely, size_called
from guide.interview.meanings import asked_back
from guide.interview.places import from_the_left, place_said, wall_length
from guide.interview.readings import how_known
from guide.interview.replies import LONGEST_TEXT, Sorry, clean, sorry
from guide.interview.same import same_as
from guide.interview.several import several
from guide.interview.spread import spread
from guide.interview.values import example_of, pick, read_value
from guide.lengths import in_figures


@dataclass(frozen=True, slots=True)
class Wish:
    """The person wants something instead of answering."""

    wanted: Wanted
    about: str = ""
    """The word that is to be explained."""


@dataclass(frozen=True, slots=True)
class Correction:
    """The reply was meant for the question before."""

    path: str
    answer: Answer


@dataclass(frozen=True, slots=True)
class Several:
    """The reply answers several questions, each by its path, in the order asked."""

    answers: tuple[tuple[str, Answer], ...]


Heard = Answer | Wish | Correction | Several


def hear(book: Book, answers: Answers, asked: Asked, reply: str, before: Asked | None = None) -> Heard:
    """Understand a reply to a question: an answer, a wish such as “why” or “back”, or a correction of the answer before.

    `before` is the question whose answer was read back last; without it nothing is taken for a correction. “Don't know”
    and “usual” become answers here, by what the book says of the question. Raises Sorry with one sentence when the reply
    is not one clear answer, with the nearest reading where there is one; nothing is stored then.
    """
    talk, question, bare = load_talk(), asked.question, bare_of(answers)
    typed = clean(reply)
    if not typed:
        raise sorry("say_something", example=example_of(question, bare))
    if len(typed) > LONGEST_TEXT:
        raise sorry("too_long", most=LONGEST_TEXT)
    if question.kind == "choice" and (choice := pick(question, typed)):
        return Answer(choice.id, Certainty.MEASURED, typed)
    if (size := size_called(question, typed)) is not None:
        return Answer(size, Certainty.MEASURED, typed)
    if wanted := talk.wish(typed) or talk.wish(re.sub(r"[,;:]", "", typed)):
        return _wish(answers, asked, wanted, typed)
    if back := asked_back(question, typed):
        return Wish(*back)
    old = answers.get(before.path) if before is not None else None
    if before is not None and old is not None and (new := correction(asked, before, old, typed, bare)):
        return Correction(before.path, new)
    if (copy := same_as(answers, asked, typed, bare)) is not None:
        return copy
    if question.kind == "text":
        plain = talk.folded(re.sub(r"[,;:]", "", typed))
        return Answer("none" if plain in talk.understood.nothing else typed, Certainty.MEASURED, typed)
    return _answered(book, answers, asked, without_correction(typed), typed)


def _answered(book: Book, answers: Answers, asked: Asked, text: str, typed: str) -> Answer | Several:
    """Read an answer: as it stands, as a place said from somewhere else, as several, or without the words round it."""
    question, bare = asked.question, bare_of(answers)
    core = core_of(text)
    found = several(book, answers, asked, core.text, bare) if question.opens else None
    if found is not None and len(found) > 1:  # “two windows” says more than two
        return _all_of(found, core, typed)
    if question.kind in ("length", "count", "choice"):
        for each, hedged in ((text, False), (core.text, core.hedged)):
            with suppress(Sorry):
                read = read_value(question, each, bare)
                if question.kind != "choice" or not each.isdecimal():
                    return Answer(*guessed(question, read, Core(each, hedged)), typed)
    if question.places:
        length = wall_length(answers, asked.place)
        if (spots := spread(question, core.text, length, bare)) is not None:
            return Answer(*guessed(question, (spots, how_known(spots)), core), typed)
        text = from_the_left(in_figures(text.lower()), length, bare)  # an “and” inside a size parts no readings
    if (point := place_said(book, answers, asked.place, question, core.text, bare)) is not None:
        return replace(point, typed=typed, known=Certainty.EYEBALLED if core.hedged else point.known)
    found = found or several(book, answers, asked, core.text, bare) or several(book, answers, asked, text, bare)
    if found is None and (whole := in_one_breath(book, answers, asked, text if core.hedged else core.text, bare)):
        return Several(tuple((path, replace(each, typed=typed)) for path, each in whole.items()))
    if found:
        all_of = _all_of(found, core, typed)
        return all_of.answers[0][1] if list(found) == [asked.path] else all_of
    return Answer(*read_loosely(question, text, bare), typed)


def _all_of(found: dict[str, Answer], core: Core, typed: str) -> Several:
    """Return several answers with what was typed, each as a guess where the person said so of the whole."""
    kept = ((path, replace(each, typed=typed)) for path, each in found.items())
    return Several(tuple((path, _hedged(each) if core.hedged else each) for path, each in kept))


def _hedged(answer: Answer) -> Answer:
    return replace(answer, known=Certainty.EYEBALLED) if answer.known is Certainty.MEASURED else answer


def usual_answer(question: Question, typed: str) -> Answer | None:
    """Return the usual answer of a question: settled for a choice, only assumed for anything that a tape would tell."""
    if question.usual is None:
        return None
    value, _ = read_value(question, question.usual, "in")
    guess = question.kind in ("length", "readings")
    return Answer(value, Certainty.ASSUMED if guess else Certainty.MEASURED, typed)


def unknown_answer(question: Question, typed: str) -> Answer:
    """Return what “don't know” gives: the book's value as an assumption, or an answer without a value."""
    if question.unknown.take is None:
        return Answer(None, Certainty.UNKNOWN, typed)
    value, _ = read_value(question, question.unknown.take, "in")
    return Answer(value, Certainty.MEASURED if question.unknown.settled else Certainty.ASSUMED, typed)


def _wish(answers: Answers, asked: Asked, wanted: Wanted, typed: str) -> Answer | Wish:
    question, bare = asked.question, bare_of(answers)
    old = answers.get(asked.path)
    in_doubt = old is not None and old.confirm
    if wanted == "dont_know":
        return unknown_answer(question, typed)
    if wanted == "usual":
        if answer := usual_answer(question, typed):
            return answer
        raise sorry("no_usual", example=example_of(question, bare))
    if old is not None and (wanted == "keep" or (wanted == "yes" and in_doubt)):
        return old.confirmed()
    may_be_none = question.kind == "text" or (question.kind == "count" and not int(question.least or 0))
    if may_be_none and (wanted == "none" or (wanted == "no" and not in_doubt)):
        return Answer(0 if question.kind == "count" else "none", Certainty.MEASURED, typed)
    said_so = wanted in ("yes", "no", "none") and typed.lower() != "not" and not in_doubt
    if question.kind == "choice" and said_so and (choice := pick(question, wanted)):
        return Answer(choice.id, Certainty.MEASURED, typed)
    if wanted in ("keep", "yes", "no", "none"):
        raise sorry("not_yes_or_no", example=example_of(question, bare))
    return Wish(wanted)
