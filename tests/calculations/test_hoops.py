"""Hoops. Examples are counting and geometry, worked by hand; three whole tanks were worked apart from the book."""

import pytest
from hypothesis import given

from generator.calculations import BOOK
from generator.formula import OutOfRangeError
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    ("hoop_gaps", {"wall_height": 1.3, "hoop_spacing": 0.12}, "11"),  # 130 / 12 = 10.8
    ("hoop_count", {"hoop_gaps": 11}, "12"),  # both ends have one
    ("hoop_spacing_closing", {"wall_height": 1.3, "hoop_gaps": 11}, "0.118"),  # 130 / 11 = 11.8 cm
    (
        "hoop_circle_diameter", {"frame_diameter": 3.042, "bar_diameter": 10, "hoop_diameter": 8}, "3.060",
    ),  # 3042 + 5 + 5 + 4 + 4 mm
    ("lap_length", {"lap_diameters": 50, "hoop_diameter": 6}, "0.30"),  # 50 x 6 = 300 mm
    ("hoop_length", {"hoop_circle_diameter": 3.05, "lap_length": 0.4}, "9.98"),  # 3.1416 x 3.05 + 0.40
    ("hoop_laps", {"hoop_circle_diameter": 4.255, "lap_length": 0.4, "stock_length": 12}, "2"),  # 13.37 / 11.6
    ("hoop_steel_length", {"hoop_circle_diameter": 4.255, "lap_length": 0.4, "hoop_laps": 2}, "14.17"),  # 13.37 + 0.80
    ("hoop_total_length", {"hoop_count": 15, "hoop_length": 8.47}, "127.1"),  # 15 x 8.47 = 127.05
    ("hoop_mass_per_metre", {"hoop_diameter": 8}, "0.395"),  # 64 / 162
    ("bar_mass_per_metre", {"bar_diameter": 10}, "0.617"),  # 100 / 162
    (
        "hoop_mass", {"hoop_count": 12, "hoop_steel_length": 10, "hoop_mass_per_metre": 0.4}, "48.0",
    ),  # 120 m at 0.4 kg
    ("hoops_from_one_bar", {"stock_length": 12, "hoop_length": 5.5}, "2"),  # 11 m, 1 m is left
    (
        "hoop_stock_bars",
        {"hoop_count": 15, "hoop_laps": 2, "stock_length": 12, "hoop_steel_length": 14.17}, "30",
    ),  # 30 pieces of 7.09 m, one from each bar
]  # fmt: skip


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


@pytest.mark.parametrize(
    ("diameter", "hoop", "count", "length", "mass"),
    [(2.945, 6, 13, 9.55, 28), (4.255, 8, 15, 14.17, 84), (5.76, 8, 16, 18.90, 119)],
)
def test_hoops_of_three_tanks_worked_apart_from_the_book(
    diameter: float, hoop: float, count: float, length: float, mass: float
) -> None:
    """Derived: tanks of about 10, 25 and 50 m3 from bars of 12 m, laps of 50 diameters."""
    seeds = {"hoop_circle_diameter": diameter, "hoop_diameter": hoop, "hoop_count": count,
             "lap_diameters": 50, "stock_length": 12}  # fmt: skip
    found = BOOK.evaluate(seeds, ["hoop_mass"])
    assert found["hoop_steel_length"] == pytest.approx(length, abs=0.01)
    assert found["hoop_mass"] == pytest.approx(mass, abs=0.6)


def test_short_ends_are_not_hoops() -> None:
    """Derived: 15 hoops of 8.47 m are 127 m, which is 10.6 bars; each bar gives one hoop, so 15 are bought."""
    values = {"hoop_count": 15, "hoop_laps": 1, "stock_length": 12, "hoop_steel_length": 8.47}
    assert BOOK.evaluate(values, ["hoop_stock_bars"])["hoop_stock_bars"] == 15
    assert read_wrong("total_length_shared_by_bars", values, "hoop_stock_bars") == 11


def test_a_forgotten_lap_opens_the_hoop() -> None:
    """Derived: 8.17 for 8.47 m with a 6 mm bar and 50 diameters."""
    values = {"hoop_circle_diameter": 2.6, "lap_length": 0.3}
    assert shown("hoop_length", values) == "8.47"
    assert read_wrong("lap_forgotten", values, "hoop_length") == pytest.approx(8.17, abs=0.005)


def test_a_spacing_in_centimetres_set_as_millimetres_is_ten_times_too_small() -> None:
    values = {"hoop_spacing": 0.12, "wall_height": 1.2}
    assert read_wrong("centimetres_read_as_millimetres", values, "hoop_gaps") == 100


def test_a_lap_under_fifty_diameters_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match=r"lap_diameters = 40 is outside 50 to 80.*licensed engineer"):
        BOOK.evaluate({"lap_diameters": 40, "hoop_diameter": 8}, ["lap_length"])


HEIGHT = ("wall_height", "hoop_spacing")


@given(values=givens(*HEIGHT))
def test_hoops_come_out_even_and_never_wider_than_the_plan(values: dict[str, float]) -> None:
    found = BOOK.evaluate(values, ["hoop_count", "hoop_spacing_closing"])
    assert found["hoop_spacing_closing"] <= values["hoop_spacing"] * (1 + 1e-9)
    assert found["hoop_spacing_closing"] * (found["hoop_count"] - 1) == pytest.approx(values["wall_height"])


STEEL = (
    "inside_diameter", "mesh_cover", "inside_mesh_thickness", "bar_diameter", "hoop_diameter", "lap_diameters",
    "stock_length", *HEIGHT,
)  # fmt: skip


@given(values=givens(*STEEL))
def test_every_piece_of_a_hoop_fits_a_bar_and_the_bars_bought_are_enough(values: dict[str, float]) -> None:
    found = BOOK.evaluate(values, ["hoop_stock_bars"])
    piece = found["hoop_steel_length"] / found["hoop_laps"]
    assert piece <= values["stock_length"] * (1 + 1e-8)
    from_one_bar = int(values["stock_length"] / piece + 1e-8)
    assert found["hoop_stock_bars"] * from_one_bar >= found["hoop_count"] * found["hoop_laps"]


@given(values=givens(*STEEL))
def test_a_hoop_of_one_piece_is_the_same_either_way(values: dict[str, float]) -> None:
    found = BOOK.evaluate(values, ["hoop_length", "hoop_steel_length"])
    more = (found["hoop_laps"] - 1) * found["lap_length"]
    assert found["hoop_steel_length"] == pytest.approx(found["hoop_length"] + more)


def test_the_widest_tank_from_the_shortest_bars_with_the_longest_laps_is_still_counted() -> None:
    """Derived: 3.1416 x 8.098 m round, bars of 4 m less laps of 1.28 m: 25.44 / 2.72 = 9.35, so 10 pieces; 38.24 m."""
    values = {
        "inside_diameter": 8.0, "mesh_cover": 10, "inside_mesh_thickness": 15, "bar_diameter": 16, "hoop_diameter": 16,
        "lap_diameters": 80, "stock_length": 4, "wall_height": 2.4, "hoop_spacing": 0.05,
    }  # fmt: skip
    found = BOOK.evaluate(values, ["hoop_stock_bars", "hoop_mass"])
    assert found["hoop_circle_diameter"] == pytest.approx(8.098)
    assert found["hoop_laps"] == 10 == BOOK.quantities["hoop_laps"].high
    assert found["hoop_steel_length"] == pytest.approx(38.24, abs=0.005)
    assert found["hoop_stock_bars"] == 490
    assert found["hoop_mass"] == pytest.approx(49 * 38.24 * 256 / 162, rel=2e-4)


def test_both_ends_of_a_hoop_share_one_lap() -> None:
    values = {"lap_diameters": 50, "hoop_diameter": 6}
    assert BOOK.evaluate(values, ["lap_length"])["lap_length"] == pytest.approx(0.3)
    assert read_wrong("lap_given_to_both_ends", values, "lap_length") == pytest.approx(0.6)
