"""People who answer: replies that a question takes, whole talks of them, and jobs that come out of such talks."""

from __future__ import annotations

from hypothesis import strategies as st
from hypothesis.strategies import DrawFn, SearchStrategy

from guide.book.questions import Question, load_book
from guide.interview.answers import Answer, Certainty
from guide.interview.asking import Asked, asked_at, next_question, with_answer
from guide.interview.jobfile import Job
from guide.interview.understand import hear, unknown_answer
from guide.lengths import SIXTEENTH, Length, as_written, in_feet, in_inches

BOOK = load_book()
MOST_THINGS = 2
"""Walls in a talk, and things of each kind on a wall: enough for every way questions lead to each other."""


@st.composite
def sizes(draw: DrawFn, question: Question) -> str:
    """Draw a size in the question's range, as people write it; now and then not measured."""
    low, high = question.range_of_lengths()
    assert low is not None
    assert high is not None
    length = SIXTEENTH * draw(st.integers(-(-low.ticks // SIXTEENTH.ticks), high.ticks // SIXTEENTH.ticks))
    shown = draw(st.sampled_from([f"{in_inches(length)} in", in_feet(length), as_written(length)]))
    return draw(st.sampled_from(["", "", "", "about ", "~"])) + shown


@st.composite
def reading_lists(draw: DrawFn, question: Question) -> str:
    """Draw readings at all or some of the places."""
    places = list(question.places)
    if question.along:
        places = draw(st.sampled_from([["left", "right"], ["left", "middle", "right"], ["left", "4 ft", "right"]]))
    elif draw(st.booleans()):
        places = places[: question.fewest]
    form = draw(st.sampled_from(["{size} at {place}", "{place}: {size}", "{size} {place}"]))
    if "4 ft" in places:
        form = "{size} at {place}"
    return ", ".join(form.format(size=draw(sizes(question)), place=place) for place in places)


def replies(question: Question) -> SearchStrategy[str]:
    """Return replies that the question takes for an answer."""
    if question.kind == "length":
        own = sizes(question)
    elif question.kind == "readings":
        own = reading_lists(question)
    elif question.kind == "choice":
        own = st.sampled_from([c.id for c in question.choices] + [str(n + 1) for n in range(len(question.choices))])
    elif question.kind == "count":
        least = int(question.least or 0)
        own = st.sampled_from([str(least + n) for n in range(MOST_THINGS + 1)] + ([] if least else ["none"]))
    elif question.kind == "date":
        own = st.sampled_from(["2027-03-02", "29 Feb 2028", "March 2, 2027"])
    elif question.kind == "names":
        own = st.sampled_from(["1", "2", "north", "north, stair wall", "4"])
    else:
        own = st.sampled_from(
            ["none", "no", "gas meter at 9 ft, left of it a hose tap", "*bold* <b>[x](y)", "ölfaß №7"]
        )
    others = ["don't know"] + (["usual"] if question.usual is not None else [])
    return st.one_of(own, own, own, st.sampled_from(others))


def answered(answers: dict[str, Answer], asked: Asked, reply: str) -> dict[str, Answer]:
    """Return the answers after a reply that has to be one."""
    heard = hear(BOOK, answers, asked, reply)
    assert isinstance(heard, Answer), f"{reply!r} is no answer to {asked.path}"
    return with_answer(BOOK, answers, asked.path, heard)[0]


@st.composite
def talks(draw: DrawFn, whole: bool = False) -> dict[str, Answer]:
    """Draw the answers after a talk in the order asked, broken off somewhere unless it has to be whole."""
    answers: dict[str, Answer] = {}
    left = 10_000 if whole else draw(st.integers(0, 120))
    while left and (asked := next_question(BOOK, answers)) is not None:
        answers = answered(answers, asked, draw(replies(asked.question)))
        left -= 1
    return answers


@st.composite
def edited_talks(draw: DrawFn) -> dict[str, Answer]:
    """Draw the answers after a talk in which some were changed later, so that some are parked and some in doubt."""
    answers = draw(talks())
    for path in draw(st.lists(st.sampled_from(sorted(answers)), max_size=6)) if answers else []:
        asked = asked_at(BOOK, path)
        assert asked is not None
        answers = answered(answers, asked, draw(replies(asked.question)))
    return answers


@st.composite
def jobs(draw: DrawFn) -> Job:
    """Draw any job that a file may have to hold: every certainty, doubts, parked answers, sizes to the last tick."""
    answers = draw(edited_talks())
    for path in draw(st.lists(st.sampled_from(sorted(answers)), max_size=8, unique=True)) if answers else []:
        asked = asked_at(BOOK, path)
        assert asked is not None
        answers[path] = draw(st.sampled_from([answers[path].doubted(), draw(_other(asked.question, answers[path]))]))
    return Job(answers, draw(st.sampled_from(["", "An invented job."])))


@st.composite
def _other(draw: DrawFn, question: Question, answer: Answer) -> Answer:
    if isinstance(answer.value, Length):
        low, high = question.range_of_lengths()
        assert low is not None
        assert high is not None
        any_tick = Length(draw(st.integers(low.ticks, high.ticks)))
        return Answer(
            any_tick, draw(st.sampled_from(Certainty)), draw(st.sampled_from(["", "just so", as_written(any_tick)]))
        )
    if question.opens is None:
        return unknown_answer(
            question, draw(st.sampled_from(["", "don't know", "None", "\N{RIGHT SINGLE QUOTATION MARK}"]))
        )
    return answer
