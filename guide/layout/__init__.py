"""The layout engine: from the survey to parts, each a box with a size, a place and a reason; and the decisions behind them."""
