"""The script that the page gets: as it was reviewed, the same every time, safe inside a page."""

import subprocess
import sys
from math import pi, sin
from pathlib import Path

import pytest

from generator.calculations import BOOK
from generator.formula import Book, Constant, UnknownNameError, derived, parse
from generator.formula.javascript import code
from tests.formula.invented_book import TEST_BOOK

INVENTED = derived("made up for the tests")
REVIEWED = Path(__file__).with_name("invented-book.js")
LESS = Constant(-3, "", INVENTED)
NONE = Constant(0, "", INVENTED)


def test_the_script_is_the_one_that_was_reviewed() -> None:
    """When a change of the script is meant: `python -m tests.formula.test_javascript`, and review what changed."""
    assert TEST_BOOK.javascript(["everything"]) == REVIEWED.read_text(encoding="utf-8")


def test_only_what_is_asked_for_travels_with_its_needs_and_misconceptions() -> None:
    script = TEST_BOOK.javascript(["basin_radius"])
    assert '"basin_width": {' in script
    assert '"width_taken_for_radius": {' in script
    assert "pull" not in script
    assert "wire_stress" not in script


def test_what_a_misconception_needs_travels_too() -> None:
    book = Book()
    for name, symbol in (("width", "w"), ("gate", "g")):
        book.given(name, symbol=symbol, unit="m", low=1, high=9, step=1, source=INVENTED)

    @book.quantity(symbol="c", unit="m", places=1, low=0, high=99, source=INVENTED)
    def fence(width: float) -> float:
        return 4 * width

    @book.quantity(symbol="o", unit="m", places=1, low=0, high=99, source=INVENTED)
    def opening(gate: float) -> float:
        return gate * 2

    @book.misconception(of="fence")
    def opening_taken_off(width: float, opening: float) -> float:
        return 4 * width - opening

    @book.misconception(of="gate")
    def gate_halved(gate: float) -> float:
        return gate / 2

    script = book.javascript(["fence"])
    for name in ("opening", "gate", "opening_taken_off", "gate_halved"):
        assert f'"{name}": {{' in script
    assert (fence(2), opening(2), opening_taken_off(2, 1), gate_halved(2)) == (8, 4, 7, 1)


def test_nothing_in_the_script_can_end_the_page_s_script_element() -> None:
    script = BOOK.javascript(BOOK.quantities)
    assert "</" not in script
    assert "<\\/mrow>" in script
    assert "\u2028" not in script


def test_the_script_does_not_hang_on_the_machine_s_hashes() -> None:
    code_line = (
        "import sys; from generator.calculations import BOOK; print(ascii(BOOK.javascript(set(BOOK.quantities))))"
    )
    texts = [
        subprocess.run(
            [sys.executable, "-c", code_line],
            env={"PYTHONHASHSEED": seed, "PATH": ""},
            cwd=Path(__file__).parents[2],
            capture_output=True,
            check=True,
            text=True,
        ).stdout
        for seed in ("1", "2")
    ]
    assert texts[0] == texts[1]
    assert texts[0].strip() == ascii(BOOK.javascript(BOOK.quantities))


def test_a_name_that_the_book_does_not_have_is_refused() -> None:
    with pytest.raises(UnknownNameError, match="did you mean 'pull'"):
        TEST_BOOK.javascript(["pul"])


def test_words_inside_the_formulas_are_the_reader_s() -> None:
    script = TEST_BOOK.javascript(["layers"], word={"round up": "ऊपर का पूरा नंबर", "max": "सबसे बड़ा"}.__getitem__)
    assert 'text: "सबसे बड़ा(2, ऊपर का पूरा नंबर(«(steel)» / 45))"' in script
    assert "round up" not in script


def brackets(a: float, b: float) -> float:
    return a - (b - 2) - -(-a) * (b / (a * 2.0)) / 4  # noqa: B002 (two signs in a row are the point)


def powers(a: float, b: float) -> float:
    return -(a**2) + 2 ** (a + b) ** 3


def constants(a: float) -> float:
    return a - LESS * pi / NONE + -LESS


def choices(a: float, b: float) -> float:
    return (1 if a < b <= 3 or not (a == 2 and b != 1) else 2 if a > 1 else 3) * sin(a if a >= b else b)


@pytest.mark.parametrize(
    ("function", "script"),
    [
        (brackets, "a - (b - 2) - -(-a) * P.over(b, a * 2) / 4"),
        (powers, "-P.power(a, 2) + P.power(2, P.power(a + b, 3))"),
        (constants, "a - P.over(-3 * 3.141592653589793, 0) + -(-3)"),
        (
            choices,
            "(a < b && b <= 3 || !(a === 2 && b !== 1) ? 1 : (a > 1 ? 2 : 3)) * Math.sin(a >= b ? a : b)",
        ),
    ],
)
def test_signs_and_choices_keep_their_order(function: object, script: str) -> None:
    assert callable(function)
    assert code(parse(function).result) == script


if __name__ == "__main__":
    REVIEWED.write_text(TEST_BOOK.javascript(["everything"]), encoding="utf-8")
