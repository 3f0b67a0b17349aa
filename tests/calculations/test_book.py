"""The book as a whole: documented as it computes, one symbol a name, agreeing units, and every mistake a mistake."""

import inspect
import re
from importlib import import_module
from math import isclose, isfinite
from pathlib import Path
from typing import Any

import numpy as np
import pint
import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations import BOOK, TOPICS
from generator.formula import Constant, OutOfRangeError, Status, parse, recompiled
from tests.calculations.worked import givens

ROOT = Path(__file__).parents[2]
QUANTITIES = [pytest.param(quantity, id=name) for name, quantity in BOOK.quantities.items()]
MISTAKES = [pytest.param(mistake, id=name) for name, mistake in BOOK.misconceptions.items()]
NAMES = [topic.__name__.rpartition(".")[2] for topic in TOPICS]
TESTS = [import_module(f"tests.calculations.test_{name}") for name in NAMES]
"""A topic's own tests: its `BY_HAND` sums, and its part of the tank and of the limits below."""


def parts(kind: str) -> list[Any]:
    """What the tests of the topics add to a collection of this file."""
    return [getattr(tests, kind) for tests in TESTS if hasattr(tests, kind)]


TANK = {
    "length_in_inches": 15.0, "length_in_feet": 7.5, "inside_diameter": 3.1, "wall_height": 1.35,
    "overflow_drop": 0.12, "mesh_cover": 5.0, "inside_mesh_thickness": 7.0, "outside_mesh_thickness": 6.0,
    "bar_diameter": 10.0, "hoop_diameter": 8.0, "angle_leg": 30.0, "angle_spacing_limit": 0.65,
    "bar_spacing_limit": 0.18, "hoop_spacing": 0.11, "lap_diameters": 55.0, "stock_length": 12.0,
    "base_projection": 0.25, "base_concrete_thickness": 110.0, "wanted_volume": 8.0, "sand_parts": 2.5,
    "dry_volume_factor": 1.28, "mortar_waste": 8.0, "sand_bulking": 22.0, "water_cement_ratio": 0.42,
    "trough_radius": 0.33, "trough_length": 2.2,
    **{name: value for part in parts("TANK_PART") for name, value in part.items()},
}  # fmt: skip
LIMITS = {
    "angle_count",  # fewer than four make no ring
    "water_depth", "water_depth_for_volume", "tank_volume", "tank_litres",  # up to 2.2 m and 50 m3
    "wall_thickness", "bar_cover_inside", "hoop_cover_outside",  # 30 to 75 mm, at least 5 mm over steel
    *(name for part in parts("LIMITS_PART") for name in part),
}  # fmt: skip
AFTER_THEM = {"angle_spacing", "angle_chord", "bars_between", "bar_spacing", "bar_count", "outside_diameter",
              "base_diameter", "wall_mortar_volume", "mortar_dry_volume", "cement_volume", "cement_mass",
              "cement_bags", "sand_volume_dry", "sand_volume_damp", "mixing_water",
              "base_concrete_volume",
              *(name for part in parts("AFTER_PART") for name in part)}  # fmt: skip
"""What may leave its range only because a limit before it was passed."""
BELOW_NOTHING = {"water_depth", "tank_volume", "tank_litres", *AFTER_THEM}
"""What may fall below nothing only where a limit is passed that refuses the tank."""
_RANGE = re.compile(r"\[(.+?)\], (\d+(?:\.\d+)?) to (\d+(?:\.\d+)?)")


def declared(name: str) -> tuple[str, float, float]:
    entry = BOOK.entry(name)
    return entry.unit or "-", entry.low, entry.high


def within(name: str, value: float) -> bool:
    entry = BOOK.entry(name)
    hair = 1e-9 * max(abs(entry.low), abs(entry.high))
    return entry.low - hair <= value <= entry.high + hair


def sections(function: Any) -> dict[str, str]:
    """The parts of a docstring by their headings."""
    parts = re.split(r"^(Args|Returns|Raises|Example):$", inspect.cleandoc(function.__doc__), flags=re.MULTILINE)
    return {"": parts[0], **dict(zip(parts[1::2], parts[2::2], strict=True))}


def ranges(text: str) -> list[tuple[str, float, float]]:
    return [(unit, float(low), float(high)) for unit, low, high in _RANGE.findall(text)]


def test_the_book_is_as_large_as_the_module_on_the_frame_needs() -> None:
    assert len(BOOK.quantities) >= 40
    assert len(BOOK.misconceptions) >= 12
    assert len(NAMES) == len(set(NAMES)) >= 14


@pytest.mark.parametrize("quantity", QUANTITIES)
def test_a_docstring_says_the_names_units_and_ranges_that_the_book_keeps(quantity: Any) -> None:
    found = sections(quantity.function)
    assert set(found) == {"", "Args", "Returns", "Raises", "Example"}
    lines = re.findall(r"^ {4}(\w+): (.*(?:\n {8}.*)*)", found["Args"], flags=re.MULTILINE)
    assert [name for name, _ in lines] == list(quantity.needs)
    for name, text in lines:
        assert ranges(text) == [declared(name)], name
    assert ranges(found["Returns"]) == [declared(quantity.name)]
    assert "OutOfRangeError" in found["Raises"]
    assert f"{quantity.name}(" in found["Example"]


@pytest.mark.parametrize("mistake", MISTAKES)
def test_a_mistake_is_described_and_distorts_something_that_exists(mistake: Any) -> None:
    assert inspect.getdoc(mistake.function)
    assert BOOK.entry(mistake.of)
    assert all(BOOK.entry(name) for name in mistake.needs)


def test_one_symbol_stands_for_one_name() -> None:
    symbols = [entry.symbol for entry in [*BOOK.givens.values(), *BOOK.quantities.values()]]
    assert sorted(symbols) == sorted(set(symbols))


MAY_ONLY_WARN = {BOOK.entry(name).source.text for part in parts("WARN_ONLY") for name in part} | {
    value.source.text for part in parts("WARN_ONLY_VALUES") for value in part
}
"""Sources of what rests on memory: no number of these decides that a tank is safe."""


def test_every_number_has_a_source_and_only_warnings_rest_on_memory() -> None:
    sources = [entry.source for entry in [*BOOK.givens.values(), *BOOK.quantities.values()]]
    sources += [value.source for topic in TOPICS for value in vars(topic).values() if isinstance(value, Constant)]
    assert all(len(source.text) > 5 for source in sources)
    recalled = {source.text for source in sources if source.status is Status.FROM_MEMORY}
    assert recalled == MAY_ONLY_WARN


@pytest.mark.parametrize("quantity", QUANTITIES)
def test_every_quantity_has_an_example_worked_by_hand(quantity: Any) -> None:
    assert quantity.name in {name for examples in parts("BY_HAND") for name, _, _ in examples}


@pytest.mark.parametrize("function", [q.values[0].function for q in QUANTITIES + MISTAKES])
def test_every_function_can_be_shown_in_all_forms(function: Any) -> None:
    assert parse(function).name == function.__name__


# ------------------------------------------------------------------------------------------------ units


@pytest.fixture(scope="module")
def units() -> pint.UnitRegistry[Any]:
    registry: pint.UnitRegistry[Any] = pint.UnitRegistry()
    registry.define("bag = [bag]")
    registry.define("coin = [coin]")
    return registry


def with_units(function: Any, registry: Any, values: dict[str, float]) -> Any:
    """Call a function on numbers that carry their units; counts and angles must come out without any."""

    def bare(f: Any) -> Any:
        return lambda x: f(x.to(units_of_a_count).magnitude if hasattr(x, "to") else x)

    units_of_a_count = "bag" if BOOK.quantities[function.__name__].unit == "bag" else ""
    plain = function.__globals__
    names = {n: registry.Quantity(float(v), v.unit) for n, v in plain.items() if isinstance(v, Constant)}
    names |= {n: bare(plain[n]) for n in ("whole_up", "whole_down", "sin", "cos") if n in plain}
    names |= {"sqrt": lambda x: x**0.5, "_where": lambda test, yes, no: yes if test else no}
    arguments = (registry.Quantity(values[n], BOOK.entry(n).unit) for n in parse(function).needs)
    return recompiled(function, names)(*arguments)


@pytest.mark.parametrize("quantity", QUANTITIES)
def test_units_come_out_as_declared_and_no_thousand_is_lost(quantity: Any, units: Any) -> None:
    values = BOOK.evaluate(TANK)
    found = with_units(quantity.function, units, values)
    number = found.to(quantity.unit).magnitude if hasattr(found, "to") else found
    if not hasattr(found, "to"):
        assert quantity.unit in ("", "bag"), "a bare number can only be a count"
    assert number == pytest.approx(values[quantity.name], rel=1e-12)


# --------------------------------------------------------------------------------------------- mistakes


@pytest.mark.parametrize("mistake", MISTAKES)
def test_a_mistake_changes_what_it_distorts(mistake: Any) -> None:
    right = BOOK.evaluate(TANK)
    spread = [TANK, {**TANK, "length_in_feet": 5.75, "wall_height": 1.2, "hoop_diameter": 6.0, "stock_length": 9.0}]
    assert any(
        not isclose(BOOK.evaluate(seeds, [mistake.of], wrong=[mistake.name])[mistake.of],
                    BOOK.evaluate(seeds, [mistake.of])[mistake.of], rel_tol=1e-6)
        for seeds in spread
    )  # fmt: skip
    assert isfinite(right.get(mistake.of, 0.0))


@pytest.mark.parametrize("mistake", MISTAKES)
def test_a_mistake_in_a_given_is_seen_in_some_quantity(mistake: Any) -> None:
    right, wrong = BOOK.evaluate(TANK), BOOK.evaluate(TANK, wrong=[mistake.name])
    other = {**TANK, "length_in_feet": 5.75, "wall_height": 1.2, "hoop_diameter": 6.0, "stock_length": 9.0}
    right2, wrong2 = BOOK.evaluate(other), BOOK.evaluate(other, wrong=[mistake.name])
    assert any(
        not isclose(one[name], two[name], rel_tol=1e-6)
        for one, two in ((right, wrong), (right2, wrong2))
        for name in BOOK.quantities
    )


# ------------------------------------------------------------------------------- over the whole of the ranges


@given(values=givens())
def test_any_tank_is_worked_out_or_refused_with_who_to_ask(values: dict[str, float]) -> None:
    found = BOOK.work_out(values, check=False)
    outside = [name for name, value in found.items() if not within(name, value)]
    if outside:
        with pytest.raises(OutOfRangeError, match="licensed engineer"):
            BOOK.evaluate(values)
    else:
        assert set(BOOK.evaluate(values)) == {*BOOK.givens, *BOOK.quantities}


@given(values=givens())
def test_only_the_limits_that_are_meant_ever_refuse_a_tank(values: dict[str, float]) -> None:
    """A range that refuses an ordinary tank by accident would be a fault of the book."""
    found = BOOK.work_out(values, check=False)
    outside = {name for name, value in found.items() if not within(name, value)}
    assert outside <= LIMITS | AFTER_THEM
    assert not outside & AFTER_THEM or outside & LIMITS


def test_at_the_ends_of_the_givens_too_only_a_limit_on_the_way_refuses() -> None:
    """Givens at an end of their range oftener than not: corners that evenly drawn tanks seldom reach."""
    draw, rows = np.random.default_rng(11), 20_000
    columns = {}
    for name, entry in BOOK.givens.items():
        steps = int((entry.high - entry.low) / entry.step + 1e-9)
        anywhere, end = draw.integers(0, steps + 1, rows), draw.choice([0, steps], rows)
        columns[name] = np.round(entry.low + entry.step * np.where(draw.random(rows) < 0.25, anywhere, end), 6)
    found = BOOK.arrays(columns, BOOK.quantities)
    inside = {}
    for name in BOOK.quantities:
        entry = BOOK.entry(name)
        hair = 1e-9 * max(abs(entry.low), abs(entry.high))
        inside[name] = (found[name] >= entry.low - hair) & (found[name] <= entry.high + hair)
    for name in set(BOOK.quantities) - LIMITS:
        kept = np.ones(rows, dtype=bool)
        for limit in LIMITS & set(BOOK.ancestors([name])):
            kept &= inside[limit]
        wrong = np.flatnonzero(kept & ~inside[name])
        assert not wrong.size, (name, float(found[name][wrong[0]]), BOOK.entry(name))


@given(values=givens())
def test_nothing_breaks_where_ranges_are_not_kept(values: dict[str, float]) -> None:
    found = BOOK.work_out(values, check=False)
    assert all(isfinite(value) for value in found.values())
    assert all(value >= -1e-9 for name, value in found.items() if name not in BELOW_NOTHING)


@given(name=st.sampled_from(sorted(BOOK.givens)), bad=st.sampled_from([float("nan"), float("inf"), -1.0, 1e9]))
def test_nonsense_in_any_given_is_refused(name: str, bad: float) -> None:
    with pytest.raises(OutOfRangeError, match=name):
        BOOK.evaluate({**TANK, name: bad})


def test_arrays_give_what_single_numbers_give_rightly_and_with_every_mistake() -> None:
    draw = np.random.default_rng(7)
    columns = {
        name: np.round(given.low + given.step * draw.integers(0, round((given.high - given.low) / given.step), 400), 6)
        for name, given in BOOK.givens.items()
    }
    rows = [{name: float(column[row]) for name, column in columns.items()} for row in range(0, 400, 8)]
    for wrong in ((), *((name,) for name in BOOK.misconceptions)):
        many = BOOK.arrays(columns, BOOK.quantities, wrong)
        for number, row in enumerate(rows):
            try:
                one = BOOK.work_out(row, wrong=wrong, check=False)
            except OutOfRangeError:  # a mistake may leave nothing to divide by
                assert not all(np.isfinite(many[name][8 * number]) for name in BOOK.quantities)
                continue
            for name in BOOK.quantities:
                assert isclose(many[name][8 * number], one[name], rel_tol=1e-12, abs_tol=1e-12), (name, wrong)


# ------------------------------------------------------------------------------------------------ words


@pytest.mark.parametrize("language", ["en", "hi"])
def test_everything_in_the_book_has_words(language: str) -> None:
    words = yaml.safe_load((ROOT / "course" / "words" / f"{language}.yaml").read_text(encoding="utf-8"))
    assert set(words["quantity"]) == {*BOOK.givens, *BOOK.quantities}
    assert set(words["misconception"]) == set(BOOK.misconceptions)
    for name, texts in words["misconception"].items():
        assert set(texts) == {"mistake", "hill"}, name
        assert all(len(text) > 10 for text in texts.values()), name
    used = {BOOK.entry(name).unit for name in (*BOOK.givens, *BOOK.quantities)} - {""}
    assert set(words["unit"]) == used
    assert set(words["status"]) == {status.value for status in Status}
