"""pint's unit registry, built once and only when something needs it: it takes a quarter second."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from typing import Any


@lru_cache(maxsize=1)
def units() -> Any:
    """Return the registry that volumes and long runs are counted in. It counts in fractions: feet of inches are exact."""
    import pint

    return pint.UnitRegistry(non_int_type=Fraction)
