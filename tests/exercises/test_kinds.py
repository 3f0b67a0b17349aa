"""Questions to spot, to hear and to choose from worked-out numbers; units, rounding and credit for steps."""

from __future__ import annotations

import json

import pytest

from generator.exercises import (
    ChoiceItem,
    NumberItem,
    Person,
    Slip,
    SpokenItem,
    SpotItem,
    Verdict,
    from_json,
    helps,
    make_item,
    make_set,
    mark_choice,
    mark_number,
    mark_set,
    mark_spot,
    mark_steps,
    mark_typed,
    messages,
    to_json,
)
from generator.exercises.check import check
from generator.exercises.make import lettered
from generator.exercises.numbers import AskReason
from generator.exercises.spoken import script_faults, script_lines, unmarked
from generator.figures import FIGURES
from generator.formula import show
from tests.exercises import small
from tests.exercises.small_course import course

EN = small.WORDS["en"]


def number(question: object, seed: str = "kinds") -> NumberItem:
    made = make_item(question, seed, EN, small.BOOK)  # type: ignore[arg-type]
    assert isinstance(made, NumberItem)
    return made


# ------------------------------------------------------------------------------------ choices worked out


@pytest.mark.parametrize("seed", range(60))
def test_options_are_the_right_number_and_what_each_misconception_gives(seed: int) -> None:
    made = make_item(small.PICK, str(seed), EN, small.BOOK)
    assert isinstance(made, ChoiceItem)
    right = small.BOOK.evaluate(made.givens, ["wire_count"])["wire_count"]
    wrong = [
        small.BOOK.evaluate(made.givens, ["wire_count"], [name])["wire_count"] for name in small.PICK.misconceptions
    ]
    assert made.options == tuple(show(value, 0) for value in (right, *wrong))
    assert len(set(made.options)) == 3
    assert mark_choice(made, [0]).verdict is Verdict.RIGHT
    for place, name in enumerate(small.PICK.misconceptions, start=1):
        mark = mark_choice(made, [place])
        assert mark.misconceptions == (name,)
        assert messages(mark, EN) == ("not_yet", f"mistake {name}", f"hill {name}")


def test_every_place_is_sometimes_the_right_one() -> None:
    places = set()
    for seed in range(60):
        made = make_item(small.PICK, str(seed), EN, small.BOOK)
        assert isinstance(made, ChoiceItem)
        places.add(made.order.index(0))
    assert places == {0, 1, 2}


def test_a_count_that_comes_out_broken_keeps_its_decimals_so_that_it_can_be_told_from_the_right_one() -> None:
    for seed in range(40):
        made = make_item(small.PICK_ROLLS, str(seed), EN, small.BOOK)
        assert isinstance(made, ChoiceItem)
        right, broken = made.options
        assert "." not in right
        assert float(broken) < float(right)


# ------------------------------------------------------------------------- the form of a number


def test_a_number_that_is_cut_to_a_quarter_metre() -> None:
    """3.2 m across: 10.0531 m round, so 10.25 m are cut."""
    made = number(small.CUT).model_copy(update={"key": 10.25, "rounded": 10.25, "exact": 10.053096, "units": ()})
    assert mark_number(made, "10.25").verdict is Verdict.RIGHT
    assert mark_number(made, "1025 cm").verdict is Verdict.RIGHT
    for text, slip in (
        ("10.05", Slip.NOT_ROUNDED),
        ("10", Slip.OTHER_ROUNDING),
        ("10.2", Slip.NOT_ROUNDED),
        ("11", Slip.NONE),
    ):
        mark = mark_number(made, text)
        assert (mark.verdict, mark.slip) == (Verdict.NOT_YET, slip), text
    assert messages(mark_number(made, "10"), EN) == ("not_yet", "other_rounding")


@pytest.mark.parametrize("seed", range(40))
def test_the_key_is_rounded_as_the_question_asks(seed: int) -> None:
    made = number(small.CUT, str(seed))
    exact = small.BOOK.evaluate(made.givens, ["pen_round"])["pen_round"]
    assert made.exact == exact
    assert made.key == pytest.approx(0.25 * -(-exact // 0.25))
    assert made.key == made.rounded
    assert made.shown_key == f"{made.key:.2f}"


def test_where_the_unit_is_part_of_the_answer_a_bare_number_is_asked_for_again() -> None:
    made = number(small.CUT)
    bare = mark_number(made, made.shown_key)
    assert bare.ask is not None
    assert bare.ask.reason is AskReason.UNIT_MISSING
    assert mark_number(made, f"{made.shown_key} m").verdict is Verdict.RIGHT
    assert mark_number(made, f"{made.key * 100:.0f} cm").verdict is Verdict.RIGHT
    assert mark_number(made, f"{made.shown_key} cm").verdict is Verdict.NOT_YET
    other = mark_number(made, f"{made.shown_key} kg")
    assert other.ask is not None
    assert other.ask.reason is AskReason.OTHER_KIND


@pytest.mark.parametrize(
    ("changed", "told"),
    [
        ({"units": ("m", "kg")}, "'kg' is not a unit of the same kind as 'm'"),
        ({"units": ("cubit",)}, "'cubit' is not a unit to choose from here"),
        ({"credit": ("roll_count",)}, "'roll_count' is not on the way to 'pen_round'"),
    ],
)
def test_forms_that_make_no_sense_are_problems(changed: dict[str, object], told: str) -> None:
    found = check(course((small.CUT.model_copy(update=changed),), ()), small.BOOK)
    assert [problem.what for problem in found] == [told]


def test_a_rounding_that_print_can_not_show_is_a_problem() -> None:
    finer = small.CUT.rounding.model_copy(update={"to": 0.125}) if small.CUT.rounding else None
    found = check(course((small.CUT.model_copy(update={"rounding": finer}),), ()), small.BOOK)
    assert [problem.what for problem in found] == ["multiples of 0.125 can't be printed with 2 decimals"]


# ---------------------------------------------------------------------------------- credit for steps

STEPS = number(small.IN_STEPS)
COUNT, ROUND = STEPS.steps


def test_steps_stand_in_the_order_of_working() -> None:
    assert {part.asks for part in STEPS.steps} == {"wire_count", "pen_round"}
    assert [part.text for part in STEPS.steps] == [f"the {part.asks}" for part in STEPS.steps]


def marked(count: str = "", round_: str = "", answer: str = "") -> tuple[Verdict, int, int]:
    ids = {part.asks: part.id for part in STEPS.steps}
    mark = mark_steps(STEPS, {ids["wire_count"]: count, ids["pen_round"]: round_, STEPS.id: answer}, small.BOOK)
    return mark.verdict, mark.points, mark.most


def test_each_right_step_earns_a_point_and_the_right_answer_earns_all() -> None:
    keys = {part.asks: part.shown_key for part in STEPS.steps}
    count, round_ = keys["wire_count"], keys["pen_round"]
    assert marked(count, round_, STEPS.shown_key) == (Verdict.RIGHT, 3, 3)
    assert marked("", "", STEPS.shown_key) == (Verdict.RIGHT, 3, 3)
    assert marked(count, round_, "1") == (Verdict.NOT_YET, 2, 3)
    assert marked(count, "", "") == (Verdict.BLANK, 1, 3)
    assert marked("", "", "1") == (Verdict.NOT_YET, 0, 3)
    assert marked("many", "😀", "<b>") == (Verdict.ASK_BACK, 0, 3)


def test_an_answer_that_follows_from_a_wrong_step_loses_only_that_step() -> None:
    keys = {part.asks: part.key for part in STEPS.steps}
    own = keys["wire_count"] - 1
    answer = f"{own * keys['pen_round']:.1f}"
    assert marked(f"{own:.0f}", f"{keys['pen_round']:.2f}", answer) == (Verdict.RIGHT_FROM_EARLIER, 2, 3)


def test_on_paper_the_steps_stand_before_the_answer() -> None:
    texts = [part.shown_key for part in STEPS.steps]
    mark = mark_typed(STEPS, "; ".join([*texts, "1"]), small.BOOK)
    assert (mark.verdict, mark.points, mark.most) == (Verdict.NOT_YET, 2, 3)
    assert messages(mark, EN)[-1] == "steps 2 of 2"
    assert mark_typed(STEPS, STEPS.shown_key, small.BOOK).points == 3
    unclear = mark_typed(STEPS, "1; 2; 3; 4", small.BOOK)
    assert unclear.ask is not None
    assert unclear.ask.reason is AskReason.NOT_ALL


# ---------------------------------------------------------------------------------------- spot, spoken


def test_the_fault_in_a_drawing_is_named_by_its_letter() -> None:
    made = make_item(small.SPOT, "s", EN, small.BOOK)
    assert isinstance(made, SpotItem)
    assert [area.letter for area in made.areas] == ["A", "B", "C"]
    for text in ("B", "b", " (B) ", "ख", "2"):
        assert mark_typed(made, text).verdict is Verdict.RIGHT, text
    assert mark_typed(made, "A").why == ("The gate holds.",)
    assert mark_spot(made, [1]).verdict is Verdict.RIGHT
    for text, reason in (
        ("D", AskReason.UNKNOWN_LETTER),
        ("A, B", AskReason.ONE_ONLY),
        ("the gate", AskReason.UNKNOWN_LETTER),
    ):
        ask = mark_typed(made, text).ask
        assert ask is not None
        assert ask.reason is reason


def test_a_figure_may_letter_its_own_areas() -> None:
    drawn = {"F": "corner", "A": "top-wire", "C": "gate", "D": "post"}
    made = make_item(small.SPOT, "s", EN, small.BOOK, {"pen-plan": drawn})
    assert isinstance(made, SpotItem)
    assert [(area.letter, area.name) for area in made.areas] == sorted(drawn.items())
    assert made.labels == ("the top wire", "the gate", "", "the corner")
    assert mark_typed(made, "F").verdict is Verdict.RIGHT
    assert mark_typed(made, "C").why == ("The gate holds.",)
    assert mark_typed(made, "D").verdict is Verdict.NOT_YET
    assert mark_typed(made, "B").verdict is Verdict.ASK_BACK
    with pytest.raises(ValueError, match="has no area 'gate'"):
        lettered(small.SPOT, {"A": "corner", "B": "top-wire"})
    with pytest.raises(ValueError, match="no choice"):
        lettered(small.SPOT.model_copy(update={"areas": small.SPOT.areas[:1]}), None)


def test_every_drawing_with_a_fault_can_be_asked_about_and_another_fault_is_a_problem() -> None:
    for figure, kind in FIGURES.items():
        if kind.spot is None:
            continue
        names = [{"name": kind.spot.fault, "right": True}, {"name": kind.spot.names[1], "why": small.both("sound")}]
        data = {"id": "spot", "kind": "spot", "figure": figure, "text": small.both("where?"), "areas": names}
        question = small.question(data)
        assert check(course((question,), ()), small.BOOK) == []
        made = make_item(question, "s", EN, small.BOOK)
        assert isinstance(made, SpotItem)
        assert len(made.areas) == len(kind.spot.names)
        assert mark_typed(made, made.areas[made.right[0]].letter).verdict is Verdict.RIGHT
        names[0]["right"], names[1]["right"] = False, True
        assert [problem.code for problem in check(course((small.question(data),), ()), small.BOOK)] == ["other-fault"]
        names[0]["name"] = "no-such-place"
        assert [problem.code for problem in check(course((small.question(data),), ()), small.BOOK)] == ["unknown-area"]


def test_a_spoken_question_holds_its_script_and_takes_a_letter_or_a_number() -> None:
    letter = make_item(small.SPOKEN_LETTER, "s", EN, small.BOOK)
    assert isinstance(letter, SpokenItem)
    assert isinstance(letter.answer, ChoiceItem)
    assert letter.script == ("A goat leans on the fence. /", "Which wire holds? // #", "[2x] Take your time.")
    assert letter.text == "A goat leans on the fence.\nWhich wire holds?\nTake your time."
    right = "ABCD"[letter.answer.order.index(0)]
    assert mark_typed(letter, right).verdict is Verdict.RIGHT
    said = make_item(small.SPOKEN_NUMBER, "s", EN, small.BOOK)
    assert isinstance(said, SpokenItem)
    assert isinstance(said.answer, NumberItem)
    assert "{" not in said.text
    assert mark_typed(said, said.answer.shown_key).verdict is Verdict.RIGHT
    half = said.answer.wrong["half_width_taken"]
    assert mark_typed(said, f"{half:.2f}").misconceptions == ("half_width_taken",)


def test_marks_of_a_script_are_taken_out_and_slashes_of_units_stay() -> None:
    assert unmarked("2 kg/m / # and 1/2 //\n[2x] so") == "2 kg/m and 1/2\nso"
    assert script_lines(" a \n\n b") == ("a", "b")
    assert list(script_faults("one " * 12)) == []
    assert len(list(script_faults("one " * 13))) == 1


def test_a_script_that_nobody_can_follow_is_a_problem() -> None:
    long = small.SPOKEN_LETTER.model_copy(update={"text": small.both("one two three four five six seven eight " * 2)})
    many = small.SPOKEN_NUMBER.model_copy(
        update={"asks": "wire_length", "given": small.LENGTH.given, "misconceptions": (), "answer": "within 1 %"}
    )
    codes = [problem.code for problem in check(course((long, many), ()), small.BOOK)]
    assert sorted(codes) == ["script-too-long", "script-too-long", "too-many-spoken-numbers"]


# --------------------------------------------------------------------------------------------- around


def test_help_goes_from_little_to_much() -> None:
    assert helps(small.SPOKEN_NUMBER, 0) == ("hint", "formula", "again")
    assert helps(small.SPOKEN_NUMBER, 1) == ("hint", "formula", "first_line", "solution", "again")
    assert helps(small.PICK, 2) == ("formula", "first_line", "solution", "again")
    assert helps(small.ORDER, 5) == ("again",)


def test_a_set_of_all_kinds_is_recorded_and_marked() -> None:
    made = make_set(course(small.ALL), "pens", [Person("Asha")], "s", "en", tool="t 1", book=small.BOOK)
    again = from_json("set.json", to_json(made))
    assert again == made
    learner = again.learners[0]
    answers = {}
    for label, item, _ in learner.labelled():
        asked = item.answer if isinstance(item, SpokenItem) else item
        if isinstance(asked, NumberItem):
            unit = f" {asked.unit}" if asked.units else ""
            answers[(1, label)] = asked.shown_key + unit
        elif isinstance(asked, SpotItem):
            answers[(1, label)] = asked.areas[asked.right[0]].letter
        elif isinstance(asked, ChoiceItem):
            answers[(1, label)] = "".join("ABCD"[asked.order.index(place)] for place in asked.right)
        else:
            answers[(1, label)] = "".join("ABCD"[asked.order.index(place)] for place in range(len(asked.order)))
    marks = mark_set(again, answers, small.BOOK).learners[0]
    assert marks.points == marks.most == len(list(learner.labelled())) + 2  # two steps earn points of their own


NEWER = ("also", "aids", "units", "rule", "grain", "exact", "steps", "mistakes", "asks", "givens")


def test_a_record_from_before_these_kinds_still_loads_and_is_marked() -> None:
    made = make_set(course(), "pens", [Person("Asha")], "s", "en", tool="t 1", book=small.BOOK)
    data = json.loads(to_json(made))
    for item in data["learners"][0]["items"]:
        for part in [item, *item.get("parts", ())]:
            kept = ("asks", "givens") if part["kind"] != "choice" else ()
            kept += ("steps",) if part["kind"] == "order" else ()
            for name in NEWER:
                if name not in kept:
                    part.pop(name, None)
    old = from_json("set.json", json.dumps(data).encode("utf-8"))
    label, item, _ = next(iter(old.learners[0].labelled()))
    assert isinstance(item, NumberItem)
    mark = mark_set(old, {(1, label): item.shown_key}, small.BOOK).learners[0].marks[0][1]
    assert (mark.verdict, mark.points, mark.most) == (Verdict.RIGHT, 1, 1)
