"""Every handout as it is shipped: laid out well in both languages, true to the calculation module, and true in size."""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Iterator
from io import BytesIO
from math import ceil
from pathlib import Path

import pytest
from pypdf import PdfReader
from reportlab.lib.units import mm

from generator.calculations import BOOK
from generator.calculations.chlorine_methods import DAY_OF_HOLDING
from generator.calculations.cover import LEAST_BAR_COVER
from generator.calculations.disinfection import PH_READY
from generator.calculations.leak_judgement import COARSEST_STEP, PASS_FALL, PASS_SHARE
from generator.curriculum import CourseContent, TableBlock, load
from generator.curriculum.calls import IN_TEXTS, Call, calls
from generator.curriculum.lessons import ALL_CALLS
from generator.curriculum.line_marks import Kept
from generator.figures.faults import FAULTS
from generator.figures.rulers import RULERS
from generator.figures.sample_panel import PLACES
from generator.formula import Quantity, show, show_full
from generator.plans import sections
from generator.sheets import handout_pdf
from generator.sheets.card_flow import Card
from generator.sheets.page import A4
from generator.sheets.ruler_flow import CHECK
from generator.sheets.styles import MARGIN, TEXT_WIDTH
from tests.commands.course_copy import course_copy
from tests.sheets.conftest import LONGEST_NAMES
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import Recording, recording
from tests.three_modules import ROOT

LANGUAGES = ("en", "hi")
NEEDED = {
    "step-cards", "batch-card", "cutting-list", "mesh-layout", "stick", "cover-gauge", "curing-log", "leak-test-log",
    "first-filling-card", "disinfection-card", "hold-point-register", "maintenance-calendar", "site-checklist",
    "fault-album", "sample-panel",
}  # fmt: skip
"""What a trainer carries up the hill, beside the ready reckoner."""
DECIDED = {
    "1 mm": PASS_FALL, "0.1 %": PASS_SHARE, "5 mm": LEAST_BAR_COVER, "24 hours": DAY_OF_HOLDING,
    "24 घंटे": DAY_OF_HOLDING, "8.5": PH_READY,
}  # fmt: skip
"""Numbers that are typed on a sheet and stand in the calculation module as constants."""
HABITS = {
    "half a millimetre", "आधा मिलीमीटर", "6 %", "14 days", "14 दिन", "100 %", "1 m", "10 mm", "50 mm", "300 mm",
    "400 mm", "150 to 200 mm", "150 से 200 mm",
}  # fmt: skip
"""Usual practice with no quantity behind it: tolerances of a tape, the size of a sample, print at full size."""


@pytest.fixture(scope="module")
def made(content: CourseContent) -> dict[tuple[str, str], tuple[Recording, bytes]]:
    """Every handout in both languages, once."""
    return {(name, language): _recorded(name, language, content) for name in content.handouts for language in LANGUAGES}


def _recorded(name: str, language: str, content: CourseContent) -> tuple[Recording, bytes]:
    with recording() as found:
        data = handout_pdf(name, language, content)
    return found, data


def _squeezed(text: str) -> str:
    return re.sub(r"\s+", "", text)


def _template(name: str, language: str) -> str:
    """A template as a tank sees it that has all parts, as those have that the course ships sheets for."""
    text = (ROOT / "handouts" / f"{name}.{language}.md").read_text("utf-8")
    asked = [call for call in calls(text, ALL_CALLS) if isinstance(call, Call)]
    return Kept(text, asked, lambda part: True).words(0, len(text))


def _calls(name: str, language: str) -> Iterator[Call]:
    text = _template(name, language)
    for found in calls(text, IN_TEXTS):
        if isinstance(found, Call):
            yield found


def test_all_that_a_trainer_carries_is_there(content: CourseContent) -> None:
    assert set(content.handouts) >= NEEDED


def test_nothing_overflows_and_the_same_input_gives_the_same_bytes(
    made: dict[tuple[str, str], tuple[Recording, bytes]], content: CourseContent
) -> None:
    for (name, language), (recorded, data) in made.items():
        assert faults(recorded, *A4) == [], (name, language)
        assert handout_pdf(name, language, content) == data, (name, language)


def test_every_page_says_what_it_is(
    made: dict[tuple[str, str], tuple[Recording, bytes]], content: CourseContent
) -> None:
    for (name, language), (recorded, data) in made.items():
        words, title = content.words[language], content.handouts[name].title[language]
        for page in range(1, recorded.pages + 1):
            text = _squeezed(recorded.text(page))
            assert _squeezed(words.say("sheet.page_of", page=page, pages=recorded.pages)) in text, (name, page)
            assert _squeezed(title) in text
            assert content.course.version in text
        reader = PdfReader(BytesIO(data))
        assert reader.metadata is not None
        assert reader.metadata.title == title
        content_hash = str(reader.metadata["/Keywords"]).rpartition(" ")[2]
        assert all(content_hash in _squeezed(recorded.text(page)) for page in range(1, recorded.pages + 1))
        assert reader.outline
        assert reader.trailer["/Root"]["/Lang"] == language
        fonts = [font.get_object() for page in reader.pages for font in page["/Resources"]["/Font"].values()]
        assert fonts
        assert all("/FontFile2" in font["/FontDescriptor"] for font in fonts), (name, language)


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_curing_log_has_a_row_for_each_wet_day_however_many_its_tank_needs(tmp_path: Path, language: str) -> None:
    folder = course_copy(tmp_path)
    place = folder / "course" / "places" / "lower-terrace-herders.yaml"
    for blended, hot, days in ((0, 0, 14), (1, 1, 28)):
        text = place.read_text("utf-8")
        text = re.sub(r"blended_cement: \S+", f"blended_cement: {blended}", text)
        place.write_text(re.sub(r"hot_dry: \S+", f"hot_dry: {hot}", text), "utf-8")
        content = load(folder).content
        assert content is not None
        assert content.numbers("curing-log", "lower-terrace-herders")["curing_days"] == days
        recorded, _ = _recorded("curing-log", language, content)
        assert faults(recorded, *A4) == []
        bold = [string.typed for string in recorded.strings if string.x < MARGIN + 10 and string.typed.isdecimal()]
        assert bold == [str(day) for day in range(1, days + 1)]


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_sample_panel_is_read_at_the_same_places_on_sheet_drawing_and_scheme(
    made: dict[tuple[str, str], tuple[Recording, bytes]], content: CourseContent, language: str
) -> None:
    """Each place of the drawing on both faces, which are as many readings as whoever leads the work has to show."""
    words = [string.typed for string in made["sample-panel", language][0].strings]
    rows = [typed for typed in words if re.fullmatch(r"[A-Z], \S+", typed)]
    assert [row[0] for row in rows] == [letter for letter in PLACES for _ in ("inside", "outside")]
    rules = [scheme.panel for scheme in content.schemes.values() if scheme.panel is not None]
    assert [rule.readings for rule in rules] == [len(rows)]
    note = content.words[language].say_one_of("figure", "sample-panel.note")
    assert all(letter in note for letter in PLACES)


def test_the_hash_changes_with_the_sheets_own_text_alone(content: CourseContent) -> None:
    with_edit = dict(content.sources) | {"handouts/curing-log.en.md": b"changed"}
    changed = dataclasses.replace(content, sources=with_edit)
    assert changed.sources_of_handout("curing-log") != content.sources_of_handout("curing-log")
    assert changed.sources_of_handout("batch-card") == content.sources_of_handout("batch-card")


def test_numbers_are_those_of_the_calculation_module(
    made: dict[tuple[str, str], tuple[Recording, bytes]], content: CourseContent
) -> None:
    asked = 0
    for (name, language), (recorded, _) in made.items():
        text, words = _squeezed(recorded.text()), content.words[language]
        for call in _calls(name, language):
            if call.name == "plain":
                continue
            number = content.numbers(name, call.place or content.handouts[name].place)[call.argument]
            entry = BOOK.entry(call.argument)
            shown = show(number, entry.places) if isinstance(entry, Quantity) else show_full(number)
            assert _squeezed(words.with_unit(shown, entry.unit)) in text, (name, language, call.argument)
            asked += 1
    assert asked > 250


def test_tables_of_the_plan_are_whole(
    made: dict[tuple[str, str], tuple[Recording, bytes]], content: CourseContent
) -> None:
    tables = 0
    for (name, language), (recorded, _) in made.items():
        text = _squeezed(recorded.text())
        for block in content.handout_texts[name, language]:
            if isinstance(block, TableBlock):
                told = sections(content.plan(block.place), content.words[language])
                section = next(each for each in told if each.key == block.section)
                for cell in (*section.lines, *section.head, *(cell for row in section.rows for cell in row)):
                    assert _squeezed(cell.strip("_")) in text, (name, language, cell)
                tables += 1
    assert tables >= 8


def test_typed_numbers_are_constants_or_habits(content: CourseContent) -> None:
    for name in content.handouts:
        for language in LANGUAGES:
            for call in _calls(name, language):
                if call.name == "plain":
                    assert call.argument in HABITS | set(DECIDED), (name, language, call.argument)
    for typed, constant in DECIDED.items():
        assert float(typed.split()[0]) == float(constant), typed
    assert float(COARSEST_STEP) == 0.5  # "half a millimetre"


def test_where_work_can_hurt_the_sheet_says_so(
    made: dict[tuple[str, str], tuple[Recording, bytes]], content: CourseContent
) -> None:
    for (name, language), (recorded, _) in made.items():
        if name != "frame-card":  # one page for the pocket; its step-by-step twin has the boxes
            assert content.words[language].say("sheet.caution") in recorded.text(), (name, language)


def test_the_album_has_every_drawing_of_a_fault(content: CourseContent) -> None:
    album = content.fault_album
    assert album is not None
    figures = {fault.id: fault.figure for fault in album.faults}
    shown = re.findall(r'fault\("([^"]+)"\)', _template("fault-album", "en"))
    assert {figures[name] for name in shown} == set(FAULTS)
    assert len(shown) == len(set(shown))


# ------------------------------------------------------------------------------------- cards to cut out


def test_cards_are_two_a_page_and_none_is_split(
    made: dict[tuple[str, str], tuple[Recording, bytes]], content: CourseContent
) -> None:
    for language in LANGUAGES:
        recorded, _ = made["step-cards", language]
        boxes = [s for s in recorded.shapes if abs(s[3] - s[1] - TEXT_WIDTH) < 0.1 and s[4] - s[2] > 150]
        pages = [box[0] for box in boxes]
        assert len(boxes) == _template("step-cards", language).count("{{ card }}") == 14
        assert pages == [page for page in range(2, 9) for _ in range(2)]
        for page, _, low, _, top in boxes:
            inside = [s for s in recorded.strings if s.page == page and low <= s.y <= top]
            assert min(s.size for s in inside) >= 9


def test_a_card_that_fills_a_page_stands_alone(content: CourseContent) -> None:
    from generator.sheets.card_flow import PAGE_ROOM, two_a_page
    from generator.sheets.flow import Space

    cards = [Card([], [Space(height)]) for height in (500, 400, 200, 100)]
    two_a_page(cards, TEXT_WIDTH)
    assert [card.begins_page for card in cards] == [True, True, False, True]
    assert cards[1].fit(TEXT_WIDTH) + cards[2].fit(TEXT_WIDTH) == pytest.approx(PAGE_ROOM)


# --------------------------------------------------------------------------------- true size on paper


def _segments(data: bytes) -> list[tuple[int, float, float, float, float]]:
    """Straight strokes of a PDF as it is: page, then both ends in points."""
    found = []
    for number, page in enumerate(PdfReader(BytesIO(data)).pages, start=1):
        stream = page.get_contents()
        assert stream is not None
        for match in re.finditer(rb"(-?[\d.]+) (-?[\d.]+) m (-?[\d.]+) (-?[\d.]+) l S", stream.get_data()):
            x1, y1, x2, y2 = (float(part) for part in match.groups())
            found.append((number, x1, y1, x2, y2))
    return found


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize(("name", "pages"), [("stick", {2, 3, 4}), ("cover-gauge", {2})])
def test_the_check_line_is_150_mm_in_the_pdf_itself(
    made: dict[tuple[str, str], tuple[Recording, bytes]], name: str, pages: set[int], language: str
) -> None:
    lines = _segments(made[name, language][1])
    checks = {line[0] for line in lines if abs(line[3] - line[1] - 150 / 25.4 * 72) < 0.01 and line[2] == line[4]}
    assert checks == pages
    assert pytest.approx(150 / 25.4 * 72) == CHECK
    for page, x1, y, x2, _ in [line for line in lines if abs(line[3] - line[1] - CHECK) < 0.01]:
        ends = [s for s in lines if s[0] == page and s[1] == s[3] and s[2] < y < s[4] and s[4] - s[2] < 12]
        assert {round(end[1], 3) for end in ends} >= {round(x1, 3), round(x2, 3)}


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize(("name", "rulers"), [("stick", ("hoops", "ring")), ("cover-gauge", ("cover",))])
def test_marks_stand_where_the_plan_puts_them_to_a_tenth_of_a_millimetre(
    made: dict[tuple[str, str], tuple[Recording, bytes]],
    content: CourseContent,
    name: str,
    rulers: tuple[str, ...],
    language: str,
) -> None:
    recorded, data = made[name, language]
    numbers = content.numbers(name, content.handouts[name].place)
    wanted = [
        sorted(mark.at * 1000 for mark in RULERS[ruler].marks(numbers, content.words[language])) for ruler in rulers
    ]
    width = (TEXT_WIDTH - 24) / 4
    boxes = sorted(
        (page, left, low, top)
        for page, left, low, right, top in recorded.shapes
        if abs(right - left - width) < 0.1 and top - low > 90
    )
    strokes = [line for line in _segments(data) if abs(line[3] - line[1] - 42) < 0.01]
    left_over = iter(boxes)
    for planned in wanted:
        marks: list[float] = []
        for strip in range(max(1, ceil(planned[-1] / 200 - 1e-9))):
            page, left, low, top = next(left_over)
            here = [s for s in strokes if s[0] == page and abs(s[1] - left) < 0.01 and low - 0.01 <= s[2] <= top + 0.01]
            marks += [(s[2] - low) / mm + 200 * strip for s in here]
        marks.sort()  # a mark between two strips stands on both
        once = [mark for place, mark in enumerate(marks) if not place or mark - marks[place - 1] > 0.1]
        assert once == pytest.approx(planned, abs=0.05)
    assert next(left_over, None) is None


# -------------------------------------------------------------------------------- other tanks and names


def test_the_longest_names_fit(content: CourseContent) -> None:
    for name in LONGEST_NAMES:
        places = {
            key: place.model_copy(update={"name": dict.fromkeys(LANGUAGES, name)})
            for key, place in content.places.items()
        }
        long = dataclasses.replace(content, places=places)
        for handout in ("batch-card", "step-cards", "stick"):
            for language in LANGUAGES:
                assert faults(_recorded(handout, language, long)[0], *A4) == [], (handout, name)


OTHER_PLACE = """\
format: 1
id: largest-shed
name: {en: A shed with the largest tank that a crew builds, hi: सबसे बड़ी टंकी वाला छप्पर}
about: {en: It is here for the tests., hi: यह जाँच के लिए है।}
invented: true
given:
"""


def test_the_largest_tank_of_a_crew_fits_on_every_sheet(tmp_path: Path) -> None:
    folder = course_copy(tmp_path)
    home = (folder / "course" / "places" / "hill-school.yaml").read_text("utf-8")
    given = home.partition("given:\n")[2]
    given = given.replace("inside_diameter: 3.40", "inside_diameter: 2.90")
    given = given.replace("wall_height: 1.40", "wall_height: 1.85").replace("hoop_spacing: 0.12", "hoop_spacing: 0.09")
    (folder / "course" / "places" / "largest-shed.yaml").write_text(OTHER_PLACE + given, "utf-8")
    for path in (folder / "handouts").glob("*.yaml"):
        text = path.read_text("utf-8")
        path.write_text(re.sub(r"(?m)^place: .*$", "place: largest-shed", text), "utf-8")
    loaded = load(folder)
    assert loaded.content is not None, loaded.problems
    for name in loaded.content.handouts:
        for language in LANGUAGES:
            assert faults(_recorded(name, language, loaded.content)[0], *A4) == [], (name, language)
