"""Worked solutions on pages: inner names of a formula in the reader's words, symbols with their subscripts."""

from __future__ import annotations

import pytest

from generator.calculations import BOOK
from generator.curriculum.word_files import words_of
from generator.site.markup import short_steps, steps
from tests.three_modules import ROOT

WEATHER = {"concrete_temperature": 30.0, "air_temperature": 35.0, "humidity": 30.0, "wind_speed": 20.0}


@pytest.mark.parametrize("language", ["en", "hi"])
def test_a_name_inside_a_formula_is_said_in_the_readers_words(language: str) -> None:
    name = f"course/words/{language}.yaml"
    words = words_of(name, language, (ROOT / name).read_bytes())
    trace = BOOK.trace("evaporation_rate", WEATHER)
    warmth = words.say_one_of("in_formula", "warmth_of_mortar")
    for markup in (steps(trace, words), short_steps(trace, words)):
        assert f"{warmth} = " in markup or f">{warmth}<" in markup
        assert "warmth_of_mortar" not in markup
    assert f"{warmth} = T<sub>vc</sub> + 18" in steps(trace, words)
    assert "T_vc" not in steps(trace, words).split("<math")[0]
