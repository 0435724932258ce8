"""Taking a reply with several answers apart: sizes with what they are, choices named in passing, one thing and the other.

Every word is accounted for or the whole is given up: a size that could be two things, or a word nobody knows, ends it.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from guide.book.questions import Question
from guide.book.talk import load_talk
from guide.interview.answers import Certainty
from guide.lengths import Bare, Length, Unreadable, in_figures, read_length

_LONGEST_SIZE = 7
_LONGEST_PHRASE = 6
_FOOT_OR_METRE = re.compile(r"['’]|\b(?:ft|feet|foot|m|cm|met(?:re|er)s?)\b|\d(?:ft|m|cm)\b")
_AND_A_PART = re.compile(
    r"\band (?:\d+\s*/\s*\d+|an? \w+|half|one half|(?:one|three|five|seven|nine|eleven|thirteen|fifteen) \w+|.*(?:\"|\bin\b|inch))"
)
"""An “and” inside one size: before a part of an inch, or before inches after feet."""
_WIDE_BY_TALL = re.compile(r"(\d\S*) (?:x|by|×) (\d\S*(?: \d+/\d+)?)")
"""A width is said before a height, as on a door's carton."""
_SKIPPED = {
    "and",
    "with",
    "each",
    "both",
    "all",
    "is",
    "are",
    "it",
    "it's",
    "its",
    "the",
    "a",
    "an",
    "of",
    "by",
    "long",
    "they're",
    "they",
    "in",
    "be",
    "so",
}


@dataclass(frozen=True, slots=True)
class Sized:
    """Sizes that go by one label: one for all things, or one for each in the order said."""

    label: str
    """The word beside them; empty for a size with none."""
    sizes: tuple[tuple[Length, Certainty], ...]


@dataclass(frozen=True, slots=True)
class Chosen:
    """A choice named in passing: the question's id and the choice's."""

    question_id: str
    choice_id: str


@dataclass(frozen=True, slots=True)
class Next:
    """“One … the other …”: what follows is about that thing, from 0; -1 is the next one."""

    index: int


Event = Sized | Chosen | Next


class Unexplained(ValueError):  # noqa: N818 - it ends the reading of one reply
    """A word, or a size, that nothing accounts for."""


def words_of(text: str) -> list[str]:
    """Return a reply in words, commas and semicolons apart; a decimal comma stays in its number."""
    plain = load_talk().folded(text)
    plain = re.sub(r":(?=\s|$)", ",", plain)
    plain = re.sub(r"(?<!\d)[,;]|[,;](?!\d)|[,;](?=\d{3,})", lambda found: f" {found[0]} ", plain)
    return plain.split()


def scanned(words: Sequence[str], questions: Sequence[Question], bare: Bare) -> tuple[Event, ...]:
    """Return what a reply says of things that these questions are asked of. Raises Unexplained when a word is left over."""
    labels = {label for question in questions for label in question.labels}
    if {"wide", "tall"} <= labels:
        words = _WIDE_BY_TALL.sub(r"\1 wide , \2 tall", " ".join(_apart(words))).split()
    found: list[Event] = []
    at = 0
    while at < len(words):
        if words[at] in (",", ";") or words[at] in _SKIPPED - labels:
            at += 1
        elif (step := _starter(words, at)) is not None:
            found.append(step[0])
            at = step[1]
        elif (sized := _sized(words, at, labels, bare)) is not None:
            found.append(sized[0])
            at = sized[1]
        elif (chosen := _chosen(words, at, questions)) is not None:
            found.append(chosen[0])
            at = chosen[1]
        else:
            raise Unexplained(words[at])
    return tuple(found)


def _apart(words: Sequence[str]) -> list[str]:
    """Part `32x24` at its sign."""
    return [part for word in words for part in (re.sub(r"(?<=\d)[x×](?=\d)", " x ", word)).split()]


def _starter(words: Sequence[str], at: int) -> tuple[Next, int] | None:
    """Read “one”, “the other one”, “another”, “the second”; a number before a unit is none."""
    talk = load_talk()
    if at >= len(words):
        return None
    end = at + 1 if words[at] == "the" and at + 1 < len(words) else at
    word = words[end]
    after = end + 2 if words[end + 1 : end + 2] == ["one"] else end + 1
    if word in ("other", "another"):
        return Next(-1), after
    if word in talk.ordinals:
        return Next(talk.ordinals[word] - 1), after
    if word == "one" and end == at and not _is_size(" ".join(words[at : at + 2])):
        return Next(-1), at + 1
    return None


def _is_size(text: str) -> bool:
    return bool(re.search(r"\b(?:inch|foot|ft|and|hundred)", text))


def _sized(words: Sequence[str], at: int, labels: set[str], bare: Bare) -> tuple[Sized, int] | None:
    """Read a size, or several joined by “and”, with the label before or after; both at once is no clear label."""
    before = _label(words, at, labels, leads=True)
    start = before[1] if before else at
    sizes: list[tuple[Length, Certainty]] = []
    texts: list[str] = []
    end = start
    while (size := _size(words, end, bare)) is not None:
        sizes.append(size[0])
        texts.append(size[2])
        end = size[1]
        joint = end + 1 if words[end : end + 1] in ([","], ["and"]) else end
        joint += words[joint : joint + 1] == ["and"]
        if (
            joint == end
            or _starter(words, joint)
            or _size(words, joint, bare) is None
            or (before is None and words[joint - 1] != "and")
        ):
            break
        if before is not None and words[joint - 1] != "and" and not _and_follows(words, joint, bare):
            break
        end = joint
    if not sizes:
        return None
    after = _label(words, end, labels, leads=False)
    if before is not None and after is not None:
        raise Unexplained(" ".join(words[at : after[1]]))
    if (
        len(sizes) > 1
        and any(_FOOT_OR_METRE.search(text) for text in texts[1:])
        and re.fullmatch(r"[\d ./-]+", texts[0])
    ):
        raise Unexplained(texts[0])
    if before is not None:
        return Sized(before[0], tuple(sizes)), end
    if after is None and len(sizes) > 1:
        raise Unexplained(" ".join(texts))
    return Sized(after[0] if after else "", tuple(sizes)), after[1] if after else end


def _and_follows(words: Sequence[str], at: int, bare: Bare) -> bool:
    """Say whether a row of sizes parted by commas ends with an “and”: then all of them are of one kind."""
    while (size := _size(words, at, bare)) is not None:
        at = size[1]
        if words[at : at + 1] == ["and"] or words[at : at + 2] == [",", "and"]:
            return True
        if words[at : at + 1] != [","]:
            return False
        at += 1
    return False


def _label(words: Sequence[str], at: int, labels: set[str], *, leads: bool) -> tuple[str, int] | None:
    """Return the longest label that begins here, and where it ends; one that leads may have “is” or “at” after it."""
    while words[at : at + 1] and words[at] in ("is", "it's", "its", "the") and words[at] not in labels:
        at += 1
    for end in range(min(len(words), at + 5), at, -1):
        text = " ".join(words[at:end])
        if text in labels:
            while leads and words[end : end + 1] in (["is"], ["at"], ["of"]) and f"{text} at" not in labels:
                end += 1
            return text, end
    return None


def _size(words: Sequence[str], at: int, bare: Bare) -> tuple[tuple[Length, Certainty], int, str] | None:
    """Return the longest size that begins here, where it ends, and its text."""
    if not words[at : at + 1] or not (
        re.search(r"\d|^(?:about|~|around|roughly)", words[at])
        or in_figures(f"{words[at]} ") != f"{words[at]} "
        or words[at] in ("a", "an", "half")
    ):
        return None
    for end in range(min(len(words), at + _LONGEST_SIZE), at, -1):
        piece = words[at:end]
        if "," in piece or ";" in piece or ("and" in piece and not _AND_A_PART.search(" ".join(piece))):
            continue
        try:
            reading = read_length(" ".join(piece), bare=bare)
        except Unreadable:
            continue
        known = Certainty.EYEBALLED if reading.about else Certainty.MEASURED
        return (reading.length, known), end, " ".join(piece)
    return None


def _chosen(words: Sequence[str], at: int, questions: Sequence[Question]) -> tuple[Chosen, int] | None:
    """Return the longest phrase here that names one choice of one question, and where it ends."""
    for end in range(min(len(words), at + _LONGEST_PHRASE), at, -1):
        meant = choices_named(questions, " ".join(words[at:end]))
        if len(meant) == 1:
            return Chosen(*next(iter(meant))), end
    return None


def choices_named(questions: Sequence[Question], phrase: str) -> frozenset[tuple[str, str]]:
    """Return every choice, with its question, that a phrase names exactly; yes and no name none, nor does a number."""
    plain = load_talk().folded(phrase)
    if len(plain) < 2 or plain.isdecimal() or load_talk().wish(plain):
        return frozenset()
    forms = {plain, plain.removesuffix("s")}
    return frozenset((q.id, choice.id) for q in questions for choice in q.choices if forms & {choice.id, *choice.words})
