from __future__ import annotations

import codecs
from collections.abc import Collection
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy import select

from generator.exercises import mark_set, read_answers, same_name
from generator.problems import ProblemsError, RefusedError
from generator.registry import Imported, audit, chain_head, erase_person, import_answers
from generator.registry.answer_table import NotPlainError, careful, pieces, plain
from generator.registry.csv_text import unguarded
from generator.registry.seats import Seat, Seats
from generator.registry.tables import answers
from tests.exercises import small as questions
from tests.registry.small import Office, small_marker, typed_right


def typed(office: Office, sitting: int, data: bytes | Path, **other: Any) -> Imported:
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


class Key:
    """A key of three questions."""

    labels = {"1": 1, "2": 2, "3": 3, "q1": 1}  # noqa: RUF012 (a protocol's field)


class Keys:
    """The same key for every paper."""

    def of(self, content: str) -> Key:
        """That key."""
        return Key()


SEATS = {
    n: Seat(n, n, name, "", {} if n < 3 else {1: "5"})
    for n, name in ((1, "Asha"), (2, "Bir"), (3, "Chandra Devi"))
}  # fmt: skip


class Everyone:
    """Finds the three as the registry does."""

    def among(self, learners: Collection[str]) -> dict[str, Seat]:
        """By number or name."""
        known = {same_name(seat.name): seat for seat in SEATS.values()} | {str(n): seat for n, seat in SEATS.items()}
        named = ((text, known.get(text) or known.get(same_name(unguarded(text)))) for text in learners)
        return {text: seat for text, seat in named if seat is not None}


def read(data: bytes) -> dict[int, dict[int, str]]:
    """What the quick way reads, held against the keys as an import does."""
    found: dict[int, dict[int, str]] = {}
    for seat, column, texts in plain(pieces(data), Everyone()):
        assert seat.number not in found
        own = found.setdefault(seat.number, {})
        for question, answer in zip(column, texts, strict=True):
            label = Key.labels.get(question)
            if label is None or own.setdefault(label, answer) != answer or seat.recorded.get(label, answer) != answer:
                raise NotPlainError
    return found


cell = st.sampled_from(
    [
        "1",
        "2",
        "3",
        "4",
        "q1",
        "Asha",
        " bir ",
        "chandra  devi",
        "",
        "5",
        " 6",
        "'-1",
        '"7"',
        "x y",
        "1;2",
        '"a, b"',
        '"a""b"',
        ' "8"',
        '"9" ',
        '"',
        "\u0930\u093e\u092e",
        "\ufeff1",
        "01",
    ]
)


@given(st.sampled_from([",", ";", "\t"]), st.lists(st.lists(cell, min_size=1, max_size=4), max_size=5), st.booleans())
@settings(max_examples=600, suppress_health_check=[HealthCheck.too_slow])
def test_the_quick_way_reads_what_the_careful_way_reads(sign: str, table: list[list[str]], end: bool) -> None:
    lines = [["learner", "Question ", "answer"], *table]
    data = ("\n".join(sign.join(line) for line in lines) + ("\n" if end else "")).encode()
    try:
        quick = read(data)
    except NotPlainError:
        return
    assert quick == careful("a.csv", data, SEATS, Keys())


def test_the_quick_way_is_taken_by_a_plain_table() -> None:
    data = b'learner,question,answer\r\n1,1,5\n1,2, 1 500\n\nBir,q1,\n3,1,5\n3,2,"a, c"\n"3",3,""'
    assert read(data) == {1: {1: "5", 2: "1 500"}, 2: {1: ""}, 3: {1: "5", 2: "a, c", 3: ""}}
    assert read(data) == careful("a.csv", data, SEATS, Keys())
    assert read(codecs.BOM_UTF8 + data) == read(data)


def test_a_slip_far_down_a_large_table_takes_back_what_was_written_before_it(
    any_office: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The quick way writes as it reads; a quoted way of saying the same, or an unknown learner, comes after that."""
    office = any_office
    monkeypatch.setattr("generator.registry.answers.AT_ONCE", 1)
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


@pytest.mark.parametrize("size", [1, 7, 40, 1000])
def test_a_table_is_the_same_read_in_pieces_of_any_size(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, size: int
) -> None:
    monkeypatch.setattr("generator.registry.answer_table._PIECE", max(size, 20))
    lines = [f"{n},{q},{n * q}" for n in (3, 1, 2) for q in (1, 2, 3) if (n, q) != (3, 1)]
    data = codecs.BOM_UTF8 + "\r\n".join(["learner,question,answer", *lines]).encode()
    file = tmp_path / "a.csv"
    file.write_bytes(data)
    expected = careful("a.csv", data, SEATS, Keys())
    assert read(data) == expected
    assert "".join(pieces(file)) == "".join(pieces(data)) == data.decode("utf-8-sig").replace("\r", "") + "\n"


@pytest.mark.parametrize(
    "data",
    [b"learner,question,answer\n1,1,\x07\n", b"learner,question,answer\n1,1,\xff\n", b"PK\x03\x04", b"\xff\xfe1",
     b"learner,question,answer\n" + 30 * b"1,1,5\n" + codecs.BOM_UTF8 + b"1,1,5\n"],
)  # fmt: skip
def test_what_is_no_plain_text_wants_the_careful_way(monkeypatch: pytest.MonkeyPatch, data: bytes) -> None:
    monkeypatch.setattr("generator.registry.answer_table._PIECE", 30)
    with pytest.raises(NotPlainError):
        list(pieces(data))


def test_a_file_is_marked_as_its_bytes_are(any_office: Office, tmp_path: Path) -> None:
    office = any_office
    sitting = office.sit()
    file = tmp_path / "answers.csv"
    file.write_bytes(typed_right(office.record()))
    assert typed(office, sitting, file) == Imported(39, 0, True)
    file.write_bytes(file.read_bytes() + b"Nobody,1,5\n")
    with pytest.raises(ProblemsError, match="no paper of 'Nobody'"):
        typed(office, sitting, file)
    with pytest.raises(ProblemsError, match="there is no such file"):
        typed(office, sitting, tmp_path / "missing.csv")


def test_papers_are_found_by_number_and_by_name_as_they_are_asked_for(
    any_office: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("generator.registry.seats._AT_ONCE", 2)
    office = any_office
    sitting = office.sit()
    typed(office, sitting, typed_right(office.record(), (1,)))
    with office.registry.engine.connect() as connection:
        seats = Seats(connection, sitting)
        whole = seats.everyone()
        assert len(whole) == 3
        assert {n for n, seat in whole.items() if seat.recorded} == {1}
        by_name = {seat.name.upper(): seat for seat in whole.values()}
        asked = [*by_name, "1", "2", "3", "4", "01", "", "Nobody", "1" * 30]
        assert seats.among(asked) == by_name | {str(n): seat for n, seat in whole.items()}
