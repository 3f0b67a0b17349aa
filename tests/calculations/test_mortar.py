"""Mortar. Examples are worked by hand for 1 m3 of mortar; printed batches stand in `tests/published`."""

import pytest
from hypothesis import given

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    (
        "mortar_dry_volume", {"wall_mortar_volume": 1, "mortar_waste": 10, "dry_volume_factor": 1.3}, "1.430",
    ),  # 1.1 x 1.3
    ("cement_volume", {"mortar_dry_volume": 1.4, "sand_parts": 2.5}, "0.400"),  # 1.4 in 3.5 parts
    ("cement_mass", {"cement_volume": 0.4}, "576.0"),  # 0.4 x 1440
    ("cement_bags", {"cement_mass": 576}, "12"),  # 11.52 bags of 50 kg
    ("sand_volume_dry", {"cement_volume": 0.4, "sand_parts": 2.5}, "1.00"),  # 2.5 x 0.4
    ("sand_volume_damp", {"sand_volume_dry": 1, "sand_bulking": 25}, "1.25"),  # a quarter more
    ("mixing_water", {"cement_mass": 50, "water_cement_ratio": 0.45}, "23"),  # 22.5 L, half up
]  # fmt: skip
CHAIN = ("mortar_waste", "dry_volume_factor", "sand_parts", "sand_bulking", "water_cement_ratio")


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


def test_one_to_two_and_a_half_is_not_one_in_two_and_a_half() -> None:
    """Derived: 0.40 for 0.286 of the dry volume."""
    values = {"mortar_dry_volume": 1, "sand_parts": 2.5}
    assert BOOK.evaluate(values, ["cement_volume"])["cement_volume"] == pytest.approx(0.286, abs=5e-4)
    assert read_wrong("ratio_read_as_one_in", values, "cement_volume") == pytest.approx(0.40)


def test_a_full_bag_is_not_bought_twice() -> None:
    assert BOOK.evaluate({"cement_mass": 600}, ["cement_bags"])["cement_bags"] == 12
    assert read_wrong("bags_rounded_down", {"cement_mass": 576}, "cement_bags") == 11


def test_bulking_is_reckoned_from_the_flooded_height() -> None:
    """Derived: 200 mm damp and 160 mm flooded is 25 %; over the damp height it would look like 20 %."""
    values = {"sand_bulking": 25, "sand_volume_dry": 1}
    assert read_wrong("bulking_divided_by_damp_height", values, "sand_volume_damp") == pytest.approx(1.20)


@pytest.mark.parametrize("ratio", [0.70, 1.27])
def test_mortar_too_wet_for_a_tank_is_refused(ratio: float) -> None:
    """In print, and not followed: plaster with 70 % water; "20 % of dry cement and sand", which is 127 %."""
    with pytest.raises(OutOfRangeError, match="water_cement_ratio"):
        BOOK.evaluate({"cement_mass": 50, "water_cement_ratio": ratio}, ["mixing_water"])


@given(values=givens(*CHAIN))
def test_cement_and_dry_sand_are_the_whole_dry_volume(values: dict[str, float]) -> None:
    found = BOOK.evaluate({**values, "wall_mortar_volume": 1}, ["cement_bags", "sand_volume_damp", "mixing_water"])
    assert found["cement_volume"] + found["sand_volume_dry"] == pytest.approx(found["mortar_dry_volume"])
    assert found["sand_volume_damp"] >= found["sand_volume_dry"]
    assert found["cement_bags"] * 50 >= found["cement_mass"] * (1 - 1e-9) > (found["cement_bags"] - 1) * 50
    assert found["mixing_water"] < found["cement_mass"]


@given(values=givens(*CHAIN))
def test_a_leaner_mix_never_takes_more_cement(values: dict[str, float]) -> None:
    seeds = {**values, "wall_mortar_volume": 1.0}
    lean = {**seeds, "sand_parts": 3.0}
    here, there = (BOOK.evaluate(s, ["cement_mass"])["cement_mass"] for s in (seeds, lean))
    assert there <= here * (1 + 1e-12)
