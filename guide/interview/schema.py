"""The JSON Schema of a job file, made from the question book, for people and editors who write jobs by hand."""

from __future__ import annotations

from typing import Any

from guide.book.questions import Book, Question, Scope
from guide.interview.answers import Certainty
from guide.interview.jobfile import FORMAT, SCHEMA_ID
from guide.interview.replies import LONGEST_TEXT
from guide.interview.signed import LONGEST_SAYS
from guide.reference.findings import Severity, load_findings


def job_schema(book: Book) -> dict[str, Any]:
    """Return the JSON Schema (draft 2020-12) of a job file."""
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$id": SCHEMA_ID,
        "title": "wallbrief job",
        "type": "object",
        "required": ["format"],
        "additionalProperties": False,
        "properties": {
            "$schema": {"type": "string"},
            "format": {"const": FORMAT},
            "note": {"type": "string", "description": "a remark that prints on the papers"},
            "basement": _place(book, "basement"),
            "walls": _things(_place(book, "wall"), "the walls, walked clockwise"),
            "signed": {
                "type": "array",
                "description": "warnings signed off: the kind of finding, the name of its wall, what it said, and why you go on",
                "items": {
                    "type": "object",
                    "required": ["finding", "because"],
                    "additionalProperties": False,
                    "properties": {
                        "finding": {"enum": [k for k, f in load_findings().items() if f.severity is Severity.WARN]},
                        "wall": {"type": "string"},
                        "says": {"type": "string", "maxLength": LONGEST_SAYS},
                        "because": {"type": "string", "maxLength": LONGEST_TEXT},
                    },
                },
            },
            "parked": {
                "type": "object",
                "description": "answers that do not apply now, by path",
                "additionalProperties": True,
            },
        },
    }


def _place(book: Book, scope: Scope) -> dict[str, Any]:
    properties: dict[str, Any] = {}
    if scope == "wall":
        properties["name"] = {"type": "string", "maxLength": 30, "description": "what you call the wall"}
    for question in book.by_scope[scope]:
        if question.opens == "wall":
            continue  # the list of walls stands beside the basement
        if question.opens:
            properties[question.id] = _things(_place(book, question.opens), question.ask)
        else:
            properties[question.id] = _answer(question)
    return {"type": "object", "additionalProperties": False, "properties": properties}


def _things(item: dict[str, Any], description: str) -> dict[str, Any]:
    plain = {"type": "array", "items": item}
    full = {"type": "object", "additionalProperties": False, "properties": {"items": plain, **_how_known()}}
    return {"description": description, "anyOf": [plain, full]}


def _answer(question: Question) -> dict[str, Any]:
    value = _value(question)
    full = {
        "type": "object",
        "additionalProperties": False,
        "properties": {"value": {"anyOf": [value, {"type": "null"}]}, **_how_known()},
    }
    return {"description": question.ask, "anyOf": [value, full]}


def _value(question: Question) -> dict[str, Any]:
    if question.kind == "readings":
        return {
            "type": ["array", "string"],
            "items": {"type": "string"},
            "examples": [[question.example or question.usual or ""]],
        }
    if question.kind == "count":
        return {"type": ["integer", "string"], "minimum": int(question.least or 0), "maximum": int(question.most or 99)}
    if question.kind == "length":
        one: dict[str, Any] = {"type": ["string", "number"], "examples": ["16 ft 4 in", "3770 mm"]}
        along = {"type": "array", "items": {"type": "string"}, "examples": [["1 1/2 in at left", "1 1/4 in at 96 in"]]}
        return {"anyOf": [one, along]} if question.along else one
    if question.kind == "choice":
        words = ", ".join(choice.id for choice in question.choices)
        return {
            "type": ["string", "number"],
            "examples": [c.id for c in question.choices],
            "description": f"one of: {words}",
        }
    return {"type": "string"}


def _how_known() -> dict[str, Any]:
    return {
        "known": {"enum": [certainty.value for certainty in Certainty]},
        "typed": {"type": "string", "description": "the reply, word for word"},
        "confirm": {"type": "boolean", "description": "to be confirmed before it counts as measured"},
        "leans": {"type": "array", "items": {"type": "string"}, "description": "paths it was worked out from"},
    }
