"""The form that an answer has to have: rounded up, down or to the nearest multiple, on numbers and on arrays."""

from __future__ import annotations

import math
from typing import Literal, overload

import numpy as np

from generator.formula import Array

Rule = Literal["", "nearest", "up", "down"]
"""Empty where the answer is taken as it comes."""

_HAIR = 1e-9


@overload
def ruled(value: float, rule: Rule, grain: float) -> float: ...


@overload
def ruled(value: Array, rule: Rule, grain: float) -> Array: ...


def ruled(value: float | Array, rule: Rule, grain: float) -> float | Array:
    """A value in the form that a rule asks for; `marker.js` has the twin.

    Args:
        value: a number or an array.
        rule: the rule; with an empty one the value comes back.
        grain: in the unit of the value, more than 0; not used without a rule.

    Example:
        >>> ruled(2.31, "up", 0.05), ruled(2.31, "down", 0.05), ruled(2.31, "nearest", 0.05), ruled(2.31, "", 0)
        (2.35, 2.3, 2.3, 2.31)
    """
    if not rule:
        return value
    parts = np.asarray(value, dtype=float) / grain
    if rule == "up":
        whole = np.ceil(parts - _HAIR)
    elif rule == "down":
        whole = np.floor(parts + _HAIR)
    else:
        whole = np.sign(parts) * np.floor(np.abs(parts) + 0.5 + _HAIR)
    made = whole * grain
    return made if isinstance(value, np.ndarray) else float(made)


def grain_fault(grain: float, places: int) -> str:
    """Why print could not show every multiple of a grain; empty where it can.

    Args:
        grain: in the unit of the quantity.
        places: decimals that the quantity prints.
    """
    scaled = grain * math.pow(10, places)
    if abs(scaled - round(scaled)) < _HAIR * scaled and round(scaled) >= 1:
        return ""
    return f"multiples of {grain:g} can't be printed with {places} decimals"
