"""Pull of water on a ring, and troughs of half a log: water, push, pull and bending."""

from __future__ import annotations

from math import cos, pi, radians, sin, sqrt

from tests.published.by_hand._script import GEOMETRY, by_hand, down

WATER = 9.81
TENSION = "every worked tank that was read: weight of water x depth x radius"
STATICS = "statics of a thin shell, worked apart from the book"


@by_hand(TENSION)
def ring_tension_free(water_depth: float, level_height: float, inside_radius: float) -> float:
    return WATER * (water_depth - level_height) * inside_radius


@by_hand(TENSION + "; a bag of 50 kg pulls 0.4905 kN")
def pull_as_bags(ring_tension_free: float) -> float:
    return ring_tension_free / (50 * 9.81 / 1000)


@by_hand(GEOMETRY)
def trough_volume(trough_radius: float, trough_length: float) -> float:
    return pi * trough_radius**2 / 2 * trough_length


@by_hand("so many hundredths of the full trough")
def trough_water_volume(trough_volume: float, trough_fill_share: float) -> float:
    return trough_volume / 100 * trough_fill_share


@by_hand("litres of one filling, whole goats: sharing out")
def goats_from_one_filling(trough_water_volume: float, litres_per_small_animal: float) -> float:
    return down(trough_water_volume * 1000 / litres_per_small_animal)


@by_hand("pressure times width, summed over the half circle: " + STATICS)
def trough_end_force(trough_radius: float) -> float:
    return WATER * _slices(trough_radius, 1)


@by_hand("moment of the push over the push: " + STATICS)
def trough_end_depth(trough_radius: float) -> float:
    return _slices(trough_radius, 2) / _slices(trough_radius, 1)


def _slices(radius: float, power: int) -> float:
    """Sum of depth^power x width over the half circle, by the middle of 20,000 slices."""
    count = 20_000
    depths = ((number + 0.5) * radius / count for number in range(count))
    return sum(depth**power * 2 * sqrt(radius**2 - depth**2) for depth in depths) * radius / count


@by_hand("the push of half the water on one rim: " + STATICS)
def trough_pull(trough_radius: float) -> float:
    return WATER * trough_radius**2 / 2


@by_hand("the curved bracket above its support, summed piece by piece: " + STATICS)
def trough_line_moment(trough_radius: float) -> float:
    return _bracket(trough_radius, 90)


@by_hand("so many hundredths of the bending on a line")
def trough_bedded_moment(trough_line_moment: float, trough_bed_share: float) -> float:
    return trough_line_moment / 100 * trough_bed_share


def _bracket(radius: float, reach: float) -> float:
    """Moment where the shell is held: the water's push on each piece from the rim down, times its lever."""
    count, total = 2000, radians(reach)
    angles = ((number + 0.5) * total / count for number in range(count))
    pieces = (WATER * radius * sin(angle) * radius * radius * sin(total - angle) for angle in angles)
    return sum(pieces) * total / count


@by_hand("rims that ties keep from moving out: the tie's pull at the rim takes half the moment off: " + STATICS)
def trough_tied_moment(trough_radius: float) -> float:
    at_rim = WATER * trough_radius**2 / 4
    return _bracket(trough_radius, 90) - at_rim * trough_radius * cos(0)


@by_hand("a quarter of the weight of water x radius squared, said in the question: " + STATICS)
def trough_tie_pull(trough_radius: float, trough_tie_spacing: float) -> float:
    return WATER * trough_radius**2 / 4 * trough_tie_spacing


@by_hand("6 M / t2 and N / t of a strip a metre wide: " + STATICS)
def trough_line_stress(trough_line_moment: float, trough_pull: float, trough_wall_thickness: float) -> float:
    t = trough_wall_thickness
    return 6 * trough_line_moment * 1000 / t**2 + trough_pull / t
