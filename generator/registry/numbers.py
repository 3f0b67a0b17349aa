"""Numbers of certificates and tanks: the registry's letters, a serial number, and two letters that catch slips."""

from __future__ import annotations

import re
from collections.abc import Callable

_LETTERS = "ACDEFHJKLMNPRTUVWXY"
"""Without those that are taken for a digit or for each other."""
_CHECK = "ACEFHKMPRT"
_SHAPE = re.compile(rf"([{_LETTERS}]{{4}})-([CT])([0-9]{{6,}})-([{_CHECK}]{{2}})")


def registry_code(entropy: Callable[[int], bytes]) -> str:
    """Four letters that tell one registry's numbers from another's."""
    return "".join(_LETTERS[byte % len(_LETTERS)] for byte in entropy(4))


def number_text(code: str, kind: str, serial: int) -> str:
    """The number as it is printed.

    Args:
        code: the registry's letters.
        kind: `C` for a certificate, `T` for a tank.
        serial: counted from 1, and never used twice.

    Example:
        >>> number_text("WKLP", "C", 12)
        'WKLP-C000012-PM'
    """
    start = f"{code}-{kind}{serial:06}"
    return f"{start}-{_check(start)}"


def is_number(text: str) -> bool:
    """Whether a text is a number without a slip of the pen.

    Example:
        >>> made = number_text("WKLP", "C", 12)
        >>> is_number(made), is_number(made.replace("12", "21"))
        (True, False)
    """
    found = _SHAPE.fullmatch(text)
    return bool(found) and _check(text.rpartition("-")[0]) == text.rpartition("-")[2]


def _check(start: str) -> str:
    """The remainder by 97 that bank numbers use, as two letters: every single slip and exchange of neighbours shows."""
    value = int("".join(str(int(sign, 36)) for sign in start if sign != "-"))
    first, second = divmod(98 - value * 100 % 97, 10)
    return _CHECK[first] + _CHECK[second]
