"""Checks: what is wrong or risky in the answers and the layout, said before the first cut, each with its source."""
