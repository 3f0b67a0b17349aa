"""Marks of sticks: where the calculation module puts them, and the same in steps."""

from __future__ import annotations

from itertools import pairwise
from math import asin, pi, sin

import pytest

from generator.figures.rulers import RULERS, hoop_heights
from tests.figures.tanks import place, words

PLACES = ("hill-school", "lower-terrace-herders")


@pytest.mark.parametrize("name", PLACES)
def test_hoops_stand_from_the_foot_to_the_top_at_the_closing_distance(name: str) -> None:
    values = place(name)
    heights = hoop_heights(values)
    assert len(heights) == round(values["hoop_count"])
    assert (heights[0], heights[-1]) == (0.0, pytest.approx(values["wall_height"]))
    gaps = [upper - lower for lower, upper in pairwise(heights)]
    assert gaps == pytest.approx([values["hoop_spacing_closing"]] * len(gaps))


def test_hoops_by_zone_are_as_close_as_their_zone_says() -> None:
    zones = {"zone_count": 2.0, "zone_1_gaps": 4.0, "zone_1_spacing": 0.08, "zone_2_gaps": 3.0, "zone_2_spacing": 0.14}
    assert hoop_heights(zones) == pytest.approx((0.0, 0.08, 0.16, 0.24, 0.32, 0.46, 0.60, 0.74))


@pytest.mark.parametrize("name", PLACES)
@pytest.mark.parametrize("language", ["en", "hi"])
def test_the_ring_stick_has_the_bars_the_chord_and_the_arc(name: str, language: str) -> None:
    values = place(name)
    marks = RULERS["ring"].marks(values, words(language))
    angle, *bars, chord, arc = marks
    assert angle.at == 0.0
    assert [bar.at for bar in bars] == pytest.approx(
        [step * values["bar_spacing"] for step in range(1, round(values["bars_between"]) + 1)]
    )
    radius = values["ring_length"] / (2 * pi)
    assert chord.at == pytest.approx(2 * radius * sin(arc.at / (2 * radius)))  # a chord of its own arc
    assert arc.at == pytest.approx(2 * radius * asin(chord.at / (2 * radius)))
    assert arc.at * values["angle_count"] == pytest.approx(values["ring_length"])
    assert chord.at < arc.at


@pytest.mark.parametrize("name", PLACES)
def test_the_nail_has_its_three_depths(name: str) -> None:
    values = place(name)
    depths = [values[key] / 1000 for key in ("mesh_cover", "bar_cover_inside", "wall_thickness")]
    assert [mark.at for mark in RULERS["cover"].marks(values, words("en"))] == pytest.approx([0.0, *depths])
