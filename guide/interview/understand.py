"""Understanding a reply: an answer, a wish, or one sentence saying what would be understood. Rules only, no guessing."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from guide.book.questions import Book, Doubt, Question
from guide.book.talk import Talk, Wanted, load_talk
from guide.interview.answers import Answer, Answers, Certainty, Spot, Value, fact_of, path_of, scope_of, wall_letter
from guide.interview.asking import Asked
from guide.interview.corrections import correction, without_correction
from guide.interview.loosely import read_loosely, size_called
from guide.interview.meanings import asked_back
from guide.interview.replies import LONGEST_TEXT, clean, sorry
from guide.interview.values import example_of, pick, read_value
from guide.lengths import Bare, Length, Tape, inches


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


Heard = Answer | Wish | Correction


def tape_of(answers: Answers) -> Tape:
    """Return which side of the tape the person reads; inches until they say otherwise."""
    return "millimetres" if fact_of(answers.get("basement.tape")) == "millimetres" else "inches"


def bare_of(answers: Answers) -> Bare:
    """Return the unit of a number typed without one."""
    return "mm" if tape_of(answers) == "millimetres" else "in"


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
    if (other := _same_as(talk, typed)) and (copy := _copied(answers, asked, other, typed)):
        return copy
    if question.kind == "text":
        plain = talk.folded(re.sub(r"[,;:]", "", typed))
        return Answer("none" if plain in talk.understood.nothing else typed, Certainty.MEASURED, typed)
    value, known = read_loosely(question, without_correction(typed), bare)
    return Answer(value, known, typed)


def doubt_about(question: Question, value: Value) -> Doubt | None:
    """Return why an answer in range is still suspicious, or None."""
    sizes = [value] if isinstance(value, Length) else []
    if question.kind == "readings" and isinstance(value, tuple):
        sizes = [spot.size for spot in value if isinstance(spot, Spot)]
    for doubt in question.doubts:
        if doubt.is_ is not None and value == doubt.is_:
            return doubt
        if doubt.above and any(size > inches(doubt.above) for size in sizes):
            return doubt
        if doubt.below and any(size < inches(doubt.below) for size in sizes):
            return doubt
        if doubt.spread and sizes and max(sizes) - min(sizes) > inches(doubt.spread):
            return doubt
    return None


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
    if question.kind in ("count", "text") and (wanted == "none" or (wanted == "no" and not in_doubt)):
        return Answer(0 if question.kind == "count" else "none", Certainty.MEASURED, typed)
    said_so = wanted in ("yes", "no", "none") and typed.lower() != "not" and not in_doubt
    if question.kind == "choice" and said_so and (choice := pick(question, wanted)):
        return Answer(choice.id, Certainty.MEASURED, typed)
    if wanted in ("keep", "yes", "no", "none"):
        raise sorry("not_yes_or_no", example=example_of(question, bare))
    return Wish(wanted)


def _same_as(talk: Talk, typed: str) -> str | None:
    """Return what stands after “same as”, or None when the reply does not begin so."""
    plain = talk.folded(typed)
    for start in sorted(talk.same_as, key=len, reverse=True):
        if plain.startswith(f"{start} "):
            return plain.removeprefix(start).strip()
    return None


def _copied(answers: Answers, asked: Asked, other: str, typed: str) -> Answer | None:
    """Return another wall's answer, in doubt if it is; None for free words that only begin like that."""
    letter = _wall_called(answers, other)
    if letter is None and asked.question.kind == "text" and len(other) > 2:
        return None
    if scope_of(asked.place) != "wall":
        raise sorry("same_only_walls")
    answer = answers.get(path_of(letter or other, asked.question.id))
    if letter == asked.place or answer is None or answer.value is None:
        raise sorry("same_as_nothing", typed=letter or other, short=asked.question.short)
    return replace(answer, typed=typed)


def _wall_called(answers: Answers, other: str) -> str | None:
    """Return the letter of the wall that is called so, by its letter or by its name."""
    walls = answers.get("basement.walls")
    names = walls.value if walls is not None and isinstance(walls.value, tuple) else ()
    plain = re.sub(r"^the\s+|\s+wall$", "", other)
    for index, name in enumerate(names):
        if plain == wall_letter(index).lower() or str(name).lower() in (plain, other):
            return wall_letter(index)
    return None
