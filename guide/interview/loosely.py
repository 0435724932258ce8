"""Reading a value as people say it: strictly first, then without the words round it, then by what the question knows.

What it takes, every word of the reply speaks for. Where words are left over it only finds the nearest reading, which the
person has to say yes to; a size, a count or a choice is never picked out of a sentence in silence.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from guide.book.questions import Question
from guide.book.talk import load_talk
from guide.interview.answers import Certainty, Spot, Value
from guide.interview.around import Core, core_of
from guide.interview.picking import is_yes_or_no, pick_in
from guide.interview.replies import Sorry, read_size, sorry
from guide.interview.values import example_of, read_value
from guide.lengths import Bare, Length, greatest, in_figures, inches, least

_BETWEEN_SIZES = re.compile(
    r"\s*(?:;|,(?!\d)|(?<=/\d)\s+and\b|(?<=/\d\d)\s+and\b|\band\b(?!\s*\d+\s*/)|\bor\b|\bto\b|\bbetween\b|\bfrom\b)\s*"
)
"""What parts several sizes; “and” before a fraction belongs to the size, unless a fraction stands before it as well."""
_APART = re.compile(r"(\d ?(?:feet|foot|ft|')),\s*(?=\d)")
"""A comma between the feet and the inches of one size."""
_CLAUSES = re.compile(r"(?:[;.](?=\s|$)|,(?=\s|$)|\s[-–—]+\s|[()])\s*")
_UNITS = ("ft", "feet", "foot", "in", "inch", "inches", "mm", "cm", "m")
_UNIT = re.compile(rf"^(?:{'|'.join(_UNITS)})$|['\"]$", re.IGNORECASE)
_LONGEST_RUN = 7
"""Words that one size may have: five feet four and three quarters inches."""

Read = tuple[Value, Certainty]


def read_loosely(question: Question, typed: str, bare: Bare) -> Read:
    """Read a value of the question's kind out of a reply. Raises Sorry with one sentence, and the nearest reading if any."""
    core = core_of(typed)
    if question.kind == "names":
        return _names(question, typed, core, bare)
    try:
        return read_value(question, typed, bare)
    except Sorry:
        if (found := _explained(question, Core(typed, False), bare) or _explained(question, core, bare)) is not None:
            return found
    try:
        return guessed(question, read_value(question, typed if question.kind == "choice" else core.text, bare), core)
    except Sorry as error:
        raise error.with_nearest(_nearest(question, core, bare)) from error


def _explained(question: Question, core: Core, bare: Bare) -> Read | None:
    """Return a reading for which every word of the reply speaks."""
    if question.kind == "choice":
        picked = pick_in(question, core.text)
        return guessed(question, (picked[0].id, Certainty.MEASURED), core) if picked and picked[1] else None
    if question.kind in ("length", "count") and (told := _told(question, core, bare)) is not None:
        return told
    if question.kind == "length":
        text = re.sub(r"^at\s+", "", core.text, flags=re.IGNORECASE)
        if (named := size_called(question, text)) is not None:
            return guessed(question, (named, Certainty.MEASURED), core)
        try:
            return guessed(question, read_value(question, text, bare), core)
        except Sorry:
            pass
        return _one_of_several(question, core, bare)
    return None


def _told(question: Question, core: Core, bare: Bare) -> Read | None:
    """Return the one size or count that a reply tells, where its other words only explain it: “six inches, with the coupling”.

    Of several numbers it is the one that a last clause draws from them: “four outlets and a switch, so five”. Words in its
    own clause have to be the question's; a word that leaves it open, places it by another thing or takes it back ends it.
    """
    understood = load_talk().understood
    text, hedged = _unhedged(_APART.sub(r"\1 ", in_figures(core.text.lower())))
    clauses = [each for each in _CLAUSES.split(text) if each.strip()]
    if clauses and (drawn := re.match(r"so(?: it's| that's| that makes)?\s+(.+)", clauses[-1])):
        clauses = [drawn[1]]
    read = [
        (each, found) for each in clauses for found in _runs(question, _counted_words(question, each.split()), bare)
    ]
    if "?" in text or (question.least or "").startswith("-") or len(read) != 1 or read[0][1][0] is None:
        return None
    if question.kind == "count" and len(re.findall(r"\d+", " ".join(clauses))) > 1:
        return None
    ends = {*understood.vague, *understood.turns, *understood.negations, *understood.not_one}
    ends |= {*understood.takes_back} if question.kind == "count" else set()
    ends -= set(load_talk().counts)
    ends |= {*understood.relations} if question.place is not None else set()
    ends |= {*understood.extents} if question.place not in (None, "width") else set()
    ((clause, found),) = read
    beside = {word for word in _bare_words(clause) if not re.search(r"\d", word)}
    known = {*understood.fillers, *understood.beside_sizes, *_own_words(question), *load_talk().counts, *_UNITS}
    if {word for each in clauses for word in _bare_words(each)} & ends or not beside <= known:
        return None
    return guessed(question, found, Core(core.text, core.hedged or hedged))


def _unhedged(text: str) -> tuple[str, bool]:
    """Return a reply without its words of doubt, wherever they stand, and whether there were any."""
    understood = load_talk().understood
    phrases = sorted({*understood.hedges_before, *understood.hedges_after}, key=len, reverse=True)
    plain = re.sub(rf"\b(?:{'|'.join(map(re.escape, phrases))})\b", " ", text)
    return plain, plain != text


def _bare_words(text: str) -> set[str]:
    return {word.strip("?!.,:'\"") for word in text.split()} - {""}


def _own_words(question: Question) -> set[str]:
    """Return the words that the question itself uses, and those by which people call what it asks for."""
    texts = (question.ask, question.short, question.how, *question.labels, *question.counted)
    return {word for text in texts for word in re.findall(r"[a-z']+", text.lower())}


def _names(question: Question, typed: str, core: Core, bare: Bare) -> Read:
    """Read a count or names without the words round them; a guess is no count of walls, and no name begins like one."""
    read = read_value(question, core.text, bare)
    if core.hedged:
        raise sorry("not_names", typed=typed).with_nearest(read)
    return read


def size_called(question: Question, said: str) -> Length | None:
    """Return the size that a word means at this question, such as plumb; None when it means none."""
    named = question.sizes.get(load_talk().folded(said))
    return inches(named) if named is not None else None


def guessed(question: Question, read: Read, core: Core) -> Read:
    """Return a reading as a guess where the person said so; what is settled as the safe way stays settled."""
    value, known = read
    safe = question.unknown.settled and value == question.unknown.take
    if not core.hedged or safe or known is not Certainty.MEASURED or question.kind in ("names", "text", "date"):
        return read
    if isinstance(value, tuple):
        value = tuple(Spot(each.at, each.size, Certainty.EYEBALLED) for each in value if isinstance(each, Spot))
    return value, Certainty.EYEBALLED


def _one_of_several(question: Question, core: Core, bare: Bare) -> Read | None:
    """Take the one that the question wants out of several sizes, or out of a range; several where it wants one are asked back."""
    parts = [part for part in _BETWEEN_SIZES.split(_APART.sub(r"\1 ", in_figures(core.text.lower()))) if part]
    if len(parts) < 2:
        return None
    try:
        read = [read_size(question, part, bare) for part in parts]
    except Sorry:
        return None
    if question.takes is None or " or " in core.text.lower():
        raise sorry("one_number", typed=core.text, short=question.short, example=example_of(question, bare))
    sizes = [size for size, _ in read]
    worst = Certainty.EYEBALLED if any(known is not Certainty.MEASURED for _, known in read) else Certainty.MEASURED
    return guessed(question, (_wanted(question.takes, sizes), worst), core)


def _wanted(takes: str, sizes: list[Length]) -> Length:
    if takes == "average":
        total = sizes[0]
        for size in sizes[1:]:
            total += size
        return total // len(sizes)
    return least(*sizes) if takes == "smallest" else greatest(*sizes)


# -------------------------------------------------------------------------------------------------- the nearest reading


def _nearest(question: Question, core: Core, bare: Bare) -> Read | None:
    """Return the one reading that can be found in a reply whose other words say nothing to us; None for none or several."""
    if question.kind == "choice":
        picked = None if is_yes_or_no(question) else pick_in(question, core.text)  # a yes could be meant for either
        return guessed(question, (picked[0].id, Certainty.MEASURED), core) if picked else None
    if question.kind not in ("length", "count"):
        return None
    words = in_figures(core.text.lower()).replace("°", " ° ").replace("%", " % ").split()
    said, understood = {word.lower().strip(",.") for word in words}, load_talk().understood
    if question.kind == "length" and said & set(understood.no_lengths):
        return None
    if question.place is not None and said & set(understood.relations):
        return None
    if question.place not in (None, "width") and said & set(understood.extents):
        return None
    found = list(_runs(question, _counted_words(question, words), bare))
    if len(found) != 1 or (question.opens and {"and", "plus"} & said):
        return None
    vague = bool(said & set(understood.vague))
    return guessed(question, found[0], Core(core.text, core.hedged or vague))


def _counted_words(question: Question, words: list[str]) -> list[str]:
    """Return the words in which a count is looked for: none beside a unit of length, and “a pipe” counts nothing."""
    if question.kind != "count":
        return words
    return [] if any(_UNIT.search(word) for word in words) else [word for word in words if word not in ("a", "an")]


def _runs(question: Question, words: list[str], bare: Bare) -> Iterator[Read]:
    """Yield what can be read in a row of words, the longest first from the left; a number that cannot stops the search."""
    at = 0
    while at < len(words):
        for end in range(min(len(words), at + _LONGEST_RUN), at, -1):
            try:
                yield read_value(question, " ".join(words[at:end]).strip(" ,;:()"), bare)
            except Sorry:
                continue
            at = end
            break
        else:
            if re.search(r"\d", words[at]):
                yield None, Certainty.UNKNOWN
            at += 1
