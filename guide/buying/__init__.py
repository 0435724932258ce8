"""Buying: what the parts take, in the units a shop sells."""
