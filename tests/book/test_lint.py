"""`wallbrief book lint`: what ships is proved, and every kind of fault in a small book is found and named."""

from __future__ import annotations

import ast

import pytest

from guide.book.questions import load_book
from guide.lint import lint
from guide.lint.figures import lint_code, lint_figures
from guide.lint.findings import lint_findings
from guide.lint.questions import lint_book
from guide.lint.sayings import lint_sayings, lint_talk
from guide.lint.sketches import lint_sketches
from guide.lint.sources import attributes_in, built_texts, placeholders, source_texts, texts_in
from guide.reference.codes import load_code
from guide.reference.figures import Figure
from guide.reference.findings import Severity, load_findings
from guide.reference.sketches import Sketch
from guide.reference.steps import load_steps
from tests.book.small_book import READ, small_book


def test_what_ships_is_proved() -> None:
    assert lint(load_book()) == []


def test_a_sound_book_has_no_finding() -> None:
    assert lint_book(small_book(), READ) == []


LONG = "x" * 221

FAULTS = {
    "an id that stands twice": ('id = "shelves"', 'id = "use"', "question basement.use: the id stands 2 times in its scope."),
    "a test of no question": (
        'of = "basement.use"', 'of = "basement.mood"', "question basement.shelves: when tests basement.mood, which is no question.",
    ),
    "a test that cannot be seen": (
        'of = "basement.use"', 'of = "wall.length"',
        "question basement.shelves: when tests wall.length, which cannot be seen from a basement.",
    ),
    "a test of something asked later": (
        '{ of = "wall.left_joined", is = "no" }', '{ of = "wall.height", known = true }',
        "question wall.left: when tests wall.height, which is not asked before it.",
    ),
    "a test of itself": (
        '{ of = "wall.left_joined", is = "no" }', '{ of = "wall.left", is = "open" }',
        "question wall.left: when tests wall.left, which is not asked before it.",
    ),
    "a test of something asked after the things are": (
        '{ of = "wall.left", one_of = ["corner", "open"] }', '{ of = "wall.boxes", at_least = 1 }',
        "question opening.width: when tests wall.boxes, which is not asked before any opening is opened.",
    ),
    "hanging on no question": (
        'hangs_on = ["wall.length"]', 'hangs_on = ["wall.lenght"]', "question wall.height: it hangs on wall.lenght, which is no question.",
    ),
    "hanging on itself": (
        'hangs_on = ["wall.length"]', 'hangs_on = ["wall.height"]',
        "question wall.height: it hangs on wall.height, which cannot be seen from it.",
    ),
    "hanging on what cannot be seen": (
        'hangs_on = ["wall.length"]', 'hangs_on = ["opening.width"]',
        "question wall.height: it hangs on opening.width, which cannot be seen from it.",
    ),
    "a value that is no choice": (
        'is = "storage" }', 'is = "stroage" }', "question basement.shelves: when tests basement.use for “stroage”, which it never is.",
    ),
    "a value that a derived fact never has": (
        'of = "wall.left_joined", is = "no"', 'of = "wall.left_joined", is = "maybe"',
        "question wall.left: when tests wall.left_joined for “maybe”, which it never is.",
    ),
    "a value that does not fit a length": (
        '{ of = "wall.length", known = true }', '{ of = "wall.length", is = 144 }',
        "question wall.height: when tests wall.length for “144”, which it never is.",
    ),
    "a text where a count is tested": (
        '{ of = "basement.shelves", at_least = 2 }', '{ of = "basement.shelves", is = "two" }',
        "question wall.height: when tests basement.shelves for “two”, which it never is.",
    ),
    "counting what is no count": (
        '{ of = "basement.shelves", at_least = 2 }', '{ of = "basement.use", at_least = 2 }',
        "question wall.height: when tests basement.use for at least 2, but it is no count.",
    ),
    "a question that can never be reached": (
        '{ any = [{ of = "basement.shelves", at_least = 2 }, { of = "wall.length", known = true }] }',
        '{ all = [{ of = "basement.use", is = "living" }, { of = "basement.shelves", known = true }] }',
        "question wall.height: no set of answers ever leads to it.",
    ),
    "a count that is never that large": (
        '{ any = [{ of = "basement.shelves", at_least = 2 }, { of = "wall.length", known = true }] }',
        '{ of = "basement.shelves", at_least = 10 }',
        "question wall.height: no set of answers ever leads to it.",
    ),
    "a usual answer out of range": (
        'usual = "144"', 'usual = "12"',
        "question wall.length: usual is “12”, which its own reader refuses (“12” cannot be right for length: I take 24 in to 1200 in).",
    ),
    "a usual answer that would be doubted": (
        'usual = "144"', 'usual = "50 ft"', "question wall.length: usual is “50 ft”, which it would then doubt.",
    ),
    "an answer for don't know that cannot be read": (
        'take = "living"', 'take = "liveing"',
        "question basement.use: unknown.take is “liveing”, which its own reader refuses"
        " (“liveing” is none of the choices; say one of 1 = living, 2 = storage).",
    ),
    "a scope whose size nobody may know": (
        'unknown = { take = "1", say = "I take one." }', 'unknown = { say = "I take one." }',
        "question basement.walls: it opens a scope, so “don't know” has to take a number.",
    ),
    "a scope that nothing opens": ('opens = "pipe"', "", "scope pipe: 0 questions open it, and it should be 1."),
    "a scope opened twice": ('opens = "pipe"', 'opens = "box"', "scope box: 2 questions open it, and it should be 1."),
    "a scope opened from the wrong place": (
        'counted = ["shelf", "shelves"]', 'opens = "opening"',
        "question basement.shelves: it opens opening, which stands in wall, not in basement.",
    ),
    "half a range": ('least = "60"', "", "question wall.height: a length or readings need both least and most."),
    "a range the wrong way round": (
        'least = "60"', 'least = "160"', "question wall.height: least is 160 and most is 120, the wrong way round.",
    ),
    "a range where there is none": (
        '{ id = "open", say = "open end" }]', '{ id = "open", say = "open end" }]\nleast = "1"', "question wall.left: a choice has no range.",
    ),
    "a doubt that does not fit": (
        'above = "40 ft", say', 'spread = "1", say',
        "question wall.length: the doubt “{wall} is long. Is it right?” is not one test that fits a length.",
    ),
    "a doubt about no choice": (
        'usual = "living"', 'doubts = [{ is = "sleeping", say = "Really?" }]',
        "question basement.use: a doubt tests for “sleeping”, which is none of its choices.",
    ),
    "a word for two choices": (
        'say = "storage only"', 'say = "storage only", words = ["living"]',
        "question basement.use: “living” stands for two choices, living and storage.",
    ),
    "a word that cannot be heard": (
        'say = "storage only"', 'say = "storage only", words = ["Workshop"]',
        "question basement.use: “Workshop” can never be heard; words are in lower case with plain apostrophes.",
    ),
    "a word that is another choice's number": (
        'say = "storage only"', 'say = "storage only", words = ["1"]', "question basement.use: “1” is the number of another choice.",
    ),
    "a word that hides a wish": (
        'say = "storage only"', 'say = "storage only", words = ["not sure"]',
        "question basement.use: “not sure” of storage hides what the person may want instead of answering.",
    ),
    "a thing named where there is none": (
        'ask = "How long is {wall}?"', 'ask = "How long is {thing}?"', "question wall.length: ask has {thing}, which nothing fills in.",
    ),
    "a wall named in the basement": ('how = "Think."', 'how = "Face {wall}."', "question basement.use: how has {wall}, which nothing fills in."),
    "a wall named where nothing fills it in": (
        'say = "Nothing is drawn." }\n\n[[question]]\nid = "left"', 'say = "{wall} is not drawn." }\n\n[[question]]\nid = "left"',
        "question wall.length: unknown.say has {wall}, which nothing fills in.",
    ),
    "braces that do not match": (
        'ask = "How long is {wall}?"', 'ask = "How long is {wall?"', "question wall.length: ask cannot be filled in (expected '}' before end of string).",
    ),
    "a question too long for a screen": (
        'ask = "What for?"', f'ask = "{LONG}"', "question basement.use: ask has 221 characters, and 1 to 220 fit.",
    ),
    "an empty reason": ('why = "It decides."', 'why = " "', "question basement.use: why has 1 characters, and 1 to 320 fit."),
}  # fmt: skip


@pytest.mark.parametrize("fault", FAULTS)
def test_every_kind_of_fault_is_found_and_named(fault: str) -> None:
    old, new, finding = FAULTS[fault]
    found = lint_book(small_book(old, new), READ)
    assert finding in found
    assert all("\n" not in each and each.endswith(".") for each in found)


def test_an_answer_that_nothing_reads_is_found() -> None:
    assert lint_book(small_book(), READ - {"wall.height"}) == ["question wall.height: nothing reads the answer."]


def test_an_answer_that_is_read_and_never_asked_is_found() -> None:
    found = lint_book(small_book(), READ | {"wall.colour"})
    assert found == ["question wall.colour: the answer is read, but it is never asked."]


def test_a_question_that_only_opens_a_scope_counts_as_read() -> None:
    assert "wall.pipes" not in READ
    assert lint_book(small_book(), READ) == []


# -------------------------------------------------------------------------------------------------- sketches


def test_a_sketch_of_no_question_of_a_question_that_has_one_or_too_large_for_its_place_is_found() -> None:
    assert list(lint_sketches([Sketch(of=("wall.height",), lines="Here:\n  |\n")], small_book())) == []
    found = lint_sketches(
        [
            Sketch(of=("wall.height", "wall.hight"), lines="x\n" * 10),
            Sketch(of=("wall.height",), lines="x" * 45),
            Sketch(of=("wall.left",), lines="½"),
            Sketch(of=(), lines=" "),
        ],
        small_book(),
    )
    assert list(found) == [
        "sketches.toml: wall.height has 2 sketches.",
        "sketches.toml: wall.hight is no question.",
        "sketches.toml: sketch 1 (wall.height, wall.hight) is larger than 44 columns by 9 lines.",
        "sketches.toml: sketch 2 (wall.height) is larger than 44 columns by 9 lines.",
        "sketches.toml: sketch 3 (wall.left) is empty, or has more in it than plain ASCII.",
        "sketches.toml: sketch 4 (of no question) goes with nothing that is asked.",
        "sketches.toml: sketch 4 (of no question) is empty, or has more in it than plain ASCII.",
    ]


# -------------------------------------------------------------------------------------------------- sayings

SAYINGS = {
    "part.king": "on the {side} of {what}",
    "part.cap_1": "lies flat",
    "part.cap_2": "runs over",
    "remark.gap": "{gap} wide",
}
SAID = """
saying("part.king", side=side, what=what)
saying(f"part.cap_{case}")
Remark(saying("remark.gap", gap=gap))
"""


def test_sayings_that_are_all_said_and_all_there_have_no_finding() -> None:
    assert lint_sayings(SAYINGS, {"guide/a.py": SAID}) == []


@pytest.mark.parametrize(
    ("source", "finding"),
    [
        ('saying("part.jack")', "guide/b.py: it says part.jack, which is not in sayings.toml."),
        ('key = "remark.crooked"', "guide/b.py: it says remark.crooked, which is not in sayings.toml."),
        ('saying(f"part.plate_{kind}")', "guide/b.py: it says a key like part.plate_…, and none is in sayings.toml."),
        ('saying("part.king", side=side)', "guide/b.py: it says part.king without the value {what}."),
    ],
)
def test_a_sentence_that_the_data_cannot_say_is_found(source: str, finding: str) -> None:
    assert finding in lint_sayings(SAYINGS, {"guide/a.py": SAID, "guide/b.py": source})


def test_a_sentence_that_nothing_says_is_found() -> None:
    said = SAID.replace('saying("remark.gap", gap=gap)', "None")
    assert lint_sayings(SAYINGS, {"guide/a.py": said}) == ["sayings.toml: nothing ever says remark.gap."]


def test_a_key_made_of_a_group_and_any_word_says_only_what_the_code_has_a_word_for() -> None:
    sayings = {"part.bottom_plate": "down", "part.ghost": "never"}
    source = 'KIND = "bottom plate"\nsaying(f"part.{kind}")'
    assert lint_sayings(sayings, {"guide/a.py": source}) == ["sayings.toml: nothing ever says part.ghost."]


def test_values_passed_on_unseen_are_not_held_against_a_sentence() -> None:
    source = SAID + 'saying("part.king", **values)'
    assert lint_sayings(SAYINGS, {"guide/a.py": source}) == []


def test_the_talk_has_every_sentence_that_is_said_and_no_other() -> None:
    source = 'raise sorry("too_long", most=4)\nsay_of_talk("at_the_start")\nprint(talk.say["go_ahead"])'
    assert lint_talk({"too_long": "", "at_the_start": "", "go_ahead": ""}, {"guide/a.py": source}) == []
    assert lint_talk({"too_long": "", "spare": ""}, {"guide/a.py": source}) == [
        "guide/a.py: it says at_the_start, which is not in talk.toml.",
        "guide/a.py: it says go_ahead, which is not in talk.toml.",
        "talk.toml: nothing ever says spare.",
    ]


def test_the_source_that_is_searched_is_the_whole_package() -> None:
    sources = source_texts()
    assert {"guide/lengths/size.py", "guide/layout/studs.py", "guide/lint/sources.py"} <= set(sources)
    assert all(path.startswith("guide/") and path.endswith(".py") for path in sources)


def test_texts_patterns_names_and_braces_are_told_apart() -> None:
    tree = ast.parse('a = "whole"\nb = f"part.cap_{case}"\nfigures.kerf')
    assert texts_in(tree) == {"whole"}
    assert built_texts(tree) == {r"part\.cap_(.+)"}
    assert attributes_in({"a.py": "figures.kerf + x.y"}) == {"kerf", "y"}
    assert placeholders("{a} and {b:feet}, no more") == {"a", "b"}


# -------------------------------------------------------------------------------------------------- figures

FIGURE = Figure(value="1/8", what="saw cut", source="common practice")


def test_a_figure_that_is_known_used_and_sourced_has_no_finding() -> None:
    assert lint_figures({"kerf": FIGURE}, {"kerf"}, {"kerf"}) == []


@pytest.mark.parametrize(
    ("table", "named", "looked_at", "finding"),
    [
        ({"kerf": FIGURE, "gap": FIGURE}, {"kerf"}, {"kerf"}, "gap is a figure that the code does not know"),
        ({"kerf": FIGURE}, {"kerf"}, set[str](), "kerf is known to the code, but nothing uses it"),
        ({"kerf": FIGURE}, {"kerf", "gap"}, {"kerf", "gap"}, "gap, which the code uses, is missing"),
        ({"kerf": FIGURE.model_copy(update={"source": " "})}, {"kerf"}, {"kerf"}, "kerf has no source"),
        ({"kerf": FIGURE.model_copy(update={"what": ""})}, {"kerf"}, {"kerf"}, "kerf has no what"),
        (
            {"kerf": FIGURE.model_copy(update={"value": "1/7"})},
            {"kerf"},
            {"kerf"},
            "kerf is no length (“1/7” has 1/7, which is not a mark on a tape; use halves down to sixty-fourths, such as 5/8)",
        ),
    ],
)
def test_a_figure_that_is_not_as_it_should_be_is_found(
    table: dict[str, Figure], named: set[str], looked_at: set[str], finding: str
) -> None:
    assert lint_figures(table, named, looked_at) == [f"figures.toml: {finding}."]


def test_a_code_figure_without_its_section_is_found() -> None:
    profile = load_code()
    assert lint_code(profile) == []
    bare = profile.model_copy(update={"pin_edge": profile.pin_edge.model_copy(update={"section": ""})})
    assert lint_code(bare) == [f"code profile {profile.name}: pin_edge has no section."]


def test_findings_and_remarks_fit_each_other() -> None:
    text = load_findings()["gas"]
    held = text.model_copy(update={"severity": Severity.HOLD, "holds": "no_such_step", "fix": " "})
    found = list(
        lint_findings(
            {"gas": held, "water_wet": text.model_copy(update={"holds": "foam", "short": "{much} water"})},
            {"remark.odd": "x"},
            load_steps(),
        )
    )

    assert found == [
        "findings.toml: the engine's remark “odd” has no finding.",
        "findings.toml: gas leaves what it says, costs, mends or comes from empty.",
        "findings.toml: gas holds “no_such_step”, which is no step.",
        "findings.toml: water_wet says in short “{much} water”, and nothing fills in its braces.",
        "findings.toml: water_wet must name the step it holds if it is a HOLD, and only then.",
    ]
