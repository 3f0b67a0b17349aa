"""The page's calculation against Python's, from a file: every quantity, every misconception, what both refuse."""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Sequence
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pytest
from playwright.sync_api import Page

from generator.calculations import BOOK
from generator.formula import Array, Book, Misconception, OutOfRangeError, Step, Stream, show, show_full
from generator.formula.plain import english, in_words
from tests.browser.conftest import Watched
from tests.browser.formula_page import Job, packed, tables, write_page
from tests.formula.invented_book import TEST_BOOK
from tests.formula.refusing_book import REFUSING_BOOK
from tests.formula.vectors import VECTORS

pytestmark = pytest.mark.browser

INPUTS = 100_000
SAMPLE = range(0, INPUTS, 199)
BOOKS = {"course": BOOK, "invented": TEST_BOOK}


def drawn_givens(book: Book, count: int) -> dict[str, Array]:
    """Half of the inputs as a tape reads them, half anywhere in the range."""
    generator = np.random.default_rng(20)
    columns: dict[str, Array] = {}
    for given in book.givens.values():
        steps = math.floor((given.high - given.low) / given.step + 1e-9)
        read = np.round(given.low + generator.integers(0, steps + 1, count) * given.step, 10)
        free = generator.uniform(given.low, given.high, count)
        columns[given.name] = np.where(np.arange(count) % 2 == 0, read, free)
    return columns


def differing(ours: Array, theirs: Array) -> Array:
    """The rows in which one side has a value and the other has none, or the values differ."""
    found, refused = np.isfinite(ours), np.isnan(theirs)
    with np.errstate(invalid="ignore"):
        near = np.abs(ours - theirs) <= 1e-12 * np.abs(ours)
    return np.flatnonzero(np.where(found, ~near, ~refused))


def numbers_of(found: Sequence[float | None]) -> Array:
    """What the page gave; nothing is NaN."""
    return np.array([math.nan if value is None else value for value in found])


def scalar(book: Book, seeds: dict[str, float], want: Sequence[str], wrong: Sequence[str]) -> list[float]:
    """As the page: the values, or NaN in all of them where one is refused."""
    try:
        values = book.work_out(seeds, want, wrong, check=False)
    except OutOfRangeError:
        return [math.nan] * len(want)
    return [values[name] for name in want]


class Opened:
    """A book's page with drawn givens, and Python's values for them."""

    def __init__(self, page: Page, book: Book, folder: Path) -> None:
        self.page, self.book = page, book
        self.givens = drawn_givens(book, INPUTS)
        self.want = list(book.quantities)
        self.values = book.arrays(self.givens, self.want)
        finite = np.logical_and.reduce([np.isfinite(self.values[name]) for name in self.want])
        assert finite.mean() > 0.9, "too few of the drawn inputs can be worked out to test anything"
        self.finite = finite
        page.goto(write_page(folder, book, self.givens).as_uri())
        (theirs,) = tables(page, [Job(list(self.givens), self.want, [], INPUTS)])
        self.theirs = {**self.givens, **dict(zip(self.want, theirs, strict=True))}


@pytest.fixture(scope="module", params=BOOKS)
def opened(request: pytest.FixtureRequest, _kept: Watched, tmp_path_factory: pytest.TempPathFactory) -> Opened:
    return Opened(_kept.page, BOOKS[request.param], tmp_path_factory.mktemp(request.param))


def test_every_quantity_is_the_same_in_the_page(opened: Opened, kept_page: Page) -> None:
    theirs = [opened.theirs[name] for name in opened.want]
    for name, column in zip(opened.want, theirs, strict=True):
        ours = np.where(opened.finite, opened.values[name], np.nan)
        rows = differing(ours, column)
        assert len(rows) == 0, f"{name}: {[(ours[row], column[row]) for row in rows[:3]]}"
    for row in SAMPLE:
        seeds = {name: float(column[row]) for name, column in opened.givens.items()}
        for name, value, column in zip(opened.want, scalar(opened.book, seeds, opened.want, []), theirs, strict=True):
            assert len(differing(np.array([value]), column[row : row + 1])) == 0, (name, seeds)


def test_every_misconception_makes_the_same_of_the_same_numbers(opened: Opened, kept_page: Page) -> None:
    book = opened.book
    mistakes = list(book.misconceptions.values())
    jobs = [Job(_seeds_of(book, mistake), [mistake.of], [mistake.name], INPUTS) for mistake in mistakes]
    for mistake, job, (theirs,) in zip(mistakes, jobs, tables(kept_page, jobs), strict=True):
        seeds = {name: opened.theirs[name] for name in job.names}
        ours = np.broadcast_to(book.arrays(seeds, job.want, job.wrong)[mistake.of], INPUTS)
        rows = differing(ours, theirs)
        assert len(rows) == 0, f"{mistake.name}: {[(ours[row], theirs[row]) for row in rows[:3]]}"


def _seeds_of(book: Book, mistake: Misconception) -> list[str]:
    """What stands just before a misconception, and before the right value where that comes in."""
    needs = set(mistake.needs)
    if mistake.of in needs and mistake.of in book.quantities:
        needs = (needs - {mistake.of}) | set(book.quantities[mistake.of].needs)
    elif mistake.of in book.givens:
        needs.add(mistake.of)
    return sorted(needs)


def test_every_misconception_changes_all_behind_it_alike(opened: Opened, kept_page: Page) -> None:
    book = opened.book
    jobs = [
        Job(
            list(opened.givens), [name for name in opened.want if mistake in _mistakes_about(book, name)], [mistake], 60
        )
        for mistake in book.misconceptions
    ]
    for job, theirs in zip(jobs, tables(kept_page, jobs), strict=True):
        for row in range(job.count):
            seeds = {name: float(column[row]) for name, column in opened.givens.items()}
            ours = np.array(scalar(book, seeds, job.want, job.wrong))
            assert len(differing(ours, np.array([column[row] for column in theirs]))) == 0, (job.wrong, seeds)


def _mistakes_about(book: Book, name: str) -> set[str]:
    behind = set(book.ancestors([name]))
    return {mistake.name for mistake in book.misconceptions.values() if mistake.of in behind}


def test_an_own_earlier_answer_is_carried_forward_alike(opened: Opened, kept_page: Page) -> None:
    book = opened.book
    cases = []
    for number, name in enumerate(opened.want):
        for before in sorted(set(book.ancestors([name])) & set(book.quantities) - {name}):
            row = (number * 97) % INPUTS
            seeds = {given: float(column[row]) for given, column in opened.givens.items()}
            cases.append([{**seeds, before: float(opened.values[before][row]) * 1.5 + 1}, name])
    ours = np.array([scalar(book, seeds, [name], [])[0] for seeds, name in cases])
    theirs = kept_page.evaluate(
        """cases => cases.map(function (one) {
          try { return Tankschool.formula.evaluate(one[0], [one[1]])[one[1]]; } catch (error) { return null; }
        })""",
        cases,
    )
    assert len(differing(ours, numbers_of(theirs))) == 0
    assert np.isfinite(ours).mean() > 0.9


def test_the_worked_solution_is_the_same_line_by_line(opened: Opened, kept_page: Page) -> None:
    cases, ours = [], []
    for name in opened.want:
        found = _traced(opened, name)
        assert found, f"no drawn input gives {name} inside its range"
        for seeds, steps in found:
            cases.append([name, seeds])
            ours.append([_told(step) for step in steps])
    lines = kept_page.evaluate("cases => cases.map(one => Tankschool.formula.steps(one[0], one[1]))", cases)
    fields = ("name", "symbol", "formula", "substituted", "shown", "unit")
    assert [[[line[field] for field in fields] for line in steps] for steps in lines] == ours
    for line in itertools.chain.from_iterable(lines):
        for markup in (line["formulaMarkup"], line["substitutedMarkup"]):
            assert "«" not in markup
            assert ElementTree.fromstring(markup).tag == "math"  # noqa: S314 (our own text)


def _told(step: Step) -> list[str]:
    symbol, formula, substituted = (in_words(line, english) for line in (step.symbol, step.formula, step.substituted))
    return [step.name, symbol, formula, substituted, step.shown, step.unit]


def _traced(opened: Opened, name: str, most: int = 3) -> list[tuple[dict[str, float], tuple[Step, ...]]]:
    """Worked solutions from the givens, or from what stands just before where the givens hardly ever reach."""
    found: list[tuple[dict[str, float], tuple[Step, ...]]] = []
    for names, row in itertools.product(
        (opened.book.needs(name), opened.book.quantities[name].needs), range(0, INPUTS, 500)
    ):
        seeds = {need: float(opened.values[need][row]) for need in names}
        try:
            found.append((seeds, opened.book.trace(name, seeds)))
        except OutOfRangeError:
            continue
        if len(found) == most:
            break
    return found


def test_negative_numbers_stand_in_brackets_beside_a_sign(kept_page: Page, tmp_path: Path) -> None:
    kept_page.goto(write_page(tmp_path, TEST_BOOK, {}).as_uri())
    seeds = {"basin_width": 5.0, "basin_depth": 1.5, "wire_stress": 100.0}
    last = kept_page.evaluate("seeds => Tankschool.formula.steps('everything', seeds)", seeds)[-1]
    assert "(0.75 − (-0.75))) / −(1 + abs(-0.75))" in last["substituted"]
    bracketed = '<mrow><mo>(</mo><mrow><mo form="prefix">\u2212</mo><mn>0.75</mn></mrow><mo>)</mo></mrow>'
    assert bracketed in last["substitutedMarkup"]
    assert f"|</mo>{bracketed}" not in last["substitutedMarkup"]


def test_a_browser_that_sets_no_formulas_shows_a_line_of_text(kept_page: Page, tmp_path: Path) -> None:
    page = write_page(tmp_path, TEST_BOOK, {})
    page.write_text(page.read_text("utf-8").replace("<script", "<script>MathMLElement = undefined</script><script", 1))
    kept_page.goto(page.as_uri())
    seeds = {"basin_width": 5.0, "basin_depth": 1.5, "wire_stress": 100.0}
    lines = kept_page.evaluate("seeds => Tankschool.formula.steps('everything', seeds)", seeds)
    assert lines[0]["formulaMarkup"] == "R_b = B / 2"
    assert "1 &lt; 1.5" in lines[-2]["substitutedMarkup"]
    assert not any("<" in line["formulaMarkup"] + line["substitutedMarkup"] for line in lines)


NASTY = [0.0, -0.0, 1.0, -1.0, 2.0, 0.5, -0.5, 3.0, 1e-320, 1e-9, -1e-9, 700.0, 710.0, -8.0, 1e155, 1e300, -1e300]


def test_both_refuse_the_same_inputs(kept_page: Page, tmp_path: Path) -> None:
    """Where Python refuses, JavaScript would go on with Infinity or NaN; some of these hide it behind a min."""
    kept_page.goto(write_page(tmp_path, REFUSING_BOOK, {}).as_uri())
    pairs = list(itertools.product(NASTY, repeat=2))
    assert set(REFUSING_BOOK.givens) == {"left", "right"}
    refused = 0
    for name in REFUSING_BOOK.quantities:
        ours = [scalar(REFUSING_BOOK, {"left": a, "right": b}, [name], [])[0] for a, b in pairs]
        theirs = kept_page.evaluate(_EACH_PAIR, [name, pairs])
        rows = differing(np.array(ours), numbers_of(theirs))
        assert len(rows) == 0, f"{name}: {[(pairs[row], ours[row], theirs[row]) for row in rows[:5]]}"
        assert np.isnan(ours).any(), f"{name} refuses nothing"
        assert np.isfinite(ours).any(), f"{name} refuses everything"
        refused += int(np.isnan(ours).sum())
    assert refused > 500


_EACH_PAIR = """([name, pairs]) => pairs.map(function (pair) {
  var seeds = {left: pair[0], right: pair[1]};
  try { return Tankschool.formula.evaluate(seeds, [name])[name]; } catch (error) { return null; }
})"""


@pytest.mark.parametrize(
    ("call", "message"),
    [
        ("evaluate({left: 1, right: 0}, ['quotient'])", "quotient: division by zero with left=1, right=0"),
        ("evaluate({left: 1e300, right: 1e300}, ['product'])", "product: no finite number with left=1e+300, right=1e"),
        ("evaluate({left: -1, right: 1}, ['root'])", "root: a root of a negative number with left=-1"),
        ("evaluate({left: NaN, right: 1}, ['root'])", "left = NaN is not a number that can be worked with"),
        ("evaluate({left: '1', right: 1}, ['root'])", "left = 1 is not a number that can be worked with"),
        ("evaluate({left: 1}, ['quotient'])", "quotient needs 'right', which is not among the givens"),
        ("evaluate({left: 1}, ['quotent'])", "'quotent' is neither a given nor a quantity"),
        ("evaluate({left: 1}, null, ['no_idea'])", "no misconception 'no_idea'"),
        ("evaluate({left: 1, right: 2}, ['egg'])", "the quantities need each other in a circle"),
        ("show(Infinity, 2)", "Infinity cannot be shown"),
        ("showFull(NaN)", "NaN cannot be shown"),
        ("stream('x').below(0)", "below(0): the count runs from 1 to 2^32"),
        ("stream('x').below(2.5)", "below(2.5): the count runs from 1 to 2^32"),
        ("stream('\\ud800')", "a seed holds half a letter"),
    ],
)
def test_a_refusal_in_the_page_names_its_inputs(kept_page: Page, tmp_path: Path, call: str, message: str) -> None:
    kept_page.goto(write_page(tmp_path, REFUSING_BOOK, {}).as_uri())
    kept_page.evaluate(
        """() => Tankschool.formula.load({givens: {}, misconceptions: {}, quantities: {
          hen: {needs: ["egg"], locals: [], f: egg => egg}, egg: {needs: ["hen"], locals: [], f: hen => hen}}})"""
    )
    said = kept_page.evaluate(
        f"() => {{ try {{ Tankschool.formula.{call}; }} catch (error) {{ return error.message; }} }}"
    )
    assert said.startswith(message)


def ties(count: int) -> tuple[Array, Array]:
    """Numbers that lie on or near a half of some decimal place, of every size, and the places to show."""
    stream = Stream("ties")
    numbers: list[float] = []
    places: list[float] = []
    makers: tuple[Callable[[], float], ...] = (
        lambda: (stream.below(200_000) + 0.5) / 10 ** stream.below(7),
        lambda: (2 * stream.below(1 << 20) + 1) / 2 ** stream.below(24),
        lambda: float(f"{stream.below(10**9)}{stream.below(10**4):04d}5e{stream.below(24) - 16}"),
        lambda: (stream.below(10**6) * 10 + 5) / 10 ** (1 + stream.below(9)) * (1 + (stream.below(5) - 2) * 2.0**-52),
        lambda: stream.below(10**6) / 10 ** stream.below(12) + stream.uint32() / 2**45,
    )
    while len(numbers) < count:
        value = makers[len(numbers) % len(makers)]()
        numbers.append(-value if stream.below(4) == 0 else value)
        places.append(stream.below(7))
    return np.array(numbers), np.array(places, dtype=float)


def test_a_hundred_thousand_numbers_with_many_ties_are_shown_alike(kept_page: Page, tmp_path: Path) -> None:
    numbers, places = ties(100_000)
    extremes = np.array([0.0, -0.0, 5e-324, 1.7976931348623157e308, 1e21, 1e22, 1e-7, 999999999999.5, 0.9999999999995])
    numbers, places = np.append(numbers, extremes), np.append(places, np.full(len(extremes), 2.0))
    kept_page.goto(write_page(tmp_path, TEST_BOOK, {}).as_uri())
    theirs = kept_page.evaluate(
        """([numbers, places]) => {
          var p = floats(places), f = Tankschool.formula, made = [];
          floats(numbers).forEach(function (x, i) { made.push(f.show(x, p[i]) + " " + f.showFull(x)); });
          return made.join("\\n");
        }""",
        [packed(numbers), packed(places)],
    ).split("\n")
    ours = [f"{show(float(x), int(p))} {show_full(float(x))}" for x, p in zip(numbers, places, strict=True)]
    wrong = [(x, p, a, b) for x, p, a, b in zip(numbers, places, ours, theirs, strict=True) if a != b]
    assert wrong == []
    decimals = [text.split()[1].partition(".")[2] for text in ours]
    halves = sum(len(text) == p + 1 and text.endswith("5") for p, text in zip(places, decimals, strict=True))
    assert halves > 5000, "the drawn numbers hold too few ties"


def test_drawn_numbers_are_the_same_in_the_page(kept_page: Page, tmp_path: Path) -> None:
    kept_page.goto(write_page(tmp_path, TEST_BOOK, {}).as_uri())
    found = kept_page.evaluate(
        """vectors => vectors.map(function (one) {
          var stream = Tankschool.formula.stream, words = stream(one.seed), below = stream(one.seed);
          return {words: one.words.map(words.uint32),
            below: one.below.map(function (pair) { return [pair[0], below.below(pair[0])]; }),
            shuffle: stream(one.seed).shuffle(one.shuffle.map(function (item, place) { return place; }))};
        })""",
        VECTORS,
    )
    for vector, one in zip(VECTORS, found, strict=True):
        assert one == {name: vector[name] for name in one}, vector["seed"]
