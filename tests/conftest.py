"""What every test starts from: the same machine everywhere, and the same examples every time."""

from __future__ import annotations

import os
import tempfile

import pytest
from hypothesis import settings
from hypothesis.configuration import set_hypothesis_home_dir

settings.register_profile("wallbrief", derandomize=True, deadline=None, database=None)
settings.load_profile("wallbrief")

_FROM_THE_MACHINE = ("LC_", "LANG", "NO_COLOR", "FORCE_COLOR", "CLICOLOR", "COLUMNS", "LINES", "TEXTUAL", "XDG_")
"""Beginnings of the variables by which a developer's machine could change what the program says or draws."""


def pytest_configure(config: pytest.Config) -> None:
    """Give the whole run an empty home, plain UTF-8 and no wishes about colour or width, before anything is imported."""
    patch = pytest.MonkeyPatch()
    config.add_cleanup(patch.undo)
    home = tempfile.TemporaryDirectory(prefix="wallbrief-home-")
    config.add_cleanup(home.cleanup)
    set_hypothesis_home_dir(home.name)
    for name in [name for name in os.environ if name.startswith(_FROM_THE_MACHINE)]:
        patch.delenv(name)
    for name, value in {"HOME": home.name, "LC_ALL": "C.UTF-8", "TZ": "UTC", "TERM": "xterm-256color"}.items():
        patch.setenv(name, value)
