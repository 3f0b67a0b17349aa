"""The two writers: sound markup, and the same texts at the same places on the page and in print."""

from __future__ import annotations

import io
import re
import sys
from dataclasses import replace
from itertools import pairwise
from math import cos, radians, sin
from xml.etree import ElementTree

import pytest
from reportlab.pdfgen.canvas import Canvas

from generator.figures import FIGURES, Scene, draw, pdf, pdf_height, svg
from generator.figures.hatch import strokes
from generator.figures.ink import HANDS, PENS, HatchKind, Ink, Letter
from generator.figures.parts import shapes
from generator.figures.scene import VIEW, Arc, Circle, Hatch, Label, Line, Rect
from tests.figures.tanks import LANGUAGES, made_up, place, words
from tests.sheets.plain_drawing import plain

SVG = "{http://www.w3.org/2000/svg}"
WIDTH = 300.0


def drawn(key: str, language: str) -> Scene:
    return draw(key, place("hill-school"), words(language))


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("key", FIGURES)
def test_the_markup_is_sound_and_says_what_it_is(key: str, language: str) -> None:
    scene = drawn(key, language)
    markup = svg(scene, "one")
    assert "\n" not in markup
    root = ElementTree.fromstring(markup)  # noqa: S314  # our own markup
    assert root.tag == f"{SVG}svg"
    assert root.get("role") == ("group" if scene.areas else "img")
    assert root.get("lang") == language
    assert root.get("width") is None
    left, top, width, height = map(float, (root.get("viewBox") or "").split())
    assert (left, top, width) == (0, 0, VIEW)
    assert height == pytest.approx(scene.height / scene.width * VIEW, abs=0.01)
    named = {element.get("id"): element.text for element in root.iter() if element.get("id")}
    assert [named[name] for name in (root.get("aria-labelledby") or "").split()] == [scene.title, scene.description]
    assert root[0].tag == f"{SVG}title"


@pytest.mark.parametrize("key", FIGURES)
def test_ids_are_unique_also_where_a_page_holds_the_drawing_twice(key: str) -> None:
    scene = drawn(key, "en")
    ids = re.findall(r'\bid="([^"]*)"', svg(scene, "one") + svg(scene, "two"))
    assert len(ids) == len(set(ids)) == 4


@pytest.mark.parametrize("key", FIGURES)
def test_no_number_has_more_than_two_decimals(key: str) -> None:
    for values in (place("hill-school"), *made_up(10, key)):
        markup = re.sub(r">[^<]*<|#[0-9a-f]{6}", "><", svg(draw(key, values, words("en")), "one"))
        assert re.findall(r"\d\.\d{3,}|\de-?\d|nan|inf\b", markup) == []


def test_texts_are_escaped() -> None:
    label = Label((0.5, 0.5), 'a < b & "c"')
    scene = Scene(1, 1, (label,), "<title>", "</desc><script>", "en")
    markup = svg(scene, "p")
    root = ElementTree.fromstring(markup)  # noqa: S314  # our own markup
    assert "<script" not in markup
    assert [text.text for text in root.iter(f"{SVG}text")] == [label.text]
    assert root[0].text == "<title>"


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("key", FIGURES)
def test_page_and_print_carry_the_same_texts_at_the_same_places(
    key: str, language: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    scene = drawn(key, language)
    printed: list[tuple[str, str, float, float]] = []

    def note(canvas: Canvas, x: float, y: float, text: str, font: str, size: float, anchor: str) -> None:
        del canvas, font, size
        printed.append((text, anchor, x / WIDTH * VIEW, (pdf_height(scene, WIDTH) - y) / WIDTH * VIEW))

    # The package offers a function of the module's name, so the module itself is asked for by its full name.
    monkeypatch.setattr(sys.modules["generator.figures.pdf"], "draw_text", note)
    pdf(scene, Canvas(io.BytesIO()), 20, 30, WIDTH)
    root = ElementTree.fromstring(svg(scene, "p"))  # noqa: S314  # our own markup
    shown = [
        (text.text or "", text.get("text-anchor", "start"), float(text.get("x", "")), float(text.get("y", "")))
        for text in root.iter(f"{SVG}text")
    ]
    assert len(shown) > 4
    assert [text[:2] for text in shown] == [text[:2] for text in printed]
    for on_page, on_paper in zip(shown, printed, strict=True):
        assert on_page[2:] == pytest.approx(on_paper[2:], abs=0.006)


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("key", FIGURES)
def test_print_repeats_byte_for_byte_and_leaves_the_canvas_as_it_was(key: str, language: str) -> None:
    def document() -> bytes:
        out = io.BytesIO()
        canvas = Canvas(out, invariant=1, pageCompression=0)
        pdf(drawn(key, language), canvas, 20, 30, WIDTH)
        assert canvas.absolutePosition(0, 0) == (0, 0)
        canvas.save()
        return out.getvalue()

    first = document()
    assert first == document()
    assert first.startswith(b"%PDF")


def begun(operators: list[str]) -> int:
    """How many lines and outlines are begun."""
    return len(re.findall(r"\b(m|re)\b", " ".join(operators)))


def corners(operators: list[str], share: float) -> list[tuple[float, float]]:
    """Ends, corners and handles of all that operators draw, in order; rectangles by two corners."""
    found = []
    for numbers, sign in re.findall(r"((?:-?[\d.]+ )+)(m|l|c|re)\b", " ".join(operators)):
        of = [float(number) * share for number in numbers.split()]
        if sign == "re":
            of[2:] = of[0] + of[2], of[1] + of[3]
        found += list(zip(of[::2], of[1::2], strict=True))
    return found


@pytest.mark.parametrize("key", FIGURES)
def test_print_has_every_shape_where_plain_calls_of_the_library_put_it(key: str) -> None:
    scene = drawn(key, "en")
    bare = replace(scene, elements=tuple(shape for shape in shapes(scene) if not isinstance(shape, Label)))
    ours, theirs = Canvas(io.BytesIO()), Canvas(io.BytesIO())
    pdf(bare, ours, 0, 0, WIDTH)
    plain(bare, theirs, 0, 0, WIDTH)
    dots = [shape for shape in shapes(bare) if isinstance(shape, Circle) and PENS[shape.ink].stroke == "none"]
    assert begun(ours._code) == begun(theirs._code)
    (share,) = {float(line.split()[1]) for line in ours._code if line.startswith("q ")}
    near = [(round(x, 4), round(y, 4)) for x, y in corners(ours._code, share)]
    far = corners(theirs._code, 1.0)
    if not dots:
        assert len(near) == len(far)
        for one, other in zip(near, far, strict=True):
            assert one == pytest.approx(other, abs=0.1)
    step = share / 2 + 0.005
    for dot in dots:
        x, y = (part / scene.width * WIDTH for part in dot.centre)
        assert any(abs(x - left) <= step and abs(y - low) <= step for left, low in near)


def test_dots_are_round_ends_of_their_own_width_and_lines_of_one_ink_are_one_path() -> None:
    dots = tuple(Circle((0.1 * number, 0.5), 0.01, Ink.MORTAR) for number in range(1, 9))
    lines = tuple(Line((0, 0.1 * number), (1, 0.1 * number), Ink.WIRE) for number in range(1, 9))
    canvas = Canvas(io.BytesIO())
    pdf(Scene(1, 1, (*dots, *lines, *dots[:1]), "t", "d", "en"), canvas, 0, 0, VIEW)
    paths = [line for line in canvas._code if line.endswith(" S")]
    assert [path.count(" m ") for path in paths] == [8, 8, 1]
    pens = [line for line in canvas._code if " RG " in line]
    assert [("144 w" in pen, pen.endswith("1 J")) for pen in pens] == [(True, True), (False, False), (True, True)]


def test_no_path_is_longer_than_a_small_printer_can_hold() -> None:
    lines = tuple(Line((0, number / 1000), (1, number / 1000), Ink.WIRE) for number in range(1000))
    canvas = Canvas(io.BytesIO())
    pdf(Scene(1, 1, lines, "t", "d", "en"), canvas, 0, 0, VIEW)
    paths = [line.count(" m ") for line in canvas._code if line.endswith(" S")]
    assert sum(paths) == 1000
    assert max(paths) <= 300


def test_inks_differ_without_colour() -> None:
    """Steel is filled or heavily edged, earth, mortar and water are three kinds of marks."""
    square = ((0, 0), (1, 0), (1, 1), (0, 1))
    ground, mortar, water = (
        list(shapes(Scene(1, 1, (Hatch(square, kind),), "t", "d", "en")))
        for kind in (HatchKind.GROUND, HatchKind.MORTAR, HatchKind.WATER)
    )
    assert all(isinstance(line, Line) and line.start[1] != line.end[1] for line in ground)
    assert all(isinstance(line, Line) and line.start[1] == line.end[1] for line in water)
    assert not any(isinstance(dot, Line) for dot in mortar)
    assert min(map(len, (ground, mortar, water))) > 20
    assert PENS[Ink.STEEL].fill != "none"
    assert PENS[Ink.STEEL_EDGE].width > PENS[Ink.MEASURE].width


def test_strokes_fill_a_dented_outline_and_stay_inside() -> None:
    dented = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (5.0, 4.0), (0.0, 10.0))
    found = list(strokes(dented, 0, 1.0))
    assert len([y for (_, y), _ in found if y > 4]) == 12  # two strokes on each of six levels
    for (x1, y1), (x2, y2) in found:
        assert y1 == y2
        middle = (x1 + x2) / 2
        assert y1 <= 4 + abs(middle - 5) * 1.2


@pytest.mark.parametrize(("start", "sweep"), [(10.0, 100.0), (350.0, 40.0), (0.0, 270.0)])
def test_an_arc_ends_where_it_should(start: float, sweep: float) -> None:
    arc = Arc((5, 5), 2, start, sweep, Ink.MEASURE)
    markup = svg(Scene(10, 10, (arc,), "t", "d", "en"), "p")
    (path,) = re.findall(r' d="M([\d.]+),([\d.]+) A72 72 0 (\d) 0 ([\d.]+),([\d.]+)"', markup)
    assert int(path[2]) == (sweep > 180)
    for place_on, (x, y) in ((start, path[:2]), (start + sweep, path[3:])):
        assert float(x) == pytest.approx(180 + 72 * cos(radians(place_on)), abs=0.01)
        assert float(y) == pytest.approx(180 - 72 * sin(radians(place_on)), abs=0.01)


def test_texts_come_last_so_that_nothing_is_drawn_over_them() -> None:
    kinds = [isinstance(shape, Label) for shape in shapes(drawn("ring-plan", "hi"))]
    assert all(one <= two for one, two in pairwise(kinds))


def test_letters_are_large_enough_on_a_narrow_phone() -> None:
    assert min(HANDS[letter].size for letter in Letter) * 300 / VIEW >= 10.5


def test_a_rectangle_is_measured_from_its_lower_left_corner() -> None:
    markup = svg(Scene(10, 10, (Rect((1, 2), 3, 4, Ink.STEEL),), "t", "d", "en"), "p")
    assert '<rect x="36" y="144" width="108" height="144"/>' in markup
