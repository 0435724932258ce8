"""Sheets: how foam and plywood are ripped and cross-cut, from which sheets, and what no layout could better."""
