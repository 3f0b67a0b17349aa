"""Hypothesis repeats itself: the same examples on every run, and no clock."""

from hypothesis import settings

settings.register_profile("repeatable", derandomize=True, deadline=None, database=None)
settings.load_profile("repeatable")
