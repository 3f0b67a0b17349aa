"""Drawings to read: what is asked for stands nowhere, and the rest stays as it was."""

from __future__ import annotations

import re

import pytest

from generator.calculations import BOOK
from generator.figures import FIGURES, Scene, draw, draw_asking, svg
from generator.figures.marks import shown_names
from generator.figures.parts import shapes
from generator.figures.scene import Dimension, Label
from generator.figures.shown import shown
from tests.figures.tanks import LANGUAGES, made_up, place, words
from tests.figures.test_drawings import collisions

WITH_NUMBERS = tuple(key for key in FIGURES if shown_names(key, place("hill-school"), words("en")))


def texts(scene: Scene) -> list[str]:
    return [shape.text for shape in shapes(scene) if isinstance(shape, Label)]


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("key", WITH_NUMBERS)
def test_each_number_of_a_drawing_can_be_asked_for_and_then_stands_nowhere(key: str, language: str) -> None:
    values, said = place("hill-school"), words(language)
    names = shown_names(key, values, said)
    plain = draw(key, values, said)
    for asked in names:
        scene = draw_asking(key, values, said, [asked])
        answer = shown(asked, values, said)
        others = [shown(name, values, said) for name in names if name != asked]
        assert texts(plain).count(answer) == 1 + others.count(answer)
        assert texts(scene).count(answer) == others.count(answer)
        assert [text for text in texts(scene) if text.startswith("A = ?")] != []
        if answer not in others:
            assert not re.search(rf"(?<![\d.]){re.escape(answer)}", svg(scene, "p"))
        assert collisions(scene) == []


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("key", WITH_NUMBERS)
def test_titles_and_descriptions_stay_the_same_and_give_nothing_away(key: str, language: str) -> None:
    values, said = place("hill-school"), words(language)
    names = shown_names(key, values, said)[:8]
    plain, scene = draw(key, values, said), draw_asking(key, values, said, names)
    assert (scene.title, scene.description) == (plain.title, plain.description)
    told = scene.title + scene.description
    for name in names:
        number = shown(name, values, said).split("\u00a0")[0]
        assert number not in told
    assert [text[:5] for text in texts(scene) if " = ?" in text] != []
    assert len([text for text in texts(scene) if " = ?" in text]) == len(names)


@pytest.mark.parametrize("key", WITH_NUMBERS)
def test_what_is_asked_for_is_still_drawn_to_scale(key: str) -> None:
    values, said = place("lower-terrace-herders"), words("en")
    names = shown_names(key, values, said)[:8]
    lengths = [
        [element.length for element in scene.all_elements() if isinstance(element, Dimension)]
        for scene in (draw(key, values, said), draw_asking(key, values, said, names))
    ]
    assert lengths[0] == pytest.approx(lengths[1])


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("key", WITH_NUMBERS)
def test_question_marks_keep_apart_in_any_tank(key: str, language: str) -> None:
    for values in made_up(25, key):
        names = shown_names(key, values, words(language))[:8]
        assert collisions(draw_asking(key, values, words(language), names)) == []


def test_letters_follow_the_order_that_is_asked() -> None:
    asked = ["wall_height", "angle_spacing"]
    scene = draw_asking("frame-elevation", place("hill-school"), words("en"), asked)
    found = sorted(text for text in texts(scene) if " = ?" in text)
    assert found == [f"A = ?\u00a0{BOOK.entry('wall_height').unit}", "B = ?\u00a0m"]


def test_a_number_that_the_drawing_does_not_show_is_refused_with_what_it_shows() -> None:
    values = place("hill-school")
    with pytest.raises(ValueError, match="'hoop-lap' does not show 'inside_diameter'; it shows lap_length"):
        draw_asking("hoop-lap", values, words("en"), ["inside_diameter"])
    with pytest.raises(ValueError, match="1 to 8 numbers, not 0"):
        draw_asking("hoop-lap", values, words("en"), [])
    with pytest.raises(KeyError):
        draw_asking("no-such-drawing", values, words("en"), ["lap_length"])
