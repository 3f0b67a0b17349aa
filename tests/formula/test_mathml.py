"""Formulas as MathML: well formed, with the right brackets, readable aloud, without a slot left over."""

import re
from xml.etree import ElementTree

import pytest

from generator.calculations import BOOK
from generator.formula import Book, UnknownNameError, mathml, parse, plain_text
from generator.formula.mathml import symbol_markup, template
from tests.formula.invented_book import TEST_BOOK

EVERY = [(book, name) for book in (BOOK, TEST_BOOK) for name in book.quantities]
SLOT = re.compile(r"«\(?(\w+)\)?»")


def read(markup: str) -> ElementTree.Element:
    return ElementTree.fromstring(markup)  # noqa: S314 (our own text)


@pytest.mark.parametrize(("book", "name"), EVERY, ids=lambda value: value if isinstance(value, str) else "")
def test_every_formula_is_well_formed_and_can_be_read_aloud(book: Book, name: str) -> None:
    markup = mathml(book, name)
    math = read(markup)
    assert math.tag == "math"
    assert math.get("alttext") == plain_text(book, name)
    assert "«" not in markup
    for element in math.iter():
        if element.tag in ("mfrac", "msup", "msub"):
            assert len(element) == 2, ElementTree.tostring(element)


@pytest.mark.parametrize(("book", "name"), EVERY, ids=lambda value: value if isinstance(value, str) else "")
def test_every_number_has_its_slot(book: Book, name: str) -> None:
    markup = mathml(book, name, slots=True)
    formula = parse(book.quantities[name].function)
    own = {local for local, _ in formula.locals}
    assert set(SLOT.findall(markup)) - own == set(formula.needs)
    filled = SLOT.sub("<mn>1</mn>", markup)
    assert "«" not in filled
    read(filled)


def line(markup: str) -> str:
    """What a person reads from left to right, a fraction as a/b and a power as a^b in braces."""

    def said(element: ElementTree.Element) -> str:
        parts = [said(child) + (child.tail or "") for child in element]
        if element.tag == "mfrac":
            return "{" + "/".join(parts) + "}"
        if element.tag in ("msup", "msub"):
            return f"{parts[0]}{'^' if element.tag == 'msup' else '_'}{parts[1]}"
        if element.tag == "msqrt":
            return f"root{{{''.join(parts)}}}"
        return (element.text or "") + "".join(parts)

    return said(read(markup)).replace("\u00a0", " ")


def wanted(a: float, b: float) -> float:
    return (a - (b - 1)) ** 2 / (a / b) - -a * (b + 1)


def chosen(a: float, b: float) -> float:
    return 2 * (a if a < b <= 2 and not a == 1 else abs(b))  # noqa: SIM201 (the word is the point)


def of_fraction(a: float, b: float) -> float:
    return (a / b) ** 2 + a**2 / b**3 * (a / b)


@pytest.mark.parametrize(
    ("function", "read_as"),
    [
        (wanted, "{(«(a)»−(«(b)»−1))^2/{«a»/«b»}}−−«(a)»×(«(b)»+1)"),
        (chosen, "2×(«a» if «(a)»<«(b)»≤2 and not «(a)»=1, otherwise |«b»|)"),
        (of_fraction, "({«a»/«b»})^2+{«(a)»^2/«(b)»^3}×{«a»/«b»}"),
    ],
)
def test_brackets_stand_where_the_sum_needs_them(function: object, read_as: str) -> None:
    assert callable(function)
    assert line(f"<math>{template(parse(function).result)}</math>") == read_as


def test_rounding_up_is_said_in_the_reader_s_words() -> None:
    assert line(mathml(TEST_BOOK, "layers")) == "n=max(2,round up({A/45}))"
    assert line(mathml(TEST_BOOK, "layers", word=str.upper)) == "n=MAX(2,ROUND UP({A/45}))"
    assert plain_text(TEST_BOOK, "layers", word=str.upper) == "n = MAX(2, ROUND UP(A / 45))"


def test_local_names_stand_in_lines_above_the_result() -> None:
    rows = read(mathml(TEST_BOOK, "everything")).findall(".//mtr")
    firsts = ["".join(row.itertext()).split("=")[0] for row in rows]
    assert firsts == ["half", "table row", "wave", "q"]


def test_subscripts_are_set_low() -> None:
    assert symbol_markup("D_i") == "<msub><mi>D</mi><mi>i</mi></msub>"
    assert symbol_markup("h_1") == "<msub><mi>h</mi><mn>1</mn></msub>"
    assert symbol_markup("wall_area") == "<mi>wall\u00a0area</mi>"


@pytest.mark.parametrize(("name", "message"), [("pul", "did you mean 'pull'"), ("basin_width", "has no formula")])
def test_a_name_without_a_formula_is_refused(name: str, message: str) -> None:
    with pytest.raises(UnknownNameError, match=message):
        mathml(TEST_BOOK, name)
