from __future__ import annotations

import pytest

from generator.calculations import BOOK
from generator.curriculum import CourseContent
from generator.exercises import (
    LETTERS,
    ChoiceItem,
    MatchItem,
    NumberItem,
    OrderItem,
    Record,
    ScenarioItem,
    SpotItem,
    mark_typed,
)
from generator.formula import show
from generator.sheets import key_pdf
from generator.sheets.page import A4
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import Recording, recording

LANGUAGES = ("en", "hi")


@pytest.fixture(scope="module")
def printed(content: CourseContent, records: dict[str, Record]) -> dict[str, tuple[bytes, Recording]]:
    found = {}
    for language in LANGUAGES:
        with recording() as made:
            data = key_pdf(records[language], content)
        found[language] = (data, made)
    return found


def answers_of(made: Recording, count: int) -> dict[str, list[str]]:
    """Strings of each question of the first learner: those after its number, up to the next number."""
    found: dict[str, list[str]] = {}
    label = ""
    for string in made.strings:
        if found and string.x < 80 and string.size == 12 and string.typed == "1":
            break  # the next learner
        if string.x < 80 and string.size == 12 and string.typed == str(len(found) + 1) and len(found) < count:
            label = string.typed
            found[label] = []
        elif label and string.x > 79:
            found[label].append(string.typed)
    return found


@pytest.mark.parametrize("language", LANGUAGES)
def test_nothing_overflows(language: str, printed: dict[str, tuple[bytes, Recording]]) -> None:
    assert faults(printed[language][1], *A4) == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_same_record_gives_the_same_bytes(
    language: str, printed: dict[str, tuple[bytes, Recording]], records: dict[str, Record], content: CourseContent
) -> None:
    assert key_pdf(records[language], content) == printed[language][0]


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_number_is_the_calculation_modules_own(
    language: str, printed: dict[str, tuple[bytes, Recording]], records: dict[str, Record], content: CourseContent
) -> None:
    """The right answer, the last line of the working, and the answer of every misconception."""
    words = content.words[language]
    learner = records[language].learners[0]
    labelled = list(learner.labelled())
    answers = answers_of(printed[language][1], len(labelled))
    checked = 0
    for label, item, scenario in labelled:
        if not isinstance(item, NumberItem):
            continue
        quantity = BOOK.quantities[item.asks]
        givens = scenario.givens if scenario else item.givens
        value = BOOK.evaluate(givens, [item.asks])[item.asks]
        shown = words.with_unit(show(value, quantity.places), quantity.unit)
        assert answers[label][0] == shown
        assert " ".join(answers[label]).count(shown) >= 2 or scenario
        for name in item.wrong:
            wrong = BOOK.evaluate(givens, [item.asks], [name])[item.asks]
            assert words.with_unit(show(wrong, quantity.places), quantity.unit) in answers[label], name
            mistake = words.say_one_of("misconception", f"{name}.mistake")
            assert "".join(mistake.split()) in "".join("".join(answers[label]).split())
            checked += 1
    assert checked


@pytest.mark.parametrize("language", LANGUAGES)
def test_printed_letters_are_marked_right(
    language: str, printed: dict[str, tuple[bytes, Recording]], records: dict[str, Record]
) -> None:
    """What the key prints, typed into the answers' table, earns the points."""
    labelled = list(records[language].learners[0].labelled())
    answers = answers_of(printed[language][1], len(labelled))
    kinds = set()
    for label, item, _ in labelled:
        if isinstance(item, ChoiceItem | OrderItem | MatchItem):
            assert mark_typed(item, answers[label][0]).points == 1, answers[label][0]
            kinds.add(item.kind)
    assert kinds == {"choice", "order", "match"}


def test_working_of_an_earlier_part_is_not_repeated(
    printed: dict[str, tuple[bytes, Recording]], records: dict[str, Record], content: CourseContent
) -> None:
    labelled = list(records["en"].learners[0].labelled())
    answers = answers_of(printed["en"][1], len(labelled))
    names = {content.words["en"].say_one_of("quantity", name) for name in BOOK.quantities}
    days = {scenario.id for _, _, scenario in labelled if scenario}
    assert days
    for day in days:
        parts = [label for label, _, scenario in labelled if scenario and scenario.id == day]
        worked = [line for label in parts for line in answers[label] if line in names]
        assert len(worked) >= 4
        assert len(worked) == len(set(worked)), day


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_single_question_shows_its_whole_working(
    language: str, printed: dict[str, tuple[bytes, Recording]], records: dict[str, Record], content: CourseContent
) -> None:
    """Numbers differ from question to question, so a line worked out above is worked out again."""
    labelled = list(records[language].learners[0].labelled())
    answers = answers_of(printed[language][1], len(labelled))
    longest = 0
    for label, item, scenario in labelled:
        if isinstance(item, NumberItem) and scenario is None:
            steps = BOOK.trace(item.asks, item.givens)
            together = "".join("".join(answers[label]).split())
            for step in steps:
                assert "".join(content.words[language].say_one_of("quantity", step.name).split()) in together
            longest = max(longest, len(steps))
    assert longest >= 2


def test_a_right_option_is_never_listed_as_a_wrong_answer(
    printed: dict[str, tuple[bytes, Recording]], records: dict[str, Record], content: CourseContent
) -> None:
    labelled = list(records["en"].learners[0].labelled())
    answers = answers_of(printed["en"][1], len(labelled))
    head = content.words["en"].say("sheet.wrong_answer")
    tables = 0
    for label, item, _ in labelled:
        if isinstance(item, ChoiceItem | SpotItem) and head in answers[label]:
            letters = item.areas if isinstance(item, SpotItem) else ()
            right = {letters[i].letter if letters else LETTERS[item.order.index(i)] for i in item.right}
            assert not right & set(answers[label][answers[label].index(head) :])
            tables += 1
    assert tables


def key_of(item: ScenarioItem | NumberItem, record: Record, content: CourseContent) -> dict[str, list[str]]:
    """What the key prints for one item alone."""
    learner = record.learners[0].model_copy(update={"items": (item,)})
    with recording() as made:
        key_pdf(record.model_copy(update={"learners": (learner,)}), content)
    return answers_of(made, len(list(learner.labelled())))


def test_a_part_whose_number_was_worked_out_on_the_way_still_shows_its_line(
    records: dict[str, Record], content: CourseContent
) -> None:
    """The last part of a scenario asked first, then the one that it goes through."""
    scenario = next(item for item in records["en"].learners[0].items if isinstance(item, ScenarioItem))
    way = [step.name for step in BOOK.trace(scenario.parts[-1].asks, scenario.givens)]
    between = next(part for part in scenario.parts[:-1] if part.asks in way)
    answers = key_of(scenario.model_copy(update={"parts": (scenario.parts[-1], between)}), records["en"], content)
    line = content.words["en"].say_one_of("quantity", between.asks)
    assert line in answers["1"]
    assert line in answers["2"]


def test_a_wrong_answer_that_prints_as_the_right_one_is_not_listed(
    records: dict[str, Record], content: CourseContent
) -> None:
    items = records["en"].learners[0].items
    asked = next(item for item in items if isinstance(item, NumberItem) and len(item.wrong) == 2)
    near, far = asked.wrong
    alike = asked.model_copy(update={"wrong": {near: asked.key * (1 + 1e-9), far: asked.wrong[far]}})
    printed = " ".join(key_of(alike, records["en"], content)["1"])
    words = content.words["en"]
    assert words.say_one_of("misconception", f"{near}.mistake")[:20] not in printed
    assert words.say_one_of("misconception", f"{far}.mistake")[:20] in printed
