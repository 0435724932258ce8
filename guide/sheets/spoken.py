"""What the talk says besides what the person is told of an answer: the question, its help, what a change would touch."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Iterator, Sequence
from difflib import get_close_matches
from typing import TYPE_CHECKING, Literal

from guide.book.questions import Book, Question
from guide.book.talk import load_talk
from guide.interview.answers import Answer, Answers, Certainty, Spot, bare_of, tape_of, wall_index
from guide.interview.asking import Asked, Effect, asked_at, is_partition
from guide.interview.values import doubt_about, example_of
from guide.lengths import Length, retold, with_unit
from guide.reference.glossary import load_glossary, look_up
from guide.reference.sketches import sketch_of
from guide.sheets.said import place_title, read_back, thing_title, value_shown, wall_title

if TYPE_CHECKING:
    from guide.interview.understand import Wish

_ASCII = str.maketrans({"“": '"', "”": '"', "„": '"', "’": "'", "‘": "'", "–": "-", "—": "-", "…": "...", "⁄": "/"})
"""Signs of our sentences that have no ASCII character of their own; of fractions Unicode knows the figures."""

MANY = 3
"""Things that are alike in what was said of them, from which on it is said back once."""


def say_of_talk(key: str, **values: str) -> str:
    """Return the sentence of that name in `prompts_data/talk.toml`, its values filled in."""
    return load_talk().say[key].format(**values)


def in_ascii(text: str) -> str:
    """Return text for a terminal that has nothing but ASCII: plain quotes, fractions with a stroke, ? for what is left.

    >>> in_ascii("“4½ ft” – naïve")
    '"4 1/2 ft" - naive'
    """
    spaced = unicodedata.normalize("NFKD", re.sub(r"(?<=\d)(?=[¼½¾⅐-⅞])", " ", text)).translate(_ASCII)
    letters = (char for char in spaced if not unicodedata.combining(char))
    return "".join(char if char.isascii() else "?" for char in letters)


def filled(answers: Answers, asked: Asked, text: str) -> str:
    """Fill a question's text with the wall and the thing it is asked of, its sizes as the person's tape has them."""
    place = asked.place
    letter = place.partition(".")[0]
    names = {"wall": wall_title(answers, letter) if place != "basement" else ""}
    if "." in place:
        names["thing"] = thing_title(place)
    return retold(text, tape_of(answers)).format_map(names)


def asked_words(answers: Answers, asked: Asked, what: Literal["ask", "why", "how"]) -> str:
    """Return what a question asks, why, or how to measure, as it is said of the wall it is asked of."""
    partition = asked.place != "basement" and is_partition(answers, wall_index(asked.place))
    return filled(answers, asked, asked.question.worded(what, partition=partition))


def question_lines(answers: Answers, asked: Asked) -> tuple[str, ...]:
    """Return what to say to ask a question: the question, its choices, an old answer to keep or change."""
    question = asked.question
    lines = [asked_words(answers, asked, "ask")]
    lines += [f"  {number}  {choice.say}" for number, choice in enumerate(question.choices, 1)]
    old = answers.get(asked.path)
    if old is not None:
        shown = value_shown(question, old.value, tape_of(answers))
        lines.append(say_of_talk("in_doubt" if old.confirm else "old_answer", value=shown))
    elif not question.choices:
        lines.append(
            say_of_talk("usual_is" if question.usual is not None else "like_this", value=example(answers, question))
        )
    return tuple(lines)


def example(answers: Answers, question: Question) -> str:
    """Return an answer that would be understood, in the person's unit."""
    return example_of(question, bare_of(answers))


def help_lines(answers: Answers, asked: Asked | None) -> tuple[str, ...]:
    """Return why a question is asked, how to measure, and what else can be said."""
    if asked is None:
        return (say_of_talk("commands"),)
    question = asked.question
    return (
        say_of_talk("why", text=asked_words(answers, asked, "why")),
        say_of_talk("how", text=asked_words(answers, asked, "how")),
        *sketch_lines(question),
        say_of_talk("dont_know", text=filled(answers, asked, question.unknown.say)),
        say_of_talk("commands"),
    )


def sketch_lines(question: Question) -> tuple[str, ...]:
    """Return the sketch that goes with a question's “how”, all its lines as one text; nothing where it has none."""
    sketch = sketch_of(question.ref)
    return (sketch,) if sketch else ()


def told(answers: Answers, asked: Asked, wish: Wish) -> tuple[str, ...]:
    """Return what a person gets who asks something back: why, how, the question again, an example, what a word means, help."""
    question = asked.question
    if wish.wanted == "repeat":
        return question_lines(answers, asked)
    if wish.wanted == "meaning":
        return (meaning_line(answers, wish.about),)
    if wish.wanted == "example":
        return (say_of_talk("example", value=example(answers, question)),)
    if wish.wanted == "sketch":
        return sketch_lines(question) or (say_of_talk("no_sketch"),)
    if wish.wanted == "why":
        return (asked_words(answers, asked, "why"),)
    if wish.wanted == "how":
        return (asked_words(answers, asked, "how"), *sketch_lines(question))
    return help_lines(answers, asked)


def answer_lines(book: Book, answers: Answers, asked: Asked, answer: Answer, *, alone: bool) -> Iterator[str]:
    """Yield an answer said back, what not knowing it does, and why it is in doubt; its place where there are several."""
    name = asked.question.short if alone else names_of(book, answers, (asked.path,))
    yield say_of_talk("understood", name=name, value=read_back(asked.question, answer, tape_of(answers)))
    if answer.value is None or "know" in answer.typed.lower():
        yield filled(answers, asked, asked.question.unknown.say)
    doubt = doubt_about(asked.question, answer.value) if answer.confirm else None
    if doubt is not None:
        yield say_of_talk("doubt", why=filled(answers, asked, doubt.say))


def answers_lines(book: Book, answers: Answers, given: Sequence[tuple[Asked, Answer]]) -> Iterator[str]:
    """Yield answers given in one reply, said back; a choice that many things share is said once, of the first to the last."""
    for asked, answer in given:
        alike = [each for each, other in given if (each.question, other) == (asked.question, answer)]
        if asked.question.kind != "choice" or len(alike) < MANY:
            yield from answer_lines(book, answers, asked, answer, alone=len(given) == 1)
        elif asked == alike[0]:
            letter, _, last = alike[-1].place.partition(".")
            places = {"first": thing_title(asked.place), "last": last.removeprefix(asked.question.scope)}
            name = say_of_talk("alike", name=asked.question.short, wall=wall_title(answers, letter), **places)
            yield say_of_talk("understood", name=name, value=read_back(asked.question, answer, tape_of(answers)))


def second_reading(answers: Answers, asked: Asked, new: Answer) -> Iterator[str]:
    """Yield that a size taped a second time is further from the first than taping explains, and how far."""
    from guide.reference.figures import load_figures  # the first question need not wait for them

    old, tape, figures = answers.get(asked.path), tape_of(answers), load_figures()
    if old is None or {old.known, new.known} != {Certainty.MEASURED}:
        return
    before, after = (_sizes(each) for each in (old, new))
    for place in before:
        if place in after and (apart := abs(before[place] - after[place])) > figures.slip_long:
            read, far = with_unit(before[place], tape), with_unit(apart, tape)
            yield say_of_talk("second_apart", name=asked.question.short, old=read, apart=far)
            return


def _sizes(answer: Answer) -> dict[object, Length]:
    """Return the sizes of an answer by the place they were read at."""
    if isinstance(answer.value, Length):
        return {None: answer.value}
    return (
        {each.at: each.size for each in answer.value if isinstance(each, Spot)}
        if isinstance(answer.value, tuple)
        else {}
    )


def meaning_line(answers: Answers, word: str) -> str:
    """Return what a word of the trade means; for a word that is not in the glossary, the nearest that is."""
    if entry := look_up(word):
        return f"{entry.word}: {retold(entry.says, tape_of(answers))}"
    near = get_close_matches(word.lower(), [entry.word for entry in load_glossary()], n=1, cutoff=0.75)
    return say_of_talk("near_words", word=word, near=near[0]) if near else say_of_talk("no_such_word", word=word)


def effect_lines(book: Book, answers: Answers, effect: Effect) -> tuple[str, ...]:
    """Return what a change would do to other answers, by name."""
    keys = (("parks", effect.parked), ("brings_back", effect.back), ("puts_in_doubt", effect.confirm))
    return tuple(say_of_talk(key, names=names_of(book, answers, paths)) for key, paths in keys if paths)


def names_of(book: Book, answers: Answers, paths: Iterable[str]) -> str:
    """Return what answers are called, each with the wall or the thing it belongs to."""
    return ", ".join(_name(answers, asked) for path in paths if (asked := asked_at(book, path)) is not None)


def _name(answers: Answers, asked: Asked) -> str:
    short = asked.question.short
    return short if asked.place == "basement" else f"{short} ({place_title(answers, asked.place)})"
