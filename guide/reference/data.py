"""How the other data is read: TOML from prompts_data into frozen models, with an error that names file and place."""

from __future__ import annotations

import tomllib
from importlib.resources import files
from typing import Any, TypeVar

from pydantic import BaseModel, ConfigDict, ValidationError

Model = TypeVar("Model", bound="Data")


class DataError(ValueError):
    """A data file that is not as it should be; the message names the file and the place in it."""


class Data(BaseModel):
    """Base of everything read from data: frozen, and a key nobody knows is an error."""

    model_config = ConfigDict(frozen=True, extra="forbid")


def read_toml(name: str) -> dict[str, Any]:
    """Return the tables of `prompts_data/<name>`. Raises DataError when it is not TOML."""
    try:
        return tomllib.loads(files("prompts_data").joinpath(name).read_text(encoding="utf-8"))
    except tomllib.TOMLDecodeError as error:
        raise DataError(f"prompts_data/{name}: {error}") from error


def read_data(name: str, model: type[Model]) -> Model:
    """Return `prompts_data/<name>` as a model. Raises DataError naming the place when it does not fit."""
    try:
        return model.model_validate(read_toml(name))
    except ValidationError as error:
        raise DataError(f"prompts_data/{name}: {error}") from error
