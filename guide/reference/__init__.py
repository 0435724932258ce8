"""Typed loaders of the data that is not a question: figures of practice, code profiles, stock, steps, cautions, prose."""
