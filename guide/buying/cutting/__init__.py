"""Cutting: the cheapest boards that a list of pieces can be cut from, and a proof in whole numbers where there is one."""
