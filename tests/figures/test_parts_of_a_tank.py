"""Drawings of a tank's parts: on any tank nothing covers anything, and what is measured is as long as its number."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise

import pytest

from generator.calculations.bands import VILLAGE_SPAN
from generator.figures import Scene, draw
from generator.figures.hoop_zones import MOST_ZONES, PULL, ZONE_COUNT, zones
from generator.figures.layout import segments
from generator.figures.parts import shapes
from generator.figures.scene import Circle, Dimension, Group, Label, Polyline, Rect
from generator.figures.tank_section import COLUMN, CONE, DOME, FLAT, RIBS, ROOF_KIND, ROOF_NEEDS
from tests.figures.tanks import LANGUAGES, made_up, place, words
from tests.figures.test_drawings import collisions

PLACES = ("hill-school", "lower-terrace-herders")
PARTS = (
    "tank-section",
    "tank-plan",
    "wall-build-up",
    "hoop-zones",
    "mesh-lap",
    "angle-foot",
    "wall-floor-joint",
    "base-layers",
)
TANKS = 500


def tanks(key: str, count: int) -> tuple[Mapping[str, float], ...]:
    return (*map(place, PLACES), *made_up(count, key))


def drawn(key: str, count: int) -> Iterator[tuple[Mapping[str, float], Scene]]:
    """Some tanks, each with its drawing."""
    for values in tanks(key, count):
        yield values, draw(key, values, words("en"))


def measured(scene: Scene) -> list[float]:
    return [element.length for element in scene.all_elements() if isinstance(element, Dimension)]


def across(group: Group, unit: float) -> tuple[float, float]:
    xs = [x for segment in segments(group, unit) for x, _ in segment]
    return min(xs), max(xs)


def upward(group: Group, unit: float) -> tuple[float, float]:
    ys = [y for segment in segments(group, unit) for _, y in segment]
    return min(ys), max(ys)


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("key", PARTS)
def test_texts_keep_apart_on_any_tank(key: str, language: str) -> None:
    for values in made_up(TANKS, key):
        assert collisions(draw(key, values, words(language))) == [], values


# The whole tank.


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


@pytest.mark.parametrize("kind", [DOME, CONE])
def test_a_domed_roof_rises_by_its_rise(kind: int) -> None:
    values = with_roof(place("hill-school"), kind)
    scene = draw("tank-section", values, words("en"))
    (roof,) = scene.named("roof")
    low, high = upward(roof, scene.unit)
    assert high - low == pytest.approx(values["roof_rise"] + values["roof_thickness"] / 1000)


def test_a_roof_without_its_number_is_refused() -> None:
    with pytest.raises(KeyError, match="rib_depth"):
        draw("tank-section", {**place("hill-school"), ROOF_KIND: RIBS}, words("en"))
    with pytest.raises(KeyError, match=ROOF_KIND):
        draw("tank-section", {**place("hill-school"), ROOF_KIND: 5}, words("en"))


@pytest.mark.parametrize(("where", "kind"), [("hill-school", DOME), ("lower-terrace-herders", FLAT)])
def test_no_roof_named_is_flat_where_a_village_may_span_it_and_else_a_dome(where: str, kind: int) -> None:
    values = place(where)
    assert (values["inside_diameter"] > VILLAGE_SPAN) == (kind == DOME)
    assert draw("tank-section", values, words("en")) == draw("tank-section", {**values, ROOF_KIND: kind}, words("en"))


def test_a_wide_tank_without_a_rise_is_drawn_flat() -> None:
    values = {name: value for name, value in place("hill-school").items() if name != "roof_rise"}
    assert draw("tank-section", values, words("en")) == draw("tank-section", {**values, ROOF_KIND: FLAT}, words("en"))


def test_what_the_section_measures_is_as_long_as_its_number() -> None:
    for values, scene in drawn("tank-section", 40):
        names = ("overflow_drop", "water_depth", "wall_height", "inside_diameter")
        assert measured(scene) == pytest.approx([values[name] for name in names], rel=1e-9)


def test_the_parts_of_the_section_lie_on_each_other_to_scale() -> None:
    for values, scene in drawn("tank-section", 40):
        bed, base = (upward(scene.named(name)[0], scene.unit) for name in ("stone-bed", "base"))
        assert bed[1] - bed[0] == pytest.approx(values["stone_thickness"] / 1000)
        assert base[1] - base[0] == pytest.approx(values["base_concrete_thickness"] / 1000)
        assert base[0] == pytest.approx(bed[1])
        walls = [upward(group, scene.unit) for group in scene.named("wall")]
        assert [low for low, _ in walls] == pytest.approx([base[1]] * 2)
        floor = upward(scene.named("floor")[0], scene.unit)
        thick = (values["floor_mortar_thickness"] + values["floor_fall_height"]) / 1000
        assert floor[1] - floor[0] == pytest.approx(thick)
        left, right = across(scene.named("base")[0], scene.unit)
        assert right - left == pytest.approx(values["base_diameter"])


def test_what_the_plan_measures_is_as_long_as_its_number() -> None:
    for values, scene in drawn("tank-plan", 40):
        names = [f"{which}_diameter" for which in ("inside", "frame", "outside", "base")]
        assert measured(scene) == pytest.approx([values[name] for name in names], rel=1e-9)
        for which, name in (("base", "base"), ("outside", "wall"), ("inside", "water"), ("frame", "frame")):
            circle = scene.named(name)[0].elements[0]
            assert isinstance(circle, Circle)
            assert 2 * circle.radius == pytest.approx(values[f"{which}_diameter"])


# The wall.


def test_the_layers_of_a_wall_are_as_thick_as_their_numbers_and_fill_it() -> None:
    for values, scene in drawn("wall-build-up", 40):
        lengths = [1000 * length for length in measured(scene)]
        layers = (
            "mesh_cover",
            "outside_mesh_thickness",
            "hoop_diameter",
            "bar_diameter",
            "inside_mesh_thickness",
            "mesh_cover",
        )
        wholes = ("wall_build_up", "wall_build_up_at_lap", "wall_build_up_at_angle", "wall_thickness")
        assert sorted(lengths) == pytest.approx(sorted(values[name] for name in (*layers, *wholes)))
        assert sum(values[name] for name in layers) == pytest.approx(values["wall_build_up"])
        walls = [across(group, scene.unit) for group in scene.named("wall")]
        assert [1000 * (right - left) for left, right in walls] == pytest.approx([values["wall_thickness"]] * 3)


def test_what_lies_in_a_wall_reaches_as_far_as_its_place_needs() -> None:
    """The outer mesh and its cover end where the number of the place says."""
    for values, scene in drawn("wall-build-up", 40):
        left, _ = across(scene.named("wall")[0], scene.unit)
        (angle,) = scene.named("angle")
        first, last = across(angle, scene.unit)
        before = values["mesh_cover"] + values["inside_mesh_thickness"]
        after = values["hoop_diameter"] + values["outside_mesh_thickness"] + values["mesh_cover"]
        assert 1000 * (first - left) == pytest.approx(before)
        assert 1000 * (last - left) + after == pytest.approx(values["wall_build_up_at_angle"])
        mesh = values["outside_mesh_thickness"] + values["mesh_cover"]
        hoops = [1000 * (across(group, scene.unit)[1] - left) for group in scene.named("hoop")]
        assert hoops[0] + mesh == pytest.approx(values["wall_build_up"])


# Hoops.


def zoned(values: Mapping[str, float], count: int) -> Mapping[str, float]:
    """The wall in zones: the lower, the closer."""
    found: dict[str, float] = {**values, ZONE_COUNT: count}
    low = 0.0
    for number in range(1, count + 1):
        top = values["wall_height"] if number == count else round(values["wall_height"] * number / count, 3)
        gaps = 9 - 2 * number
        found[f"zone_{number}_top"] = top
        found[f"zone_{number}_gaps"] = gaps
        found[f"zone_{number}_spacing"] = (top - low) / gaps
        low = top
    return found


def hoop_levels(scene: Scene) -> list[float]:
    found = []
    for group in scene.named("hoop"):
        (bar,) = group.elements
        assert isinstance(bar, Rect)
        found.append(bar.corner[1] + bar.height / 2)
    return found


def test_one_zone_has_every_hoop_at_its_level() -> None:
    for values, scene in drawn("hoop-zones", 40):
        levels = hoop_levels(scene)
        assert len(levels) == values["hoop_gaps"] + 1
        for low, high in pairwise(levels):
            assert high - low == pytest.approx(values["hoop_spacing_closing"])
        assert measured(scene) == pytest.approx([values["wall_height"]] * 2)


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("count", range(1, MOST_ZONES + 1))
def test_zones_are_drawn_at_their_spacing(count: int, language: str) -> None:
    for plain in tanks("hoop-zones", 40):
        values = zoned(plain, count)
        scene = draw("hoop-zones", values, words(language))
        assert collisions(scene) == [], values
        heights = [zone.top - zone.low for zone in zones(values)]
        assert measured(scene) == pytest.approx([*heights, values["wall_height"]])
        wanted = [zone.spacing for zone in zones(values) for _ in range(zone.gaps)]
        assert [high - low for low, high in pairwise(hoop_levels(scene))] == pytest.approx(wanted)


def test_the_pull_grows_from_the_water_to_the_foot() -> None:
    values = place("hill-school")
    scene = draw("hoop-zones", values, words("en"))
    (wedge,) = scene.named("pull")[0].elements
    assert isinstance(wedge, Polyline)
    low, high = upward(scene.named("pull")[0], scene.unit)
    assert high - low == pytest.approx(values["water_depth"])
    top = [point for point in wedge.points if point[1] == high]
    assert len(top) == 1
    without = {name: value for name, value in values.items() if name != PULL}
    assert draw("hoop-zones", without, words("en")).named("pull") == ()


def test_zones_that_do_not_fit_are_refused() -> None:
    good = dict(zoned(place("hill-school"), 2))
    for name, wrong in ((ZONE_COUNT, 0.0), (ZONE_COUNT, 5.0), ("zone_2_top", 1.3), ("zone_1_gaps", 0.0)):
        with pytest.raises(ValueError, match="zone"):
            draw("hoop-zones", {**good, name: wrong}, words("en"))
    with pytest.raises(KeyError, match="zone_2_spacing"):
        draw("hoop-zones", {name: value for name, value in good.items() if name != "zone_2_spacing"}, words("en"))


# Mesh.


def test_strips_of_mesh_lie_over_each_other_by_the_lap() -> None:
    for values, scene in drawn("mesh-lap", 40):
        left, right = (across(group, scene.unit) for group in scene.named("strip"))
        assert left[1] - right[0] == pytest.approx(values["mesh_lap"])
        assert measured(scene) == pytest.approx([values["mesh_lap"]] * 3)
        assert len(scene.named("tie")) >= 4


def test_laps_of_two_layers_are_more_than_a_lap_apart() -> None:
    for values, scene in drawn("mesh-lap", 40):
        laps = []
        for layer in scene.named("layer"):
            first, second = (across(Group("end", (end,)), scene.unit) for end in layer.elements)
            laps.append((second[0], first[1]))
        (_, first_end), (second_start, _) = laps
        assert second_start - first_end > values["mesh_lap"]


# The foot.


def test_what_stands_in_the_base_is_as_long_as_its_number() -> None:
    through = 0
    for values, scene in drawn("angle-foot", 60):
        base = values["base_concrete_thickness"] / 1000
        upright = values["starter_length"] - values["starter_leg"]
        under = base - values["angle_foot"]
        wanted = [values["angle_foot"], *([under] if under > 0 else []), base, values["starter_leg"], upright]
        assert measured(scene) == pytest.approx(wanted)
        top = upward(scene.named("base")[0], scene.unit)[1]
        foot = upward(scene.named("angle")[0], scene.unit)[0]
        assert top - foot == pytest.approx(values["angle_foot"])
        through += under <= 0
    assert through > 5


def test_an_angle_that_goes_through_the_base_is_spoken_of() -> None:
    values = {**place("hill-school"), "angle_foot": 0.16}
    for language in LANGUAGES:
        said = words(language).say("figure.angle-foot.through")
        texts = " ".join(
            shape.text for shape in shapes(draw("angle-foot", values, words(language))) if isinstance(shape, Label)
        )
        assert said[:30] in texts
        sound = draw("angle-foot", place("hill-school"), words(language))
        assert said[:30] not in " ".join(shape.text for shape in shapes(sound) if isinstance(shape, Label))


def test_what_the_joint_measures_is_as_long_as_its_number() -> None:
    for values, scene in drawn("wall-floor-joint", 60):
        wanted = [values["wall_thickness"] / 1000, values["mesh_turn_up"], values["base_concrete_thickness"] / 1000]
        assert measured(scene) == pytest.approx(wanted)
        low, high = upward(scene.named("turned-up")[0], scene.unit)
        assert high - low == pytest.approx(values["mesh_turn_up"])


def test_starters_stand_on_the_water_side_of_the_wall() -> None:
    for values, scene in drawn("wall-floor-joint", 60):
        wall = across(scene.named("wall")[0], scene.unit)
        (starter,) = scene.named("starter")
        _, right = across(starter, scene.unit)
        cover = (values["mesh_cover"] + values["inside_mesh_thickness"]) / 1000
        thick = max(values["starter_diameter"] / 1000, 2 * scene.unit)
        assert right - wall[0] == pytest.approx(cover + values["starter_diameter"] / 2000 + thick / 2)


def test_layers_of_the_base_are_to_scale_and_open_to_the_right() -> None:
    for values, scene in drawn("base-layers", 60):
        names = ("floor_mortar_thickness", "base_concrete_thickness", "stone_thickness")
        assert measured(scene) == pytest.approx([values[name] / 1000 for name in names])
        ends = [
            across(scene.named(name)[0], scene.unit)[1] for name in ("floor", "mesh", "base", "stone-bed", "ground")
        ]
        assert ends == sorted(ends)
        assert len(set(ends)) == 5
