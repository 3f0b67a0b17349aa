"""A place's file as a plan needs it: its givens, and the tank that they fix."""

from __future__ import annotations

from collections.abc import Mapping
from math import pi
from pathlib import PurePath
from typing import Any, Literal

from pydantic import BaseModel, ConfigDict, ValidationError

from generator.calculations import BOOK
from generator.plans.given import OVERFLOW_DROP
from generator.plans.refused import NoPlanError
from generator.plans.shop import Bar
from generator.problems import Problem, ProblemsError, few, read_yaml
from generator.problems.plain_errors import did_you_mean, problems_of


class _PlaceFile(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    format: Literal[1]
    given: Mapping[str, float]
    id: str = ""
    name: Any = None
    about: Any = None
    invented: bool = False


def read_place(name: str, data: bytes) -> dict[str, float]:
    """The givens of a place.

    Args:
        name: of the file, for its problems.
        data: its bytes.

    Raises:
        ProblemsError: everything that is wrong with it: unknown names and numbers outside their range, too.
    """
    file = read_yaml(name, data)
    try:
        place = _PlaceFile.model_validate(file.value)
    except ValidationError as error:
        raise ProblemsError(problems_of(file, _PlaceFile, error)) from None
    problems: list[Problem] = []
    for key, value in place.given.items():
        given = BOOK.givens.get(key)
        if given is None:
            what, fix = f"there is no given '{key}'", did_you_mean(key, tuple(BOOK.givens))
            problems.append(file.problem(("given", key), "unknown-given", what, fix))
        elif not given.low <= value <= given.high:
            what = f"'{key}' is {value:g}, outside {given.low:g} to {given.high:g}"
            problems.append(
                file.value_problem(
                    ("given", key), "number-out-of-range", what, "check the number, or ask a licensed engineer"
                )
            )
    if problems:
        raise ProblemsError(few(file.name, problems))
    return dict(place.given)


def name_of_place(name: str, data: bytes, language: str) -> str:
    """What a place's file calls it: in the language, else in any, else by the file's own name.

    Args:
        name: of the file.
        data: its bytes.
        language: language code.
    """
    value = read_yaml(name, data).value
    called = value.get("name") if isinstance(value, dict) else None
    if isinstance(called, str) and called.strip():
        return called.strip()
    if isinstance(called, dict):
        said = [text for text in (called.get(language), *called.values()) if isinstance(text, str) and text.strip()]
        if said:
            return said[0].strip()
    return PurePath(name).stem


def litres_of_place(place: Mapping[str, float]) -> float:
    """Litres of the tank that a place fixes, or that it wants.

    Args:
        place: its givens.

    Raises:
        NoPlanError: it gives a diameter or a wall height without the other, or neither of them and no wanted volume.
    """
    drop = place.get("overflow_drop", OVERFLOW_DROP)
    both = [name in place for name in ("inside_diameter", "wall_height")]
    if all(both):
        return 1000 * pi / 4 * place["inside_diameter"] ** 2 * (place["wall_height"] - drop)
    if any(both) or "wanted_volume" not in place:
        raise NoPlanError("place_incomplete")
    return 1000 * place["wanted_volume"]


def hoops_of_place(place: Mapping[str, float]) -> tuple[Bar, float] | None:
    """Hoops that a place names: plain steel, as nobody says that it is ribbed.

    Args:
        place: its givens.
    """
    if "hoop_diameter" in place and "hoop_spacing" in place:
        bar = Bar(diameter=place["hoop_diameter"], length=place.get("stock_length", 12.0))
        return bar, place["hoop_spacing"]
    return None
