"""Papers for the printer: each as one HTML page made from its Markdown, its drawings in ink.

A page holds all it needs, runs nothing and loads nothing. Nothing a person typed is taken for HTML: Markdown is read with
raw HTML, links and pictures off, and everything else is escaped by the parser. Where the page turns and what is set in
large type is data, `prompts_data/papers/print.toml`.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import lru_cache, partial
from html import escape
from importlib.resources import files
from itertools import count, pairwise

from jinja2 import Environment, PackageLoader, StrictUndefined, Template
from markdown_it import MarkdownIt
from markdown_it.renderer import RendererHTML
from markdown_it.rules_core import StateCore
from markdown_it.token import Token
from markdown_it.utils import EnvType, OptionsDict

from guide.reference.data import Data, read_data
from guide.sheets.pictures import in_ink, pictures
from guide.sheets.plan import Plan

TICK = "[ ] "
"""What a list item to be ticked off begins with."""
DONE = "Done"
"""The head of a column of boxes to tick."""
LONG_CELL = 28
"""Characters of a table's cell from which on it may be broken over lines; a size in a shorter one never is."""

Ink = Callable[[str], str]
"""Draws one drawing, its ids under the given name: a corner stands on a page once for each of its walls."""


class Section(Data):
    """How the part of a paper under one heading is printed."""

    heading: str
    """Its words, without a number before them."""
    new_page: bool = False
    big: bool = False
    """In letters to be read from a step back, beside the saw."""
    columns: bool = False
    """Its lists in two columns."""


class Sections(Data):
    """`prompts_data/papers/print.toml`."""

    section: tuple[Section, ...]


@lru_cache(maxsize=1)
def load_sections() -> Mapping[str, Section]:
    """Return the sections by their heading. Raises DataError when the data is not right."""
    return {section.heading: section for section in read_data("papers/print.toml", Sections).section}


def printed_papers(plan: Plan, papers: Mapping[str, str]) -> dict[str, str]:
    """Return what is printed, by file name: an HTML page for each paper in Markdown, and every drawing as an SVG file."""
    drawn = pictures(plan)
    inked: dict[str, Ink] = {picture.text: partial(in_ink, plan, picture) for picture in drawn}
    pages = {f"{(stem := name.removesuffix('.md'))}.html": printed(stem, text, inked) for name, text in papers.items()}
    return pages | {f"{picture.name}.svg": f"{in_ink(plan, picture)}\n" for picture in drawn}


def printed(name: str, markdown: str, drawings: Mapping[str, Ink]) -> str:
    """Return a paper as an HTML page. `drawings` holds, by the text of each drawing, what draws it in ink instead."""
    parser = _parser()
    tokens = parser.parse(markdown)
    body = parser.renderer.render(list(_in_sections(tokens)), parser.options, {"drawings": drawings, "drawn": count(1)})
    title = next((_plain(words) for heading, words in pairwise(tokens) if heading.type == "heading_open"), name)
    style = files("prompts_data").joinpath("papers/print.css").read_text(encoding="utf-8")
    return _page().render(name=name, title=title, style=style, body=body)


@lru_cache(maxsize=1)
def _page() -> Template:
    loader = PackageLoader("prompts_data", "papers")
    return Environment(loader=loader, undefined=StrictUndefined, autoescape=True).get_template("page.html.j2")


@lru_cache(maxsize=1)
def _parser() -> MarkdownIt:
    """Return a reader of our Markdown: CommonMark and tables, and nothing by which text could become anything else."""
    parser = MarkdownIt("commonmark", {"html": False}).enable("table")
    parser.disable(["link", "image", "autolink", "html_inline", "html_block", "reference"])
    parser.core.ruler.before("inline", "ticks", _ticks)
    parser.add_render_rule("fence", _fence)
    return parser


def _ticks(state: StateCore) -> None:
    """Name what is to be ticked off, so that it gets its box, and the cells that are long enough to be broken."""
    table: Token | None = None
    for index, token in enumerate(state.tokens):
        if token.type == "table_open":
            table = token
        elif token.type != "inline":
            continue
        elif token.content.startswith(TICK) and state.tokens[index - 2].type == "list_item_open":
            token.content = token.content.removeprefix(TICK)
            state.tokens[index - 2].attrJoin("class", "tick")
        elif table is not None and token.content == DONE and state.tokens[index - 1].type == "th_open":
            table.attrJoin("class", "ticks")
        elif state.tokens[index - 1].type == "td_open" and len(token.content) > LONG_CELL:
            state.tokens[index - 1].attrJoin("class", "long")


def _fence(renderer: RendererHTML, tokens: Sequence[Token], index: int, options: OptionsDict, env: EnvType) -> str:
    """Return the SVG in place of a drawing in text; other text as it stands."""
    text = tokens[index].content.rstrip("\n")
    draw: Ink | None = env["drawings"].get(text)
    if draw is None:
        return f"<pre>{escape(text)}</pre>\n"
    drawn = draw(f"drawing-{next(env['drawn'])}")
    return f"<figure>\n{drawn}\n</figure>\n"


def _in_sections(tokens: Sequence[Token]) -> Iterator[Token]:
    """Put each part of a paper, from one heading of the first two orders to the next, into a section of its own.

    Every part of the first order but the first begins a page; the rule drawn before a heading goes.
    """
    opened = False
    for index, token in enumerate(tokens):
        if token.type == "hr" and index + 1 < len(tokens) and tokens[index + 1].type == "heading_open":
            continue
        if token.type == "heading_open" and token.tag in ("h1", "h2"):
            if opened:
                yield Token("section_close", "section", -1, block=True)
            section = load_sections().get(re.sub(r"^\d+ ", "", _plain(tokens[index + 1])), Section(heading=""))
            new_page = section.new_page or (token.tag == "h1" and opened)
            names = {"new-page": new_page, "big": section.big, "columns": section.columns}
            classes = " ".join(name for name, wanted in names.items() if wanted)
            yield Token("section_open", "section", 1, {"class": classes} if classes else {}, block=True)
            opened = True
        yield token
    if opened:
        yield Token("section_close", "section", -1, block=True)


def _plain(inline: Token) -> str:
    """Return the words of a heading without their Markdown."""
    return "".join(child.content for child in inline.children or [])
