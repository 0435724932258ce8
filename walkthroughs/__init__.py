"""Worked jobs in an invented scenario: data only, read through importlib.resources."""
