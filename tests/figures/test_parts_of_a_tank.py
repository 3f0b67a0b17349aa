"""Drawings of a tank's parts: on any tank nothing covers anything, and what is measured is as long as its number."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from generator.figures import FIGURES, Scene, draw
from generator.figures.scene import Dimension
from generator.figures.tank_section import COLUMN, CONE, DOME, FLAT, RIBS, ROOF_KIND, ROOF_NEEDS
from tests.figures.any_tank import any_tanks
from tests.figures.tanks import LANGUAGES, place, words
from tests.figures.test_drawings import collisions

PLACES = ("hill-school", "lower-terrace-herders")
PARTS = ("tank-section", "tank-plan")
TANKS = 500


def tanks(key: str, count: int) -> tuple[Mapping[str, float], ...]:
    return (*map(place, PLACES), *any_tanks(FIGURES[key].needs, count))


def measured(scene: Scene) -> list[float]:
    return [element.length for element in scene.all_elements() if isinstance(element, Dimension)]


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("key", PARTS)
def test_texts_keep_apart_on_any_tank(key: str, language: str) -> None:
    for values in any_tanks(FIGURES[key].needs, TANKS):
        assert collisions(draw(key, values, words(language))) == [], values


def with_roof(values: Mapping[str, float], kind: int) -> Mapping[str, float]:
    roof = {
        "roof_rise": values["inside_diameter"] / 6,
        "rib_spacing": 0.7,
        "rib_depth": 110.0,
        "column_width": 0.22,
        "column_head_diameter": 0.55,
    }
    return {**values, ROOF_KIND: kind, **{name: roof[name] for name in ROOF_NEEDS[kind]}}


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("kind", [DOME, CONE, RIBS, COLUMN])
def test_every_roof_finds_its_place_over_any_tank(kind: int, language: str) -> None:
    for values in tanks("tank-section", 60):
        scene = draw("tank-section", with_roof(values, kind), words(language))
        assert collisions(scene) == [], values
        assert len(scene.named("column")) == (kind == COLUMN)
        assert bool(scene.named("rib")) == (kind == RIBS)


def test_a_roof_without_its_number_is_refused() -> None:
    with pytest.raises(KeyError, match="rib_depth"):
        draw("tank-section", {**place("hill-school"), ROOF_KIND: RIBS}, words("en"))
    with pytest.raises(KeyError, match=ROOF_KIND):
        draw("tank-section", {**place("hill-school"), ROOF_KIND: 5}, words("en"))


def test_no_roof_named_is_a_flat_one() -> None:
    values = place("hill-school")
    assert draw("tank-section", values, words("en")) == draw("tank-section", with_roof(values, FLAT), words("en"))


@pytest.mark.parametrize("values", tanks("tank-section", 40))
def test_what_the_section_measures_is_as_long_as_its_number(values: Mapping[str, float]) -> None:
    scene = draw("tank-section", values, words("en"))
    names = ("overflow_drop", "water_depth", "wall_height", "inside_diameter")
    assert measured(scene) == pytest.approx([values[name] for name in names], rel=1e-9)


@pytest.mark.parametrize("values", tanks("tank-plan", 40))
def test_what_the_plan_measures_is_as_long_as_its_number(values: Mapping[str, float]) -> None:
    scene = draw("tank-plan", values, words("en"))
    names = [f"{which}_diameter" for which in ("inside", "frame", "outside", "base")]
    assert measured(scene) == pytest.approx([values[name] for name in names], rel=1e-9)
