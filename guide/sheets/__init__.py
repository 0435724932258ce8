"""Sheets: the whole plan as one value, and the papers written from it."""
