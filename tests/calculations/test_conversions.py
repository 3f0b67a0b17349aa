"""Inches and feet to metres. The tables of units that masons learn from print 25.4 mm and 304.8 mm."""

import pytest
from hypothesis import given

from generator.calculations import BOOK
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    ("metres_from_inches", {"length_in_inches": 10}, "0.254"),  # 10 x 25.4 = 254 mm
    ("metres_from_feet", {"length_in_feet": 5.5}, "1.676"),  # 5.5 x 304.8 = 1676.4 mm
]


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


def test_inches_after_the_point_are_not_a_decimal_foot() -> None:
    """Derived: 5 ft 6 in written 5.6 gives 1.707 for 1.676 m; 5 ft 10 in written 5.10 gives 1.554 for 1.778 m."""
    mistake = "inches_written_as_decimal_feet"
    assert read_wrong(mistake, {"length_in_feet": 5.5}, "metres_from_feet") == pytest.approx(1.707, abs=5e-4)
    assert read_wrong(mistake, {"length_in_feet": 5 + 10 / 12}, "metres_from_feet") == pytest.approx(1.554, abs=5e-4)


@given(values=givens("length_in_inches"))
def test_twelve_inches_are_a_foot(values: dict[str, float]) -> None:
    inches = values["length_in_inches"]
    metres = BOOK.evaluate(values, ["metres_from_inches"])["metres_from_inches"]
    foot = BOOK.quantities["metres_from_feet"].function(inches / 12)
    assert metres == pytest.approx(foot, rel=1e-12)


def test_an_inch_is_more_than_two_centimetres_and_a_foot_less_than_a_third_of_a_metre() -> None:
    assert read_wrong("two_centimetres_taken_for_an_inch", {"length_in_inches": 30}, "metres_from_inches") == 0.6
    assert read_wrong("foot_taken_for_a_third_of_a_metre", {"length_in_feet": 6}, "metres_from_feet") == 2
