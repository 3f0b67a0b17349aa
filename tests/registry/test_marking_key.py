"""The short marking key says of every answer what the whole content says."""

from __future__ import annotations

import json
from collections.abc import Iterator
from functools import cache
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import TypeAdapter

from generator.exercises import ChoiceItem, Item, NumberItem, SpokenItem, make_item, mark_typed
from generator.registry import audit, import_answers
from generator.registry.answers import batch_digest
from generator.registry.batch_marks import Sheet, digests_of, labelled, labels_of, marked, rows_of
from generator.registry.marker import ItemsKey
from generator.registry.marking_key import EDITION, MarkingKey, is_former, packed, unpacked
from tests.exercises import small as questions
from tests.registry.small import Office, printed_set, rewrite, scalar, small_marker, typed_right

ITEMS: list[dict[str, Any]] = [
    item.model_dump(mode="json")
    for learner in printed_set(("Asha", "Bir", "Cheptoo")).learners
    for item in learner.items
    if item.id != "a-new-pen"
] + [
    make_item(question, "goat", questions.WORDS["en"], questions.BOOK).model_dump(mode="json")
    for question in (questions.CUT, questions.IN_STEPS, questions.SPOKEN_LETTER, questions.SPOKEN_NUMBER)
]  # fmt: skip
ABOUT = json.dumps({"formulas": ""})
KEYS = sorted({str(item["key"]) for item in ITEMS if "key" in item})
near = (
    st.sampled_from(KEYS)
    .map(float)
    .flatmap(
        lambda key: st.sampled_from([key, key * 1.009, key * 0.995, key + 0.005, key - 1, round(key), key * 2]).map(
            lambda value: f"{value:.3f}".rstrip("0").rstrip(".")
        )
    )
)
STRANGE = ["", " ", "A", "b", "A, C", "ab", "aa", "F", "CBA", "B A C", "BCA", "1B 2C 3A", "A and B", "7", "007", "5.6",
           "1,500", "8 m", "-3", "8.", ".5", "3 1/2", "१०", "ख", "9" * 400, "ABCDEFGHA", "12; 6", "="]  # fmt: skip
texts = near | st.sampled_from(STRANGE) | st.text("ABCDabc ,;", max_size=6)


def key_of(*items: dict[str, Any]) -> MarkingKey:
    data = packed({"format": 1, "items": list(items)})
    assert data is not None
    key = unpacked(data)
    assert key is not None
    return key


def rows(items: list[dict[str, Any]], *typed: dict[int, str]) -> Iterator[tuple[Any, ...]]:
    """The rows of papers that ask the same, each in a batch with the others."""
    whole = ItemsKey(items, ABOUT, questions.BOOK)
    sheets = [
        Sheet(paper, key_of(*items), labelled(own), list(own.values()), whole.mark) for paper, own in enumerate(typed)
    ]
    return iter(rows_of(sheets, marked(sheets), 7))


@given(st.lists(st.tuples(st.integers(0, len(ITEMS) - 1), texts), min_size=1, max_size=4))
@settings(max_examples=800)
def test_every_answer_gets_the_mark_of_the_content(typed: list[tuple[int, str]]) -> None:
    """Each kind of question, alone and beside others, with answers at and around the edge of the tolerance."""
    items = [ITEMS[place] for place, _ in typed]
    own = {label: text for label, (_, text) in enumerate(typed, 1)}
    found = list(rows(items, own))
    for (paper, label, event, *row), (place, text) in zip(found, typed, strict=True):
        item = TypeAdapter(Item).validate_json(json.dumps(ITEMS[place]))
        asked = item.answer if isinstance(item, SpokenItem) else item
        book = questions.BOOK if isinstance(asked, NumberItem) and asked.steps else None
        mark = mark_typed(item, text, None if book is None else ItemsKey([ITEMS[place]], ABOUT, book)._book)
        names = " ".join(mark.misconceptions)
        assert (paper, event, own[label]) == (0, 7, text)
        assert row == [mark.item, mark.competency, text, str(mark.verdict), mark.points, mark.most, names]


@given(st.lists(st.lists(texts, min_size=3, max_size=3), min_size=1, max_size=3))
@settings(max_examples=100)
def test_the_digest_is_the_one_that_an_audit_works_out(table: list[list[str]]) -> None:
    items = ITEMS[:3]
    names = ("label", "item", "competency", "answer", "verdict", "points", "most", "misconceptions")
    whole = ItemsKey(items, ABOUT, questions.BOOK)
    sheets = [Sheet(n, key_of(*items), labelled([1, 2, 3]), own, whole.mark) for n, own in enumerate(table)]
    marks = marked(sheets)
    found = rows_of(sheets, marks, 7)
    for place, digest in enumerate(digests_of(sheets, marks, ["salt"] * len(sheets))):
        kept = [dict(zip(names, (row[1], *row[3:]), strict=True)) for row in found[3 * place : 3 * place + 3]]
        assert digest == batch_digest("salt", kept)


def test_the_content_is_needed_for_steps_and_parts_alone() -> None:
    scenario = next(
        item.model_dump(mode="json")
        for item in printed_set(("Asha",)).learners[0].items
        if item.kind == "scenario"
    )  # fmt: skip
    ways = {question.way for question in key_of(scenario).shape.questions}
    assert ways == {"linked"}
    for item in ITEMS:
        (question,) = key_of(item).shape.questions
        assert (question.way == "content") == (item["kind"] == "number" and bool(item["steps"]))


def test_every_mistaken_idea_is_named() -> None:
    named = 0
    for item in ITEMS:
        for value in item.get("wrong", {}).values() if item["kind"] == "number" else ():
            typed = f"{value:.4f}"
            (row,) = rows([item], {1: typed})
            marked_alone = mark_typed(TypeAdapter(Item).validate_json(json.dumps(item)), typed)
            assert row[9] == " ".join(marked_alone.misconceptions)
            named += bool(row[9])
    assert named > 3


@pytest.mark.parametrize(
    ("column", "numbers"),
    [(("1", "2", "10"), (1, 2, 10)), (("2", "1"), None), (("1", "1"), None), (("01",), None), (("q1",), None),
     (("१",), None), (("",), None)],
)  # fmt: skip
def test_only_printed_numbers_that_rise_are_taken_as_they_stand(
    column: tuple[str, ...], numbers: tuple[int, ...] | None
) -> None:
    found = labels_of(column)
    assert (found and found.numbers) == numbers


def test_other_contents_and_damaged_keys_are_left_alone() -> None:
    assert packed({"format": 2, "items": []}) is None
    assert packed({"format": 1, "items": [{"kind": "riddle"}]}) is None
    assert packed({"format": 1, "items": [{**ITEMS[0], "id": "a\tb"}]}) is None
    whole = packed({"format": 1, "items": ITEMS[:2]})
    assert whole is not None
    assert unpacked(whole[:20]) is None
    assert unpacked(b"") is None
    newer = (EDITION + 1).to_bytes(2, "little") + whole[2:]
    assert unpacked(newer) is None
    assert not is_former(newer)
    assert not is_former(whole)


def test_a_paper_of_before_is_marked_from_its_content(any_office: Office) -> None:
    """Both ways lead to the same rows."""
    office = any_office
    sitting = office.sit()
    kept = scalar(office.registry, "select count(*) from marking_keys")
    assert kept == 3
    rewrite(office.registry, "delete from marking_keys")
    found = import_answers(
        office.registry, sitting, "a.csv", typed_right(office.record()), by=office.boss, now=office.tick(),
        marker=small_marker,
    )  # fmt: skip
    assert found.new == 39
    assert audit(office.registry) == ()


@cache
def letters() -> list[ChoiceItem]:
    found = [TypeAdapter(Item).validate_json(json.dumps(item)) for item in ITEMS]
    return [item for item in found if isinstance(item, ChoiceItem)]


def test_all_sets_of_letters_are_known_where_several_are_right() -> None:
    several = [item for item in letters() if item.several]
    assert several
    for item in several:
        (question,) = key_of(item.model_dump(mode="json")).shape.questions
        assert question.outcomes is not None
        assert len(question.outcomes) == 2 ** len(item.options) - 1
