"""Sand by its sieves: IS 383:1970, table 4 (rows below 1.18 mm at second hand), and IS 1542:1992 (second hand).

The limits are typed here once more from the print, so that a slip in the table of the module is noticed.
"""

import pytest

from generator.calculations.materials_limits import (
    PLASTER_SAND,
    ZONES,
    SandAdvice,
    fineness_modulus,
    fits,
    zone_of,
)

PRINTED = """
10    100     100     100     100     100
4.75  90-100  90-100  90-100  95-100  95-100
2.36  60-95   75-100  85-100  95-100  95-100
1.18  30-70   55-90   75-100  90-100  90-100
0.6   15-34   35-59   60-79   80-100  80-100
0.3   5-20    8-30    12-40   15-50   20-65
0.15  0-10    0-10    0-10    0-15    0-15
"""
"""Sieve in mm; percent passing of zones I to IV, and of natural sand for plaster."""


def column(number: int) -> dict[float, tuple[int, int]]:
    limits = {}
    for line in PRINTED.split("\n")[1:-1]:
        sieve, *cells = line.split()
        low, _, high = cells[number].partition("-")
        limits[float(sieve)] = (int(low), int(high or low))
    return limits


def between(number: int, share: float) -> dict[float, float]:
    """A sand that lies at a share of the way between the limits of a column."""
    return {sieve: low + share * (high - low) for sieve, (low, high) in column(number).items()}


@pytest.mark.parametrize("zone", [1, 2, 3, 4])
def test_zones_as_printed(zone: int) -> None:
    assert dict(ZONES[zone]) == column(zone - 1)


def test_plaster_sand_as_printed() -> None:
    assert dict(PLASTER_SAND) == column(4)


@pytest.mark.parametrize("share", [0, 0.25, 0.5, 0.75, 1])
@pytest.mark.parametrize("zone", [1, 2, 3, 4])
def test_a_sand_inside_the_limits_of_a_zone_is_in_it(zone: int, share: float) -> None:
    found = zone_of(between(zone - 1, share))
    assert (found.zone, found.outside) == (zone, ())


def test_the_zones_get_finer() -> None:
    moduli = [fineness_modulus(between(zone, 0.5)) for zone in range(4)]
    assert moduli == sorted(moduli, reverse=True)
    assert moduli[0] > 3 > 2 > moduli[3]


def test_plaster_sand_is_finer_than_a_wall_of_mesh_wants() -> None:
    """IS 1542:1992 asks a fineness modulus of 1.5 or more; the middle of its limits lies in zone IV."""
    sand = between(4, 0.5)
    assert fits(sand, PLASTER_SAND)
    assert fineness_modulus(sand) >= 1.5
    assert zone_of(sand).zone == 4
    assert zone_of(sand).advice is SandAdvice.MIX_IN_COARSER
    assert not fits(between(1, 0.5), PLASTER_SAND)


@pytest.mark.parametrize("sieve", [10.0, 4.75, 2.36, 1.18, 0.3])
def test_too_little_through_one_sieve_is_noticed(sieve: float) -> None:
    """Zone II; the deciding sieve is left out, for it sets the zone, and nothing need pass the finest."""
    low, _ = column(1)[sieve]
    through = {s: min(p, low - 1) if s <= sieve else p for s, p in between(1, 0.5).items()}
    found = zone_of(through)
    assert found.zone == 2
    assert sieve in found.outside
