"""Code profiles: countries and editions as data, and the office's own words that win over both."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path

import jsonschema
import pytest

from guide.checks.check import check
from guide.cli import main
from guide.layout.engine import lay_out
from guide.layout.parts import Kind, Layout
from guide.lengths import inches
from guide.reference.codes import CODES, CodeProfile, load_code
from guide.reference.data import DataError
from guide.reference.figures import load_figures
from guide.reference.office import load_office, office_schema, with_office
from guide.survey.build import code_of
from tests.jobs import Tree, job, outlet, survey_of, wall

OURS = 'name = "Office of an invented town"\nsays = "plan desk"\n'


def office_file(folder: Path, text: str) -> Path:
    """Write an office's file."""
    path = folder / "office.toml"
    path.write_text(text, encoding="utf-8")
    return path


def laid_by(tree: Tree, code: CodeProfile | None = None) -> Layout:
    """Return the layout of a job by its own code, or by this one."""
    survey = survey_of(tree)
    return lay_out(survey, code or code_of(survey), load_figures())


def between(layout: Layout) -> int:
    """Return how many upright blocks stand between the two at the ends of the first wall."""
    return len(layout.walls[0].of(Kind.FIREBLOCK)) - 2


@pytest.mark.parametrize(("code", "section"), [("us 2018", "R316.4"), ("us 2021", "R316.4"), ("us 2024", "R303.4")])
def test_an_edition_prints_its_own_section(code: str, section: str) -> None:
    """The 2024 edition moved foam plastic from R316 to R303 (from memory, medium confidence): the figure says so."""
    figure = load_code(code).thermal_barrier

    assert (figure.value, figure.section, figure.edition) == ("1/2", section, code.removeprefix("us "))
    assert code == "us 2021" or "memory" in figure.seen


def test_a_figure_that_no_other_edition_is_recorded_for_keeps_the_edition_it_was_read_in() -> None:
    """Nothing is said to stand in an edition where nobody has placed it."""
    assert load_code("us 2024").pin_edge == load_code("us 2018").pin_edge


def test_the_ten_feet_of_one_country_and_the_twenty_metres_of_the_other_never_share_a_field() -> None:
    """IRC R302.11 (seen): 10 ft. NBC 2020 9.10.16.2 (seen): 20 m along, 3 m up."""
    us, canada = load_code("us 2021"), load_code("canada 2020")

    assert (us.fire_block_along, us.fire_block_up, canada.fireblock_spacing) == (None, None, None)
    assert us.blocks_along.length == inches("120")
    assert canada.blocks_along.length == inches("20000 mm")
    assert canada.fire_block_up is not None
    assert canada.fire_block_up.length == inches("3000 mm")


def test_a_long_wall_gets_one_block_in_canada_and_eight_in_the_states() -> None:
    """24 m of wall: one for 20 m. Seven would do for 10 ft, but they stand beside studs at 16 in: 112 in apart, so eight."""
    tree = job([wall("944 7/8 in")])
    canada = job([wall("944 7/8 in")], code="canada 2020")

    assert between(laid_by(tree)) == 8
    assert between(laid_by(canada)) == 1


def test_thin_plywood_blocks_in_canada_and_not_in_the_states() -> None:
    """NBC 2020 9.10.16.3 (seen): 12.5 mm. IBC 718.2.1, the IRC's own list (seen): 23/32 in."""
    thin = inches("12.5 mm")

    assert load_code("canada 2020").fireblock_plywood.length <= thin
    assert load_code("us 2021").fireblock_plywood.length > thin


def test_every_figure_of_every_profile_says_where_it_stands_and_how_sure_we_are() -> None:
    """Standard, edition, section, and seen or memory."""
    for code in CODES:
        for name, figure in load_code(code).figures.items():
            assert all((figure.value, figure.unit, figure.what, figure.standard, figure.edition, figure.section)), name
            assert "seen" in figure.seen or "memory" in figure.seen, name


# ---------------------------------------------------------------------------------------------- the office's words


def test_the_offices_own_words_win_and_are_named(tmp_path: Path) -> None:
    """5 ft instead of 10: 11 ft of wall gets two blocks between its ends instead of one, and the paper says whose rule."""
    path = office_file(tmp_path, OURS + '[figure.fireblock_spacing]\nvalue = "5 ft"\nwords = "every 5 ft here"\n')
    profile = with_office(load_code(), load_office(path))
    tree = job([wall("132 in")])

    assert profile.blocks_along.cited == "Office of an invented town (plan desk), “every 5 ft here”"
    assert profile.office_figures == ("fireblock_spacing",)
    assert (between(laid_by(tree)), between(laid_by(tree, profile))) == (1, 2)


def test_a_thicker_cover_that_the_office_wants_holds_thinner_drywall(tmp_path: Path) -> None:
    """5/8 in wanted: 1/2 in drywall is held back, 5/8 is not."""
    path = office_file(tmp_path, OURS + '[figure.thermal_barrier]\nvalue = "5/8 in"\n')
    profile = with_office(load_code(), load_office(path))
    thin, thick = (laid_by(job([wall("196 in")], drywall=each), profile) for each in ("1/2", "5/8"))

    assert "thermal_barrier" in {finding.key for finding in check(thin, profile)}
    assert "thermal_barrier" not in {finding.key for finding in check(thick, profile)}


def test_a_rule_of_the_other_country_is_left_out(tmp_path: Path) -> None:
    """The office's 8 ft is no rule for a house in Canada, and nothing says that it was taken."""
    path = office_file(tmp_path, OURS + '[figure.fireblock_spacing]\nvalue = "8 ft"\n')
    profile = with_office(load_code("canada 2020"), load_office(path))

    assert profile.office_figures == ()
    assert profile.blocks_along.length == inches("20000 mm")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("name = ", "this is not TOML"),
        ('says = "x"\n[figure.radon]\nvalue = "3"\n', "name: field required"),
        (OURS + '[figure.fireblok_spacing]\nvalue = "8 ft"\n', "did you mean fireblock_spacing?"),
        (OURS + '[figure.fireblock_spacing]\nvalue = "every stud"\n', "I read “every stud”; it should be a length such as 10 ft"),
        (OURS + '[figure.fireblock_spacing]\nvalue = "0 ft"\n', "more than nothing"),
        (OURS + '[figure.radon]\nvalue = "low"\n', "it should be a number, pCi/L, such as 4"),
        (OURS + '[figure.radon]\nvalue = "3"\nunit = "Bq"\n', "figure.radon.unit"),
    ],
)  # fmt: skip
def test_a_file_that_cannot_be_used_is_one_clear_sentence(tmp_path: Path, text: str, said: str) -> None:
    """What was read, where, what would be right; and nothing is planned."""
    path = office_file(tmp_path, text)

    with pytest.raises(DataError) as caught:
        load_office(path)

    assert said in str(caught.value)
    assert str(path) in str(caught.value)
    assert "\n" not in str(caught.value)


def test_the_schema_takes_what_is_read_and_refuses_what_is_not() -> None:
    """The printed schema and the reader agree."""
    schema = office_schema()
    good = tomllib.loads(OURS + '[figure.fireblock_spacing]\nvalue = "8 ft"\n')
    jsonschema.validate(good, schema)

    wrong: list[dict[str, object]] = [
        {**good, "figure": {"fireblok": {"value": "8 ft"}}},
        {"figure": {}},
        {**good, "county": "x"},
    ]
    for bad in wrong:
        with pytest.raises(jsonschema.ValidationError):
            jsonschema.validate(bad, schema)


# ---------------------------------------------------------------------------------------------- findings as JSON


def test_findings_come_as_json_with_ids_that_stay(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A program reads the same ids twice, the worst first, and the exit code says whether a STOP stands."""
    path = tmp_path / "job.json"
    path.write_text(
        json.dumps(job([wall("196 in", other="meter", boxes=[outlet("60 in"), outlet("140 in")])], water="wet")),
        encoding="utf-8",
    )
    found = []
    for _ in range(2):
        assert main(["check", str(path), "--json"]) == 1
        found.append(json.loads(capsys.readouterr().out))

    assert found[0] == found[1]
    assert found[0]["stopped"] is True
    assert [each["id"] for each in found[0]["findings"]] == ["basement.water_wet", "A.other"]
    assert set(found[0]["findings"][0]) == {
        "id", "severity", "wall", "at", "short", "what", "costs", "fix", "holds", "source", "signed_off",
    }  # fmt: skip


def test_a_bad_office_file_is_said_by_every_command_in_one_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Exit code 2, one sentence on the error stream."""
    path, bad = tmp_path / "job.json", office_file(tmp_path, "name = ")
    path.write_text(json.dumps(job([wall("196 in")])), encoding="utf-8")
    for command in (["check", str(path)], ["plan", str(path), "--out", str(tmp_path / "out")], ["talk", str(path)]):
        assert main([*command, "--office", str(bad)]) == 2
        assert capsys.readouterr().err.count("\n") == 1
