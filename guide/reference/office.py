"""The words of the person's own building office, as a small local file that wins over the model code.

    name = "Building office of our town"
    says = "plan desk, 3 March"

    [figure.fireblock_spacing]
    value = "8 ft"
    words = "every 8 ft here"

It owns one promise: a figure that came from such a file is named as the office's own wherever it prints.
"""

from __future__ import annotations

import tomllib
from difflib import get_close_matches
from fractions import Fraction
from pathlib import Path
from typing import Any

from pydantic import Field, ValidationError

from guide.lengths import Unreadable, in_inches, inches
from guide.reference.codes import CodeFigure, CodeProfile, load_code
from guide.reference.data import Data, DataError

LENGTH_UNITS = ("in", "ft", "mm", "m")
LARGEST = 100_000
"""Bytes; such a file has a few dozen lines."""


class OfficeFigure(Data):
    """One figure as the office has it."""

    value: str = Field(description="the figure; a length with its unit, such as 8 ft or 2400 mm, else a number")
    words: str = Field(default="", description="what they said, in their own words")


class Office(Data):
    """What a local file says."""

    name: str = Field(min_length=1, max_length=80, description="whose words these are; it prints on the papers")
    says: str = Field(default="", max_length=200, description="who said it, and when")
    figure: dict[str, OfficeFigure] = Field(description="by the name the figure has in the model code's profile")


def office_schema() -> dict[str, Any]:
    """Return the JSON Schema of the file (TOML tables are JSON objects), with the names its figures may have."""
    schema = Office.model_json_schema()
    schema["properties"]["figure"]["propertyNames"] = {
        "enum": sorted(
            name for name, field in CodeProfile.model_fields.items() if "CodeFigure" in str(field.annotation)
        )
    }
    return schema


def load_office(path: Path) -> Office:
    """Read an office's file. Raises DataError with one sentence: what was read, where, what would be right.

    What it returns can be laid over the profile of any country and edition.
    """
    try:
        raw = path.read_bytes()
    except OSError as error:
        raise DataError(f"{path}: cannot be read ({error.strerror or error}).") from error
    if len(raw) > LARGEST:
        raise DataError(f"{path}: this is {len(raw):,} bytes; an office's file is never over {LARGEST:,}.")
    try:
        office = Office.model_validate(tomllib.loads(raw.decode("utf-8-sig")))
    except UnicodeDecodeError as error:
        raise DataError(f"{path}: byte {error.start} is not UTF-8 text; an office's file is TOML text.") from error
    except tomllib.TOMLDecodeError as error:
        raise DataError(f"{path}: this is not TOML ({error}).") from error
    except ValidationError as error:
        first = error.errors()[0]
        where = ".".join(str(part) for part in first["loc"])
        raise DataError(
            f"{path}: {where}: {first['msg'][0].lower()}{first['msg'][1:]}; see wallbrief schema office."
        ) from error
    known = load_code("canada 2020").figures | load_code().figures
    for name, figure in office.figure.items():
        if name not in known:
            near = get_close_matches(name, known, n=1)
            hint = f"did you mean {near[0]}?" if near else "wallbrief schema office lists those there are."
            raise DataError(f"{path}: figure.{name}: there is no such figure; {hint}")
        try:
            _own(known[name], office, figure)
        except DataError as error:
            raise DataError(f"{path}: figure.{name}: {error}") from error
    return office


def with_office(profile: CodeProfile, office: Office | None) -> CodeProfile:
    """Return the profile with the office's figures in place of the model code's.

    A figure that only the other country's profile has is left out; `office_figures` names those that were taken.
    """
    if office is None:
        return profile
    model = profile.figures
    own = {name: _own(model[name], office, figure) for name, figure in office.figure.items() if name in model}
    return profile.model_copy(update={**own, "office": office.name, "office_figures": tuple(own)})


def _own(model: CodeFigure, office: Office, said: OfficeFigure) -> CodeFigure:
    """Return a figure as the office has it. Raises DataError with what was read and what would be right."""
    read = f"I read “{said.value}”; it should be"
    update = {
        "standard": office.name,
        "edition": f"({office.says})" if office.says else "(our office says)",
        "section": f"“{said.words}”" if said.words else "by word of mouth",
    }
    if model.unit in LENGTH_UNITS:
        try:
            length = inches(said.value)
        except Unreadable as error:
            raise DataError(f"{read} a length such as {model.said}.") from error
        if length.ticks <= 0:
            raise DataError(f"{read} more than nothing, such as {model.said}.")
        update |= {"value": in_inches(length), "unit": "in"}
    else:
        try:
            number = Fraction(said.value.strip())
        except (ValueError, ZeroDivisionError) as error:
            raise DataError(f"{read} a number, {model.unit}, such as {model.value}.") from error
        if number <= 0:
            raise DataError(f"{read} more than 0, such as {model.value}.")
        update |= {"value": said.value.strip()}
    return model.model_copy(update={**update, "also": (), "seen": "what the person was told"})
