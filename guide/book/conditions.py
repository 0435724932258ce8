"""Conditions in data: a small closed language over answers, with no code in it.

A condition is a table with exactly one of these shapes::

    { of = "opening.kind", is = "window" }          the answer is this choice or count
    { of = "basement.walls", at_least = 4 }         the count is at least this (or, at_most: at most)
    { of = "basement.slab", known = true }          it has been answered with a value (or, false: it has not)
    { all = [ ... ] }   { any = [ ... ] }   { none = [ ... ] }

A test on an answer that is not there yet is false, whatever it asks, except `known = false`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field, model_validator

Fact = str | int | None
"""What a condition sees of an answer: a choice, a count, any other text once answered, or nothing."""


class Condition(BaseModel):
    """One condition; exactly one of `of`, `all`, `any`, `none` is given."""

    model_config = ConfigDict(frozen=True, extra="forbid", populate_by_name=True)

    of: str | None = None
    """The question tested, as `scope.id`."""
    is_: Annotated[str | int | None, Field(alias="is")] = None
    one_of: tuple[str | int, ...] | None = None
    at_least: int | None = None
    at_most: int | None = None
    known: bool | None = None

    all: tuple[Condition, ...] | None = None
    any: tuple[Condition, ...] | None = None
    none: tuple[Condition, ...] | None = None

    @model_validator(mode="after")
    def _one_shape(self) -> Condition:
        tests = [self.is_, self.one_of, self.at_least, self.at_most, self.known]
        if self.of is not None:
            good = sum(test is not None for test in tests) == 1 and not (self.all or self.any or self.none)
        else:
            groups = [group for group in (self.all, self.any, self.none) if group is not None]
            good = len(groups) == 1 and bool(groups[0]) and not any(test is not None for test in tests)
        if not good:
            raise ValueError(
                "a condition is {of, and one of is, one_of, at_least, at_most, known} or one of {all}, {any}, {none}"
            )
        return self


def holds(condition: Condition | None, fact: Callable[[str], Fact]) -> bool:
    """Say whether the condition is true now; no condition is always true. `fact` gives an answer by its `scope.id`."""
    if condition is None:
        return True
    if condition.all is not None:
        return all(holds(part, fact) for part in condition.all)
    if condition.any is not None:
        return any(holds(part, fact) for part in condition.any)
    if condition.none is not None:
        return not any(holds(part, fact) for part in condition.none)
    assert condition.of is not None
    value = fact(condition.of)
    if condition.known is not None:
        return (value is not None) == condition.known
    if condition.at_least is not None:
        return isinstance(value, int) and value >= condition.at_least
    if condition.at_most is not None:
        return isinstance(value, int) and value <= condition.at_most
    if condition.one_of is not None:
        return value in condition.one_of
    return value is not None and value == condition.is_


def tests_in(condition: Condition | None) -> Iterator[Condition]:
    """Yield every single test inside a condition, outermost first."""
    if condition is None:
        return
    if condition.of is not None:
        yield condition
    for part in (*(condition.all or ()), *(condition.any or ()), *(condition.none or ())):
        yield from tests_in(part)
