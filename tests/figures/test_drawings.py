"""Every drawing, for the course's places and hundreds of other tanks, in both languages: nothing covers anything."""

from __future__ import annotations

import math
from collections.abc import Mapping
from itertools import combinations, pairwise

import numpy as np
import pytest

from generator.calculations import BOOK
from generator.figures import FIGURES, Scene, draw
from generator.figures.layout import Box, segments, text_box
from generator.figures.parts import shapes
from generator.figures.scene import (
    ArcDimension,
    Circle,
    Dimension,
    Element,
    Group,
    Hatch,
    Label,
    Polyline,
    Rect,
)
from tests.figures.tanks import LANGUAGES, NEEDED, made_up, place, words

PLACES = ("hill-school", "lower-terrace-herders")
TANKS = 260


def boxed(element: Element, unit: float) -> Box:
    points = [point for segment in segments(element, unit) for point in segment]
    return Box(
        min(x for x, _ in points), min(y for _, y in points), max(x for x, _ in points), max(y for _, y in points)
    )


def arrowed(dimension: Dimension | ArcDimension, unit: float) -> Box:
    """The paper of the arrowed line, without the lines that lead to it."""
    if isinstance(dimension, ArcDimension):
        return boxed(dimension, unit)
    along = [(b - a) / dimension.length for a, b in zip(dimension.start, dimension.end, strict=True)]
    ends = [
        (x - along[1] * dimension.offset, y + along[0] * dimension.offset) for x, y in (dimension.start, dimension.end)
    ]
    tail = 16 * unit if dimension.length < 17 * unit else 0.0
    reached = [
        (ends[side][0] + sign * along[0] * tail, ends[side][1] + sign * along[1] * tail)
        for side, sign in ((0, -1), (1, 1))
    ]
    return Box(
        min(x for x, _ in reached), min(y for _, y in reached), max(x for x, _ in reached), max(y for _, y in reached)
    ).grown(2 * unit)


def collisions(scene: Scene) -> list[str]:
    """What is wrong with the places of texts and dimensions."""
    unit = scene.unit
    frame = Box(0, 0, scene.width, scene.height)
    elements = [element for element in scene.all_elements() if not isinstance(element, Hatch)]
    labels = [element for element in elements if isinstance(element, Label)]
    labels += [
        label for element in elements if isinstance(element, Dimension | ArcDimension) for label in element.labels
    ]
    boxes = [(label.text, text_box(label, unit)) for label in labels]
    found = [f"'{text}' leaves the frame" for text, box in boxes if not frame.holds(box)]
    found += [f"'{a}' covers '{b}'" for (a, one), (b, two) in combinations(boxes, 2) if one.overlaps(two)]
    discs = [
        element for element in scene.all_elements() if isinstance(element, Circle) and element.ink == "number-disc"
    ]
    lines = [segment for element in elements if element not in discs for segment in segments(element, unit)]
    ends = np.array(lines).reshape(-1, 2, 2)
    low, high = ends.min(axis=1), ends.max(axis=1)
    for text, box in boxes:
        near = (low < (box.right, box.high)).all(axis=1) & (high > (box.left, box.low)).all(axis=1)
        found += [f"a line runs through '{text}'" for number in np.flatnonzero(near) if box.crossed_by(*lines[number])]
    outside = (low < -1e-9).any(axis=1) | (high > (scene.width + 1e-9, scene.height + 1e-9)).any(axis=1)
    found += [f"a line leaves the frame at {lines[number]}" for number in np.flatnonzero(outside)]
    for disc in discs:
        round_it = Box(*(disc.centre[i] - disc.radius for i in (0, 1)), *(disc.centre[i] + disc.radius for i in (0, 1)))
        found += [f"a disc covers '{text}'" for text, box in boxes if len(text) > 1 and box.overlaps(round_it)]
    dimensions = [element for element in scene.all_elements() if isinstance(element, Dimension | ArcDimension)]
    arrows = [arrowed(dimension, unit) for dimension in dimensions]
    found += ["two dimensions cover each other" for one, two in combinations(arrows, 2) if one.overlaps(two)]
    return found


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("key", FIGURES)
@pytest.mark.parametrize("name", PLACES)
def test_texts_and_dimensions_of_the_courses_places_keep_apart(name: str, key: str, language: str) -> None:
    assert collisions(draw(key, place(name), words(language))) == []


def test_the_made_up_tanks_reach_far() -> None:
    tanks = made_up(TANKS, "ring-plan")
    assert min(tank["inside_diameter"] for tank in tanks) < 0.9
    assert max(tank["inside_diameter"] for tank in tanks) > 7.5
    assert min(tank["angle_count"] for tank in tanks) <= 5
    assert max(tank["angle_count"] for tank in tanks) >= 40
    assert {1, 2, 3, 4} <= {tank["bars_between"] for tank in tanks}
    assert min(tank["wall_height"] for tank in made_up(TANKS, "frame-elevation")) < 0.6


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("key", ["hoop-lap", *(key for key, kind in FIGURES.items() if "bars_between" in kind.needs)])
def test_a_frame_of_angles_without_bars_is_drawn(key: str, language: str) -> None:
    values = {**place("hill-school"), "bars_between": 0.0, "bar_spacing": place("hill-school")["angle_spacing"]}
    scene = draw(key, values, words(language))
    assert collisions(scene) == []
    assert key == "hoop-lap" or scene.named("bar") == ()


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_lap_of_a_frame_of_bars_without_angles_is_drawn(language: str) -> None:
    values = {name: place("hill-school")[name] for name in FIGURES["hoop-lap"].needs}
    scene = draw("hoop-lap", values, words(language))
    assert collisions(scene) == []
    assert scene.named("bar")


def test_a_collision_would_be_seen() -> None:
    scene = draw("ring-plan", place("hill-school"), words("en"))
    label = next(element for element in scene.all_elements() if isinstance(element, Label))
    moved = Label((label.point[0] + scene.unit, label.point[1]), label.text, label.anchor, label.letter)
    gone = Label((scene.width, label.point[1] - 40 * scene.unit), "gone", "start")
    worse = Scene(scene.width, scene.height, (*scene.elements, moved, gone), scene.title, "", "en")
    found = collisions(worse)
    assert f"'{label.text}' covers '{label.text}'" in found
    assert "'gone' leaves the frame" in found


def middle_of_angle(group: Group) -> tuple[float, float]:
    """Half way between the tips of the two legs."""
    (shape,) = group.elements
    assert isinstance(shape, Polyline)
    (x1, y1), (x2, y2) = shape.points[1], shape.points[5]
    return (x1 + x2) / 2, (y1 + y2) / 2


@pytest.mark.parametrize("values", [place(name) for name in PLACES] + list(made_up(20, "ring-plan")))
def test_neighbouring_angles_stand_a_chord_apart_on_the_frame_ring(values: Mapping[str, float]) -> None:
    scene = draw("ring-plan", values, words("en"))
    angles = [middle_of_angle(group) for group in scene.named("angle")]
    assert len(angles) == values["angle_count"]
    for here, there in zip(angles, [*angles[1:], angles[0]], strict=True):
        assert math.dist(here, there) == pytest.approx(values["angle_chord"], rel=1e-9)
    across = max(math.dist(here, there) for here, there in combinations(angles, 2))
    assert across <= values["frame_diameter"] * (1 + 1e-9)
    assert len(scene.named("bar")) == values["bars_between"] * values["angle_count"]


@pytest.mark.parametrize("values", [place(name) for name in PLACES] + list(made_up(20, "ring-plan")))
def test_what_the_ring_plan_measures_is_as_long_as_its_number(values: Mapping[str, float]) -> None:
    scene = draw("ring-plan", values, words("en"))
    lengths = [element.length for element in scene.all_elements() if isinstance(element, Dimension)]
    wanted = [values[name] for name in ("angle_chord", "inside_diameter", "frame_diameter", "outside_diameter")]
    assert lengths == pytest.approx(wanted, rel=1e-9)
    (arc,) = [element for element in scene.all_elements() if isinstance(element, ArcDimension)]
    assert arc.length == pytest.approx(values["angle_spacing"], rel=1e-9)


@pytest.mark.parametrize("values", [place(name) for name in PLACES] + list(made_up(20, "frame-elevation")))
def test_what_the_elevation_measures_is_as_long_as_its_number(values: Mapping[str, float]) -> None:
    scene = draw("frame-elevation", values, words("en"))
    lengths = [element.length for element in scene.all_elements() if isinstance(element, Dimension)]
    names = [
        "angle_spacing",
        *(["bar_spacing"] if values["bars_between"] else []),
        "wall_height",
        "hoop_spacing_closing",
    ]
    assert lengths == pytest.approx([values[name] for name in names], rel=1e-9)
    assert len(scene.named("hoop")) == values["hoop_count"]


def spans(scene: Scene, name: str) -> list[tuple[float, float, float]]:
    """Left end, right end and level of the first part of each group."""
    found = []
    for group in scene.named(name):
        shape = group.elements[0]
        assert isinstance(shape, Rect)
        found.append((shape.corner[0], shape.corner[0] + shape.width, shape.corner[1] + shape.height / 2))
    return found


@pytest.mark.parametrize("name", PLACES)
def test_laps_are_staggered_and_neighbours_more_than_a_lap_apart(name: str) -> None:
    values = place(name)
    scene = draw("frame-elevation", values, words("en"))
    laps = spans(scene, "lap")
    assert len(laps) == values["hoop_count"]
    for left, right, _ in laps:
        assert right - left == pytest.approx(values["lap_length"])
    for (left, right, _), (next_left, next_right, _) in pairwise(laps):
        assert max(next_left - right, left - next_right) > values["lap_length"]


@pytest.mark.parametrize("name", PLACES)
def test_hoops_stand_at_their_gap_from_foot_to_top(name: str) -> None:
    values = place(name)
    scene = draw("frame-elevation", values, words("en"))
    levels = [level for _, _, level in spans(scene, "hoop")]
    assert levels[-1] - levels[0] == pytest.approx(values["wall_height"])
    for low, high in pairwise(levels):
        assert high - low == pytest.approx(values["hoop_spacing_closing"])


@pytest.mark.parametrize("values", [place(name) for name in PLACES] + list(made_up(20, "hoop-lap")))
def test_the_two_ends_of_a_hoop_overlap_by_the_lap(values: Mapping[str, float]) -> None:
    scene = draw("hoop-lap", values, words("en"))
    (upper_left, _, upper), (_, lower_right, lower) = spans(scene, "end")
    assert lower_right - upper_left == pytest.approx(values["lap_length"])
    assert upper - lower == pytest.approx(values["hoop_diameter"] / 1000)  # side by side, touching
    assert len(scene.named("tie")) == 3


def digits(text: str) -> set[str]:
    return {character for character in text if character.isdigit()}


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("key", FIGURES)
def test_titles_and_descriptions_give_no_number_away(key: str, language: str) -> None:
    scene = draw(key, place("hill-school"), words(language))
    assert scene.title
    assert len(scene.description) > 100
    assert not digits(scene.title + scene.description)


@pytest.mark.parametrize("key", FIGURES)
def test_both_languages_draw_the_same_steel_and_the_same_numbers(key: str) -> None:
    english, hindi = (draw(key, place("hill-school"), words(language)) for language in LANGUAGES)
    for name in ("angle", "bar", "hoop", "lap", "end", "tie"):
        assert len(english.named(name)) == len(hindi.named(name))
    numbers = [
        sorted(
            shape.text.split("\u00a0")[0]
            for shape in shapes(scene)
            if isinstance(shape, Label) and shape.letter == "value"
        )
        for scene in (english, hindi)
    ]
    assert numbers[0] == numbers[1]
    assert numbers[0] or FIGURES[key].spot or not FIGURES[key].needs
    assert [area.outline for area in english.areas] == [area.outline for area in hindi.areas]


def test_a_needed_number_that_is_missing_is_named() -> None:
    values = {name: value for name, value in place("hill-school").items() if name != "lap_length"}
    with pytest.raises(KeyError, match="lap_length"):
        draw("hoop-lap", values, words("en"))


def test_needs_are_names_of_the_calculation_module() -> None:
    assert [name for name in NEEDED if name not in BOOK.givens and name not in BOOK.quantities] == []
