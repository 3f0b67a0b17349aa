from __future__ import annotations

import pytest

from generator.curriculum import CourseContent
from generator.exercises import (
    ChoiceItem,
    MatchItem,
    NumberItem,
    OrderItem,
    Person,
    Record,
    SpokenItem,
    SpotItem,
    make_set,
)
from generator.problems import RefusedError
from generator.sheets import worksheet_pdf
from generator.sheets.page import A4
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import Recording, recording

LANGUAGES = ("en", "hi")


@pytest.fixture(scope="module")
def printed(content: CourseContent, records: dict[str, Record]) -> dict[str, tuple[bytes, Recording]]:
    found = {}
    for language in LANGUAGES:
        with recording() as made:
            data = worksheet_pdf(records[language], content)
        found[language] = (data, made)
    return found


def flat(text: str) -> str:
    return " ".join(text.split())


@pytest.mark.parametrize("language", LANGUAGES)
def test_nothing_overflows_with_the_longest_names_and_every_question(
    language: str, printed: dict[str, tuple[bytes, Recording]]
) -> None:
    assert faults(printed[language][1], *A4) == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_same_record_gives_the_same_bytes(
    language: str, printed: dict[str, tuple[bytes, Recording]], records: dict[str, Record], content: CourseContent
) -> None:
    assert worksheet_pdf(records[language], content) == printed[language][0]


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_text_of_the_record_is_printed(
    language: str, printed: dict[str, tuple[bytes, Recording]], records: dict[str, Record]
) -> None:
    text = flat(printed[language][1].text())
    for learner in records[language].learners:
        for label, item, scenario in learner.labelled():
            assert flat(item.text) in text, label
            match item:
                case ChoiceItem():
                    texts = [item.options[i] for i in item.order]
                case OrderItem():
                    texts = [item.steps[i] for i in item.order]
                case MatchItem():
                    texts = [*item.left, *item.right]
                case NumberItem():
                    texts = [scenario.text] if scenario else []
            assert all(flat(each) in text for each in texts), label


def test_right_order_is_not_printed(printed: dict[str, tuple[bytes, Recording]], records: dict[str, Record]) -> None:
    """Options stand in the record's order, not in the author's."""
    lines = printed["en"][1].text().split("\n")
    for _, item, _ in records["en"].learners[0].labelled():
        if isinstance(item, OrderItem) and all(step in lines for step in item.steps):
            places = [lines.index(item.steps[i]) for i in item.order]
            assert places == sorted(places)
            assert list(item.order) != sorted(item.order)


def test_keys_are_not_among_the_words_of_a_question(content: CourseContent, records: dict[str, Record]) -> None:
    """A number question prints its givens, its words and its unit, and nothing that depends on the key."""
    learner = records["en"].learners[0]
    items = tuple(
        item.model_copy(update={"key": 123.0, "shown_key": "123", "wrong": {}})
        if isinstance(item, NumberItem)
        else item
        for item in learner.items
    )
    other = records["en"].model_copy(update={"learners": (learner.model_copy(update={"items": items}),)})
    with recording() as made:
        worksheet_pdf(other, content)
    with recording() as real:
        worksheet_pdf(records["en"], content, [1])
    same = {string.typed for string in made.strings} ^ {string.typed for string in real.strings}
    assert all(other.set_id in typed or records["en"].set_id in typed for typed in same)


def test_unit_is_printed_after_the_answer_line(content: CourseContent, records: dict[str, Record]) -> None:
    with recording() as made:
        worksheet_pdf(records["en"], content, [1])
    words = content.words["en"]
    answers = [place for place, s in enumerate(made.strings) if s.typed == words.say("sheet.answer")]
    asked = [
        item.answer if isinstance(item, SpokenItem) else item
        for item in (one for _, one, _ in records["en"].learners[0].labelled())
    ]
    numbers = [item for item in asked if isinstance(item, NumberItem | ChoiceItem | SpotItem)]
    assert len(answers) == len(numbers)
    for place, item in zip(answers, numbers, strict=True):
        if isinstance(item, NumberItem) and item.unit:
            assert made.strings[place + 1].typed == words.say_one_of("unit", item.unit)


def test_each_question_stays_in_one_piece(content: CourseContent, records: dict[str, Record]) -> None:
    """Its number, its words and its answer line are on one page."""
    with recording() as made:
        worksheet_pdf(records["hi"], content, [1])
    answer = content.words["hi"].say("sheet.answer")
    pages: dict[str, set[int]] = {}
    labels = {label: item for label, item, _ in records["hi"].learners[0].labelled()}
    current = ""
    for string in made.strings:
        if string.typed in labels and string.size == 12 and string.x < 80:
            current = string.typed
        if current and (string.typed == answer or string.x > 79):
            pages.setdefault(current, set()).add(string.page)
        if string.size <= 10 and string.y < 70:
            current = ""
    assert set(pages) == set(labels)
    assert all(len(found) == 1 for found in pages.values())


def test_only_the_learners_asked_for(content: CourseContent, records: dict[str, Record]) -> None:
    with recording() as made:
        worksheet_pdf(records["en"], content, [2])
    text = made.text()
    assert records["en"].learners[1].name in text
    assert records["en"].learners[2].name not in text


def test_a_learner_gets_the_sheet_in_their_language(content: CourseContent) -> None:
    record = make_set(content, "frame", [Person("Asha", "hi"), Person("Bir")], "two", "en", tool="test")
    with recording() as made:
        worksheet_pdf(record, content, [1])
    assert content.modules["frame"].title["hi"] in made.text(1)


def test_a_name_without_glyphs_is_refused_before_anything_is_made(content: CourseContent) -> None:
    people = [Person("Asha"), Person("水田"), Person("محمد")]
    record = make_set(content, "frame", people, "x", "en", tool="test", questions=1)
    with pytest.raises(RefusedError, match="Latin or Devanagari") as refused:
        worksheet_pdf(record, content)
    assert "水田" in str(refused.value)
    assert "محمد" in str(refused.value)
    assert "Asha" not in str(refused.value)
