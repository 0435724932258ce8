"""Picking one choice out of what a person says in a sentence.

A choice is taken where every other word is accounted for, where another clause only explains it, or where it is the only
one that comes up and nothing speaks against it. A choice that lifts a warning (`careful`) is never taken in passing. What
is less than that is the nearest reading, to be offered.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from difflib import get_close_matches
from functools import lru_cache

from guide.book.questions import Choice, Question
from guide.book.talk import load_talk
from guide.interview.values import pick
from guide.lengths import in_figures

_YES_OR_NO = ("yes", "no")
_LEFT_TO_US = "you choose"
_CLAUSES = re.compile(
    r"\s*(?:[;.?](?=\s|$)|,(?=\s|$)|\s[-–—]+\s|\(|\)|\b(?:because|cause|since|cos|so)\b)\s*", re.IGNORECASE
)
"""What parts what is said from what explains it."""

Picked = tuple[Choice, bool]
"""A choice, and whether nothing is left in doubt."""


def pick_in(question: Question, said: str) -> Picked | None:
    """Return the one choice that a reply names, and whether nothing else in it is left in doubt; None for none or several."""
    whole = _pick(question, said)
    if whole and whole[1]:
        return whole
    if choice := _said_and_explained(question, said) or _in_passing(question, said):
        return choice, True
    return whole or _misspelled(question, plainly(said))


def _pick(question: Question, said: str) -> Picked | None:
    """Return the one choice that a reply names as a whole, and whether every word of it is explained."""
    talk = load_talk()
    folded = " ".join(re.sub(r"[,;:()“”\"]+(?=\s|$)|(?<=\s)[(“\"]", " ", talk.folded(said)).split())
    if choice := pick(question, folded):
        return choice, not folded.isdecimal() or folded in {*choice.words, *choice.id.split()}
    plain = plainly(said)
    if choice := _by_place(question, folded) or _denied(question, said, plain):
        return choice, True
    if {"or", "either"} & set(plain.split()) or "?" in said:
        return None
    named = _named(question, plain)
    if len({choice.id for choice, _ in named}) == 1:
        odd = set(_without(plain, named).split()) - _explained(named[0][0])
        return None if odd & _words("denials") else (named[0][0], not odd)
    return None


def _said_and_explained(question: Question, said: str) -> Choice | None:
    """Pick what one clause says for certain, where the others only explain it: “family room, nobody sleeps there”.

    A clause that denies may speak of the other choices, one that does not of none of them; and none may take back
    (“no, only in spring”) or, but after a yes, bring up again what the question asks about (“no, just a puddle”). What a no
    stands right before has to be of the question.
    """
    clauses = list(_clauses(question, said))
    picked = [_pick(question, each) for each, _ in clauses]
    sure = {found[0].id: found[0] for found in picked if found and found[1]}
    last = picked[-1] if clauses else None
    if last and last[1] and re.search(r"\bso\b", said) and not last[0].careful:  # “… delivered, so 4 by 8”
        return last[0]
    if len(clauses) < 2 or len(sure) != 1:
        return None
    (choice,) = sure.values()
    if choice.id == _LEFT_TO_US:
        return choice
    if "?" in said:
        return None
    own, others = _meant(question, choice)
    affirms = "yes" in (choice.id, *choice.words)
    takes_back = _words("turns") if affirms else _words("turns") | _words("takes_back")
    for (clause, denied), found in zip(clauses, picked, strict=True):
        if found and found[1]:
            continue
        words, asked = set(plainly(clause).split()), others | _meant_by([question.ask])
        meant = _meant_by(words)
        if denied and meant and not meant & asked:  # “no batts” denies something else
            return None
        touched = own if denied or words & _words("negations") else others if affirms else asked
        if words & takes_back or meant & touched:
            return None
    return choice


def _clauses(question: Question, said: str) -> Iterator[tuple[str, bool]]:
    """Yield the clauses of a reply; a yes or no at its head is one, and what a no stands before without a comma is denied."""
    if is_yes_or_no(question):
        noes, yeses = (load_talk().words[each] for each in ("no", "yes"))
        heads = "|".join(re.escape(each) for each in (*noes, *yeses) if each != "not")
        if found := re.match(rf"\s*({heads})\b(?!\.\d)([,;.:]?)\s+(?=\S)", said, re.IGNORECASE):
            yield found[1], False
            said = said[found.end() :]
            if not found[2] and found[1].lower() in noes:
                yield said, True
                return
    yield from ((each, False) for each in _CLAUSES.split(said) if each.strip())


def _in_passing(question: Question, said: str) -> Choice | None:
    """Pick the only choice that comes up at all, where nothing is doubted or taken back and it lifts no warning.

    What a clause denies does not come up, as long as it is not this choice: “office for my wife, no bed”.
    """
    clauses = [plainly(each) for each, _ in _clauses(question, said)]
    denying = [each for each in clauses if set(_without(each, _named(question, each)).split()) & _words("negations")]
    plain = " ".join(each for each in clauses if each not in denying)
    named = [] if "?" in said else _named(question, plain)
    rest = set(_without(plain, named).split())
    if len({choice.id for choice, _ in named}) != 1 or rest & (_words("takes_back") | _words("turns")):
        return None
    choice = named[0][0]
    yes_or_no = {word for each in _YES_OR_NO for word in load_talk().words[each]}  # type: ignore[index]
    if choice.careful or all(phrase in yes_or_no for _, phrase in named):
        return None
    own, others = _meant(question, choice)
    turned = any(set(each.split()) & (_words("takes_back") | _words("turns")) for each in denying)
    return None if turned or _meant_by(rest) & others or _meant_by(denying) & own else choice


def _meant(question: Question, choice: Choice) -> tuple[set[str], set[str]]:
    """Return the stems of what a choice says, and those of what only the others say."""
    own = _meant_by(phrase for phrase, each in _phrases(question) if each is choice)
    return own, _meant_by(phrase for phrase, each in _phrases(question) if each is not choice) - own


def _meant_by(phrases: Iterable[str]) -> set[str]:
    """Return the words of phrases that mean something, cut to the stem in which sleep, sleeps and sleeping are one."""
    words = (word for phrase in phrases for word in re.findall(r"[a-z]+", plainly(phrase)))
    empty = _words("fillers") | _words("denials")
    return {re.sub(r"(?:ing|ed|er|es|s|y|ie)$", "", word) for word in words if len(word) > 3 and word not in empty}


@lru_cache(maxsize=2048)
def plainly(text: str) -> str:
    """Return a reply as it is compared: lower case, numbers in figures, no signs, short forms written out.

    >>> plainly("don't - we'll use two-by-fours, u pick")
    'dont well use 2 by fours you pick'
    """
    talk = load_talk()
    plain = re.sub(r"(?<=[a-z])-(?=[a-z])", " ", talk.folded(text))
    plain = re.sub(r"[.,;:()“”\"!?*…]+(?=\s|$)|(?<=\s)[(“\"]|(?<!\S)[-–—]+(?!\S)", " ", in_figures(plain)).replace(
        "'", ""
    )
    words = " ".join(talk.understood.short_forms.get(word, word) for word in plain.split())
    return re.sub(r"(?<=\d) ?(?:in|inch|inches)\b", "", words)


@lru_cache(maxsize=16)
def _words(name: str) -> frozenset[str]:
    """Return one of the lists of `talk.toml` as it is compared."""
    return frozenset(plainly(word) for word in getattr(load_talk().understood, name))


def _explained(choice: Choice) -> frozenset[str]:
    """Return the words that may stand beside a choice; words of denial go with a no alone."""
    denies = set(load_talk().words["no"]) & {choice.id, *choice.words}
    return _words("fillers") | _words("denials") if denies else _words("fillers") - _words("denials")


def _denied(question: Question, said: str, plain: str) -> Choice | None:
    """Pick the no where a reply denies what another choice says, as “no cracks” does; a comma after the no leaves it open."""
    noes = [choice for choice in question.choices if "no" in (choice.id, *choice.words)]
    if len(noes) != 1 or not plain.startswith("no ") or "," in said:
        return None
    others = {word for phrase, choice in _phrases(question) if choice is not noes[0] for word in phrase.split()}
    rest = set(plain.split()[1:])
    explained = rest <= {*others, *_words("fillers"), *_words("denials"), "or"}
    return noes[0] if rest & others and explained else None


def _by_place(question: Question, folded: str) -> Choice | None:
    """Pick “the second one”, “number 2”, “the last one”."""
    if found := re.fullmatch(r"(?:number|option|choice|answer|no\.|#)\s*(\d)", folded):
        number = int(found[1])
    elif found := re.fullmatch(r"(?:the )?(\w+)(?: one| choice| option)?", folded):
        number = len(question.choices) if found[1] == "last" else load_talk().ordinals.get(found[1], 0)
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
    return [each for each in found if each[1] not in _words("fillers")] or found


def _without(plain: str, named: Iterable[tuple[Choice, str]]) -> str:
    for _, phrase in named:
        plain = f" {plain} ".replace(f" {phrase} ", " ")
    return plain


def is_yes_or_no(question: Question) -> bool:
    """Say whether a yes or a no answers the question."""
    return any(word in _YES_OR_NO for choice in question.choices for word in (choice.id, *choice.words))


def _phrases(question: Question) -> Iterator[tuple[str, Choice]]:
    """Yield the words by which each choice can be named, as they are compared."""
    talk = load_talk()
    for choice in question.choices:
        own = {choice.id, *choice.words}
        for each in _YES_OR_NO:
            if each in own:
                own |= {word for word in talk.words[each] if len(word) > 1 and word != "not"}  # type: ignore[index]
        if choice.id == _LEFT_TO_US:
            own |= set(talk.understood.left_to_us)
        own |= {part for part in _parts(talk.folded(choice.say)) if " " in part}
        yield from ((word, choice) for word in sorted(set(map(plainly, own))) if len(word) > 1 or word.isdecimal())


def _parts(say: str) -> Iterator[str]:
    """Yield what stands between the commas of a choice as it is read; what says “or” names more than one thing."""
    for part in re.split(r"\s*[:,]\s*", say):
        plain = re.sub(r"^(?:and|an?|the|it|they)\s+", "", part)
        if " or " not in f" {plain} ":
            yield plain


def _misspelled(question: Question, plain: str) -> Picked | None:
    """Return the one choice that a reply, or a long word of it, comes close to, to be offered."""
    words = {word: choice for word, choice in _phrases(question) if len(word) > 3 and word.replace(" ", "").isalpha()}
    if len({choice.id for choice, _ in _named(question, plain)}) > 1 or set(plain.split()) & _words("negations"):
        return None
    typed = [plain, *(word for word in plain.split() if len(word) > 4 and word != plain)]
    near = [(word, found) for word in typed for found in get_close_matches(word, words, n=2, cutoff=0.8)]
    meant = {words[found].id for word, found in near if word[0] == found[0] and (word == plain or " " not in found)}
    return (next(choice for choice in question.choices if choice.id in meant), False) if len(meant) == 1 else None
