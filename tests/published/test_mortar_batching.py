"""Volume batching by a dry-volume factor, as site-engineering pages print it (seen at second hand).

The bare formulas are compared: mortar of 1:4 and leaner is no mortar for a tank, and the book refuses it.
"""

import pytest

from generator.calculations import BOOK
from generator.formula import OutOfRangeError


def bare(name: str, *values: float) -> float:
    """A quantity's formula without this course's ranges."""
    return BOOK.quantities[name].function(*values)


def test_one_cubic_metre_of_one_to_four() -> None:
    """Three site pages: factor 1.33, water 0.50: 0.266 m3, 383.04 kg, 7.661 bags; 1.064 m3 of sand; 191.5 L."""
    dry = bare("mortar_dry_volume", 1, 0, 1.33)
    cement = bare("cement_volume", dry, 4)
    mass = bare("cement_mass", cement)
    assert cement == pytest.approx(0.266, rel=1e-3)
    assert mass == pytest.approx(383.04, rel=1e-3)
    assert mass / 50 == pytest.approx(7.661, rel=1e-3)
    assert bare("cement_bags", mass) == 8
    assert bare("sand_volume_dry", cement, 4) == pytest.approx(1.064, rel=1e-3)
    assert bare("mixing_water", mass, 0.5) == pytest.approx(191.5, rel=1e-3)


@pytest.mark.parametrize(("parts", "dry", "volume", "mass"), [(4, 1.3375, 0.2675, 385.2), (5, 1.284, 0.214, 308.2)])
def test_rates_analysis_with_sand_held_at_1_07_m3(parts: float, dry: float, volume: float, mass: float) -> None:
    """Schedule-of-rates page, item 2114: 1.07 m3 of sand in each; the factor is not constant."""
    cement = bare("cement_volume", dry, parts)
    assert cement == pytest.approx(volume, rel=5e-3)
    assert bare("cement_mass", cement) == pytest.approx(mass, rel=5e-3)
    assert bare("sand_volume_dry", cement, parts) == pytest.approx(1.07, rel=5e-3)


def test_concrete_of_one_to_two_to_four_has_seven_parts() -> None:
    """Site page: factor 1.50: 0.214 m3 of cement, 0.428 of sand, 0.856 of stone; 6.42 bags at 30 bags to the m3."""
    cement = bare("cement_volume", 1.5, 2 + 4)
    assert cement == pytest.approx(0.214, rel=1e-2)
    assert bare("sand_volume_dry", cement, 2) == pytest.approx(0.428, rel=1e-2)
    assert bare("sand_volume_dry", cement, 4) == pytest.approx(0.856, rel=1e-2)
    assert cement * 30 == pytest.approx(6.42, rel=1e-2)
    assert bare("cement_mass", cement) / 50 == pytest.approx(6.17, rel=1e-2)  # derived: 28.8 bags to the m3


@pytest.mark.parametrize(("parts", "cement", "mass", "sand"), [(3, 0.3325, 479, 0.9975), (2, 0.4433, 638, 0.887)])
def test_richer_mortar_with_the_same_factor(parts: float, cement: float, mass: float, sand: float) -> None:
    """Site pages for 1:3 (volumes printed, mass derived); 1:2 derived: factor 1.33."""
    volume = bare("cement_volume", bare("mortar_dry_volume", 1, 0, 1.33), parts)
    assert volume == pytest.approx(cement, abs=5e-5)
    assert bare("cement_mass", volume) == pytest.approx(mass, abs=0.5)
    assert bare("sand_volume_dry", volume, parts) == pytest.approx(sand, abs=5e-4)


def test_water_for_one_bag() -> None:
    """Mix-design sheet: one bag at 0.45 takes 22.5 L."""
    assert bare("mixing_water", 50, 0.45) == pytest.approx(22.5)


def test_bulking_by_the_field_test() -> None:
    """Two laboratory pages on IS 2386 part 3: 200 mm damp, 160 mm flooded is 25 %, and the box grows by as much."""
    bulking = (200 - 160) / 160 * 100
    assert bulking == 25
    assert bare("sand_volume_damp", 160, bulking) == pytest.approx(200)


@pytest.mark.parametrize("parts", [4, 5, 6])
def test_the_book_refuses_mortar_too_lean_for_a_tank(parts: float) -> None:
    with pytest.raises(OutOfRangeError, match="sand_parts"):
        BOOK.evaluate({"mortar_dry_volume": 1.33, "sand_parts": parts}, ["cement_volume"])
