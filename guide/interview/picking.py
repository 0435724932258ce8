"""Picking one choice out of what a person says in a sentence.

A choice is taken only where every other word of the reply is accounted for; with words left over it is no more than the
nearest reading, to be offered.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from difflib import get_close_matches

from guide.book.questions import Choice, Question
from guide.book.talk import load_talk
from guide.interview.values import pick

_YES_OR_NO = ("yes", "no")
_CLAUSES = re.compile(
    r"\s*(?:[;.](?=\s|$)|,(?=\s|$)|\s[-–—]+\s|\(|\)|\b(?:and|because|cause|since|cos)\b)\s*", re.IGNORECASE
)
"""What parts what is said from what explains it."""


def pick_in(question: Question, said: str) -> tuple[Choice, bool] | None:
    """Return the one choice that a reply names, and whether nothing else in it is left unexplained; None for none or several."""
    whole = _pick(question, said)
    if whole and whole[1]:
        return whole
    clauses = [each for each in _CLAUSES.split(said) if each.strip()]
    if len(clauses) > 1 and (choice := _said_and_explained(question, clauses)):
        return choice, True
    return whole


def _said_and_explained(question: Question, clauses: list[str]) -> Choice | None:
    """Pick what one clause says for certain, where the others only explain it: “family room, nobody sleeps there”.

    A clause that denies may speak of the other choices, one that does not of none of them, and neither may take back
    (“no, only in spring”) or bring up again what the question asks about (“no, just a puddle”).
    """
    talk = load_talk()
    picked = [_pick(question, each) for each in clauses]
    sure = {found[0].id: found[0] for found in picked if found and found[1]}
    if len(sure) != 1:
        return None
    (choice,) = sure.values()
    own = _meant_by(phrase for phrase, each in _phrases(question) if each is choice)
    others = _meant_by(phrase for phrase, each in _phrases(question) if each is not choice) - own
    for clause, found in zip(clauses, picked, strict=True):
        if found and found[1]:
            continue
        words = set(talk.folded(re.sub(r"[,;:()“”\"?]", " ", clause)).split())
        denies = bool(words & set(talk.understood.negations))
        touched = own if denies else others | _meant_by([question.ask])
        if "?" in clause or words & set(talk.understood.takes_back) or _meant_by(words) & touched:
            return None
    return choice


def _meant_by(phrases: Iterable[str]) -> set[str]:
    """Return the words of phrases that mean something, cut to the stem in which sleep, sleeps and sleeping are one."""
    words = (word for phrase in phrases for word in re.findall(r"[a-z']+", phrase.lower()))
    fillers = {*load_talk().understood.fillers, *load_talk().understood.denials}
    return {re.sub(r"(?:ing|ed|er|es|s|y|ie)$", "", word) for word in words if len(word) > 3 and word not in fillers}


def _pick(question: Question, said: str) -> tuple[Choice, bool] | None:
    """Return the one choice that a reply names as a whole, and whether every word of it is explained."""
    plain = re.sub(r"[,;:()“”\"]+(?=\s|$)|(?<=\s)[(“\"]", " ", load_talk().folded(said))
    plain = " ".join(plain.split())
    if choice := pick(question, plain):
        return choice, not plain.isdecimal() or plain in (choice.id, *choice.words)
    if choice := _by_place(question, plain) or _denied(question, said, plain):
        return choice, True
    if {"or", "either"} & set(plain.split()) or "?" in said:
        return None
    named = _named(question, plain)
    if len({choice.id for choice, _ in named}) == 1:
        rest = plain
        for _, phrase in named:
            rest = f" {rest} ".replace(f" {phrase} ", " ")
        odd = set(rest.split()) - _explained(named[0][0])
        return None if odd & set(load_talk().understood.denials) else (named[0][0], not odd)
    return None if named else _misspelled(question, plain)


def _explained(choice: Choice) -> set[str]:
    """Return the words that may stand beside a choice; words of denial go with a no alone."""
    words = load_talk().understood
    denies = set(load_talk().words["no"]) & {choice.id, *choice.words}
    return {*words.fillers, *(words.denials if denies else ())} - (set() if denies else set(words.denials))


def _denied(question: Question, said: str, plain: str) -> Choice | None:
    """Pick the no where a reply denies what another choice says, as “no cracks” does; a comma after the no leaves it open."""
    talk = load_talk()
    noes = [choice for choice in question.choices if "no" in (choice.id, *choice.words)]
    if len(noes) != 1 or not plain.startswith("no ") or "," in said:
        return None
    others = {word for phrase, choice in _phrases(question) if choice is not noes[0] for word in phrase.split()}
    rest = set(plain.split()[1:])
    return (
        noes[0]
        if rest & others and rest <= {*others, *talk.understood.fillers, *talk.understood.denials, "or"}
        else None
    )


def _by_place(question: Question, plain: str) -> Choice | None:
    """Pick “the second one”, “number 2”, “the last one”."""
    talk = load_talk()
    if found := re.fullmatch(r"(?:number|option|choice|answer|no\.|#)\s*(\d)", plain):
        number = int(found[1])
    elif found := re.fullmatch(r"(?:the )?(\w+)(?: one| choice| option)?", plain):
        number = len(question.choices) if found[1] == "last" else talk.ordinals.get(found[1], 0)
    else:
        return None
    return question.choices[number - 1] if 1 <= number <= len(question.choices) else None


def _named(question: Question, plain: str) -> list[tuple[Choice, str]]:
    """Return the choices that a sentence names and the words by which it does, the longest words first; none twice."""
    found: list[tuple[Choice, str]] = []
    rest = f" {plain} "
    for phrase, choice in sorted(_phrases(question), key=lambda each: -len(each[0])):
        if f" {phrase} " in rest:
            rest = rest.replace(f" {phrase} ", " | ")
            found.append((choice, phrase))
    fillers = load_talk().understood.fillers
    return [each for each in found if each[1] not in fillers] or found


def is_yes_or_no(question: Question) -> bool:
    """Say whether a yes or a no answers the question."""
    return any(word in _YES_OR_NO for choice in question.choices for word in (choice.id, *choice.words))


def _phrases(question: Question) -> Iterator[tuple[str, Choice]]:
    talk = load_talk()
    for choice in question.choices:
        own = {choice.id, *choice.words}
        for each in _YES_OR_NO:
            if each in own:
                own |= {word for word in talk.words[each] if len(word) > 1 and word != "not"}  # type: ignore[index]
        own |= {part for part in _parts(talk.folded(choice.say)) if " " in part}
        yield from ((word, choice) for word in sorted(own) if len(word) > 1)


def _parts(say: str) -> Iterator[str]:
    """Yield what stands between the commas of a choice as it is read; what says “or” names more than one thing."""
    for part in re.split(r"\s*[:,]\s*", say):
        plain = re.sub(r"^(?:and|an?|the|it|they)\s+", "", part)
        if " or " not in f" {plain} ":
            yield plain


def _misspelled(question: Question, plain: str) -> tuple[Choice, bool] | None:
    words = {word: choice for word, choice in _phrases(question) if len(word) > 3 and word.replace(" ", "").isalpha()}
    near = get_close_matches(plain, sorted(words), n=2, cutoff=0.8)
    return (words[near[0]], False) if near and len({words[each].id for each in near}) == 1 else None
