from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from pydantic import TypeAdapter
from sqlalchemy import select

from generator.exercises import Item, make_item, mark_set, mark_typed, read_answers
from generator.problems import ProblemsError, RefusedError, decode
from generator.registry import Imported, audit, chain_head, erase_person, import_answers
from generator.registry.answers import NotPlainError, _careful, _plain, _Seat, line_of
from generator.registry.marker import ItemsKey
from generator.registry.tables import answers
from tests.exercises import small as questions
from tests.registry.small import Office, printed_set, small_marker, typed_right


def typed(office: Office, sitting: int, data: bytes, **other: Any) -> Imported:
    return import_answers(
        office.registry, sitting, "answers.csv", data,
        **{"by": office.boss, "now": office.tick(), "marker": small_marker, **other},
    )  # fmt: skip


def rows(office: Office) -> list[Any]:
    with office.registry.engine.connect() as connection:
        return list(connection.execute(select(answers).order_by(answers.c.paper, answers.c.label)))


def test_the_marks_are_those_of_the_set(any_office: Office) -> None:
    """Errors carried forward included: part 2 of the scenario is wrong, and part 3 follows from it."""
    office = any_office
    sitting = office.sit()
    lines = typed_right(office.record()).decode().splitlines()
    wrong = [line for line in lines if not line.startswith(("1,11,", "1,12,"))] + ["1,11,7", "1,12,70.4"]
    data = ("\n".join(wrong) + "\n").encode()
    assert typed(office, sitting, data) == Imported(39, 0, True)
    record = office.record()
    alone = mark_set(record, read_answers("answers.csv", data, record), questions.BOOK)
    expected = [
        (int(label), m.item, m.competency, str(m.verdict), m.points, m.most, " ".join(m.misconceptions))
        for learner in alone.learners for label, m in learner.marks
    ]  # fmt: skip
    found = [(r.label, r.item, r.competency, r.verdict, r.points, r.most, r.misconceptions) for r in rows(office)]
    assert found == expected
    assert "right_from_earlier" in {r.verdict for r in rows(office)}
    assert audit(office.registry) == ()


def test_the_same_table_again_changes_nothing_and_more_rows_are_added(any_office: Office) -> None:
    office = any_office
    sitting = office.sit()
    first, whole = typed_right(office.record(), (1,)), typed_right(office.record())
    assert typed(office, sitting, first) == Imported(13, 0, True)
    head = chain_head(office.registry)
    assert typed(office, sitting, first) == Imported(0, 13, True)
    assert chain_head(office.registry) == head
    assert typed(office, sitting, whole) == Imported(26, 13, True)
    assert typed(
        office, sitting, b"learner;question;answer\nasha;wires-of-a-pen;" + whole.split(b",")[4].split(b"\n")[0]
    )
    assert len(rows(office)) == 39
    assert audit(office.registry) == ()


def test_questions_can_be_added_later_to_a_paper(office: Office) -> None:
    sitting = office.sit()
    assert typed(office, sitting, b"learner,question,answer\n1,1,5\n1,2,6\n") == Imported(2, 0, True)
    assert typed(office, sitting, b"learner,question,answer\n1,2,6\n1,3,\n") == Imported(1, 1, True)
    assert [(row.label, row.verdict) for row in rows(office)][2] == (3, "blank")
    assert audit(office.registry) == ()


def test_parts_that_hang_together_are_marked_together(office: Office) -> None:
    sitting = office.sit()
    assert typed(office, sitting, b"learner,question,answer\n1,a-new-pen/round,10.05\n") == Imported(4, 0, True)
    assert [row.verdict for row in rows(office)] == ["right", "blank", "blank", "blank"]
    with pytest.raises(ProblemsError, match="question 11 of paper 1 is recorded already as ''"):
        typed(office, sitting, b"learner,question,answer\n1,11,8\n")


def test_a_dry_run_keeps_nothing(any_office: Office) -> None:
    office = any_office
    sitting = office.sit()
    head = chain_head(office.registry)
    assert typed(office, sitting, typed_right(office.record()), dry_run=True) == Imported(39, 0, False)
    assert chain_head(office.registry) == head
    assert rows(office) == []


def test_all_problems_come_at_once_with_their_places(office: Office) -> None:
    sitting = office.sit()
    typed(office, sitting, b"learner,question,answer\n2,1,5\n")
    data = b"learner,question,answer\n1,1,5\nAsah,1,5\n1,99,5\n1,1,6\n2,1,6\n,2,1\n"
    head = chain_head(office.registry)
    with pytest.raises(ProblemsError) as caught:
        typed(office, sitting, data)
    assert [str(problem) for problem in caught.value.problems] == [
        "answers.csv:7:1: 'learner' is empty (fix: fill it, or remove the row)",
    ]
    with pytest.raises(ProblemsError) as caught:
        typed(office, sitting, data.replace(b",2,1\n", b""))
    assert [str(problem) for problem in caught.value.problems] == [
        "answers.csv:3:1: the sitting has no paper of 'Asah' (fix: did you mean 'Asha'?)",
        "answers.csv:4:3: paper 1 has no question '99' (fix: its questions are 1 to 13)",
        "answers.csv:5:5: question 1 of paper 1 has another answer, '5', in line 2 (fix: keep the one that stands on "
        "the paper)",
        "answers.csv:6:5: question 1 of paper 2 is recorded already as '5' (fix: a recorded answer is not changed; if "
        "it is wrong, the way is an appeal)",
    ]
    assert chain_head(office.registry) == head


@pytest.mark.parametrize(
    "data",
    [b"", b"learner,question\n1,1\n", b"PK\x03\x04", b"\xff\xfe", b"learner,question,answer\n", b'learner\n"1\n'],
)
def test_no_table_ends_in_a_traceback(office: Office, data: bytes) -> None:
    with pytest.raises(ProblemsError):
        typed(office, office.sit(), data)


def test_only_coordinators_type_answers_and_only_to_sittings(office: Office) -> None:
    with pytest.raises(RefusedError, match="only a coordinator"):
        typed(office, office.sit(), typed_right(office.record()), by=office.ids["Tenzin"])
    with pytest.raises(RefusedError, match="no sitting 917"):
        typed(office, 917, typed_right(office.record()))


def test_erased_people_have_no_paper_to_type(office: Office) -> None:
    sitting = office.sit()
    typed(office, sitting, typed_right(office.record()))
    erase_person(office.registry, office.ids["Asha"], by=office.boss, reason="own wish", now=office.tick())
    own = [row for row in rows(office) if row.paper == 1]
    assert {row.answer for row in own} == {None}
    assert "right" in {row.verdict for row in own}
    with pytest.raises(ProblemsError, match="no paper of '1'"):
        typed(office, sitting, b"learner,question,answer\n1,1,5\n")
    assert audit(office.registry) == ()


ITEMS = [
    item.model_dump(mode="json")
    for learner in printed_set(("Asha", "Bir", "Cheptoo")).learners
    for item in learner.items
    if item.id != "a-new-pen"
] + [
    make_item(question, "goat", questions.WORDS["en"], questions.BOOK).model_dump(mode="json")
    for question in (questions.CUT, questions.IN_STEPS, questions.SPOKEN_LETTER, questions.SPOKEN_NUMBER)
]  # fmt: skip
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
texts = near | st.sampled_from(["", " ", "A", "7", "007", "5.6", "1,500", "8 m", "-3", "8.", ".5", "3 1/2", "१०"])


@given(st.integers(0, len(ITEMS) - 1), texts)
@settings(max_examples=800)
def test_what_is_quickly_right_is_what_the_marking_says(place: int, typed: str) -> None:
    """Each kind of question, with answers at and around the edge of the tolerance."""
    item = TypeAdapter(Item).validate_json(json.dumps(ITEMS[place]))
    key = ItemsKey([ITEMS[place]], '{"formulas": ""}', questions.BOOK)
    ((label, row, line),) = key.mark({1: typed})
    mark = mark_typed(item, typed)
    expected = (
        mark.item,
        mark.competency,
        typed,
        str(mark.verdict),
        mark.points,
        mark.most,
        " ".join(mark.misconceptions),
    )
    assert (label, row) == (1, expected)
    assert line == line_of(1, expected)


def test_plain_numbers_go_the_quick_way() -> None:
    item = next(item for item in ITEMS if item["id"] == "round-a-pen")
    key = ItemsKey([item], "{}", questions.BOOK)
    right, wrong = key._plainly(1, f"{item['key']:.2f}"), key._plainly(1, f"{item['key'] * 1.02:.2f}")
    assert right
    assert wrong
    assert (right[1][3], wrong[1][3]) == ("right", "not_yet")
    assert key._plainly(1, f"{item['key']:.2f} m") is None


def test_every_mistaken_idea_is_named_on_the_quick_way() -> None:
    named = 0
    for item in ITEMS:
        key = ItemsKey([item], "{}", questions.BOOK)
        for value in item.get("wrong", {}).values() if item["kind"] == "number" else ():
            typed = f"{value:.4f}"
            quick = key._plainly(1, typed)
            if quick is not None:
                marked = mark_typed(TypeAdapter(Item).validate_json(json.dumps(item)), typed)
                assert quick[1][6] == " ".join(marked.misconceptions)
                named += bool(quick[1][6])
    assert named > 3


def test_strange_answers_without_end_do_not_fill_the_memory() -> None:
    key = ItemsKey([ITEMS[0]], '{"formulas": ""}', questions.BOOK)
    label = min(key.labels.values())
    told = {key.mark({label: str(number)})[0][1][2] for number in range(5000)}
    assert len(told) == 5000
    assert len(key._known) <= 1000


class Key:
    """A key of three questions."""

    labels = {"1": 1, "2": 2, "3": 3, "q1": 1}  # noqa: RUF012 (a protocol's field)


SEATS = {
    n: _Seat(n, name, "", lambda _: Key(), {} if n < 3 else {1: "5"})
    for n, name in ((1, "Asha"), (2, "Bir"), (3, "Chandra Devi"))
}  # type: ignore[arg-type]
cell = st.sampled_from(
    ["1", "2", "3", "4", "q1", "Asha", " bir ", "chandra  devi", "", "5", " 6", "'-1", '"7"', "x y", "1;2"]
)


@given(st.sampled_from([",", ";", "\t"]), st.lists(st.lists(cell, min_size=1, max_size=4), max_size=5), st.booleans())
@settings(max_examples=600, suppress_health_check=[HealthCheck.too_slow])
def test_the_quick_way_reads_what_the_careful_way_reads(sign: str, table: list[list[str]], end: bool) -> None:
    lines = [["learner", "Question ", "answer"], *table]
    data = ("\n".join(sign.join(line) for line in lines) + ("\n" if end else "")).encode()
    try:
        quick = list(_plain(decode("a.csv", data), SEATS))
    except NotPlainError:
        return
    assert dict(quick) == _careful("a.csv", data, SEATS)


def test_the_quick_way_is_taken_by_a_plain_table() -> None:
    data = "learner,question,answer\n1,1,5\n1,2, 1 500\n\nbir,q1,\n3,1,5\n"
    assert dict(_plain(data, SEATS)) == {1: {1: "5", 2: "1 500"}, 2: {1: ""}, 3: {1: "5"}}
    assert dict(_plain(data, SEATS)) == _careful("a.csv", data.encode(), SEATS)


def test_a_slip_far_down_a_large_table_takes_back_what_was_written_before_it(
    any_office: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The quick way writes as it reads; a quoted way of saying the same, or an unknown learner, comes after that."""
    office = any_office
    monkeypatch.setattr("generator.registry.answers._AT_ONCE", 1)
    sitting = office.sit()
    head = chain_head(office.registry)
    good = typed_right(office.record())
    with pytest.raises(ProblemsError) as caught:
        typed(office, sitting, good + b"Nobody,1,5\n")
    assert "no paper of 'Nobody'" in str(caught.value.problems[0])
    assert chain_head(office.registry) == head
    assert audit(office.registry) == ()
    lines = good.splitlines(keepends=True)
    again = b"".join([lines[0], *lines[2:], lines[1]])  # the first paper comes once more at the end
    assert typed(office, sitting, again).new == 39
    assert audit(office.registry) == ()
