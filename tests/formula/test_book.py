"""The graph: a value is worked out from what is given, right or with a wrong idea in its place."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.formula import Book, OutOfRangeError, UnknownNameError, derived
from tests.formula.invented_book import TEST_BOOK, basin_radius, pull
from tests.formula.refusing_book import REFUSING_BOOK

GIVENS = {"basin_width": 4.0, "basin_depth": 2.0, "wire_stress": 100.0}
tape = st.integers(10, 30).map(lambda n: n / 10)


def test_a_quantity_is_worked_out_from_the_givens_through_what_it_needs() -> None:
    values = TEST_BOOK.evaluate(GIVENS, ["layers"])
    assert values["basin_radius"] == 2
    assert values["pull"] == pytest.approx(9.81 * 2 * 2)
    assert values["layers"] == math.ceil(9.81 * 4 * 1000 / 100 / 45)


def test_a_misconception_changes_everything_behind_it() -> None:
    wrong = TEST_BOOK.evaluate(GIVENS, ["layers"], wrong=["width_taken_for_radius"])
    assert wrong["pull"] == pytest.approx(9.81 * 2 * 4)


def test_a_given_can_be_misread_and_a_right_value_distorted() -> None:
    assert TEST_BOOK.evaluate(GIVENS, ["pull"], wrong=["depth_read_in_tenths"])["pull"] == pytest.approx(9.81 * 0.2 * 2)
    assert TEST_BOOK.evaluate(GIVENS, ["pull"], wrong=["half_the_pull"])["pull"] == pytest.approx(9.81 * 2)


def test_a_learner_s_own_earlier_answer_is_carried_forward_and_not_distorted() -> None:
    seeds = {**GIVENS, "basin_radius": 2.5}
    assert TEST_BOOK.evaluate(seeds, ["pull"])["pull"] == pytest.approx(9.81 * 2 * 2.5)
    assert TEST_BOOK.evaluate(seeds, ["pull"], wrong=["width_taken_for_radius"])["pull"] == pytest.approx(9.81 * 5)


def test_only_the_wanted_quantity_needs_its_givens() -> None:
    assert TEST_BOOK.evaluate({"basin_width": 3}, ["basin_radius"])["basin_radius"] == 1.5
    assert "pull" not in TEST_BOOK.evaluate({"basin_width": 3})
    assert TEST_BOOK.needs("layers") == ("basin_width", "basin_depth", "wire_stress")
    assert TEST_BOOK.needs("layers", given=["pull"]) == ("wire_stress", "pull")


@pytest.mark.parametrize(
    ("seeds", "want", "message"),
    [
        ({"basin_width": 3}, ["pull"], "pull needs 'basin_depth', which is not among the givens"),
        ({"basin_widht": 3}, ["pull"], "did you mean 'basin_width'"),
        (GIVENS, ["pul"], "did you mean 'pull'"),
    ],
)
def test_a_missing_or_misspelt_name_is_named(seeds: dict[str, float], want: list[str], message: str) -> None:
    with pytest.raises(UnknownNameError, match=message):
        TEST_BOOK.evaluate(seeds, want)


@pytest.mark.parametrize("width", [0.5, 7, math.nan, math.inf, True])
def test_a_given_outside_its_range_is_refused_with_who_to_ask(width: float) -> None:
    with pytest.raises(OutOfRangeError, match=r"basin_width"):
        TEST_BOOK.evaluate({"basin_width": width}, ["basin_radius"])
    with pytest.raises(OutOfRangeError, match=r"basin_width"):
        basin_radius(width)


def test_the_refusal_says_the_range_and_who_to_ask() -> None:
    with pytest.raises(OutOfRangeError, match=r"basin_depth = 9 m is outside 1 to 3 m.*ask a licensed engineer"):
        pull(basin_depth=9, basin_radius=2)


def test_a_result_outside_its_range_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="steel"):
        TEST_BOOK.evaluate({"pull": 100, "wire_stress": 100, "steel": 5000}, ["layers"])


def test_division_by_zero_names_the_inputs() -> None:
    book = Book()
    source = derived("made up")
    book.given("sand_boxes", symbol="s", unit="", low=0, high=4, step=1, source=source)

    @book.quantity(symbol="p", unit="", places=2, low=0, high=9, source=source)
    def share(sand_boxes: float) -> float:
        return 1 / sand_boxes

    with pytest.raises(OutOfRangeError, match=r"share: .* with sand_boxes=0"):
        book.evaluate({"sand_boxes": 0}, ["share"])
    assert share(2) == 0.5


def test_the_root_of_a_negative_number_is_refused_and_not_complex() -> None:
    for name in ("power", "hidden_power"):
        with pytest.raises(OutOfRangeError, match=r"with left=-8, right=0.5"):
            REFUSING_BOOK.work_out({"left": -8, "right": 0.5}, [name], check=False)


def test_quantities_in_a_circle_are_named() -> None:
    book = Book()
    source = derived("made up")

    @book.quantity(symbol="a", unit="", places=0, low=0, high=9, source=source)
    def hen(egg: float) -> float:
        return egg

    @book.quantity(symbol="b", unit="", places=0, low=0, high=9, source=source)
    def egg(hen: float) -> float:
        return hen

    with pytest.raises(UnknownNameError, match=r"circle: (hen -> egg -> hen|egg -> hen -> egg)"):
        book.evaluate({}, ["hen"])
    assert hen(egg(1)) == 1


def test_a_name_or_symbol_is_used_once() -> None:
    book = Book()
    source = derived("made up")
    book.given("width", symbol="w", unit="m", low=0, high=9, step=1, source=source)
    with pytest.raises(ValueError, match="declared twice"):
        book.given("width", symbol="x", unit="m", low=0, high=9, step=1, source=source)
    with pytest.raises(ValueError, match="already stands for 'width'"):
        book.given("weight", symbol="w", unit="kg", low=0, high=9, step=1, source=source)
    with pytest.raises(ValueError, match="not Latin letters"):
        book.given("angle", symbol="γ", unit="", low=0, high=9, step=1, source=source)
    with pytest.raises(ValueError, match="empty"):
        book.given("length", symbol="l", unit="m", low=9, high=9, step=1, source=source)


def test_arrays_agree_with_single_values_for_right_and_wrong_ideas() -> None:
    generator = np.random.default_rng(7)
    widths = generator.integers(10, 60, 10_000) / 10
    depths = generator.integers(10, 30, 10_000) / 10
    stresses = generator.integers(10, 17, 10_000) * 10.0
    seeds = {"basin_width": widths, "basin_depth": depths, "wire_stress": stresses}
    for wrong in ([], *([name] for name in TEST_BOOK.misconceptions)):
        block = TEST_BOOK.arrays(seeds, ["everything"], wrong)
        for i in range(0, 10_000, 7):
            one = {name: float(values[i]) for name, values in seeds.items()}
            single = TEST_BOOK.work_out(one, ["everything"], wrong, check=False)
            for name in ("basin_radius", "pull", "steel", "layers", "everything"):
                assert math.isclose(block[name][i], single[name], rel_tol=1e-12, abs_tol=1e-12)


@given(tape, tape.map(lambda x: x * 2))
def test_each_printed_sum_comes_to_its_printed_answer(depth: float, width: float) -> None:
    """A learner with a calculator gets what the solution says."""
    for step in TEST_BOOK.trace("steel", {"basin_width": width, "basin_depth": depth, "wire_stress": 100}):
        text = step.substituted.replace("×", "*").replace("−", "-")
        by_hand = eval(text, {"__builtins__": {}})  # noqa: S307 (our own text)
        assert math.isclose(by_hand, step.value, rel_tol=1e-3)
        assert math.isclose(float(step.shown), step.value, rel_tol=5e-3)


def test_a_worked_solution_reads_as_a_mason_would_write_it() -> None:
    lines = [str(step) for step in TEST_BOOK.trace("layers", GIVENS)]
    assert lines == [
        "R_b = B / 2 = 4 / 2 = 2 m",
        "T = 9.81 × h × R_b = 9.81 × 2 × 2 = 39.24 kN/m",
        "A = T × 1000 / f = 39.24 × 1000 / 100 = 392.4 mm**2/m",
        "n = max(2, round up(A / 45)) = max(2, round up(392.4 / 45)) = 9",
    ]


def test_local_names_get_a_line_of_their_own() -> None:
    steps = TEST_BOOK.trace("everything", GIVENS)
    names = [step.name for step in steps]
    assert names[-4:] == ["half", "table_row", "wave", "everything"]
    assert steps[-1].value == TEST_BOOK.evaluate(GIVENS, ["everything"])["everything"]
