"""The command line: what each command does, and what it exits with.

0 done; 1 planned, but a STOP stands; 2 the input cannot be used. Nothing here imports the terminal app until it opens.
"""

from __future__ import annotations

import argparse
import gc
import json
import os
import sys
from collections.abc import Sequence
from dataclasses import replace
from io import TextIOWrapper
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

from guide.book.questions import BookError, load_book
from guide.interview.jobfile import JobFileError
from guide.reference.data import DataError
from guide.worked import WORKED_JOBS, copy_of_worked_job

if TYPE_CHECKING:
    from guide.book.questions import Book
    from guide.reference.office import Office
    from guide.session import Session


NEW_THINGS = 50_000
"""Things made after which garbage is looked for. Nearly all that is loaded stays, and looking for garbage in it as often as
is usual took a tenth of the time to the first question."""


class _Parser(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        """Say what was wrong with the command in one sentence, and how to see the rest."""
        raise _Unusable(f"{message}; wallbrief --help shows what I take.")


class _Unusable(ValueError):  # noqa: N818 - it is said as it stands
    """Input that cannot be used; the message is one sentence."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run a command and return its exit code. Every failure the person can mend is one sentence on the error stream."""
    gc.set_threshold(NEW_THINGS)
    try:
        for stream in (sys.stdin, sys.stdout, sys.stderr):
            if isinstance(stream, TextIOWrapper):
                stream.reconfigure(errors="replace")  # a sign that is not known there is no reason to stop
        code = _run(list(sys.argv[1:] if arguments is None else arguments))
        sys.stdout.flush()
        return code
    except (_Unusable, JobFileError, BookError, DataError) as error:
        print(f"wallbrief: {error}", file=sys.stderr)
        return 2
    except BrokenPipeError:
        # whoever read the output has had enough; what is still in the buffer would fail again at the end
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1
    except OSError as error:
        print(f"wallbrief: {error.filename or 'the file'}: {error.strerror or error}.", file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        print(file=sys.stderr)
        return 130


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(
        prog="wallbrief", description="Talks you through your basement walls and writes the papers to build from."
    )
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", parser_class=_Parser)
    talk = commands.add_parser(
        "talk", help="open the conversation on a job", description="Open the conversation on a job."
    )
    talk.add_argument("job", type=Path, nargs="?", help="the job file; a new one is made")
    practise = commands.add_parser(
        "practise", help="open a copy of a worked job", description="Open a copy of a worked job."
    )
    practise.add_argument("name", nargs="?", default=WORKED_JOBS[-1], choices=WORKED_JOBS, help="which one")
    practise.add_argument(
        "--talk",
        action="store_true",
        help="play its talk from the first question, at your own speed: Enter says the next",
    )
    for command in (talk, practise):
        command.add_argument("--plain", action="store_true", help="line by line, without the drawn screen")
        command.add_argument(
            "--ascii", action="store_true", help="no characters but ASCII, for a terminal without others"
        )
        command.add_argument("--light", action="store_true", help="dark on light, for a light screen")
    plan = commands.add_parser(
        "plan", help="write every paper of a job", description="Write every paper of a job, and plan.json."
    )
    plan.add_argument("job", type=Path)
    plan.add_argument("--out", type=Path, default=Path("wallbrief-papers"), metavar="DIR", help="folder for the papers")
    plan.add_argument("--print", action="store_true", help="also as HTML pages for a printer, and the drawings as SVG")
    plan.add_argument(
        "--prices",
        metavar="FILE",
        help="your price file, or “invented” for the ones that ship; else the one named in the job",
    )
    prices = commands.add_parser(
        "prices", help="print a price file to fill in", description="Print a price file to fill in."
    )
    prices.add_argument("job", type=Path, nargs="?", help="only what this job buys; else everything there is")
    check = commands.add_parser(
        "check", help="say what is wrong or risky in a job", description="Say what is wrong or risky in a job."
    )
    check.add_argument("job", type=Path)
    check.add_argument(
        "finding", nargs="*", help="the whole of these, by name, such as A.edge_missed; else a line each"
    )
    check.add_argument("--all", action="store_true", help="the whole of every finding")
    check.add_argument("--json", action="store_true", help="as JSON, each finding with an id that stays the same")
    brief = commands.add_parser(
        "brief",
        help="print the briefing for the next evening",
        description="Print the briefing for the next evening: who does what, what to say, what stops the work.",
    )
    brief.add_argument("job", type=Path)
    brief.add_argument("--wall", metavar="LETTER", help="the next evening on this wall")
    brief.add_argument(
        "--evening",
        type=int,
        default=1,
        metavar="NUMBER",
        help="from this evening on, numbered as on the evenings' paper",
    )
    for command in (talk, plan, check, brief):
        command.add_argument("--office", type=Path, metavar="FILE", help="your building office's own figures; they win")
    twice = commands.add_parser(
        "twice",
        help="say which readings to tape again",
        description="Say which readings to tape again before the first cut: those that decide most if they are a little off.",
    )
    twice.add_argument("job", type=Path)
    schema = commands.add_parser(
        "schema", help="print the JSON Schema of a file", description="Print the JSON Schema of a file."
    )
    schema.add_argument("what", choices=("job", "plan", "office"))
    book = commands.add_parser(
        "book", help="prove the question book and the other data", description="Prove the question book."
    )
    book.add_argument("what", choices=("lint",))
    return parser


def _run(arguments: list[str]) -> int:
    known = ("talk", "practise", "plan", "prices", "check", "brief", "twice", "schema", "book")
    arguments = arguments or ["talk"]
    if arguments[0] not in known and not arguments[0].startswith("-"):
        arguments = ["talk", *arguments]
    options = _parser().parse_args(arguments)
    if options.command == "talk":
        return _open(options.job, options, _office(options.office))
    if options.command == "practise":
        return _rehearse(options) if options.talk else _practise(options)
    if options.command == "plan":
        return _plan(options.job, options.out, options.prices, options.office, printed=options.print)
    if options.command == "prices":
        return _prices(options.job)
    if options.command == "check":
        return _check(options.job, options.office, options.finding, whole=options.all, as_json=options.json)
    if options.command == "brief":
        return _brief(options.job, options.wall, options.evening, options.office)
    if options.command == "twice":
        return _twice(options.job)
    if options.command == "schema":
        return _schema(options.what)
    return _lint()


def _on_a_screen() -> bool:
    return sys.stdin.isatty() and sys.stdout.isatty()


def _open(job: Path | None, options: argparse.Namespace, office: Office | None = None) -> int:
    """Open the conversation: the app on a screen, the plain talk without one."""
    from guide.session import Session

    book = load_book()
    if job is not None and job.is_dir():
        raise _Unusable(f"{job} is a folder; name a job file in it.")
    session = Session.opened(book, job, office, ascii_only=_ascii_only(options)) if job is not None else None
    return _talk(book, session, options)


def _ascii_only(options: argparse.Namespace) -> bool:
    """Say whether the person, or the terminal, wants nothing but ASCII."""
    try:
        "“½│".encode(sys.stdout.encoding or "ascii")
    except (UnicodeEncodeError, LookupError):
        return True
    return bool(options.ascii)


def _talk(book: Book, session: Session | None, options: argparse.Namespace) -> int:
    """Talk about an open job: in the app on a screen, line by line without one."""
    if not options.plain and _on_a_screen():
        from guide.tui.app import make_app

        make_app(book, session, Path.cwd(), ascii_only=_ascii_only(options), light=options.light).run()
        return 0
    if session is None:
        raise _Unusable("without a screen I need a job file to talk about: wallbrief talk my-basement.json --plain.")
    from guide.plain import talk

    talk(session, sys.stdin, sys.stdout)
    return 0


def _rehearse(options: argparse.Namespace) -> int:
    """Play the talk of a worked job from its first question."""
    from guide.rehearsal import Rehearsal

    book = load_book()
    return _talk(book, Rehearsal(book, options.name, ascii_only=_ascii_only(options)), options)


def _practise(options: argparse.Namespace) -> int:
    """Open a copy of a worked job; without a screen write its papers and print the summary."""
    copy = copy_of_worked_job(options.name, Path.cwd())
    if options.plain or _on_a_screen():
        return _open(copy, options)
    print(f"This is the worked job “{options.name}”, an invented one; my copy of it is {copy}.")
    return _plan(copy, Path("wallbrief-papers") / options.name)


def _plan(
    path: Path, folder: Path, prices: str | None = None, office: Path | None = None, *, printed: bool = False
) -> int:
    from guide.interview.jobfile import load
    from guide.reference.prices import invented_prices, prices_beside, read_prices
    from guide.sheets.plan import make_plan
    from guide.sheets.twice import tape_again
    from guide.sheets.write import summary, usable, write_papers

    known = None if prices is None else invented_prices() if prices == "invented" else read_prices(Path(prices))
    book = load_book()
    job = load(path, book)
    plan = make_plan(book, job, office=_office(office))
    plan = replace(plan, prices=known or prices_beside(plan.survey.basement.price_file or "", path.parent))
    if trouble := usable(plan):
        raise _Unusable(f"{path}: {trouble}")
    written = write_papers(plan, folder, tape_again(book, job.answers), printed=printed)
    print("\n".join(summary(plan, folder, written)))
    return 1 if plan.stopped else 0


def _prices(path: Path | None) -> int:
    """Print a price file of everything, or of what a job buys, to be filled in."""
    from guide.interview.jobfile import load
    from guide.reference.prices import blank_prices
    from guide.reference.stock import wares
    from guide.sheets.plan import make_plan

    names = (
        wares()
        if path is None
        else dict.fromkeys(line.ware for line in make_plan(load_book(), load(path, load_book())).purchase.lines)
    )
    print(blank_prices(names), end="")
    return 0


def _brief(path: Path, letter: str | None, since: int, office: Path | None) -> int:
    from guide.interview.jobfile import load
    from guide.sheets.papers import brief
    from guide.sheets.plan import make_plan
    from guide.sheets.write import usable

    book = load_book()
    plan = make_plan(book, load(path, book), office=_office(office))
    if trouble := usable(plan):
        raise _Unusable(f"{path}: {trouble}")
    laid = [wall.letter for wall in plan.layout.walls]
    if letter is not None and (letter := letter.upper()) not in laid:
        raise _Unusable(f"--wall {letter}: this job has no such wall laid out; it has {', '.join(laid)}.")
    count = len(plan.calendar.evenings)
    if not plan.stopped and not 1 <= since <= count:
        raise _Unusable(f"--evening {since}: the calendar of this job has evenings 1 to {count}.")
    print(brief(plan, letter, since), end="")
    return 1 if plan.stopped else 0


def _check(path: Path, office: Path | None, names: Sequence[str], *, whole: bool, as_json: bool) -> int:
    from guide.interview.jobfile import load
    from guide.sheets.plan import make_plan
    from guide.sheets.plan_json import findings_to_json
    from guide.sheets.raised import whole_lines
    from guide.sheets.write import finding_lines, usable

    plan = make_plan(load_book(), load(path, load_book()), office=_office(office))
    if trouble := usable(plan):
        raise _Unusable(f"{path}: {trouble}")
    there = {each.name.lower(): each.name for each in plan.findings}
    for name in names:
        if name.lower() not in there:
            raise _Unusable(f"{name}: nothing of that name was found; there are {', '.join(there.values()) or 'none'}.")
    lowered = [name.lower() for name in names]
    wanted = [each for each in plan.findings if whole or not names or each.name.lower() in lowered]
    if as_json:
        print(json.dumps(findings_to_json(plan, wanted), indent=2, ensure_ascii=False))
    elif whole or names:
        print("\n".join(whole_lines(wanted, plan)))
    else:
        print("\n".join(finding_lines(plan)))
    return 1 if plan.stopped else 0


def _office(path: Path | None) -> Office | None:
    from guide.reference.office import load_office

    return load_office(path) if path is not None else None


def _twice(path: Path) -> int:
    from guide.interview.jobfile import load
    from guide.sheets.plan import make_plan
    from guide.sheets.twice import again_lines, tape_again
    from guide.sheets.write import usable

    book = load_book()
    job = load(path, book)
    plan = make_plan(book, job)
    if trouble := usable(plan):
        raise _Unusable(f"{path}: {trouble}")
    print("\n".join(again_lines(tape_again(book, job.answers), plan.tape)))
    return 1 if plan.stopped else 0


def _schema(what: str) -> int:
    if what == "job":
        from guide.interview.schema import job_schema

        schema = job_schema(load_book())
    elif what == "office":
        from guide.reference.office import office_schema

        schema = office_schema()
    else:
        from guide.sheets.plan_json import plan_schema

        schema = plan_schema()
    print(json.dumps(schema, indent=2, ensure_ascii=False))
    return 0


def _lint() -> int:
    from guide.lint import lint
    from guide.lint.counted import length_of_the_talk

    found = lint(load_book())
    for line in found:
        print(line)
    print(f"{len(load_book().questions)} questions: " + (f"{len(found)} finding(s)." if found else "nothing wrong."))
    if not found:
        print(length_of_the_talk(load_book()))
    return 2 if found else 0


if __name__ == "__main__":
    raise SystemExit(main())
