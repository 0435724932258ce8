"""Several answers in one reply: what is counted with what each of them is, and several sizes of one thing.

    two windows, 30 wide, one at 4 ft the other at 11'6      no pipes, no outlets      4 ft, 30 wide, 24 tall

Things are put in the order they stand along the wall, for that is how they are asked about. What fits nowhere, or could
be two things, gives the whole reply up, to be asked back.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from guide.book.conditions import Fact, holds, tests_in
from guide.book.questions import Book, Question
from guide.book.talk import load_talk
from guide.interview.answers import Answer, Answers, Certainty, Value, fact_of, item_place, path_of, scope_of
from guide.interview.asking import Asked
from guide.interview.replies import Sorry, read_size
from guide.interview.scanning import Chosen, Event, Next, Sized, Unexplained, choices_named, scanned, words_of
from guide.lengths import Bare, Length, as_written

Given = dict[str, tuple[Value, Certainty]]
"""What is said of one thing, by question id."""
Facts = Mapping[str, Fact]
"""What is known of it, as conditions see it."""


@dataclass(frozen=True, slots=True)
class _Group:
    """One count in a reply, with what is said of the things counted."""

    opener: Question
    count: int
    things: tuple[Given, ...]


def several(book: Book, answers: Answers, asked: Asked, typed: str, bare: Bare) -> dict[str, Answer] | None:
    """Return the answers in a reply by their path, in the order asked; None when it is not several clear ones."""
    try:
        if asked.question.opens and scope_of(asked.place) == "wall":
            found = _counted(book, asked, words_of(typed), bare)
        elif "." in asked.place:
            found = _from_to(book, asked, typed, bare) or _of_one_thing(book, answers, asked, words_of(typed), bare)
        else:
            return None
    except (Unexplained, Sorry):
        return None
    return {path: Answer(value, known, typed) for path, (value, known) in found.items()} or None


# ------------------------------------------------------------------------------------------------- one thing's sizes


def _of_one_thing(book: Book, answers: Answers, asked: Asked, words: Sequence[str], bare: Bare) -> Given:
    """Read several answers about the thing that is asked about; a size without a label answers the question asked."""
    questions = book.by_scope[scope_of(asked.place)]
    facts: Facts = {q.id: fact_of(answers.get(path_of(asked.place, q.id))) for q in questions}
    when = asked.question.when
    if when is not None and when.of is not None and when.is_ is not None:  # it is asked, so that holds
        facts = {**facts, when.of.partition(".")[2]: when.is_}
    thing: Given = {}
    events = scanned(words, _heard_in_passing(questions, asked.question), bare)
    for event in events:
        if isinstance(event, Next):
            raise Unexplained("one")
        if isinstance(event, Chosen):
            if not may_apply(next(q for q in questions if q.id == event.question_id), {**facts, **_facts(thing)}):
                raise Unexplained(event.choice_id)
            _set(thing, event.question_id, (event.choice_id, Certainty.MEASURED))
        elif asked.question.kind != "length" or (event.label and not _is_of(event.label, asked.question)):
            _put(questions, {**facts, **_facts(thing)}, thing, event, _labels_said(events))
        else:
            _set(thing, asked.question.id, _in_range(asked.question, event))
    return {path_of(asked.place, q.id): thing[q.id] for q in questions if q.id in thing}


def _is_of(label: str, question: Question) -> bool:
    """Say whether a word beside a size is one that the question itself goes by: “above the slab”, of any height."""
    return label in question.labels or label in question.ask.lower()


def _heard_in_passing(questions: Sequence[Question], asked: Question | None = None) -> list[Question]:
    """Leave out what is only asked on request: nobody decides that in passing."""
    return [question for question in questions if not question.on_request or question is asked]


def _from_to(book: Book, asked: Asked, typed: str, bare: Bare) -> Given:
    """Read both ends of the thing whose left end is asked for, said as from the one to the other; nothing when not said so."""
    ends = {q.place: q for q in book.by_scope[scope_of(asked.place)]}
    said = re.fullmatch(r"(?:from )?(?P<left>(?=\S*\d).+?) to (?P<right>(?=\S*\d).+)", typed.strip().lower())
    if said is None or asked.question.place != "left end" or "right end" not in ends:
        return {}
    pairs = ((asked.question, said["left"]), (ends["right end"], said["right"]))
    return {path_of(asked.place, q.id): read_size(q, text, bare) for q, text in pairs}


def _facts(thing: Given) -> Facts:
    return {key: str(value) for key, (value, _) in thing.items()}


def _labels_said(events: Sequence[Event]) -> frozenset[str]:
    return frozenset(event.label for event in events if isinstance(event, Sized))


def _put(questions: Sequence[Question], facts: Facts, thing: Given, event: Sized, said: frozenset[str]) -> None:
    """Give a size to the one question that its label means; of two it means, not to the one that has a label of its own."""
    possible = [q for q in questions if event.label in q.labels and may_apply(q, facts)]
    if len(possible) > 1:
        others = said - {event.label}
        possible = [q for q in possible if not any([q] == [p for p in possible if each in p.labels] for each in others)]
    if len(possible) != 1:
        raise Unexplained(event.label)
    _set(thing, possible[0].id, _in_range(possible[0], event))


def _in_range(question: Question, event: Sized) -> tuple[Value, Certainty]:
    if len(event.sizes) != 1:
        raise Unexplained(event.label)
    size, known = event.sizes[0]
    read_size(question, as_written(size), bare="in")
    return size, known


def may_apply(question: Question, facts: Facts) -> bool:
    """Say whether a question may be asked of a thing, as far as is known of it."""
    tests = [test.of or "" for test in tests_in(question.when)]
    ids = [ref.partition(".")[2] for ref in tests if ref.partition(".")[0] == question.scope]
    if any(facts.get(each) is None for each in ids) or len(ids) < len(tests):
        return True
    return holds(question.when, lambda ref: facts.get(ref.partition(".")[2]))


def _set(thing: Given, question_id: str, value: tuple[Value, Certainty]) -> None:
    if question_id in thing and thing[question_id] != value:
        raise Unexplained(question_id)
    thing[question_id] = value


# ------------------------------------------------------------------------------------------------- counts and what of


@dataclass(frozen=True, slots=True)
class _Cut:
    """Where a count stands in a reply, and what it counts."""

    opener: Question
    count: int
    noun: str
    start: int
    end: int
    adjectives: tuple[str, ...] = ()


def _counted(book: Book, asked: Asked, words: list[str], bare: Bare) -> Given:
    """Read counts of things on a wall with what is said of them."""
    openers = [question for question in book.by_scope["wall"] if question.opens]
    cuts = list(_cuts(openers, asked.question, words))
    if not cuts or cuts[0].start > 0:
        raise Unexplained("count")
    found: Given = {}
    groups: dict[str, list[_Group]] = {}
    cuts = _listed(book, cuts)
    for cut, end in zip(cuts, [*(cut.start for cut in cuts[1:]), len(words)], strict=True):
        groups.setdefault(cut.opener.id, []).append(_group(book, cut, words[cut.end : end], bare))
    for opener in openers:
        if opener.id in groups:
            found |= _together(book, asked.place, opener, groups[opener.id])
    return found


def _cuts(openers: Sequence[Question], current: Question, words: list[str]) -> Iterator[_Cut]:
    """Find every count with its noun: “two windows”, “no pipes”; after a “no”, “or outlets” is one more."""
    talk = load_talk()
    at, denied = 0, False
    while at < len(words):
        number = int(words[at]) if words[at].isdecimal() and len(words[at]) < 3 else talk.counts.get(words[at])
        if denied and words[at] in ("or", "and", "nor", ","):
            noun = _noun(openers, current, words, at + 1)
            if noun is not None and noun[3] == ():
                yield _Cut(noun[0], 0, noun[1], at, noun[2])
                at = noun[2]
                continue
        if number is not None and (noun := _noun(openers, current, words, at + 1)) is not None:
            start = at - 1 if at and words[at - 1] == "and" else at
            yield _Cut(noun[0], number, noun[1], start, noun[2], noun[3])
            at, denied = noun[2], number == 0
            continue
        if at == 0 and number is not None and words[1:2] == [","]:
            yield _Cut(current, number, "", 0, 1)
        at += 1


def _listed(book: Book, cuts: list[_Cut]) -> list[_Cut]:
    """Return the counts without one that only sums up those after it: “two pipes, a drain and a water line” are two.

    A noun that is one kind of the things, as windows is, counts those alone.
    """
    first, rest = cuts[0], cuts[1:]
    if first.count < 2 or not rest or any(cut.opener is not first.opener for cut in rest) or first.adjectives:
        return cuts
    assert first.opener.opens is not None
    if any(_of_one_kind(_heard_in_passing(book.by_scope[first.opener.opens]), noun) for noun in first.noun.split()):
        return cuts
    if sum(cut.count for cut in rest) != first.count:
        raise Unexplained("count")
    return rest


def _noun(
    openers: Sequence[Question], current: Question, words: list[str], at: int
) -> tuple[Question, str, int, tuple[str, ...]] | None:
    """Return what a count counts, with up to two words between that say which kind of it."""
    for between in range(3):
        if any(word in (",", ";", *load_talk().counts) for word in words[at : at + between]):
            break
        for length in (2, 1):
            noun = " ".join(words[at + between : at + between + length])
            for opener in openers:
                if (noun in opener.counted or (noun == "ones" and opener is current)) and len(noun.split()) == length:
                    return opener, noun, at + between + length, tuple(words[at : at + between])
    return None


def _group(book: Book, cut: _Cut, words: Sequence[str], bare: Bare) -> _Group:
    assert cut.opener.opens is not None
    questions = _heard_in_passing(book.by_scope[cut.opener.opens])
    common: Given = {}
    own: list[Given] = [{} for _ in range(cut.count)]
    for question_id, choice_id in _kind_named(questions, cut) if cut.count else ():
        _set(common, question_id, (choice_id, Certainty.MEASURED))
    at: int | None = None
    begun: set[int] = set()
    events = scanned(words, questions, bare)
    said = _labels_said(events)
    for event in events:
        if isinstance(event, Next):
            at = len(begun) if event.index < 0 else event.index
            if cut.count < 2 or at >= cut.count or at in begun:
                raise Unexplained("one")
            begun.add(at)
        elif isinstance(event, Chosen):
            _set(common if at is None else own[at], event.question_id, (event.choice_id, Certainty.MEASURED))
        elif at is None and len(event.sizes) == cut.count > 1:
            for thing, size in zip(own, event.sizes, strict=True):
                _put(questions, _facts({**common, **thing}), thing, Sized(event.label, (size,)), said)
        elif at is None and cut.count > 1 and _places_a_thing(questions, event.label):
            raise Unexplained(event.label)
        else:
            thing = common if at is None else own[at]
            _put(questions, _facts({**common, **thing}), thing, event, said)
    if cut.count == 0 and common:
        raise Unexplained("none")
    return _Group(cut.opener, cut.count, tuple({**common, **thing} for thing in own))


def _places_a_thing(questions: Sequence[Question], label: str) -> bool:
    return any(label in q.labels and q.place in ("left edge", "centre", "left end", "right end") for q in questions)


def _kind_named(questions: Sequence[Question], cut: _Cut) -> Iterator[tuple[str, str]]:
    """Yield the choices that the noun and the words before it name; a word that names none is unexplained."""
    whole = _of_one_kind(questions, " ".join((*cut.adjectives, cut.noun)))
    if whole:
        yield from whole
        return
    for word in cut.adjectives:
        named = _of_one_kind(questions, word)
        if not named and word not in load_talk().understood.sizes_of_things:
            raise Unexplained(word)
        yield from named
    for phrase in dict.fromkeys((cut.noun, *cut.noun.split())):
        named = _of_one_kind(questions, phrase)
        if named:
            yield from named
            return


def _of_one_kind(questions: Sequence[Question], phrase: str) -> tuple[tuple[str, str], ...]:
    """Return what a phrase says a thing is: one choice, or one and what exactly it is, as a column is a place kept free."""
    found = choices_named(questions, phrase)
    named, facts = dict(found), dict[str, Fact]()
    for question in questions:
        if question.id in named and may_apply(question, facts):
            facts[question.id] = named[question.id]
    return tuple(sorted(found)) if len(facts) == len(found) else ()


def _together(book: Book, wall: str, opener: Question, groups: Sequence[_Group]) -> Given:
    """Return the count and the answers of its things, in the order they stand along the wall."""
    assert opener.opens is not None
    things = [thing for group in groups for thing in group.things]
    if len(groups) > 1 and any(group.count == 0 for group in groups) and not things:
        groups = groups[:1]
    least, most = int(opener.least or 0), int(opener.most or 99)
    if not least <= len(things) <= most:
        raise Unexplained("count")
    questions = book.by_scope[opener.opens]
    found: Given = {path_of(wall, opener.id): (len(things), Certainty.MEASURED)}
    for index, thing in enumerate(_in_order(questions, things)):
        place = item_place(wall, opener.opens, index)
        found |= {path_of(place, q.id): thing[q.id] for q in questions if q.id in thing}
    return found


def _in_order(questions: Sequence[Question], things: Sequence[Given]) -> list[Given]:
    """Put things in the order of their places; without places only what is the same for all of them can be told."""
    at = [
        next(
            (thing[q.id][0] for q in questions if q.id in thing and q.place in ("left edge", "centre", "left end")),
            None,
        )
        for thing in things
    ]
    if all(isinstance(each, Length) for each in at):
        order = sorted(range(len(things)), key=lambda index: at[index])  # type: ignore[arg-type, return-value]
        return [things[index] for index in order]
    if any(each is not None for each in at):
        raise Unexplained("place")
    shared = {key for key in (things[0] if things else {}) if all(thing.get(key) == things[0][key] for thing in things)}
    if any(
        set(thing) - shared and any(q.kind == "length" for q in questions if q.id in set(thing) - shared)
        for thing in things
    ):
        raise Unexplained("order")
    return [{key: value for key, value in thing.items() if key in shared} for thing in things]
