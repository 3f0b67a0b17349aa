"""The printed formula: everything inside its box, nothing on top of anything else, numbers in their places."""

import itertools

import pytest

from generator.calculations import BOOK
from generator.formula import Book, Box, Glyphs, Role, Stroke, boxes, parse
from tests.formula.invented_book import TEST_BOOK
from tests.formula.refusing_book import REFUSING_BOOK

SIZE = 10.0
HAIR = 1e-9
EVERY = [(book, name) for book in (BOOK, TEST_BOOK, REFUSING_BOOK) for name in book.quantities]


def measure(text: str, role: Role, size: float) -> float:
    """Every letter as wide as the next; words wider, so that a mixed-up role is seen."""
    return len(text) * size * (0.6 if role is Role.WORD else 0.5)


def extent(operation: Glyphs | Stroke) -> tuple[float, float, float, float]:
    """Left, right, lowest, highest."""
    if isinstance(operation, Glyphs):
        width = measure(operation.text, operation.role, operation.size)
        foot, top = operation.y - 0.2 * operation.size, operation.y + 0.7 * operation.size
        return operation.x, operation.x + width, foot, top
    xs, ys = zip(*operation.points, strict=True)
    return min(xs), max(xs), min(ys), max(ys)


def texts(box: Box) -> list[Glyphs]:
    return [operation for operation in box.drawing if isinstance(operation, Glyphs)]


@pytest.mark.parametrize(("book", "name"), EVERY, ids=lambda value: value if isinstance(value, str) else "")
def test_everything_lies_inside_its_box_and_no_text_on_another(book: Book, name: str) -> None:
    for box in boxes(book, name, size=SIZE, measure=measure):
        for operation in box.drawing:
            left, right, foot, top = extent(operation)
            assert left >= -HAIR
            assert right <= box.width + HAIR
            assert foot >= -box.down - SIZE * 0.06
            assert top <= box.up + SIZE * 0.06
        for one, other in itertools.combinations(texts(box), 2):
            a, b = extent(one), extent(other)
            apart = a[1] <= b[0] + HAIR or b[1] <= a[0] + HAIR or a[3] <= b[2] + HAIR or b[3] <= a[2] + HAIR
            assert apart, f"{one.text} on {other.text}"


def test_a_fraction_s_bar_lies_between_its_numbers_and_covers_both() -> None:
    (box,) = boxes(TEST_BOOK, "steel", size=SIZE, measure=measure)
    (bar,) = [operation for operation in box.drawing if isinstance(operation, Stroke)]
    (left, height), (right, other) = bar.points
    assert height == other
    over = [glyphs for glyphs in texts(box) if glyphs.text in ("T", "1000")]
    (under,) = [glyphs for glyphs in texts(box) if glyphs.text == "f"]
    assert all(extent(glyphs)[2] > height for glyphs in over)
    assert extent(under)[3] < height
    for glyphs in (*over, under):
        assert left <= extent(glyphs)[0]
        assert extent(glyphs)[1] <= right
    middle = (extent(under)[0] + extent(under)[1]) / 2
    assert middle == pytest.approx((left + right) / 2)


def test_subscripts_and_powers_are_small_and_off_the_line() -> None:
    symbol = texts(boxes(TEST_BOOK, "basin_radius", size=SIZE, measure=measure)[0])
    assert [(glyphs.text, glyphs.role) for glyphs in symbol[:3]] == [
        ("R", Role.SYMBOL), ("b", Role.SYMBOL), ("=", Role.SIGN),
    ]  # fmt: skip
    assert symbol[1].size < SIZE
    assert symbol[1].y < 0
    power = texts(boxes(REFUSING_BOOK, "power", size=SIZE, measure=measure)[0])[-1]
    assert (power.text, power.size < SIZE, power.y > 0) == ("b", True, True)


def test_numbers_stand_in_the_place_of_symbols_with_brackets_where_they_are_negative() -> None:
    shown = {
        "basin_depth": "1.5",
        "basin_radius": "2.50",
        "layers": "-9",
        "half": "-0.7500",
        "table_row": "5",
        "wave": "0",
    }
    lines = boxes(TEST_BOOK, "everything", size=SIZE, measure=measure, shown=shown)
    assert len(lines) == 4
    said = "".join(glyphs.text for glyphs in texts(lines[-1]))
    assert said == "q=5−(0−(−0.7500))−(1+|−0.7500|)×2.0+round\u00a0down(2.50)"
    numbers = {glyphs.text for line in lines for glyphs in texts(line) if glyphs.role is Role.NUMBER}
    assert {"1.5", "2.50", "9", "0.7500", "5", "0"} <= numbers


def test_tall_pieces_get_drawn_brackets_as_high_as_themselves() -> None:
    (box,) = boxes(TEST_BOOK, "layers", size=SIZE, measure=measure)
    inner = [operation for operation in box.drawing if isinstance(operation, Stroke) and len(operation.points) > 2]
    assert len(inner) == 4  # round max( ... ) and round up( ... )
    for bracket in inner:
        _, _, foot, top = extent(bracket)
        assert top - foot > 2 * SIZE


def test_a_larger_size_gives_the_same_formula_larger() -> None:
    for name in TEST_BOOK.quantities:
        for small, large in zip(
            boxes(TEST_BOOK, name, size=SIZE, measure=measure),
            boxes(TEST_BOOK, name, size=2 * SIZE, measure=measure),
            strict=True,
        ):
            assert (large.width, large.up, large.down) == pytest.approx((2 * small.width, 2 * small.up, 2 * small.down))


def test_the_words_are_the_reader_s() -> None:
    (box,) = boxes(TEST_BOOK, "layers", size=SIZE, measure=measure, word=str.upper)
    assert [glyphs.text for glyphs in texts(box) if glyphs.role is Role.WORD] == ["MAX", "ROUND\u00a0UP"]
    assert parse(TEST_BOOK.quantities["layers"].function).locals == ()
