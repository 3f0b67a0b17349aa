"""Finishing. Sums are worked by hand; the skin's 1 kg/m2 is printed, the wash's rate is recalled."""

import pytest
from hypothesis import given

from generator.calculations import BOOK
from generator.formula import Status
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    ("wash_area", {"plaster_area_outside": 12, "outside_diameter": 2}, "15.1"),  # 12 + 3.14
    ("limewash_mass", {"wash_area": 15, "wash_coats": 2, "wash_rate": 0.2}, "6.0"),  # 15 x 0.4
    ("wash_cement_mass", {"limewash_mass": 6.6}, "0.60"),  # one of eleven parts
    ("neat_area", {"plaster_area_inside": 12, "floor_area": 5}, "17.0"),  # 12 + 5
    ("neat_cement_mass", {"neat_area": 17}, "17.0"),  # 1 kg on each
    ("neat_cement_bags", {"neat_cement_mass": 51}, "2"),  # 1.02 bags
]
TANK_PART = {"wash_coats": 2.0, "wash_rate": 0.19}
AFTER_PART = {"wash_area", "limewash_mass", "wash_cement_mass"}
"""Need a wall that this course allows."""
WARN_ONLY = {"wash_rate", "limewash_mass"}
"""The powder that a coat takes is recalled: it plans a purchase."""


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


def test_a_full_bag_is_not_bought_twice() -> None:
    assert shown("neat_cement_bags", {"neat_cement_mass": 50}) == "1"
    assert read_wrong("skin_bag_left_out", {"neat_cement_mass": 51}, "neat_cement_bags") == 1


def test_one_to_ten_is_one_part_in_eleven() -> None:
    wrong = read_wrong("wash_read_as_one_in_ten", {"limewash_mass": 6.6}, "wash_cement_mass")
    assert wrong == pytest.approx(0.66)


def test_the_floor_gets_its_skin_and_the_dry_face_none() -> None:
    areas = {"plaster_area_inside": 12, "floor_area": 5, "plaster_area_outside": 12.5}
    assert shown("neat_cement_mass", areas) == "17.0"
    assert read_wrong("floor_left_without_skin", areas, "neat_cement_mass") == 12
    assert read_wrong("skin_on_both_faces", areas, "neat_cement_mass") == 29.5


def test_a_roof_takes_a_good_share_of_the_wash() -> None:
    tank = {"plaster_area_outside": 12, "outside_diameter": 2}
    assert read_wrong("roof_left_grey", tank, "wash_area") == 12


def test_only_the_skin_rests_on_print() -> None:
    assert BOOK.quantities["neat_cement_mass"].source.status is Status.PUBLISHED
    assert not BOOK.quantities["limewash_mass"].source.status.decides


@given(values=givens("wash_coats", "wash_rate"))
def test_lime_and_cement_are_the_whole_wash(values: dict[str, float]) -> None:
    found = BOOK.evaluate({**values, "wash_area": 21.3}, ["wash_cement_mass"])
    lime = found["limewash_mass"] - found["wash_cement_mass"]
    assert lime == pytest.approx(10 * found["wash_cement_mass"])
    assert read_wrong("one_coat_counted", {**values, "wash_area": 21.3}, "limewash_mass") == pytest.approx(
        found["limewash_mass"] / values["wash_coats"]
    )
