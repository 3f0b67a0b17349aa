"""Drawings of a tank whose mesh alone bears the water: no hoop, no upright bar, and nothing in the way of anything."""

from __future__ import annotations

import pytest

from generator.figures import FIGURES, draw
from generator.figures.svg import svg
from generator.plans import Plan, Wish, drawing_values, make_plan
from tests.figures.tanks import words
from tests.figures.test_drawings import collisions


@pytest.mark.parametrize("language", ["en", "hi"])
@pytest.mark.parametrize("key", [key for key, kind in FIGURES.items() if kind.of_hoops])
def test_a_tank_without_hoops_is_drawn_with_mesh_alone(key: str, language: str) -> None:
    said = words(language)
    bar = said.say_one_of("figure.part", "bar"), said.say_one_of("figure.part", "hoop")
    for litres in (500.0, 1000.0, 2000.0):
        plan = make_plan(Wish(litres))
        assert isinstance(plan, Plan)
        values = drawing_values(plan)
        assert not set(FIGURES[key].of_hoops) & set(values)
        scene = draw(key, values, said)
        assert collisions(scene) == []
        drawn = svg(scene, key)
        assert not [part for part in bar if f">{part}<" in drawn]
        assert "mesh" in scene.description or "जाली" in scene.description
