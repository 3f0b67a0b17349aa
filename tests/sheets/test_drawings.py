"""Questions with their drawings on a worksheet: the record's letters, the question's numbers, no answer."""

from __future__ import annotations

from dataclasses import replace
from io import BytesIO
from typing import Any

import pytest
from pydantic import TypeAdapter
from pypdf import PdfReader

from generator.curriculum import CourseContent
from generator.curriculum.models import Question
from generator.exercises import Area, ChoiceItem, NumberItem, Person, SpotItem, make_item, make_set
from generator.figures import FIGURES, draw
from generator.problems import RefusedError
from generator.sheets import key_pdf, worksheet_pdf
from generator.sheets.drawings import Drawings, seed_of
from generator.sheets.figure_flow import Figure
from generator.sheets.flow import Space
from generator.sheets.page import sheet_pdf
from generator.sheets.questions import question
from generator.sheets.styles import PAGE_HEIGHT, PAGE_WIDTH
from tests.exercises.small import both
from tests.sheets.invented import ABOUT, part
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import recording

_READ: TypeAdapter[Any] = TypeAdapter(Question)


def spot(seed: int) -> SpotItem:
    drawing = FIGURES["fault-bent-hoop"].spot
    assert drawing is not None
    areas = tuple(Area(letter=letter, name=name) for letter, name in drawing.letters(seed).items())
    empty = ("",) * len(areas)
    return SpotItem(id="q", competency="c", text="?", figure="fault-bent-hoop", several=False, areas=areas,
                    labels=empty, right=(0,), why=empty)  # fmt: skip


@pytest.mark.parametrize("seed", [0, 3, 8])
def test_the_drawing_deals_the_things_to_the_letters_of_the_record(seed: int) -> None:
    drawing = FIGURES["fault-bent-hoop"].spot
    assert drawing is not None
    item = spot(seed)
    assert drawing.letters(seed_of(item)) == {area.letter: area.name for area in item.areas}


def test_a_drawing_that_was_changed_since_is_refused() -> None:
    item = spot(0)
    other = item.model_copy(update={"areas": (Area(letter="A", name="gone"), *item.areas[1:])})
    with pytest.raises(RefusedError, match="make the set anew"):
        seed_of(other)


@pytest.mark.parametrize("language", ["en", "hi"])
def test_a_worksheet_prints_the_drawings_of_its_questions(content: CourseContent, language: str) -> None:
    asked = tuple(question for question in content.asked["how-much-water"] if question.figure)
    assert [question.kind for question in asked] == ["spot"]
    small = replace(content, asked={**content.asked, "how-much-water": asked}, scenarios={})
    record = make_set(small, "how-much-water", [Person("Asha")], "s", language, tool="test")
    with recording() as made:
        worksheet_pdf(record, small)
    assert faults(made, PAGE_WIDTH, PAGE_HEIGHT) == []
    item = record.learners[0].items[0]
    assert isinstance(item, SpotItem)
    typed = [string.typed for string in made.strings]
    for area in item.areas:
        assert typed.count(area.letter) == 2, "once in the drawing, once in the answer box"


def test_a_drawing_shows_the_questions_own_number_and_hides_what_is_asked(content: CourseContent) -> None:
    data = {
        "id": "round", "competency": "ring-and-diameter", "kind": "number", "asks": "frame_diameter",
        "figure": "ring-plan",
        "given": {"inside_diameter": 2.7, "mesh_cover": 5, "inside_mesh_thickness": 8, "bar_diameter": 8},
        "answer": "within 5 mm",
        "text": both("{inside_diameter} {mesh_cover} {inside_mesh_thickness} {bar_diameter}"),
    }  # fmt: skip
    question = _READ.validate_python(data)
    newer = replace(content, questions={**content.questions, "round": question})
    words = content.words["en"]
    item = make_item(question, "s", words)
    assert isinstance(item, NumberItem)
    piece = Drawings(newer).of(item, "frame", words)
    assert piece is not None
    with recording() as made:
        sheet_pdf(ABOUT, [part([piece])])
    text = " ".join(made.text().split())
    assert "2.7 m" in text
    assert "A = ? m" in text
    assert item.shown_key not in text


def test_a_drawing_is_made_once_for_a_class(content: CourseContent) -> None:
    drawings, words = Drawings(content), content.words["en"]
    place = content.modules["frame"].place
    assert drawings._spot(spot(3), place, words) is drawings._spot(spot(3), place, words)


@pytest.mark.parametrize("language", ["en", "hi"])
def test_a_choice_of_worked_out_numbers_has_its_working_and_its_diagnosis(
    content: CourseContent, language: str
) -> None:
    data = {
        "id": "pick", "competency": "ring-and-diameter", "kind": "choice", "asks": "ring_length",
        "given": {"frame_diameter": 2.4}, "text": both("{frame_diameter}: how far?"),
        "misconceptions": ["ring_as_three_diameters", "radius_taken_for_diameter_in_ring"],
    }  # fmt: skip
    newer = replace(content, asked={**content.asked, "frame": (_READ.validate_python(data),)}, scenarios={})
    words = content.words[language]
    record = make_set(newer, "frame", [Person("Asha")], "s", language, tool="test")
    with recording() as made:
        key_pdf(record, newer)
    assert faults(made, PAGE_WIDTH, PAGE_HEIGHT) == []
    text = " ".join(made.text().split())
    for name in ("ring_as_three_diameters", "radius_taken_for_diameter_in_ring"):
        for part_of in ("mistake", "hill"):
            told = words.say_one_of("misconception", f"{name}.{part_of}")
            assert "".join(told.split()) in "".join(text.split())
    assert words.say_one_of("quantity", "ring_length") in text


def forms(data: bytes) -> list[tuple[int, float]]:
    """Every form that the pages of a document name: its object's number and its height."""
    found = []
    for page in PdfReader(BytesIO(data)).pages:
        named = page["/Resources"].get("/XObject", {})
        found += [(named.raw_get(name).idnum, float(named[name]["/BBox"][3])) for name in named]
    return found


def test_a_document_holds_a_drawing_once_however_many_sheets_show_it(content: CourseContent) -> None:
    place = content.values(content.modules["frame"].place)
    words = content.words["en"]
    # equal drawings that were made apart, and one in another size
    pieces = [Figure(draw("ring-plan", place, words)) for _ in range(3)]
    parts = [part([piece]) for piece in [*pieces, Figure(draw("ring-plan", place, words), 250.0)]]
    shown = [form for form in forms(sheet_pdf(ABOUT, parts)) if form[1] > 100]
    assert len(shown) == 4
    assert len(set(shown)) == 1
    other = sheet_pdf(ABOUT, [part([Figure(draw(key, place, words)) for key in ("ring-plan", "hoop-lap")])])
    assert len({form for form in forms(other) if form[1] > 100}) == 2


def test_what_stands_below_every_page_is_in_a_document_once(content: CourseContent) -> None:
    record = make_set(content, "how-much-water", [Person("Asha"), Person("Bir")], "s", "hi", tool="test")
    reader = PdfReader(BytesIO(made := worksheet_pdf(record, content)))
    low = [form for form in forms(made) if form[1] < 100]
    assert len(reader.pages) > 3
    assert len(low) == len(reader.pages)
    assert len(set(low)) == 1
    assert made == worksheet_pdf(record, content)


def choice(options: tuple[str, ...]) -> ChoiceItem:
    count = len(options)
    return ChoiceItem(id="q", competency="c", text="Which lap is closed?", several=False, options=options,
                      order=tuple(range(count)), right=(0,), why=("",) * count)  # fmt: skip


def test_a_high_drawing_stands_beside_its_answer_and_a_low_one_above(content: CourseContent) -> None:
    """Side by side only where that saves much of the page; the text and all options stay inside their box."""
    words = content.words["en"]
    item = choice(("The first", "The second, which is said in very many words that fill several lines", "None"))
    for highest, beside in ((60.0, False), (420.0, True)):
        figure = Space(highest)
        with recording() as made:
            sheet_pdf(ABOUT, [part([question("1", item, words, figure)])])
        assert faults(made, PAGE_WIDTH, PAGE_HEIGHT) == []
        answer = next(string for string in made.strings if string.typed == words.say("sheet.answer"))
        assert (answer.y > PAGE_HEIGHT - 350.0) == (beside or highest < 100.0)
        piece = question("1", item, words, Space(highest))
        assert (piece.fit(480.0) < highest + 60.0) == beside


def test_room_to_work_beside_a_drawing_is_as_high_as_the_drawing(content: CourseContent) -> None:
    item = NumberItem(id="q", competency="c", text="How many hoops?", asks="hoop_count", givens={}, key=12.0,
                      shown_key="12", rounded=12.0, absolute=0.0, relative=0.0, places=0, low=2.0, high=60.0,
                      unit="", wrong={})  # fmt: skip
    with recording() as made:
        sheet_pdf(ABOUT, [part([question("1", item, content.words["en"], Space(420.0))])])
    boxes = [top - low for _, left, low, right, top in made.shapes if left > 200.0 and right - left > 150.0]
    assert max(boxes) == pytest.approx(420.0, abs=1.0)
