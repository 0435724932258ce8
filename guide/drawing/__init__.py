"""Drawings of what was laid out, as values, and the text they render to."""
