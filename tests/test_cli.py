"""Every command as a person runs it: what it prints, what it exits with, what it leaves on the disk."""

import io
import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import jsonschema
import pytest

from guide.cli import main
from tests.walkthroughs import ROOT

WORKED = ROOT / "first-wall" / "job.json"


@pytest.fixture
def job(tmp_path: Path) -> Path:
    """A copy of the worked wall's job."""
    return Path(shutil.copy(WORKED, tmp_path / "job.json"))


def test_plan_writes_every_paper_and_says_where(job: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Exit 0, the job sheet, a page for the wall, plan.json, and a summary with the numbers that matter."""
    assert main(["plan", str(job), "--out", str(tmp_path / "out")]) == 0

    assert {p.name for p in (tmp_path / "out").iterdir()} == {
        "job-sheet.md", "wall-A.md", "shopping.md", "shopping.csv", "shopping.json", "plan.json", "evenings.md",
        "helper-A.md", "brief.md", "office.md", "walk.md", "record.md",
    }  # fmt: skip
    said = capsys.readouterr().out
    assert "plate 187 3/4 in" in said
    assert str(tmp_path / "out") in said


def test_plan_json_fits_its_schema(job: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """An independent judge accepts plan.json by the schema that `schema plan` prints, and holds parts of the wall."""
    main(["plan", str(job), "--out", str(tmp_path)])
    capsys.readouterr()
    main(["schema", "plan"])
    schema = json.loads(capsys.readouterr().out)
    plan = json.loads((tmp_path / "plan.json").read_text(encoding="utf-8"))

    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.validate(plan, schema)
    studs = [part for part in plan["walls"][0]["parts"] if part["kind"] == "stud"]
    assert (len(studs), studs[0]["cut"], studs[-1]["cut"]) == (13, "88 1/8 in", "88 15/16 in")


def test_prices_go_from_a_blank_file_to_the_sum_on_the_list(
    job: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """`prices JOB` prints what this job buys; filled in and given to `plan`, every line has its price."""
    assert main(["prices", str(job)]) == 0
    blank = capsys.readouterr().out
    assert "batt" not in blank  # this job has none
    filled = "\n".join(
        line.removeprefix("# ") + " 2.00" if line.startswith("# ") and line.endswith("=") else line
        for line in blank.splitlines()
    )
    prices = tmp_path / "prices.toml"
    prices.write_text(filled, encoding="utf-8")

    assert main(["plan", str(job), "--out", str(tmp_path / "out"), "--prices", str(prices)]) == 0
    bill = json.loads((tmp_path / "out" / "shopping.json").read_text(encoding="utf-8"))["bill"]
    assert bill["unpriced"] == []
    assert bill["cents"] > 0


def test_the_price_file_named_in_the_job_is_looked_for_beside_it(
    job: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """From any folder; what is given on the command line wins; one that is gone is one sentence, and nothing is written."""
    tree = json.loads(job.read_text(encoding="utf-8"))
    tree["basement"] |= {"shopping": "own", "price_file": "yard.toml"}
    job.write_text(json.dumps(tree), encoding="utf-8")
    own, other, out = job.parent / "yard.toml", tmp_path / "other.toml", tmp_path / "out"
    own.write_text("[price]\nadhesive = 8.98\n", encoding="utf-8")
    other.write_text("[price]\nadhesive = 1.00\n", encoding="utf-8")

    def adhesive(*options: str) -> object:
        assert main(["plan", str(job), "--out", str(out), *options]) == 0
        lines = json.loads((out / "shopping.json").read_text(encoding="utf-8"))["purchase"]
        return next(line["cents_each"] for line in lines if line["ware"] == "adhesive")

    assert adhesive() == 898
    assert adhesive("--prices", str(other)) == 100
    own.unlink()
    capsys.readouterr()
    assert main(["plan", str(job), "--out", str(tmp_path / "none")]) == 2
    said = capsys.readouterr().err
    assert "yard.toml" in said
    assert "there is no such file" in said
    assert len(said.splitlines()) == 1
    assert not (tmp_path / "none").exists()


def test_a_price_file_that_is_wrong_is_one_sentence_and_nothing_is_written(
    job: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Exit 2; file, place and remedy are named."""
    prices = tmp_path / "prices.toml"
    for text, said in (("[price]\nadhesive = 0\n", "price.adhesive"), (None, "No such file")):
        prices.unlink(missing_ok=True) if text is None else prices.write_text(text, encoding="utf-8")
        assert main(["plan", str(job), "--out", str(tmp_path / "out"), "--prices", str(prices)]) == 2
        error = capsys.readouterr().err
        assert "prices.toml" in error
        assert said in error
        assert len(error.splitlines()) == 1
        assert not (tmp_path / "out").exists()


@pytest.mark.parametrize("name", ["first-wall", "four-walls"])
def test_worked_jobs_fit_the_job_schema(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    """The schema made from the question book accepts the jobs that ship, and refuses a key it does not know."""
    main(["schema", "job"])
    schema = json.loads(capsys.readouterr().out)
    job = json.loads((ROOT / name / "job.json").read_text(encoding="utf-8"))

    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.validate(job, schema)
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate({**job, "wals": []}, schema)


def test_check_exits_1_while_a_stop_stands(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A wet basement stops the job: the finding is said, and the exit code tells a script."""
    tree = json.loads(job.read_text(encoding="utf-8"))
    tree["basement"]["water"] = "wet"
    job.write_text(json.dumps(tree), encoding="utf-8")

    assert main(["check", str(job)]) == 1
    said = capsys.readouterr().out
    assert said.startswith("STOP basement.water_wet: the basement has been wet\n")
    assert all(len(line) <= 78 for line in said.splitlines())
    assert main(["check", str(job), "basement.water_wet"]) == 1
    whole = capsys.readouterr().out
    assert "The cheapest fix: Find the cause from outside" in whole
    assert main(["check", str(job), "--all"]) == 1
    assert whole in capsys.readouterr().out
    assert main(["check", str(job), "A.no_such"]) == 2
    assert "A.no_such: nothing of that name was found; there are basement.water_wet" in capsys.readouterr().err


def test_twice_names_the_readings_that_decide_most(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Five readings of the worked wall, each with its slip and what hangs on it."""
    assert main(["twice", str(job)]) == 0

    said = capsys.readouterr().out.splitlines()
    assert [line[0] for line in said if line[0].isdecimal()] == ["1", "2", "3", "4", "5"]
    assert said[1] == "1  Wall A: slab to joists at 96 in: you read 91 5/8 in. If it is off by 1/16 in:"


def test_check_is_quiet_about_a_sound_job(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The worked wall has nothing to stop it, and nothing is said to pass."""
    assert main(["check", str(job)]) == 0
    said = capsys.readouterr().out
    assert "STOP" not in said
    assert "pass" not in said.lower()


BAD_FILES = {
    "not JSON": ("{", "not JSON"),
    "empty": ("", "not JSON"),
    "a list": ("[]", "one object"),
    "a newer format": ('{"format": 99}', "newer"),
    "an unknown key": ('{"format": 1, "basement": {"foem": "extruded"}}', "did you mean “foam”"),
    "an impossible length": ('{"format": 1, "walls": [{"length": "16 ft 14 in"}]}', "wall A, length"),
    "a length out of range": ('{"format": 1, "walls": [{"length": "3 in"}]}', "wall A, length"),
    "no wall": ('{"format": 1}', "no wall has a length"),
    "overlapping openings": (
        '{"format": 1, "walls": [{"length": "200 in", "openings": ['
        '{"kind": "window", "left": "50 in", "width": "40 in", "tall": "24 in", "sill": "50 in"},'
        '{"kind": "window", "left": "70 in", "width": "40 in", "tall": "24 in", "sill": "50 in"}]}]}',
        "overlap",
    ),
    "a pipe outside the wall": (
        '{"format": 1, "walls": [{"length": "100 in", "pipes": [{"run": "standing", "at": "140 in"}]}]}',
        "pipe 1 of wall A",
    ),
    "ten megabytes of junk": ("x" * 10_000_000, "never over"),
}


@pytest.mark.parametrize("kind", BAD_FILES)
@pytest.mark.parametrize("command", ["plan", "check"])
def test_a_bad_file_gives_one_sentence_and_is_left_alone(
    kind: str, command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Exit 2, one line on the error stream that names the file and the place, nothing else written, the file as it was."""
    text, hint = BAD_FILES[kind]
    job = tmp_path / "job.json"
    job.write_text(text, encoding="utf-8")
    arguments = [command, str(job)] + (["--out", str(tmp_path / "out")] if command == "plan" else [])

    assert main(arguments) == 2

    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.count("\n") == 1
    assert hint.lower() in said.err.lower()
    assert str(job) in said.err
    assert job.read_text(encoding="utf-8") == text
    assert not (tmp_path / "out").exists()


def test_a_file_that_is_not_there_is_one_sentence(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """So is a command that does not exist, and an option without its value."""
    for arguments in (["plan", str(tmp_path / "none.json")], ["plan"], ["schema", "house"], ["--nonsense"]):
        assert main(arguments) == 2
        said = capsys.readouterr()
        assert (said.out, said.err.count("\n")) == ("", 1), arguments


def test_practise_without_a_name_is_the_whole_room(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """The README's first command: four walls, not the newest of the worked jobs."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr("sys.stdin", io.StringIO())

    assert main(["practise"]) == 0
    assert "wallbrief-papers/four-walls" in capsys.readouterr().out


def test_practise_without_a_screen_writes_the_papers_of_a_worked_job(tmp_path: Path) -> None:
    """The README's first command in a pipe: it says that the job is invented, and writes its papers and a summary."""
    command = [sys.executable, "-m", "guide.cli", "practise", "first-wall"]
    environment = {"PYTHONPATH": str(ROOT.parent), "PATH": "/usr/bin:/bin"}
    done = subprocess.run(
        command, cwd=tmp_path, env=environment, stdin=subprocess.DEVNULL, capture_output=True, text=True, check=False
    )

    assert done.returncode == 0, done.stderr
    assert "invented" in done.stdout
    assert (tmp_path / "wallbrief-papers" / "first-wall" / "wall-A.md").exists()


def test_practising_twice_goes_on_with_the_same_copy(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What was typed into the copy is not lost when practising again."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(sys, "stdin", io.StringIO(""))
    main(["practise", "first-wall"])
    copy = tmp_path / "wallbrief-practice" / "first-wall.json"
    changed = copy.read_text(encoding="utf-8").replace('"shelf": "2 1/2 in"', '"shelf": "3 in"')
    copy.write_text(changed, encoding="utf-8")
    main(["practise", "first-wall"])

    assert copy.read_text(encoding="utf-8") == changed


def test_plain_talk_keeps_every_answer_of_a_pipe(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Replies from a pipe are answers in the file, whatever comes after them; the end of the pipe loses nothing."""
    job = tmp_path / "new.json"
    monkeypatch.setattr(sys, "stdin", io.StringIO("inches\nliving\nwhat?\n\x1b[31mdry\n"))

    assert main(["talk", str(job), "--plain"]) == 0

    kept = json.loads(job.read_text(encoding="utf-8"))["basement"]
    assert kept["tape"] == "inches"
    assert kept["use"] == "living"
    assert "\x1b" not in job.read_text(encoding="utf-8")


def test_book_lint_finds_nothing_wrong(capsys: pytest.CaptureFixture[str]) -> None:
    """The question book and the data that ship are proven sound."""
    assert main(["book", "lint"]) == 0
    assert "nothing wrong" in capsys.readouterr().out


def test_a_terminal_that_has_no_signs_but_ascii_is_talked_to_in_ascii(tmp_path: Path) -> None:
    """Where the output takes ASCII alone nothing stops the talk: quotes are plain, a drawing too, and a fraction has its stroke."""
    ran = subprocess.run(
        [sys.executable, "-m", "guide.cli", "practise", "first-wall", "--plain"],
        input="banana “4½”\ndraw\nfind shelf\nbanana\n4½\n", capture_output=True, text=True, encoding="utf-8", cwd=tmp_path,
        env={**os.environ, "PYTHONIOENCODING": "ascii:strict", "PYTHONUTF8": "0"}, check=True,
    )  # fmt: skip

    assert ran.stdout.isascii()
    assert '"banana" ' in ran.stdout
    assert "| stud" in ran.stdout


def test_a_reader_who_has_had_enough_is_no_failure_to_speak_of() -> None:
    """`wallbrief schema job | head -1` ends without a word on the error stream."""
    ends, starts = os.pipe()
    os.close(ends)
    ran = subprocess.run(
        [sys.executable, "-m", "guide.cli", "schema", "job"],
        cwd=ROOT,
        stdout=starts,
        stderr=subprocess.PIPE,
        check=False,
    )
    os.close(starts)

    assert ran.stderr == b""
