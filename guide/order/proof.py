"""The proof of the steps: that what they test can be tested where they stand, and can come true.

With no finding left every condition in `prompts_data/steps.toml` tests a fact of the closed list, sees it from its place,
compares it with a value it can have, and every fact of the list is tested by something.
"""

from __future__ import annotations

from collections.abc import Iterator

from guide.book.conditions import Condition, tests_in
from guide.order.facts import FACTS
from guide.reference.steps import SCOPES, StepBook, StepText

_SEEN_FROM = {"room": ("basement",), "wall": ("basement", "wall"), "end": ("basement", "wall", "end")}


def lint_steps(book: StepBook) -> list[str]:
    """Return every finding in the conditions of a book of steps, one sentence each, in a fixed order."""
    found = [finding for step in book.step for finding in _step(step)]
    tested = {test.of for step in book.step for condition, _ in _conditions(step) for test in tests_in(condition)}
    return [*found, *(f"fact {name}: no step tests it." for name in FACTS if name not in tested)]


def _conditions(step: StepText) -> Iterator[tuple[Condition | None, tuple[str, ...]]]:
    """Yield every condition of a step with the scopes of facts that it sees."""
    here = _SEEN_FROM[step.scope]
    yield step.when, here
    yield from ((line.when, here) for line in step.text)
    yield from ((wait.when, here) for wait in step.wait)
    yield from ((need.when, _SEEN_FROM[SCOPES[-1]] if need.where == "neighbour" else here) for need in step.needs)


def _step(step: StepText) -> Iterator[str]:
    for condition, seen in _conditions(step):
        for test in tests_in(condition):
            name = test.of or ""
            if name not in FACTS:
                yield f"step {step.id}: {name} is no fact."
                continue
            if name.partition(".")[0] not in seen:
                yield f"step {step.id}: {name} cannot be seen from a {step.scope}."
            values = FACTS[name]
            asked = test.one_of or (() if test.is_ is None else (test.is_,))
            for value in asked:
                if values is not None and value not in values:
                    yield f"step {step.id}: it tests {name} for “{value}”, which it never is."
            if values is None and asked:
                yield f"step {step.id}: it compares {name}, which is a count or a size."
            if values is not None and test.at_least is not None:
                yield f"step {step.id}: it counts {name}, which is no count."
