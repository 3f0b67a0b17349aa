"""A plan as data: stable keys with their units, numbers that a program can trust, plain JSON."""

import json
from typing import Any

import pytest

from generator.plans import Plan, Refusal, Wish, as_data, make_plan, trough_data, trough_for
from generator.plans.shop import USUAL_SHOP

TOP = {
    "format", "result", "asked", "band", "counts", "tank", "hoops", "other_hoops", "judged_hoops", "checks", "cutting",
    "mesh", "materials", "batch", "water_works", "ground", "work", "bill", "comparison", "hold_points", "smaller",
    "quantities",
}  # fmt: skip
UNITS = ("_m", "_mm", "_m2", "_m3", "_kg", "_l", "_litres", "_mpa", "_kn", "_kn_per_m", "_mm2_per_m")


@pytest.mark.parametrize("litres", [1500, 9000, 30_000])
def test_the_keys_are_the_documented_ones_and_everything_is_plain_json(litres: int) -> None:
    found = as_data(make_plan(Wish(float(litres))))
    assert set(found) == TOP
    assert json.loads(json.dumps(found, allow_nan=False)) == found
    assert found["format"] == 1


def test_numbers_are_those_of_the_plan() -> None:
    plan = make_plan(Wish(9000.0))
    assert isinstance(plan, Plan)
    found = as_data(plan)
    assert found["tank"]["inside_diameter_m"] == plan.shape.inside_diameter
    assert found["counts"]["hoops"] == 1 + sum(found["counts"]["hoops_by_zone"])
    assert found["counts"]["cement_bags"] == sum(found["materials"]["cement_bags"].values())
    assert found["counts"]["loads"] == sum(line["loads"] for line in found["work"]["loads"])
    assert found["quantities"]["wall_thickness_mm"] == plan.wall.thickness
    assert all(check["good"] for check in found["checks"] if check["decides"])


def lengths(value: Any, key: str = "") -> list[str]:
    if isinstance(value, dict):
        return [name for each, inner in value.items() for name in lengths(inner, each)]
    if isinstance(value, list):
        return [name for inner in value for name in lengths(inner, key)]
    return [key] if isinstance(value, float) else []


def test_every_length_mass_and_force_says_its_unit() -> None:
    found = as_data(make_plan(Wish(9000.0)))
    for part in ("tank", "hoops", "cutting"):
        for key in lengths(found[part]):
            assert key.endswith(UNITS) or key in ("gap", "waste"), (part, key)


def test_a_refusal_says_why_and_what_instead() -> None:
    refused = make_plan(Wish(70_000.0))
    assert isinstance(refused, Refusal)
    found = as_data(refused)
    assert found["result"] == "refused"
    assert found["reason"]["key"] == "too_large"
    assert found["offers"] == [{"tanks": 2, "litres": 35_000.0, "band": 2}, {"tanks": 3, "litres": 23_400.0, "band": 2}]


def test_a_trough_is_data_too() -> None:
    found = trough_data(trough_for(250, USUAL_SHOP))
    assert found["result"] == "trough"
    assert json.loads(json.dumps(found)) == found
