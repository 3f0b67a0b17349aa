"""The user's own prices, from a YAML file."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from generator.problems.plain_errors import read_model


class OtherTank(BaseModel):
    """Another kind of tank, with the user's own numbers: `name` as the trade calls it, ready to fill."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    name: Annotated[str, Field(min_length=1, max_length=40)]
    litres: Annotated[float, Field(gt=0, le=1_000_000)]
    price: Annotated[float, Field(ge=0)] | None = None
    life_years: Annotated[float, Field(gt=0, le=100)]
    upkeep: Annotated[float, Field(ge=0)] = 0.0


class Prices(BaseModel):
    """A price list, in the user's own money.

    `cement` is a bag, `sand` and `stone` a cubic metre, `steel` a kilogram of bar or angle, `mesh`, `wire` and `lime` a
    kilogram, `mason` and `labourer` a day, `load` one load carried up. `other_tanks` are
    compared with the planned one, over their years.
    """

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    format: Literal[1]
    currency: Annotated[str, Field(min_length=1, max_length=20)]
    prices: Mapping[
        Literal["cement", "sand", "stone", "steel", "mesh", "wire", "lime", "mason", "labourer", "load"],
        Annotated[float, Field(ge=0, le=10_000_000)],
    ]
    life_years: Annotated[float, Field(gt=0, le=100)] = 20.0
    upkeep: Annotated[float, Field(ge=0)] = 0.0
    other_tanks: Annotated[tuple[OtherTank, ...], Field(strict=False)] = ()


def read_prices(name: str, data: bytes) -> Prices:
    """A price list from a YAML file.

    Args:
        name: of the file, for its problems.
        data: its bytes.

    Raises:
        ProblemsError: everything that is wrong with it.
    """
    return read_model(name, data, Prices)
