"""JSON in the one form of RFC 8785 (JCS), and JSON read strictly: what can be read in two ways is refused."""

from __future__ import annotations

import json
import math
from typing import Any

from generator.credentials.refused import NotAcceptedError

DEEPEST = 40
MOST = 1_000_000
"""Signs of a document; a longer one is not looked at."""
_SAFE = 2**53
_ESCAPES = {'"': '\\"', "\\": "\\\\", "\b": "\\b", "\t": "\\t", "\n": "\\n", "\f": "\\f", "\r": "\\r"}


def strict_json(text: str) -> Any:
    """The value of a JSON text.

    Raises:
        NotAcceptedError: it is too long or too deep, a name stands twice in an object, a number is one that another
            reader would round, or a string holds half a letter.
    """
    if len(text) > MOST:
        raise NotAcceptedError("too_long")
    try:
        value = json.loads(text, object_pairs_hook=_once, parse_constant=_no, parse_int=_whole, parse_float=_decimal)
    except (ValueError, RecursionError):
        raise NotAcceptedError("not_json") from None
    _check(value, 0)
    return value


def canonical(value: Any) -> bytes:
    r"""The canonical bytes of a value.

    Args:
        value: of dicts with string keys, lists, strings, numbers, booleans and None.

    Raises:
        ValueError: JSON can't hold it.

    Example:
        >>> canonical({"b": 1.0, "a": [1e21, "€"]})
        b'{"a":[1e+21,"\xe2\x82\xac"],"b":1}'
    """
    return "".join(_pieces(value)).encode("utf-8")


def _pieces(value: Any) -> list[str]:
    if value is None:
        return ["null"]
    if isinstance(value, bool):
        return ["true" if value else "false"]
    if isinstance(value, str):
        return [_string(value)]
    if isinstance(value, int | float):
        return [_number(value)]
    if isinstance(value, list | tuple):
        found = ["["]
        for place, each in enumerate(value):
            found += ([","] if place else []) + _pieces(each)
        return [*found, "]"]
    if isinstance(value, dict):
        found = ["{"]
        # UTF-16 code units decide the order, as they do in a browser
        for place, key in enumerate(sorted(value, key=lambda key: key.encode("utf-16-be", "surrogatepass"))):
            found += [*([","] if place else []), _string(key), ":", *_pieces(value[key])]
        return [*found, "}"]
    raise ValueError(f"JSON has no {type(value).__name__}")


def _string(text: str) -> str:
    return '"' + "".join(_ESCAPES.get(sign) or (f"\\u{ord(sign):04x}" if sign < " " else sign) for sign in text) + '"'


def _number(value: float) -> str:
    """As a browser's `String(number)`: the shortest digits that come back to the same number."""
    if isinstance(value, int):
        if abs(value) > _SAFE:
            raise ValueError(f"{value} is beyond what every reader holds exactly: write it as a string")
        return str(value)
    if not math.isfinite(value):
        raise ValueError("JSON has no such number")
    if value == 0:
        return "0"
    sign = "-" if value < 0 else ""
    mantissa, _, exponent = f"{abs(value)!r}".partition("e")
    whole, _, part = mantissa.partition(".")
    digits = (whole + part).lstrip("0")
    point = len(whole) + int(exponent or 0) - (len(whole + part) - len(digits))
    digits = digits.rstrip("0")
    count = len(digits)
    if count <= point <= 21:
        shown = digits + "0" * (point - count)
    elif 0 < point <= 21:
        shown = f"{digits[:point]}.{digits[point:]}"
    elif -6 < point <= 0:
        shown = f"0.{'0' * -point}{digits}"
    else:
        power = point - 1
        shown = digits[0] + (f".{digits[1:]}" if count > 1 else "") + f"e{'+' if power > 0 else '-'}{abs(power)}"
    return sign + shown


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) != len(pairs):
        raise NotAcceptedError("doubled")
    return found


def _no(text: str) -> Any:
    raise ValueError(text)


def _whole(text: str) -> int:
    if len(text) > 17 or abs(int(text)) > _SAFE:
        raise NotAcceptedError("number")
    return int(text)


def _decimal(text: str) -> float:
    value = float(text)
    if not math.isfinite(value):
        raise NotAcceptedError("number")
    return value


def _check(value: Any, depth: int) -> None:
    if depth > DEEPEST:
        raise NotAcceptedError("not_json")
    if isinstance(value, str):
        try:
            value.encode()
        except UnicodeEncodeError:
            raise NotAcceptedError("not_json") from None
    elif isinstance(value, list):
        for each in value:
            _check(each, depth + 1)
    elif isinstance(value, dict):
        for key, each in value.items():
            _check(key, depth + 1)
            _check(each, depth + 1)
