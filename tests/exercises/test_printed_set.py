from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from generator.exercises.class_list import Person
from generator.exercises.items import ChoiceItem, NumberItem, SpotItem
from generator.exercises.letters import LETTERS
from generator.exercises.mark import Verdict
from generator.exercises.printed_set import LearnerMarks, formulas_hash, make_set, mark_set
from generator.exercises.record import Record, from_json, to_json
from generator.figures import FIGURES
from generator.formula import Book
from tests.exercises import small
from tests.exercises.small_course import course
from tests.exercises.typed import SIGNS_TYPED

PEOPLE = (Person("Asha"), Person("Bir", "hi"), Person("Chandra"))


def printed(people: tuple[Person, ...] = PEOPLE, seed: str = "spring", questions: int = 0) -> Record:
    return make_set(course(), "pens", people, seed, "en", tool="test 1", questions=questions, book=small.BOOK)


def right_answers(record: Record) -> dict[tuple[int, str], str]:
    """What a learner writes who has everything right."""
    answers: dict[tuple[int, str], str] = {}
    for learner in record.learners:
        for label, item, _ in learner.labelled():
            if isinstance(item, NumberItem):
                answers[learner.number, label] = f"{item.key:.3f} {item.unit}".replace("foot", "").strip()
                if item.unit == "foot":
                    answers[learner.number, label] = f"{int(item.key)}'{(item.key % 1) * 12:.0f}\""
            elif isinstance(item, ChoiceItem):
                answers[learner.number, label] = ",".join(LETTERS[item.order.index(i)] for i in item.right)
            elif isinstance(item, SpotItem):
                answers[learner.number, label] = " ".join(item.areas[place].letter for place in item.right)
            else:
                answers[learner.number, label] = " ".join(LETTERS[item.order.index(i)] for i in range(len(item.order)))
    return answers


def test_everyone_gets_own_numbers_and_all_questions() -> None:
    record = printed()
    givens = [[i.givens for i in learner.items if isinstance(i, NumberItem)] for learner in record.learners]
    assert givens[0] != givens[1] != givens[2]
    for learner in record.learners:
        assert [item.id for item in learner.items] == [*(q.id for q in small.QUESTIONS), "a-new-pen"]
        assert [label for label, _, _ in learner.labelled()] == [str(n) for n in range(1, 14)]
    assert record.learners[1].language == "hi"
    assert record.learners[1].items[0].text.startswith("हि")


def test_letters_of_a_drawing_are_dealt_to_each_learner_and_the_key_goes_with_them() -> None:
    people = tuple(Person(f"Goat herder {number}") for number in range(30))

    def spots(seed: str) -> list[SpotItem]:
        made = make_set(course((small.DEALT,)), "pens", people, seed, "en", tool="test", book=small.BOOK)
        marks = mark_set(made, right_answers(made), small.BOOK)
        assert all(_verdict(one, "1") is Verdict.RIGHT for one in marks.learners)
        return [item for learner in made.learners for item in learner.items if isinstance(item, SpotItem)]

    drawing = FIGURES["fault-bent-hoop"].spot
    assert drawing is not None
    found = spots("spring")
    assert len(found) == len(people)
    for item in found:
        assert [area.letter for area in item.areas] == list("ABCDEFGH")[: len(item.areas)]
        names = [area.name for area in item.areas]
        assert sorted(names) == sorted(drawing.names)
        assert [names[place] for place in item.right] == [drawing.fault]
        assert [item.labels[names.index(name)] for name in drawing.names[:2]] == ["the bent one", "a round one"]
        assert [item.why[names.index(name)] for name in drawing.names[:2]] == ["It pulls unevenly.", "It holds."]
    assert len({item.right for item in found}) == len(drawing.names)
    assert spots("spring") == found
    assert sum(a.areas != b.areas for a, b in zip(spots("summer"), found, strict=True)) > len(people) / 2


def test_a_name_added_to_the_list_changes_no_other_sheet() -> None:
    before, after = printed(), printed((Person("Amar"), *PEOPLE))
    assert [learner.items for learner in before.learners] == [learner.items for learner in after.learners[1:]]


def test_retired_questions_are_not_asked() -> None:
    retired = small.WIRES.model_copy(update={"retired": True})
    record = make_set(course((retired, small.CHOICE), ()), "pens", PEOPLE, "s", "en", tool="test 1", book=small.BOOK)
    assert [item.id for item in record.learners[0].items] == ["which-wire"]


def test_fewer_questions_are_drawn_for_each_in_the_banks_order() -> None:
    record = printed(questions=4)
    drawn = [tuple(item.id for item in learner.items) for learner in record.learners]
    order = [question.id for question in small.QUESTIONS]
    assert all(len(set(ids)) == 4 and list(ids) == sorted(ids, key=order.index) for ids in drawn)
    assert len(set(drawn)) > 1


def test_all_right_is_all_points() -> None:
    record = printed()
    for marks in mark_set(record, right_answers(record), small.BOOK).learners:
        assert [(label, mark.verdict) for label, mark in marks.marks if mark.verdict is not Verdict.RIGHT] == []
        assert marks.points == marks.most == 13


def test_nothing_written_is_all_blank() -> None:
    for marks in mark_set(printed(), {}, small.BOOK).learners:
        assert {mark.verdict for _, mark in marks.marks} == {Verdict.BLANK}
        assert marks.points == 0


def test_marks_come_from_the_record_and_not_from_the_bank() -> None:
    """A key changed in the record changes the mark: nothing is made again while marking."""
    record = printed()
    item = record.learners[0].items[0]
    assert isinstance(item, NumberItem)
    edited = item.model_copy(update={"key": 77.0, "rounded": 77.0})
    learner = record.learners[0].model_copy(update={"items": (edited, *record.learners[0].items[1:])})
    other = record.model_copy(update={"learners": (learner,)})
    assert _verdict(mark_set(other, {(1, "1"): "77"}, small.BOOK).learners[0], "1") is Verdict.RIGHT
    assert _verdict(mark_set(record, {(1, "1"): "77"}, small.BOOK).learners[0], "1") is Verdict.NOT_YET


def test_errors_are_carried_forward_in_a_scenario() -> None:
    answers = {(1, "10"): "10.05", (1, "11"): "7", (1, "12"): "70.4", (1, "13"): "4"}
    marks = mark_set(printed(), answers, small.BOOK).learners[0]
    assert [_verdict(marks, label) for label in ("10", "11", "12", "13")] == [
        Verdict.RIGHT, Verdict.NOT_YET, Verdict.RIGHT_FROM_EARLIER, Verdict.RIGHT_FROM_EARLIER,
    ]  # fmt: skip


def test_with_other_formulas_nothing_is_carried_forward_and_the_marks_say_so() -> None:
    answers = {(1, "11"): "7", (1, "12"): "70.4", (1, "13"): "5"}
    found = mark_set(printed(), answers, Book())
    assert not found.same_formulas
    assert [_verdict(found.learners[0], label) for label in ("11", "12", "13")] == [
        Verdict.NOT_YET, Verdict.NOT_YET, Verdict.RIGHT,
    ]  # fmt: skip
    assert mark_set(printed(), answers, small.BOOK).same_formulas


def test_the_hash_of_formulas_sees_what_they_rest_on() -> None:
    whole = formulas_hash(small.BOOK, frozenset(["roll_count"]))
    assert whole == formulas_hash(small.BOOK, frozenset(["roll_count", "wire_length"]))
    assert whole != formulas_hash(small.BOOK, frozenset(["wire_length"]))
    assert whole != formulas_hash(small.BOOK, frozenset(["roll_count", "no_such_quantity"]))


@given(st.dictionaries(st.tuples(st.integers(0, 4), st.integers(0, 15).map(str)),
                       st.lists(st.sampled_from(SIGNS_TYPED), max_size=9).map("".join), max_size=40))  # fmt: skip
def test_no_answers_stop_the_marking(answers: dict[tuple[int, str], str]) -> None:
    record = printed()
    again = from_json("set.json", to_json(record))
    found = mark_set(again, answers, small.BOOK)
    assert found == mark_set(record, answers, small.BOOK)
    assert [len(marks.marks) for marks in found.learners] == [13, 13, 13]


def _verdict(marks: LearnerMarks, label: str) -> Verdict:
    return dict(marks.marks)[label].verdict
