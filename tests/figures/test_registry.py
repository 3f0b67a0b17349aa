"""Every drawing of the registry on many tanks of its own, in both languages: what any drawing has to keep.

Usually 100 tanks a drawing, and 500 with the tests that take many minutes. Each drawing gets tanks over the whole range
of every given behind its numbers, the ends of the ranges more often than chance would. The language changes from tank
to tank, so that the drawings of each kind are enough for both.
"""

from __future__ import annotations

import io
import re
from math import prod
from xml.etree import ElementTree

import pytest
from hypothesis import HealthCheck, Phase, assume, given, settings
from hypothesis import strategies as st
from reportlab.pdfgen.canvas import Canvas

from generator.calculations import BOOK
from generator.figures import FIGURES, Scene, draw, pdf, svg
from generator.formula import Given, OutOfRangeError
from tests.figures.tanks import LANGUAGES, place, words
from tests.figures.test_areas import apart
from tests.figures.test_drawings import collisions

SVG = "{http://www.w3.org/2000/svg}"
TANKS = pytest.mark.parametrize(
    "most", [pytest.param(100, id="100 tanks"), pytest.param(500, id="500 tanks", marks=pytest.mark.long)]
)


def seeds(key: str) -> st.SearchStrategy[dict[str, float]]:
    """The givens behind a drawing's numbers, each at one of its steps."""
    needs = FIGURES[key].needs
    names = dict.fromkeys(given for name in needs for given in (BOOK.needs(name) or (name,)))

    def steps(entry: Given) -> st.SearchStrategy[float]:
        count = round((entry.high - entry.low) / entry.step)
        return st.integers(0, count).map(lambda step: round(entry.low + step * entry.step, 6))

    return st.fixed_dictionaries({name: steps(BOOK.givens[name]) for name in names})


def enough(key: str, most: int) -> int:
    """So many tanks, or twice as many as there are where a drawing needs little."""
    names = dict.fromkeys(given for name in FIGURES[key].needs for given in (BOOK.needs(name) or (name,)))
    entries = [BOOK.givens[name] for name in names]
    return min(most, 20 + 2 * prod(round((entry.high - entry.low) / entry.step) + 1 for entry in entries))


@TANKS
@pytest.mark.parametrize("key", FIGURES)
def test_texts_lines_and_places_keep_apart_in_any_tank_and_the_markup_is_sound(key: str, most: int) -> None:
    @settings(
        max_examples=enough(key, most),
        phases=[Phase.explicit, Phase.generate],
        suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow],
    )
    @given(seeds(key), st.sampled_from(LANGUAGES), st.integers(0, 40))
    def holds(givens: dict[str, float], language: str, seed: int) -> None:
        try:
            values = BOOK.evaluate(givens, FIGURES[key].needs)
        except OutOfRangeError:
            assume(False)
        scene = draw(key, values, words(language), seed)
        assert collisions(scene) == []
        assert apart(scene) == []
        if seed % 8:  # the writer's part of the work is the longer one, and depends little on the tank
            return
        root = ElementTree.fromstring(svg(scene, "p"))  # noqa: S314  # our own markup
        named = {element.get("id"): element.text for element in root if element.get("id")}
        assert named == {"p-title": scene.title, "p-desc": scene.description}
        assert [root[0].tag, root[1].tag] == [f"{SVG}title", f"{SVG}desc"]

    holds()


def _of_the_place(key: str, language: str = "en") -> Scene:
    return draw(key, place("hill-school"), words(language))


def test_two_drawings_of_a_page_share_no_id_whichever_they_are() -> None:
    tank = st.sampled_from(tuple(FIGURES))

    @settings(max_examples=60)
    @given(tank, tank)
    def holds(one: str, other: str) -> None:
        page = "".join(svg(_of_the_place(key), f"{key}-{place}") for place, key in enumerate((one, other)))
        ids = re.findall(r'\bid="([^"]*)"', page)
        assert len(ids) == len(set(ids)) == 4
        for labels in re.findall(r'aria-labelledby="([^"]*)"', page):
            assert set(labels.split()) <= set(ids)

    holds()


def test_all_drawings_in_one_document_give_the_same_bytes_twice() -> None:
    def document() -> bytes:
        out = io.BytesIO()
        canvas = Canvas(out, invariant=1)
        for key in FIGURES:
            for language in LANGUAGES:
                pdf(_of_the_place(key, language), canvas, 20, 30, 300)
            canvas.showPage()
        canvas.save()
        return out.getvalue()

    first = document()
    assert first == document()
    assert first.count(b"/Type /Page\n") == len(FIGURES)
