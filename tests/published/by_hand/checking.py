"""Checking: cover, readings and what they can't see, steel by the scale, two observers."""

from __future__ import annotations

from math import log

from tests.published.by_hand._script import SHARES, by_hand, up

CHANCE = "zero failures in n random readings, one chance in twenty: (1 - p)^n = 0.05, in any book of sampling"
POLICY = "policy of this course, said in the question: least 5 mm, never planned below 8 mm"


@by_hand(POLICY)
def cover_missing(nominal_cover: float, cover_tolerance: float) -> float:
    return max(0.0, max(5 + cover_tolerance, 8) - nominal_cover)


@by_hand(SHARES)
def least_cover_expected(nominal_cover: float, cover_tolerance: float) -> float:
    return max(0.0, nominal_cover - cover_tolerance)


@by_hand(CHANCE)
def readings_needed(thin_share_wanted: float) -> float:
    return up(log(0.05) / log(1 - thin_share_wanted / 100))


@by_hand(CHANCE)
def thin_share_possible(readings_taken: float) -> float:
    return 100 * (1 - 0.05 ** (1 / readings_taken))


@by_hand(CHANCE)
def thin_area_possible(mesh_wall_area: float, thin_share_possible: float) -> float:
    return mesh_wall_area * thin_share_possible / 100


@by_hand(SHARES)
def thin_share_seen(thin_readings: float, readings_taken: float) -> float:
    return 100 * thin_readings / readings_taken


@by_hand(SHARES)
def thickness_error_share(measured_thickness: float, wall_thickness: float) -> float:
    return 100 * abs(measured_thickness - wall_thickness) / wall_thickness


@by_hand(SHARES)
def step_agreement(steps_watched: float, differing_steps: float) -> float:
    return 100 * (steps_watched - differing_steps) / steps_watched


@by_hand(SHARES)
def weight_missing(bought_bar_mass: float, weighed_steel: float) -> float:
    return 100 * (bought_bar_mass - weighed_steel) / bought_bar_mass
