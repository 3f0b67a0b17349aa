"""One file a step; `first.py` makes the tables."""
