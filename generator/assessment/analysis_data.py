"""An analysis as plain data, for a program to read."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from typing import Any

import numpy as np

from generator.assessment.analysis import Analysis
from generator.assessment.report import Masons, Report

FORMAT = 1
_WORKED_OUT = ("cut", "right", "same", "share", "difficulty", "discrimination", "taken", "met", "accepted")
"""Properties that are told beside the fields."""


def as_data(analysis: Analysis, report: Report, masons: Masons | None = None) -> dict[str, object]:
    """The whole analysis: every number unrounded, what does not exist as null, and the changes in words.

    Args:
        analysis: the numbers.
        report: of it, for its changes.
        masons: a scheme's simulation, if one was asked for.
    """
    found: dict[str, object] = {"format": FORMAT, "analysis": plain(analysis)}
    found["masons"] = None if masons is None else plain(masons)
    found["changes"] = [
        {"name": change.name, "sentence": change.sentence, "why": change.why} for change in report.changes
    ]
    found["cautions"] = list(report.cautions)
    return found


def plain(value: Any) -> Any:
    """Any of our results as dictionaries, lists, texts and numbers.

    Example:
        >>> plain({"a": (1.5, float("nan"))})
        {'a': [1.5, None]}
    """
    if is_dataclass(value) and not isinstance(value, type):
        found = {each.name: plain(getattr(value, each.name)) for each in fields(value)}
        more = (
            name for name in _WORKED_OUT if name not in found and isinstance(getattr(type(value), name, None), property)
        )
        return found | {name: plain(getattr(value, name)) for name in more}
    if isinstance(value, np.ndarray):
        return [plain(each) for each in value.tolist()]
    if isinstance(value, Mapping):
        return {str(key): plain(each) for key, each in value.items()}
    if isinstance(value, tuple | list | frozenset):
        return [plain(each) for each in value]
    if isinstance(value, bool | int | str) or value is None:
        return value
    number = float(value)
    return number if math.isfinite(number) else None
