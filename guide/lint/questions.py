"""The proof of the question book: every question can be reached, answered and read, and nothing else is read."""

from __future__ import annotations

from collections.abc import Iterator, Set
from itertools import product

from guide.book.conditions import Condition, Fact, holds, tests_in
from guide.book.questions import DERIVED, OUTER, Book, Question
from guide.book.talk import load_talk
from guide.interview.asking import scope_chain
from guide.interview.replies import Sorry
from guide.interview.values import doubt_about, read_value
from guide.lengths import inches
from guide.lint.sources import placeholders

LONGEST_ASK, LONGEST_HELP = 220, 320
"""Characters of a question, and of why or how: they fit a screen of 80 by 24 together."""


def lint_book(book: Book, read: Set[str]) -> list[str]:
    """Return every finding in a question book; `read` names the questions that something downstream reads."""
    found = list(_twice_or_never(book, read))
    for question in book.questions:
        checks = (_refs, _values_tested, _reachable, _answers_by_itself, _doubts, _choices, _texts)
        found += [f"question {question.ref}: {said}." for check in checks for said in check(book, question)]
    return found


def _twice_or_never(book: Book, read: Set[str]) -> Iterator[str]:
    refs = [question.ref for question in book.questions]
    for ref in sorted({ref for ref in refs if refs.count(ref) > 1}):
        yield f"question {ref}: the id stands {refs.count(ref)} times in its scope."
    for scope, outer in OUTER.items():
        openers = [question for question in book.questions if question.opens == scope]
        if len(openers) != (0 if outer is None else 1):
            yield f"scope {scope}: {len(openers)} questions open it, and it should be {0 if outer is None else 1}."
        for opener in openers:
            if opener.scope != outer:
                yield f"question {opener.ref}: it opens {scope}, which stands in {outer}, not in {opener.scope}."
    opening = {question.ref for question in book.questions if question.opens}
    for ref in sorted(set(refs) - read - opening):
        yield f"question {ref}: nothing reads the answer."
    for ref in sorted(set(read) - set(refs)):
        yield f"question {ref}: the answer is read, but it is never asked."


def _refs(book: Book, question: Question) -> Iterator[str]:
    order = [each.ref for each in book.questions]
    seen = {ref: order.index(ref) for ref in book.by_ref}
    for of in sorted({test.of or "" for test in tests_in(question.when)} - set(DERIVED)):
        if of not in book.by_ref:
            yield f"when tests {of}, which is no question"
        elif book.by_ref[of].scope not in scope_chain(question.scope):
            yield f"when tests {of}, which cannot be seen from a {question.scope}"
        elif book.by_ref[of].scope == question.scope and seen[of] >= seen[question.ref]:
            yield f"when tests {of}, which is not asked before it"
        elif book.by_ref[of].scope != question.scope and not _asked_before(book, of, question.scope):
            yield f"when tests {of}, which is not asked before any {question.scope} is opened"
    for of in question.hangs_on:
        if of not in book.by_ref:
            yield f"it hangs on {of}, which is no question"
        elif of == question.ref or book.by_ref[of].scope not in scope_chain(question.scope):
            yield f"it hangs on {of}, which cannot be seen from it"


def _asked_before(book: Book, outer_ref: str, scope: str) -> bool:
    """Whether a question of an outer scope is asked before this scope is entered: so are those that test its count."""
    order = [each.ref for each in book.questions]
    outer = book.by_ref[outer_ref].scope
    inner = next((s for s in scope_chain(scope) if OUTER[s] == outer), None)
    opener = book.opener.get(inner or "")
    if opener is None or order.index(outer_ref) <= order.index(opener.ref):
        return True
    return opener.ref in {test.of for test in tests_in(book.by_ref[outer_ref].when)}


def _values_tested(book: Book, question: Question) -> Iterator[str]:
    for test in tests_in(question.when):
        of = test.of or ""
        values = test.one_of or (() if test.is_ is None else (test.is_,))
        tested = book.by_ref.get(of)
        if of in DERIVED:
            wrong = [value for value in values if value not in DERIVED[of]]
        elif tested is None:
            continue
        elif tested.kind == "choice":
            wrong = [value for value in values if value not in {choice.id for choice in tested.choices}]
        else:
            wrong = [value for value in values if tested.kind not in ("count", "names") or not isinstance(value, int)]
        for value in wrong:
            yield f"when tests {of} for “{value}”, which it never is"
        for name, limit in (("least", test.at_least), ("most", test.at_most)):
            if limit is not None and (tested is None or tested.kind not in ("count", "names")):
                yield f"when tests {of} for at {name} {limit}, but it is no count"


def _reachable(book: Book, question: Question) -> Iterator[str]:
    """Search the answers to everything that decides whether the question is asked, for one set by which it is."""
    conditions: dict[str, Condition | None] = {}
    open_refs = [question.ref]
    while open_refs:
        ref = open_refs.pop()
        if ref not in conditions:
            conditions[ref] = book.by_ref[ref].when if ref in book.by_ref else None
            open_refs += [test.of or "" for test in tests_in(conditions[ref])]
    tests = [test for condition in conditions.values() for test in tests_in(condition)]
    refs = sorted(set(conditions) - {question.ref})
    for values in product(*(_facts(book, ref, tests) for ref in refs)):
        facts = dict(zip(refs, values, strict=True))
        answered = (conditions[ref] for ref in refs if facts[ref] is not None)
        if all(holds(condition, facts.get) for condition in (conditions[question.ref], *answered)):
            return
    yield "no set of answers ever leads to it"


def _facts(book: Book, ref: str, tests: list[Condition]) -> list[Fact]:
    """Return the answers that can make a difference to these tests."""
    if ref in DERIVED:
        return list(DERIVED[ref])
    question = book.by_ref.get(ref)
    if question is None:
        return [None]
    if question.kind == "choice":
        return [None, *(choice.id for choice in question.choices)]
    if question.kind in ("count", "names"):
        limits = [limit for test in tests if test.of == ref for limit in (test.at_least, test.at_most)]
        ends = [limit for limit in limits if limit is not None]
        given = [
            value
            for test in tests
            if test.of == ref
            for value in (test.is_, *(test.one_of or ()))
            if isinstance(value, int)
        ]
        low, high = int(question.least or 0), int(question.most or 99)
        return [None, *sorted({n for n in (low, high, *ends, *given) if low <= n <= high})]
    return [None, "known"]


def _answers_by_itself(book: Book, question: Question) -> Iterator[str]:
    """Check what the book itself would answer: the usual answer, its example, and what “don't know” takes."""
    for name, text in (
        ("usual", question.usual),
        ("example", question.example),
        ("unknown.take", question.unknown.take),
    ):
        if text is None:
            continue
        try:
            value, _ = read_value(question, text, "in")
        except Sorry as error:
            yield f"{name} is “{text}”, which its own reader refuses ({str(error).rstrip('.')})"
        else:
            if doubt_about(question, value) is not None:
                yield f"{name} is “{text}”, which it would then doubt"
    if question.on_request and not (question.usual == question.unknown.take and question.unknown.settled):
        yield "it is asked on request alone, so its usual answer has to be taken, and settled"
    if question.opens and question.unknown.take is None:
        yield "it opens a scope, so “don't know” has to take a number"


def _doubts(book: Book, question: Question) -> Iterator[str]:
    sized = question.kind in ("length", "readings")
    if sized and (question.least is None or question.most is None):
        yield "a length or readings need both least and most"
    if question.kind in ("length", "readings", "count"):
        low, high = (inches(text) if text else None for text in (question.least, question.most))
        if low is not None and high is not None and low > high:
            yield f"least is {question.least} and most is {question.most}, the wrong way round"
    elif question.least or question.most:
        yield f"a {question.kind} has no range"
    for doubt in question.doubts:
        given = [name for name in ("above", "below", "spread", "is_") if getattr(doubt, name) is not None]
        fits = {
            "choice": ["is_"],
            "count": ["is_"],
            "readings": ["above", "below", "spread"],
            "length": ["above", "below"],
        }
        if len(given) != 1 or given[0] not in fits.get(question.kind, []):
            yield f"the doubt “{doubt.say}” is not one test that fits a {question.kind}"
        elif question.kind == "choice" and doubt.is_ not in {choice.id for choice in question.choices}:
            yield f"a doubt tests for “{doubt.is_}”, which is none of its choices"


def _choices(book: Book, question: Question) -> Iterator[str]:
    """Check that every word picks one choice, never another one's number, and hides no wish of the person."""
    talk = load_talk()
    meant: dict[str, str] = {}
    for choice in question.choices:
        for word in sorted({choice.id, talk.folded(choice.say), *choice.words}):
            if meant.setdefault(word, choice.id) != choice.id:
                yield f"“{word}” stands for two choices, {meant[word]} and {choice.id}"
            if word != talk.folded(word):
                yield f"“{word}” can never be heard; words are in lower case with plain apostrophes"
            if (
                word.isdecimal()
                and 0 < int(word) <= len(question.choices)
                and question.choices[int(word) - 1] is not choice
            ):
                yield f"“{word}” is the number of another choice"
            if talk.wish(word) in ("back", "why", "how", "help", "dont_know", "usual", "keep"):
                yield f"“{word}” of {choice.id} hides what the person may want instead of answering"


def _texts(book: Book, question: Question) -> Iterator[str]:
    may = {"basement": set(), "wall": {"wall"}}.get(question.scope, {"wall", "thing"})
    said = {"ask": question.ask, "why": question.why, "how": question.how}
    said |= {f"of_partition.{name}": text for name, text in question.of_partition.items()}
    said |= {f"doubts[{index}].say": doubt.say for index, doubt in enumerate(question.doubts)}
    for name, text in {**said, "short": question.short, "unknown.say": question.unknown.say}.items():
        try:
            names = placeholders(text)
        except ValueError as error:
            yield f"{name} cannot be filled in ({error})"
            continue
        for odd in sorted(names - (may if name in said else set())):
            yield f"{name} has {{{odd}}}, which nothing fills in"
        longest = LONGEST_ASK if name.endswith("ask") else LONGEST_HELP
        if not text.strip() or len(text) > longest:
            yield f"{name} has {len(text)} characters, and 1 to {longest} fit"
