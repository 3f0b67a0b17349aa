"""Numbers as a print gives them: a tolerance of one unit in the last digit shown."""

from __future__ import annotations

from typing import Any

import pytest


def printed(*numbers: str) -> Any:
    """What compares equal to numbers within one unit of the last digit printed; one number, or a list.

    Args:
        numbers: as they stand in the print, such as `.6193` or `6.70`.
    """
    found = [_one(number) for number in numbers]
    return found[0] if len(found) == 1 else found


def _one(number: str) -> Any:
    _, _, digits = number.partition(".")
    return pytest.approx(float(number), abs=1.0 * 10 ** -len(digits), rel=0)
