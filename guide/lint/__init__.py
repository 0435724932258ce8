"""The proof of the data: what `wallbrief book lint` finds in the question book, the sayings and the figures.

It owns one promise: with no finding left, every question can be asked, understood and answered, every answer is read
by something, and everything the engine says or works with stands in the data, with a source where it is a figure.
Every finding is one sentence that names the file or the question.
"""

from __future__ import annotations

from dataclasses import fields

from guide.book.questions import Book
from guide.book.talk import load_talk
from guide.lint.figures import lint_code, lint_figures
from guide.lint.findings import lint_findings
from guide.lint.pieces import lint_pieces
from guide.lint.questions import lint_book
from guide.lint.sayings import lint_sayings, lint_talk
from guide.lint.sketches import lint_sketches
from guide.lint.sources import attributes_in, source_texts
from guide.lint.stock import lint_stock
from guide.order.proof import lint_steps
from guide.reference.codes import CODES, load_code
from guide.reference.figures import Figures, figure_table
from guide.reference.findings import load_findings
from guide.reference.pieces import load_pieces
from guide.reference.sayings import load_sayings
from guide.reference.sketches import load_sketches
from guide.reference.steps import load_steps
from guide.reference.stock import load_fasteners, load_stock
from guide.survey.build import refs_read


def lint(book: Book) -> list[str]:
    """Return every finding in the book and in the other data that ships, in a fixed order; none when all is proved."""
    sources = source_texts()
    return [
        *lint_book(book, refs_read()),
        *lint_sketches(load_sketches(), book),
        *lint_sayings(load_sayings(), sources),
        *lint_talk(load_talk().say, sources),
        *lint_figures(figure_table(), {field.name for field in fields(Figures)}, attributes_in(sources)),
        *lint_pieces(load_pieces(), set(figure_table()), book, sources),
        *(found for code in CODES for found in lint_code(load_code(code))),
        *lint_stock(load_stock(), load_fasteners(), load_steps()),
        *lint_findings(load_findings(), load_sayings(), load_steps()),
        *lint_steps(load_steps()),
    ]
