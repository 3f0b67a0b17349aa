"""Places to choose between: a letter for each, none says what is wrong, and a finger hits it."""

from __future__ import annotations

import io
import re
from collections.abc import Mapping
from itertools import combinations
from xml.etree import ElementTree

import pytest
from reportlab.pdfgen.canvas import Canvas

from generator.curriculum.models import SpotQuestion
from generator.exercises import make_item, mark_spot
from generator.exercises.items import SpotItem
from generator.exercises.mark import Verdict
from generator.figures import FIGURES, Scene, draw, hot_areas, pdf, svg
from generator.figures.areas import LETTERS, TARGET, Spot, add_area, around
from generator.figures.ink import Ink
from generator.figures.layout import Box
from generator.figures.page import DISC, Page
from generator.figures.parts import shapes
from generator.figures.scene import VIEW, Area, Circle, Label, Line, Rect
from generator.words import Words
from tests.figures.tanks import LANGUAGES, place, words

NAMES = ("gone", "sound-1", "sound-2", "sound-3")


def _paint(values: Mapping[str, float], words: Words, order: tuple[str, ...]) -> Scene:
    del values
    page = Page(0.01, 100.0)
    for column, name in enumerate(order):
        box = Rect(page.at(20 + 80 * column, 40), 0.1, 0.2, Ink.FACE)
        page.add(box)
        add_area(page, name, around([box], page.unit), (30 + 80 * column, 70))
    return page.scene("A row of boxes", "Four boxes.", words)


ROW = Spot("row", (), NAMES, _paint)


def test_letters_follow_the_places_and_the_names_are_dealt_by_seed() -> None:
    seen = set()
    for seed in range(40):
        scene = ROW.draw({"figure_seed": float(seed)}, words("en"))
        assert "".join(area.letter for area in scene.areas) == "ABCD"
        assert {area.letter: area.name for area in scene.areas} == ROW.letters(seed)
        assert sorted(area.name for area in scene.areas) == sorted(NAMES)
        seen.add(next(area.letter for area in scene.areas if area.name == ROW.fault))
    assert seen == set("ABCD")


def test_an_area_holds_its_thing_and_is_large_enough_for_a_finger_but_stays_in_the_frame() -> None:
    page = Page(0.01, 100.0)
    add_area(page, "tiny", Box(0.0, 0.0, 0.01, 0.01), (30, 30))
    add_area(page, "large", Box(1.0, 0.2, 2.0, 0.9), (60, 30))
    tiny, large = (box_of(area) for area in page.areas)
    assert tiny == Box(0.0, 0.0, pytest.approx(TARGET * 0.01), pytest.approx(TARGET * 0.01))
    assert large == Box(1.0, 0.2, 2.0, 0.9)


def test_around_takes_in_every_part_with_a_margin() -> None:
    parts = [Line((1, 2), (3, 2), Ink.FACE), Circle((5, 5), 1, Ink.FACE)]
    box = around(parts, 0.1, margin=1.0)
    assert (box.left, box.low, box.right, box.high) == pytest.approx((0.9, 1.9, 6.1, 6.1), abs=0.02)


def box_of(area: Area) -> Box:
    xs, ys = zip(*area.outline, strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys))


def test_the_page_makes_a_button_of_each_area_that_says_its_letter_only() -> None:
    scene = ROW.draw({}, words("en"))
    markup = svg(scene, "one")
    root = ElementTree.fromstring(markup)  # noqa: S314  # our own markup
    assert root.get("role") == "group"  # nothing inside an image can be reached
    buttons = [element for element in root.iter() if element.get("role") == "button"]
    assert [button.get("aria-label") for button in buttons] == list("ABCD")
    assert [button.get("data-area") for button in buttons] == list("ABCD")
    assert {button.get("tabindex") for button in buttons} == {"0"}
    for name in NAMES:
        assert name not in markup
    for button, area in zip(buttons, scene.areas, strict=True):
        points = [tuple(map(float, pair.split(","))) for pair in (button[0].get("points") or "").split()]
        wanted = [(x / scene.unit, (scene.height - y) / scene.unit) for x, y in area.outline]
        assert [pytest.approx(point, abs=0.01) for point in wanted] == points
        assert float(button[1].get("r") or 0) * 2 * 352 / VIEW > 20  # its letter can be pressed as well


def test_without_a_question_the_letters_stay_and_the_buttons_go() -> None:
    markup = svg(ROW.draw({}, words("en")), "one", live=False)
    assert 'role="img"' in markup
    assert "data-area" not in markup
    assert re.findall(r">([A-H])</text>", markup) == list("ABCD")


def test_print_carries_each_letter_in_a_disc() -> None:
    scene = ROW.draw({}, words("en"))
    discs = [shape for shape in shapes(scene) if isinstance(shape, Circle) and shape.ink == Ink.NUMBER_DISC]
    letters = [shape for shape in shapes(scene) if isinstance(shape, Label) and shape.letter == "disc"]
    assert [label.text for label in letters] == list("ABCD")
    assert [disc.centre for disc in discs] == [area.mark for area in scene.areas]
    out = io.BytesIO()
    canvas = Canvas(out, invariant=1, pageCompression=0)
    pdf(scene, canvas, 0, 0, 300)
    canvas.save()
    assert b"gone" not in out.getvalue()


def test_the_course_is_told_what_stands_at_each_letter() -> None:
    assert list(hot_areas()) == [key for key, kind in FIGURES.items() if kind.spot]
    for key, kind in FIGURES.items():
        for seed in (0, 1, 5) if kind.spot else ():
            drawn = draw(key, place("lower-terrace-herders"), words("hi"), seed).areas
            assert {area.letter: area.name for area in drawn} == hot_areas(seed)[key]


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("key", [key for key, kind in FIGURES.items() if kind.spot])
def test_nothing_that_a_reader_gets_names_the_fault(key: str, language: str) -> None:
    spot = FIGURES[key].spot
    assert spot is not None
    scene = draw(key, place("hill-school"), words(language))
    assert len(scene.areas) == len(spot.names) >= 4
    markup = svg(scene, "p")
    assert not [name for name in (key, *spot.names) if re.search(rf"[\"> ]{name}[\"<]", markup)]
    told = f"{scene.title} {scene.description}".lower()
    assert [word for word in GIVEAWAYS[key] if re.search(rf"(^|\W){word}", told)] == []


GIVEAWAYS = {
    "fault-fill-under-edge": ("fill", "loose", "edge", "भराई", "भराव", "किनारा"),
    "fault-missing-starter": ("missing", "without", "no ", "बिना", "नहीं"),
    "fault-bent-hoop": ("bent", "oval", "not round", "टेढ़", "अंडा", "गोल नहीं"),
    "fault-open-lap": ("open", "gap", "खुल", "अलग"),
    "fault-laps-in-line": ("in one line", "one above", "एक सीध"),
    "fault-mesh-belly": ("belly", "bulge", "loose", "फूल", "पेट", "ढील"),
    "fault-void": ("void", "hole", "empty", "पोल", "छेद", "खाली"),
    "fault-thin-cover": ("thin", "too near", "cover", "पतल", "कम", "कवर"),
    "fault-dry-strip": ("dry", "bare", "fallen", "सूख", "खुल", "गिर"),
    "fault-shadow-cracks": ("crack", "mesh", "square", "दरार", "जाली", "खान"),
    "fault-rust-run": ("rust", "brown", "जंग", "भूर"),
    "fault-leaking-joint": ("leak", "water", "damp", "wet", "रिस", "पानी", "गील"),
    "fault-short-lap": ("short", "small", "lap", "छोट", "कम", "लैप"),
    "fault-tie-tail": ("tail", "sticks", "stands out", "sharp", "पूँछ", "बाहर", "नुकील"),
    "fault-bare-pipe": ("flange", "collar", "bare", "without", "कॉलर", "बिना", "नहीं"),
    "fault-bags-on-ground": ("ground", "plank", "damp", "floor", "ज़मीन", "फट्ट", "सील", "फर्श"),
    "fault-silted-sand": ("silt", "thick", "much", "dirty", "मिट्टी", "मोट", "ज़्यादा", "गंद"),
    "fault-bare-prop": ("board", "sole", "soil", "sink", "bare", "तख्त", "मिट्टी", "धँस", "बिना"),
    "fault-washed-foot": ("foot", "wash", "hollow", "channel", "जड़", "नाली", "गड्ढ", "बह"),
    "fault-open-lid": ("lock", "open", "without", "ताल", "खुल", "बिना"),
}
"""Words, or their beginnings, that would tell what is wrong; a new drawing needs its own."""


@pytest.mark.parametrize("key", [key for key, kind in FIGURES.items() if kind.spot])
def test_the_fault_moves_and_is_drawn_where_its_letter_is(key: str) -> None:
    spot = FIGURES[key].spot
    assert spot is not None
    scenes = [draw(key, place("hill-school"), words("en"), seed) for seed in range(12)]
    letters = [next(area.letter for area in scene.areas if area.name == spot.fault) for scene in scenes]
    assert len(set(letters)) >= 3
    assert len({svg(scene, "p", live=False) for scene in scenes}) >= len(set(letters))


def test_letters_are_those_that_answers_know() -> None:
    from generator.exercises import LETTERS as ANSWERS

    assert LETTERS == ANSWERS


def apart(scene: Scene) -> list[str]:
    """Areas that can't be told apart by a finger, and letters that stand in the way."""
    boxes = [(area.letter, box_of(area)) for area in scene.areas]
    found = [f"{a} over {b}" for (a, one), (b, two) in combinations(boxes, 2) if one.overlaps(two)]
    for area in scene.areas:
        x, y = area.mark
        disc = Box(x, y, x, y).grown(DISC * scene.unit)
        wide, high = (
            edge / scene.unit + 1e-6
            for edge in (box_of(area).right - box_of(area).left, box_of(area).high - box_of(area).low)
        )
        found += [] if min(wide, high) >= TARGET else [f"area {area.letter} is too small"]
        found += [f"letter {area.letter} on {b}" for b, box in boxes if b != area.letter and disc.overlaps(box)]
        found += [] if Box(0, 0, scene.width, scene.height).holds(disc) else [f"letter {area.letter} leaves the frame"]
    return found


@pytest.mark.parametrize("key", [key for key, kind in FIGURES.items() if kind.spot])
def test_a_question_about_the_drawing_has_the_letters_that_stand_there(key: str) -> None:
    """A click on the fault of the page is the right answer, and on anything else it is not."""
    spot = FIGURES[key].spot
    assert spot is not None
    said = {"en": "Something.", "hi": "कुछ।"}
    areas = tuple({"name": name, "text": said, "right": name == spot.fault, "why": said} for name in spot.names)
    base = {"id": "find-it", "competency": "finding", "kind": "spot", "figure": key, "text": said, "areas": areas}
    item = make_item(SpotQuestion.model_validate(base), "seed", words("en"))
    assert isinstance(item, SpotItem)
    drawn = {area.letter: area.name for area in draw(key, place("hill-school"), words("en")).areas}
    assert {area.letter: area.name for area in item.areas} == drawn
    for number, area in enumerate(item.areas):
        assert (mark_spot(item, [number]).verdict == Verdict.RIGHT) == (drawn[area.letter] == spot.fault)
