"""Crews for the tests of the evenings: of every kind, with evenings long and short, near and far apart."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import strategies as st

from guide.order.crew import Crew, People
from tests.jobs import Tree

PEOPLE: tuple[People, ...] = ("alone", "helper", "two")

CREWS: dict[str, Tree] = {
    "usual": {},
    "every day, quiet after an hour": {"days": "mon tue wed thu fri sat sun", "evening_hours": "3", "loud_hours": "1"},
    "one hour at a time": {"days": "mon wed fri", "evening_hours": "1", "loud_hours": "1"},
    "a helper on Saturday": {"crew": "helper", "days": "tue thu", "helper_day": "sat", "loud_hours": "2"},
    "two on whole Saturdays": {"crew": "two", "days": "sat", "evening_hours": "8", "loud_hours": "6"},
}
"""Answers about the evenings, by what is special about them."""


def own(name: str) -> Tree:
    """Return the answers of a crew for the basement of a job."""
    return {"evenings": "own", **CREWS[name]}


@st.composite
def crews(draw: st.DrawFn) -> Crew:
    """Draw any crew that the answers could give."""
    people: People = draw(st.sampled_from(PEOPLE))
    days = draw(st.sets(st.integers(0, 6), min_size=1))
    helps = {"alone": set[int](), "two": days, "helper": draw(st.sets(st.integers(0, 6), min_size=1, max_size=2))}[
        people
    ]
    hours = draw(st.integers(1, 10))
    return Crew(
        people=people,
        weekdays=tuple(sorted(days | helps)),
        helper_days=tuple(sorted(helps)),
        minutes=60 * hours,
        loud=60 * draw(st.integers(1, hours)),
        inspection_days=draw(st.integers(1, 14)),
        start=None,
        pace=Fraction(draw(st.integers(50, 300)), 100),
    )
