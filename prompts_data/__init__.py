"""Questions, figures and prose: data only, read through importlib.resources."""
