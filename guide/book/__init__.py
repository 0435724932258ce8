"""The question book: what wallbrief asks, when, and what an answer may be. Data, conditions and their proof."""
